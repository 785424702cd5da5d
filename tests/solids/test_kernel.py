"""Cutting, measuring and meeting of solids, against figures worked by hand."""

from fractions import Fraction
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.solids.shapes import board, convex, hole, shared

from scantling.errors import InternalError
from scantling.solids.kernel import cut, shared_by_hulls, standing
from scantling.solids.pattern import Convex, Pattern, Turn

F = Fraction
RABBET = convex((-1, 121), (35, 46), (-1, 8))
NOTCH = convex((50, 71), (-1, 20), (12, 21))


def test_a_board_less_rabbet_and_notch() -> None:
    solid = board(RABBET, NOTCH)
    assert solid.volume == pytest.approx(120 * 45 * 20 - 120 * 10 * 8 - 21 * 20 * 8, rel=1e-15)
    assert solid.pieces == 1
    # outside 2(120·45 + 120·20 + 45·20); a rabbet adds nothing but its two end faces taken
    # away; the notch adds its two walls of 20 by 8, and loses its mouth of 21 by 8 on the edge,
    # which its back wall makes up for
    outside = 2 * (120 * 45 + 120 * 20 + 45 * 20)
    assert solid.area == pytest.approx(outside - 2 * 10 * 8 + 2 * 20 * 8, rel=1e-15)


def test_moments_tell_where_the_wood_lies() -> None:
    solid = board(NOTCH)
    whole, gone = 120 * 45 * 20, 21 * 20 * 8
    wanted = (whole * 60 - gone * 60.5, whole * 22.5 - gone * 10, whole * 10 - gone * 16)
    assert solid.bulk.moments == pytest.approx(wanted, rel=1e-14)


def test_a_board_sawn_through_is_two_pieces() -> None:
    assert board(convex((50, 52), (-1, 46), (-1, 21))).pieces == 2


def test_a_skin_left_by_a_cut_that_ends_short_is_a_piece() -> None:
    skin = F(1, 1000)
    sawn = convex((-1, 121), (20, 22), (-1, 21)), convex((60, 62), (-1, 46), (-1, 20 - skin))
    assert board(*sawn).pieces == 2
    assert board(*sawn, convex((-1, 121), (-1, 46), (0, 20 - skin))).pieces == 2


def test_nothing_is_left_of_a_board_that_is_cut_away() -> None:
    solid = board(convex((-1, 121), (-1, 46), (-1, 21)))
    assert solid.pieces == 0
    assert solid.volume == 0


def test_flat_corners_make_no_body() -> None:
    with pytest.raises(InternalError, match="4 corners span no solid"):
        cut(Pattern(block=Convex(corners=convex((0, 9), (0, 7), (0, 1)).corners[::2])))


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_the_order_of_cuts_makes_no_difference(order: tuple[int, int, int]) -> None:
    cuts = (RABBET, NOTCH, convex((-1, 60), (-1, 46), (6, 15)))
    wanted = board(*cuts).volume
    assert board(*(cuts[i] for i in order)).volume == pytest.approx(wanted, rel=1e-14)


@given(
    axes=st.permutations((0, 1, 2)),
    signs=st.tuples(*[st.sampled_from((1, -1))] * 3),
    at=st.tuples(*[st.fractions(min_value=-900, max_value=900, max_denominator=64)] * 3),
)
def test_turning_a_solid_round_changes_nothing_but_its_place(
    axes: list[int], signs: tuple[int, int, int], at: tuple[F, F, F]
) -> None:
    turn = Turn(axes=(axes[0], axes[1], axes[2]), signs=signs, at=at)
    plain = board(RABBET, NOTCH)
    turned = standing(plain, turn)
    assert turned.volume == pytest.approx(plain.volume, rel=1e-13)  # and above 0: not inside out
    assert turned.pieces == 1
    ends = turn.of((F(0), F(0), F(0))), turn.of((F(120), F(45), F(20)))
    low, high = turned.box
    assert low == pytest.approx([float(min(axis)) for axis in zip(*ends, strict=True)])
    assert high == pytest.approx([float(max(axis)) for axis in zip(*ends, strict=True)])


@given(
    starts=st.tuples(*[st.integers(min_value=-5, max_value=130)] * 3),
    sizes=st.tuples(*[st.integers(min_value=1, max_value=90)] * 3),
)
def test_what_is_shared_and_what_is_left_add_up(
    starts: tuple[int, int, int], sizes: tuple[int, int, int]
) -> None:
    taken = convex(*((a, a + s) for a, s in zip(starts, sizes, strict=True)))
    plain = board(NOTCH)
    mutual, _ = shared(plain, cut(Pattern(block=taken)), turn=Turn())
    assert board(NOTCH, taken).volume + mutual == pytest.approx(plain.volume, rel=1e-13)


def test_two_boards_that_touch_share_nothing_and_one_pushed_in_shares_a_slice() -> None:
    one, other = board(), board(size=(F(1, 3), 50, 7))
    touching = Turn(at=(F(120), F(0), F(0)))
    assert shared(one, other, turn=touching)[0] < 1e-9
    pushed = Turn(at=(F(120) - F(1, 10**6), F(0), F(0)))
    volume, depth = shared(one, other, turn=pushed)
    assert volume == pytest.approx(1e-6 * 45 * 7, rel=1e-6)
    assert depth == pytest.approx(1e-6, rel=1e-5)


def test_three_hulls_share_their_middle() -> None:
    one, other = convex((0, 30), (0, 20), (0, 10)), convex((12, 50), (3, 9), (-4, 40))
    within = convex((-1, 25), (-1, 99), (2, 99))
    assert shared_by_hulls(one, other, within=within) == pytest.approx(13 * 6 * 8)


def test_a_hole_takes_its_polygon() -> None:
    solid = board(hole(centre=(60, 20), radius=F(5, 2), deep=(-1, 11)))
    # a polygon drawn round a circle has half its way round times its radius as area
    taken = 120 * 45 * 20 - solid.volume
    assert taken == pytest.approx(11 * 3.1415926 * 2.5**2 * 1.00575, rel=1e-5)
