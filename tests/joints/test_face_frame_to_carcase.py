"""Face frame to carcase: where members lie, what glue finds there, and limits."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import SHOP, Built, built, woods

from scantling.joints._joint import Bench, Glue, State
from scantling.joints.face_frame_to_carcase import FaceFrameToCarcase
from scantling.parts import Way
from scantling.parts.planned import PlannedPart
from scantling.sizes.linear import exactly
from scantling.solids.contact import patch_area


def told(found: Built) -> set[str]:
    return {
        finding.code
        for finding in found.joint.faults(
            found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
        )
    }


def changed(name: str, change: Callable[[PlannedPart], PlannedPart]) -> Bench:
    bench = FaceFrameToCarcase.bench()
    parts = tuple(change(part) if part.name == name else part for part in bench.parts)
    return replace(bench, parts=parts)


# A stile 45 wide on a side 19 thick and 280 tall; a rail 60 wide from 30 up beside it; a bottom
# 22 thick from 40 up behind both, 210 long from the side on. Worked by hand:
# stile on side 19 x 280, stile on bottom 26 x 22, rail on bottom (229 - 45) x 22.


def test_members_lie_where_they_stand() -> None:
    area = {c.zone: patch_area(c.patch) for c in built(FaceFrameToCarcase.bench()).contacts}
    assert area == pytest.approx(
        {"stile on side": 19 * 280, "stile on bottom": 26 * 22, "rail on bottom": 184 * 22}
    )


def test_glue_goes_by_the_grain() -> None:
    glue = {c.zone: c.glue for c in built(FaceFrameToCarcase.bench()).contacts}
    assert glue == {
        "stile on side": Glue.LONG_GRAIN,
        "stile on bottom": Glue.CROSSING,
        "rail on bottom": Glue.LONG_GRAIN,
    }


def test_the_frame_leaves_forwards_until_it_is_glued() -> None:
    found = built(FaceFrameToCarcase.bench())
    j = found.bench.joined
    ways = {
        state: [
            tuple(map(int, m.way))
            for m in j.joint.moves(j, state=state, sizes=found.sizes, parts=found.parts)
        ]
        for state in State
    }
    assert ways[State.OPEN] == [(0, -1, 0)]
    assert ways[State.LOCKED] == []


def test_strength_is_told_for_each_millimetre_of_edge() -> None:
    found = built(FaceFrameToCarcase.bench())
    j = found.bench.joined
    holds = j.joint.holds(j, sizes=found.sizes, choice=found.choice, woods=woods(found.bench))
    values = {each.what: each.value for each in holds}
    # Wood Handbook table 5-3b: shear of white ash 13.2, of yellow-poplar 8.2 MPa
    assert values["stile along the side"] == pytest.approx(13.2 * 19, rel=0.01)
    assert values["rail along the bottom"] == pytest.approx(8.2 * 22, rel=0.01)


@pytest.mark.parametrize(("gap", "apart"), [("0.1", True), ("0", False)])
def test_a_member_that_lies_on_nothing_is_told(gap: str, *, apart: bool) -> None:
    bench = changed(
        "rail",
        lambda rail: replace(rail, at=(rail.at[0], -exactly(Fraction(gap)), rail.at[2])),
    )
    assert ("face-frame-to-carcase.apart" in told(built(bench))) is apart


def test_end_grain_behind_is_told() -> None:
    # a divider whose grain runs to the front, in place of the bottom
    bench = changed("bottom", lambda bottom: replace(bottom, ways=(Way.BACK, Way.RIGHT, Way.UP)))
    assert "face-frame-to-carcase.end-grain" in told(built(bench))
    assert "face-frame-to-carcase.end-grain" not in told(built(FaceFrameToCarcase.bench()))


@pytest.mark.parametrize(("wide", "too_wide"), [(95, True), (94, False)])
def test_a_wide_meeting_across_the_grain_is_told(wide: int, *, too_wide: bool) -> None:
    # the stile lies on the bottom from 19 to its inner edge: 75 at most
    bench = changed("rail", lambda rail: replace(rail, at=(exactly(wide), *rail.at[1:])))
    found = built(bench, stated={"stile.width": Fraction(wide)})
    assert ("face-frame-to-carcase.wide-glue" in told(found)) is too_wide
