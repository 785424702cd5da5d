"""Solids as one binary glTF file: a named node for each, its faces and its drawn edges.

Metres; x to the right, y up, z towards the one who looks from the front. Plane faces have their
own corners with the face's normal, so that a viewer shows them flat. The same solids give the
same bytes.

References:
    glTF 2.0 specification, Khronos Group, 2021 (ISO/IEC 12113:2022): sections 3.6, 3.7, 3.9, 4.4.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from scantling.solids.mesh import Floats, Ints, Mesh
from scantling.solids.pattern import Turn

MM_PER_M = 1000.0
FLOAT32, UINT32 = 5126, 5125  # componentType
VERTICES, INDICES = 34962, 34963  # target of a buffer view
TRIANGLES, LINES = 4, 1  # mode of a primitive
JSON_CHUNK, BINARY_CHUNK = 0x4E4F534A, 0x004E4942
MAGIC, VERSION = 0x46546C67, 2
EDGE_COLOUR = (0.05, 0.04, 0.03)


@dataclass(frozen=True, kw_only=True)
class Material:
    """How a wood or a metal looks: one even colour, no pictures."""

    name: str
    colour: tuple[float, float, float]  # red, green, blue, 0 to 1, linear [-]
    metal: float = 0.0  # 0 wood, 1 metal [-]
    rough: float = 0.8  # 0 mirror, 1 matt [-]


@dataclass(frozen=True, kw_only=True, eq=False)
class Shown:
    """One solid to be shown."""

    name: str
    mesh: Mesh
    turn: Turn
    material: str


def glb(shown: Sequence[Shown], *, materials: Sequence[Material]) -> bytes:
    """The file. What is left of nothing has no node.

    Args:
        shown: Solids in the order of their nodes.
        materials: Every material that they name; put last is the one of drawn edges.
    """
    file = _File()
    places = {material.name: place for place, material in enumerate(materials)}
    nodes = []
    meshes: list[dict[str, Any]] = []
    for each in shown:
        if each.mesh.is_empty:
            continue
        nodes.append({"mesh": len(meshes), "name": each.name})
        primitives = [_faces(file, each, material=places[each.material])]
        if len(each.mesh.edges):
            primitives.append(_edges(file, each, material=len(materials)))
        meshes.append({"name": each.name, "primitives": primitives})
    scene: dict[str, Any] = {
        "asset": {"generator": "scantling", "version": "2.0"},
        "materials": [*(_material(m) for m in materials), _edge_material()],
        "scene": 0,
        "scenes": [{"nodes": list(range(len(nodes)))} if nodes else {}],
    }
    if nodes:
        scene |= {
            "accessors": file.accessors,
            "bufferViews": file.views,
            "buffers": [{"byteLength": len(file.binary)}],
            "meshes": meshes,
            "nodes": nodes,
        }
    return _packed(scene, bytes(file.binary))


@dataclass(frozen=True, kw_only=True)
class _File:
    binary: bytearray = field(default_factory=bytearray)
    views: list[dict[str, Any]] = field(default_factory=list)
    accessors: list[dict[str, Any]] = field(default_factory=list)

    def points(self, rows: NDArray[np.float32], *, ends: bool) -> int:
        """Place of an accessor of three numbers a row; `ends` gives its least and greatest."""
        extra: dict[str, Any] = {"type": "VEC3", "count": len(rows)}
        if ends:
            extra |= {
                "min": [float(x) for x in rows.min(axis=0)],
                "max": [float(x) for x in rows.max(axis=0)],
            }
        return self._add(rows.astype("<f4").tobytes(), VERTICES, FLOAT32, extra)

    def indices(self, values: Ints) -> int:
        """Place of an accessor of vertex numbers."""
        flat = values.reshape(-1)
        extra = {"type": "SCALAR", "count": len(flat)}
        return self._add(flat.astype("<u4").tobytes(), INDICES, UINT32, extra)

    def _add(self, raw: bytes, target: int, component: int, extra: dict[str, Any]) -> int:
        view = {"buffer": 0, "byteOffset": len(self.binary), "byteLength": len(raw)}
        self.binary.extend(raw)  # all of it in fours, so no padding is needed between
        self.views.append({**view, "target": target})
        place = {"bufferView": len(self.views) - 1, "componentType": component}
        self.accessors.append({**place, **extra})
        return len(self.accessors) - 1


def _faces(file: _File, shown: Shown, *, material: int) -> dict[str, Any]:
    mesh, turn = shown.mesh, shown.turn
    owners = np.repeat(mesh.faces, 3)
    pairs = np.stack([mesh.triangles.reshape(-1), owners], axis=1)
    corners, index = np.unique(pairs, axis=0, return_inverse=True)
    triangles = index.reshape(-1, 3)
    if turn.is_mirrored:
        triangles = triangles[:, ::-1]
    return {
        "attributes": {
            "NORMAL": file.points(_room(mesh.normals[corners[:, 1]], _rows(turn)), ends=False),
            "POSITION": file.points(_positions(mesh.vertices[corners[:, 0]], turn), ends=True),
        },
        "indices": file.indices(triangles),
        "material": material,
        "mode": TRIANGLES,
    }


def _edges(file: _File, shown: Shown, *, material: int) -> dict[str, Any]:
    used, index = np.unique(shown.mesh.edges.reshape(-1), return_inverse=True)
    return {
        "attributes": {
            "POSITION": file.points(_positions(shown.mesh.vertices[used], shown.turn), ends=True)
        },
        "indices": file.indices(index),
        "material": material,
        "mode": LINES,
    }


def _rows(turn: Turn) -> Floats:
    rows = np.zeros((3, 3))
    for axis, (to, sign) in enumerate(zip(turn.axes, turn.signs, strict=True)):
        rows[to, axis] = sign
    return rows


def _positions(points: Floats, turn: Turn) -> NDArray[np.float32]:
    at = np.array([float(x) for x in turn.at])
    stood = points @ _rows(turn).T + at
    return _room(stood / MM_PER_M, np.eye(3))


def _room(points: Floats, rows: Floats) -> NDArray[np.float32]:
    """Right, back, up becomes right, up, towards the front."""
    x, y, z = (points @ rows.T).T
    return (np.stack([x, z, -y], axis=1) + 0.0).astype(np.float32)


def _material(material: Material) -> dict[str, Any]:
    return {
        "name": material.name,
        "pbrMetallicRoughness": {
            "baseColorFactor": [*material.colour, 1.0],
            "metallicFactor": material.metal,
            "roughnessFactor": material.rough,
        },
    }


def _edge_material() -> dict[str, Any]:
    return _material(Material(name="edges", colour=EDGE_COLOUR, rough=1.0))


def _packed(scene: dict[str, Any], binary: bytes) -> bytes:
    text = json.dumps(scene, sort_keys=True, separators=(",", ":"), ensure_ascii=True).encode()
    chunks = [(JSON_CHUNK, text + b" " * (-len(text) % 4))]
    if binary:
        chunks.append((BINARY_CHUNK, binary + b"\0" * (-len(binary) % 4)))
    body = b"".join(struct.pack("<II", len(raw), kind) + raw for kind, raw in chunks)
    return struct.pack("<III", MAGIC, VERSION, 12 + len(body)) + body
