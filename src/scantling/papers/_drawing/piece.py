"""The piece in lines: front or back true, depth running off at half size, nothing hidden drawn.

What lies flat to the front keeps its true shape and scale, so it can carry dimension lines, and
an end and the top are still seen.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely import LineString, Polygon

from scantling.papers._drawing.line_types import Kind, Spot, Stroke
from scantling.parts import Part, Point
from scantling.parts.solid import finished, placed
from scantling.setting_out import SettingOut
from scantling.solids.kernel import Placed
from scantling.solids.mesh import Floats, Mesh, surface
from scantling.solids.store import Store
from scantling.solids.views import (
    RECEDING,
    Cabinet,
    Line,
    LineKind,
    OnFace,
    lines,
    standing,
)

CLEAR = 3.0  # [mm] of the piece, between grain lines and the rim of a face
ACROSS_GRAIN = 0.5  # [-] sine to the grain; an end that lies flatter shows no lines along it
GRAIN_APART = 17.0  # [mm] of the piece, the mean distance of grain lines
GRAIN_LONG = 45.0  # [mm] of the piece, the least length of one

Vec = tuple[float, float, float]

_KINDS = {
    LineKind.OUTLINE: Kind.OUTLINE,
    LineKind.EDGE: Kind.EDGE,
    LineKind.GRAIN: Kind.GRAIN,
}


@dataclass(frozen=True, kw_only=True)
class PieceDrawing:
    """The piece on paper. [mm] of the piece, right and up."""

    strokes: tuple[Stroke, ...]
    low: Spot
    high: Spot


def on_paper(point: Sequence[float]) -> Spot:
    """Where a point of the piece, wide, deep and tall, is drawn from the front. [mm]"""
    wide, deep, tall = point
    return wide + RECEDING * deep, tall + RECEDING * deep


def piece_drawing(
    setting_out: SettingOut,
    *,
    view: Cabinet,
    moved: Mapping[str, Point] | None = None,
) -> PieceDrawing:
    """The made parts of a piece, standing.

    Args:
        setting_out: The piece.
        view: From the front or from behind.
        moved: How far parts are drawn from where they stand, by name; others stay. [mm]
    """
    by = moved or {}
    stood = [_stood(part, setting_out, by.get(part.name)) for part in setting_out.made]
    key = ("piece drawing", view, tuple((each.solid, each.turn) for each in stood))
    names = tuple(part.name for part in setting_out.made)
    found = setting_out.store.kept(
        (*key, names), lambda: _lines(stood, view=view, store=setting_out.store)
    )
    strokes = tuple(
        Stroke(kind=_KINDS[line.kind], points=line.points)
        for line in found
        if line.kind in _KINDS and (line.kind is not LineKind.GRAIN or _long(line) > GRAIN_LONG)
    )
    spots = [spot for s in strokes if s.kind is not Kind.GRAIN for spot in s.points] or [(0.0, 0.0)]
    xs, ys = zip(*spots, strict=True)
    return PieceDrawing(strokes=strokes, low=(min(xs), min(ys)), high=(max(xs), max(ys)))


def _stood(part: Part, setting_out: SettingOut, by: Point | None) -> Placed:
    found = placed(part, finished(part, store=setting_out.store))
    return found if by is None else found.moved(by)


def _lines(stood: Sequence[Placed], *, view: Cabinet, store: Store) -> tuple[Line, ...]:
    grain = [
        stroke
        for number, each in enumerate(stood)
        for stroke in _grain(number, each, eye=view.rows[2], store=store)
    ]
    return lines(stood, view=view, store=store, grain=grain)


def _long(line: Line) -> float:
    (a, b), (c, d) = line.points
    return float(np.hypot(c - a, d - b))


def _grain(number: int, each: Placed, *, eye: Floats, store: Store) -> Iterator[OnFace]:
    """Lines along the grain of the faces one looks at."""
    body = surface(each.solid, store=store)
    facing = body.normals @ standing(each.turn).T @ eye
    across_grain = np.hypot(body.normals[:, 1], body.normals[:, 2])
    # no two boards alike, and none different tomorrow
    board = sum(each.name.encode())
    for face in np.flatnonzero((facing > 0) & (across_grain > ACROSS_GRAIN)).tolist():
        for start, stop in _face_grain(body, face, board=board + 5 * face):
            yield OnFace(placed=number, face=face, ends=(start, stop))


def _face_grain(body: Mesh, face: int, *, board: int) -> Iterator[tuple[Vec, Vec]]:
    """Lines on one face, at uneven distances that are the same every time; in the part. [mm]"""
    normal = body.normals[face]
    along = np.array([1.0, 0.0, 0.0]) - normal[0] * normal
    along /= np.linalg.norm(along)
    across = np.cross(normal, along)
    triangles = body.vertices[body.triangles[body.faces == face]]
    flat = np.stack([triangles @ along, triangles @ across], axis=2)
    (start, low), (stop, high) = flat.min(axis=(0, 1)), flat.max(axis=(0, 1))
    if stop - start < GRAIN_LONG or high - low < GRAIN_APART:
        return
    inside = shapely.union_all([Polygon(each) for each in flat]).buffer(-CLEAR)
    level = float(triangles[0, 0] @ normal) * normal
    for i, at in enumerate(_uneven(float(low), float(high), board=board)):
        near, far = (0.4 * _scatter(13 * i + board + side) for side in (0, 7))
        line = LineString([(start + near * (stop - start), at), (stop - far * (stop - start), at)])
        for piece in shapely.get_parts(line.intersection(inside)):
            if piece.length > GRAIN_LONG:
                a, b = (x * along + at * across + level for x, _ in piece.coords)
                yield _vec(a), _vec(b)


def _vec(found: Floats) -> Vec:
    x, y, z = found.tolist()
    return x, y, z


def _uneven(low: float, high: float, *, board: int) -> Iterator[float]:
    count = int((high - low) / GRAIN_APART)
    for i in range(count):
        yield low + (i + 0.2 + 0.6 * _scatter(i + board)) * (high - low) / count


def _scatter(i: int) -> float:
    """0 to 1, never in step, and the same for the same number: its bits well stirred."""
    stirred = (i + 1) * 0x9E3779B1 & 0xFFFFFFFF
    stirred = (stirred ^ stirred >> 15) * 0x85EBCA77 & 0xFFFFFFFF
    return (stirred ^ stirred >> 13) / 0x100000000
