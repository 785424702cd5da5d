"""The maker's own word for a thing: that of the other country, or one of the same meaning."""

from __future__ import annotations

from collections.abc import Container, Iterable

from scantling.roster import plain_name
from scantling.wording.speech import Speech, spoken

SYNONYMS = (  # words of one meaning in a piece file; common practice
    ("thick", "thickness"),
    ("wide", "width", "breadth"),
    ("tall", "height", "high"),
    ("deep", "depth"),
    ("long", "length"),
    ("count", "number", "how many", "quantity", "amount"),
    ("holes", "number of holes"),
    ("joint", "joinery", "joined by"),
    ("over front", "overhang", "overhang front"),
)


def in_house_words(word: str, known: Container[str]) -> str | None:
    """The known word that a maker's word is, in any spelling and in either country's trade.

    Args:
        word: What he wrote: "Rebate".
        known: Words of the house in plain spelling: "rabbet".
    """
    plain = plain_name(word)
    for each in (plain, *(plain_name(spoken(plain, speech)) for speech in Speech)):
        if each in known:
            return each
    return None


def synonym(word: str, known: Iterable[str]) -> str | None:
    """The known word of the same meaning, or None.

    Args:
        word: What the maker wrote: "thickness".
        known: Words that can be said here.
    """
    plain = plain_name(word)
    same = next((group for group in SYNONYMS if plain in group), ())
    return next((each for each in known if plain_name(each) in same), None)
