"""A part in three views, against views drawn by hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.papers.cupboard import cupboard
from tests.papers.drawings import collisions, figure, of_kind, said
from tests.pieces.worked import worked

from scantling.papers._drawing.line_types import (
    LINE_TYPES,
    Angle,
    Drawing,
    Kind,
    LineType,
    Spot,
    Stroke,
    Text,
)
from scantling.papers._drawing.part import part_drawing
from scantling.papers._paper import Sheet
from scantling.papers._part_pages import distinct
from scantling.parts import (
    Bore,
    Box,
    Corner,
    Cut,
    Extent,
    Part,
    Placement,
    Profile,
    Span,
    Surface,
    Way,
)
from scantling.setting_out import SettingOut
from scantling.shop.operations import operation
from scantling.units import Unit

F = Fraction
Line = tuple[float, float, float, float]
ROOM = (150.0, 190.0)  # [mm]
RIGHT_HANDED = (Way.UP, Way.RIGHT, Way.BACK)
MIRRORED = (Way.UP, Way.LEFT, Way.BACK)

# a mortise right through, 30 to 70 from the end, 10 to 22 from the face edge
THROUGH = Cut(
    name="mortise",
    owner="rail in stile",
    shape=Box(along=Span(F(30), F(70)), across=Span(F(10), F(22))),
)


def stile(*cuts: Cut, ways: tuple[Way, Way, Way] = RIGHT_HANDED, length: int = 120) -> Part:
    """A part so long, 45 wide and 20 thick."""
    along, across, into = ways
    return Part(
        name="stile",
        family="stile",
        extent=Extent(length=F(length), width=F(45), thickness=F(20)),
        wood="white ash",
        cut_of_wood="flat",
        placement=Placement(along=along, across=across, into=into, at=(F(0), F(0), F(0))),
        cuts=cuts,
    )


def drawn(part: Part, *, angle: Angle = Angle.THIRD, joints: SettingOut | None = None) -> Drawing:
    whole = joints or replace(cupboard(), parts=(part,), joints=(), lines=())
    return part_drawing(part, setting_out=whole, angle=angle, room=ROOM)


def at(strokes: Iterable[Stroke], corner: Spot) -> set[Line]:
    """Straight strokes from a corner on, from left to right or upwards, in whole millimetres."""
    found = set()
    for stroke in strokes:
        (a, b), (c, d) = sorted(stroke.points)
        left, low = corner
        found.add((round(a - left, 2), round(b - low, 2), round(c - left, 2), round(d - low, 2)))
    return found


def rectangle(left: float, low: float, right: float, high: float) -> set[Line]:
    return {
        (left, low, left, high),
        (left, low, right, low),
        (left, high, right, high),
        (right, low, right, high),
    }


def corners(found: Drawing) -> tuple[Spot, Spot]:
    """Lowest and highest corner of all three views."""
    spots = [spot for stroke in of_kind(found, Kind.VISIBLE) for spot in stroke.points]
    xs, ys = zip(*spots, strict=True)
    return (min(xs), min(ys)), (max(xs), max(ys))


# Views drawn by hand. In third angle the edge, at the left of the wood, stands at the left, and
# the end seen from below stands below; in first angle right and above.
def test_a_through_mortise_is_seen_from_its_face_and_hidden_from_edge_and_end() -> None:
    found = drawn(stile(THROUGH))
    assert found.scale == 1
    low, high = corners(found)
    face = (high[0] - 45, high[1] - 120)
    edge, end = (low[0], face[1]), (face[0], low[1])
    seen = at(of_kind(found, Kind.VISIBLE), face)
    assert rectangle(0, 0, 45, 120) | rectangle(10, 30, 22, 70) <= seen
    assert rectangle(0, 0, 20, 120) <= at(of_kind(found, Kind.VISIBLE), edge)
    assert rectangle(0, 0, 45, 20) <= at(of_kind(found, Kind.VISIBLE), end)
    assert len(seen) == 4 + 4 + 4 + 4
    hidden = of_kind(found, Kind.HIDDEN)
    assert {(0, 30, 20, 30), (0, 70, 20, 70)} <= at(hidden, edge)
    assert {(10, 0, 10, 20), (22, 0, 22, 20)} <= at(hidden, end)
    assert len(hidden) == 4


def test_first_angle_puts_the_edge_on_the_other_side_and_the_end_above() -> None:
    found = drawn(stile(THROUGH), angle=Angle.FIRST)
    low, high = corners(found)
    seen = of_kind(found, Kind.VISIBLE)
    assert rectangle(0, 0, 45, 120) <= at(seen, low)
    assert rectangle(0, 0, 20, 120) <= at(seen, (high[0] - 20, low[1]))
    assert rectangle(0, 0, 45, 20) <= at(seen, (low[0], high[1] - 20))


def test_the_other_of_a_pair_is_its_mirror_image() -> None:
    found = drawn(stile(THROUGH, ways=MIRRORED))
    low, high = corners(found)
    # its face edge is at the right, and the edge is drawn right of it
    assert rectangle(45 - 22, 30, 45 - 10, 70) <= at(
        of_kind(found, Kind.VISIBLE), (low[0], high[1] - 120)
    )
    assert rectangle(0, 0, 20, 120) <= at(
        of_kind(found, Kind.VISIBLE), (high[0] - 20, high[1] - 120)
    )


def test_every_distance_counts_from_the_reference_end_face_edge_and_face_side() -> None:
    far = Cut(
        name="stopped mortise",
        owner="rail in stile",
        shape=Box(along=Span(F(8), F(20)), across=Span(None, F(33)), into=Span(F(6), F(13))),
        corner=Corner(end=Surface.FAR_END),
    )
    found = metric(stile(THROUGH, far))
    assert sorted(said(found), key=float) == sorted(
        ["30", "70", "100", "112", "120", "10", "22", "33", "45", "6", "13", "20"], key=float
    )
    assert {text.says for text in found.texts if text.bold} == {"120", "45", "20"}


def metric(part: Part) -> Drawing:
    whole = replace(cupboard(measure=Unit.MM), parts=(part,), joints=(), lines=())
    return part_drawing(part, setting_out=whole, room=ROOM)


def test_figures_stand_beside_what_they_measure() -> None:
    found = metric(stile(THROUGH))
    _, high = corners(found)
    for says, along in (("30", 30), ("70", 70), ("120", 120)):
        assert figure(found, says).at[1] == pytest.approx(high[1] - 120 + along)
    for says, across in (("22", 22), ("45", 45)):
        assert figure(found, says).at[0] == pytest.approx(high[0] - 45 + across)


def test_what_is_knifed_from_the_mate_stands_in_brackets() -> None:
    housing = Cut(
        name="housing",
        owner="shelf in side",
        shape=Box(along=Span(F(30), F(49)), into=Span(None, F(6))),
    )
    part = stile(housing)
    lap = cupboard().joints[0]
    knifed = replace(
        lap,
        joined=replace(
            lap.joined,
            name="shelf in side",
            seats={
                "side": tuple(
                    replace(s, part="stile") for s in next(iter(lap.joined.seats.values()))
                )
            },
        ),
        work=(operation("transfer", "stile"),),
    )
    whole = replace(cupboard(measure=Unit.MM), parts=(part,), joints=(knifed,), lines=())
    found = part_drawing(part, setting_out=whole)
    # the first wall is set out; where the second comes, and how deep it goes, the mate tells
    assert {"30", "(49)"} <= set(said(found))


def test_a_hole_has_its_centre_lines_in_all_three_views() -> None:
    hole = Cut(
        name="hole",
        owner="pins",
        shape=Bore(axis=2, centre=(F(60), F(15)), radius=F(4), span=Span(None, F(12))),
    )
    found = metric(stile(hole))
    lines = of_kind(found, Kind.CENTRE)
    _, high = corners(found)
    face = (high[0] - 45, high[1] - 120)
    # a cross 1.5 past the rim, and one axis in each of the other views
    assert len(lines) == 4
    crossing = [line for line in at(lines, face) if line[0] > 0 and line[1] > 0]
    reach = sorted((c - a, d - b) for a, b, c, d in crossing)
    assert reach == [pytest.approx((0, 11), abs=0.1), pytest.approx((11, 0), abs=0.1)]
    assert {"60", "15", "12"} <= set(said(found))


def test_a_curve_shows_its_outline_and_none_of_its_flats() -> None:
    # half a wave 9 deep along the face edge, in 32 chords
    points = tuple((F(20 + 2 * i), F(round(9 * sin(pi * i / 32), 6))) for i in range(33))
    arch = Profile(axis=2, points=points, open_sides=frozenset({32}))
    found = metric(stile(Cut(name="arch", owner="arch of rail", shape=arch)))
    low, high = corners(found)
    edge = [
        line
        for line in at(of_kind(found, Kind.VISIBLE), (low[0], high[1] - 120))
        if line[2] <= 20 and line[1] >= 0
    ]
    # the outline, where the arch starts and where it ends
    assert len(edge) == 4 + 2


def test_a_long_rail_is_broken_where_nothing_happens_on_it() -> None:
    tenon = Cut(
        name="cheek",
        owner="rail in stile",
        shape=Box(along=Span(None, F(31)), into=Span(None, F(6))),
    )
    found = metric(stile(tenon, length=1041))
    assert len(of_kind(found, Kind.BREAK)) == 4  # two lines in each of the long views
    assert found.scale == 1
    assert found.size[1] < 190
    assert {"31", "1041"} <= set(said(found))
    # a wide board is drawn whole
    assert not of_kind(metric(stile(tenon, length=220)), Kind.BREAK)


def test_face_mark_and_edge_mark_stand_side_by_side_and_point_at_each_other() -> None:
    found = metric(stile(THROUGH))
    face, edge, *arrow = of_kind(found, Kind.MARK)
    assert face.points[0][1] == pytest.approx(edge.points[1][1])
    # the loop's tail ends on the face edge; the tick's tip on the face side, next to it
    _, high = corners(found)
    assert face.points[0][0] == pytest.approx(high[0] - 45)
    assert edge.points[1][0] == pytest.approx(corners(found)[0][0] + 20)
    shaft = arrow[0].points
    assert shaft[0][0] == shaft[1][0]  # along the grain


# ISO 128-2:2020, from memory: wide 0.35 with narrow 0.18; dash 12, long dash 24, gap 3 and
# dot 0.5 widths
def test_lines_are_those_of_the_standard() -> None:
    hole = Cut(
        name="hole",
        owner="pins",
        shape=Bore(axis=2, centre=(F(60), F(15)), radius=F(4), span=Span()),
    )
    found = drawn(stile(THROUGH, hole))
    types = {stroke.kind: LINE_TYPES[stroke.kind] for stroke in found.strokes}
    assert types[Kind.VISIBLE] == LineType(iso="01.2 continuous wide", width=0.35)
    assert (
        types[Kind.HIDDEN].width == types[Kind.DIMENSION].width == types[Kind.CENTRE].width == 0.18
    )
    assert types[Kind.HIDDEN].dashes == pytest.approx((12 * 0.18, 3 * 0.18))
    assert types[Kind.CENTRE].dashes == pytest.approx((24 * 0.18, 3 * 0.18, 0.5 * 0.18, 3 * 0.18))
    assert types[Kind.DIMENSION].dashes == types[Kind.VISIBLE].dashes == ()
    assert all(
        0.45 < 0.18 / found.width < 0.55 for kind, found in types.items() if kind is Kind.VISIBLE
    )


# common practice: third angle where paper is Letter, first where it is A4
def test_the_angle_goes_with_the_sheet() -> None:
    assert Sheet.LETTER.angle is Angle.THIRD
    assert Sheet.A4.angle is Angle.FIRST


LENGTHS = st.integers(min_value=1, max_value=60).map(lambda n: F(n * 25, 2))


@st.composite
def boxes(draw: st.DrawFn) -> Part:
    extent = Extent(
        length=draw(LENGTHS) + draw(LENGTHS) + 30,
        width=draw(LENGTHS) + 5,
        thickness=draw(st.integers(5, 60).map(F)),
    )
    cuts = []
    for i in range(draw(st.integers(min_value=0, max_value=9))):
        corner = Corner(
            end=draw(st.sampled_from([Surface.REFERENCE_END, Surface.FAR_END])),
            edge=draw(st.sampled_from([Surface.FACE_EDGE, Surface.BACK_EDGE])),
            face=draw(st.sampled_from([Surface.FACE_SIDE, Surface.BACK_FACE])),
        )
        shares = [sorted(draw(st.tuples(st.integers(0, 19), st.integers(1, 20)))) for _ in range(3)]
        spans = [
            Span(
                extent[a] * F(low, 20) if low else None,
                extent[a] * F(high, 20) if 0 < low < high < 20 else extent[a] * F(high + 1, 40),
            )
            for a, (low, high) in enumerate(shares)
        ]
        spans = [
            Span() if s.start is not None and s.stop is not None and s.stop <= s.start else s
            for s in spans
        ]
        if draw(st.booleans()):
            spans[draw(st.integers(0, 2))] = Span()
        cuts.append(
            Cut(
                name=f"cut {i}",
                owner=f"joint {i}",
                corner=corner,
                shape=Box(along=spans[0], across=spans[1], into=spans[2]),
            )
        )
    ways = draw(st.sampled_from([RIGHT_HANDED, MIRRORED]))
    part = stile(*cuts, ways=ways)
    return replace(part, extent=extent)


@settings(max_examples=50)
@given(part=boxes(), angle=st.sampled_from(list(Angle)))
def test_nothing_runs_into_a_figure_on_any_box(part: Part, angle: Angle) -> None:
    found = drawn(part, angle=angle)
    assert list(collisions(found)) == []


PIECES = (
    "pieces/glaze_cupboard",
    "pieces/glaze_cupboard_lapped",
    "tests/pieces/metric_cupboard",
)


@pytest.mark.parametrize("angle", list(Angle))
@pytest.mark.parametrize("folder", PIECES)
def test_nothing_runs_into_a_figure_on_any_part(folder: str, angle: Angle) -> None:
    whole = worked(folder)
    found = {
        each.first.name: list(collisions(part_drawing(each.first, setting_out=whole, angle=angle)))
        for each in distinct(whole)
    }
    assert {name: wrong for name, wrong in found.items() if wrong} == {}
    assert len(found) > 15


def test_a_figure_over_another_or_on_a_line_is_caught() -> None:
    text = Text(says="12", at=(5.0, 5.0))
    line = Stroke(kind=Kind.DIMENSION, points=((0.0, 5.0), (20.0, 5.0)))
    sheet = Drawing(strokes=(), texts=(), size=(20.0, 20.0), scale=1, alt="")
    assert list(collisions(replace(sheet, texts=(text, replace(text, says="13")))))
    assert list(collisions(replace(sheet, texts=(text,), strokes=(line,))))
    assert not list(collisions(replace(sheet, texts=(text,))))
