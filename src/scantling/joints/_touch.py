"""Where square surfaces of parts meet, and what glue finds there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.joints._joint import Contact, Fit, Glue, Joined
from scantling.parts import ALONG, Part, Point, Way


@dataclass(frozen=True, kw_only=True)
class Block:
    """A box square to the piece, or a rectangle where it has no size one way. [mm]"""

    low: Point
    high: Point


@dataclass(frozen=True, kw_only=True)
class Meeting:
    """A rectangle in which two blocks meet. [mm]"""

    axis: int  # of the piece, square to it
    way: Way  # from the first block to the second
    patch: tuple[Point, ...]

    @property
    def middle(self) -> Point:
        """Its middle. [mm]"""
        return _mean(self.patch[0], self.patch[2])


def block(part: Part) -> Block:
    """The part before anything is cut from it, where it stands."""
    zero = (Fraction(0), Fraction(0), Fraction(0))
    extent = part.extent
    return between(
        part.placement.to_piece(zero),
        part.placement.to_piece((extent.length, extent.width, extent.thickness)),
    )


def between(one: Point, other: Point) -> Block:
    """The block, or rectangle, between two corners. [mm]"""
    pairs = [sorted(pair) for pair in zip(one, other, strict=True)]
    low, high = zip(*pairs, strict=True)
    return Block(low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))


def meeting(one: Block, other: Block) -> Meeting | None:
    """The rectangle in which two blocks touch; None if they lie apart or share more or less."""
    low = [max(a, b) for a, b in zip(one.low, other.low, strict=True)]
    high = [min(a, b) for a, b in zip(one.high, other.high, strict=True)]
    flat = [axis for axis in range(3) if low[axis] == high[axis]]
    if len(flat) != 1 or any(low[a] > high[a] for a in range(3)):
        return None
    axis = flat[0]
    u, v = (a for a in range(3) if a != axis)
    ring = []
    for p, q in ((low[u], low[v]), (high[u], low[v]), (high[u], high[v]), (low[u], high[v])):
        point = [low[axis]] * 3
        point[u], point[v] = p, q
        ring.append((point[0], point[1], point[2]))
    onwards = other.low[axis] + other.high[axis] > one.low[axis] + one.high[axis]
    return Meeting(axis=axis, way=list(Way)[2 * axis + (not onwards)], patch=tuple(ring))


def glue_across(axis: int, one: Part, other: Part) -> Glue:
    """What glue finds where two parts meet square to an axis of the piece."""
    grains = [part.placement.ways[ALONG].axis for part in (one, other)]
    if axis in grains:
        return Glue.END_GRAIN
    return Glue.LONG_GRAIN if grains[0] == grains[1] else Glue.CROSSING


def contact(
    j: Joined,
    one: Part,
    other: Part,
    found: Meeting,
    *,
    zone: str,
    fit: Fit,
    glue: Glue | None = None,
) -> Contact:
    """A meeting of two parts as an answer; glue by the grain unless it is said."""
    return Contact(
        between=(one.name, other.name),
        joined=j.name,
        zone=zone,
        glue=glue_across(found.axis, one, other) if glue is None else glue,
        fit=fit,
        patch=found.patch,
    )


def against(
    j: Joined,
    walls: Iterable[tuple[str, Block]],
    one: Part,
    other: Part,
    *,
    fit: Fit,
    glue: Glue | None = None,
) -> tuple[Contact, ...]:
    """Contacts of a part's cut surfaces, each with its zone, with another part."""
    found = []
    for zone, wall in walls:
        met = meeting(wall, block(other))
        if met is not None:
            found.append(contact(j, one, other, met, zone=zone, fit=fit, glue=glue))
    return tuple(found)


def _mean(one: Point, other: Point) -> Point:
    return ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2, (one[2] + other[2]) / 2)
