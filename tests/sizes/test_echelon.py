"""Elimination against plain substitution of its own results."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from scantling.sizes.echelon import Echelon

UNKNOWNS = 5
ROW = st.dictionaries(
    st.integers(0, UNKNOWNS - 1), st.integers(-4, 4).filter(bool), min_size=1, max_size=4
)
ROWS = st.lists(st.tuples(ROW, st.integers(-30, 30)), min_size=1, max_size=9)


def eliminated(rows: list[tuple[dict[int, int], int]]) -> Echelon:
    echelon = Echelon([0] * UNKNOWNS)
    for row, _ in rows:
        echelon.offer(row)
    return echelon


def sums(row: dict[int, int], values: list[Fraction]) -> Fraction:
    return sum((c * values[v] for v, c in row.items()), Fraction(0))


@given(ROWS)
def test_every_kept_row_is_met_and_open_ends_are_what_is_missing(
    rows: list[tuple[dict[int, int], int]],
) -> None:
    echelon = eliminated(rows)

    found, scale, ends = echelon.values([constant for _, constant in rows])

    values = [Fraction(value, scale) for value in found]
    for n, (row, constant) in enumerate(rows):
        missing = sums(row, values) + constant
        assert bool(missing) == (n in ends)
        assert not (missing and echelon.kept(n))


@given(ROWS)
def test_a_dependent_row_is_the_combination_it_says(rows: list[tuple[dict[int, int], int]]) -> None:
    echelon = eliminated(rows)

    for n, (row, _) in enumerate(rows):
        if echelon.kept(n):
            continue
        made = [Fraction(0)] * UNKNOWNS
        for other, factor in echelon.combination(n).items():
            assert echelon.kept(other)
            for v, c in rows[other][0].items():
                made[v] += factor * c
        assert made == [row.get(v, 0) for v in range(UNKNOWNS)]


@given(ROWS)
def test_a_row_offered_again_says_nothing_new(rows: list[tuple[dict[int, int], int]]) -> None:
    echelon = eliminated(rows)

    assert not any(echelon.offer(row) for row, _ in rows)
    assert len(echelon.rows) + len(echelon.unsettled(UNKNOWNS)) == UNKNOWNS
