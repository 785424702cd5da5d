"""The room that two solids could share, told from its own corner and without anything else.

A screw meets the hole of a board and little else of it: when the board is made longer, the two
stand to each other as before. Of two blocks, what they have in common is told here, with those
pieces taken from either that reach into it. The numbers are exact until they are told, each
rounded once; the same numbers are the same nook and share the same volume, whichever parts they
belong to.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from math import inf

from scantling.exact import Fraction
from scantling.solids._boxes import (
    Box,
    as_box,
    box_of,
    common_box,
    overlap,
    room_left,
    turned_back,
    turned_box,
)
from scantling.solids.pattern import Bounds, Point, Turn, bounds, turned_bounds

Flat = tuple[float, float, float]
Hull = tuple[Flat, ...]  # corners of a convex body [mm]

HERE = Turn()
ANYWHERE = (-inf, inf)
BEYOND = 1.0  # [mm] how far outside a nook a piece may end, so that no skin is left


def floats(points: Sequence[Point]) -> Hull:
    """Each number rounded once: as float() would, several times as fast. [mm]"""
    return tuple(
        (x.numerator / x.denominator, y.numerator / y.denominator, z.numerator / z.denominator)
        for x, y, z in points
    )


@dataclass(frozen=True, kw_only=True, eq=False)
class Piece:
    """A convex body in the coordinates of its solid: the block, or wood taken from it. [mm]"""

    corners: tuple[Point, ...]
    rounded: Hull  # the same corners

    @cached_property
    def box(self) -> Box:
        """The box round it."""
        return box_of(self.rounded)

    @cached_property
    def clips(self) -> tuple[int, ...]:
        """Axes along which it may be cut off square by moving its ends: all three of a box."""
        if as_box(self.rounded) is not None:
            return (0, 1, 2)
        return tuple(axis for axis in range(3) if self._runs_along(axis))

    @property
    def is_box(self) -> bool:
        """Whether it is a box square to the axes."""
        return len(self.clips) == 3

    def _runs_along(self, axis: int) -> bool:
        half = len(self.rounded) // 2
        near, far = self.rounded[:half], self.rounded[half:]
        across = [a for a in range(3) if a != axis]
        return (
            len(near) == len(far)
            and {p[axis] for p in near} == {near[0][axis]}
            and {q[axis] for q in far} == {far[0][axis]}
            and all(p[a] == q[a] for p, q in zip(near, far, strict=True) for a in across)
        )


def piece(corners: tuple[Point, ...]) -> Piece:
    """A convex body by its corners. [mm]"""
    return Piece(corners=corners, rounded=floats(corners))


@dataclass(frozen=True, kw_only=True, eq=False)
class Wood:
    """A block and what was taken from it. Two of them are the same only if they are one object."""

    block: Piece
    taken: tuple[Piece, ...] = ()

    @cached_property
    def extent(self) -> Bounds:
        """Of the block, exactly. [mm]"""
        return bounds(self.block.corners)

    def turned(self, turn: Turn) -> Wood:
        """The same where it stands in the room."""
        block, *taken = (
            piece(tuple(map(turn.of, each.corners))) for each in (self.block, *self.taken)
        )
        return Wood(block=block, taken=tuple(taken))


@dataclass(frozen=True, kw_only=True)
class Nook:
    """What two blocks have in common, from its lowest corner. [mm]"""

    size: Flat
    within: tuple[Hull, ...]  # blocks that are no boxes
    taken: tuple[Hull, ...]


def nook(one: Wood, other: Wood, *, turn: Turn, least: float) -> Nook | None:
    """The room that both may fill; None where boxes alone leave less than `least` of it.

    Args:
        one: Stands in its own coordinates.
        other: The second.
        turn: How the second stands in the coordinates of the first.
        least: Volume that is nothing. [mm3]
    """
    room = common_box(one.block.box, turned_box(other.block.box, turn))
    if room is None:
        return None
    # what reaches into the room: it is turned to the pieces, as there are more of them
    mine = [each for each in one.taken if overlap(room, each.box)]
    within = turned_back(room, turn)
    theirs = [each for each in other.taken if overlap(within, each.box)]
    boxes = [each.box for each in mine if each.is_box]
    boxes += [turned_box(each.box, turn) for each in theirs if each.is_box]
    if room_left(room, room, taken=boxes) <= least:
        return None
    there = turned_bounds(other.extent, turn)
    low = [max(a, b) for a, b in zip(one.extent.low, there.low, strict=True)]
    high = [min(a, b) for a, b in zip(one.extent.high, there.high, strict=True)]
    size = floats([(high[0] - low[0], high[1] - low[1], high[2] - low[2])])[0]
    look, look_back = _Look(HERE, low, size), _Look(turn, low, size)
    blocks = [(look, one.block), (look_back, other.block)]
    taken = [*((look, each) for each in mine), *((look_back, each) for each in theirs)]
    return Nook(
        size=size,
        within=tuple(how.told(block) for how, block in blocks if not block.is_box),
        taken=tuple(how.told(each) for how, each in taken),
    )


@dataclass(frozen=True)
class _Look:
    """How a nook is seen from a solid."""

    turn: Turn
    low: Sequence[Fraction]  # corner of the nook [mm]
    size: Flat

    def told(self, body: Piece) -> Hull:
        """A piece from the corner of the nook; square ends far out are drawn in close to it."""
        columns: list[list[float]] = [[], [], []]
        for axis, (to, sign) in enumerate(zip(self.turn.axes, self.turn.signs, strict=True)):
            start = self.turn.at[to] - self.low[to]
            ends = (-BEYOND, self.size[to] + BEYOND) if axis in body.clips else ANYWHERE
            columns[to] = _moved([corner[axis] for corner in body.corners], start, sign, ends)
        return tuple(zip(*columns, strict=True))


def _moved(
    column: Sequence[Fraction], start: Fraction, sign: int, ends: tuple[float, float]
) -> list[float]:
    # Many corners hold one and the same number: it is moved once. Two whole numbers divide into
    # the float nearest to the exact sum, reduced or not, so no fraction need be made of them.
    p, q = sign * start.numerator, start.denominator
    told: dict[tuple[int, int], float] = {}
    found = []
    for value in column:
        n, d = ratio = value.numerator, value.denominator
        if ratio not in told:
            told[ratio] = min(max(sign * (p * d + n * q) / (q * d), ends[0]), ends[1])
        found.append(told[ratio])
    return found
