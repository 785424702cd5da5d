"""Frames of parts and their 48 ways to stand."""

from fractions import Fraction
from itertools import permutations, product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.parts import Corner, Extent, Placement, Surface, Way
from scantling.parts.frame import surface
from scantling.parts.solid import turn

F = Fraction
AXES = ((Way.RIGHT, Way.LEFT), (Way.BACK, Way.FRONT), (Way.UP, Way.DOWN))
WAYS = [ways for order in permutations(AXES) for ways in product(*order)]
AT = (F(7, 3), F(-11), F(127, 5))
lengths = st.fractions(min_value=-3000, max_value=3000, max_denominator=64)
points = st.tuples(lengths, lengths, lengths)
placements = st.builds(
    lambda ways, at: Placement(along=ways[0], across=ways[1], into=ways[2], at=at),
    st.sampled_from(WAYS),
    points,
)
extents = st.builds(
    Extent,
    **dict.fromkeys(
        ("length", "width", "thickness"),
        st.fractions(min_value=1, max_value=3000, max_denominator=64),
    ),
)
corners = st.builds(
    Corner,
    end=st.sampled_from((Surface.REFERENCE_END, Surface.FAR_END)),
    edge=st.sampled_from((Surface.FACE_EDGE, Surface.BACK_EDGE)),
    face=st.sampled_from((Surface.FACE_SIDE, Surface.BACK_FACE)),
)


def matrix(placement: Placement) -> np.ndarray:
    rows = np.zeros((3, 3))
    for axis, way in enumerate(placement.ways):
        rows[way.axis, axis] = way.sign
    return rows


def test_a_part_can_stand_in_48_ways() -> None:
    assert len(set(WAYS)) == 48


@pytest.mark.parametrize("ways", WAYS)
def test_half_of_the_ways_are_mirrored_and_the_determinant_says_which(
    ways: tuple[Way, Way, Way],
) -> None:
    placement = Placement(along=ways[0], across=ways[1], into=ways[2], at=AT)
    assert placement.is_mirrored == (np.linalg.det(matrix(placement)) < 0)
    assert turn(placement).is_mirrored == placement.is_mirrored


@pytest.mark.parametrize("ways", WAYS)
def test_out_and_back_is_where_it_was(ways: tuple[Way, Way, Way]) -> None:
    placement = Placement(along=ways[0], across=ways[1], into=ways[2], at=AT)
    point = (F(800), F(283), F(19, 2))
    assert placement.to_part(placement.to_piece(point)) == point
    assert turn(placement).of(point) == placement.to_piece(point)
    assert turn(placement).back(placement.to_piece(point)) == point


def test_a_left_side_stands_as_measured() -> None:
    # face side inside (to the right), face edge in front, reference end down
    left = Placement(along=Way.UP, across=Way.BACK, into=Way.LEFT, at=(F(19), F(20), F(100)))
    assert left.to_piece((F(800), F(283), F(6))) == (F(13), F(303), F(900))


def test_a_pair_of_sides_differs_in_hand() -> None:
    left = Placement(along=Way.UP, across=Way.BACK, into=Way.LEFT, at=AT)
    right = Placement(along=Way.UP, across=Way.BACK, into=Way.RIGHT, at=AT)
    assert {left.is_mirrored, right.is_mirrored} == {True, False}


def test_two_directions_along_one_axis_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="three different directions"):
        Placement(along=Way.UP, across=Way.DOWN, into=Way.LEFT, at=AT)


@given(one=placements, other=placements, point=points)
def test_seen_from_another_part_it_stands_in_the_same_place(
    one: Placement, other: Placement, point: tuple[F, F, F]
) -> None:
    seen = turn(other).seen_from(turn(one))
    assert turn(one).of(seen.of(point)) == turn(other).of(point)


@given(corner=corners, extent=extents, point=points)
def test_counting_from_a_corner_twice_is_counting_from_the_reference(
    corner: Corner, extent: Extent, point: tuple[F, F, F]
) -> None:
    assert corner.to_part(corner.to_part(point, extent), extent) == point


def test_counted_from_the_far_end_and_back_edge() -> None:
    corner = Corner(end=Surface.FAR_END, edge=Surface.BACK_EDGE)
    extent = Extent(length=F(800), width=F(283), thickness=F(19))
    assert corner.to_part((F(30), F(9), F(5)), extent) == (F(770), F(274), F(5))
    assert corner.opposite(0) is Surface.REFERENCE_END
    assert corner.opposite(2) is Surface.BACK_FACE


def test_a_corner_of_two_edges_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="back edge is no surface of axis 0"):
        Corner(end=Surface.BACK_EDGE)


@pytest.mark.parametrize("found", Surface)
def test_a_surface_is_named_by_its_axis_and_side(found: Surface) -> None:
    assert surface(axis=found.axis, far=not found.is_reference) is found


@pytest.mark.parametrize("way", Way)
def test_the_opposite_way_undoes_it(way: Way) -> None:
    assert way.opposite.axis == way.axis
    assert way.opposite.sign == -way.sign
    assert way.opposite.opposite is way
