"""The one kind of exact number in the house.

It is the standard library's `Fraction` made native: the same numbers, hashes and text, several
times as fast. The two mix freely and equal each other, so a caller may hand in either; inside the
house one kind is kept, as each change between them costs time. Figures and a caution:
`docs/decisions/05-native-fractions.md`.
"""

from __future__ import annotations

from fractions import Fraction as Plain  # noqa: TID251 - reads text; see `from_figures`
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    Fraction = Plain  # the native one ships no types, and has the same
else:
    from quicktions import Fraction

__all__ = ["Fraction", "from_figures"]


def from_figures(text: str) -> Fraction:
    """The number that figures stand for: "12", "0.75", "2/3", "1e-3".

    Never `Fraction(text)`: the native one, given a text of one character, writes into a string
    that the interpreter shares with everybody (quicktions 1.18 to 1.24).

    Raises:
        ValueError: The text is no number.
        ZeroDivisionError: It divides by 0.
    """
    return Fraction(Plain(text))
