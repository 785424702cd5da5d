"""A whole door: four haunched corners, a panel in their grooves. E8 and E10, worked by hand."""

from collections.abc import Mapping
from fractions import Fraction
from functools import cache

import pytest
from tests.joints.sawn import SHOP, claimed_twice, moved, said

from scantling.joints._joint import Beside, Choice, Joined, Seat
from scantling.joints.fielded_panel import FieldedPanel
from scantling.joints.mortise_and_tenon import MortiseAndTenon
from scantling.parts import Corner, Cut, Part, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.parts.solid import finished
from scantling.proofs._proof import Case
from scantling.proofs.claims import Claims
from scantling.proofs.one_solid import OneSolid
from scantling.shop.habits import Habits
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Dimension, Equation, Kind, Relations, Sizes, Stated
from scantling.sizes.solving import solve
from scantling.solids.store import Store

HELD = "panel in frame"
RAILS = {"top rail": (Surface.FAR_END, Way.UP), "bottom rail": (Surface.REFERENCE_END, Way.DOWN)}
SIDES = {"left": Surface.REFERENCE_END, "right": Surface.FAR_END}
STATED = {
    "left stile.length": 612,
    "wide": 437,
    "left stile.width": 55,
    "right stile.width": 55,
    "top rail.width": 62,
    "bottom rail.width": 78,
    **{f"{p}.thickness": 22 for p in ("left stile", "right stile", *RAILS)},
    "panel.thickness": 20,
}


def corners() -> tuple[Joined, ...]:
    told = tuple(
        Beside(
            what="groove",
            owner=HELD,
            role=role,
            axis=2,
            start=size_of(f"{HELD}.set in"),
            size=size_of(f"{HELD}.groove"),
            depth=size_of(f"{HELD}.depth"),
        )
        for role in ("receives", "enters")
    )
    found = []
    for rail, (stile_end, _) in RAILS.items():
        for side, rail_end in SIDES.items():
            haunch = said(24) if rail == "bottom rail" else None
            found.append(
                Joined(
                    name=f"{rail} in {side} stile",
                    joint=MortiseAndTenon(haunch=haunch),
                    seats={
                        "receives": (Seat(part=f"{side} stile", corner=Corner(end=stile_end)),),
                        "enters": (
                            Seat(part=rail, corner=Corner(end=rail_end, edge=Surface.BACK_EDGE)),
                        ),
                    },
                    beside=told,
                )
            )
    return tuple(found)


def held() -> Joined:
    sights = ("sight tall", "sight wide")
    return Joined(
        name=HELD,
        joint=FieldedPanel(deep=said(8), set_back=said(2), edge=said("7.8"), side_gap=said(3)),
        seats={
            "panel": (Seat(part="panel"),),
            "left": (Seat(part="left stile"),),
            "right": (Seat(part="right stile"),),
            "below": (Seat(part="bottom rail"),),
            "above": (Seat(part="top rail"),),
        },
        beside=tuple(
            Beside(
                what="sight",
                owner="",
                role="panel",
                axis=axis,
                start=ZERO,
                size=size_of(name),
                depth=ZERO,
            )
            for axis, name in enumerate(sights)
        ),
    )


def planned() -> tuple[PlannedPart, ...]:
    inner, low = size_of("left stile.width"), size_of("bottom rail.width")
    far, high = inner + size_of("sight wide"), low + size_of("sight tall")
    panel = (
        inner - size_of(f"{HELD}.depth") + size_of(f"{HELD}.side gap"),
        size_of(f"{HELD}.set back"),
        low - size_of(f"{HELD}.depth") + size_of(f"{HELD}.end ease"),
    )
    rows: dict[str, tuple[tuple[Way, Way], tuple[Linear, Linear, Linear]]] = {
        "left stile": ((Way.UP, Way.LEFT), (inner, ZERO, ZERO)),
        "right stile": ((Way.UP, Way.RIGHT), (far, ZERO, ZERO)),
        "panel": ((Way.UP, Way.RIGHT), panel),
    }
    for rail, (_, up) in RAILS.items():
        start = inner - size_of(f"{rail} in left stile.entry")
        rows[rail] = ((Way.RIGHT, up), (start, ZERO, low if rail == "bottom rail" else high))
    return tuple(
        PlannedPart(name=name, family=name, wood="white ash", ways=(*ways, Way.BACK), at=at)
        for name, (ways, at) in rows.items()
    )


