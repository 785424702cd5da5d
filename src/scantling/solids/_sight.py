"""Surfaces as the eye sees them: edges and faces on a sheet, and what stands before what."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scantling.solids.kernel import Placed
from scantling.solids.mesh import Floats, Ints, Mesh, surface
from scantling.solids.pattern import Turn
from scantling.solids.store import Store

FACING = 1e-9  # [-] a face more edge-on than this is not seen
ASIDE = 1e-3  # [mm] how far beside an edge one looks
NEARER = 2e-2  # [mm] what stands this much nearer hides
SHORT = 1e-6  # [mm] a stretch shorter than this is a point
ROWS = 100  # neighbouring edges compared with the outlines near them at a time
Point = tuple[float, float, float]

TRIANGLES = 64  # looked at before what they hide is left out


@dataclass(frozen=True, kw_only=True)
class OnFace:
    """A stroke drawn on a face of a solid."""

    placed: int  # which of the solids
    face: int  # of its mesh
    ends: tuple[Point, Point]  # in its own coordinates [mm]


@dataclass(frozen=True, kw_only=True, eq=False)
class Scene:
    """Edges and faces on the sheet: to the right, upwards, towards the eye. [mm]"""

    first: Floats  # n by 3: one end of each edge
    last: Floats  # n by 3
    beside: Ints  # n by 2: numbers of the faces that meet there
    faces_eye: NDArray[np.bool_]  # n: whether either of them looks at the eye
    outlines: NDArray[np.bool_]  # n: whether just one does
    drawn_on: NDArray[np.bool_]  # n: whether it is no edge, but a stroke on one face
    triangles: Floats  # m by 3 by 3: corners of faces that look at the eye
    faces: Ints  # m

    def stretches(self) -> tuple[Floats, Floats, Ints]:
        """Edges cut wherever an outline crosses them: both ends, and of which edge."""
        at, edge = _crossings(self)
        count = len(self.first)
        at = np.concatenate([np.zeros(count), np.ones(count), at])
        edge = np.concatenate([np.arange(count), np.arange(count), edge])
        order = np.lexsort((at, edge))
        at, edge = at[order], edge[order]
        same = edge[:-1] == edge[1:]
        start, stop, owner = at[:-1][same], at[1:][same], edge[:-1][same]
        run = self.last[owner] - self.first[owner]
        first = self.first[owner] + run * start[:, None]
        last = self.first[owner] + run * stop[:, None]
        long = np.linalg.norm((last - first)[:, :2], axis=1) > SHORT
        return first[long], last[long], owner[long]


def scene(
    placed: Sequence[Placed], *, rows: Floats, store: Store, on_faces: Sequence[OnFace] = ()
) -> Scene:
    """Solids on the sheet.

    Args:
        placed: Solids where they stand.
        rows: To the right and upwards on the sheet, and towards the eye. [-]
        store: Keeps their surfaces.
        on_faces: Strokes on them.
    """
    strokes: list[list[OnFace]] = [[] for _ in placed]
    for stroke in on_faces:
        strokes[stroke.placed].append(stroke)
    parts = [
        _part(surface(each.solid, store=store), each.turn, rows, mine)
        for each, mine in zip(placed, strokes, strict=True)
    ]
    offset = 0
    shifted = []
    for part, count in parts:
        shifted.append((part, offset))
        offset += count
    return Scene(
        first=_stacked([p.first for p, _ in shifted], (0, 3)),
        last=_stacked([p.last for p, _ in shifted], (0, 3)),
        beside=_stacked([p.beside + n for p, n in shifted], (0, 2)).astype(np.int64),
        faces_eye=_stacked([p.faces_eye for p, _ in shifted], (0,)).astype(bool),
        outlines=_stacked([p.outlines for p, _ in shifted], (0,)).astype(bool),
        drawn_on=_stacked([p.drawn_on for p, _ in shifted], (0,)).astype(bool),
        triangles=_stacked([p.triangles for p, _ in shifted], (0, 3, 3)),
        faces=_stacked([p.faces + n for p, n in shifted], (0,)).astype(np.int64),
    )


def looked_at(
    seen: Scene, spots: Floats, depth: Floats, owner: Ints
) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Whether something nearer covers each spot, and whether anything does.

    The faces that meet in the edge a spot belongs to hide nothing of it.

    Args:
        seen: What there is.
        spots: n by 2, on the sheet. [mm]
        depth: n, towards the eye. [mm]
        owner: n, the edge each spot belongs to.
    """
    look = _Look(seen, spots, depth, owner)
    large_first = np.argsort(-_areas(seen.triangles), kind="stable")
    for low in range(0, len(large_first), TRIANGLES):
        look.at(large_first[low : low + TRIANGLES])
    return look.nearer, look.covered


