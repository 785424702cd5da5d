"""Wood Handbook, FPL-GTR-190 (2010), chapter 13: movement across the grain, p. 13-18.

Worked example of eq. 13-2 as printed; eq. 13-3 as computed by hand from the printed formula;
the footnote of table 13-5, which says how the coefficients follow from the shrinkage.
"""

from fractions import Fraction

import pytest

from scantling.timber.movement import (
    Cut,
    across_thickness,
    coefficient,
    coefficient_from_shrinkage,
    movement,
    movement_from_shrinkage,
)
from scantling.timber.species import Standing, all_species, species

# Woods whose printed coefficient is not the footnote's: values of a commercial group, of a
# neighbour species, or resting on older shrinkage figures (imports).
NOT_BY_FOOTNOTE = {
    "green ash",
    "sweet birch",
    "mockernut hickory",
    "shagbark hickory",
    "northern red oak",
    "southern red oak",
    "white oak",
    "chestnut oak",
    "true mahogany",
    "African mahogany",
    "Spanish-cedar",
    "teak",
}


def test_white_fir_example_of_eq_13_2_in_millimetres() -> None:
    fir = species("white fir")

    change = movement(232, coefficient=coefficient(fir, Cut.FLAT), from_moisture=8, to_moisture=11)

    assert change == pytest.approx(1.7, abs=0.05)  # printed
    assert 232 + change == pytest.approx(233.7, abs=0.05)  # printed
    assert change == pytest.approx(1.705, abs=0.0005)  # 232 x 0.00245 x 3, by hand


def test_white_fir_example_of_eq_13_2_in_inches() -> None:
    change = movement(9.15, coefficient=Fraction("0.00245"), from_moisture=8, to_moisture=11)

    assert change == pytest.approx(0.067, abs=0.0005)  # printed
    assert 9.15 + change == pytest.approx(9.217, abs=0.0005)  # printed


def test_white_fir_thickness_takes_the_radial_coefficient() -> None:
    assert across_thickness(species("white fir"), Cut.FLAT) == Fraction("0.00112")


def test_white_fir_board_by_eq_13_3() -> None:
    # Computed by hand from the printed formula: 232 x 3 / (30 x 100 / 7.0 - 30 + 8).
    change = movement_from_shrinkage(232, shrinkage=7.0, from_moisture=8, to_moisture=11)

    assert change == pytest.approx(1.712, abs=0.0005)


def test_the_footnote_reproduces_every_other_coefficient() -> None:
    by_footnote = {
        each.name
        for each in all_species().values()
        if all(
            coefficient_from_shrinkage(shrinkage=s, start=each.shrinkage_start)
            == pytest.approx(float(c), abs=1.05e-5)
            for s, c in (
                (each.shrinkage_radial, each.radial),
                (each.shrinkage_tangential, each.tangential),
            )
        )
    }
    printed = {
        each.name
        for each in all_species().values()
        if each.coefficient_standing is not Standing.DERIVED
    }

    assert printed - by_footnote == NOT_BY_FOOTNOTE
    assert len(printed & by_footnote) == 57
