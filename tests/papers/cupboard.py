"""A small wall cupboard worked by hand, for the tests of papers. Lengths are inches here.

Its numbers are invented for the tests; its joints are the real ones, asked on the bench.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache

from tests.joints.on_the_bench import ROOM, SHOP, Built, built, strains, woods

from scantling.findings import Finding, Place, Weight
from scantling.joints._joint import Joint, State
from scantling.joints.half_blind_dovetail import HalfBlindDovetail
from scantling.joints.half_lap import HalfLap
from scantling.joints.housing import Housing
from scantling.parts import (
    Box,
    Cut,
    Extent,
    GluedUp,
    Part,
    Placement,
    Profile,
    Round,
    Span,
    Strip,
    Surface,
    Way,
)
from scantling.piece import Piece
from scantling.piece._form import Whole
from scantling.setting_out import Line, SetGap, SetJoint, SettingOut
from scantling.shop.habits import Habits
from scantling.sizes.model import Kind, Origin, Size, Sizes
from scantling.units import INCH, Unit

Sides = tuple[str, str]  # near and far in the piece

UPRIGHT = (Way.UP, Way.BACK, Way.RIGHT)
LYING = (Way.RIGHT, Way.BACK, Way.DOWN)
FRONT_UPRIGHT = (Way.UP, Way.RIGHT, Way.BACK)
FRONT_LYING = (Way.RIGHT, Way.UP, Way.BACK)


def inches(text: str) -> Fraction:
    """`1 3/4` -> millimetres."""
    return sum((Fraction(piece) for piece in text.split()), Fraction(0)) * INCH


def part(
    name: str,
    ways: tuple[Way, Way, Way],
    *,
    wide: Sides,
    deep: Sides,
    tall: Sides,
    family: str = "",
    wood: str = "white ash",
    cuts: tuple[Cut, ...] = (),
) -> Part:
    """A part by what it takes up in the piece."""
    spans = [(inches(low), inches(high)) for low, high in (wide, deep, tall)]
    at = [low for low, _ in spans]
    for way in ways:
        if way.sign < 0:
            at[way.axis] = spans[way.axis][1]
    length, width, thickness = (spans[way.axis][1] - spans[way.axis][0] for way in ways)
    return Part(
        name=name,
        family=family or name,
        extent=Extent(length=length, width=width, thickness=thickness),
        wood=wood,
        cut_of_wood="flat",
        placement=Placement(along=ways[0], across=ways[1], into=ways[2], at=(at[0], at[1], at[2])),
        cuts=cuts,
    )


def _case() -> tuple[Part, ...]:
    depth = Span(None, inches("1/4"))
    housing = Cut(
        name="housing",
        owner="bottom in left side",
        shape=Box(along=Span(inches("1 1/4"), inches("2")), into=Span(inches("1/2"), None)),
        sized=(("along start", "left side.bottom up"),),
    )
    left = part(
        "left side", UPRIGHT, wide=("0", "3/4"), deep=("3/4", "9 1/2"), tall=("0", "26"),
        family="side", cuts=(housing,),
    )  # fmt: skip
    right = part(
        "right side", (Way.UP, Way.BACK, Way.LEFT), wide=("20 1/4", "21"),
        deep=("3/4", "9 1/2"), tall=("0", "26"), family="side", cuts=(housing,),
    )  # fmt: skip
    bottom = part(
        "bottom", LYING, wide=("1/2", "20 1/2"), deep=("3/4", "9"), tall=("1 1/4", "2"),
        wood="yellow-poplar",
    )  # fmt: skip
    top = part("top", LYING, wide=("-3/4", "21 3/4"), deep=("-3/4", "9 1/2"), tall=("26", "26 7/8"))
    bevel = Cut(
        name="under-bevel",
        owner="top",
        shape=Profile(
            axis=0,
            points=(
                (Fraction(0), inches("7/8")),
                (inches("3/4"), inches("7/8")),
                (Fraction(0), inches("1/2")),
            ),
            open_sides=frozenset({0, 2}),
        ),
    )
    del depth
    strips = tuple(Strip(name=f"strip {x}", wood="white ash") for x in "ab")
    top = replace(top, blank=GluedUp(strips=strips), cuts=(bevel,), show=frozenset(Surface))
    return left, right, bottom, top


def _front() -> tuple[Part, ...]:
    frame = [
        part("left stile", FRONT_UPRIGHT, wide=("0", "1 3/4"), deep=("0", "3/4"),
             tall=("0", "26"), family="frame stile"),
        part("right stile", (Way.UP, Way.LEFT, Way.BACK), wide=("19 1/4", "21"),
             deep=("0", "3/4"), tall=("0", "26"), family="frame stile"),
        part("top rail", FRONT_LYING, wide=("1 3/4", "19 1/4"), deep=("0", "3/4"),
             tall=("24 1/2", "26"), family="frame rail"),
        part("bottom rail", FRONT_LYING, wide=("1 3/4", "19 1/4"), deep=("0", "3/4"),
             tall=("0", "2"), family="frame rail"),
    ]  # fmt: skip
    door = [
        part("door.hinge stile", FRONT_UPRIGHT, wide=("1 13/16", "4"), deep=("0", "3/4"),
             tall=("2 1/16", "24 7/16"), family="door stile"),
        part("door.closing stile", (Way.UP, Way.LEFT, Way.BACK), wide=("17", "19 3/16"),
             deep=("0", "3/4"), tall=("2 1/16", "24 7/16"), family="door stile"),
        part("door.top rail", FRONT_LYING, wide=("4", "17"), deep=("0", "3/4"),
             tall=("22 1/4", "24 7/16"), family="door rail"),
        part("door.bottom rail", FRONT_LYING, wide=("4", "17"), deep=("0", "3/4"),
             tall=("2 1/16", "5"), family="door rail"),
        part("door.panel", FRONT_UPRIGHT, wide=("4", "17"), deep=("1/4", "3/4"),
             tall=("5", "22 1/4"), family="door panel"),
    ]  # fmt: skip
    door = [replace(each, moves_with="door") for each in door]
    # nobody measures the panel: it is planed to the door that was made
    panel = door[-1]
    odd = replace(panel.extent, width=panel.extent.width + Fraction(1, 7))
    return (*frame, *door[:-1], replace(panel, extent=odd))


def _inside() -> tuple[Part, ...]:
    boards = (("1/2", "7 1/8"), ("7 9/32", "13 23/32"), ("13 7/8", "20 1/2"))
    back = [
        part(f"back board {i}", FRONT_UPRIGHT, wide=at, deep=("9", "9 1/2"),
             tall=("1 1/4", "26"), family="back board", wood="yellow-poplar")
        for i, at in enumerate(boards, start=1)
    ]  # fmt: skip
    shelf = part("loose shelf", LYING, wide=("13/16", "20 3/16"), deep=("1", "8 3/4"),
                 tall=("12", "12 3/4"), wood="yellow-poplar")  # fmt: skip
    pins = [
        replace(
            part(f"pin {i}", (Way.RIGHT, Way.BACK, Way.UP), wide=at, deep=("2", "2 1/4"),
                 tall=("11 3/4", "12"), family="shelf pin", wood="brass"),
            blank=Round(), hardware=True, cuts=(),
        )
        for i, at in enumerate((("1/2", "1"), ("20", "20 1/2")), start=1)
    ]  # fmt: skip
    return (*back, shelf, *pins)


def _sizes(parts: Sequence[Part]) -> Sizes:
    known: dict[str, Size] = {}
    for each in parts:
        for axis, word in enumerate(("length", "width", "thickness")):
            name = f"{each.name}.{word}"
            known[name] = Size(
                name=name, value=each.extent[axis], kind=Kind.TAPE, origin=Origin.FOLLOWS,
                because="left side.length = tall - top.thickness" if axis == 0 else "",
            )  # fmt: skip
    panel = known["door.panel.width"]
    known[panel.name] = replace(panel, kind=Kind.MATE, off_tape=True)
    iron = known["back board 1.thickness"]
    known[iron.name] = replace(iron, kind=Kind.TOOL, origin=Origin.HABIT)
    return Sizes(known)


def _lines(parts: Sequence[Part]) -> tuple[Line, ...]:
    groups: dict[object, list[Part]] = {}
    for each in parts:
        groups.setdefault((each.family, each.extent), []).append(each)
    return tuple(
        Line(
            mark=i,
            family=group[0].family,
            parts=tuple(group),
            rough=(
                group[0].extent.length + inches("1"),
                group[0].extent.width + inches("1/4"),
                group[0].extent.thickness + inches("1/8"),
            ),
            note="glued up from 2 strips" if isinstance(group[0].blank, GluedUp) else "",
        )
        for i, group in enumerate(groups.values(), start=1)
    )


@cache
def _cases() -> tuple[Built, ...]:
    return tuple(built(joint.bench()) for joint in JOINTS)


def set_joint(case: Built) -> SetJoint:
    """A real joint as it answers on the bench."""
    j, sizes, choice, parts = case.bench.joined, case.sizes, case.choice, case.parts
    return SetJoint(
        joined=j,
        choice=choice,
        drawn=case.joint.drawn(j, sizes=sizes, choice=choice),
        contacts=case.contacts,
        presses=case.presses,
        moves=case.joint.moves(j, state=State.OPEN, sizes=sizes, parts=parts),
        fixings=case.joint.fixings(j, sizes=sizes, choice=choice, parts=parts),
        gaps=tuple(
            SetGap.of(gap, sizes=sizes, strains=strains(case.bench))
            for gap in case.joint.gaps(j, choice=choice)
        ),
        holds=case.joint.holds(j, sizes=sizes, choice=choice, woods=woods(case.bench)),
        work=case.joint.work(j, choice=choice, shop=SHOP, habits=Habits()),
    )


JOINTS: tuple[type[Joint], ...] = (HalfLap, Housing, HalfBlindDovetail)

FINDINGS = (
    Finding(
        code="doors.bind",
        weight=Weight.HALT,
        says="The door binds in August by 1/32.",
        cure="Plane the closing stile 1/64 at each edge.",
        place=Place(file="piece.toml", line=41, column=9, width=4),
        figure="1/32 in",
        limit="0",
        source="Wood Handbook, FPL-GTR-282, table 13-5",
        parts=("door.closing stile",),
    ),
    Finding(
        code="sizes.gave-way",
        weight=Weight.MIND,
        says="The back boards cover each other by 3/16 in winter, a little less than is usual.",
        cure="Make the laps 3/8 wide.",
    ),
    Finding(
        code="shelf.light",
        weight=Weight.NOTE,
        says="The loose shelf sags 0.02 in under its load, too little to be seen.",
        cure="",
    ),
)


def cupboard(
    *,
    name: str = "Wall cupboard",
    measure: Unit = Unit.INCH,
    findings: tuple[Finding, ...] = FINDINGS,
    renamed: Mapping[str, str] | None = None,
    note: str | None = None,
) -> SettingOut:
    """The cupboard worked through.

    Args:
        name: Of the piece.
        measure: Of its file.
        findings: What was found.
        renamed: Families under other names.
        note: On every line of the cutting list.
    """
    to = renamed or {}
    parts = tuple(
        replace(each, family=to.get(each.family, each.family))
        for each in (*_case(), *_front(), *_inside())
    )
    made = [each for each in parts if not each.hardware]
    lines = _lines(made)
    if note is not None:
        lines = tuple(replace(line, note=note) for line in lines)
    whole = Whole(name=name, measure=measure, finest=INCH / 32, room=ROOM, woods={})
    cases = _cases()
    sizes = _sizes(made).by_name
    for case in cases:
        sizes = {**sizes, **case.sizes.by_name}
    return SettingOut(
        piece=Piece(text="", file="piece.toml", whole=whole),
        shop=SHOP,
        habits=Habits(),
        sizes=Sizes(sizes),
        parts=parts,
        joints=tuple(set_joint(case) for case in cases),
        lines=lines,
        findings=findings,
    )