def between() -> Relations:
    names = ("wide", "sight wide", "sight tall")
    stiles = size_of("left stile.width") + size_of("right stile.width")
    rails = size_of("top rail.width") + size_of("bottom rail.width")
    sums = [
        size_of("wide") - stiles - size_of("sight wide"),
        size_of("left stile.length") - rails - size_of("sight tall"),
        size_of("right stile.length") - size_of("left stile.length"),
    ]
    for rail in RAILS:
        entries = [size_of(f"{rail} in {side} stile.entry") for side in SIDES]
        sums.append(size_of(f"{rail}.length") - size_of("sight wide") - entries[0] - entries[1])
    found = Relations(
        dimensions=tuple(Dimension(name=name, kind=Kind.TAPE) for name in names),
        equations=tuple(Equation(sum=each, because="the door closes") for each in sums),
    )
    for part in planned():
        found += part.relations()
    return found


def chosen(joints: tuple[Joined, ...], sizes: Sizes | None) -> dict[str, Choice]:
    return {
        j.name: j.joint.choose(j, sizes=sizes, shop=SHOP, habits=Habits(), woods={}, strains={})
        for j in joints
    }


@cache
def door() -> tuple[Sizes, Mapping[str, Part]]:
    joints = (*corners(), held())
    stated = [Stated(name=name, value=Fraction(value)) for name, value in STATED.items()]
    stated += [one for j in joints for one in j.joint.stated(j)]
    choices, sizes = chosen(joints, None), None
    while True:
        relations = between()
        for j in joints:
            relations += j.joint.relations(j, choice=choices[j.name], strains={})
        sizes = solve(relations, stated=stated, grid=Fraction(1, 2)).sizes
        again = chosen(joints, sizes)
        if again == choices:
            break
        choices = again
    cuts: dict[str, tuple[Cut, ...]] = {}
    for j in joints:
        for part, made in j.joint.cuts(j, sizes=sizes, choice=choices[j.name]).items():
            cuts[part] = cuts.get(part, ()) + made
    return sizes, {p.name: p.built(sizes, cuts=cuts.get(p.name, ())) for p in planned()}


def test_sizes_of_the_door_by_hand() -> None:
    # E8: clear width 327, rails 399, opening 472; E10's panel 20 thick, back flush
    sizes, _ = door()
    found = ("sight wide", "sight tall", "top rail.length", "bottom rail.length", "panel.width")
    assert [sizes[name] for name in found] == [327, 472, 399, 399, 337]
    assert sizes["panel.length"] == 472 + 16 - 2
    assert sizes["panel in frame.set back"] + sizes["panel.thickness"] == 22


def test_every_corner_takes_its_thickness_from_the_groove() -> None:
    sizes, _ = door()
    assert {sizes[f"{j.name}.thickness"] for j in corners()} == {sizes[f"{HELD}.groove"]} == {8}
    assert {sizes[f"{j.name}.haunch length"] for j in corners()} == {8}


def test_parts_of_the_door_meet_and_never_overlap() -> None:
    _, parts = door()
    assert claimed_twice(parts.values()) == []
    case = Case(parts=tuple(parts.values()), store=Store(), contacts=(), presses=(), sizes={})
    assert OneSolid().findings(case) == ()
    assert Claims().findings(case) == ()


def test_mortises_on_the_right_are_those_on_the_left() -> None:
    _, parts = door()
    volume = {name: finished(part, store=Store()).volume for name, part in parts.items()}
    assert volume["left stile"] == pytest.approx(volume["right stile"])
    # E8: mortises 36 and 46 long, 38 deep and 8 wide, less the groove of 8 by 8
    waste = 612 * 8 * 8 + (36 + 46) * (38 - 8) * 8
    assert volume["left stile"] == pytest.approx(612 * 55 * 22 - waste)


def test_panel_is_caught_until_a_stile_comes_off() -> None:
    _, parts = door()
    step = Fraction(12)
    free = {
        way
        for way in Way
        if not claimed_twice(
            [
                *(p for name, p in parts.items() if name != "panel"),
                moved(parts["panel"], {way.axis: way.sign * step}),
            ]
        )
    }
    assert free == set()
    rest = [p for name, p in parts.items() if name != "right stile"]
    for travel in (Fraction(1, 2), Fraction(5), Fraction(20), Fraction(60)):
        assert claimed_twice([*rest, moved(parts["right stile"], {0: travel})]) == []
    for travel in (Fraction(5), Fraction(60), Fraction(300)):
        slid = moved(parts["panel"], {0: travel})
        assert claimed_twice([slid, *(p for p in rest if p.name != "panel")]) == []
