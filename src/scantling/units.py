"""Exact lengths: read as makers write them, written as makers read them.

Inside the house a length is a `Fraction` of millimetres and never passes through a
float: one inch is 127/5 mm exactly. A text with more than one likely reading is refused with
a cure, because a length read wrongly and in silence is cut into wood.

Reading turns the text into tokens, one letter of a pattern for each, and holds the pattern
against the forms a length can take. What fits none is held against the table of faults, and
the first that fits says which characters are guilty.
"""

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from scantling.errors import LengthError, OutOfRangeError
from scantling.exact import Fraction, from_figures

INCH = Fraction(127, 5)  # [mm] exact: the international inch of 1959
FOOT = 12 * INCH  # [mm]
FINEST_INCH = INCH / 64  # [mm] smallest mark on a common rule
LONGEST_TEXT = 60  # [characters] more is no length, and would only slow the reader


class Unit(StrEnum):
    """Unit of a length written without one.

    Reads the usual spellings too: `Unit("in")`, `Unit("millimetre")`.
    """

    INCH = "inch"
    MM = "mm"

    @classmethod
    def _missing_(cls, value: object) -> "Unit | None":
        word = value.strip().casefold() if isinstance(value, str) else ""
        if word in _INCH_WORDS:
            return cls.INCH
        return cls.MM if _METRIC_WORDS.get(word) == 1 else None

    @property
    def size(self) -> Fraction:
        """Length of one unit. [mm]"""
        return INCH if self is Unit.INCH else Fraction(1)

    @property
    def sign(self) -> str:
        """What stands behind a number: `in` or `mm`."""
        return "in" if self is Unit.INCH else "mm"


_INCH_WORDS = frozenset({"in", "inch", "inches"})
_FOOT_WORDS = frozenset({"ft", "foot", "feet"})
_METRIC_WORDS: Mapping[str, int] = {
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), 1),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), 10),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1000),
}

# One named group per kind of token; the letter is what stands for it in the pattern. Order
# matters: 3/4 before 3, '' before '.
_TOKEN = re.compile(
    r"""
      (?P<s>[ \t\u00a0\u2000-\u200a\u202f\u205f\u3000]+)      # spaces
    | (?P<o>[0-9]+[/\u2044\u2215][0-9]+)                      # one number over another
    | (?P<d>[0-9]*\.[0-9]+)                                   # decimal
    | (?P<w>[0-9]+)                                           # whole
    | (?P<g>[\u00bc-\u00be\u2150-\u215e])                     # a fraction in one character
    | (?P<i>''|\u2032\u2032|\u2019\u2019|["\u2033\u201c\u201d])  # inch mark
    | (?P<f>['\u2032\u2019])                                  # foot mark
    | (?P<x>[A-Za-z]+)\.?                                     # word, letter settled below
    | (?P<h>[-\u2010\u2011])                                  # hyphen
    | (?P<k>[\u2012-\u2015\u2212])                            # long dash, minus sign
    | (?P<c>[,\u066b\u066c\uff0c])                            # comma
    | (?P<l>[/\u2044\u2215\uff0f])                            # stroke left over
    | (?P<n>(?![0-9])\d|[\u00b2\u00b3\u00b9\u2070-\u2089])    # digit, but not a plain one
    | (?P<p>\.) | (?P<a>\+) | (?P<z>_)
    | (?P<q>.)                                                # anything else
    """,
    re.VERBOSE | re.DOTALL,
)

_AMOUNT = r"(?:w[sh][og]|wg|w|d|o|g)"
_SIGN = r"s?(?P<sign>[hk]?)"
_PLAIN = re.compile(rf"{_SIGN}(?P<amount>{_AMOUNT})(?:(?:s?(?=[iIfFm])|h(?=[IFm]))(?P<unit>.))?s?")
_FEET_INCHES = re.compile(
    rf"{_SIGN}(?P<feet>w)s?(?:f[sh]?|F[sh])(?P<amount>{_AMOUNT})(?P<inches>s?[iI])?s?"
)


