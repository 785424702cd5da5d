"""Triangles, faces and edges of a solid, in an order that depends on its shape alone.

The kernel orders vertices as it likes. Here they are sorted, so that the same solid gives the
same bytes. Which edges are drawn follows from which cut made the two faces, not from an angle:
faces of one round hole meet in edges that no hand feels, two flat cuts meet in one that it does.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scantling.solids.kernel import Solid
from scantling.solids.store import Store

DIGITS = 7  # [mm] decimal places kept; a thousand times finer than any drawing, coarser than noise
LEVEL = 1e-9  # [-] two unit normals further apart than this belong to two planes

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


@dataclass(frozen=True, kw_only=True, eq=False)
class Mesh:
    """The surface of a solid. [mm]"""

    vertices: Floats  # n by 3, sorted
    triangles: Ints  # m by 3 vertices, seen from outside against the clock; sorted
    faces: Ints  # m: which plane face each triangle is a part of
    normals: Floats  # one row for each face, outward
    edges: Ints  # k by 2 vertices: where two faces meet in an edge
    edge_faces: Ints  # k by 2: the faces that meet there
    seams: Ints  # j by 2 vertices: between two flats of one round surface
    seam_faces: Ints  # j by 2

    @property
    def is_empty(self) -> bool:
        """Whether nothing is left to show."""
        return not len(self.triangles)


def mesh(solid: Solid) -> Mesh:
    """The surface of a solid."""
    raw = solid.body.to_mesh64()
    points = np.round(np.asarray(raw.vert_properties)[:, :3], DIGITS) + 0.0  # no -0.0
    vertices, place = np.unique(points, axis=0, return_inverse=True)
    corners = place.reshape(-1)[np.asarray(raw.tri_verts).astype(np.int64)].reshape(-1, 3)
    pieces = _makers(solid, np.asarray(raw.run_index), np.asarray(raw.run_original_id))
    planes = np.asarray(raw.face_id, dtype=np.int64)
    keep = _has_three_corners(corners)
    corners, pieces, planes = corners[keep], pieces[keep], planes[keep]
    order, corners = _in_order(corners)
    return _faced(vertices, corners, pieces[order], planes[order], solid)


def surface(solid: Solid, *, store: Store) -> Mesh:
    """The surface of a solid, worked out once."""
    return store.kept(("mesh", solid), lambda: mesh(solid))


def _makers(solid: Solid, index: Ints, marks: Ints) -> Ints:
    """For each triangle which piece of the pattern made it: 0 the block, 1 the first cut ..."""
    known = {mark: place for place, mark in enumerate(solid.made_by)}
    starts = index.astype(np.int64)
    counts = (starts[1:] - starts[:-1]) // 3
    return np.repeat([known.get(mark, -1) for mark in marks.tolist()], counts).astype(np.int64)


def _has_three_corners(corners: Ints) -> NDArray[np.bool_]:
    a, b, c = corners.T
    found: NDArray[np.bool_] = (a != b) & (b != c) & (c != a)
    return found


def _in_order(corners: Ints) -> tuple[Ints, Ints]:
    first = np.argmin(corners, axis=1)
    rows = np.arange(len(corners))
    turned = np.stack([corners[rows, (first + k) % 3] for k in range(3)], axis=1)
    order = np.lexsort(turned.T[::-1])
    return order, turned[order]


def _faced(vertices: Floats, triangles: Ints, pieces: Ints, planes: Ints, solid: Solid) -> Mesh:
    marks, labels = np.unique(np.stack([pieces, planes], axis=1), axis=0, return_inverse=True)
    labels = labels.reshape(-1)
    normals = _normals(vertices, triangles, labels, count=len(marks))
    pairs, sides = _edges(triangles, labels)
    level = np.all(np.abs(normals[sides[:, 0]] - normals[sides[:, 1]]) < LEVEL, axis=1)
    faces = _renumbered(_joined(sides[level], count=len(marks))[labels])
    count = int(faces.max()) + 1 if len(faces) else 0
    seam = _is_seam(marks[:, 0], normals, sides, solid) & ~level
    of_label = np.zeros(len(marks), dtype=np.int64)
    of_label[labels] = faces
    edge = ~level & ~seam
    return Mesh(
        vertices=vertices,
        triangles=triangles,
        faces=faces,
        normals=_normals(vertices, triangles, faces, count=count),
        edges=pairs[edge],
        edge_faces=of_label[sides[edge]],
        seams=pairs[seam],
        seam_faces=of_label[sides[seam]],
    )


def _normals(vertices: Floats, triangles: Ints, labels: Ints, *, count: int) -> Floats:
    """Outward normal of each face: the sum over its triangles, so that slivers weigh nothing."""
    a, b, c = (vertices[triangles[:, k]] for k in range(3))
    total = np.zeros((count, 3))
    np.add.at(total, labels, np.cross(b - a, c - a))
    length = np.linalg.norm(total, axis=1, keepdims=True)
    unit: Floats = total / np.where(length > 0, length, 1.0) + 0.0
    return unit


def _edges(triangles: Ints, labels: Ints) -> tuple[Ints, Ints]:
    """Edges between triangles of different labels, and the labels on both sides."""
    halves = np.concatenate([triangles[:, [k, (k + 1) % 3]] for k in range(3)])
    owner = np.tile(labels, 3)
    low, high = halves.min(axis=1), halves.max(axis=1)
    order = np.lexsort((owner, high, low))
    low, high, owner = low[order], high[order], owner[order]
    # every edge has an even number of triangles; where four meet, two solids touch in a line
    pairs = np.stack([low[0::2], high[0::2]], axis=1)
    sides = np.stack([owner[0::2], owner[1::2]], axis=1)
    differs = sides[:, 0] != sides[:, 1]
    return pairs[differs], sides[differs]


def _joined(pairs: Ints, *, count: int) -> Ints:
    """Labels that lie in one plane and touch get one number."""
    root = list(range(count))

    def top(label: int) -> int:
        while root[label] != label:
            label = root[label] = root[root[label]]
        return label

    for one, other in pairs.tolist():
        a, b = top(one), top(other)
        root[max(a, b)] = min(a, b)
    return np.array([top(label) for label in range(count)], dtype=np.int64)


def _renumbered(labels: Ints) -> Ints:
    """Numbers from 0 in the order in which they first occur."""
    found, first, back = np.unique(labels, return_index=True, return_inverse=True)
    rank = np.empty(len(found), dtype=np.int64)
    rank[np.argsort(first)] = np.arange(len(found))
    return rank[back.reshape(-1)]


def _is_seam(makers: Ints, normals: Floats, sides: Ints, solid: Solid) -> NDArray[np.bool_]:
    axes = np.array([-1 if axis is None else axis for axis in (*solid.round_about, None)])
    axis = axes[makers]  # a maker of -1 finds the None put last
    steep = normals[np.arange(len(normals)), np.maximum(axis, 0)]
    bent = (axis >= 0) & (np.abs(steep) < LEVEL)
    one, other = sides.T
    seam: NDArray[np.bool_] = bent[one] & bent[other] & (makers[one] == makers[other])
    return seam
