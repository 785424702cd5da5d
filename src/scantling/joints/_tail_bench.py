"""A corner dovetailed on the bench: a front with the pins, a side with the tails."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Bench, Beside, Joined, Joint, Seat
from scantling.parts import Extent, Way
from scantling.parts.planned import PlannedPart
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import Stated


def corner_bench(
    joint: Joint,
    *,
    name: str,
    board: Extent,
    tails: Extent,
    set_off: Fraction,
    beside: tuple[Beside, ...] = (),
) -> Bench:
    """A front that carries the pins and the left side that carries the tails.

    Args:
        joint: With the maker's options.
        name: What this place is called.
        board: Size of the part with the pins. [mm]
        tails: Size of the part with the tails. [mm]
        set_off: How far its lower edge stands above that of the other. [mm]
        beside: Neighbours met.
    """
    up, down = exactly(max(set_off, Fraction(0))), exactly(max(-set_off, Fraction(0)))
    j = Joined(
        name=name,
        joint=joint,
        seats={
            "receives": (Seat(part="front", across=up),),
            # the face side looks inside
            "enters": (Seat(part="side", across=down),),
        },
        beside=beside,
    )
    front = PlannedPart(
        name="front",
        family="front",
        wood="white ash",
        ways=(Way.RIGHT, Way.UP, Way.FRONT),
        at=(ZERO, j.thickness("receives"), down),
    )
    side = PlannedPart(
        name="side",
        family="side",
        wood="yellow-poplar",
        ways=(Way.BACK, Way.UP, Way.LEFT),
        at=(j.thickness("enters"), j.thickness("receives") - j.entry, up),
    )
    stated = [
        Stated(name=f"{part}.{word}", value=getattr(extent, word))
        for part, extent in (("front", board), ("side", tails))
        for word in ("length", "width", "thickness")
    ]
    return Bench(
        parts=(front, side),
        joined=j,
        relations=front.relations() + side.relations(),
        stated=(*stated, *joint.stated(j)),
    )
