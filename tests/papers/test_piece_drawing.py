"""The drawing on the cover: what stands in front covers what stands behind."""

from dataclasses import replace
from fractions import Fraction
from itertools import combinations, product

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from shapely import LineString, MultiLineString, Point, Polygon
from tests.papers.cupboard import FRONT_LYING, LYING, cupboard, part

from scantling.papers._drawing.line_types import Kind
from scantling.papers._drawing.piece import PieceDrawing, on_paper, piece_drawing
from scantling.parts import Box, Cut, Part, Span, Way
from scantling.setting_out import SettingOut
from scantling.solids.views import RECEDING, Cabinet

INCH = 25.4
Floats = NDArray[np.float64]


def standing(*parts: Part) -> SettingOut:
    return replace(cupboard(), parts=parts, joints=(), lines=())


Line = tuple[tuple[float, float], tuple[float, float]]


def drawing(setting_out: SettingOut) -> PieceDrawing:
    return piece_drawing(setting_out, view=Cabinet())


def of(kinds: set[Kind], found: PieceDrawing) -> list[Line]:
    chosen = [stroke.points for stroke in found.strokes if stroke.kind in kinds]
    return [(points[0], points[1]) for points in chosen]


def edges(found: PieceDrawing) -> list[Line]:
    return of({Kind.OUTLINE, Kind.EDGE}, found)


def grain(found: PieceDrawing) -> list[Line]:
    return of({Kind.GRAIN}, found)


def fields(found: PieceDrawing) -> list[Polygon]:
    """What the drawn lines enclose, largest first."""
    joined = shapely.union_all([LineString(line) for line in edges(found)])
    whole = [each for each in shapely.polygonize([joined]).geoms if isinstance(each, Polygon)]
    return sorted(whole, key=lambda each: -each.area)


def test_the_front_keeps_its_true_size() -> None:
    board = part("board", FRONT_LYING, wide=("1", "21"), deep=("2", "5"), tall=("3", "9"))
    front = fields(drawing(standing(board)))[0]
    assert front.area == pytest.approx(20 * 6 * INCH**2)
    assert front.bounds[:2] == pytest.approx(on_paper((INCH, 2 * INCH, 3 * INCH)), abs=1e-3)


def test_depth_runs_off_at_half_its_size_and_45_degrees() -> None:
    (x, y), (u, v) = on_paper((10, 0, 20)), on_paper((10, 100, 20))
    assert (u - x, v - y) == pytest.approx((50 / 2**0.5, 50 / 2**0.5))


def test_front_top_and_right_end_of_a_board_are_seen() -> None:
    board = part("board", LYING, wide=("0", "20"), deep=("0", "8"), tall=("0", "1"))
    found = drawing(standing(board))
    assert len(edges(found)) == 9
    areas = [20 * 8 * RECEDING, 20 * 1, 1 * 8 * RECEDING]
    assert [f.area / INCH**2 for f in fields(found)] == pytest.approx(areas, rel=1e-4)


def test_what_is_wholly_behind_is_left_out() -> None:
    front = part("front", FRONT_LYING, wide=("0", "20"), deep=("0", "1"), tall=("0", "20"))
    behind = part("behind", FRONT_LYING, wide=("4", "9"), deep=("3", "4"), tall=("3", "9"))
    peeping = part("peeping", FRONT_LYING, wide=("4", "9"), deep=("3", "4"), tall=("3", "22"))
    assert edges(drawing(standing(front, behind))) == edges(drawing(standing(front)))
    # its two ends and its upper edge, and beside and above those its depth
    assert len(edges(drawing(standing(front, peeping)))) > len(edges(drawing(standing(front)))) + 3


def test_the_outline_goes_round_everything_once() -> None:
    left = part("left", FRONT_LYING, wide=("0", "8"), deep=("0", "2"), tall=("0", "6"))
    right = part("right", FRONT_LYING, wide=("8", "20"), deep=("0", "2"), tall=("0", "6"))
    outline = of({Kind.OUTLINE}, drawing(standing(left, right)))
    (ring,) = shapely.polygonize([shapely.union_all([LineString(line) for line in outline])]).geoms
    corners = [(0, 0, 0), (20, 0, 0), (20, 2, 0), (20, 2, 6), (0, 2, 6), (0, 0, 6)]
    round_it = Polygon([on_paper([x * INCH for x in corner]) for corner in corners])
    assert ring.symmetric_difference(round_it).area < 0.1


