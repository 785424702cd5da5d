"""What a solid is cut to, exactly: a block, the convex pieces taken from it, where it stands.

Everything here is exact. Only `kernel` turns these into floating point, each number once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.exact import Fraction

Point = tuple[Fraction, Fraction, Fraction]


@dataclass(frozen=True, kw_only=True)
class Convex:
    """The smallest convex body that holds these corners. [mm]"""

    corners: tuple[Point, ...]
    round_about: int | None = None  # axis, if its side faces stand for one round surface


@dataclass(frozen=True, kw_only=True)
class Pattern:
    """A block and the convex pieces taken away from it, in their own coordinates. [mm]"""

    block: Convex
    away: tuple[Convex, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Turn:
    """One of 48 ways to stand square in the room, and where the origin goes. [mm]

    Axis `i` of the solid points along axis `axes[i]` of the room, backwards if `signs[i]` is -1.
    """

    axes: tuple[int, int, int] = (0, 1, 2)
    signs: tuple[int, int, int] = (1, 1, 1)
    at: Point = (Fraction(0), Fraction(0), Fraction(0))

    @property
    def is_mirrored(self) -> bool:
        """Whether left and right are exchanged, so that a surface would turn inside out."""
        even = (self.axes[1] - self.axes[0]) % 3 == 1
        return (self.signs[0] * self.signs[1] * self.signs[2] > 0) != even

    def of(self, point: Point) -> Point:
        """A point of the solid in the room. [mm]"""
        moved = list(self.at)
        for axis, sign, value in zip(self.axes, self.signs, point, strict=True):
            moved[axis] += value if sign > 0 else -value
        return (moved[0], moved[1], moved[2])

    def back(self, point: Point) -> Point:
        """A point of the room in the solid's own coordinates. [mm]"""
        away = [
            point[axis] - self.at[axis] if sign > 0 else self.at[axis] - point[axis]
            for axis, sign in zip(self.axes, self.signs, strict=True)
        ]
        return (away[0], away[1], away[2])

    def seen_from(self, other: Turn) -> Turn:
        """The same stand, told in the coordinates of something that stands as `other`."""
        places = [other.axes.index(axis) for axis in self.axes]
        signs = [s * other.signs[p] for s, p in zip(self.signs, places, strict=True)]
        return Turn(
            axes=(places[0], places[1], places[2]),
            signs=(signs[0], signs[1], signs[2]),
            at=other.back(self.at),
        )


@dataclass(frozen=True, kw_only=True)
class Bounds:
    """A box square to the axes. [mm]"""

    low: Point
    high: Point

    def meets(self, other: Bounds) -> bool:
        """Whether they have more than a surface in common."""
        return all(
            a < d and c < b
            for a, b, c, d in zip(self.low, self.high, other.low, other.high, strict=True)
        )


def bounds(points: Sequence[Point]) -> Bounds:
    """The smallest box that holds the points. [mm]"""
    low = [min(p[axis] for p in points) for axis in range(3)]
    high = [max(p[axis] for p in points) for axis in range(3)]
    return Bounds(low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))


def turned_bounds(box: Bounds, turn: Turn) -> Bounds:
    """The box of a solid, in the room. [mm]"""
    return bounds((turn.of(box.low), turn.of(box.high)))
