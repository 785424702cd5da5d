"""What joints of a frame share: an upright that receives, a level part that enters it.

Local coordinates: along the receiving part runs with across the entering one, across the
receiving part runs against along the entering one, both are counted into the wood from the face
side of the receiving part.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._joint import (
    Bench,
    Beside,
    Contact,
    Fit,
    Fixing,
    Glue,
    Joined,
    Joint,
    Motion,
    Move,
    Seat,
    lifted,
)
from scantling.parts import ACROSS, INTO, Corner, Extent, Part, Point, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.tools import Shop
from scantling.sizes.linear import ZERO, Linear, exactly, size_of
from scantling.sizes.model import Dimension, Equation, Kind, Relations, Sizes, Stated
from scantling.timber.species import Species

Range = tuple[Fraction, Fraction]

LEAST_LIP = Fraction(3)  # [mm] of wood beside a cut: common practice, a thinner lip breaks off
CLEAR = Fraction(240)  # [mm] of the level part between its shoulders, on the bench


def is_at_end(j: Joined) -> bool:
    """Whether the entering part lies at the very end of the receiving one."""
    return j.seat("receives").along == ZERO


def surfaces(j: Joined, *, sizes: Sizes, parts: Mapping[str, Part]) -> tuple[Range, Range]:
    """From face side to back of the receiving and the entering part, as the joint counts. [mm]"""
    found = []
    for role in ("receives", "enters"):
        seat = j.seat(role)
        front = -seat.into.at(sizes)
        found.append((front, front + parts[seat.part].extent[INTO]))
    return found[0], found[1]


def common(one: Range, other: Range) -> Range | None:
    """What two ranges share; None if nothing."""
    low, high = max(one[0], other[0]), min(one[1], other[1])
    return (low, high) if low < high else None


def leaving(role: str, *ways: Way) -> tuple[Move, ...]:
    """Straight moves of a role, one for each way."""
    return tuple(
        Move(
            role=role,
            motion=Motion.STRAIGHT,
            way=(
                Fraction(way.sign if way.axis == 0 else 0),
                Fraction(way.sign if way.axis == 1 else 0),
                Fraction(way.sign if way.axis == 2 else 0),
            ),
        )
        for way in ways
    )


def out_of_mouth(j: Joined, parts: Mapping[str, Part]) -> Way:
    """The way the entering part is drawn straight out of the receiving one."""
    seat = j.seat("receives")
    return seat.way(axis=ACROSS, part=parts[seat.part]).opposite


@dataclass(frozen=True, kw_only=True)
class Patch:
    """A patch before it is lifted into the piece, in the coordinates of the receiving seat."""

    zone: str
    glue: Glue
    points: tuple[Point, ...]  # [mm]
    fit: Fit = Fit.PRESS


def touching(
    j: Joined, patches: Iterable[Patch], *, sizes: Sizes, parts: Mapping[str, Part]
) -> tuple[Contact, ...]:
    """Patches between the receiving and the entering part, where they are in the piece."""
    seat = j.seat("receives")
    return tuple(
        Contact(
            between=(seat.part, j.seat("enters").part),
            joined=j.name,
            zone=patch.zone,
            glue=patch.glue,
            fit=patch.fit,
            patch=lifted(seat, patch.points, sizes=sizes, part=parts[seat.part]),
        )
        for patch in patches
    )


def glued_at(
    j: Joined, point: Point, *, sizes: Sizes, parts: Mapping[str, Part]
) -> tuple[Fixing, ...]:
    """Held every way by glue at one point, told in coordinates of the receiving seat. [mm]"""
    seat = j.seat("receives")
    (at,) = lifted(seat, [point], sizes=sizes, part=parts[seat.part])
    return (
        Fixing(
            between=(seat.part, j.seat("enters").part),
            at=at,
            holds=frozenset(Way),
            free=frozenset(),
            by="glue",
        ),
    )


def weakest_shear(j: Joined, woods: Mapping[str, Species]) -> float | None:
    """Shear strength along the grain of the weaker wood; None if one is not known. [MPa]"""
    found = [woods[part].shear for part in j.parts if part in woods]
    known = [shear for shear in found if shear is not None]
    return min(known) if found and len(known) == len(found) else None


def fault(
    j: Joined,
    code: str,
    weight: Weight,
    *,
    says: str,
    cure: str,
    figure: Fraction,
    limit: Fraction,
    shop: Shop,
    source: str = "common practice",
) -> Finding:
    """A finding about a joint, its amounts written as this shop reads its rule. [mm]"""
    return Finding(
        code=code,
        weight=weight,
        says=says,
        cure=cure,
        place=j.place,
        figure=shop.reads(figure),
        limit=shop.reads(limit),
        source=source,
        parts=j.parts,
    )


def frame_bench(
    joint: Joint,
    *,
    name: str,
    stile: Extent,
    rail: Extent,
    up: Fraction | None = None,
    set_back: Fraction = Fraction(0),
    beside: tuple[Beside, ...] = (),
) -> Bench:
    """A stile and the left end of a rail, as a form would join them.

    Args:
        joint: With the maker's options.
        name: What this place is called.
        stile: Size of the receiving part. [mm]
        rail: Width and thickness of the entering part, and its clear length. [mm]
        up: From the foot of the stile to the lower edge of the rail; None at the top end. [mm]
        set_back: How far the rail's face lies behind the stile's. [mm]
        beside: Neighbours met.
    """
    below = Corner() if up is not None else Corner(edge=Surface.BACK_EDGE)
    foot = Corner() if up is not None else Corner(end=Surface.FAR_END)
    j = Joined(
        name=name,
        joint=joint,
        seats={
            "receives": (Seat(part="stile", corner=foot, along=exactly(up or 0)),),
            "enters": (Seat(part="rail", corner=below, into=exactly(-set_back)),),
        },
        beside=beside,
    )
    tall = exactly(up) if up is not None else size_of("stile.length") - size_of("rail.width")
    parts = (
        _planned(
            "stile", "white ash", (Way.UP, Way.LEFT, Way.BACK), at=(j.width("receives"), ZERO, ZERO)
        ),
        _planned(
            "rail",
            "yellow-poplar",
            (Way.RIGHT, Way.UP, Way.BACK),
            at=(j.width("receives") - j.entry, exactly(set_back), tall),
        ),
    )
    return Bench(
        parts=parts,
        joined=j,
        relations=_clear_length(j, parts),
        stated=(*_stated(stile, rail), *joint.stated(j)),
    )


def _planned(
    name: str, wood: str, ways: tuple[Way, Way, Way], *, at: tuple[Linear, Linear, Linear]
) -> PlannedPart:
    return PlannedPart(name=name, family=name, wood=wood, ways=ways, at=at)


def _clear_length(j: Joined, parts: tuple[PlannedPart, ...]) -> Relations:
    relations = Relations(
        dimensions=(Dimension(name="clear", kind=Kind.TAPE, says="rail between its shoulders"),),
        equations=(
            Equation(
                sum=j.length("enters") - size_of("clear") - j.entry,
                because="the rail reaches into the stile",
            ),
        ),
    )
    for part in parts:
        relations += part.relations()
    return relations


def _stated(stile: Extent, rail: Extent) -> tuple[Stated, ...]:
    values = {
        "stile.length": stile.length,
        "stile.width": stile.width,
        "stile.thickness": stile.thickness,
        "clear": rail.length,
        "rail.width": rail.width,
        "rail.thickness": rail.thickness,
    }
    return tuple(Stated(name=name, value=value) for name, value in values.items())