def test_what_stands_before_a_larger_board_is_seen() -> None:
    large = part("large", FRONT_LYING, wide=("0", "20"), deep=("3", "4"), tall=("0", "20"))
    small = part("small", FRONT_LYING, wide=("5", "9"), deep=("0", "1"), tall=("5", "8"))
    found = drawing(standing(large, small))
    assert len(edges(found)) == 9 + 9


def test_a_tenon_in_its_mortise_is_not_seen() -> None:
    third = Fraction(127, 20)
    mortise = Cut(
        name="mortise",
        owner="rail in stile",
        shape=Box(
            along=Span(Fraction(80), Fraction(120)),
            across=Span(Fraction(20), None),
            into=Span(third, 2 * third),
        ),
    )
    shoulders = [
        Cut(name=f"shoulder {i}", owner="rail in stile", shape=Box(along=along, into=into))
        for i, along, into in (
            (1, Span(None, Fraction(24)), Span(None, third)),
            (2, Span(None, Fraction(24)), Span(2 * third, None)),
        )
    ]
    stile = part("stile", (Way.UP, Way.RIGHT, Way.BACK), wide=("0", "1"), deep=("0", "3/4"),
                 tall=("0", "9"), cuts=(mortise,))  # fmt: skip
    rail = part("rail", FRONT_LYING, wide=("0", "9"), deep=("0", "3/4"), tall=("3", "4"))
    at = (Fraction(20), rail.placement.at[1], Fraction(80))
    extent = replace(rail.extent, length=Fraction(200), width=Fraction(40))
    rail = replace(
        rail, extent=extent, placement=replace(rail.placement, at=at), cuts=tuple(shoulders)
    )
    found = drawing(standing(stile, rail))
    front = Polygon([(0, 0), (INCH, 0), (INCH, 9 * INCH), (0, 9 * INCH)]).buffer(-0.5)
    assert not any(LineString(line).crosses(front) for line in edges(found))
    assert not any(LineString(line).within(front) for line in edges(found))


def test_a_socket_in_the_hidden_face_is_not_seen_through_the_board() -> None:
    socket = Cut(
        name="housing",
        owner="shelf in side",
        shape=Box(along=Span(Fraction(60), Fraction(80)), into=Span(Fraction(12), None)),
    )
    side = part("side", (Way.UP, Way.BACK, Way.LEFT), wide=("0", "3/4"), deep=("0", "9"),
                tall=("0", "20"), cuts=(socket,))  # fmt: skip
    found = drawing(standing(side))
    right = 0.75 * INCH
    corners = [(right, d, t) for d, t in ((0, 0), (9 * INCH, 0), (9 * INCH, 508), (0, 508))]
    end = Polygon([on_paper(corner) for corner in corners]).buffer(-0.5)
    assert not any(LineString(line).intersects(end) for line in edges(found))
    # on the front edge the mouth of the socket does show
    front = [line for line in edges(found) if all(59 < y < 81 for _, y in line)]
    assert len(front) >= 3


def test_grain_runs_along_the_wood_and_never_over_an_end() -> None:
    rail = part("rail", FRONT_LYING, wide=("0", "20"), deep=("0", "3"), tall=("0", "6"))
    stile = part("stile", (Way.UP, Way.RIGHT, Way.BACK), wide=("0", "6"), deep=("0", "3"),
                 tall=("0", "20"))  # fmt: skip
    for board, axis in ((rail, 1), (stile, 0)):
        found = drawing(standing(board))
        assert len(grain(found)) > 5
        assert all(a[axis] == pytest.approx(b[axis]) for a, b in grain(found))
        # the end: the top of the stile, the right of the rail
        corners = [(6, 0, 20), (0, 0, 20), (0, 3, 20), (6, 3, 20)] if axis == 0 else [
            (20, 0, 0), (20, 3, 0), (20, 3, 6), (20, 0, 6)
        ]  # fmt: skip
        end = Polygon([on_paper([x * INCH for x in corner]) for corner in corners])
        assert not any(LineString(line).intersects(end) for line in grain(found))


