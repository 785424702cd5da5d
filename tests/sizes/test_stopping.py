"""A search that is told to end has sizes that hold, and says that better ones may be left."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest
from tests.sizes.cupboards import GRID, front, says

from scantling.sizes.answer import Solved
from scantling.sizes.model import Relations, Stated, Yields
from scantling.sizes.solving import solve
from scantling.sizes.stopping import CountedWork, TimedWork

RELATIONS = front(2)
# An odd width that no two equal openings share on the tape, and a drawer no bay has room for.
UNUSUAL = [says("case.wide", "71 19/64"), says("case.tall", "36 77/100")]
CLASHING = [*UNUSUAL, says("mullion 1.width", "80"), says("drawer 1 left.gap top", "40")]
ODD = [says("case.wide", "36 1/64"), says("case.tall", "36")]  # soon proven
LATER = [pytest.param(most, marks=pytest.mark.slow) for most in (2, 3, 8, 13, 34)]
LEFT_OFF = "sizes.not-looked-through"


@cache
def proven() -> Solved:
    """The answer that nothing has hurried."""
    return solve(RELATIONS, stated=ODD, grid=GRID)


def holds(relations: Relations, solved: Solved) -> list[str]:
    """What does not hold of equations and physical bounds, added up by themselves."""

    def total(terms: tuple[tuple[str, Fraction], ...], constant: Fraction) -> Fraction:
        return constant + sum((c * solved.sizes[name] for name, c in terms), Fraction(0))

    open_ends = [e.because for e in relations.equations if total(e.sum.terms, e.sum.constant) != 0]
    broken = [
        b.because
        for b in relations.bounds
        if b.yields is Yields.NEVER and total(b.sum.terms, b.sum.constant) < 0
    ]
    small = [
        d.name
        for d in relations.dimensions
        if d.least is not None and solved.sizes[d.name] < d.least
    ]
    return [*open_ends, *broken, *small]


@pytest.mark.parametrize("stated", [UNUSUAL, CLASHING], ids=["unusual", "clashing"])
@pytest.mark.parametrize("most", [0, 1, 5, 21, *LATER])
def test_wherever_it_ends_the_sizes_hold(stated: list[Stated], most: int) -> None:
    stop = CountedWork(most=most)
    solved = solve(RELATIONS, stated=stated, grid=GRID, stop=stop)
    assert holds(RELATIONS, solved) == []
    assert LEFT_OFF in {f.code for f in solved.findings}
    lost = {conflict.given_up for conflict in solved.conflicts}
    for line in stated:
        assert line.name in lost or solved.sizes[line.name] == line.value


def test_with_work_to_spare_the_answer_is_the_proven_one() -> None:
    stop = CountedWork(most=100_000)
    solved = solve(RELATIONS, stated=ODD, grid=GRID, stop=stop)
    assert 0 < stop.done < 100_000
    assert solved.sizes == proven().sizes
    assert solved.findings == proven().findings
    assert LEFT_OFF not in {f.code for f in solved.findings}


def test_counted_work_ends_at_the_same_place_each_time() -> None:
    one, other = (
        solve(RELATIONS, stated=UNUSUAL, grid=GRID, stop=CountedWork(most=9)) for _ in range(2)
    )
    assert one.sizes == other.sizes


def test_a_stopped_answer_is_looked_at_again_when_there_is_time() -> None:
    hurried = solve(RELATIONS, stated=ODD, grid=GRID, stop=CountedWork(most=1))
    again = solve(RELATIONS, stated=ODD, grid=GRID, before=hurried)
    assert again.sizes == proven().sizes


def test_a_clock_that_has_run_out_ends_the_search() -> None:
    told = iter(range(1_000_000))
    stop = TimedWork(most=100_000, until=3.0, clock=lambda: float(next(told)))
    solved = solve(RELATIONS, stated=UNUSUAL, grid=GRID, stop=stop)
    assert holds(RELATIONS, solved) == []
    assert LEFT_OFF in {f.code for f in solved.findings}
