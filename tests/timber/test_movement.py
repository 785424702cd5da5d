"""Movement across the grain: hand figures of the demo cupboard, limits and properties."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.timber.moisture import Season
from scantling.timber.movement import (
    Cut,
    Strain,
    across_thickness,
    coefficient,
    coefficient_from_shrinkage,
    movement,
    movement_from_shrinkage,
    strain,
    within_linear,
)
from scantling.timber.room import Room
from scantling.timber.species import Species, all_species, species

GLAZING = Room(
    dry=Season(humidity=40, temperature=18),
    damp=Season(humidity=75, temperature=20),
    bench=Season(humidity=38, temperature=17),
)
SHOP = Room(
    dry=Season(humidity=28, temperature=21),
    damp=Season(humidity=60, temperature=22),
    bench=Season(humidity=38, temperature=17),
)
JULY = Season(humidity=60, temperature=22)
woods = st.sampled_from(list(all_species().values()))
cuts = st.sampled_from(list(Cut))
moistures = st.floats(0, 22)


HAND = [  # width [in] and growth [in], worked by hand for the glaze cupboard, all flat-sawn
    ("white ash", "39/8", "0.093"),  # drawer front
    ("white ash", "15", "0.286"),  # door panel
    ("yellow-poplar", "225/32", "0.141"),  # back board
    ("white ash", "9", "0.171"),  # stiles of both doors
    ("white ash", "187/16", "0.22"),  # rails either side of a kicker
    ("white ash", "19", "0.36"),  # top
    ("white ash", "69/4", "0.33"),  # case side
]


@pytest.mark.parametrize(("wood", "width", "grow"), HAND)
def test_growth_at_the_moistures_the_hand_figures_used(wood: str, width: str, grow: str) -> None:
    per_point = coefficient(species(wood), Cut.FLAT)

    found = movement(Fraction(width), coefficient=per_point, from_moisture=7.5, to_moisture=14.45)

    half_a_digit = 0.5 * 10.0 ** -len(grow.removeprefix("0."))
    assert found == pytest.approx(float(grow), abs=half_a_digit)


@pytest.mark.parametrize(("wood", "width", "grow"), HAND)
def test_growth_in_the_glazing_room(wood: str, width: str, grow: str) -> None:
    # The room gives 6.977 points; the hand figures took 6.95 from a bench rounded to 7.5 %.
    found = Fraction(width) * strain(species(wood), Cut.FLAT, GLAZING).grow

    assert float(found) == pytest.approx(float(grow), rel=0.02)


@pytest.mark.parametrize(
    ("wood", "width", "swing"),
    [
        ("white oak", 300, 5.6),  # bookcase depth [mm]
        ("red maple", 430, 6.3),  # table top [mm]
        ("eastern white pine", 18.875, 0.204),  # chest lid [in]
    ],
)
def test_swing_of_flat_sawn_parts_in_the_shop(wood: str, width: float, swing: float) -> None:
    found = width * float(strain(species(wood), Cut.FLAT, SHOP).swing)

    assert found == pytest.approx(swing, rel=0.01)


def test_flat_sawn_poplar_is_too_lively_for_the_drawer_side() -> None:
    # Growth plus 1/32 in must not pass the gap of 1/8 in: by hand 0.129 flat-sawn.
    width, gap = Fraction(39, 8), Fraction(1, 8) - Fraction(1, 32)
    poplar = species("yellow-poplar")

    fits = {cut: width * strain(poplar, cut, GLAZING).grow <= gap for cut in Cut}

    assert fits == {Cut.FLAT: False, Cut.RIFT: True, Cut.QUARTER: True}


def test_nothing_shrinks_in_the_glazing_room() -> None:
    found = strain(species("white ash"), Cut.FLAT, GLAZING)

    assert found.shrink < 0
    assert found.narrowest == 0
    assert found.widest == found.grow


def test_doors_made_in_july_shrink_instead() -> None:
    made_in_july = Room(dry=GLAZING.dry, damp=GLAZING.damp, bench=JULY)

    found = strain(species("white ash"), Cut.FLAT, made_in_july)

    # By hand: 10.9 to 7.8 is 3.1 points, x 0.00274; 10.9 to 14.5 is 3.5 points.
    assert float(found.narrowest) == pytest.approx(0.0085, abs=0.0003)
    assert float(found.widest) == pytest.approx(0.0097, abs=0.0003)


def test_rift_lies_half_way() -> None:
    # (0.00169 + 0.00274) / 2, by hand.
    assert coefficient(species("white ash"), Cut.RIFT) == Fraction("0.002215")


def test_thickness_takes_the_other_figure() -> None:
    ash = species("white ash")

    assert across_thickness(ash, Cut.FLAT) == coefficient(ash, Cut.QUARTER) == ash.radial
    assert across_thickness(ash, Cut.QUARTER) == coefficient(ash, Cut.FLAT) == ash.tangential
    assert across_thickness(ash, Cut.RIFT) == coefficient(ash, Cut.RIFT)


@given(wood=woods, cut=cuts)
def test_strain_is_a_six_place_decimal(wood: Species, cut: Cut) -> None:
    found = strain(wood, cut, SHOP)

    per_point = float(coefficient(wood, cut))
    assert float(found.grow) == pytest.approx(per_point * SHOP.gain, abs=0.51e-6)
    assert float(found.shrink) == pytest.approx(per_point * SHOP.loss, abs=0.51e-6)
    assert (found.grow * 10**6).denominator == (found.shrink * 10**6).denominator == 1


@given(wood=woods, cut=cuts, one=moistures, other=moistures)
def test_wetter_wood_is_wider(wood: Species, cut: Cut, one: float, other: float) -> None:
    change = movement(127, coefficient=coefficient(wood, cut), from_moisture=one, to_moisture=other)

    assert (change > 0) == (other > one) or change == 0


@given(wood=woods, cut=cuts, one=moistures, other=moistures, size=st.floats(1, 1000))
def test_going_out_and_coming_back_by_eq_13_3_is_nothing(
    wood: Species, cut: Cut, one: float, other: float, size: float
) -> None:
    total = wood.shrinkage_tangential if cut is Cut.FLAT else wood.shrinkage_radial

    def change(size: float, first: float, last: float) -> float:
        return movement_from_shrinkage(
            size,
            shrinkage=total,
            from_moisture=first,
            to_moisture=last,
            start=wood.shrinkage_start,
        )

    there = size + change(size, one, other)

    assert there + change(there, other, one) == pytest.approx(size, rel=1e-9)


def test_the_two_laws_agree_at_ten_per_cent() -> None:
    # The coefficient is defined on the size at 10 %; there the two laws are one.
    per_point = coefficient_from_shrinkage(shrinkage=7.8)
    straight = movement(400, coefficient=per_point, from_moisture=10, to_moisture=13)
    steep = movement_from_shrinkage(400, shrinkage=7.8, from_moisture=10, to_moisture=13)

    assert straight == pytest.approx(steep, rel=1e-12)


def test_green_to_oven_dry_is_the_whole_shrinkage() -> None:
    # Table 4-3 defines it so: 7.8 % of the green width is lost from 30 % to 0 %.
    lost = movement_from_shrinkage(250, shrinkage=7.8, from_moisture=30, to_moisture=0)

    assert lost == pytest.approx(-0.078 * 250)


@pytest.mark.parametrize(
    ("moisture", "inside"), [(5.99, False), (6, True), (14, True), (14.01, False)]
)
def test_range_of_the_straight_law(moisture: float, *, inside: bool) -> None:
    assert within_linear(moisture) is inside


def test_impossible_moistures_and_shrinkages_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="-1 % lies below 0"):
        movement(10, coefficient=0.002, from_moisture=-1, to_moisture=8)
    with pytest.raises(OutOfRangeError, match="-2 % lies below 0"):
        movement(10, coefficient=0.002, from_moisture=8, to_moisture=-2)
    with pytest.raises(OutOfRangeError, match="23 % lies above 22"):
        movement_from_shrinkage(10, shrinkage=5, from_moisture=23, to_moisture=8, start=22)
    with pytest.raises(OutOfRangeError, match="shrinkage 0 % must be above"):
        movement_from_shrinkage(10, shrinkage=0, from_moisture=12, to_moisture=8)
    with pytest.raises(OutOfRangeError, match="shrinkage -3 % must be above"):
        coefficient_from_shrinkage(shrinkage=-3)


def test_swing_of_a_strain_counts_both_ends() -> None:
    found = Strain(grow=Fraction("0.009"), shrink=Fraction("0.004"))

    assert found.swing == Fraction("0.013")
