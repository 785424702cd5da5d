"""Changes as a maker makes them while trying out: most leave a file that can be read.

Unlike `tests.piece.damage`, which spoils the spelling, these leave words and numbers that the
reader knows, so that it is the chain behind it that has to cope.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence
from fractions import Fraction

HEADING = re.compile(r"(?m)^(?=\[)")
NUMBER = re.compile(r"(?<![\w./])(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)(?![\w./])")
QUOTED = re.compile(r'"[^"]*"')
FACTORS = tuple(map(Fraction, ("0.1", "0.5", "2", "10", "25.4")))

JOINTS = (
    "drawer bottom",
    "edge joint",
    "face frame to carcase",
    "fielded panel",
    "groove",
    "half lap",
    "half-blind dovetail",
    "hinge",
    "housing",
    "mortise and tenon",
    "one nail at mid width",
    "rabbet",
    "screws in slots",
    "shelf pins",
    "shiplap",
    "sliding dovetail",
    "through dovetail",
)
WORDS = (
    JOINTS,
    ("top rail", "mid rail", "bottom rail", "mullion", "doors", "drawers", "bottom", "case"),
    ("white ash", "yellow-poplar", "black cherry", "white ash, rift", "yellow-poplar, quarter"),
    ("inch", "mm"),
    ("front", "back", "left", "right"),
    ("as the boards give", "1 1/2", "3/8"),
)
COUNTS = ("count", "across", "tails", "boards", "holes")
KINDS_OF_SIZE = ("length", "width", "thickness")
PARTS = ("left side", "mid rail", "left door.top rail", "drawer 1.front", "bottom", "top")


def changed(text: str, rng: random.Random) -> str:
    """The text with one to three things changed."""
    for _ in range(rng.choice((1, 1, 2, 3))):
        text = rng.choice(KINDS)(text, rng)
    return text


def _line_lost(text: str, rng: random.Random) -> str:
    lines = text.split("\n")
    said = [i for i, line in enumerate(lines) if "=" in line and not line.startswith("#")]
    if said:
        del lines[rng.choice(said)]
    return "\n".join(lines)


def _section_lost(text: str, rng: random.Random) -> str:
    head, *sections = HEADING.split(text)
    if sections:
        sections.pop(rng.randrange(len(sections)))
    return head + "".join(sections)


def _word_lost(text: str, rng: random.Random) -> str:
    """One of the things said in braces."""
    found = list(re.finditer(r", [a-z_]+ += (\"[^\"]*\"|[^\",{}\[\]#]+)(?=,| \})", text))
    return _replaced(text, rng.choice(found), "") if found else text


def _numbers_swapped(text: str, rng: random.Random) -> str:
    found = _numbers(text)
    if len(found) < 2:
        return text
    one, other = sorted(rng.sample(found, 2), key=re.Match.start)
    text = _replaced(text, other, one.group())
    return _replaced(text, one, other.group())


def _scaled(text: str, rng: random.Random) -> str:
    factor = rng.choice(FACTORS)
    return _number_changed(text, rng, lambda number: number * factor)


def _section_scaled(text: str, rng: random.Random) -> str:
    """Every number of one section by one factor, as where the wrong unit was in mind."""
    head, *sections = HEADING.split(text)
    if not sections:
        return text
    i, factor = rng.randrange(len(sections)), rng.choice(FACTORS)
    for found in reversed(_numbers(sections[i])):
        scaled = _as_counted(sections[i], found, _value(found.group()) * factor)
        sections[i] = _replaced(sections[i], found, _written(scaled))
    return head + "".join(sections)


def _zeroed(text: str, rng: random.Random) -> str:
    return _number_changed(text, rng, lambda _: Fraction(0))


def _negated(text: str, rng: random.Random) -> str:
    return _number_changed(text, rng, lambda number: -number)


def _word_changed(text: str, rng: random.Random) -> str:
    """A word in quotes becomes another of its kind."""
    found = [
        (match, family)
        for match in QUOTED.finditer(text)
        for family in WORDS
        if match.group().strip('"') in family
    ]
    if not found:
        return text
    match, family = rng.choice(found)
    return _replaced(text, match, f'"{rng.choice(family)}"')


def _truth_turned(text: str, rng: random.Random) -> str:
    found = list(re.finditer(r"\b(true|false)\b", text))
    if not found:
        return text
    match = rng.choice(found)
    return _replaced(text, match, "false" if match.group() == "true" else "true")


def _size_said(text: str, rng: random.Random) -> str:
    """One more size of the list of parts, at random."""
    name = f"{rng.choice(PARTS)}.{rng.choice(KINDS_OF_SIZE)}"
    return text.rstrip("\n") + f'\n"{name}" = {_written(Fraction(rng.randint(1, 200), 4))}\n'


def _number_changed(text: str, rng: random.Random, change: Callable[[Fraction], Fraction]) -> str:
    found = _numbers(text)
    if not found:
        return text
    match = rng.choice(found)
    return _replaced(text, match, _written(_as_counted(text, match, change(_value(match.group())))))


def _as_counted(text: str, match: re.Match[str], value: Fraction) -> Fraction:
    """A count stays a whole number."""
    before = text[: match.start()].rstrip(" =")
    return Fraction(round(value)) if before.endswith(COUNTS) else value


def _numbers(text: str) -> Sequence[re.Match[str]]:
    """Numbers outside comments and the head, with their quotes where nothing else is in them."""
    return [
        match
        for match in re.finditer(rf'"{NUMBER.pattern}"|{NUMBER.pattern}', text)
        if not _is_remark(text, match.start()) and match.start() > text.find("[")
    ]


def _is_remark(text: str, at: int) -> bool:
    return "#" in text[text.rfind("\n", 0, at) + 1 : at]


def _value(number: str) -> Fraction:
    return sum(map(Fraction, number.strip('"').split()), Fraction(0))


def _written(value: Fraction) -> str:
    return str(value) if value.denominator == 1 else f"{float(value):.4f}".rstrip("0")


def _replaced(text: str, match: re.Match[str], new: str) -> str:
    return text[: match.start()] + new + text[match.end() :]


KINDS: tuple[Callable[[str, random.Random], str], ...] = (
    _line_lost,
    _section_lost,
    _word_lost,
    _numbers_swapped,
    _scaled,
    _scaled,
    _section_scaled,
    _zeroed,
    _negated,
    _word_changed,
    _truth_turned,
    _size_said,
)
