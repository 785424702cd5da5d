"""The end of a part that was made too short: shoulders keep their places, the last bit is air.

A seat whose `along` is below nothing counts from beyond the wood. What a joint cuts and what it
says touches ends where the wood ends.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

from scantling.exact import Fraction
from scantling.joints._frame import Patch
from scantling.joints._joint import Joined
from scantling.parts import Point
from scantling.sizes.model import Sizes


def missing(j: Joined, *, sizes: Sizes) -> Fraction:
    """What the entering part lacks at its end; 0 where it is as long as meant. [mm]"""
    return max(Fraction(0), -j.seat("enters").along.at(sizes))


def reached(
    j: Joined, patches: Iterable[Patch], *, axis: int, deep: Fraction, sizes: Sizes
) -> tuple[Patch, ...]:
    """Patches as far as a short part reaches.

    Args:
        j: The joint.
        patches: As they are with a part as long as meant.
        axis: Of the receiving seat, along which the part enters.
        deep: Coordinate on it at which its end was meant to stand. [mm]
        sizes: Solved sizes.
    """
    lost = missing(j, sizes=sizes)
    if lost == 0:
        return tuple(patches)
    return tuple(_within(patches, axis=axis, most=deep - lost))


def _within(patches: Iterable[Patch], *, axis: int, most: Fraction) -> Iterator[Patch]:
    for patch in patches:
        if min(point[axis] for point in patch.points) < most:
            yield replace(patch, points=tuple(_clipped(patch.points, axis=axis, most=most)))


def _clipped(ring: tuple[Point, ...], *, axis: int, most: Fraction) -> Iterator[Point]:
    """Corners of what lies on the near side of a plane, once round."""
    for one, other in pairwise((*ring, ring[0])):
        if one[axis] <= most:
            yield one
        if min(one[axis], other[axis]) < most < max(one[axis], other[axis]):
            share = (most - one[axis]) / (other[axis] - one[axis])
            x, y, z = (a + share * (b - a) for a, b in zip(one, other, strict=True))
            yield (x, y, z)
