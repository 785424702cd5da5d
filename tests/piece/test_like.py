"""A length typed anew is written as the one that stood there."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import LengthError
from scantling.piece._file.like import like, unit_written
from scantling.units import INCH, Unit, length


@pytest.mark.parametrize(
    ("old", "typed", "written"),
    [
        ("42", "43 1/2", "43 1/2"),
        ("1 1/2", "2.25", "2 1/4"),
        ("1-1/2", "2 1/4", "2-1/4"),
        ("1½", "2 1/4", "2¼"),
        ("1½", "2 5/16", "2 5/16"),  # no sign for it
        ("1.5", "2 1/4", "2.25"),
        (".75", "7/8", ".875"),
        (".75", "1/3", "1/3"),  # three decimals do not say it
        ("3/4", "0.2", "0.2"),  # no mark of a rule
        ("3/4", " 7/8 ", "7/8"),
        ("38 mm", "40", "40 mm"),
        ("38mm", "40.5", "40.5mm"),
        ("1 1/2 in", "2.5", "2 1/2 in"),
        ('1 1/2"', "2", '2"'),
        ("3/4-in.", "7/8", "7/8-in."),
        ("38 mm", "1 1/2 in", "1 1/2 in"),  # its own unit is the maker's word
        ("2 ft 3 1/2 in", "30", "30"),  # inches follow feet, which one number is not
        ("3.8 cm", "4 1/2", "4.5 cm"),
    ],
)
def test_the_dress_is_kept(old: str, typed: str, written: str) -> None:
    assert like(old, typed, unit=Unit.INCH) == written


@pytest.mark.parametrize("typed", ["nine", "", "1/0", "3,5", "1 5/4"])
def test_what_is_no_length_is_refused(typed: str) -> None:
    with pytest.raises(LengthError):
        like("1 1/2", typed, unit=Unit.INCH)


@pytest.mark.parametrize(
    ("text", "parts"),
    [("38 mm", ("38", " mm")), ("3/4-in.", ("3/4", "-in.")), ('2 1/2"', ("2 1/2", '"')),
     ("42", ("42", "")), ("2' 3 1/2\"", ("2' 3 1/2\"", ""))],
)  # fmt: skip
def test_the_unit_stands_apart_from_the_amount(text: str, parts: tuple[str, str]) -> None:
    assert unit_written(text) == parts


DRESSES = ["42", "1 1/2", "1-1/2", "1½", "1.5", ".75", "38 mm", "1 1/2 in", '3/4"', "3.8 cm"]


@given(
    st.sampled_from(DRESSES),
    st.fractions(min_value=Fraction(1, 64), max_value=200, max_denominator=64),
    st.sampled_from([Unit.INCH, Unit.MM]),
)
def test_no_dress_changes_the_length(old: str, number: Fraction, unit: Unit) -> None:
    whole, rest = divmod(number, 1)
    typed = f"{whole} {rest.numerator}/{rest.denominator}" if rest and whole else str(number)
    sizes = {" mm": Fraction(1), " cm": Fraction(10), " in": INCH, '"': INCH}
    size = sizes.get(unit_written(old)[1], unit.size)
    assert length(like(old, typed, unit=unit), unit=unit) == number * size
