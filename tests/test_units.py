"""Lengths, read and written: known values, refusals, rounding."""

import copy
import pickle
import unicodedata
from fractions import Fraction

import pytest

from scantling.errors import LengthError, OutOfRangeError, ScantlingError
from scantling.units import (
    INCH,
    LONGEST_TEXT,
    Unit,
    length,
    on_grid,
    rounded,
    written,
    written_with_unit,
)


def inches(text: str) -> Fraction:
    return length(text, unit=Unit.INCH) / INCH


# ------------------------------------------------------------------------------ known values


def test_inch_and_foot_are_those_of_1959() -> None:
    # NIST SP 811 (2008), app. B.8, from memory: inch 2.54 E-02 m, foot 3.048 E-01 m, both exact.
    assert length("1 in", unit=Unit.MM) == Fraction("25.4")
    assert length("1 ft", unit=Unit.MM) == Fraction("304.8")


@pytest.mark.parametrize(
    ("fraction", "decimal"),
    # Chart of decimal equivalents as printed inside any tap and drill table; common practice.
    [
        ("1/64", ".015625"),
        ("3/32", ".09375"),
        ("5/16", ".3125"),
        ("27/64", ".421875"),
        ("49/64", ".765625"),
        ("31/32", ".96875"),
    ],
)
def test_fraction_equals_its_printed_decimal(fraction: str, decimal: str) -> None:
    assert inches(fraction) == inches(decimal)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("3/4", Fraction(3, 4)),
        ("1 1/2 in", Fraction(3, 2)),
        ('1-1/2"', Fraction(3, 2)),
        ("1‑1/2 in", Fraction(3, 2)),
        ("1 1/2″", Fraction(3, 2)),
        ("1 1/2”", Fraction(3, 2)),
        ("1 1/2''", Fraction(3, 2)),
        ("3/4-in.", Fraction(3, 4)),
        ("3/4 INCHES", Fraction(3, 4)),
        ("½", Fraction(1, 2)),
        ("1½", Fraction(3, 2)),
        ("1 ⅜", Fraction(11, 8)),
        ("2-⅝ in", Fraction(21, 8)),
        ("⅓", Fraction(1, 3)),
        ("1⁄2", Fraction(1, 2)),
        ("3 5∕8", Fraction(29, 8)),
        ("5/4", Fraction(5, 4)),
        ("10/32", Fraction(5, 16)),
        (".75", Fraction(3, 4)),
        ("0.1", Fraction(1, 10)),
        ("41", Fraction(41)),
        ("  7\t", Fraction(7)),
        ("4\u00a07/8\u202fin", Fraction(39, 8)),
        ("0", Fraction(0)),
        ("3 0/8", Fraction(3)),
        ("-1/4", Fraction(-1, 4)),
        ("−1/4", Fraction(-1, 4)),
        ("-1 1/2", Fraction(-3, 2)),
        ('-1-1/2"', Fraction(-3, 2)),
        ("2' 3 1/2\"", Fraction(55, 2)),
        ("2'-3½\"", Fraction(55, 2)),
        ("2'3", Fraction(27)),
        ("2′ 3 1/2″", Fraction(55, 2)),
        ("2’ 3 1/2”", Fraction(55, 2)),
        ("2 ft 3 1/2 in", Fraction(55, 2)),
        ("2ft. 3.25in.", Fraction(109, 4)),
        ("2 feet 0 1/2 in", Fraction(49, 2)),
        ("2' 1/2\"", Fraction(49, 2)),
        ("-1 foot 6 inches", Fraction(-18)),
        ("2 1/2 ft", Fraction(30)),
        ("38 mm", 38 / INCH),
        ("38mm", 38 / INCH),
        ("3.8 cm", 38 / INCH),
        ("0.38 m", 380 / INCH),
        ("37 1/2 millimetres", Fraction(75, 2) / INCH),
        ("4 Meters", 4000 / INCH),
    ],
)
def test_text_reads_as_makers_mean_it(text: str, value: Fraction) -> None:
    assert inches(text) == value


def test_bare_number_is_in_the_unit_of_the_piece() -> None:
    assert length("37.5", unit=Unit.MM) == Fraction(75, 2)
    assert length("37.5", unit=Unit.INCH) == Fraction("952.5")


def test_decimal_never_passes_through_a_float() -> None:
    assert length("0.1 mm", unit=Unit.MM) * 3 == length("0.3 mm", unit=Unit.MM)
    assert length("0.12345678901234567890123", unit=Unit.MM).denominator > 2**60


@pytest.mark.parametrize("glyph", "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞")
def test_fraction_in_one_character_has_the_value_unicode_gives_it(glyph: str) -> None:
    assert float(inches(f"3{glyph}")) == pytest.approx(3 + unicodedata.numeric(glyph))


@pytest.mark.parametrize(
    ("spelling", "unit"),
    [
        ("inch", Unit.INCH),
        ("in", Unit.INCH),
        ("Inches", Unit.INCH),
        ("mm", Unit.MM),
        ("millimetre", Unit.MM),
        (" millimeters ", Unit.MM),
    ],
)
def test_unit_answers_to_its_usual_spellings(spelling: str, unit: Unit) -> None:
    assert Unit(spelling) is unit


