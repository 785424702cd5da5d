"""The piece as a binary glTF, read back by another library."""

import io

import numpy as np
import pytest
import trimesh
from tests.papers.cupboard import cupboard
from trimesh.visual import TextureVisuals
from trimesh.visual.material import PBRMaterial

from scantling.papers import Sheet
from scantling.papers.model import Model
from scantling.parts.solid import finished


def scene() -> trimesh.Scene:
    (made,) = Model.render(cupboard(), sheet=Sheet.A4).values()
    found = trimesh.load_scene(io.BytesIO(made), file_type="glb")
    assert isinstance(found, trimesh.Scene)
    return found


def solids() -> dict[str, trimesh.Trimesh]:
    found = scene()
    return {
        name: body for name, body in found.geometry.items() if isinstance(body, trimesh.Trimesh)
    }


def look(body: trimesh.Trimesh) -> PBRMaterial:
    assert isinstance(body.visual, TextureVisuals)
    assert isinstance(body.visual.material, PBRMaterial)
    return body.visual.material


def test_every_part_is_a_node_under_its_own_name() -> None:
    assert solids().keys() == {part.name for part in cupboard().parts}


def test_it_stands_as_large_as_the_piece_is_with_its_height_upwards() -> None:
    # glTF 2.0, section 3.4: metres, y up; the piece is 22 1/2 wide, 10 1/4 deep, 26 7/8 tall
    inch = 0.0254
    assert scene().extents == pytest.approx([22.5 * inch, 26.875 * inch, 10.25 * inch], abs=1e-6)


def test_a_solid_keeps_its_volume_and_is_closed() -> None:
    whole = cupboard()
    for part in whole.parts:
        body = solids()[part.name]
        closed = trimesh.Trimesh(body.vertices, body.faces)  # joins corners that faces have apart
        assert closed.is_watertight, part.name
        volume = finished(part, store=whole.store).volume
        assert closed.volume * 1e9 == pytest.approx(volume, rel=1e-4)


def test_woods_look_unlike_and_metal_is_metal() -> None:
    looks = {part.wood: look(solids()[part.name]) for part in cupboard().parts}
    colours = {tuple(np.asarray(each.baseColorFactor)) for each in looks.values()}
    assert len(colours) == 3
    assert looks["brass"].metallicFactor == 1
    assert looks["white ash"].metallicFactor == 0


def test_a_mesh_is_worked_out_once_for_a_store() -> None:
    whole = cupboard()
    Model.render(whole, sheet=Sheet.A4)
    made = whole.store.made
    Model.render(whole, sheet=Sheet.A4)
    assert whole.store.made == made > 0
