"""Tools, their sizes, and the size taken from those owned."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.shop.read import default_shop
from scantling.shop.tools import SIZED, SMALL, Choice, Tool, nearest_owned, whole_depth
from scantling.units import INCH, Unit

CHISELS = [Fraction(size) for size in (5, 6, 8, 10, 12)]
sizes = st.fractions(1, 60, max_denominator=64)


def tenon(thickness: Fraction) -> Choice | None:
    return nearest_owned(thickness / 3, CHISELS, low=thickness / 4, high=thickness * Fraction(2, 5))


@pytest.mark.parametrize(
    ("thickness", "taken", "wall"),
    [  # worked by hand, chisels 5 6 8 10 12: tenon a third, a quarter to two fifths allowed
        ("20", "6", "7"),
        ("21", "6", "15/2"),  # a tie of 6 and 8
        ("22", "8", "7"),
        ("25", "8", "17/2"),
        ("381/20", "6", "261/40"),  # 3/4 in
    ],
)
def test_tenon_takes_the_chisel_nearest_a_third(thickness: str, taken: str, wall: str) -> None:
    choice = tenon(Fraction(thickness))

    assert choice is not None
    assert choice.size == Fraction(taken)
    assert (Fraction(thickness) - choice.size) / 2 == Fraction(wall)


def test_choice_tells_what_else_would_do() -> None:
    choice = tenon(Fraction(21))

    assert choice is not None
    assert choice.others == (Fraction(8),)
    assert choice.off == -1
    assert (choice.low, choice.high) == (Fraction(21, 4), Fraction(42, 5))
    assert choice.wanted == 7


def test_nothing_owned_inside_the_range_is_no_choice() -> None:
    assert tenon(Fraction(12)) is None  # 3 to 4.8 mm, and the smallest chisel is 5


def test_ends_of_the_range_are_sound() -> None:
    low, high = Fraction(6), Fraction(8)

    assert nearest_owned(Fraction(1), CHISELS, low=low, high=high) is not None
    best = nearest_owned(Fraction(30), CHISELS, low=low, high=high)
    assert best is not None
    assert best.size == 8


def test_a_range_upside_down_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="low 9 mm lies above high 4 mm"):
        nearest_owned(Fraction(6), CHISELS, low=Fraction(9), high=Fraction(4))


@given(wanted=sizes, owned=st.lists(sizes), ends=st.tuples(sizes, sizes))
def test_no_sound_size_lies_nearer(
    wanted: Fraction, owned: list[Fraction], ends: tuple[Fraction, Fraction]
) -> None:
    low, high = sorted(ends)
    sound = [size for size in owned if low <= size <= high]

    choice = nearest_owned(wanted, owned, low=low, high=high)

    if choice is None:
        assert not sound
    else:
        assert choice.size in sound
        assert all(abs(choice.off) <= abs(size - wanted) for size in sound)
        assert {choice.size, *choice.others} == set(sound)


@pytest.mark.parametrize(
    ("wanted", "unit", "set_to"),
    [
        (Fraction(127, 20), Unit.MM, 6),  # 6.35 mm
        (Fraction(7), Unit.MM, 7),
        (Fraction(7, 16) * INCH - Fraction(1, 100), Unit.INCH, 3 * INCH / 8),
        (INCH / 4, Unit.INCH, INCH / 4),
    ],
)
def test_a_depth_never_goes_deeper_than_its_rule(
    wanted: Fraction, unit: Unit, set_to: Fraction
) -> None:
    assert whole_depth(wanted, unit=unit) == set_to


def test_tenons_of_the_workshop_are_its_mortise_chisels() -> None:
    assert default_shop().tenon_sizes == (INCH / 4, 5 * INCH / 16, 3 * INCH / 8)


def test_three_quarter_stock_gets_a_quarter_inch_tenon_here() -> None:
    thick = 3 * INCH / 4

    choice = nearest_owned(
        thick / 3, default_shop().tenon_sizes, low=thick / 4, high=thick * Fraction(2, 5)
    )

    assert choice is not None
    assert choice.size == INCH / 4


def test_only_what_is_listed_is_owned() -> None:
    shop = default_shop()

    assert shop.owns(Tool.FILLISTER)
    assert not shop.owns(Tool.DOVETAIL_PLANE)
    assert shop.first_owned(Tool.DOVETAIL_PLANE, Tool.CHISEL) is Tool.CHISEL
    assert shop.first_owned(Tool.DOVETAIL_PLANE) is None
    assert shop.plane(Tool.DOVETAIL_PLANE) is None


def test_clamps_that_reach_a_span_are_counted() -> None:
    shop = default_shop()

    # 8 at 24, 6 at 36, 6 at 50, 2 at 72 in; 6 quick ones at 12; springs and band not counted.
    assert shop.clamps_reaching(Fraction(12) * INCH) == 28
    assert shop.clamps_reaching(Fraction(42) * INCH) == 8
    assert shop.clamps_reaching(Fraction(73) * INCH) == 0


def test_gauges_hold_as_many_settings_as_there_are_of_them() -> None:
    shop = default_shop()

    assert shop.gauges.marking == 4
    assert shop.holding(Tool.PIN_GAUGE) == 2
    assert shop.holding(Tool.MORTISE_GAUGE) == 1
    assert shop.holding(Tool.PLOUGH) == 1
    assert shop.holding(Tool.DOVETAIL_PLANE) == 0


def test_kerfs_go_with_their_saws() -> None:
    shop = default_shop()
    rip, dovetail = shop.saw(Tool.RIP_SAW), shop.saw(Tool.DOVETAIL_SAW)

    assert rip is not None
    assert dovetail is not None
    assert rip.kerf > dovetail.kerf


def test_bores_join_bits_and_drills_without_doubles() -> None:
    bores = default_shop().bores

    assert list(bores) == sorted(set(bores))
    assert Fraction(5) in bores
    assert bores.count(INCH / 4) == 1


def test_small_tools_have_no_size_listed_elsewhere() -> None:
    assert Tool.KNIFE in SMALL
    assert not SMALL & SIZED
