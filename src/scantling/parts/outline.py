"""Flat outlines: which way they turn, and how they run on past the surface of a part.

Nothing is rounded. Corners are held as whole numbers over a denominator: an outline made larger
turns as it did, and whole numbers cost a tenth of reckoning with fractions.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import lcm
from typing import TypeVar

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction

Flat = tuple[Fraction, Fraction]
T = TypeVar("T")

AT_SURFACE: Flat = (Fraction(0), Fraction(0))

_Corner = tuple[int, int, int]  # two numerators and their denominator, above 0
_Line = tuple[int, int, int]  # outward normal, and distance along it


def run_out(
    points: Sequence[Flat], open_sides: frozenset[int], *, room: Flat, over: Flat
) -> tuple[Flat, ...]:
    """Outline with its open sides carried past the surface; the others run on in their own line.

    Where two sides would meet before that, as at a narrow mouth, the side between them goes less
    far past the surface: the first of 1/2, 1/4, 1/8 ... of `over` that leaves it a side.

    Args:
        points: A convex outline, once round.
        open_sides: Sides square to one of the two axes, through which it leaves the part.
        room: Size of the part along the first and the second axis. [mm]
        over: How far to go past the surface along them. [mm]

    Raises:
        OutOfRangeError: Not convex, not convex any more where it reaches the surface, or an open
            side is not square to an axis.
    """
    turn = turn_of(points)
    if turn == 0:
        msg = f"profile of {len(points)} points is not convex"
        raise OutOfRangeError(msg)
    if not open_sides:
        return tuple(points)
    found = _moved_out(points, open_sides, turn=turn, room=room, over=over)
    if _turn(found) != turn:
        at_surface = _moved_out(points, open_sides, turn=turn, room=room, over=AT_SURFACE)
        if _turn(at_surface) != turn:
            msg = "the sides of a profile meet before it leaves the part"
            raise OutOfRangeError(msg)
    while _turn(found) != turn:
        over = (over[0] / 2, over[1] / 2)
        found = _moved_out(points, open_sides, turn=turn, room=room, over=over)
    return tuple((Fraction(x, w), Fraction(y, w)) for x, y, w in found)


def turn_of(points: Sequence[Flat]) -> int:
    """1 if a convex outline turns from first to second axis, -1 if back, 0 if not convex.

    Every corner turns the same way, and the sides go round the compass once: a star turns the
    same way everywhere too, but goes round more than once.
    """
    shared = _denominator(points)
    return _turn([(*_enlarged(point, shared), 1) for point in points])


def sides(points: Sequence[Flat]) -> list[Flat]:
    """From each point to the next. [mm]"""
    return [(c - a, d - b) for (a, b), (c, d) in zip(points, _after(points), strict=True)]


def _turn(ring: Sequence[_Corner]) -> int:
    shared = lcm(*(w for _, _, w in ring))
    whole = [(x * (shared // w), y * (shared // w)) for x, y, w in ring]
    run = [(c - a, d - b) for (a, b), (c, d) in zip(whole, _after(whole), strict=True)]
    crossed = [a * d - b * c for (a, b), (c, d) in zip(run, _after(run), strict=True)]
    turns = {(across > 0) - (across < 0) for across in crossed}
    halves = [v > 0 or (v == 0 and u > 0) for u, v in run]
    changes = sum(half != after for half, after in zip(halves, _after(halves), strict=True))
    return turns.pop() if len(turns) == 1 and changes == 2 else 0


def _moved_out(
    points: Sequence[Flat], open_sides: frozenset[int], *, turn: int, room: Flat, over: Flat
) -> list[_Corner]:
    """The outline with its open sides past the surface; corners between others stay."""
    shared = _denominator([*points, room, over])
    ring = [_enlarged(point, shared) for point in points]
    ends = _enlarged(room, shared), _enlarged(over, shared)
    lines: dict[int, _Line] = {}
    for i in sorted({(k + step) % len(ring) for k in open_sides for step in (-1, 0, 1)}):
        (a, b), (c, d) = ring[i], ring[(i + 1) % len(ring)]
        normal = ((d - b) * turn, (a - c) * turn)  # outward
        if i in open_sides:
            lines[i] = (*normal, _past(normal, i, *ends))
        else:
            lines[i] = (*normal, normal[0] * a + normal[1] * b)
    found = []
    for i, (x, y) in enumerate(ring):
        before = (i - 1) % len(ring)
        moves = i in open_sides or before in open_sides
        u, v, w = _crossing(lines[before], lines[i]) if moves else (x, y, 1)
        found.append((u, v, w * shared))
    return found


def _past(normal: tuple[int, int], side: int, room: tuple[int, int], over: tuple[int, int]) -> int:
    """Distance of a line square to an axis that lies past the surface it looks at."""
    if 0 not in normal:
        msg = f"open side {side} of a profile is not square to the part"
        raise OutOfRangeError(msg)
    axis = 0 if normal[0] != 0 else 1
    at = room[axis] + over[axis] if normal[axis] > 0 else -over[axis]
    return normal[axis] * at


def _crossing(one: _Line, two: _Line) -> _Corner:
    a, b, e = one
    c, d, f = two
    across = a * d - b * c
    way = 1 if across > 0 else -1
    return ((e * d - b * f) * way, (a * f - e * c) * way, across * way)


def _denominator(points: Sequence[Flat]) -> int:
    return lcm(*(value.denominator for point in points for value in point))


def _enlarged(point: Flat, shared: int) -> tuple[int, int]:
    u, v = point
    return (
        u.numerator * (shared // u.denominator),
        v.numerator * (shared // v.denominator),
    )


def _after(ring: Sequence[T]) -> list[T]:
    return [*ring[1:], *ring[:1]]
