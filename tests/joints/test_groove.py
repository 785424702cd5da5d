"""Groove: in an edge and a face, by an iron or by the mate, stopped, and limits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import SHOP, Built, built

from scantling.joints._joint import Bench, Said, Seat, State
from scantling.joints.groove import Groove
from scantling.proofs.contact import TrueContact
from scantling.proofs.interference import Interference
from scantling.sizes.linear import exactly
from scantling.solids.contact import patch_area
from scantling.units import INCH

NAME = "partition in kicker"


def said(value: int | str | Fraction) -> Said:
    return Said(value=Fraction(value), text=str(value))


def case(joint: Groove, *, alone: bool = False, into: int | str = 0) -> Bench:
    """The bench case, or the kicker alone with a groove in its edge, `into` from its face."""
    bench = Groove.bench()
    seats: Mapping[str, tuple[Seat, ...]] = bench.joined.seats
    if alone:
        seats = {"receives": (Seat(part="kicker", into=exactly(Fraction(into))),)}
    return replace(bench, joined=replace(bench.joined, joint=joint, seats=seats))


def told(found: Built) -> set[str]:
    return {
        finding.code
        for finding in found.joint.faults(
            found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
        )
    }


def test_a_groove_is_as_wide_as_what_goes_in() -> None:
    found = built(case(Groove(surface="face", entry=said(10))))
    assert found.volume("kicker") == pytest.approx(300 * 75 * 38 - 300 * 19 * 10)


def test_in_a_face_it_takes_a_third_down_to_the_rule() -> None:
    # 38 / 3 is 12.67, down to sixteenths of an inch: 7/16
    found = built(case(Groove(surface="face")), grid=INCH / 32)
    assert found.sizes[f"{NAME}.entry"] == INCH * 7 / 16


def test_alone_in_an_edge_it_is_cut_by_the_iron_nearest_a_third_and_as_deep() -> None:
    # irons 1/8 to 1/2 in; a third of 19 mm is 6.33 mm, 1/4 in is 6.35
    found = built(
        case(Groove(), alone=True, into=6),
        stated={"kicker.thickness": Fraction(19)},
        grid=INCH / 32,
    )
    assert found.sizes[f"{NAME}.width"] == INCH / 4
    assert found.sizes[f"{NAME}.depth"] == INCH / 4
    assert found.volume("kicker") == pytest.approx(300 * 75 * 19 - 300 * 6.35**2)


def test_room_at_the_floor_makes_it_deeper_and_not_the_mate_longer() -> None:
    found = built(case(Groove(surface="face", entry=said(10), floor_gap=said(1))))
    assert found.sizes[f"{NAME}.depth"] == 11
    assert {contact.zone for contact in found.contacts} == {"near wall", "far wall"}
    assert Interference().findings(found.case()) == ()


def test_contact_is_floor_and_walls_over_the_length_of_both() -> None:
    found = built(case(Groove(surface="face", entry=said(10))))
    area = {c.zone: patch_area(c.patch) for c in found.contacts}
    assert area == pytest.approx({"floor": 250 * 19, "near wall": 2500, "far wall": 2500})
    assert TrueContact().findings(found.case()) == ()


@pytest.mark.parametrize(
    ("options", "length", "ways"),
    [
        ({}, 300, [(0, -1, 0), (0, 0, -1), (0, 1, 0)]),
        ({"near_stop": said(15)}, 285, [(0, 0, -1), (0, 1, 0)]),
        ({"far_stop": said(20)}, 280, [(0, -1, 0), (0, 0, -1)]),
        ({"near_stop": said(15), "far_stop": said(20)}, 265, [(0, 0, -1)]),
        ({"stopped": "both"}, 300 - 2 * 12.7, [(0, 0, -1)]),
    ],
)
def test_stops_shorten_it_and_close_the_way(
    options: dict[str, object], length: float, ways: list[tuple[int, int, int]]
) -> None:
    joint = Groove(surface="face", entry=said(10), **options)  # type: ignore[arg-type]  # options of one joint
    found = built(case(joint))
    moves = joint.moves(found.bench.joined, state=State.OPEN, sizes=found.sizes, parts=found.parts)
    assert found.volume("kicker") == pytest.approx(300 * 75 * 38 - length * 190)
    assert sorted(tuple(map(int, move.way)) for move in moves) == ways


@pytest.mark.parametrize(
    ("into", "thick", "thin"),
    [("3.9", 19, True), ("4", 19, False), (8, "18.3", True), (8, "18.4", False)],
)
def test_a_thin_wall_in_an_edge_is_told(into: str | int, thick: str | int, *, thin: bool) -> None:
    # 6.35 wide: 8 + 6.35 + 4 is 18.35
    joint = Groove(wide=said(INCH / 4), entry=said(8))
    found = built(case(joint, alone=True, into=into), stated={"kicker.thickness": Fraction(thick)})
    assert ("groove.thin" in told(found)) is thin


def test_a_thin_floor_in_a_face_is_told() -> None:
    for deep, thin in ((20, True), (19, False)):  # half of 38
        assert (
            "groove.thin" in told(built(case(Groove(surface="face", entry=said(deep)))))
        ) is thin


@pytest.mark.parametrize(
    ("wide", "missing"),
    [(INCH / 4, False), (INCH * 3 / 4, False), (INCH, False), (26, True), (3, True)],
)
def test_a_width_that_no_iron_cuts_is_told(wide: Fraction | int, *, missing: bool) -> None:
    # irons 1/8 to 1/2 in; twice the widest is 1 in
    found = built(
        case(Groove(surface="face"), into=6), stated={"partition.thickness": Fraction(wide)}
    )
    assert ("groove.no-iron" in told(found)) is missing
