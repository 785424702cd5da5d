"""Faces and drawn edges of solids, and that they come out alike each time."""

import subprocess
import sys
from fractions import Fraction
from itertools import permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.house.tree import ROOT
from tests.solids.shapes import board, convex, hole

from scantling.solids.kernel import standing
from scantling.solids.mesh import Mesh, mesh
from scantling.solids.pattern import Turn

F = Fraction
RABBET = convex((-1, 121), (35, 46), (-1, 8))
HOUSING = convex((30, 51), (14, 46), (-1, 6))


def volume(found: Mesh) -> float:
    a, b, c = (found.vertices[found.triangles[:, k]] for k in range(3))
    return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)


def lengths(found: Mesh) -> list[float]:
    ends = found.vertices[found.edges]
    return sorted(np.linalg.norm(ends[:, 0] - ends[:, 1], axis=1).tolist())


def as_bytes(found: Mesh) -> bytes:
    parts = (found.vertices, found.triangles, found.faces, found.edges, found.edge_faces)
    return b"".join(part.tobytes() for part in parts)


def test_a_board_has_six_faces_and_twelve_edges() -> None:
    found = mesh(board())
    assert len(found.vertices) == 8
    assert len(found.triangles) == 12
    assert sorted(found.normals.tolist()) == sorted(
        [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]]
    )
    assert lengths(found) == [20] * 4 + [45] * 4 + [120] * 4
    assert len(found.seams) == 0


def test_a_rabbet_adds_two_faces_and_six_edges() -> None:
    found = mesh(board(RABBET))
    assert len(found.normals) == 8
    assert len(found.edges) == 18
    # the one edge of the board is gone; three of the rabbet run along, its ends are 10 and 8
    assert lengths(found) == sorted([120] * 6 + [10, 8, 35, 12] * 2 + [45, 20] * 2)
    assert volume(found) == pytest.approx(120 * 45 * 20 - 120 * 10 * 8)


def test_two_cuts_in_one_plane_meet_without_an_edge() -> None:
    # shoulders of one depth, cut by two joints side by side
    one, other = convex((10, 40), (-1, 46), (-1, 6)), convex((40, 75), (-1, 46), (-1, 6))
    both, whole = mesh(board(one, other)), mesh(board(convex((10, 75), (-1, 46), (-1, 6))))
    assert len(both.normals) == len(whole.normals)
    # a line may be told in two pieces where the cuts meet, but none crosses the floor
    assert sum(lengths(both)) == sum(lengths(whole))


def test_two_cuts_a_shaving_apart_meet_in_an_edge() -> None:
    one = convex((10, 40), (-1, 46), (-1, 6))
    other = convex((40, 75), (-1, 46), (-1, 6 + F(1, 20)))
    stepped, level = mesh(board(one, other)), mesh(board(convex((10, 75), (-1, 46), (-1, 6))))
    assert len(stepped.normals) == len(level.normals) + 2
    # the riser has two long edges and two ends; the wall behind it is taller at both its ends
    assert sum(lengths(stepped)) == pytest.approx(sum(lengths(level)) + 2 * 45 + 4 * 0.05)


def test_a_hole_is_drawn_by_its_rims_and_not_by_its_flats() -> None:
    plain, bored = mesh(board()), mesh(board(hole(centre=(60, 20), radius=3, deep=(-1, 21))))
    assert len(bored.edges) == len(plain.edges) + 2 * 24
    assert len(bored.seams) == 24
    blind = mesh(board(hole(centre=(60, 20), radius=3, deep=(-1, 11))))
    assert len(blind.edges) == len(plain.edges) + 2 * 24


def test_a_hole_that_meets_a_housing_is_drawn_where_they_meet() -> None:
    found = mesh(board(HOUSING, hole(centre=(40, 30), radius=3, deep=(-1, 15))))
    level = found.vertices[found.edges][:, :, 2]
    assert (level == 6).all(axis=1).sum() == 24 + 4  # rim in the floor, and its outline


def test_a_square_hole_keeps_its_corners() -> None:
    found = mesh(board(convex((57, 63), (17, 23), (-1, 21))))
    assert len(found.edges) == 12 + 12
    assert len(found.seams) == 0


def test_normals_point_out_of_the_wood() -> None:
    found = mesh(board(HOUSING))
    for face, normal in enumerate(found.normals):
        corner = found.vertices[found.triangles[found.faces == face][0]].mean(axis=0)
        inside = corner - 0.01 * normal
        low, high = np.array([30, 14, 0]), np.array([51, 45, 6])
        assert ((inside > 0) & (inside < [120, 45, 20])).all()
        assert not ((inside > low) & (inside < high)).all()


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_the_order_of_cuts_does_not_show(order: tuple[int, int, int]) -> None:
    cuts = (RABBET, HOUSING, convex((100, 121), (-1, 9), (13, 21)))
    wanted, found = mesh(board(*cuts)), mesh(board(*(cuts[i] for i in order)))
    assert found.vertices.tobytes() == wanted.vertices.tobytes()
    assert found.edges.tobytes() == wanted.edges.tobytes()


SCRIPT = """
import hashlib
from tests.solids.test_mesh import HOUSING, RABBET, as_bytes
from tests.solids.shapes import board, hole
from scantling.solids.mesh import mesh
for _ in range({before}):
    board(RABBET)
found = mesh(board(RABBET, HOUSING, hole(centre=(90, 20), radius=3, deep=(-1, 11))))
print(hashlib.sha256(as_bytes(found)).hexdigest())
"""


def test_the_same_solid_gives_the_same_bytes_in_every_run() -> None:
    said = {
        subprocess.run(
            [sys.executable, "-c", SCRIPT.format(before=before)],
            cwd=ROOT,
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for before in (0, 7)
    }
    assert len(said) == 1


def test_a_mirrored_solid_is_not_inside_out() -> None:
    turn = Turn(axes=(2, 1, 0), signs=(1, 1, 1), at=(F(3), F(5), F(7)))
    found = mesh(standing(board(HOUSING), turn))
    assert volume(found) == pytest.approx(120 * 45 * 20 - 21 * 31 * 6)


def test_nothing_left_is_an_empty_surface() -> None:
    assert mesh(board(convex((-1, 121), (-1, 46), (-1, 21)))).is_empty


@given(
    spans=st.lists(
        st.tuples(*[st.tuples(st.integers(-3, 120), st.integers(1, 60))] * 3),
        min_size=1,
        max_size=4,
    )
)
def test_every_face_is_closed_by_its_edges(
    spans: list[tuple[tuple[int, int], tuple[int, int], tuple[int, int]]],
) -> None:
    cuts = [convex(*((a, a + s) for a, s in box)) for box in spans]
    solid = board(*cuts)
    found = mesh(solid)
    assert volume(found) == pytest.approx(solid.volume, abs=1e-6)
    for face in range(len(found.normals)):
        mine = found.edges[(found.edge_faces == face).any(axis=1)]
        _, times = np.unique(mine, return_counts=True)
        assert (times % 2 == 0).all()
