"""Lengths, read and written: what holds for any text and any value.

The oracles share no code with the reader: texts are built from parts whose value is known,
and a second, much simpler reader judges random texts.
"""

import re
import unicodedata
from fractions import Fraction

from hypothesis import example, given
from hypothesis import strategies as st

from scantling.errors import LengthError
from scantling.units import FOOT, INCH, Unit, length, on_grid, rounded, written, written_with_unit

VALUES = st.fractions(min_value=-3000, max_value=3000, max_denominator=999)
MARKS = st.sampled_from([INCH / 64, INCH / 32, INCH / 10, Fraction(1), Fraction(1, 2)])


@given(value=VALUES, mark=MARKS)
def test_rounded_is_the_nearest_mark(value: Fraction, mark: Fraction) -> None:
    near = rounded(value, to=mark)
    assert on_grid(near, to=mark)
    assert abs(near - value) <= mark / 2
    assert on_grid(value, to=mark) == (near == value)


# ---------------------------------------------------------------------------------- properties


@given(marks=st.integers(-99999, 99999), finest=st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_inches_written_read_back_the_same(marks: int, finest: int) -> None:
    value = marks * INCH / finest
    assert length(written(value, unit=Unit.INCH), unit=Unit.INCH) == value
    assert length(written(value, unit=Unit.INCH, finest=INCH / finest), unit=Unit.INCH) == value


@given(hundredths=st.integers(-999999, 999999))
def test_millimetres_written_read_back_the_same(hundredths: int) -> None:
    value = Fraction(hundredths, 100)
    assert length(written(value, unit=Unit.MM), unit=Unit.MM) == value


@given(value=VALUES, own=st.sampled_from(Unit), other=st.sampled_from(Unit))
def test_text_with_its_unit_means_the_same_in_any_piece(
    value: Fraction, own: Unit, other: Unit
) -> None:
    text = written_with_unit(value, unit=own)
    assert length(text, unit=other) == length(text, unit=own)
    assert abs(length(text, unit=other) - value) <= INCH / 2000


DECIMALS = st.tuples(st.integers(0, 9999), st.integers(1, 3)).map(
    lambda drawn: (
        f"{drawn[0] // 10 ** drawn[1]}.{drawn[0] % 10 ** drawn[1]:0{drawn[1]}}",
        Fraction(drawn[0], 10 ** drawn[1]),
    )
)
PROPER = st.sampled_from([2, 3, 4, 8, 10, 16, 32, 64]).flatmap(
    lambda below: st.integers(1, below - 1).map(
        lambda above: (f"{above}/{below}", Fraction(above, below))
    )
)
GLYPHS = st.sampled_from("¼½¾⅓⅔⅛⅜⅝⅞").map(
    lambda sign: (sign, Fraction(unicodedata.numeric(sign)).limit_denominator(64))
)


@st.composite
def amounts(draw: st.DrawFn, *, below: int = 500) -> tuple[str, Fraction]:
    """A number as a maker writes it, and its value."""
    if draw(st.booleans()):
        return draw(DECIMALS.filter(lambda drawn: drawn[1] < below) | PROPER | GLYPHS)
    whole = draw(st.integers(0, below - 1))
    part, value = draw(PROPER | GLYPHS | st.just(("", Fraction(0))))
    joint = "" if not part else draw(st.sampled_from([" ", "-", "\u00a0", "  "]))
    return f"{whole}{joint}{part}", whole + value


@st.composite
def lengths(draw: st.DrawFn) -> tuple[str, Fraction]:
    """A length with its unit, and its value in millimetres by plain sums."""
    sign = draw(st.sampled_from(["", "-", "−"]))
    gap = draw(st.sampled_from(["", " "]))
    feet = draw(st.none() | st.integers(0, 40))
    if feet is None:
        text, value = draw(amounts())
        name, size = draw(
            st.sampled_from(
                [
                    ("mm", "1"),
                    ("cm", "10"),
                    ("m", "1000"),
                    ("in.", "25.4"),
                    ('"', "25.4"),
                    ("″", "25.4"),
                    ("'", "304.8"),
                    ("feet", "304.8"),
                ]
            )
        )
        total = value * Fraction(size)
        body = f"{text}{gap}{name}"
    else:
        text, value = draw(amounts(below=12))
        foot = draw(st.sampled_from(["'", "' ", " ft ", "′-", "ft. "]))
        body = f"{feet}{foot}{text}{gap}{draw(st.sampled_from(['in', '″', 'inches']))}"
        total = feet * Fraction("304.8") + value * Fraction("25.4")
    return sign + body, -total if sign else total


@given(drawn=lengths(), unit=st.sampled_from(Unit))
def test_length_built_from_known_parts_reads_as_their_sum(
    drawn: tuple[str, Fraction], unit: Unit
) -> None:
    text, value = drawn
    assert length(text, unit=unit) == value


# ------------------------------------------------------------------------------ a second reader

SIZES = {"in": INCH, "ft": FOOT, "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}
SPELLINGS = (
    (r"''|′′|’’|[\"″“”]|inch(es)?|in\b", " in "),
    (r"['′’]|foot|feet|ft\b", " ft "),
    (r"\b(milli)met(re|er)s?", "mm"),
    (r"\b(centi)met(re|er)s?", "cm"),
    (r"\bmet(re|er)s?", "m"),
)


def second_reading(text: str, unit: Unit) -> Fraction:
    """Value of a text that is known to be accepted, by splitting it at its spaces.

    Knows nothing of doubt: it adds what it finds, and fails with ValueError, KeyError or
    AssertionError on anything it cannot add.
    """
    plain = unicodedata.normalize("NFKC", re.sub(r"([¼-¾⅐-⅞])", r" \1", text))
    plain = plain.replace("\u2044", "/").replace("\u2215", "/").replace("\u2212", "-")
    plain = re.sub(r"(?<=[0-9])(?=[A-Za-z])", " ", plain).lower()
    for spelling, name in SPELLINGS:
        plain = re.sub(spelling, name, plain)
    plain = re.sub(r"[\u2010-\u2015]", "-", plain).strip()
    negative = plain.startswith("-")
    words = re.sub(r"\.(?![0-9])", " ", plain.lstrip("-").replace("-", " ")).split()
    total = pending = Fraction(0)
    names = [word for word in words if word.isalpha()]
    for word in words:
        if word.isalpha():
            total += pending * SIZES[word]
            pending = Fraction(0)
        else:
            pending += Fraction(word)
    last = "in" if names == ["ft"] else {Unit.INCH: "in", Unit.MM: "mm"}[unit]
    return (total + pending * SIZES[last]) * (-1 if negative else 1)


SPELLED = ("in", "ft", "mm", "cm", "m", "in.", "feet")


def reading(text: str, unit: Unit) -> Fraction | None:
    """What `length` reads, or None where it refuses and points into the text."""
    fault = None
    try:
        return length(text, unit=unit)
    except LengthError as refusal:
        fault = refusal
    assert 0 <= fault.start <= fault.stop <= len(text)
    assert fault.cure
    return None


FRAGMENTS = st.sampled_from(
    [*2 * "0123456789", *" -/.'\"½⅜″′–,_+e\u00a0\u2044３²x", *SPELLED, " 1/2", "3/4", " ", "12"]
)


@given(text=st.lists(FRAGMENTS, max_size=9).map("".join), unit=st.sampled_from(Unit))
@example(text="2' 3 1/2", unit=Unit.MM)
@example(text="1-1/2-in.", unit=Unit.MM)
def test_random_text_is_refused_or_read_as_a_second_reader_reads_it(text: str, unit: Unit) -> None:
    value = reading(text, unit)
    assert value is None or value == second_reading(text, unit)


@given(text=st.text(max_size=70), unit=st.sampled_from(Unit))
def test_any_text_at_all_is_a_length_or_a_refusal(text: str, unit: Unit) -> None:
    assert isinstance(reading(text, unit), Fraction | None)


@given(drawn=lengths(), at=st.integers(0, 30), sign=st.sampled_from("0123456789/.-' \"½,"))
def test_one_slip_of_the_finger_is_never_read_as_something_else(
    drawn: tuple[str, Fraction], at: int, sign: str
) -> None:
    text = drawn[0][:at] + sign + drawn[0][at:]
    value = reading(text, Unit.INCH)
    assert value is None or value == second_reading(text, Unit.INCH)
