"""Values without quotes: numbers, true and false, and what should have had quotes."""

from __future__ import annotations

import re

from scantling import units
from scantling.errors import LengthError
from scantling.piece._file.signs import Signs
from scantling.piece._file.text import Sort, Written
from scantling.units import Unit

_REST = re.compile(r"[^#\n]*")
_REST_WITHIN = re.compile(r"[^#\n,\]}]*")
_WHOLE = r"[+-]?(?:0|[1-9](?:_?[0-9])*)"
_DAY = r"[0-9]{4}-[0-9]{2}-[0-9]{2}"
_HOUR = r"[0-9]{2}:[0-9]{2}:[0-9]{2}(?:\.[0-9]+)?"
_SORTS = (
    (Sort.TRUTH, re.compile("true|false")),
    (Sort.WHOLE, re.compile(_WHOLE)),
    (Sort.WHOLE, re.compile(r"0x[0-9A-Fa-f](?:_?[0-9A-Fa-f])*|0o[0-7](?:_?[0-7])*")),
    (Sort.WHOLE, re.compile(r"0b[01](?:_?[01])*")),
    (
        Sort.DECIMAL,
        re.compile(rf"{_WHOLE}(?:\.[0-9](?:_?[0-9])*)?(?:[eE][+-]?[0-9](?:_?[0-9])*)?"),
    ),
    (Sort.DECIMAL, re.compile("[+-]?(?:inf|nan)")),
    (Sort.DATE, re.compile(rf"{_DAY}(?:[Tt ]{_HOUR}(?:[Zz]|[+-][0-9]{{2}}:[0-9]{{2}})?)?|{_HOUR}")),
)
_TRUTH_LIKE = {
    **dict.fromkeys(("true", "yes", "on"), "true"),
    **dict.fromkeys(("false", "no", "off"), "false"),
}
_CURLED = re.compile("[“”„‟‘’‚‛«»″′`´]")
_COMMA_WITHIN = re.compile(r"[+-]?[0-9]+,[0-9]+(?=[ \t]*[,}#\n])")
_THOUSANDS = re.compile(r"[+-]?[0-9]{1,3}(?:,[0-9]{3})+")
_DECIMAL_COMMA = re.compile(r"[+-]?[0-9]+,[0-9]+")


def bare(signs: Signs) -> Written:
    """The value without quotes under the finger; noted where it should have some.

    Raises:
        LineLostError: There is no value at all.
    """
    found = signs.match(_REST_WITHIN if signs.within else _REST)
    if signs.within[-1:] == ["{"]:
        # Between braces a comma parts entries, and an entry starts with a name.
        found = signs.match(_COMMA_WITHIN) or found
    text = found[0].rstrip() if found else ""
    if not text:
        cure = "write a value, or put a # before the line"
        span = range(signs.at, signs.at + 1)
        raise signs.lost("no-value", "a value is missing here", cure, span)
    span = range(signs.at, signs.at + len(text))
    signs.at = span.stop
    for sort, pattern in _SORTS:
        if pattern.fullmatch(text):
            return Written(sort=sort, text=text, source=signs.source, span=span, spots=span)
    signs.fault(*_what_is_wrong(text), span)
    return Written(sort=Sort.FAULTY, text=text, source=signs.source, span=span, spots=span)


def _what_is_wrong(text: str) -> tuple[str, str, str]:
    """Code, words and cure for a value that cannot stand bare."""
    plain = _CURLED.sub("", text).strip()
    if _CURLED.match(text) and plain:
        return "curled-quotes", "these quotes are curled", f'use straight ones: "{plain}"'
    if text.casefold() in _TRUTH_LIKE:
        truth = _TRUTH_LIKE[text.casefold()]
        return "truth", "a yes or no is written true or false here", f"write {truth}"
    if _THOUSANDS.fullmatch(text):
        return "comma", "a comma may part thousands or decimals", "write 1200 or 1.2"
    if _DECIMAL_COMMA.fullmatch(text):
        number = text.replace(",", ".")
        return "comma", "a decimal takes a point, not a comma", f"write {number}"
    if "=" in text:
        return "stray-sign", "two values stand on one line", "give each a line of its own"
    return "no-quotes", f"{_named(text)} stands without quotes", _in_quotes(text)


def _named(text: str) -> str:
    try:
        units.length(text, unit=Unit.INCH)
    except LengthError:
        return "this value"
    return "this length"


def _in_quotes(text: str) -> str:
    short = text if len(text) <= 30 else f"{text[:29]}…"
    if '"' not in short and "\\" not in short:
        return f'put quotes round it: "{short}"'
    return f"put single quotes round it: '{short}'" if "'" not in short else "put quotes round it"