_LIKE = "write it like 3/4, 1 1/2 in, 2 ft 3 1/2 in or 38 mm"
_ONE = "write one length only"
_KNOWN = "in, ft, mm, cm and m are understood"
_MIXED = "write 1 1/2 with a space"
_PLAIN_DIGITS = "write them with 0 to 9, fractions like 3/8"
_WHOLE_FEET = "before inches the feet must be whole"

# One comma that parts no thousands: what was meant can be shown.
_DECIMAL_COMMA = re.compile(r"\s*(-?\d+),(\d{1,2}(?:\s*[A-Za-z]+)?)\s*")

# Held against what no form fits. The first that fits speaks, so the particular stands above
# the general; `at` marks the guilty part where it is not the whole. (pattern, says, cure)
_FAULTS = (
    (r"^s?$", "no length is written here", _LIKE),
    (r"n+", "these are not plain digits", _PLAIN_DIGITS),
    (r"w(?:cw)+", "a comma may part thousands or decimals", "write 1200 or 1.2"),
    (r"c", "a comma has no place in a length", "use a point for decimals: 37.5"),
    (r"w(?:z+w)+|z", "an underscore has no place in a length", "write 1200"),
    (r"[wd]e[ha]?w", "powers of ten are not read", "write the number out: 1000"),
    (r"o(?:l[wo])+", "two strokes make a date, not a fraction", "write one fraction: 3/4"),
    (r"l", "a fraction needs a whole number close on both sides", "write 1/2"),
    (r"a", "a plus sign is not read", "leave the plus away, or write the sum"),
    (r"(?<=[wdogiIfFm])s?ks?", "a long dash may mean minus or to", _MIXED),
    (r"(?<=[wdogiIfFm])(?:shs?|hs)", "a dash beside a space may mean minus", _MIXED),
    (r"^s?[hk](?:s|[hk]+|$)", "a minus belongs close before its number", "write -1/4"),
    (r"w(?:hw)+(?![og])", "a dash between whole numbers may mean to or a date", _ONE),
    (r"[wd]?p[wd]?|d+d", "a decimal has one point before its digits", "write 1.5 or .75"),
    (r"e|x", "this word is no unit of length", _KNOWN),
    (r"q", "this sign has no place in a length", _LIKE),
    (r"^s?[hk]?(?P<at>[iIfFm])", "a number is missing before the unit", _LIKE),
    (rf"[iI]s?(?P<at>{_AMOUNT}s?[fF])", "feet come before inches", "write 6 ft 12 in"),
    (r"[IFm](?P<at>[wdog])", "a number stands close behind the unit", "put a space between"),
    (rf"(?P<at>w[sh]?[og]|[dog])s?[fF][sh]?{_AMOUNT}", _WHOLE_FEET, "write 2 ft 6 in"),
    (rf"[iIfFm][sh]?(?P<at>{_AMOUNT}.*)", "a second length follows the first", _ONE),
    (rf"{_AMOUNT}(?:[sh]?{_AMOUNT})+", "numbers stand side by side", f"{_MIXED}, or one only"),
    (r"[iIfFm]s?(?P<at>[iIfFm]+)", "a second unit follows the first", _KNOWN),
    (r"h", "a dash has no place here", "only 1-1/2, 2'-3\" and a leading minus are read"),
)


@dataclass(frozen=True, kw_only=True)
class _Token:
    kind: str
    text: str
    start: int
    stop: int


@dataclass(frozen=True, kw_only=True)
class _Reading:
    """A text as its tokens, with one letter for each in `pattern`."""

    text: str
    tokens: tuple[_Token, ...]

    @property
    def pattern(self) -> str:
        return "".join(token.kind for token in self.tokens)

    def refusal(self, says: str, cure: str, *, first: int, last: int) -> LengthError:
        """The error with the characters of tokens `first` to before `last` as guilty."""
        guilty = self.tokens[first:last]
        start = guilty[0].start if guilty else len(self.text)
        stop = guilty[-1].stop if guilty else len(self.text)
        return LengthError(says, text=self.text, start=start, stop=stop, cure=cure)


