"""Damage as files suffer it: signs lost, doubled, typed wrongly, lines swapped, the end cut off."""

import random
from collections.abc import Callable

SIGNS = "\"'[]{}=,.#\n\\/ ½\t\x00x1_:“"


def damaged(text: str, rng: random.Random) -> str:
    """The text with one to three things wrong with it, or none by luck."""
    for _ in range(rng.randint(1, 3)):
        text = rng.choice(KINDS)(text, rng) or "x"
    return text


def _lost(text: str, rng: random.Random) -> str:
    at = rng.randrange(len(text))
    return text[:at] + text[at + rng.randint(1, 12) :]


def _added(text: str, rng: random.Random) -> str:
    at = rng.randrange(len(text) + 1)
    return text[:at] + rng.choice(SIGNS) * rng.choice((1, 1, 1, 2, 3)) + text[at:]


def _changed(text: str, rng: random.Random) -> str:
    at = rng.randrange(len(text))
    return text[:at] + rng.choice(SIGNS) + text[at + 1 :]


def _copied(text: str, rng: random.Random) -> str:
    at, other = rng.randrange(len(text)), rng.randrange(len(text))
    return text[:at] + text[other : other + rng.randint(1, 60)] + text[at:]


def _swapped(text: str, rng: random.Random) -> str:
    lines = text.split("\n")
    one, other = rng.randrange(len(lines)), rng.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]
    return "\n".join(lines)


def _cut(text: str, rng: random.Random) -> str:
    return text[: rng.randrange(len(text))]


KINDS: tuple[Callable[[str, random.Random], str], ...] = (
    _lost,
    _added,
    _changed,
    _copied,
    _swapped,
    _cut,
)
