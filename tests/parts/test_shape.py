"""Shapes of cuts: corners, open sides, what is refused."""

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.parts import Bore, Box, Corner, Cut, Extent, Profile, Span, Surface, Taper
from scantling.parts.cut import EVEN, OVER
from scantling.parts.outline import Flat, run_out, turn_of
from scantling.parts.shape import INSIDE_CIRCLE, ROUND_CIRCLE

F = Fraction
SIDE = Extent(length=F(800), width=F(283), thickness=F(19))
ROOM = (F(283), F(400))
FAR = (F(33), F(2), F(3))  # past a horn, past an edge, past a face: all different

coordinates = st.integers(min_value=-300, max_value=300).map(lambda n: F(n, 4))


@st.composite
def outlines(draw: st.DrawFn) -> tuple[Flat, ...]:
    """Convex outlines with a side in the surface v = 0, as a socket or a field has."""
    mouth = draw(st.integers(min_value=1, max_value=400))
    depth = draw(st.integers(min_value=1, max_value=160))
    left, right = draw(coordinates), draw(coordinates)
    at = draw(coordinates)
    a, b = (at, F(0)), (at + F(mouth, 4), F(0))
    c, d = (b[0] + right / 8, F(depth, 4)), (at + left / 8, F(depth, 4))
    assume(turn_of((a, b, c, d)) != 0)
    turned = draw(st.booleans())
    return (b, a, d, c) if turned else (a, b, c, d)


def line(p: Flat, q: Flat) -> tuple[F, F, F]:
    a, b = q[1] - p[1], p[0] - q[0]
    return a, b, a * p[0] + b * p[1]


@given(points=outlines(), over=st.integers(min_value=1, max_value=400).map(lambda n: F(n, 8)))
def test_an_open_side_moves_out_and_the_others_stay_in_their_lines(
    points: tuple[Flat, ...], over: F
) -> None:
    found = run_out(points, frozenset({0}), room=ROOM, over=(F(5), over))
    assert turn_of(found) == turn_of(points)
    assert found[0][1] == found[1][1] < 0  # past the surface, and level with it
    for i in (1, 2, 3):
        a, b, c = line(points[i], points[(i + 1) % 4])
        for p, q in (found[i], found[(i + 1) % 4]):
            assert a * p + b * q == c


SOCKET = ((F(20), F(0)), (F(26), F(0)), (F(57, 2), F(15)), (F(35, 2), F(15)))


def test_a_wide_mouth_is_moved_by_the_whole_of_it() -> None:
    found = run_out(SOCKET, frozenset({0}), room=ROOM, over=(F(7), F(3)))
    assert found[:2] == ((F(41, 2), F(-3)), (F(51, 2), F(-3)))  # 3 out at 1 in 6
    assert found[2:] == SOCKET[2:]


def test_a_mouth_that_starts_within_the_wood_is_carried_to_the_surface_and_past() -> None:
    inside = tuple((p, q + 6) for p, q in SOCKET)
    found = run_out(inside, frozenset({0}), room=ROOM, over=(F(7), F(3)))
    assert found[:2] == ((F(43, 2), F(-3)), (F(49, 2), F(-3)))  # 9 out at 1 in 6


def test_through_the_far_surface_it_goes_as_far_as_that_is() -> None:
    found = run_out(SOCKET, frozenset({2}), room=(F(283), F(19)), over=(F(7), F(3)))
    assert {q for _, q in found} == {0, 22}


def test_a_mouth_as_narrow_as_a_kerf_stays_open() -> None:
    # 0.25 wide, flanks 1:6 on both sides: they would meet 0.75 outside
    socket = ((F(20), F(0)), (F(81, 4), F(0)), (F(91, 4), F(15)), (F(35, 2), F(15)))
    found = run_out(socket, frozenset({0}), room=ROOM, over=(F(1), F(1)))
    assert found[0][1] == found[1][1] == F(-1, 2)
    assert found[0][0] < found[1][0]


def test_sides_that_meet_before_the_surface_are_refused() -> None:
    inside = ((F(20), F(6)), (F(81, 4), F(6)), (F(91, 4), F(15)), (F(35, 2), F(15)))
    with pytest.raises(OutOfRangeError, match="meet before it leaves"):
        run_out(inside, frozenset({0}), room=ROOM, over=(F(1), F(1)))


@pytest.mark.parametrize(
    "points",
    [
        ((0, 0), (9, 0)),
        ((0, 0), (5, 0), (9, 0), (4, 7)),  # three in a line
        ((4, 7), (9, 0), (5, 0), (0, 0)),  # the same, the other way round
        ((0, 0), (9, 0), (3, 1), (1, 8)),  # a dent
        ((0, 0), (9, 8), (9, 0), (0, 8)),  # crossed
        ((0, 9), (6, -8), (-9, 3), (9, 3), (-6, -8)),  # a star turns the same way at each point
    ],
)
def test_an_outline_that_is_not_convex_is_refused(points: tuple[tuple[int, int], ...]) -> None:
    outline = tuple((F(p), F(q)) for p, q in points)
    for open_sides in (frozenset[int](), frozenset({0})):
        with pytest.raises(OutOfRangeError, match="not convex"):
            run_out(outline, open_sides, room=ROOM, over=(F(1), F(1)))


