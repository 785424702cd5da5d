"""An earlier answer saves work and changes nothing."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sizes.cupboards import GRID, front, says

from scantling.sizes.answer import Solved
from scantling.sizes.model import Stated
from scantling.sizes.solving import solve

RELATIONS = front(2)

LINES = st.fixed_dictionaries(
    {
        "case.wide": st.integers(60 * 32, 90 * 32).map(lambda n: f"{n}/32"),
        "case.tall": st.integers(30 * 32, 40 * 32).map(lambda n: f"{n}/32"),
    },
    optional={
        "mullion 1.width": st.sampled_from(["1 1/2", "1 17/32", "2"]),
        "door 2 left left stile.width": st.sampled_from(["2", "2 1/4"]),
        "drawer 1 left.gap top": st.sampled_from(["1/8", "3/32"]),
    },
)


def lines(given: dict[str, str]) -> list[Stated]:
    return [says(name, value) for name, value in given.items()]


def told(solved: Solved) -> tuple[object, ...]:
    sizes = [solved.sizes.size(name) for name in solved.sizes]
    return sizes, solved.conflicts, solved.breaches, solved.findings


@settings(max_examples=5, deadline=None)
@given(st.lists(LINES, min_size=2, max_size=3))
def test_an_answer_built_on_an_earlier_one_is_the_same_as_a_cold_one(
    edits: list[dict[str, str]],
) -> None:
    before = None
    for edit in edits:
        before = solve(RELATIONS, stated=lines(edit), grid=GRID, before=before)
        cold = solve(RELATIONS, stated=lines(edit), grid=GRID)
        assert told(before) == told(cold)


def test_what_an_edit_does_not_touch_is_not_searched_again() -> None:
    odd = {"case.wide": "84 3/32", "case.tall": "37", "mullion 1.width": "1 17/32"}
    first = solve(RELATIONS, stated=lines(odd), grid=GRID)
    taller = {**odd, "case.tall": "36"}

    again = solve(RELATIONS, stated=lines(taller), grid=GRID, before=first)

    assert first.trail.solves > 0
    assert again.trail.solves == 0
    assert told(again) == told(solve(RELATIONS, stated=lines(taller), grid=GRID))


def test_an_ordinary_edit_needs_no_solver() -> None:
    first = solve(RELATIONS, stated=lines({"case.wide": "84", "case.tall": "37"}), grid=GRID)

    edit = lines({"case.wide": "86", "case.tall": "37"})
    second = solve(RELATIONS, stated=edit, grid=GRID, before=first)

    assert second.trail.solves == 0
    assert second.trail.shape is first.trail.shape