class _Look:
    """Spots looked at, and what is known of them so far."""

    def __init__(self, seen: Scene, spots: Floats, depth: Floats, owner: Ints) -> None:
        self.nearer = np.zeros(len(spots), dtype=bool)
        self.covered = np.zeros(len(spots), dtype=bool)
        self._seen, self._spots, self._depth = seen, spots, depth
        self._beside = seen.beside[owner]
        self._left = np.argsort(spots[:, 0], kind="stable")  # not known to be hidden, by x

    def at(self, some: Ints) -> None:
        """Note what these triangles hide or cover."""
        left = self._left
        x, y, z = self._spots[left, 0], self._spots[left, 1], self._depth[left]
        beside = self._beside[left]
        triangles = self._seen.triangles[some]
        first = np.searchsorted(x, triangles[:, :, 0].min(axis=1)).tolist()
        last = np.searchsorted(x, triangles[:, :, 0].max(axis=1)).tolist()
        faces = self._seen.faces[some].tolist()
        rows = zip(triangles.tolist(), faces, first, last, strict=True)
        for triangle, face, start, stop in rows:
            there = slice(start, stop)
            inside, height = _over(triangle, x[there], y[there])
            if not inside.any():
                continue
            own = (beside[there] == face).any(axis=1)
            self.covered[left[there][inside]] = True
            self.nearer[left[there][inside & ~own & (height > z[there] + NEARER)]] = True
        self._left = left[~self.nearer[left]]


def _over(
    triangle: Sequence[Sequence[float]], x: Floats, y: Floats
) -> tuple[NDArray[np.bool_], Floats]:
    """Which spots lie within a triangle, and how near to the eye it is there. [mm]"""
    (ax, ay, az), (bx, by, bz), (cx, cy, cz) = triangle
    whole = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    b = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / whole
    c = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / whole
    inside = (b >= 0) & (c >= 0) & (b + c <= 1)
    return inside, az + b * (bz - az) + c * (cz - az)


def standing(turn: Turn) -> Floats:
    """How directions of a solid lie in the room: a signed permutation. [-]"""
    stand = np.zeros((3, 3))
    for axis, (to, sign) in enumerate(zip(turn.axes, turn.signs, strict=True)):
        stand[to, axis] = sign
    return stand