CELLS = st.lists(st.integers(0, 26), min_size=2, max_size=9, unique=True)


@settings(max_examples=40)
@given(cells=CELLS, sizes=st.lists(st.integers(3, 9), min_size=27, max_size=27))
def test_just_those_edges_are_drawn_that_no_board_stands_before(
    cells: list[int], sizes: list[int]
) -> None:
    # A heap of boards, none touching another. Held against rays through single points.
    boxes = {}
    parts = []
    for cell in cells:
        low = np.array([cell % 3, cell // 3 % 3, cell // 9]) * 10
        high = low + np.array([sizes[cell], sizes[cell - 9], sizes[cell - 18]])
        ends = [(str(a), str(b)) for a, b in zip(low, high, strict=True)]
        parts.append(part(f"{cell}", FRONT_LYING, wide=ends[0], deep=ends[1], tall=ends[2]))
        boxes[f"{cell}"] = (low * INCH, high * INCH)
    drawn = MultiLineString([LineString(line) for line in edges(drawing(standing(*parts)))])
    wires = [wire for box in boxes.values() for wire in _edges(*box)]
    flat = [LineString([on_paper(end.tolist()) for end in wire]) for wire in wires]
    for i, (start, stop) in enumerate(wires):
        for share in (0.13, 0.5, 0.81):
            point = start + share * (stop - start)
            at = Point(on_paper(point.tolist()))
            # where two edges fall on one point of the paper, a line says nothing of either
            if all(line.distance(at) > 1 for line in flat[:i] + flat[i + 1 :]):
                assert (drawn.distance(at) < 0.01) == _is_seen(point, boxes)


def _edges(low: Floats, high: Floats) -> list[tuple[Floats, Floats]]:
    corners = [np.array(c) for c in product(*zip(low.tolist(), high.tolist(), strict=True))]
    return [(a, b) for a, b in combinations(corners, 2) if np.count_nonzero(a != b) == 1]


def _is_seen(point: Floats, boxes: dict[str, tuple[Floats, Floats]]) -> bool:
    """Whether the ray from the eye meets nothing before the point."""
    away = np.array([-RECEDING, 1, -RECEDING])
    for low, high in boxes.values():
        ends = np.sort(np.stack([(low - point) / away, (high - point) / away]), axis=0)
        enters, leaves = ends[0].max(), ends[1].min()
        if enters < -0.01 and leaves > enters + 0.01:
            return False
    return True


def test_the_piece_is_drawn_the_same_whichever_part_comes_first() -> None:
    whole = cupboard()
    turned = replace(whole, parts=whole.parts[::-1])
    assert edges(drawing(whole)) == edges(drawing(turned))


def test_inside_of_a_shut_cupboard_is_not_drawn() -> None:
    whole = cupboard()
    emptied = replace(whole, parts=tuple(p for p in whole.parts if p.name != "loose shelf"))
    assert len(emptied.parts) < len(whole.parts)
    assert edges(drawing(emptied)) == edges(drawing(whole))


def test_from_behind_left_is_right() -> None:
    left = part("left", FRONT_LYING, wide=("0", "8"), deep=("0", "2"), tall=("0", "6"))
    right = part("right", FRONT_LYING, wide=("8", "9"), deep=("0", "2"), tall=("0", "9"))
    found = piece_drawing(standing(left, right), view=Cabinet(from_behind=True))
    tall = max(edges(found), key=lambda line: abs(line[0][1] - line[1][1]))
    assert tall[0][0] == pytest.approx(found.low[0])
    # as wide as the piece and half its depth, drawn at 45 degrees
    reach = (9 * INCH + 2 * INCH * RECEDING, 9 * INCH + 2 * INCH * RECEDING)
    assert np.subtract(found.high, found.low) == pytest.approx(reach, abs=1e-3)


def test_nothing_is_drawn_of_nothing() -> None:
    assert drawing(standing()).strokes == ()
