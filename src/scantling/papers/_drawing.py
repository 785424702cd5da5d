"""The piece in lines: front true, depth running off at half size, hidden lines left out.

In this projection (the cabinet projection of drawing books) everything that lies flat to the
front keeps its true shape and scale, so it can carry dimension lines, and the end and the top
are still seen. Which of two faces is nearer is asked where they overlap on the paper, so parts
may reach into each other as tenons do.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from scantling.parts import Part
from scantling.parts.solid import finished, turn
from scantling.setting_out import SettingOut
from scantling.solids.mesh import Mesh, mesh

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
Point = tuple[float, float]
Line = tuple[Point, Point]

RECEDING = float(0.5 * np.sqrt(0.5))  # [-] right and up for one of depth: 45 degrees, half size
FACING = 1e-9  # [-] a face turned to the eye by less than this is seen on edge
NEARER = 1e-3  # [mm] of depth; less than this and two faces lie in one plane
UNSEEN = 0.05  # [mm2] of the piece; faces that overlap by less do not cover each other
HAIR = 0.01  # [mm] of the piece, half the width of a hairline that is none
SHORTEST = 0.5  # [mm] of the piece; shorter bits of a line are left out
COVERS = 48  # the largest faces, which are tried first on all others

CLEAR = 3.0  # [mm] of the piece, between grain lines and the rim of a face
ACROSS_GRAIN = 0.5  # [-] sine to the grain; an end that lies flatter shows no lines along it
GRAIN_APART = 17.0  # [mm] of the piece, the mean distance of grain lines
GRAIN_LONG = 45.0  # [mm] of the piece, the least length of one

_AWAY = np.array([-RECEDING, 1.0, -RECEDING])  # a step along it changes nothing on the paper


@dataclass(frozen=True, kw_only=True)
class Drawing:
    """The piece on paper. [mm] of the piece, right and up."""

    outline: tuple[tuple[Point, ...], ...]  # round everything, and round what is seen through
    edges: tuple[Line, ...]
    grain: tuple[Line, ...]
    seen: frozenset[str]  # names of parts of which something is seen
    low: Point
    high: Point


@dataclass(frozen=True, kw_only=True, eq=False)
class _Stood:
    """A part's mesh with where it stands."""

    part: Part
    mesh: Mesh
    rows: Floats  # turns directions of the part into those of the piece
    at: Floats  # its origin [mm]

    def drawn(self, points: Floats) -> Floats:
        """Points of the part on the paper. [mm]"""
        stood = points @ self.rows.T + self.at
        found: Floats = stood[:, [0, 2]] + RECEDING * stood[:, [1]]
        return found


@dataclass(frozen=True, kw_only=True, eq=False)
class _Face:
    """One plane face turned to the eye."""

    part: str
    flat: BaseGeometry  # on the paper
    normal: Floats  # in the piece
    level: float  # distance of its plane from the origin along the normal [mm]
    edges: tuple[Line, ...]
    stood: _Stood
    number: int  # of the face in its mesh


def on_paper(point: Sequence[float]) -> Point:
    """Where a point of the piece, wide, deep and tall, is drawn. [mm]"""
    wide, deep, tall = point
    return wide + RECEDING * deep, tall + RECEDING * deep


def drawing(setting_out: SettingOut) -> Drawing:
    """The made parts of a piece, shut and standing, seen from the front, right and above."""
    faces = [face for part in setting_out.made for face in _faces(part, setting_out)]
    faces = _not_wholly_covered(faces)
    edges: list[Line] = []
    grain: list[Line] = []
    seen = set()
    for face, cover in zip(faces, _covers(faces), strict=True):
        left = face.flat.difference(cover)
        if left.area > UNSEEN:
            seen.add(face.part)
        edges += _uncovered(face.edges, cover)
        grain += _uncovered(tuple(_grain(face)), cover.buffer(CLEAR))
    low, high = _bounds(faces)
    return Drawing(
        outline=tuple(_rings(faces)),
        edges=tuple(dict.fromkeys(edges)),
        grain=tuple(line for line in grain if _long(line) > GRAIN_LONG),
        seen=frozenset(seen),
        low=low,
        high=high,
    )


def _rings(faces: Sequence[_Face]) -> Iterator[tuple[Point, ...]]:
    # joints close to the last bit of a float, so hairlines between parts are closed first
    whole = shapely.union_all([face.flat.buffer(HAIR, join_style="mitre") for face in faces])
    for piece in shapely.get_parts(whole.buffer(-HAIR, join_style="mitre")):
        for ring in (piece.exterior, *piece.interiors):
            yield tuple((float(x), float(y)) for x, y in ring.coords)


def _bounds(faces: Sequence[_Face]) -> tuple[Point, Point]:
    if not faces:
        return (0.0, 0.0), (0.0, 0.0)
    left, low, right, high = shapely.total_bounds([face.flat for face in faces]).tolist()
    return (left, low), (right, high)


def _not_wholly_covered(faces: Sequence[_Face]) -> list[_Face]:
    """Without what lies behind a single large face: most of the inside of a shut case."""
    if not faces:
        return []
    flats = np.array([face.flat for face in faces])
    points = shapely.get_coordinates(shapely.point_on_surface(flats))
    depths = _depths(faces, np.arange(len(faces)), points)
    hidden = np.zeros(len(faces), dtype=bool)
    for big in np.argsort(-shapely.area(flats), kind="stable")[:COVERS]:
        shapely.prepare(flats[big])
        nearer = _depths(faces, np.full(len(faces), big), points) < depths - NEARER
        hidden |= nearer & shapely.covers(flats[big], flats)
    return [face for face, gone in zip(faces, hidden.tolist(), strict=True) if not gone]


