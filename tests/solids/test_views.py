"""What is seen of solids, against views drawn by hand."""

from fractions import Fraction
from itertools import permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.solids.shapes import board, convex, hole, stood

from scantling.errors import OutOfRangeError
from scantling.solids.kernel import Placed
from scantling.solids.pattern import Turn
from scantling.solids.store import Store
from scantling.solids.views import (
    ABOVE,
    BACK,
    BELOW,
    FRONT,
    LEFT_END,
    OBLIQUE,
    RIGHT_END,
    Line,
    LineKind,
    View,
    lines,
)

F = Fraction
BOARD = board()  # 120 wide, 45 deep, 20 tall


def drawn(*placed: Placed, view: View) -> dict[LineKind, list[tuple[float, ...]]]:
    """From and to of each line, x and y, by kind."""
    found: dict[LineKind, list[tuple[float, ...]]] = {kind: [] for kind in LineKind}
    for line in lines(placed, view=view, store=Store()):
        (a, b), (c, d) = line.points
        found[line.kind].append((a, b, c, d))
    return found


def rectangle(left: float, low: float, right: float, high: float) -> list[tuple[float, ...]]:
    return sorted(
        [
            (left, low, left, high),
            (left, low, right, low),
            (left, high, right, high),
            (right, low, right, high),
        ]
    )


@pytest.mark.parametrize(
    ("view", "outline"),
    [
        (FRONT, rectangle(3, 7, 123, 27)),
        (BACK, rectangle(-123, 7, -3, 27)),
        (LEFT_END, rectangle(-50, 7, -5, 27)),
        (RIGHT_END, rectangle(5, 7, 50, 27)),
        (ABOVE, rectangle(3, 5, 123, 50)),
        (BELOW, rectangle(3, -50, 123, -5)),
    ],
)
def test_square_on_a_board_is_its_outline_and_nothing_else(
    view: View, outline: list[tuple[float, ...]]
) -> None:
    found = drawn(stood("a", BOARD, 3, 5, 7), view=view)
    assert found[LineKind.OUTLINE] == outline
    assert found[LineKind.EDGE] == []
    assert found[LineKind.HIDDEN] == []


def length(line: tuple[float, ...]) -> float:
    return float(np.hypot(line[2] - line[0], line[3] - line[1]))


def test_from_a_corner_a_board_shows_six_outlines_three_edges_and_hides_three() -> None:
    view = View(eye=(-2.0, -3.0, 1.5))
    found = drawn(stood("a", BOARD, 3, 5, 7), view=view)
    assert [len(found[kind]) for kind in LineKind] == [6, 3, 3, 0]
    # an edge shows its length less what points at the eye, by Pythagoras
    eye = np.array(view.eye) / np.linalg.norm(view.eye)
    wanted = sorted(
        size * np.sqrt(1 - part**2) for size, part in zip((120, 45, 20), eye, strict=True)
    )
    for kind in (LineKind.EDGE, LineKind.HIDDEN):
        assert sorted(length(line) for line in found[kind]) == pytest.approx(wanted, abs=1e-3)


def test_a_board_behind_another_shows_only_past_it() -> None:
    near, far = stood("near", BOARD, 0, 0, 0), stood("far", BOARD, 70, 60, 8)
    found = drawn(near, far, view=FRONT)
    seen = [*found[LineKind.OUTLINE], *found[LineKind.EDGE]]
    assert (70, 28, 190, 28) in seen
    assert (120, 8, 190, 8) in seen  # its foot, from the end of the near board on
    assert (70, 20, 70, 28) in seen
    assert (70, 8, 70, 20) in found[LineKind.HIDDEN]
    assert (70, 8, 120, 8) in found[LineKind.HIDDEN]
    # where the near board stands before the far one its edge is no outline
    assert (0, 20, 70, 20) in found[LineKind.OUTLINE]
    assert (70, 20, 120, 20) in found[LineKind.EDGE]


def test_what_is_wholly_behind_is_hidden() -> None:
    far = stood("far", board(size=(30, 20, 9)), 40, 60, 5)
    found = drawn(stood("near", BOARD, 0, 0, 0), far, view=FRONT)
    assert sorted(found[LineKind.HIDDEN]) == rectangle(40, 5, 70, 14)
    assert found[LineKind.EDGE] == []


def test_two_boards_flush_show_their_joint_line_once() -> None:
    found = drawn(stood("a", BOARD, 0, 0, 0), stood("b", BOARD, 0, 0, 20), view=FRONT)
    assert found[LineKind.OUTLINE] == rectangle(0, 0, 120, 40)
    assert found[LineKind.EDGE] == [(0, 20, 120, 20)]
    assert found[LineKind.HIDDEN] == []