def length(text: str, *, unit: Unit) -> Fraction:
    """Length that a maker wrote, exact.

    Reads `3/4`, `1 1/2 in`, `1-1/2"`, `3/4-in.`, `1½″`, `2' 3 1/2"`, `2 ft 3 1/2 in`, `.75`,
    `38 mm`, `3.8 cm`, `0.38 m`. A minus leads the whole: `-1 1/2` is minus one and a half.
    Inches follow feet even without a mark, unless they are a fraction alone. A fraction above
    one is read where it cannot be a whole and a fraction run together: `5/4`, not `11/2`.

    Args:
        text: What stands in the file, at most 60 characters.
        unit: Unit where the text names none.

    Returns:
        The length. [mm]

    Raises:
        LengthError: The text is no length, or more than one reading is likely.
    """
    if len(text) > LONGEST_TEXT:
        raise LengthError(
            f"this is longer than {LONGEST_TEXT} characters",
            text=text,
            start=LONGEST_TEXT,
            stop=len(text),
            cure=_LIKE,
        )
    reading = _Reading(text=text, tokens=tuple(map(_token, _TOKEN.finditer(text))))
    if found := _PLAIN.fullmatch(reading.pattern):
        size = _scale(reading.tokens[found.start("unit")].text) if found["unit"] else unit.size
        value = _amount(reading, *found.span("amount")) * size
    elif found := _FEET_INCHES.fullmatch(reading.pattern):
        value = _feet_and_inches(reading, found)
    else:
        raise _refused(reading)
    return -value if found["sign"] else value


def _token(found: re.Match[str]) -> _Token:
    kind = str(found.lastgroup)
    if kind == "x":
        kind = _word_kind(found["x"])
    return _Token(kind=kind, text=found[0], start=found.start(), stop=found.end())


def _word_kind(word: str) -> str:
    plain = word.casefold()
    if plain in _INCH_WORDS:
        return "I"
    if plain in _FOOT_WORDS:
        return "F"
    # A capital M counts thousands as often as metres.
    if plain in _METRIC_WORDS and word != "M":
        return "m"
    return "e" if plain == "e" else "x"


def _scale(unit: str) -> Fraction:
    word = unit.rstrip(".").casefold()
    if word in _METRIC_WORDS:
        return Fraction(_METRIC_WORDS[word])
    return FOOT if word in _FOOT_WORDS or word in {"'", "′", "’"} else INCH


def _feet_and_inches(reading: _Reading, found: re.Match[str]) -> Fraction:
    feet = from_figures(reading.tokens[found.start("feet")].text)
    first, last = found.span("amount")
    inches = _amount(reading, first, last)
    if not found["inches"] and found["amount"] in {"o", "g"}:
        raise reading.refusal(
            "a fraction behind feet may be of a foot or of an inch",
            "write 2 1/2 ft, or 2 ft 0 1/2 in",
            first=first,
            last=last,
        )
    if inches >= 12:
        raise reading.refusal(
            "twelve inches or more stand behind the feet",
            "carry them into the feet, or write inches only",
            first=first,
            last=last,
        )
    return feet * FOOT + inches * INCH


def _amount(reading: _Reading, first: int, last: int) -> Fraction:
    """Sum of the one or two numbers among the tokens, refusing what may be a slip."""
    values = {
        at: _number(reading, at) for at in range(first, last) if reading.tokens[at].kind in "wdog"
    }
    *_, (at, fraction) = values.items()
    if len(values) > 1 and fraction >= 1:
        says = "the fraction behind the whole number is one or more"
        raise reading.refusal(
            says, "carry it into the whole: 2 1/4, not 1 5/4", first=at, last=at + 1
        )
    if len(values) == 1 and reading.tokens[at].kind == "o":
        _refuse_run_together(reading, at)
    return sum(values.values(), Fraction(0))


def _number(reading: _Reading, at: int) -> Fraction:
    token = reading.tokens[at]
    if token.kind not in "og":
        return from_figures(token.text)
    over = unicodedata.normalize("NFKD", token.text).replace("\u2044", "/").replace("\u2215", "/")
    top, bottom = map(int, over.split("/"))
    if bottom == 0:
        raise reading.refusal(
            "a fraction cannot have 0 below its stroke", "write it like 3/4", first=at, last=at + 1
        )
    return Fraction(top, bottom)