def test_a_sloped_side_cannot_lie_in_a_surface() -> None:
    chamfer = ((F(0), F(0)), (F(6), F(0)), (F(0), F(4)))
    with pytest.raises(OutOfRangeError, match="side 1 of a profile is not square"):
        run_out(chamfer, frozenset({1}), room=ROOM, over=(F(1), F(1)))


def test_a_chamfer_runs_on_past_both_surfaces() -> None:
    chamfer = Profile(
        axis=0,
        points=((F(0), F(0)), (F(6), F(0)), (F(0), F(4))),
        open_sides=frozenset({0, 2}),
    )
    found = {(y, z) for x, y, z in chamfer.corners(extent=SIDE, over=FAR) if x < 0}
    # 2 past the edge and 3 past the face; the slope of 4 in 6 is kept
    assert found == {(F(-2), F(-3)), (F(21, 2), F(-3)), (F(-2), F(16, 3))}


def test_a_box_reaches_past_each_surface_it_is_open_to() -> None:
    housing = Box(along=Span(F(100), F(121)), across=Span(F(14), None), into=Span(None, F(6)))
    found = housing.corners(extent=SIDE, over=FAR)
    assert {x for x, _, _ in found} == {100, 121}
    assert {y for _, y, _ in found} == {14, 285}
    assert {z for _, _, z in found} == {-3, 6}


def test_a_groove_reaches_past_the_horn_at_each_end() -> None:
    found = Box(across=Span(F(5), F(11)), into=Span(None, F(8))).corners(extent=SIDE, over=FAR)
    assert {x for x, _, _ in found} == {-33, 833}


def test_even_with_the_surface_nothing_reaches_past_it() -> None:
    found = Box(into=Span(None, F(8))).corners(extent=SIDE, over=EVEN)
    assert {point[0] for point in found} == {0, 800}
    assert {point[2] for point in found} == {0, 8}


@pytest.mark.parametrize(
    ("start", "stop"), [(F(9), F(5)), (F(6), F(6)), (None, F(0)), (None, F(-4)), (F(800), None)]
)
def test_a_cut_that_stops_before_it_starts_is_refused(start: F | None, stop: F | None) -> None:
    # the hull of its corners would be a cut all the same
    with pytest.raises(OutOfRangeError, match="has no size"):
        Box(along=Span(start, stop)).corners(extent=SIDE, over=OVER)


def test_a_hole_of_no_radius_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="radius"):
        Bore(axis=2, centre=(F(40), F(37)), radius=F(0), span=Span(None, F(10))).corners(
            extent=SIDE, over=OVER
        )


def area(points: tuple[Flat, ...]) -> F:
    ring = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum((a * d - b * c for (a, b), (c, d) in ring), F(0))) / 2


def test_a_hole_is_drawn_round_its_circle_and_a_pin_inside_it() -> None:
    for p, q in INSIDE_CIRCLE:
        assert p * p + q * q == 1
    ring = list(ROUND_CIRCLE)
    for (a, b), (c, d) in zip(ring, [*ring[1:], ring[0]], strict=True):
        # square of the distance of the side's line from the middle
        assert (a * d - b * c) ** 2 / ((c - a) ** 2 + (d - b) ** 2) == 1
    assert len(INSIDE_CIRCLE) == len(ROUND_CIRCLE) == 24


def test_the_polygon_of_a_hole_is_close_to_its_circle() -> None:
    # a regular polygon of n sides round a circle has n tan(180°/n)/180° of its area, inside
    # it n/2 sin(360°/n); elementary geometry
    assert float(area(ROUND_CIRCLE)) == pytest.approx(24 * math.tan(math.pi / 24), rel=1e-5)
    assert float(area(INSIDE_CIRCLE)) == pytest.approx(12 * math.sin(math.pi / 12), rel=1e-5)
    assert float(area(ROUND_CIRCLE)) / math.pi == pytest.approx(1.00575, abs=1e-5)


def test_a_hole_is_where_it_was_marked() -> None:
    hole = Bore(axis=2, centre=(F(232), F(37)), radius=F(5, 2), span=Span(None, F(11)))
    found = hole.corners(extent=SIDE, over=FAR)
    assert sum(x for x, _, _ in found) / len(found) == 232
    assert sum(y for _, y, _ in found) / len(found) == 37
    assert {z for _, _, z in found} == {-3, 11}


