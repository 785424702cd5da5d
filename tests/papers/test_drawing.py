"""The drawing on the cover: what stands in front covers what stands behind."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, unary_union
from shapely.geometry.base import BaseGeometry
from tests.papers.cupboard import FRONT_LYING, LYING, UPRIGHT, cupboard, part

from scantling.papers._drawing import RECEDING, Drawing, Laid, drawing, on_paper
from scantling.parts import Box, Cut, Part, Span
from scantling.setting_out import SettingOut

INCH = 25.4


def standing(*parts: Part) -> SettingOut:
    return replace(cupboard(), parts=parts, joints=(), lines=())


def names(found: Drawing) -> list[str]:
    return [laid.name for laid in found.laid]


def shadow(laid: Laid) -> BaseGeometry:
    return unary_union([Polygon(face.rings[0], face.rings[1:]) for face in laid.faces])


def test_the_front_keeps_its_true_size() -> None:
    board = part("board", FRONT_LYING, wide=("1", "21"), deep=("2", "5"), tall=("3", "9"))
    (laid,) = drawing(standing(board)).laid
    found = max((Polygon(face.rings[0]) for face in laid.faces), key=lambda face: face.area)
    assert found.area == pytest.approx(20 * 6 * INCH**2)
    wide, tall = on_paper(1 * INCH, 2 * INCH, 3 * INCH)
    assert found.bounds[:2] == pytest.approx((wide, tall))


def test_depth_runs_off_at_half_its_size_and_45_degrees() -> None:
    (x, y), (u, v) = on_paper(10, 0, 20), on_paper(10, 100, 20)
    assert (u - x, v - y) == pytest.approx((50 / 2**0.5, 50 / 2**0.5))


def test_three_faces_of_a_board_are_seen() -> None:
    board = part("board", LYING, wide=("0", "20"), deep=("0", "8"), tall=("0", "1"))
    (laid,) = drawing(standing(board)).laid
    assert len(laid.faces) == 3
    assert shadow(laid).area == pytest.approx(
        INCH**2 * (20 * 1 + 20 * 8 * RECEDING + 1 * 8 * RECEDING)
    )


def test_what_is_wholly_behind_is_left_out() -> None:
    front = part("front", FRONT_LYING, wide=("0", "20"), deep=("0", "1"), tall=("0", "20"))
    behind = part("behind", FRONT_LYING, wide=("4", "9"), deep=("3", "4"), tall=("3", "9"))
    peeping = part("peeping", FRONT_LYING, wide=("4", "9"), deep=("3", "4"), tall=("3", "22"))
    assert names(drawing(standing(front, behind))) == ["front"]
    assert names(drawing(standing(front, peeping))) == ["peeping", "front"]


def test_a_socket_in_the_hidden_face_is_not_seen_through_the_board() -> None:
    inner = Cut(
        name="housing",
        owner="shelf in side",
        shape=Box(along=Span(Fraction(60), Fraction(80)), into=Span(Fraction(12), None)),
    )
    whole = part("side", UPRIGHT, wide=("0", "3/4"), deep=("0", "9"), tall=("0", "20"))
    # the face side of a right side looks right, so what is cut from its back face looks left
    turned = replace(
        whole.placement,
        into=whole.placement.into.opposite,
        at=(Fraction(3, 4) * Fraction(127, 5), *whole.placement.at[1:]),
    )
    side = replace(whole, placement=turned, cuts=(inner,))
    (laid,) = drawing(standing(side)).laid
    end = next(i for i, face in enumerate(laid.faces) if Polygon(face.rings[0]).area > 5000)
    walls = [i for i, face in enumerate(laid.faces) if Polygon(face.rings[0]).area < 200]
    assert all(i < end for i in walls if shadow_of(laid, i).within(shadow_of(laid, end)))


def shadow_of(laid: Laid, face: int) -> Polygon:
    return Polygon(laid.faces[face].rings[0]).buffer(-1)


def test_grain_runs_along_the_wood_and_never_over_an_end() -> None:
    rail = part("rail", FRONT_LYING, wide=("0", "20"), deep=("0", "3"), tall=("0", "6"))
    stile = part("stile", (UPRIGHT[0], FRONT_LYING[0], UPRIGHT[1]), wide=("0", "6"),
                 deep=("0", "3"), tall=("0", "20"))  # fmt: skip
    for board, axis in ((rail, 1), (stile, 0)):
        (laid,) = drawing(standing(board)).laid
        lines = [line for face in laid.faces for line in face.grain]
        assert len(lines) > 5
        assert all(a[axis] == pytest.approx(b[axis]) for a, b in lines)
        assert sum(not face.grain for face in laid.faces) == 1


CELLS = st.lists(st.integers(0, 26), min_size=2, max_size=9, unique=True)


@settings(max_examples=40)
@given(cells=CELLS, sizes=st.lists(st.integers(3, 9), min_size=27, max_size=27))
def test_the_nearest_board_is_laid_last_wherever_two_overlap(
    cells: list[int], sizes: list[int]
) -> None:
    # Boards in a heap of 3 by 3 by 3 cells, none touching another; held against rays.
    boxes = {}
    parts = []
    for cell in cells:
        low = np.array([cell % 3, cell // 3 % 3, cell // 9]) * 10
        high = low + np.array([sizes[cell], sizes[cell - 9], sizes[cell - 18]])
        ends = [(str(a), str(b)) for a, b in zip(low, high, strict=True)]
        board = part(f"{cell}", FRONT_LYING, wide=ends[0], deep=ends[1], tall=ends[2])
        parts.append(board)
        boxes[f"{cell}"] = (low * INCH, high * INCH)
    laid = drawing(standing(*parts)).laid
    shadows = [(each.name, shadow(each)) for each in laid]
    for x, y in np.random.default_rng(1).uniform(0, 900, (150, 2)):
        on_top = [name for name, covers in shadows if covers.contains(Point(x, y))]
        hit = _first_hit(boxes, x, y)
        if on_top and hit is not None and not _grazes(shadows, x, y):
            assert on_top[-1] == hit


def _grazes(shadows: list[tuple[str, BaseGeometry]], x: float, y: float) -> bool:
    return any(covers.boundary.distance(Point(x, y)) < 1 for _, covers in shadows)


def _first_hit(boxes: dict[str, tuple[np.ndarray, np.ndarray]], x: float, y: float) -> str | None:
    """Follow the ray through a point of the paper: which box it meets first."""
    found = {}
    for name, (low, high) in boxes.items():
        # the points that are drawn at (x, y), by their depth
        start, way = np.array([x, 0, y]), np.array([-RECEDING, 1, -RECEDING])
        ends = np.sort(np.stack([(low - start) / way, (high - start) / way]), axis=0)
        enters, leaves = ends[0].max(), ends[1].min()
        if enters < leaves:
            found[name] = enters
    return min(found, key=lambda name: found[name]) if found else None


def test_the_piece_is_drawn_the_same_whichever_part_comes_first() -> None:
    whole = cupboard()
    turned = replace(whole, parts=whole.parts[::-1])
    assert sorted(names(drawing(whole))) == sorted(names(drawing(turned)))


def test_inside_of_a_shut_cupboard_is_not_drawn() -> None:
    shown = set(names(drawing(cupboard())))
    assert "loose shelf" not in shown
    assert {"top", "right side", "door.panel", "left stile"} <= shown
