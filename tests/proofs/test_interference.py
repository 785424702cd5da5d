"""Parts in the same place, and presses that are meant."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.proofs.work import at, case, part, stopped_housing

from scantling.joints._joint import Press
from scantling.parts import Part, Placement, Way
from scantling.proofs._proof import Case
from scantling.proofs.interference import Interference
from scantling.solids.pairs import overlaps
from scantling.units import Unit

F = Fraction


THICK = F(21)


def shelf(*, wide: F, deep: F, tall: F, thick: F = THICK) -> Part:
    """A shelf to stand in the housing of the side: to its right, face edge in front."""
    board = part("shelf", (300, 269, thick))
    placement = Placement(along=Way.RIGHT, across=Way.BACK, into=Way.UP, at=(wide, deep, tall))
    return replace(board, placement=placement)


def left_side() -> Part:
    """Face side at 19 from the left, looking right; foot at 100, front at 20."""
    return at(stopped_housing(), 19, 20, 100)


HOME = {"wide": F(13), "deep": F(34), "tall": F(179)}


def test_a_shelf_home_in_its_housing_overlaps_nothing() -> None:
    assert Interference().findings(case(left_side(), shelf(**HOME))) == ()


@pytest.mark.parametrize(
    ("moved", "volume"),
    [
        ({"wide": F(13) - F(1, 8)}, F(1, 8) * 269 * 21),
        ({"deep": F(34) - F(1, 64)}, F(1, 64) * 6 * 21),
        ({"tall": F(179) + F(1, 5)}, F(1, 5) * 6 * 269),
        ({"thick": F(21) + F(1, 50)}, F(1, 50) * 6 * 269),
    ],
)
def test_a_shelf_that_is_not_quite_home_overlaps_by_the_slice(
    moved: dict[str, F], volume: F
) -> None:
    piece = case(left_side(), shelf(**{**HOME, **moved}))
    (found,) = Interference().findings(piece)
    assert found.code == "proofs.parts-overlap"
    assert found.parts == ("shelf", "side")
    (lap,) = overlaps(piece.standing, store=piece.store)
    assert lap.volume == pytest.approx(float(volume), rel=1e-5)


def test_a_finding_says_how_deep_in_the_makers_unit() -> None:
    piece = case(left_side(), shelf(**{**HOME, "wide": F(13) - F(1, 2)}))
    (found,) = Interference().findings(piece)
    assert found.says == "shelf and side are in the same place, 0.5 mm deep"
    (found,) = Interference().findings(replace(piece, unit=Unit.INCH))
    assert found.says == "shelf and side are in the same place, 1/64 in deep"


def test_an_amount_below_what_a_rule_shows_is_told_as_under_it() -> None:
    assert case().said(0.002) == "under 0.01 mm"
    assert replace(case(), unit=Unit.INCH).said(0.002) == "under 1/64 in"


def pressed(volume: F, *, declared: tuple[F, ...]) -> Case:
    piece = case(left_side(), shelf(**{**HOME, "wide": F(13) - volume / 269 / 21}))
    presses = tuple(
        Press(between=between, volume=each, because="a screw bites")
        for each, between in zip(declared, (("side", "shelf"), ("shelf", "side")), strict=False)
    )
    return replace(piece, presses=presses)


def test_a_press_that_is_declared_is_allowed() -> None:
    assert Interference().findings(pressed(F(50), declared=(F(50),))) == ()


def test_presses_of_one_pair_add_up_whichever_is_named_first() -> None:
    assert Interference().findings(pressed(F(50), declared=(F(20), F(30)))) == ()


@pytest.mark.parametrize(("declared", "word"), [(F(49), "more"), (F(51), "less")])
def test_a_press_by_other_than_declared_is_told(declared: F, word: str) -> None:
    (found,) = Interference().findings(pressed(F(50), declared=(declared,)))
    assert found.code == "proofs.press-differs"
    assert found.says == f"shelf and side press into each other {word} than they are meant to"
    assert found.limit == f"{declared} mm³"


def test_a_press_that_is_not_there_is_told() -> None:
    piece = replace(
        case(left_side(), shelf(**{**HOME, "wide": F(14)})),
        presses=(Press(between=("side", "shelf"), volume=F(3), because="a screw bites"),),
    )
    (found,) = Interference().findings(piece)
    assert found.figure == "0 mm³"
