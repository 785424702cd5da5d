"""One solid, cuts that take wood, and wood claimed once: each with a clean twin beside it."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.proofs.work import BACK_EDGE, FAR_END, case, cut, part, stopped_housing

from scantling.findings import Place, Weight
from scantling.parts import Bore, Box, Part, Profile, Span
from scantling.proofs.claims import Claims
from scantling.proofs.one_solid import OneSolid
from scantling.proofs.takes_wood import TakesWood

F = Fraction


def divider(left: F, right: F) -> Part:
    """22 thick, housed from both faces in one line."""
    across = Span(F(100), F(119))
    return part(
        "divider",
        (500, 283, 22),
        cut("housing", "left shelf", Box(along=across, into=Span(None, left))),
        cut("housing", "right shelf", Box(along=across, into=Span(F(22) - right, None))),
    )


def test_a_divider_housed_through_from_both_faces_falls_in_two() -> None:
    (found,) = OneSolid().findings(case(divider(F(12), F(10))))
    assert found.code == "proofs.not-one-solid"
    assert found.weight is Weight.HALT
    assert found.says == "divider falls into 2 pieces once its cuts are made"
    assert found.parts == ("divider",)


def test_a_divider_with_a_skin_left_holds_together() -> None:
    assert OneSolid().findings(case(divider(F(12), F(10) - F(1, 1000)))) == ()


def test_a_part_cut_away_altogether_is_told_so() -> None:
    gone = part("board", (500, 283, 22), cut("rabbet", "back", Box()))
    (found,) = OneSolid().findings(case(gone))
    assert found.says == "board is cut away altogether"


def test_a_finding_stands_where_the_part_is_named() -> None:
    place = Place(file="piece.toml", line=7, column=3)
    piece = replace(case(divider(F(12), F(10))), places={"left shelf": place})
    assert [found.place for found in OneSolid().findings(piece)] == [place]


def test_a_rabbet_without_depth_takes_nothing() -> None:
    for depth, wanted in ((F(0), 1), (F(-2), 1), (F(1, 100), 0)):
        rabbet = cut("rabbet", "back", Box(across=Span(None, F(9)), into=Span(None, depth)))
        found = TakesWood().findings(case(part("side", (800, 283, 19), rabbet)))
        assert len(found) == wanted
        for each in found:
            assert each.code == "proofs.cut-takes-nothing"
            assert each.says == "rabbet (back) takes no wood of the side"


@pytest.mark.parametrize(("place", "missed"), [(F(283) + 3, True), (F(283) + 2, False)])
def test_a_hole_beyond_the_edge_takes_nothing(place: F, *, missed: bool) -> None:
    hole = Bore(axis=2, centre=(F(200), place), radius=F(3), span=Span(None, F(10)))
    found = TakesWood().findings(case(part("side", (800, 283, 19), cut("hole", "pins", hole))))
    assert bool(found) is missed


def test_an_outline_turned_inside_out_takes_nothing() -> None:
    # a tail with more slope than width: its flanks cross
    points = ((F(0), F(20)), (F(0), F(26)), (F(15), F(19)), (F(15), F(27)))
    socket = Profile(axis=2, points=points, open_sides=frozenset({0}))
    (found,) = TakesWood().findings(
        case(part("side", (250, 141, 13), cut("pin 1", "dovetail", socket)))
    )
    assert found.parts == ("side",)


def grooved_stile(shares: frozenset[str] = frozenset()) -> Part:
    groove = cut("groove", "panel", Box(across=Span(None, F(8)), into=Span(F(7), F(15))))
    mortise = cut(
        "mortise",
        "top rail",
        Box(along=Span(F(18), F(54)), across=Span(None, F(38)), into=Span(F(7), F(15))),
        FAR_END,
    )
    return part("stile", (612, 55, 22), groove, replace(mortise, shares=shares))


def test_a_mortise_in_a_groove_is_told_with_how_much_both_claim() -> None:
    (found,) = Claims().findings(case(grooved_stile()))
    assert found.code == "proofs.wood-claimed-twice"
    assert found.says == ("groove (panel) and mortise (top rail) take the same wood of the stile")
    assert found.figure == f"{36 * 8 * 8} mm³"


def test_a_mortise_that_names_the_groove_may_share_its_wood() -> None:
    assert Claims().findings(case(grooved_stile(frozenset({"panel"})))) == ()


def test_cuts_of_one_joint_may_meet() -> None:
    stile = grooved_stile()
    own = tuple(replace(each, owner="top rail") for each in stile.cuts)
    assert Claims().findings(case(replace(stile, cuts=own))) == ()


@pytest.mark.parametrize(("stop", "meets"), [(F(100), False), (F(100) + F(1, 64), True)])
def test_cuts_that_end_in_one_plane_do_not_meet(stop: F, *, meets: bool) -> None:
    side = stopped_housing()  # from 79 to 100
    first = replace(side.cuts[0], shape=Box(along=Span(F(60), F(79)), into=Span(None, F(5))))
    other = Box(along=Span(F(100) - (stop - 100), F(121)), into=Span(None, F(5)))
    cuts = (*side.cuts, replace(first, owner="rail"), cut("groove", "kicker", other))
    found = Claims().findings(case(replace(side, cuts=cuts)))
    assert bool(found) is meets


def test_claims_that_meet_only_outside_the_wood_do_not_meet() -> None:
    # both run out over the back edge, where the cutters of both reach past it
    low = Profile(
        axis=0,
        points=((F(0), F(0)), (F(6), F(0)), (F(0), F(4))),
        open_sides=frozenset({0, 2}),
    )
    beside = Box(across=Span(None, F(6)), into=Span(F(4), F(9)))
    found = part(
        "top",
        (700, 300, 20),
        cut("bevel", "top", low, BACK_EDGE),
        cut("groove", "back", beside, BACK_EDGE),
    )
    assert Claims().findings(case(found)) == ()


def test_two_joints_that_meet_in_many_places_are_told_once() -> None:
    stile = grooved_stile()
    again = replace(
        stile.cuts[1],
        name="haunch",
        shape=Box(along=Span(None, F(18)), across=Span(None, F(8)), into=Span(F(7), F(15))),
    )
    found = Claims().findings(case(replace(stile, cuts=(*stile.cuts, again))))
    assert len(found) == 1
