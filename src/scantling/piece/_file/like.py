"""A length as a maker types it anew, in the dress of the one that stood there."""

from __future__ import annotations

import re

from scantling.errors import LengthError
from scantling.exact import Fraction
from scantling.units import Unit, length

_UNIT = r"in\.?|inch|inches|''|[\"″”]|mm|cm|m"
_DRESS = re.compile(rf"\s*(?P<amount>-?[\d\s./\-½¼¾⅛⅜⅝⅞⁄]*?)(?P<gap>\s*-?)(?P<unit>{_UNIT})\s*")
_JOINED = re.compile(r"(\d)([ -])(\d+)([/⁄])(\d+)")
_ONE_SIGN = {Fraction(n, 8): s for n, s in enumerate(" ⅛¼⅜½⅝¾⅞") if n}
_PLACES = 3  # of a decimal that a maker would write


def unit_written(text: str) -> tuple[str, str]:
    """The amount of a written length, and its unit with what stands between: `38`, ` mm`.

    The unit is empty where none is written, and for feet and inches, which are no one amount.
    """
    found = _DRESS.fullmatch(text)
    if found is None or not found["amount"].strip():
        return text, ""
    return found["amount"].strip(), found["gap"] + found["unit"]


def like(old: str, new: str, *, unit: Unit) -> str:
    """What was typed, written as the value it takes the place of.

    A length that names its unit stays as typed. A bare one takes the old one's unit, and its
    fractions are written as the old ones were: `1 1/2`, `1-1/2`, `1½` or `1.5`. Whatever cannot
    be said exactly in the old dress stays as typed.

    Args:
        old: What stands in the file, without quotes.
        new: What was typed.
        unit: Unit where neither names one.

    Raises:
        LengthError: What was typed is no length.
    """
    typed = new.strip()
    length(typed, unit=unit)  # an error is told of what was typed, not of what becomes of it
    if any(sign.isalpha() or sign in "\"'″′”’" for sign in typed):
        return typed
    amount, behind = unit_written(old)
    wanted = _value(typed + behind, unit)
    dressed = _dressed(typed, like_this=amount) + behind
    return dressed if wanted is not None and _value(dressed, unit) == wanted else typed + behind


def _value(text: str, unit: Unit) -> Fraction | None:
    try:
        return length(text, unit=unit)
    except LengthError:
        return None


def _dressed(typed: str, *, like_this: str) -> str:
    number = length(typed, unit=Unit.MM)  # a bare number, whatever its unit
    whole, rest = divmod(abs(number), 1)
    minus = "-" if number < 0 else ""
    if "." in like_this:
        return minus + _decimal(abs(number), zero=not like_this.lstrip(" -").startswith("."))
    if any(sign in like_this for sign in _ONE_SIGN.values()) and rest in _ONE_SIGN:
        return minus + (str(whole) if whole else "") + _ONE_SIGN[rest]
    joined = _JOINED.search(like_this)
    slashed = "/" in like_this or "⁄" in like_this
    if not rest or not slashed or rest.denominator & (rest.denominator - 1):
        return typed
    join, stroke = (joined[2], joined[4]) if joined else (" ", "⁄" if "⁄" in like_this else "/")
    fraction = f"{rest.numerator}{stroke}{rest.denominator}"
    return minus + (f"{whole}{join}{fraction}" if whole else fraction)


def _decimal(number: Fraction, *, zero: bool) -> str:
    whole, rest = divmod(round(number * 10**_PLACES), 10**_PLACES)
    tail = f"{rest:0{_PLACES}d}".rstrip("0")
    return (str(whole) if whole or zero or not tail else "") + (f".{tail}" if tail else "")
