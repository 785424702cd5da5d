"""Puts a sentence into the words of one country.

What the maker wrote or would have to write stays as it is: names of his file, text in quotes,
a word before an equals sign. Nothing here knows where a sentence comes from or goes to.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Collection, Mapping
from enum import StrEnum
from functools import cache, lru_cache
from importlib.resources import files


class Speech(StrEnum):
    """Whose words are shown."""

    US = "US"
    UK = "UK"


def pairs() -> tuple[tuple[str, str], ...]:
    """Every word that has two forms, the US one first."""
    return tuple((us[0], uk[0]) for us, uk in _forms())


def spoken(text: str, speech: Speech, *, names: Collection[str] = frozenset()) -> str:
    """A sentence in the words of one country, whichever it was written in.

    Args:
        text: What is shown.
        speech: Whose words.
        names: Names of the maker's file, which stay wherever they stand in the text.
    """
    if not _changes(text, speech):
        return text
    kept = frozenset(name for name in names if name in text and _changes(name, speech))
    return _spoken(text, speech, kept)


def word(house: str, speech: Speech) -> str:
    """One word of the house in the words of one country."""
    return _others(speech).get(house, house)


@lru_cache(maxsize=20_000)  # the same few words are asked for thousands of times
def _changes(text: str, speech: Speech) -> bool:
    return _finder(speech).search(text) is not None


@lru_cache(maxsize=20_000)
def _spoken(text: str, speech: Speech, names: frozenset[str]) -> str:
    kept = [re.escape(name) for name in sorted(names, key=len, reverse=True)]
    whole = "|".join([*_AS_THEY_STAND, *(rf"(?<!\w){name}(?!\w)" for name in kept)])
    pieces = re.split(f"({whole})", text)
    return "".join(
        piece if at % 2 else _finder(speech).sub(lambda m: _changed(m[0], speech), piece)
        for at, piece in enumerate(pieces)
    )


# text in quotes, and a word that something is set to: both are the file's language
_AS_THEY_STAND = (
    r'"[^"\n]*"',
    r"`[^`\n]*`",
    r"(?<!\w)'[^'\n]+'(?!\w)",
    r"\[[\w .-]+\]",
    r"[\w-]+ *=",
)


def _changed(found: str, speech: Speech) -> str:
    new = _others(speech)[found.lower()]
    if found.isupper():
        return new.upper()
    return new[0].upper() + new[1:] if found[0].isupper() else new


@cache
def _finder(speech: Speech) -> re.Pattern[str]:
    longest_first = sorted(_others(speech), key=len, reverse=True)
    return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, longest_first))})(?!\w)", re.IGNORECASE)


@cache
def _others(speech: Speech) -> Mapping[str, str]:
    """Words of the other country, each with what is said for it in this one."""
    both = [(us, uk) if speech is Speech.UK else (uk, us) for us, uk in _forms()]
    return {other: own for others, ours in both for other, own in zip(others, ours, strict=True)}


@cache
def _forms() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    text = files("scantling.wording").joinpath("words.toml").read_text(encoding="utf-8")
    return tuple((tuple(row["us"]), tuple(row["uk"])) for row in tomllib.loads(text)["word"])