@pytest.mark.parametrize("spelling", ["cm", "m", "foot", ""])
def test_unit_refuses_what_no_piece_is_measured_in(spelling: str) -> None:
    with pytest.raises(ValueError, match="not a valid Unit"):
        Unit(spelling)


# ------------------------------------------------------------------------------- refused texts


@pytest.mark.parametrize(
    ("text", "guilty", "cure"),
    [
        ("", "", "3/4"),
        ("  ", "  ", "3/4"),
        ("1/2/3", "1/2/3", "one fraction"),
        ("3/4/25", "3/4/25", "one fraction"),
        ("2 1/2/3/4 in", "1/2/3/4", "one fraction"),
        ("2024-03-04", "2024-03-04", "one length"),
        ("3-4 in", "3-4", "one length"),
        ("1 1/2 1/2", "1 1/2 1/2", "one only"),
        ("3 4", "3 4", "one only"),
        ("1 200 mm", "1 200", "one only"),
        ("½½", "½½", "one only"),
        ("1½2", "1½2", "one only"),
        ("1/2.5", "1/2.5", "one only"),
        ("1/0", "1/0", "3/4"),
        ("7 3/00 in", "3/00", "3/4"),
        ("1 5/4", "5/4", "2 1/4"),
        ("1 8/8", "8/8", "2 1/4"),
        ("2' 3 5/4\"", "5/4", "2 1/4"),
        ("11/2", "11/2", "apart"),
        ("about 31/2 in", "about", "in, ft, mm"),
        ("12\"6'", "6'", "6 ft 12 in"),
        ("12 in 6 ft", "6 ft", "6 ft 12 in"),
        ("2' 14\"", "14", "carry"),
        ("1'200", "200", "carry"),
        ("2' 12\"", "12", "carry"),
        ("2 ft 1/2", "1/2", "2 1/2 ft"),
        ("2' ½", "½", "2 1/2 ft"),
        ("2 1/2' 3\"", "2 1/2", "2 ft 6 in"),
        ("2.5 ft 3 in", "2.5", "2 ft 6 in"),
        ("2 ft3", "3", "space"),
        ("38 mm2", "2", "space"),
        ("1 in 3 mm", "3 mm", "one length"),
        ("1 m 20 cm", "20 cm", "one length"),
        ("3 in mm", "mm", "in, ft, mm"),
        ("1,200", "1,200", "1200 or 1.2"),
        ("1,234,567", "1,234,567", "1200 or 1.2"),
        ("37,5 mm", "37,5", "37.5 mm"),
        ("1,88 m", "1,88", "1.88 m"),
        ("3/4, 1/2", ",", "point"),
        ("1_200", "1_200", "1200"),
        ("1e3", "1e3", "1000"),
        ("1.5E-3", "1.5E-3", "1000"),
        ("1.", "1.", "1.5"),
        ("1.2.3", "1.2.3", "1.5"),
        ("12..5", "12..5", "1.5"),
        ("1 / 2", "/", "1/2"),
        ("3/ in", "/", "1/2"),
        ("1.5/2", "/", "1/2"),
        ("1 - 1/2", " - ", "with a space"),
        ("1- 1/2", "- ", "with a space"),
        ("1–1/2", "–", "with a space"),
        ("1−1/2", "−", "with a space"),
        ("- 1/4", "- ", "-1/4"),
        ("--1/4", "--", "-1/4"),
        ("-", "-", "-1/4"),
        ("+1/4", "+", "plus"),
        ("38 yd", "yd", "in, ft, mm"),
        ("38 M", "M", "in, ft, mm"),
        ("3/4 x 1/2", "x", "in, ft, mm"),
        ("3O mm", "O", "in, ft, mm"),
        ("inf", "inf", "in, ft, mm"),
        ("in", "in", "3/4"),
        ("'3/4'", "'", "3/4"),
        ("３/4", "３", "0 to 9"),
        ("٣ mm", "٣", "0 to 9"),
        ("1³⁄₈", "³", "0 to 9"),
        ("⅟8", "⅟", "3/4"),
        ("3↉", "↉", "3/4"),
        ("3\n4", "\n", "3/4"),
        ("3\u200b mm", "\u200b", "3/4"),
        ("3/4 €", "€", "3/4"),
        ("3/4-", "-", "1-1/2"),
    ],
)
def test_doubtful_text_is_refused_with_its_guilty_part_and_a_cure(
    text: str, guilty: str, cure: str
) -> None:
    for unit in Unit:
        with pytest.raises(LengthError) as caught:
            length(text, unit=unit)
        fault = caught.value
        assert (fault.text, text[fault.start : fault.stop]) == (text, guilty)
        assert cure in fault.cure


def test_guilty_part_is_counted_in_characters_of_the_text_as_given() -> None:
    with pytest.raises(LengthError) as caught:
        inches("  ½ 3/4 in")
    assert (caught.value.start, caught.value.stop) == (2, 7)


