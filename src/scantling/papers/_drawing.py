"""The piece as a maker draws it on the lid of a box: front true, depth running off at half size.

In this projection (the cabinet projection of drawing books) everything that lies flat to the
front keeps its true shape and scale, so it can carry dimension lines, and the end and the top
are still seen. Parts are laid over each other from the farthest to the nearest, each with its
faces, the grain on them and its edges; what ends up wholly covered is left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import permutations

import numpy as np
from numpy.typing import NDArray
from shapely import LinearRing, LineString, Polygon, get_parts, unary_union
from shapely.geometry.base import BaseGeometry

from scantling.parts import Part
from scantling.parts.solid import finished, turn
from scantling.setting_out import SettingOut
from scantling.solids.mesh import Mesh, mesh

Floats = NDArray[np.float64]
Point = tuple[float, float]
Line = tuple[Point, Point]

RECEDING = 0.5 * np.sqrt(0.5)  # [-] each of right and up for one of depth: 45 degrees, half size
FACING = 1e-9  # [-] a face turned to the viewer by less than this is seen on edge
LEVEL = 1e-4  # [mm] nearer than this to a plane is in it
UNSEEN = 0.5  # [mm2] of the piece; less than this peeping out is not drawn
CLEAR = 3.0  # [mm] of the piece, between grain lines and the rim of a face
ACROSS_GRAIN = 0.5  # [-] sine to the grain; an end that lies flatter shows no lines along it
GRAIN_APART = 17.0  # [mm] of the piece, the mean distance of grain lines

# towards the eye: from a point, no step along (receding, 1, receding) changes where it is drawn
_EYE = np.array([RECEDING, -1.0, RECEDING])


@dataclass(frozen=True, kw_only=True)
class Face:
    """A plane face on the paper. [mm] of the piece, right and up."""

    rings: tuple[tuple[Point, ...], ...]  # rim and holes
    grain: tuple[Line, ...]
    edges: tuple[Line, ...]


@dataclass(frozen=True, kw_only=True)
class Laid:
    """One part on the paper."""

    name: str
    faces: tuple[Face, ...]  # farthest first


@dataclass(frozen=True, kw_only=True)
class Drawing:
    """The whole piece, farthest part first."""

    laid: tuple[Laid, ...]
    low: Point  # [mm]
    high: Point  # [mm]


@dataclass(frozen=True, kw_only=True, eq=False)
class _Seen:
    """A part as the eye has it."""

    name: str
    mesh: Mesh
    rows: Floats  # turns directions of the part into those of the piece
    at: Floats  # its origin [mm]
    facing: NDArray[np.bool_]  # by face
    shadow: BaseGeometry  # what it covers

    def standing(self, points: Floats) -> Floats:
        """Points of the part where they stand in the piece. [mm]"""
        found: Floats = points @ self.rows.T + self.at
        return found

    def flat(self, points: Floats) -> Floats:
        """Points of the part where they are drawn. [mm]"""
        stood = self.standing(points)
        found: Floats = stood[:, [0, 2]] + RECEDING * stood[:, [1]]
        return found

    @property
    def box(self) -> tuple[Floats, Floats]:
        """Lowest and highest of it in the piece. [mm]"""
        points = self.standing(self.mesh.vertices)
        return points.min(axis=0), points.max(axis=0)


def drawing(setting_out: SettingOut) -> Drawing:
    """The made parts of a piece, shut and standing, drawn from the front, right and above."""
    seen = [_seen(part, setting_out) for part in setting_out.made]
    seen = [each for each in seen if not each.mesh.is_empty]
    laid = tuple(_laid(each) for each in _uncovered(_in_order(seen)))
    corners = (
        np.concatenate([each.flat(each.mesh.vertices) for each in seen])
        if seen
        else np.zeros((1, 2))
    )
    low, high = corners.min(axis=0), corners.max(axis=0)
    return Drawing(laid=laid, low=(low[0], low[1]), high=(high[0], high[1]))


def on_paper(wide: float, deep: float, tall: float) -> Point:
    """Where a point of the piece is drawn. [mm]"""
    return wide + RECEDING * deep, tall + RECEDING * deep


def _seen(part: Part, setting_out: SettingOut) -> _Seen:
    store = setting_out.store
    key = ("mesh", part.extent, part.cuts, part.is_round)
    body = store.kept(key, lambda: mesh(finished(part, store=store)))
    stands = turn(part.placement)
    rows = np.zeros((3, 3))
    for axis, (to, sign) in enumerate(zip(stands.axes, stands.signs, strict=True)):
        rows[to, axis] = sign
    facing = (body.normals @ rows.T) @ _EYE > FACING
    at = np.array([float(x) for x in stands.at])
    bare = _Seen(name=part.name, mesh=body, rows=rows, at=at, facing=facing, shadow=Polygon())
    flat = bare.flat(body.vertices)
    triangles = body.triangles[facing[body.faces]]
    return replace(bare, shadow=unary_union([Polygon(flat[each]) for each in triangles]))


def _in_order(seen: Sequence[_Seen]) -> list[_Seen]:
    """Farthest first. What two parts cover in common belongs to the nearer."""
    behind: dict[int, set[int]] = {i: set() for i in range(len(seen))}
    for i, one in enumerate(seen):
        for k, other in enumerate(seen[:i]):
            if one.shadow.intersection(other.shadow).area > UNSEEN:
                near, far = (i, k) if _is_nearer(one, other) else (k, i)
                behind[near].add(far)
    return [seen[i] for i in _farthest_first(behind)]


def _farthest_first(behind: Mapping[int, set[int]]) -> list[int]:
    """Each after all that stand behind it.

    Things that lap round each other have no such order. Then the one with the fewest behind it
    goes first, and of some lines the wrong end may be covered.
    """
    left = {i: set(others) for i, others in behind.items()}
    found: list[int] = []
    while left:
        first = min(left, key=lambda i: (len(left[i]), i))
        found.append(first)
        del left[first]
        for others in left.values():
            others.discard(first)
    return found


def _is_nearer(one: _Seen, other: _Seen) -> bool:
    """By the axis along which they stand farthest apart, or overlap least."""
    (low, high), (from_low, from_high) = one.box, other.box
    above, below = low - from_high, from_low - high
    axis = int(np.argmax(np.maximum(above, below)))
    return bool((above[axis] > below[axis]) == (_EYE[axis] > 0))


def _uncovered(seen: Sequence[_Seen]) -> list[_Seen]:
    found: list[_Seen] = []
    over: BaseGeometry = Polygon()
    for each in reversed(seen):
        if each.shadow.difference(over).area > UNSEEN:
            found.append(each)
            over = over.union(each.shadow)
    return found[::-1]


@dataclass(frozen=True, kw_only=True)
class _Plane:
    """One piece of a plane face."""

    face: int
    corners: Floats  # in the part [mm]
    flat: Polygon


def _laid(seen: _Seen) -> Laid:
    planes = list(_planes(seen))
    behind: dict[int, set[int]] = {i: set() for i in range(len(planes))}
    for i, k in permutations(range(len(planes)), 2):
        if _covers(planes[i], planes[k], seen):
            behind[i].add(k)
    edges = list(_edges(seen))
    return Laid(
        name=seen.name,
        faces=tuple(
            Face(
                rings=tuple(_points(ring) for ring in _rings(plane.flat)),
                grain=tuple(_grain(seen, plane)),
                edges=tuple(line for line, faces in edges if plane.face in faces),
            )
            for plane in (planes[i] for i in _farthest_first(behind))
        ),
    )


def _planes(seen: _Seen) -> Iterator[_Plane]:
    flat = seen.flat(seen.mesh.vertices)
    for face in np.flatnonzero(seen.facing).tolist():
        triangles = seen.mesh.triangles[seen.mesh.faces == face]
        corners = seen.mesh.vertices[np.unique(triangles)]
        for piece in get_parts(unary_union([Polygon(flat[each]) for each in triangles])):
            if isinstance(piece, Polygon) and not piece.is_empty:
                yield _Plane(face=face, corners=corners, flat=piece)


def _covers(one: _Plane, other: _Plane, seen: _Seen) -> bool:
    """Whether the other lies wholly behind the plane of the one, and under it on the paper."""
    normal = seen.mesh.normals[one.face]
    depths = other.corners @ normal - float((one.corners @ normal).mean())
    is_behind = bool((depths < LEVEL).all() and (depths < -LEVEL).any())
    return is_behind and one.flat.intersection(other.flat).area > UNSEEN


def _rings(face: Polygon) -> list[LinearRing]:
    return [face.exterior, *face.interiors]


def _points(line: LineString) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in line.coords)


def _edges(seen: _Seen) -> Iterator[tuple[Line, list[int]]]:
    flat = seen.flat(seen.mesh.vertices)
    ends = flat[seen.mesh.edges].tolist()
    for (a, b), faces in zip(ends, seen.mesh.edge_faces.tolist(), strict=True):
        yield ((a[0], a[1]), (b[0], b[1])), faces


def _grain(seen: _Seen, plane: _Plane) -> Iterator[Line]:
    """Lines along the grain of a face, at uneven distances that are the same every time."""
    along, normal = np.array([1.0, 0.0, 0.0]), seen.mesh.normals[plane.face]
    across = np.cross(normal, along)
    if np.linalg.norm(across) < ACROSS_GRAIN:
        return
    level = float(np.mean(plane.corners @ normal)) * normal
    (start, stop), (low, high) = (_span(plane.corners @ way) for way in (along, across))
    inside = plane.flat.buffer(-CLEAR)
    for i, at in enumerate(_uneven(low, high)):
        near, far = (0.4 * _scatter(13 * i + 5 * plane.face + side) for side in (0, 7))
        ends = (start + near * (stop - start), stop - far * (stop - start))
        points = [x * along + at * across + level for x in ends]
        line = LineString(seen.flat(np.array(points)))
        for piece in get_parts(line.intersection(inside)):
            if piece.length > GRAIN_APART:
                first, *_, last = _points(piece)
                yield first, last


def _span(values: Floats) -> tuple[float, float]:
    return float(values.min()), float(values.max())


def _uneven(low: float, high: float) -> Iterator[float]:
    count = int((high - low) / GRAIN_APART)
    for i in range(count):
        yield low + (i + 0.2 + 0.6 * _scatter(i)) * (high - low) / count


def _scatter(i: int) -> float:
    """0 to 1, never in step, and the same for the same number: its bits well stirred."""
    stirred = (i + 1) * 0x9E3779B1 & 0xFFFFFFFF
    stirred = (stirred ^ stirred >> 15) * 0x85EBCA77 & 0xFFFFFFFF
    return (stirred ^ stirred >> 13) / 0x100000000
