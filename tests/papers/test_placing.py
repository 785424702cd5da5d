"""Figures beside an outline: never over each other, never out of order."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.papers._drawing.placing import APART, Mark, Side, chain, drawn_chain, spread

PLACES = st.lists(st.floats(min_value=0, max_value=200), max_size=30).map(sorted)


def test_figures_with_room_stand_at_their_marks() -> None:
    assert spread([0.0, 5.0, 11.0], apart=4.0) == [0.0, 5.0, 11.0]


def test_two_figures_too_near_give_way_alike() -> None:
    assert spread([10.0, 11.0], apart=4.0) == pytest.approx([8.5, 12.5])


def test_a_crowd_stands_round_its_own_middle() -> None:
    # three at 10, 11 and 15: the middle of 10, 11 - 4 and 15 - 8 is 8
    assert spread([10.0, 11.0, 15.0], apart=4.0) == pytest.approx([8.0, 12.0, 16.0])


@given(wanted=PLACES)
def test_figures_keep_their_order_and_their_distance(wanted: list[float]) -> None:
    found = spread(wanted)
    assert all(b - a >= APART - 1e-9 for a, b in pairwise(found))


@given(wanted=PLACES, by=st.floats(min_value=-50, max_value=50))
def test_nothing_else_that_keeps_the_distance_is_nearer(wanted: list[float], by: float) -> None:
    # any other order of places that keeps the distance moves figures further, in squares
    found = np.array(spread(wanted))
    other = np.array(spread([place + by * (i % 3) for i, place in enumerate(wanted)]))
    assert np.square(found - wanted).sum() <= np.square(other - wanted).sum() + 1e-6


def test_every_figure_is_led_back_to_its_own_mark() -> None:
    marks = [Mark(at=at, says=says) for at, says in ((9.0, "c"), (3.0, "a"), (4.0, "b"))]
    strokes, texts = drawn_chain(chain(marks, start=0.0), Side(upright=True, out=1, edge=50.0))
    assert [text.says for text in texts] == ["a", "b", "c"]
    led = {s.points[0][1]: s.points[-1] for s in strokes if len(s.points) == 3}
    for at, text in zip((3.0, 4.0, 9.0), texts, strict=True):
        assert led[at][1] == pytest.approx(text.at[1])
        assert 0 < text.at[0] - led[at][0] < 1


@pytest.mark.parametrize("upright", [True, False])
@pytest.mark.parametrize("out", [1, -1])
def test_a_chain_stands_wholly_outside(upright: bool, out: int) -> None:  # noqa: FBT001 - a case
    side = Side(upright=upright, out=out, edge=7.0)
    found = chain([Mark(at=3.0, says="3"), Mark(at=40.0, says="40")], start=0.0)
    strokes, texts = drawn_chain(found, side)
    axis = 0 if upright else 1
    across = [spot[axis] for stroke in strokes for spot in stroke.points]
    across += [end for text in texts for end in (text.box[axis], text.box[axis + 2])]
    assert all(out * (each - 7.0) > 0 for each in across)
