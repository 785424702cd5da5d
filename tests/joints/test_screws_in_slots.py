"""Screws in slots: which are fast, how long slots are, what presses, and limits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from math import pi

import pytest
from tests.joints.on_the_bench import SHOP, Built, built, woods

from scantling.findings import Finding
from scantling.joints._joint import Bench, Beside, Joined, Said, Seat, State
from scantling.joints._slots import held
from scantling.joints.screws_in_slots import ScrewsInSlots
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.proofs.contact import TrueContact
from scantling.proofs.interference import Interference
from scantling.proofs.one_solid import OneSolid
from scantling.shop.habits import Habits
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import Relations
from scantling.timber.movement import Strain
from scantling.units import INCH

NAME = "guide on side"
STILL: Mapping[str, Strain] = {}


def said(value: int | str | Fraction) -> Said:
    return Said(value=Fraction(value), text=str(value))


def guide(**options: object) -> Bench:
    bench = ScrewsInSlots.bench()
    joint = replace(ScrewsInSlots(count=3), **options)  # type: ignore[arg-type]  # options of one joint
    return replace(bench, joined=replace(bench.joined, joint=joint))


def rail(joint: ScrewsInSlots, *, beside: tuple[Beside, ...] = ()) -> Bench:
    """A rail 300 by 60 by 19 under the middle of a top 360 by 200 by 22, grains alike."""
    j = joint_on_rail(joint, beside=beside)
    lower = PlannedPart(
        name="rear rail",
        family="rail",
        wood="yellow-poplar",
        ways=(Way.RIGHT, Way.BACK, Way.DOWN),
        at=(exactly(30), exactly(70), exactly(19)),
    )
    top = PlannedPart(
        name="top",
        family="top",
        wood="white ash",
        ways=(Way.RIGHT, Way.BACK, Way.DOWN),
        at=(ZERO, ZERO, exactly(19 + 22)),
    )
    sizes = {"rear rail": (300, 60, 19), "top": (360, 200, 22)}
    bench = ScrewsInSlots.bench()
    stated = tuple(
        replace(bench.stated[0], name=f"{part}.{word}", value=Fraction(value))
        for part, three in sizes.items()
        for word, value in zip(("length", "width", "thickness"), three, strict=True)
    )
    return replace(bench, parts=(lower, top), joined=j, relations=Relations(), stated=stated)


def joint_on_rail(joint: ScrewsInSlots, *, beside: tuple[Beside, ...]) -> Joined:
    bench = ScrewsInSlots.bench()
    below = Corner(face=Surface.BACK_FACE)
    seats = {
        "enters": (Seat(part="rear rail", corner=below),),
        "receives": (Seat(part="top", corner=below, along=exactly(30), across=exactly(70)),),
    }
    return replace(bench.joined, name="top on rail", joint=joint, seats=seats, beside=beside)


def faults(found: Built) -> tuple[Finding, ...]:
    return found.joint.faults(
        found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
    )


def told(found: Built) -> set[str]:
    return {finding.code for finding in faults(found)}


def names(found: Built, part: str) -> list[str]:
    return [cut.name for cut in found.parts[part].cuts]


@pytest.mark.parametrize(
    ("fixed_at", "part", "which"),
    [
        ("front rail", "front sub-top rail", "all"),
        ("front rail", "rear sub-top rail", "none"),
        ("front", "front sub-top rail", "all"),
        ("front", "rear sub-top rail", "none"),
        ("front", "left guide", "first"),
        ("middle", "left guide", "middle"),
        ("none", "left guide", "none"),
    ],
)
def test_words_say_which_screws_are_fast(fixed_at: str, part: str, which: str) -> None:
    assert held(fixed_at, part) == which


def test_a_guide_is_fast_in_front_and_slides_along_itself() -> None:
    found = built(guide(end_distance=said(50), travel=said(2), line=said(20)))
    assert names(found, "guide")[:2] == ["hole 1", "slot 2"]
    fast, *free = found.joint.fixings(
        found.bench.joined, sizes=found.sizes, choice=found.choice, parts=found.parts
    )
    assert tuple(map(int, fast.at)) == (19, 12 + 50, 120 + 20)
    assert not fast.free
    assert [f.free for f in free] == [frozenset({Way.FRONT, Way.BACK})] * 2
    assert [f.at[1] for f in free] == [12 + 200, 12 + 350]


def test_a_rear_rail_slides_across_itself() -> None:
    found = built(rail(ScrewsInSlots(count=3, fixed_at="front rail")))
    fixings = found.joint.fixings(
        found.bench.joined, sizes=found.sizes, choice=found.choice, parts=found.parts
    )
    assert [f.free for f in fixings] == [frozenset({Way.FRONT, Way.BACK})] * 3
    for proof in (Interference, TrueContact, OneSolid):
        assert proof().findings(found.case()) == ()


def test_slots_take_a_straight_and_two_round_ends() -> None:
    found = built(guide(travel=said(2), count=1, fixed_at="none"))
    clearance = float(found.sizes[f"{NAME}.clearance"])
    slot = pi / 4 * clearance**2 + 4 * clearance
    whole = 400 * 50 * 25
    # a hole is drawn with 24 sides round its circle: 0.6 % more of the round part
    assert whole - found.volume("guide") == pytest.approx(slot * 25, rel=0.006)
    assert found.sizes[f"{NAME}.slot"] == found.sizes[f"{NAME}.clearance"] + 4


def test_without_room_a_slot_is_a_hole() -> None:
    found = built(guide(travel=said(0)), moving=STILL)
    assert names(found, "guide") == ["hole 1", "slot 2", "slot 3"]


def test_slots_are_long_enough_for_the_year() -> None:
    # a side that moves 1/100 over 300 between the first screw and the last: 3 each way, which
    # is 4/32 in on the shop's rule (3.175) and 3.2 on this grid of 1/5
    moving = {"side": Strain(grow=Fraction(1, 100), shrink=Fraction(1, 250))}
    found = built(guide(end_distance=said(50)), moving=moving)
    assert found.sizes[f"{NAME}.travel"] == Fraction(16, 5)
    middle = built(guide(end_distance=said(50), fixed_at="middle"), moving=moving)
    assert middle.sizes[f"{NAME}.travel"] == pytest.approx(1.6, abs=0.1)  # 1/16 in is enough


def test_a_shrinking_side_needs_as_much() -> None:
    moving = {"side": Strain(grow=Fraction(0), shrink=Fraction(1, 100))}
    assert built(guide(end_distance=said(50)), moving=moving).sizes[f"{NAME}.travel"] == Fraction(
        16, 5
    )


def test_only_the_difference_works_on_screws_that_are_carried_along() -> None:
    # a top of 480 on sides of 430 that carry the rail: 4.8 less 4.3 is 1/2; 4.8 is 7/32 in
    def beside(role: str, owner: str, size: int) -> Beside:
        return Beside(
            what="moves", owner=owner, role=role, axis=1, start=ZERO, size=exactly(size), depth=ZERO
        )

    moving = {name: Strain(grow=Fraction(1, 100), shrink=Fraction(0)) for name in ("top", "side")}
    both = (beside("receives", "top", 480), beside("enters", "side", 430))
    travels = []
    for told_of in (both, both[:1]):
        bench = rail(ScrewsInSlots(count=3, fixed_at="none"), beside=told_of)
        travels.append(built(bench, moving=moving).sizes["top on rail.travel"])
    assert travels == [pytest.approx(1.6, abs=0.1), Fraction("5.6")]


def test_threads_press_their_own_round_into_the_wood() -> None:
    found = built(guide(screw=said(36), shank=said(4)))
    # 36 through a guide of 25: 11 of it in the side; drawn inside its circle, 1.2 % less
    assert [float(press.volume) for press in found.presses] == [
        pytest.approx(pi * 4 * 11, rel=0.012)
    ] * 3
    assert Interference().findings(found.case()) == ()


def test_the_longest_screw_that_keeps_clear_is_chosen() -> None:
    # 3/4 in and two thirds of 7/8 in leave 1 1/3 in: an inch and a quarter, as sold
    bench = rail(ScrewsInSlots(count=3, fixed_at="none"))
    found = built(
        bench, stated={"rear rail.thickness": INCH * 3 / 4, "top.thickness": INCH * 7 / 8}
    )
    assert found.sizes["top on rail.screw"] == INCH * 5 / 4


@pytest.mark.parametrize(("length", "count"), [(340, 2), (351, 2), (352, 3), (851, 4), (852, 5)])
def test_screws_are_at_most_250_apart(length: int, count: int) -> None:
    # 50.8 from either end on a rule of inches
    bench = guide(count=None)
    found = built(bench, stated={"guide.length": Fraction(length)}, moving=STILL)
    assert found.choice.count("count") == count


def test_once_screwed_it_comes_off_after_the_screws() -> None:
    found = built(guide())
    j = found.bench.joined
    moves = {
        state: j.joint.moves(j, state=state, sizes=found.sizes, parts=found.parts)
        for state in State
    }
    assert [m.unlocked_by for m in moves[State.OPEN]] == [""]
    assert [m.unlocked_by for m in moves[State.LOCKED]] == ["screws"]
    assert tuple(map(int, moves[State.LOCKED][0].way)) == (1, 0, 0)


def test_withdrawal_follows_the_handbook() -> None:
    found = built(guide(screw=said(36), shank=said(4)))
    j = found.bench.joined
    (estimate,) = j.joint.holds(j, sizes=found.sizes, choice=found.choice, woods=woods(found.bench))
    # 108.25 x 0.60^2 x 4 x 11, three of them; gravity of white ash 0.60, Wood Handbook 5-3b
    assert estimate.value == pytest.approx(3 * 108.25 * 0.36 * 44, rel=0.01)


def test_a_guide_is_fitted_and_a_top_is_fastened() -> None:
    last = []
    for bench in (guide(), rail(ScrewsInSlots(count=2, fixed_at="all"))):
        found = built(bench)
        j = found.bench.joined
        done = j.joint.work(j, choice=found.choice, shop=SHOP, habits=Habits())
        last.append([each.name for each in done])
    assert last == [
        ["cut slot", "bore screw hole", "fit guide"],
        ["bore screw hole", "fasten top"],
    ]


@pytest.mark.parametrize(
    ("code", "guilty", "twin"),
    [
        ("through", "41.1", "41"),  # 25 and 19, 3 short of the face
        ("short-thread", "48.9", "49"),  # 6 diameters of 4 after 25, in a side 40 thick
        ("short-screw", "25", "25.1"),
    ],
)
def test_screw_lengths(code: str, guilty: str, twin: str) -> None:
    thick = {"side.thickness": Fraction(40)} if code == "short-thread" else {}
    found = []
    for length in (guilty, twin):
        bench = guide(screw=said(length), shank=said(4))
        if thick:
            side, strip = bench.parts
            at = (exactly(40), *side.at[1:])
            wider = replace(strip, at=(exactly(65), *strip.at[1:]))
            bench = replace(bench, parts=(replace(side, at=at), wider))
        found.append(f"screws-in-slots.{code}" in told(built(bench, stated=thick)))
    assert found == [True, False]


def test_slots_along_grain_that_does_not_move_are_told() -> None:
    joint = ScrewsInSlots(count=3, fixed_at="none")
    assert "screws-in-slots.slot-with-grain" not in told(built(rail(joint)))
    wrong = replace(joint, slots="along")
    assert "screws-in-slots.slot-with-grain" in told(built(rail(wrong)))


def test_end_grain_is_told() -> None:
    bench = guide()
    side, strip = bench.parts
    turned = replace(side, ways=(Way.LEFT, Way.BACK, Way.UP))
    found = built(
        replace(bench, parts=(turned, strip)),
        stated={"side.length": Fraction(19), "side.thickness": Fraction(300)},
        moving=STILL,
    )
    assert "screws-in-slots.end-grain" in told(found)
    assert "screws-in-slots.end-grain" not in told(built(guide()))


@pytest.mark.parametrize("screw", [None, 40])
def test_a_screw_that_was_chosen_for_the_maker_is_not_told_to_be_longer(screw: int | None) -> None:
    found = built(guide(screw=None if screw is None else said(screw)))
    (short,) = (f for f in faults(found) if f.code == "screws-in-slots.short-thread")
    assert short.cure.startswith("More screws, or thicker wood where they bite, hold better")
    assert ("longer screws" in short.cure) is (screw is not None)