def _covers(faces: Sequence[_Face]) -> Iterator[BaseGeometry]:
    """For each face all that lies over it on the paper and nearer to the eye."""
    if not faces:
        return
    flats = np.array([face.flat for face in faces])
    first, second = shapely.STRtree(flats).query(flats, predicate="intersects")
    common = shapely.intersection(flats[first], flats[second])
    keep = (shapely.area(common) > UNSEEN) & (first != second)
    first, second, common = first[keep], second[keep], common[keep]
    points = shapely.get_coordinates(shapely.point_on_surface(common))
    behind = _depths(faces, second, points) < _depths(faces, first, points) - NEARER
    first, second = first[behind], second[behind]
    order = np.argsort(first, kind="stable")
    starts = np.searchsorted(first[order], np.arange(len(faces) + 1))
    for start, stop in pairwise(starts.tolist()):
        yield shapely.union_all(flats[second[order[start:stop]]])


def _depths(faces: Sequence[_Face], which: NDArray[np.int64], points: Floats) -> Floats:
    """How far off the plane of a face lies behind a point of the paper. [mm]"""
    normals = np.array([face.normal for face in faces]).reshape(-1, 3)[which]
    levels = np.array([face.level for face in faces])[which]
    starts = np.stack([points[:, 0], np.zeros(len(points)), points[:, 1]], axis=1)
    found: Floats = (levels - (normals * starts).sum(axis=1)) / (normals @ _AWAY)
    return found


def _uncovered(lines: Sequence[Line], cover: BaseGeometry) -> Iterator[Line]:
    for line in lines:
        for piece in shapely.get_parts(LineString(line).difference(cover)):
            if piece.length > SHORTEST:
                (a, b), *_, (c, d) = piece.coords
                ends = sorted([(round(a, 3), round(b, 3)), (round(c, 3), round(d, 3))])
                yield ends[0], ends[1]


def _long(line: Line) -> float:
    (a, b), (c, d) = line
    return float(np.hypot(c - a, d - b))


def _faces(part: Part, setting_out: SettingOut) -> Iterator[_Face]:
    stood = _stood(part, setting_out)
    body = stood.mesh
    flat = stood.drawn(body.vertices)
    ends = [((a[0], a[1]), (b[0], b[1])) for a, b in flat[body.edges].tolist()]
    normals = body.normals @ stood.rows.T
    for face in np.flatnonzero(normals @ _AWAY < -FACING).tolist():
        triangles = body.triangles[body.faces == face]
        corner = body.vertices[triangles[0, 0]] @ stood.rows.T + stood.at
        outline = shapely.union_all([Polygon(flat[each]) for each in triangles])
        beside = (body.edge_faces == face).any(axis=1)
        yield _Face(
            part=part.name,
            flat=outline,
            normal=normals[face],
            level=float(corner @ normals[face]),
            edges=tuple(ends[i] for i in np.flatnonzero(beside)),
            stood=stood,
            number=face,
        )


def _stood(part: Part, setting_out: SettingOut) -> _Stood:
    store = setting_out.store
    key = ("mesh", part.extent, part.cuts, part.is_round)
    body = store.kept(key, lambda: mesh(finished(part, store=store)))
    stands = turn(part.placement)
    rows = np.zeros((3, 3))
    for axis, (to, sign) in enumerate(zip(stands.axes, stands.signs, strict=True)):
        rows[to, axis] = sign
    return _Stood(part=part, mesh=body, rows=rows, at=np.array([float(x) for x in stands.at]))


def _grain(face: _Face) -> Iterator[Line]:
    """Lines along the grain of a face, at uneven distances that are the same every time."""
    stood, body = face.stood, face.stood.mesh
    along, normal = np.array([1.0, 0.0, 0.0]), body.normals[face.number]
    across = np.cross(normal, along)
    if np.linalg.norm(across) < ACROSS_GRAIN:
        return
    corners = body.vertices[np.unique(body.triangles[body.faces == face.number])]
    level = float(corners[0] @ normal) * normal
    (start, stop), (low, high) = (_span(corners @ way) for way in (along, across))
    inside = face.flat.buffer(-CLEAR)
    # no two boards alike, and none different tomorrow
    board = sum(face.part.encode()) + 5 * face.number
    for i, at in enumerate(_uneven(low, high, board=board)):
        near, far = (0.4 * _scatter(13 * i + board + side) for side in (0, 7))
        ends = (start + near * (stop - start), stop - far * (stop - start))
        points = [x * along + at * across + level for x in ends]
        line = LineString(stood.drawn(np.array(points)))
        for piece in shapely.get_parts(line.intersection(inside)):
            if piece.length > GRAIN_LONG:
                (a, b), *_, (c, d) = piece.coords
                yield (a, b), (c, d)


def _span(values: Floats) -> tuple[float, float]:
    return float(values.min()), float(values.max())


def _uneven(low: float, high: float, *, board: int) -> Iterator[float]:
    count = int((high - low) / GRAIN_APART)
    for i in range(count):
        yield low + (i + 0.2 + 0.6 * _scatter(i + board)) * (high - low) / count


def _scatter(i: int) -> float:
    """0 to 1, never in step, and the same for the same number: its bits well stirred."""
    stirred = (i + 1) * 0x9E3779B1 & 0xFFFFFFFF
    stirred = (stirred ^ stirred >> 15) * 0x85EBCA77 & 0xFFFFFFFF
    return (stirred ^ stirred >> 13) / 0x100000000
