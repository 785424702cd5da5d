"""The only door to the geometry kernel: solids cut from patterns, turned, met and measured.

The kernel computes in floating point. Each exact coordinate is converted once, so the error of
a volume stays near 1e-15 of it. Nothing is computed before it is asked for; what is asked for
here is always computed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from manifold3d import Error, Manifold, OpType
from numpy.typing import NDArray

from scantling.errors import InternalError
from scantling.solids._boxes import Box, box_of, is_clear
from scantling.solids._nook import Nook, Wood, floats, piece
from scantling.solids.pattern import Convex, Pattern, Point, Turn

Floats = NDArray[np.float64]

PLANE_DIGITS = 9  # decimals of a plane's normal and distance [mm] that tell it from another
NOISE = 1e-6  # [mm3] a hundred times above what exact contact leaves in floating point


@dataclass(frozen=True, kw_only=True)
class Bulk:
    """How much there is of something, and where it lies."""

    volume: float  # [mm3]
    moments: tuple[float, float, float]  # sums of volume times distance along each axis [mm4]


@dataclass(frozen=True, kw_only=True, eq=False)
class Solid:
    """A closed body of wood or metal. Two of them are the same only if they are one object."""

    body: Manifold  # no other room looks at it
    made_by: tuple[int, ...] = ()  # the kernel's mark for the block and each piece taken away
    round_about: tuple[int | None, ...] = ()  # beside it: axis of a round surface
    wood: Wood  # what it was cut from and to, exactly

    @property
    def volume(self) -> float:
        """Of the wood that is left. [mm3]"""
        return float(self.body.volume())

    @property
    def area(self) -> float:
        """Of its whole surface. [mm2]"""
        return float(self.body.surface_area())

    @property
    def bulk(self) -> Bulk:
        """Volume, and where it lies in its own coordinates. [mm3, mm4]"""
        return _bulk(self.body)

    @property
    def pieces(self) -> int:
        """Into how many pieces it falls; 0 if nothing is left."""
        return len(self.body.decompose()) if self.body.num_tri() else 0

    @property
    def box(self) -> tuple[tuple[float, float, float], tuple[float, float, float]]:
        """Lowest and highest coordinates of what is left. [mm]"""
        a, b, c, d, e, f = self.body.bounding_box()
        return (a, b, c), (d, e, f)


@dataclass(frozen=True, kw_only=True, eq=False)
class Placed:
    """A solid where it stands."""

    name: str
    solid: Solid
    turn: Turn

    def moved(self, by: Point) -> Placed:
        """The same solid further on. [mm]"""
        x, y, z = (a + b for a, b in zip(self.turn.at, by, strict=True))
        return replace(self, turn=replace(self.turn, at=(x, y, z)))


def cut(pattern: Pattern) -> Solid:
    """The block less everything taken away.

    Raises:
        InternalError: Flat corners, or the kernel refused.
    """
    block, *away = pieces = [piece(each.corners) for each in (pattern.block, *pattern.away)]
    hulls = [_hull_of(np.array(each.rounded)) for each in pieces]
    body = _less(hulls[0], hulls[1:], boxes=[each.box for each in away])
    if body.status() != Error.NoError:
        msg = f"the geometry kernel gave up: {body.status()}"
        raise InternalError(msg)
    return Solid(
        body=body,
        made_by=tuple(hull.original_id() for hull in hulls),
        round_about=tuple(each.round_about for each in (pattern.block, *pattern.away)),
        wood=Wood(block=block, taken=tuple(away)),
    )


def _less(body: Manifold, away: Sequence[Manifold], *, boxes: Sequence[Box]) -> Manifold:
    """What is left of a body. Pieces that stand clear of each other are taken away at one go.

    The kernel would first make one body of all that is taken; where pieces reach into each other,
    as at a tenon, that costs as much again as taking them away.
    """
    for together in _clear_of_each_other(boxes):
        body -= Manifold.compose([away[i] for i in together])
    return body


def _clear_of_each_other(boxes: Sequence[Box]) -> list[list[int]]:
    """Boxes by number, each in the first set of which it touches none."""
    sets: list[list[int]] = []
    for i, box in enumerate(boxes):
        for some in sets:
            if all(is_clear(box, boxes[k]) for k in some):
                some.append(i)
                break
        else:
            sets.append([i])
    return sets


def standing(solid: Solid, turn: Turn) -> Solid:
    """The solid where it stands in the room; a mirrored one has its surface outside again."""
    return Solid(
        body=_moved(solid.body, turn),
        made_by=solid.made_by,
        round_about=tuple(None if a is None else turn.axes[a] for a in solid.round_about),
        wood=solid.wood.turned(turn),
    )


def room_filled(room: Nook) -> float:
    """Volume of a nook that is wood of both solids. [mm3]"""
    return float(_filled(room).volume())


def depth_filled(room: Nook) -> float:
    """How deep two solids reach into each other in a nook. [mm]

    The volume over the largest of the three outlines it shows along the axes, right for a slice
    square to one of them; 0 where nothing is shared.
    """
    both = _filled(room)
    area = _outline(both)
    return float(both.volume()) / area if area > 0 else 0.0


def _filled(room: Nook) -> Manifold:
    block = Manifold.cube(room.size)
    for hull in room.within:
        block ^= _hull_of(np.array(hull))
    away = [_hull_of(np.array(hull)) for hull in room.taken]
    return _less(block, away, boxes=[box_of(hull) for hull in room.taken])


def shared_twice(
    one: Solid,
    other: Solid,
    *,
    turn: Turn,
    slabs: tuple[Floats, Floats],
    shift: Floats,
) -> float:
    """Volume of the first within its slab, moved by `shift`, and the second within its own. [mm3]

    Args:
        one: Stands in its own coordinates.
        other: The second.
        turn: How the second stands in the coordinates of the first.
        slabs: Corners of a convex hull for each, in the coordinates of the first. [mm]
        shift: Brings the first slab onto the second. [mm]
    """
    mine = (one.body ^ _hull_of(slabs[0])).translate(shift.tolist())
    both = Manifold.batch_boolean(
        [mine, _moved(other.body, turn), _hull_of(slabs[1])], OpType.Intersect
    )
    return float(both.volume())


def common(one: Convex, other: Convex) -> Bulk:
    """What two convex bodies have in common."""
    return _bulk(_hull(one) ^ _hull(other))


def shared_by_hulls(one: Convex, other: Convex, *, within: Convex) -> float:
    """Volume common to three convex bodies. [mm3]"""
    bodies = [_hull(one), _hull(other), _hull(within)]
    return float(Manifold.batch_boolean(bodies, OpType.Intersect).volume())


def _bulk(body: Manifold) -> Bulk:
    if not body.num_tri():
        return Bulk(volume=0.0, moments=(0.0, 0.0, 0.0))
    raw = body.to_mesh64()
    points = np.asarray(raw.vert_properties)[:, :3]
    a, b, c = (points[np.asarray(raw.tri_verts)[:, k]] for k in range(3))
    six_volumes = np.einsum("ij,ij->i", a, np.cross(b, c))
    x, y, z = (six_volumes @ (a + b + c) / 24).tolist()
    return Bulk(volume=float(body.volume()), moments=(x, y, z))


def _hull(body: Convex) -> Manifold:
    return _hull_of(np.array(floats(body.corners)))


def _hull_of(points: Floats) -> Manifold:
    hull = Manifold.hull_points(points)
    if not hull.num_tri() or hull.volume() <= 0:
        msg = f"{len(points)} corners span no solid"
        raise InternalError(msg)
    return hull


def _outline(body: Manifold) -> float:
    """Area a body shows along an axis, the largest of three, for a convex one. [mm2]

    The two-sided sheets that touching faces leave on it count nothing.
    """
    raw = body.to_mesh64()
    points = np.asarray(raw.vert_properties)[:, :3]
    a, b, c = (points[np.asarray(raw.tri_verts)[:, k]] for k in range(3))
    twice = np.cross(b - a, c - a)
    size = np.linalg.norm(twice, axis=1)
    kept = size > 0
    unit = twice[kept] / size[kept, None]
    leading = np.take_along_axis(unit, np.abs(unit).argmax(axis=1)[:, None], axis=1)[:, 0]
    sign = np.sign(leading)
    planes = np.column_stack([unit, (unit * a[kept]).sum(axis=1)]) * sign[:, None]
    _, place = np.unique(np.round(planes, PLANE_DIGITS) + 0.0, axis=0, return_inverse=True)
    net = np.zeros((len(planes), 3))
    # the two sides of a sheet lie in one plane and cancel
    np.add.at(net, place.reshape(-1), twice[kept])
    return float(np.abs(net).sum(axis=0).max() / 4)  # halved for twice, and for front and back


def _moved(body: Manifold, turn: Turn) -> Manifold:
    rows = np.zeros((3, 4))
    for axis, (to, sign) in enumerate(zip(turn.axes, turn.signs, strict=True)):
        rows[to, axis] = sign
    rows[:, 3] = [x.numerator / x.denominator for x in turn.at]
    return body.transform(rows)
