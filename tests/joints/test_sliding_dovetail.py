"""Sliding dovetail: hand-worked figures of straight, stopped and tapered ones, and limits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import SHOP, Built, built, woods

from scantling.joints._joint import Bench, Said, Seat, State
from scantling.joints.sliding_dovetail import SlidingDovetail
from scantling.parts import Corner, Surface, Taper
from scantling.proofs.contact import TrueContact
from scantling.proofs.interference import Interference
from scantling.proofs.one_solid import OneSolid
from scantling.shop.habits import Habits
from scantling.solids.contact import patch_area

NAME = "shelf in side"


def said(value: int | str) -> Said:
    return Said(value=Fraction(value), text=str(value))


def case(joint: SlidingDovetail) -> Bench:
    """A side 280 deep and a shelf as deep, 21 thick, fronts level."""
    bench = SlidingDovetail.bench()
    seats: Mapping[str, tuple[Seat, ...]] = {
        "receives": (replace(bench.joined.seat("receives"), across=bench.parts[0].at[1]),),
        "enters": (Seat(part="shelf", corner=Corner(face=Surface.BACK_FACE)),),
    }
    side, shelf = bench.parts
    parts = (side, replace(shelf, at=(shelf.at[0], side.at[1], shelf.at[2])))
    return replace(bench, parts=parts, joined=replace(bench.joined, joint=joint, seats=seats))


def deep(joint: SlidingDovetail, **sizes: int | str) -> Built:
    given = {"side.width": Fraction(280), "shelf.width": Fraction(280)}
    return built(case(joint), stated=given | {n: Fraction(v) for n, v in sizes.items()})


def hand(**options: object) -> SlidingDovetail:
    """Tail 6 deep, tip 2 in from the faces, 1:6, half a millimetre under it, stopped at 15."""
    usual = {
        "deep": said(6),
        "set_in": said(2),
        "slope": said("1/6"),
        "floor_gap": said("1/2"),
        "stop": said(15),
        "front_gap": said(1),
    }
    return SlidingDovetail(**{**usual, **options})  # type: ignore[arg-type]  # options of one joint


def drawn(found: Built) -> Mapping[str, Fraction]:
    j = found.bench.joined
    return {d.word: d.value for d in j.joint.drawn(j, sizes=found.sizes, choice=found.choice)}


def void(found: Built) -> float:
    """Room left in the socket, by the solids."""
    side, shelf = (found.parts[name].extent for name in ("side", "shelf"))
    socket = float(side.length * side.width * side.thickness) - found.volume("side")
    outside = float(found.sizes["outside"] * shelf.width * shelf.thickness)
    return socket - (found.volume("shelf") - outside)


def told(found: Built) -> set[str]:
    return {
        finding.code
        for finding in found.joint.faults(
            found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
        )
    }


# By hand for a shelf 21 thick, tip 2 in, 6 deep, 1:6: tip 17, neck 15, shoulders 3, floor at
# 6 1/2 deep 15 + 2/6 x 6 1/2 = 103/6; with 1:8 the neck is 15 1/2.


def test_tail_and_socket_have_their_hand_worked_widths() -> None:
    found = drawn(deep(hand(straight=True)))
    assert found["tip"] == 17
    assert found["neck"] == 15
    assert found["near shoulder"] == found["far shoulder"] == 3
    assert found["floor of the socket"] == Fraction(103, 6)
    assert drawn(deep(hand(straight=True, slope=said("1/8"))))["neck"] == Fraction(31, 2)


def test_straight_stopped_one_leaves_its_hand_worked_void() -> None:
    # 1/2 (17 + 1/12) 265 under the tail, 6 x 16 at the stop
    found = deep(hand(straight=True))
    assert void(found) == pytest.approx(float(Fraction(2359) + Fraction(13, 24)), rel=1e-9)


def test_taper_opens_the_mouth_behind_as_worked_by_hand() -> None:
    found = drawn(deep(hand(taper=said("1/192"))))
    assert found["neck"] == 15
    assert found["mouth at the back"] == Fraction(3145, 192)
    assert found["short of home when 0.1 mm too fat"] == Fraction("19.2")
    ten_and_a_half_inches = Fraction("10.5")
    assert ten_and_a_half_inches * Fraction(1, 192) == Fraction(7, 128)


def test_tapered_void_is_the_straight_one_wider_by_the_taper() -> None:
    # the floor is wider by 1/192 of the way behind, 265/192 at the back, so half of that over all;
    # the room at the stop by half a millimetre's taper
    floor = Fraction(1, 2) * (17 + Fraction(1, 12) + Fraction(265, 192) / 2) * 265
    stop = 6 * (16 + Fraction(1, 192) / 2)
    assert void(deep(hand(taper=said("1/192")))) == pytest.approx(float(floor + stop), rel=1e-9)


def test_with_a_full_tip_the_taper_is_taken_off_towards_the_stop() -> None:
    found = deep(hand(taper=said("1/192"), set_in=said(0)))
    tips = drawn(found)
    assert tips["tip at the back"] == 21
    assert tips["tip"] == 21 - Fraction(265, 192)
    assert isinstance(found.cut("shelf", "near flank").shape, Taper)


@pytest.mark.parametrize("set_in", ["0", "1", "2", "5/2"])
@pytest.mark.parametrize("taper", ["1/320", "1/64"])
@pytest.mark.parametrize("stops", [True, False])
def test_every_set_in_and_taper_closes(set_in: str, taper: str, *, stops: bool) -> None:
    through = {} if stops else {"stop": None, "front_gap": None}
    found = deep(hand(set_in=said(set_in), taper=said(taper), **through))
    for proof in (Interference, TrueContact, OneSolid):
        assert proof().findings(found.case()) == ()


def test_long_ones_are_tapered_and_short_ones_are_not() -> None:
    for width, taper in ((200, 0), (201, Fraction(1, 128))):
        found = deep(SlidingDovetail(), **{"side.width": 201, "shelf.width": width})
        assert found.choice["taper"] == taper


def test_slope_follows_the_wood_of_the_tail() -> None:
    bench = case(SlidingDovetail())
    slopes = {}
    for wood in ("yellow-poplar", "eastern white pine"):
        parts = (bench.parts[0], replace(bench.parts[1], wood=wood))
        slopes[wood] = built(replace(bench, parts=parts)).choice["slope"]
    assert slopes == {"yellow-poplar": Fraction(1, 8), "eastern white pine": Fraction(1, 6)}


def test_only_a_straight_through_one_leaves_forwards() -> None:
    ways = []
    for joint in (
        hand(straight=True, stop=None, front_gap=None),
        hand(straight=True),
        hand(taper=said("1/192"), stop=None, front_gap=None),
    ):
        found = deep(joint)
        moves = joint.moves(
            found.bench.joined, state=State.OPEN, sizes=found.sizes, parts=found.parts
        )
        ways.append(sorted(int(move.way[1]) for move in moves))
    assert ways == [[-1, 1], [1], [1]]


def test_contact_is_flanks_and_shoulders() -> None:
    area = {c.zone: patch_area(c.patch) for c in deep(hand(straight=True)).contacts}
    flank = 264 * (36 + 1) ** 0.5  # 6 deep, 1 out, from 16 behind the front
    assert area == pytest.approx(
        {
            "near flank": flank,
            "far flank": flank,
            "near shoulder": 3 * 265,
            "far shoulder": 3 * 265,
            "notch shoulder": 15 * 21,
        }
    )


def test_pull_is_held_by_the_undercut() -> None:
    found = deep(hand(straight=True))
    (estimate,) = found.joint.holds(
        found.bench.joined, sizes=found.sizes, choice=found.choice, woods=woods(found.bench)
    )
    # Wood Handbook table 5-3b: yellow-poplar 3.4 MPa across the grain; 2 x 1/6 x 6 x 264
    assert estimate.value == pytest.approx(3.4 * 2 * 264, rel=0.03)


def test_socket_or_tail_first_is_the_makers_habit() -> None:
    found = deep(hand())
    names = []
    for first in (True, False):
        done = found.joint.work(
            found.bench.joined, choice=found.choice, shop=SHOP, habits=Habits(socket_first=first)
        )
        names.append([each.name for each in done if each.name.startswith("cut ")])
    assert names[0] == ["cut socket", "cut sliding tail"]
    assert names[1] == names[0][::-1]


@pytest.mark.parametrize(
    ("code", "guilty", "twin"),
    [
        ("long-straight", {"stop": said("28.9")}, {"stop": said(29)}),
        ("steep", {"slope": said("0.21")}, {"slope": said("1/5")}),
        ("deep", {"deep": said("9.1")}, {"deep": said(9)}),
        ("thin-floor", {"deep": said("13.6")}, {"deep": said("13.5")}),
        ("shallow", {"deep": said("4.2")}, {"deep": said("4.25")}),
    ],
)
def test_limits(code: str, guilty: dict[str, Said], twin: dict[str, Said]) -> None:
    found = [
        f"sliding-dovetail.{code}" in told(deep(hand(straight=True, **options)))
        for options in (guilty, twin)
    ]
    assert found == [True, False]


def test_short_grain_beyond_the_socket_is_told() -> None:
    # twice the socket's depth of 6 1/2 beyond 80 and 21
    for length, short in (("113.9", True), ("114", False)):
        found = deep(hand(straight=True), **{"side.length": length})
        assert ("sliding-dovetail.short-grain" in told(found)) is short
