"""Whole-number reasoning against trying every number."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.sizes.lattice import cores, lattice
from scantling.sizes.shape import Expression

ONE = Fraction(1)
PARTS = st.sampled_from([Fraction(n, d) for n in (-2, -1, 1, 2, 3) for d in (1, 2, 3)])
START = st.sampled_from([Fraction(n, 6) for n in range(-6, 7)])
SUMS = st.tuples(START, PARTS, PARTS)


def moving(start: Fraction, *weights: Fraction) -> Expression:
    return Expression(start, tuple((row, c) for row, c in enumerate(weights) if c))


TWO_WHOLE = [moving(Fraction(0), ONE, Fraction(0)), moving(Fraction(0), Fraction(0), ONE)]


@settings(max_examples=200, deadline=None)
@given(SUMS, SUMS)
def test_marks_fit_exactly_when_some_numbers_within_a_period_do(
    one: tuple[Fraction, Fraction, Fraction], other: tuple[Fraction, Fraction, Fraction]
) -> None:
    (s1, a1, b1), (s2, a2, b2) = one, other
    tried = any(
        (s1 + a1 * k + b1 * m).denominator == 1 and (s2 + a2 * k + b2 * m).denominator == 1
        for k, m in product(range(6), repeat=2)
    )

    held = lattice([], [*TWO_WHOLE, moving(s1, a1, b1), moving(s2, a2, b2)], grid=ONE)

    assert held.is_empty is not tried


@settings(max_examples=200, deadline=None)
@given(SUMS, SUMS)
def test_the_least_distance_is_that_of_the_best_numbers(
    one: tuple[Fraction, Fraction, Fraction], other: tuple[Fraction, Fraction, Fraction]
) -> None:
    (s1, a1, b1), (s2, a2, b2) = one, other
    held = lattice([], [*TWO_WHOLE, moving(s1, a1, b1)], grid=ONE)
    fitting = [
        abs(s2 + a2 * k + b2 * m)
        for k, m in product(range(-24, 25), repeat=2)
        if (s1 + a1 * k + b1 * m).denominator == 1
    ]

    if fitting:
        assert held.nearest_to_zero(moving(s2, a2, b2)) == min(fitting)


def test_an_odd_number_is_never_twice_a_whole_one() -> None:
    odd = moving(Fraction(-21), Fraction(2))

    assert lattice([odd], [moving(Fraction(0), ONE)], grid=ONE).is_empty
    assert not lattice(
        [moving(Fraction(-22), Fraction(2))], [moving(Fraction(0), ONE)], grid=ONE
    ).is_empty


def test_what_moves_freely_can_come_to_zero() -> None:
    assert lattice([], [], grid=ONE).nearest_to_zero(moving(Fraction(1, 3), ONE)) == 0


def test_cores_are_disjoint_and_without_idle_members() -> None:
    clashing = [{2, 5}, {1, 3, 6}]

    found = cores(range(8), lambda some: not any(clash <= set(some) for clash in clashing))

    assert sorted(map(sorted, found)) == [[1, 3, 6], [2, 5]]
