"""glTF files, read back by a reader of its own and by another library."""

import io
import json
import struct
from fractions import Fraction
from typing import Any

import numpy as np
import pytest
import trimesh
from tests.solids.shapes import board, convex, hole

from scantling.solids.gltf import Material, Shown, glb
from scantling.solids.kernel import Solid
from scantling.solids.mesh import mesh
from scantling.solids.pattern import Turn

F = Fraction
WOODS = (
    Material(name="cherry", colour=(0.5, 0.25, 0.1)),
    Material(name="brass", colour=(0.7, 0.6, 0.3), metal=1.0, rough=0.4),
)
HOUSED = board(convex((30, 51), (14, 46), (-1, 6)))
LEFT = Turn(axes=(2, 1, 0), signs=(1, 1, -1), at=(F(20), F(30), F(100)))
RIGHT = Turn(axes=(2, 1, 0), signs=(1, 1, 1), at=(F(700), F(30), F(100)))


def shown(name: str, solid: Solid, turn: Turn, material: str = "cherry") -> Shown:
    return Shown(name=name, mesh=mesh(solid), turn=turn, material=material)


PAIR = (shown("left side", HOUSED, LEFT), shown("right side", HOUSED, RIGHT, "brass"))


def opened(raw: bytes) -> tuple[dict[str, Any], bytes]:
    """Both chunks, by section 4.4 of the standard."""
    magic, version, length = struct.unpack_from("<4sII", raw)
    assert (magic, version, length) == (b"glTF", 2, len(raw))
    size, kind = struct.unpack_from("<I4s", raw, 12)
    assert kind == b"JSON"
    assert size % 4 == 0
    scene = json.loads(raw[20 : 20 + size])
    rest, kind = struct.unpack_from("<I4s", raw, 20 + size)
    assert kind == b"BIN\0"
    binary = raw[28 + size :]
    assert rest == len(binary)
    assert rest % 4 == 0
    return scene, binary


def column(scene: dict[str, Any], binary: bytes, place: int) -> np.ndarray:
    """Rows of one accessor, by section 3.6."""
    accessor = scene["accessors"][place]
    view = scene["bufferViews"][accessor["bufferView"]]
    kind = {5126: "<f4", 5125: "<u4"}[accessor["componentType"]]
    start = view["byteOffset"]
    found = np.frombuffer(binary[start : start + view["byteLength"]], dtype=kind)
    rows = {"VEC3": 3, "SCALAR": 1}[accessor["type"]]
    assert len(found) == accessor["count"] * rows
    return found.reshape(-1, rows)


def test_each_part_is_a_node_of_its_name_with_faces_and_edges() -> None:
    scene, _ = opened(glb(PAIR, materials=WOODS))
    assert [node["name"] for node in scene["nodes"]] == ["left side", "right side"]
    assert scene["scenes"][scene["scene"]]["nodes"] == [0, 1]
    for node in scene["nodes"]:
        modes = [p["mode"] for p in scene["meshes"][node["mesh"]]["primitives"]]
        assert modes == [4, 1]
    named = [m["name"] for m in scene["materials"]]
    assert named == ["cherry", "brass", "edges"]
    faces = [mesh_["primitives"][0]["material"] for mesh_ in scene["meshes"]]
    assert faces == [0, 1]


def test_it_is_in_metres_with_y_up_and_z_to_the_front() -> None:
    scene, binary = opened(glb(PAIR[:1], materials=WOODS))
    faces = scene["meshes"][0]["primitives"][0]
    accessor = scene["accessors"][faces["attributes"]["POSITION"]]
    # 0 to 20 wide, 30 to 75 deep, 100 to 220 tall
    assert accessor["min"] == pytest.approx([0, 0.1, -0.075])
    assert accessor["max"] == pytest.approx([0.02, 0.22, -0.03])
    points = column(scene, binary, faces["attributes"]["POSITION"])
    assert points.min(axis=0).tolist() == accessor["min"]
    assert points.max(axis=0).tolist() == accessor["max"]


@pytest.mark.parametrize("place", [0, 1])
def test_the_surface_is_outside_for_both_of_a_pair(place: int) -> None:
    scene, binary = opened(glb(PAIR, materials=WOODS))
    faces = scene["meshes"][place]["primitives"][0]
    points = column(scene, binary, faces["attributes"]["POSITION"]).astype(float) * 1000
    normals = column(scene, binary, faces["attributes"]["NORMAL"])
    corners = column(scene, binary, faces["indices"]).reshape(-1, 3)
    a, b, c = (points[corners[:, k]] for k in range(3))
    across = np.cross(b - a, c - a)
    assert float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6) == pytest.approx(
        120 * 45 * 20 - 21 * 31 * 6, rel=1e-5
    )
    assert (np.einsum("ij,ij->i", across, normals[corners[:, 0]]) > 0).all()
    assert np.linalg.norm(normals, axis=1) == pytest.approx(np.ones(len(normals)))


def test_edges_are_the_drawn_edges() -> None:
    scene, binary = opened(glb(PAIR[:1], materials=WOODS))
    lines = scene["meshes"][0]["primitives"][1]
    points = column(scene, binary, lines["attributes"]["POSITION"]).astype(float) * 1000
    ends = points[column(scene, binary, lines["indices"]).reshape(-1, 2)]
    lengths = np.linalg.norm(ends[:, 0] - ends[:, 1], axis=1)
    wanted = mesh(HOUSED)
    drawn = wanted.vertices[wanted.edges]
    expected = np.linalg.norm(drawn[:, 0] - drawn[:, 1], axis=1)
    assert sorted(lengths.tolist()) == pytest.approx(sorted(expected.tolist()), rel=1e-4)


def test_views_lie_in_the_buffer_in_fours() -> None:
    scene, binary = opened(glb(PAIR, materials=WOODS))
    end = 0
    for view in scene["bufferViews"]:
        assert view["byteOffset"] == end
        assert view["byteOffset"] % 4 == 0
        end += view["byteLength"]
    assert end == scene["buffers"][0]["byteLength"] <= len(binary)


def test_another_library_reads_it() -> None:
    raw = glb((*PAIR, shown("pin", board(size=(30, 5, 5)), Turn(), "brass")), materials=WOODS)
    scene = trimesh.load(io.BytesIO(raw), file_type="glb")
    assert isinstance(scene, trimesh.Scene)
    solids = [g for g in scene.geometry.values() if isinstance(g, trimesh.Trimesh)]
    volumes = sorted(float(g.volume) * 1e9 for g in solids)
    housed = 120 * 45 * 20 - 21 * 31 * 6
    assert volumes == pytest.approx([30 * 5 * 5, housed, housed], rel=1e-5)
    assert len([g for g in scene.geometry.values() if isinstance(g, trimesh.path.Path3D)]) == 3


def test_the_same_parts_give_the_same_bytes() -> None:
    cuts = (convex((30, 51), (14, 46), (-1, 6)), hole(centre=(90, 20), radius=3, deep=(-1, 11)))
    one, other = (glb([shown("a", board(*cuts), LEFT)], materials=WOODS) for _ in range(2))
    assert one == other


def test_nothing_to_show_is_still_a_file() -> None:
    gone = board(convex((-1, 121), (-1, 46), (-1, 21)))
    raw = glb([shown("gone", gone, Turn())], materials=WOODS)
    size = struct.unpack_from("<I", raw, 12)[0]
    scene = json.loads(raw[20 : 20 + size])
    assert scene["scenes"] == [{}]
    assert "nodes" not in scene
    assert len(raw) == 20 + size