@pytest.mark.parametrize("text", ["9" * 5000, "1/" + "0" * 5000, " " * 61, "½" * 70])
def test_endless_text_is_refused_at_once(text: str) -> None:
    with pytest.raises(LengthError) as caught:
        inches(text)
    assert (caught.value.start, caught.value.stop) == (LONGEST_TEXT, len(text))


def test_longest_text_is_still_read() -> None:
    assert inches("1/4".rjust(LONGEST_TEXT)) == Fraction(1, 4)


@pytest.mark.parametrize("twin", ["1 1/2", "3 4/5", "5/4", "10/4", "3/16", "13/16", "12/2"])
def test_fraction_that_cannot_have_lost_a_space_is_read(twin: str) -> None:
    assert inches(twin) == sum(map(Fraction, twin.split()))


def test_run_together_fraction_names_both_readings() -> None:
    with pytest.raises(LengthError, match="11/8 may be 1 3/8, or 1 1/8 without its space"):
        inches("11/8")


def test_refusal_is_a_value_error_and_survives_copying() -> None:
    with pytest.raises(ValueError, match="below its stroke") as caught:
        inches("1/0")
    fault = caught.value
    assert isinstance(fault, ScantlingError)
    for twin in (copy.copy(fault), pickle.loads(pickle.dumps(fault))):  # noqa: S301 - our own bytes
        assert vars(twin) == vars(fault)
        assert str(twin) == str(fault)


# ------------------------------------------------------------------------------------- written


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (Fraction(83, 2), "41 1/2"),
        (Fraction(3, 4), "3/4"),
        (Fraction(0), "0"),
        (Fraction(-1, 8), "-1/8"),
        (Fraction(-9, 8), "-1 1/8"),
        (Fraction(12), "12"),
        (Fraction(97, 64), "1 33/64"),
        (Fraction(1, 128), "0.008"),
        (Fraction(367, 500), "0.734"),
        (Fraction(1, 3), "0.333"),
        (Fraction(21, 10), "2.1"),
        (Fraction(-1, 5), "-0.2"),
        (Fraction(1, 10000), "0"),
        (Fraction(-1, 10000), "0"),
        (Fraction(19999, 10000), "2"),
    ],
)
def test_inches_are_written_as_a_rule_shows_them(value: Fraction, text: str) -> None:
    assert written(value * INCH, unit=Unit.INCH) == text


def test_fraction_finer_than_the_rule_is_written_in_decimals() -> None:
    value = INCH * Fraction(33, 64)
    assert written(value, unit=Unit.INCH, finest=INCH / 32) == "0.516"
    assert written(value, unit=Unit.INCH, finest=INCH / 64) == "33/64"
    assert written(INCH / 128, unit=Unit.INCH, finest=INCH / 128) == "1/128"


def test_rule_in_tenths_is_written_in_decimals() -> None:
    assert written(INCH * Fraction(3, 10), unit=Unit.INCH, finest=INCH / 10) == "0.3"


def test_millimetre_mark_makes_no_fraction_of_an_inch() -> None:
    assert written(Fraction(1), unit=Unit.INCH, finest=Fraction(1)) == "0.039"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("38", "38"),
        ("37.5", "37.5"),
        ("17.44", "17.44"),
        ("17.4449", "17.44"),
        ("17.445", "17.44"),  # half to even
        ("17.455", "17.46"),
        ("100", "100"),
        ("-0.004", "0"),
        ("-1.05", "-1.05"),
    ],
)
def test_millimetres_are_written_with_two_decimals_at_most(value: str, text: str) -> None:
    assert written(Fraction(value), unit=Unit.MM) == text


def test_unit_stands_behind_when_asked_for() -> None:
    assert written_with_unit(INCH * Fraction(83, 2), unit=Unit.INCH) == "41 1/2 in"
    assert written_with_unit(Fraction(38), unit=Unit.MM) == "38 mm"
    assert written_with_unit(INCH / 64, unit=Unit.INCH, finest=INCH / 32) == "0.016 in"


# ------------------------------------------------------------------------------------- rounding


@pytest.mark.parametrize(
    ("sixtyfourths", "thirtyseconds"), [(1, 0), (3, 2), (5, 2), (7, 4), (-1, 0), (-3, -2), (6, 3)]
)
def test_half_way_goes_to_the_even_mark(sixtyfourths: int, thirtyseconds: int) -> None:
    mark = INCH / 32
    assert rounded(sixtyfourths * INCH / 64, to=mark) == thirtyseconds * mark


@pytest.mark.parametrize("graduation", [Fraction(0), Fraction(-1, 4)])
def test_graduation_must_be_above_zero(graduation: Fraction) -> None:
    for ask in (rounded, on_grid):
        with pytest.raises(OutOfRangeError, match="graduation"):
            ask(Fraction(3), to=graduation)
    with pytest.raises(OutOfRangeError, match="graduation"):
        written(INCH, unit=Unit.INCH, finest=graduation)