TAPER = Taper(
    axis=1,
    first=((F(100), F(0)), (F(117), F(0)), (F(115), F(6)), (F(102), F(6))),
    last=((F(103), F(0)), (F(114), F(0)), (F(112), F(6)), (F(105), F(6))),
    start=F(0),
    stop=F(240),
    open_sides=frozenset({0}),
    open_start=True,
)


def test_a_taper_runs_on_straight_at_its_open_end() -> None:
    found = TAPER.corners(extent=SIDE, over=FAR)
    near, far = found[:4], found[4:]
    assert {y for _, y, _ in near} == {-2}
    assert {y for _, y, _ in far} == {240}
    for (x, y, z), (p, q, r) in zip(near, far, strict=True):
        share = (F(0) - y) / (q - y)
        at_the_edge = (x + (p - x) * share, z + (r - z) * share)
        flank = 3 if z < 0 else 0  # pushed out past the face along its slope of 2 in 6
        assert at_the_edge[1] == (-3 if z < 0 else 6)
        assert at_the_edge[0] in {100 - F(flank, 3), 117 + F(flank, 3), 115, 102}


def test_a_taper_open_at_its_end_runs_out_however_wide_the_part_is() -> None:
    taper = Taper(
        axis=1, first=TAPER.first, last=TAPER.last, start=F(14), stop=F(240), open_stop=True
    )
    found = taper.corners(extent=SIDE, over=FAR)
    assert {y for _, y, _ in found} == {14, 285}
    # 3 in 226 on each flank, carried on for 45 more
    assert found[4][0] == 103 + F(3 * 45, 226)
    assert found[5][0] == 114 - F(3 * 45, 226)


def test_a_taper_whose_flanks_meet_before_the_surface_is_refused() -> None:
    taper = Taper(
        axis=1, first=TAPER.first, last=TAPER.last, start=F(0), stop=F(60), open_stop=True
    )
    with pytest.raises(OutOfRangeError, match="taper meet before it leaves"):
        taper.corners(extent=SIDE, over=FAR)


@pytest.mark.parametrize(("start", "stop"), [(F(240), F(0)), (F(10), F(10))])
def test_a_taper_of_no_length_is_refused(start: F, stop: F) -> None:
    taper = Taper(axis=1, first=TAPER.first, last=TAPER.last, start=start, stop=stop)
    with pytest.raises(OutOfRangeError, match="has no size"):
        taper.corners(extent=SIDE, over=OVER)


def test_a_twisted_taper_is_refused() -> None:
    last = ((F(103), F(0)), (F(114), F(0)), (F(113), F(6)), (F(105), F(6)))
    taper = Taper(axis=1, first=TAPER.first, last=last, start=F(0), stop=F(240))
    with pytest.raises(OutOfRangeError, match="side 1 of a taper is not parallel"):
        taper.corners(extent=SIDE, over=OVER)


def test_a_taper_from_four_points_to_three_is_refused() -> None:
    taper = Taper(axis=1, first=TAPER.first, last=TAPER.last[:3], start=F(0), stop=F(240))
    with pytest.raises(OutOfRangeError, match="from 4 points to 3"):
        taper.corners(extent=SIDE, over=OVER)


@pytest.mark.parametrize(
    "shape",
    [
        Box(along=Span(F(100), F(121)), across=Span(F(14), F(250)), into=Span(F(1), F(6))),
        Profile(
            axis=2,
            points=((F(2), F(20)), (F(2), F(26)), (F(15), F(57, 2)), (F(15), F(35, 2))),
            span=Span(F(3), F(8)),
        ),
        Bore(axis=0, centre=(F(37), F(9)), radius=F(5, 2), span=Span(F(4), F(30))),
        Taper(axis=1, first=TAPER.first, last=TAPER.last, start=F(2), stop=F(240)),
    ],
)
def test_a_cut_moved_in_has_all_its_corners_moved(shape: Box | Profile | Bore | Taper) -> None:
    by = (F(7), F(11, 2), F(1, 3))
    plain = shape.corners(extent=SIDE, over=EVEN)
    moved = shape.moved(by).corners(extent=SIDE, over=EVEN)
    assert moved == tuple((x + by[0], y + by[1], z + by[2]) for x, y, z in plain)


def test_an_open_end_stays_open_when_moved() -> None:
    moved = Box(along=Span(None, F(30))).moved((F(5), F(0), F(0)))
    assert moved.along == Span(None, F(35))


def test_a_cut_counted_from_the_far_end_is_turned_round() -> None:
    rabbet = Cut(
        name="rabbet",
        owner="bottom in side",
        shape=Box(along=Span(None, F(13)), into=Span(None, F(6))),
        corner=Corner(end=Surface.FAR_END, face=Surface.BACK_FACE),
    )
    found = rabbet.corners(extent=SIDE, over=FAR)
    assert {x for x, _, _ in found} == {787, 833}
    assert {z for _, _, z in found} == {13, 22}
