"""Any full set of solved sizes, stated instead, gives the same piece."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.sizes.cupboards import GRID, front, stated
from tests.sizes.truth import differences, full_sets

from scantling.sizes.model import Relations
from scantling.sizes.solving import solve

OWN = stated(case__wide="42", case__tall="37")


@pytest.mark.parametrize(("bays", "wide"), [(1, "42"), (2, "84 3/32")])
def test_random_full_sets_give_the_same_front(bays: int, wide: str) -> None:
    relations = front(bays)
    drawn = solve(relations, stated=stated(case__wide=wide, case__tall="37"), grid=GRID)

    for given in full_sets(relations, drawn, seed=bays, count=25):
        assert differences(relations, drawn, given) == []


def test_every_size_of_the_front_is_stated_in_some_set() -> None:
    relations = front()
    drawn = solve(relations, stated=OWN, grid=GRID)

    seen = {line.name for given in full_sets(relations, drawn, seed=7, count=40) for line in given}

    assert seen == set(drawn.sizes)


def test_a_set_has_as_many_lines_as_the_front_has_freedoms() -> None:
    relations = front()
    drawn = solve(relations, stated=OWN, grid=GRID)

    (given,) = full_sets(relations, drawn, seed=3, count=1)

    # No equation of the front follows from the others.
    assert len(given) == len(relations.dimensions) - len(relations.equations)


def without(relations: Relations, number: int) -> Relations:
    left = relations.equations[:number] + relations.equations[number + 1 :]
    return replace(relations, equations=left)


@pytest.mark.parametrize("number", range(0, 51, 5))
def test_a_dropped_equation_is_caught(number: int) -> None:
    relations = front()
    drawn = solve(relations, stated=OWN, grid=GRID)
    planted = without(relations, number)

    caught = [
        differences(planted, drawn, given)
        for given in full_sets(relations, drawn, seed=number, count=3)
    ]

    assert all(caught)
