"""A quick bound on what two solids share, against the kernel's own answer."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.solids.shapes import board, convex, hole, shared

from scantling.solids._boxes import as_box, room_left, turned_box
from scantling.solids.kernel import Solid, standing
from scantling.solids.pattern import Turn

F = Fraction
spans = st.tuples(*[st.tuples(st.integers(-5, 110), st.integers(1, 70))] * 3)


@st.composite
def boards(draw: st.DrawFn) -> Solid:
    cuts = [convex(*((a, a + s) for a, s in box)) for box in draw(st.lists(spans, max_size=3))]
    if draw(st.booleans()):
        cuts.append(hole(centre=(60, 20), radius=9, deep=(-1, 11)))
    return board(*cuts)


turns = st.builds(
    lambda axes, signs, at: Turn(axes=(axes[0], axes[1], axes[2]), signs=signs, at=at),
    st.permutations((0, 1, 2)),
    st.tuples(*[st.sampled_from((1, -1))] * 3),
    st.tuples(*[st.integers(-90, 150).map(lambda n: F(n, 3))] * 3),
)


@given(one=boards(), other=boards(), turn=turns)
def test_what_is_shared_is_what_the_other_would_take(one: Solid, other: Solid, turn: Turn) -> None:
    left = one.body - standing(other, turn).body
    volume, _ = shared(one, other, turn=turn)
    assert volume == pytest.approx(one.volume - left.volume(), abs=1e-6)


WHOLE = (0.0, 0.0, 0.0, 12.0, 7.0, 5.0)


def test_room_left_by_boxes_that_overlap_each_other() -> None:
    taken = [(-1.0, -1.0, -1.0, 4.0, 9.0, 9.0), (3.0, 2.0, -1.0, 13.0, 9.0, 9.0)]
    # 8 by 2 by 5 along one side stays
    assert room_left(WHOLE, (-9.0,) * 3 + (99.0,) * 3, taken=taken) == 80
    assert room_left(WHOLE, (-9.0,) * 3 + (99.0,) * 3, taken=taken[::-1]) == 80


def test_boxes_that_touch_share_no_room() -> None:
    assert room_left(WHOLE, (12.0, 0.0, 0.0, 20.0, 7.0, 5.0), taken=[]) == 0


def test_too_many_pieces_are_left_to_the_kernel() -> None:
    holes = [(x + 0.2, y + 0.2, z + 0.2, x + 0.7, y + 0.7, z + 0.7)
             for x in range(12) for y in range(7) for z in range(5)]  # fmt: skip
    assert room_left(WHOLE, WHOLE, taken=holes) == float("inf")


def test_a_box_is_known_by_its_corners_and_nothing_else_is() -> None:
    corners = [[float(v) for v in p] for p in convex((3, 9), (2, 7), (-1, 4)).corners]
    assert as_box(corners) == (3, 2, -1, 9, 7, 4)
    assert as_box([*corners[:7], corners[0]]) is None
    assert as_box([*corners[:7], [9.0, 7.0, 5.0]]) is None
    assert as_box([*corners, [6.0, 5.0, 0.0]]) is None


def test_a_box_is_turned_with_its_solid() -> None:
    turn = Turn(axes=(2, 1, 0), signs=(1, 1, -1), at=(F(19), F(20), F(100)))
    assert turned_box((0, 0, -2, 800, 283, 6), turn) == (13, 20, 100, 21, 303, 900)