def test_a_tongue_in_a_groove_is_hidden_between_shoulders() -> None:
    grooved = board(convex((-1, 121), (13, 27), (8, 21)))
    tongue = board(size=(120, 14, 12))
    found = drawn(stood("a", grooved, 0, 0, 0), stood("b", tongue, 0, 13, 8), view=FRONT)
    assert found[LineKind.OUTLINE] == rectangle(0, 0, 120, 20)
    assert found[LineKind.HIDDEN] == [(0, 8, 120, 8)]
    assert sorted(drawn(stood("a", grooved, 0, 0, 0), view=RIGHT_END)[LineKind.OUTLINE]) == sorted(
        [
            (0, 0, 0, 20), (0, 0, 45, 0), (0, 20, 13, 20), (13, 8, 13, 20), (13, 8, 27, 8),
            (27, 8, 27, 20), (27, 20, 45, 20), (45, 0, 45, 20),
        ]
    )  # fmt: skip


def test_a_hole_shows_its_rim_and_no_flats() -> None:
    bored = stood("a", board(hole(centre=(60, 20), radius=9, deep=(-1, 11))), 0, 0, 0)
    rim = drawn(bored, view=BELOW)[LineKind.EDGE]
    assert len(rim) == 24
    assert {round(length(line), 1) for line in rim} == {2.4}  # 2 · 9 · tan 7.5° = 2.37
    aside = drawn(bored, view=FRONT)
    assert aside[LineKind.EDGE] == []
    # floor, and the two sides where the round turns away
    assert max(aside[LineKind.HIDDEN], key=length) == pytest.approx((51, 11, 69, 11), abs=0.1)
    assert len([line for line in aside[LineKind.HIDDEN] if line[0] == line[2]]) == 2


def test_through_a_hole_one_sees_what_is_behind() -> None:
    holed = stood("near", board(convex((40, 80), (-1, 46), (4, 16))), 0, 0, 0)
    post = stood("far", board(size=(6, 6, 50)), 57, 70, -10)
    found = drawn(holed, post, view=FRONT)
    assert (57, 4, 57, 16) in found[LineKind.OUTLINE]
    assert (63, 4, 63, 16) in found[LineKind.OUTLINE]
    assert (57, 0, 57, 4) in found[LineKind.HIDDEN]


def test_a_mirrored_solid_is_seen_as_it_stands() -> None:
    notched = board(convex((80, 121), (-1, 12), (-1, 21)))
    turn = Turn(axes=(0, 1, 2), signs=(-1, 1, 1), at=(F(120), F(0), F(0)))
    found = drawn(Placed(name="a", solid=notched, turn=turn), view=ABOVE)
    assert (0, 12, 40, 12) in found[LineKind.OUTLINE]
    assert (40, 0, 120, 0) in found[LineKind.OUTLINE]


SCENE = (
    stood("a", board(convex((30, 51), (14, 46), (-1, 6))), 0, 0, 0),
    stood("b", board(hole(centre=(60, 20), radius=4, deep=(-1, 21))), 13, 50, 31),
    stood("c", board(size=(21, 90, 70)), 30, 14, -64),
)


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_the_order_of_solids_does_not_show(order: tuple[int, int, int]) -> None:
    wanted = lines(SCENE, view=OBLIQUE, store=Store())
    assert lines([SCENE[i] for i in order], view=OBLIQUE, store=Store()) == wanted


@given(shift=st.integers(min_value=-500, max_value=500))
def test_nearer_or_further_looks_the_same(shift: int) -> None:
    view = View(eye=(-2.0, -3.0, 1.0))
    by = (-2 * shift, -3 * shift, shift)
    moved = [
        stood(each.name, each.solid, *(a + b for a, b in zip(each.turn.at, by, strict=True)))
        for each in SCENE
    ]
    assert near(lines(moved, view=view, store=Store()), lines(SCENE, view=view, store=Store()))


def near(one: tuple[Line, ...], other: tuple[Line, ...]) -> bool:
    kinds = [line.kind for line in one] == [line.kind for line in other]
    ends = [[np.array([line.points for line in found]) for found in (one, other)]]
    return kinds and bool(np.abs(ends[0][0] - ends[0][1]).max() < 2e-3)


@pytest.mark.parametrize("eye", [(0.0, 0.0, 0.0), (0.0, 0.0, 5.0)])
def test_an_eye_that_cannot_see_up_is_refused(eye: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRangeError, match="cannot see"):
        View(eye=eye)


def test_nothing_to_see_is_no_line() -> None:
    assert lines([], view=OBLIQUE, store=Store()) == ()
