"""Lengths left out of a drawing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.papers._drawing.broken import GAP, LEFT, Run, broken


def test_what_is_near_an_end_keeps_its_scale() -> None:
    run = broken([0.0, 30.0, 970.0, 1000.0], scale=2)
    assert run(30.0) - run(0.0) == pytest.approx(15.0)
    assert run(1000.0) - run(970.0) == pytest.approx(15.0)
    # 15 and 15 of the ends, what is kept beside them, and the gap between two break lines
    assert run(1000.0) == pytest.approx(15 + 15 + 2 * LEFT + GAP)
    ((low, high),) = run.breaks
    assert high - low == pytest.approx(GAP)


def test_a_stretch_too_short_to_be_worth_it_is_drawn() -> None:
    assert broken([0.0, 30.0, 60.0], scale=1).left_out == ()


def test_a_line_through_a_break_is_drawn_on_both_sides() -> None:
    run = Run(scale=1, left_out=((100.0, 300.0),))
    assert run.kept(low=50.0, high=400.0) == [(50.0, 100.0), (300.0, 400.0)]
    assert run.kept(low=150.0, high=400.0) == [(300.0, 400.0)]
    assert run.kept(low=0.0, high=60.0) == [(0.0, 60.0)]


@given(
    places=st.lists(st.floats(min_value=0, max_value=2000), min_size=2, max_size=12),
    ends=st.tuples(st.floats(min_value=0, max_value=2000), st.floats(min_value=0, max_value=2000)),
    scale=st.integers(min_value=1, max_value=10),
)
def test_further_along_the_wood_is_further_along_the_paper(
    places: list[float], ends: tuple[float, float], scale: int
) -> None:
    run = broken(places, scale=scale)
    low, high = sorted(ends)
    assert run(low) <= run(high) + 1e-9
    assert run(high) - run(low) <= (high - low) / scale + 1e-6
