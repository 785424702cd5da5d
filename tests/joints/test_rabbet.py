"""Rabbet: sizes by rule, stops, what lies in it, and limits."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import SHOP, Built, built

from scantling.joints._joint import Bench, Said, State
from scantling.joints.rabbet import Rabbet
from scantling.parts import Surface
from scantling.proofs.contact import TrueContact
from scantling.shop.habits import Habits
from scantling.shop.tools import Tool
from scantling.solids.contact import patch_area
from scantling.units import INCH

NAME = "back in side"


def said(value: int | str) -> Said:
    return Said(value=Fraction(value), text=str(value))


def case(joint: Rabbet, *, alone: bool = False, show: frozenset[Surface] = frozenset()) -> Bench:
    bench = Rabbet.bench()
    side, back = bench.parts
    seats = dict(bench.joined.seats)
    if alone:
        del seats["enters"]
    return replace(
        bench,
        parts=(replace(side, show=show), back),
        joined=replace(bench.joined, joint=joint, seats=seats),
    )


def told(found: Built) -> set[str]:
    return {
        finding.code
        for finding in found.joint.faults(
            found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
        )
    }


def test_back_rabbet_of_a_three_quarter_inch_side_for_a_half_inch_back() -> None:
    # half the thickness deep, the back and 1/16 in wide: 3/8 and 9/16 in, by hand
    found = built(
        case(Rabbet()),
        stated={"side.thickness": INCH * 3 / 4, "back.thickness": INCH / 2},
        grid=INCH / 32,
    )
    assert found.sizes[f"{NAME}.depth"] == found.sizes[f"{NAME}.entry"] == INCH * 3 / 8
    assert found.sizes[f"{NAME}.width"] == INCH * 9 / 16


def test_an_empty_rabbet_is_half_as_wide_again_as_deep() -> None:
    found = built(case(Rabbet(deep=said(8)), alone=True))
    assert found.sizes[f"{NAME}.width"] == 12


def test_through_rabbet_takes_width_by_depth_by_length() -> None:
    found = built(case(Rabbet(wide=said(13), deep=said(9))))
    assert found.volume("side") == pytest.approx(300 * 280 * 19 - 13 * 9 * 300)


@pytest.mark.parametrize(
    ("stopped", "length"), [("near", 300 - 10), ("far", 300 - 10), ("both", 300 - 20)]
)
def test_a_stopped_one_leaves_what_a_corner_as_thick_covers(stopped: str, length: int) -> None:
    # a bottom 19 thick, rabbeted 9 from inside, meets it 10 from the end: by hand
    joint = Rabbet(wide=said(13), deep=said(9), stopped=stopped)  # type: ignore[arg-type]  # listed
    found = built(case(joint))
    assert found.volume("side") == pytest.approx(300 * 280 * 19 - 13 * 9 * length)


def test_a_stop_said_is_a_stop() -> None:
    found = built(case(Rabbet(wide=said(13), deep=said(9), far_stop=said(25))))
    assert found.volume("side") == pytest.approx(300 * 280 * 19 - 13 * 9 * 275)


def test_back_lies_on_the_shoulder_and_clear_of_the_floor() -> None:
    found = built(case(Rabbet(wide=said(13), deep=said(9))))
    (contact,) = found.contacts
    assert contact.zone == "shoulder"
    assert patch_area(contact.patch) == pytest.approx((9 - 1) * 260)


def test_back_up_to_the_floor_meets_both() -> None:
    bench = case(Rabbet(wide=said(13), deep=said(9)))
    side, back = bench.parts
    home = replace(back, at=(side.thickness - bench.joined.entry, back.at[1], back.at[2]))
    found = built(replace(bench, parts=(side, home)))
    area = {c.zone: patch_area(c.patch) for c in found.contacts}
    assert area == pytest.approx({"floor": 12 * 260, "shoulder": 9 * 260})
    assert TrueContact().findings(found.case()) == ()


def test_a_stop_closes_the_way_along() -> None:
    ways = []
    for joint in (Rabbet(), Rabbet(stopped="near"), Rabbet(stopped="both")):
        found = built(case(joint))
        moves = joint.moves(
            found.bench.joined, state=State.OPEN, sizes=found.sizes, parts=found.parts
        )
        ways.append(sorted(tuple(map(int, move.way)) for move in moves))
    out, behind, up, down = (1, 0, 0), (0, 1, 0), (0, 0, 1), (0, 0, -1)
    assert ways == [[down, up, behind, out], [up, behind, out], [behind, out]]


def test_stopped_work_is_chopped() -> None:
    tools = []
    for joint in (Rabbet(), Rabbet(stopped="both")):
        found = built(case(joint))
        (done,) = joint.work(found.bench.joined, choice=found.choice, shop=SHOP, habits=Habits())
        tools.append((done.name, done.tool))
    assert tools == [("cut rabbet", Tool.FILLISTER), ("cut stopped rabbet", Tool.CHISEL)]


@pytest.mark.parametrize(("thick", "limit"), [(19, 12), (13, 8)])
def test_thin_wood_beside_it_is_told(thick: int, limit: int) -> None:
    # a third of 19, and 5 where that is more
    for deep, thin in ((Fraction(limit) + 1, True), (Fraction(limit), False)):
        joint = Rabbet(deep=Said(value=deep), wide=said(13))
        found = built(case(joint), stated={"side.thickness": Fraction(thick)})
        assert ("rabbet.thin" in told(found)) is thin


def test_an_open_end_that_shows_is_told() -> None:
    show = frozenset({Surface.FAR_END})
    assert "rabbet.shows" in told(built(case(Rabbet(), show=show)))
    assert "rabbet.shows" not in told(built(case(Rabbet(stopped="far"), show=show)))
    assert "rabbet.shows" in told(built(case(Rabbet(stopped="near"), show=show)))
