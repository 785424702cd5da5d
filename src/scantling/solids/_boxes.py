"""Boxes square to the axes, in floating point: a quick bound on what two solids can share.

Most cuts are boxes. What the boxes taken from both solids leave of the room that their blocks
share bounds their overlap from above, and most often it is nothing at all.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from scantling.solids.pattern import Turn

Box = tuple[float, float, float, float, float, float]  # lowest, then highest coordinates [mm]

MOST = 64  # pieces after which the kernel is quicker


def box_of(points: Sequence[Sequence[float]]) -> Box:
    """The box round some points. [mm]"""
    x, y, z = zip(*points, strict=True)
    return min(x), min(y), min(z), max(x), max(y), max(z)


def as_box(points: Sequence[Sequence[float]]) -> Box | None:
    """The box that has just these eight corners, or None. [mm]"""
    if len(points) != 8 or len({tuple(point) for point in points}) != 8:
        return None
    if any(len(set(values)) != 2 for values in zip(*points, strict=True)):
        return None
    return box_of(points)


def turned_box(box: Box, turn: Turn) -> Box:
    """The box of a solid, in the room. [mm]"""
    low, high = [0.0] * 3, [0.0] * 3
    for axis, (to, sign) in enumerate(zip(turn.axes, turn.signs, strict=True)):
        at = turn.at[to].numerator / turn.at[to].denominator
        a, b = at + sign * box[axis], at + sign * box[axis + 3]
        low[to], high[to] = min(a, b), max(a, b)
    return low[0], low[1], low[2], high[0], high[1], high[2]


def turned_back(box: Box, turn: Turn) -> Box:
    """A box of the room in the coordinates of a solid. [mm]"""
    low, high = [0.0] * 3, [0.0] * 3
    for axis, (to, sign) in enumerate(zip(turn.axes, turn.signs, strict=True)):
        at = turn.at[to].numerator / turn.at[to].denominator
        a, b = sign * (box[to] - at), sign * (box[to + 3] - at)
        low[axis], high[axis] = min(a, b), max(a, b)
    return low[0], low[1], low[2], high[0], high[1], high[2]


def overlap(one: Box, other: Box) -> bool:
    """Whether two boxes have more than a surface in common."""
    a, b, c, d, e, f = one
    u, v, w, x, y, z = other
    return a < x and u < d and b < y and v < e and c < z and w < f


def is_clear(one: Box, other: Box) -> bool:
    """Whether two boxes do not even touch."""
    a, b, c, d, e, f = one
    u, v, w, x, y, z = other
    return x < a or d < u or y < b or e < v or z < c or f < w


def room_left(one: Box, other: Box, *, taken: Iterable[Box]) -> float:
    """Volume that two boxes share and no box of `taken` covers. [mm3]

    Infinite when it falls into too many pieces to be worth it.
    """
    both = common_box(one, other)
    left = [] if both is None else [both]
    for box in taken:
        left = [piece for each in left for piece in _without(each, box)]
        if len(left) > MOST:
            return float("inf")
    return sum((d - a) * (e - b) * (f - c) for a, b, c, d, e, f in left)


def common_box(one: Box, other: Box) -> Box | None:
    """What two boxes share, or None if they only touch. [mm]"""
    a, b, c = (max(one[axis], other[axis]) for axis in range(3))
    d, e, f = (min(one[axis], other[axis]) for axis in range(3, 6))
    return (a, b, c, d, e, f) if a < d and b < e and c < f else None


def _without(whole: Box, taken: Box) -> list[Box]:
    """What is left of a box, in boxes that only touch."""
    if not overlap(whole, taken):
        return [whole]
    found = []
    rest = list(whole)
    for axis in range(3):
        if rest[axis] < taken[axis]:
            below = rest.copy()
            below[axis + 3] = rest[axis] = taken[axis]
            found.append(_box(below))
        if taken[axis + 3] < rest[axis + 3]:
            above = rest.copy()
            above[axis] = rest[axis + 3] = taken[axis + 3]
            found.append(_box(above))
    return found


def _box(values: Sequence[float]) -> Box:
    a, b, c, d, e, f = values
    return a, b, c, d, e, f