def _part(found: Mesh, turn: Turn, rows: Floats, strokes: Sequence[OnFace]) -> tuple[Scene, int]:
    stand = standing(turn)
    at = np.array([float(value) for value in turn.at])
    points = (found.vertices @ stand.T + at) @ rows.T
    facing = found.normals @ stand.T @ rows[2] > FACING
    edges = np.concatenate([found.edges, found.seams])
    beside = np.concatenate([found.edge_faces, found.seam_faces])
    looks = facing[beside]
    outline = looks[:, 0] != looks[:, 1]
    drawn = np.concatenate([np.ones(len(found.edges), dtype=bool), outline[len(found.edges) :]])
    shown = facing[found.faces]
    marks = np.array([s.ends for s in strokes]).reshape(-1, 2, 3)
    ends = (marks @ stand.T + at) @ rows.T
    faces = np.array([s.face for s in strokes], dtype=np.int64)
    none = np.zeros(len(strokes), dtype=bool)
    part = Scene(
        first=np.concatenate([points[edges[drawn, 0]], ends[:, 0]]),
        last=np.concatenate([points[edges[drawn, 1]], ends[:, 1]]),
        beside=np.concatenate([beside[drawn], np.stack([faces, faces], axis=1)]),
        faces_eye=np.concatenate([looks[drawn].any(axis=1), facing[faces]]),
        outlines=np.concatenate([outline[drawn], none]),
        drawn_on=np.concatenate([np.zeros(int(drawn.sum()), dtype=bool), ~none]),
        triangles=_broad(points[found.triangles[shown]]),
        faces=found.faces[shown][_is_broad(points[found.triangles[shown]])],
    )
    return part, len(found.normals)


def _is_broad(triangles: Floats) -> NDArray[np.bool_]:
    broad: NDArray[np.bool_] = _areas(triangles) > SHORT * SHORT
    return broad


def _broad(triangles: Floats) -> Floats:
    return triangles[_is_broad(triangles)]


def _crossings(seen: Scene) -> tuple[Floats, Ints]:
    """Where along an edge an outline crosses it, from 0 to 1, and which edge."""
    start, run = seen.first[:, :2], (seen.last - seen.first)[:, :2]
    other, across = start[seen.outlines], run[seen.outlines]
    places, edges = [np.zeros(0)], [np.zeros(0, dtype=np.int64)]
    # an edge between two faces that look away is hidden all along: no need to cut it
    mine = np.flatnonzero(seen.faces_eye)
    mine = mine[np.argsort(start[mine, 0] + run[mine, 0] / 2, kind="stable")]
    for low in range(0, len(mine), ROWS):
        some = mine[low : low + ROWS]
        near = _near(start[some], run[some], other, across)
        row, at = _met(start[some], run[some], other[near], across[near])
        places.append(at)
        edges.append(some[row])
    return np.concatenate(places), np.concatenate(edges).astype(np.int64)


def _near(start: Floats, run: Floats, other: Floats, across: Floats) -> NDArray[np.bool_]:
    """Which of the other edges reach into the box round the first ones."""
    low = np.minimum(start, start + run).min(axis=0) - SHORT
    high = np.maximum(start, start + run).max(axis=0) + SHORT
    ends = np.minimum(other, other + across), np.maximum(other, other + across)
    near: NDArray[np.bool_] = ((ends[0] <= high) & (ends[1] >= low)).all(axis=1)
    return near


def _met(start: Floats, run: Floats, other: Floats, across: Floats) -> tuple[Ints, Floats]:
    """Which edges the others cross, and where along them, from 0 to 1."""
    r, s = run[:, None], across[None]
    gap = other[None] - start[:, None]
    turn = _turn(r, s)
    steep = np.abs(turn) > FACING * np.linalg.norm(r, axis=2) * np.linalg.norm(s, axis=2)
    safe = np.where(steep, turn, 1.0)
    at = _turn(gap, s) / safe
    beyond = _turn(gap, r) / safe
    # an end that only touches counts too: there the outline turns away
    met = steep & (at > 0) & (at < 1) & (beyond > -FACING) & (beyond < 1 + FACING)
    row, column = np.nonzero(met)
    return row, at[row, column]


def _areas(triangles: Floats) -> Floats:
    """Twice the area of each on the sheet. [mm2]"""
    a, b, c = (triangles[:, k, :2] for k in range(3))
    return np.abs(_turn(b - a, c - a))


def _turn(one: Floats, other: Floats) -> Floats:
    found: Floats = one[..., 0] * other[..., 1] - one[..., 1] * other[..., 0]
    return found


def _stacked(rows: Sequence[NDArray[np.generic]], empty: tuple[int, ...]) -> Floats:
    found: Floats = np.concatenate([np.zeros(empty), *rows])
    return found