def _refuse_run_together(reading: _Reading, at: int) -> None:
    """Refuse `11/2`: it may be eleven halves, or 1 1/2 that lost its space."""
    top, bottom = re.split(r"\D", reading.tokens[at].text)
    for cut in range(1, len(top)):
        whole, part = top[:cut], top[cut:]
        if int(top) > int(bottom) > int(part) and not part.startswith("0"):
            mixed = _mixed(Fraction(int(top), int(bottom)))
            raise reading.refusal(
                f"{top}/{bottom} may be {mixed}, or {whole} {part}/{bottom} without its space",
                "write the whole number apart from its fraction",
                first=at,
                last=at + 1,
            )


def _refused(reading: _Reading) -> LengthError:
    for pattern, says, cure in _FAULTS:
        if found := re.search(pattern, reading.pattern):
            first, last = found.span("at" if "at" in found.re.groupindex else 0)
            meant = _DECIMAL_COMMA.fullmatch(reading.text)
            clearly = f"write {meant[1]}.{meant[2]}" if meant else cure
            return reading.refusal(says, clearly, first=first, last=last)
    return reading.refusal("this is no length", _LIKE, first=0, last=len(reading.tokens))


def written(value: Fraction, *, unit: Unit, finest: Fraction | None = None) -> str:
    """Shortest right text for a length, without its unit.

    In inches a length on the graduation is a whole and a fraction in lowest terms; off it,
    or on a graduation that does not halve, decimals to three places. In millimetres two
    decimals at most. Decimals are rounded half to even; a caller who shows one that is not
    exact says "about" himself.

    Args:
        value: The length. [mm]
        unit: Unit to write in.
        finest: Smallest mark on the rule; 1/64 in when not given. Only inches heed it. [mm]

    Returns:
        Text such as `41 1/2`, `-1/8`, `0.734`, `37.5`.

    Raises:
        OutOfRangeError: `finest` is not above 0.
    """
    number = value / unit.size
    if unit is Unit.MM:
        return _decimal(number, places=2)
    halves = number.denominator & (number.denominator - 1) == 0
    if halves and on_grid(value, to=FINEST_INCH if finest is None else finest):
        return _mixed(number)
    return _decimal(number, places=3)


def written_with_unit(value: Fraction, *, unit: Unit, finest: Fraction | None = None) -> str:
    """Text of `written` with its unit behind: `41 1/2 in`, `38 mm`.

    Args:
        value: The length. [mm]
        unit: Unit to write in.
        finest: Smallest mark on the rule, as for `written`. [mm]

    Raises:
        OutOfRangeError: `finest` is not above 0.
    """
    return f"{written(value, unit=unit, finest=finest)} {unit.sign}"


def rounded(value: Fraction, *, to: Fraction) -> Fraction:
    """Mark on the rule nearest to a length.

    Exactly between two marks the even one is taken, counted in marks from 0, so that a
    column of such lengths does not drift to one side.

    Args:
        value: The length. [mm]
        to: Graduation of the rule. [mm]

    Returns:
        A whole multiple of `to`. [mm]

    Raises:
        OutOfRangeError: `to` is not above 0.
    """
    _above_zero(to)
    return round(Fraction(value) / to) * to


def on_grid(value: Fraction, *, to: Fraction) -> bool:
    """Whether a length falls on a mark of the rule exactly.

    Args:
        value: The length. [mm]
        to: Graduation of the rule. [mm]

    Raises:
        OutOfRangeError: `to` is not above 0.
    """
    _above_zero(to)
    return value % to == 0


def _above_zero(graduation: Fraction) -> None:
    if graduation <= 0:
        raise OutOfRangeError(f"graduation {graduation} mm must be above 0 mm")


def _mixed(number: Fraction) -> str:
    whole, rest = divmod(abs(number), 1)
    parts = [str(whole)] if whole or not rest else []
    if rest:
        parts.append(f"{rest.numerator}/{rest.denominator}")
    return ("-" if number < 0 else "") + " ".join(parts)


def _decimal(number: Fraction, *, places: int) -> str:
    steps = round(number * 10**places)
    whole, rest = divmod(abs(steps), 10**places)
    tail = f"{rest:0{places}d}".rstrip("0")
    return ("-" if steps < 0 else "") + str(whole) + (f".{tail}" if tail else "")
