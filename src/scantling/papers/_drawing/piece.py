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

from scantling.exact import Fraction
from scantling.papers._drawing.line_types import SCALES, Drawing, Kind, Spot, Stroke
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

SPREAD = (
    Fraction(3, 5),
    Fraction(8, 5),
    Fraction(3, 5),
)  # [-] of the way from the middle: wide, deep, tall
FRONT = Fraction(3, 2)  # [-] of the piece's depth: how far what opens is drawn out in front

Vec = tuple[float, float, float]

PIECE_KINDS = {
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

    @classmethod
    def of(cls, strokes: tuple[Stroke, ...]) -> PieceDrawing:
        """Strokes with their lowest and highest corner; the grain lies within."""
        spots = [spot for s in strokes if s.kind is not Kind.GRAIN for spot in s.points]
        xs, ys = zip(*(spots or [(0.0, 0.0)]), strict=True)
        return cls(strokes=strokes, low=(min(xs), min(ys)), high=(max(xs), max(ys)))


def scaled(picture: PieceDrawing, *, room: Spot, alt: str) -> Drawing:
    """A picture on paper, as large as a usual scale lets it be.

    Args:
        picture: Strokes at full size.
        room: The most it may take up, wide and tall. [mm]
        alt: What it shows, in words.
    """
    sizes = [high - low for low, high in zip(picture.low, picture.high, strict=True)]
    fitting = (s for s in SCALES if all(a / s <= b for a, b in zip(sizes, room, strict=True)))
    scale = next(fitting, SCALES[-1])
    left, foot = picture.low
    strokes = tuple(
        Stroke(
            kind=stroke.kind,
            points=tuple(
                (round((x - left) / scale, 2), round((y - foot) / scale, 2))
                for x, y in stroke.points
            ),
        )
        for stroke in picture.strokes
    )
    size = sizes[0] / scale, sizes[1] / scale
    return Drawing(strokes=strokes, texts=(), size=size, scale=scale, alt=alt)


def pulled_apart(setting_out: SettingOut) -> dict[str, Point]:
    """How far each part is moved so that all are seen: away from the middle of the piece. [mm]

    What opens or slides goes as one, and out in front. It is a picture, not an order of work.
    """
    boxes = {part.name: _middle(part) for part in setting_out.made}
    together: dict[str, list[str]] = {}
    for part in setting_out.made:
        together.setdefault(part.moves_with or part.name, []).append(part.name)
    heart = _mean(list(boxes.values()))
    out = FRONT * setting_out.overall[1]
    moved: dict[str, Point] = {}
    for name, names in together.items():
        middle = _mean([boxes[each] for each in names])
        x, y, z = (share * (a - b) for share, a, b in zip(SPREAD, middle, heart, strict=True))
        opens = name not in boxes
        moved |= dict.fromkeys(names, (x, y - out if opens else y, z))
    return moved


def _middle(part: Part) -> Point:
    x, y, z = (size / 2 for size in (part.extent.length, part.extent.width, part.extent.thickness))
    return part.placement.to_piece((x, y, z))


def _mean(points: Sequence[Point]) -> Point:
    x, y, z = (sum(axis, Fraction(0)) / len(points) for axis in zip(*points, strict=True))
    return x, y, z


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
        moved: How far parts are drawn from where they stand, by name; others stay. Drawn so,
            they show no grain. [mm]
    """
    by = moved or {}
    stood = [_stood(part, setting_out, by.get(part.name)) for part in setting_out.made]
    key = ("piece drawing", view, tuple((each.solid, each.turn) for each in stood))
    names = tuple(part.name for part in setting_out.made)
    found = setting_out.store.kept(
        (*key, names),
        lambda: _lines(
            stood, grained=stood if moved is None else (), view=view, store=setting_out.store
        ),
    )
    strokes = tuple(
        Stroke(kind=PIECE_KINDS[line.kind], points=line.points)
        for line in found
        if line.kind in PIECE_KINDS
        and (line.kind is not LineKind.GRAIN or _long(line) > GRAIN_LONG)
    )
    return PieceDrawing.of(strokes)


def _stood(part: Part, setting_out: SettingOut, by: Point | None) -> Placed:
    found = placed(part, finished(part, store=setting_out.store))
    return found if by is None else found.moved(by)


def _lines(
    stood: Sequence[Placed], *, grained: Sequence[Placed], view: Cabinet, store: Store
) -> tuple[Line, ...]:
    grain = [
        stroke
        for number, each in enumerate(grained)
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
