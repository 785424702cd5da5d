"""Faces that are said to meet."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.proofs.test_interference import HOME, left_side, shelf
from tests.proofs.work import case, cut

from scantling.findings import Weight
from scantling.joints._joint import Contact, Fit, Glue
from scantling.parts import Box, Part, Span
from scantling.proofs.contact import TrueContact

F = Fraction


def floor(*, glue: Glue = Glue.END_GRAIN) -> Contact:
    """The floor of the housing: 21 by 269, 6 deep in the side, where the shelf's end stands."""
    corners = ((34, 179), (303, 179), (303, 200), (34, 200))
    return Contact(
        between=("side", "shelf"),
        joined="shelf in side",
        zone="floor",
        glue=glue,
        fit=Fit.PRESS,
        patch=tuple((F(13), F(deep), F(tall)) for deep, tall in corners),
    )


def told(side: Part, board: Part, contact: Contact) -> list[tuple[str, Weight]]:
    piece = replace(case(side, board), contacts=(contact,))
    return [(found.figure, found.weight) for found in TrueContact().findings(piece)]


def test_a_shelf_home_in_its_housing_stands_on_all_of_its_floor() -> None:
    assert told(left_side(), shelf(**HOME), floor()) == []


def test_a_shelf_short_of_the_floor_touches_nowhere() -> None:
    short = shelf(**{**HOME, "wide": F(13) + F(1, 100)})
    assert told(left_side(), short, floor()) == [("0 mm²", Weight.HALT)]


def test_dry_faces_that_do_not_meet_are_only_worth_minding() -> None:
    short = shelf(**{**HOME, "wide": F(13) + F(1, 100)})
    assert told(left_side(), short, floor(glue=Glue.DRY)) == [("0 mm²", Weight.MIND)]


def test_a_notch_in_the_shelf_is_missed_from_the_floor() -> None:
    notch = cut("notch", "shelf in side", Box(along=Span(None, F(6)), across=Span(None, F(12))))
    board = replace(shelf(**HOME), cuts=(notch,))
    ((figure, _),) = told(left_side(), board, floor())
    assert float(figure.split()[0]) == pytest.approx(21 * (269 - 12), rel=1e-5)


def test_the_finding_names_zone_joint_and_share() -> None:
    notch = cut("notch", "shelf in side", Box(along=Span(None, F(6)), across=Span(None, F(67))))
    piece = replace(case(left_side(), replace(shelf(**HOME), cuts=(notch,))), contacts=(floor(),))
    (found,) = TrueContact().findings(piece)
    assert found.code == "proofs.no-contact"
    assert found.says == (
        "side and shelf do not meet over all of the floor of shelf in side: 75% of it touches"
    )
    assert found.limit == f"{21 * 269} mm²"


@pytest.mark.parametrize(("taken", "found"), [(134, 0), (135, 1)])
def test_another_joint_may_take_up_to_half_of_a_patch(taken: int, found: int) -> None:
    notch = cut("notch", "slip", Box(along=Span(None, F(6)), across=Span(None, F(taken))))
    board = replace(shelf(**HOME), cuts=(notch,))
    assert len(told(left_side(), board, floor())) == found


def test_a_hair_off_one_edge_of_the_floor_is_noticed() -> None:
    # the shelf a tenth thinner than its housing leaves a strip of 0.1 by 269
    ((figure, _),) = told(left_side(), shelf(**HOME, thick=F(209, 10)), floor())
    assert float(figure.split()[0]) == pytest.approx(20.9 * 269, rel=1e-5)


@pytest.mark.parametrize(("glue", "weight"), [(Glue.END_GRAIN, "halt"), (Glue.DRY, "mind")])
def test_a_face_that_the_sizes_leave_nothing_of_is_named(glue: Glue, weight: str) -> None:
    flat = replace(floor(glue=glue), patch=tuple((F(13), d, F(179)) for _, d, _ in floor().patch))
    piece = replace(case(left_side(), shelf(**HOME)), contacts=(flat,))
    (found,) = TrueContact().findings(piece)
    assert (found.code, found.weight) == ("proofs.no-face", weight)
    assert found.says.startswith("shelf in side: the sizes leave no face")
    assert "(floor)" in found.says
    assert found.parts == ("side", "shelf")
