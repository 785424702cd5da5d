"""Joints drawn apart: the wood near them, and nothing else."""

from dataclasses import replace

import pytest
import shapely
from shapely import LineString
from tests.papers.cupboard import cupboard
from tests.pieces.worked import worked

from scantling.papers._drawing.joint import ROOM, joint_drawing
from scantling.papers._drawing.line_types import Drawing, Kind
from scantling.papers._drawing.piece import piece_drawing, pulled_apart
from scantling.setting_out import SetJoint
from scantling.solids.views import Cabinet


def joint(name: str) -> SetJoint:
    (found,) = [each for each in worked().joints if each.name == name]
    return found


def islands(found: Drawing) -> int:
    """How many pieces of wood stand clear of each other on the paper."""
    lines = [LineString(s.points) for s in found.strokes if s.kind is Kind.OUTLINE]
    filled = shapely.polygonize([shapely.union_all(lines)])
    return len(shapely.get_parts(shapely.union_all(shapely.get_parts(filled)).buffer(0.05)))


@pytest.mark.parametrize(
    "name", ["top rail in left stile", "front sub-top rail in left side", "back in left side"]
)
def test_two_parts_drawn_apart_stand_clear_of_each_other(name: str) -> None:
    found = joint_drawing(joint(name), setting_out=worked())
    assert found is not None
    assert islands(found) == 2


def test_put_together_they_are_one() -> None:
    still = replace(joint("top rail in left stile"), moves=())
    found = joint_drawing(still, setting_out=worked())
    assert found is not None
    assert islands(found) == 1


def test_every_joint_that_is_cut_is_drawn_and_keeps_to_its_room() -> None:
    for each in worked().joints:
        found = joint_drawing(each, setting_out=worked())
        owners = {cut.owner for part in worked().parts for cut in part.cuts}
        assert (found is not None) == (each.name in owners), each.name
        if found is not None:
            assert found.size[0] <= ROOM[0]
            assert found.size[1] <= ROOM[1]
            assert len(found.strokes) > 9  # more than a single block


def test_pulled_apart_doors_and_drawers_keep_together_and_come_out_in_front() -> None:
    moved = pulled_apart(worked())
    door = {moved[part.name] for part in worked().made if part.moves_with == "left door"}
    assert len(door) == 1
    assert next(iter(door))[1] < -worked().overall[1]
    assert moved["left side"][0] < 0 < moved["right side"][0]
    assert moved["top"][2] > 0


def test_pulled_apart_shows_what_the_shut_piece_hides() -> None:
    whole = cupboard()
    shut = piece_drawing(whole, view=Cabinet())
    apart = piece_drawing(whole, view=Cabinet(), moved=pulled_apart(whole))
    count = sum(s.kind is Kind.OUTLINE for s in shut.strokes)
    assert sum(s.kind is Kind.OUTLINE for s in apart.strokes) > 2 * count
