"""True priorities: each level is settled before the next is looked at.

The reference here is brute force: every set of marks within reach is tried, and the best by the
written order of levels kept. It shares no code with the solver.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from unittest.mock import patch

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sizes.cupboards import GRID, INCH, Draft, says

from scantling.sizes.linear import Linear, total
from scantling.sizes.model import Relations, Yields
from scantling.sizes.solving import solve

REACH = 9  # [graduations] brute force tries 1 to this
NAMES = ("rail.width", "stile.width", "panel.width")


def marks(count: Fraction | int) -> Linear:
    return Linear((), count * GRID)


def sized(relations: Relations, stated: dict[str, int]) -> dict[str, Fraction]:
    lines = [says(name, count * GRID / INCH) for name, count in stated.items()]
    solved = solve(relations, stated=lines, grid=GRID)
    return {name: value / GRID for name, value in solved.sizes.items()}


def test_one_rule_outweighs_any_number_of_habits() -> None:
    # Six habits would hold if the rule gave way; a weight below six would let it.
    d = Draft()
    whole, rule = d.size("whole.wide"), d.size("middle.width")
    others = [d.size(f"slat {i}.width") for i in range(6)]
    d.equal(whole, total([rule, *others]), "slats and middle fill the width")
    d.rule(rule, marks(20), "the middle is a third of the width")
    for other in others:
        d.usual(other, marks(7))

    found = sized(d.relations(), {"whole.wide": 20 + 6 * 7 + 6})

    assert found["middle.width"] == 20
    assert sum(found[f"slat {i}.width"] != 7 for i in range(6)) == 1


def test_one_habit_changed_by_much_is_better_than_two_changed_by_little() -> None:
    # The sum of changes alone would rather have 1 + 1 than 40 + 0.
    d = Draft()
    first, second, third = (d.size(f"{n} gap.width") for n in ("first", "second", "third"))
    d.equal(d.size("left sum.wide"), first + second, "left")
    d.equal(d.size("right sum.wide"), first + third, "right")
    for gap, usual in ((first, 50), (second, 60), (third, 70)):
        d.usual(gap, marks(usual))

    found = sized(d.relations(), {"left sum.wide": 150, "right sum.wide": 160})

    assert [found[f"{n} gap.width"] for n in ("first", "second", "third")] == [90, 60, 70]


def test_a_season_bound_outweighs_an_alike_group_however_far_it_spreads() -> None:
    d = Draft()
    pair = [d.size("left.wide"), d.size("right.wide")]
    gap = d.gap("gap.wide")
    d.equal(d.size("opening.wide"), total([*pair, gap]), "leaves and gap")
    d.same(["left.wide", "right.wide"], "a pair", "right.wide")
    d.usual(gap, marks(1))
    d.at_least(gap - marks(2), "the leaves swell", Yields.SEASON)

    found = sized(d.relations(), {"opening.wide": 500, "left.wide": 230})

    assert found["gap.wide"] == 40
    assert found["right.wide"] == 230

    found = sized(d.relations(), {"opening.wide": 463, "left.wide": 230})

    assert found["gap.wide"] == 3
    assert found["right.wide"] == 230
    found = sized(d.relations(), {"opening.wide": 461, "left.wide": 230})

    assert found["gap.wide"] == 2
    assert found["right.wide"] == 229


def test_the_later_named_of_two_equal_habits_gives_way() -> None:
    d = Draft()
    first, second = d.size("first.width"), d.size("second.width")
    d.equal(d.size("whole.wide"), first + second, "two boards")
    d.usual(first, marks(8))
    d.usual(second, marks(9))

    found = sized(d.relations(), {"whole.wide": 20})

    assert found["first.width"] == 8
    assert found["second.width"] == 12


@dataclass(frozen=True)
class Puzzle:
    """Three sizes with a sum, an alike pair, a bound, rules and habits, all in graduations."""

    whole: int
    weights: tuple[int, int, int]
    alike: tuple[int, int]
    at_least: tuple[int, int]  # which size, season bound
    rule: tuple[int, int]
    habits: tuple[tuple[int, int], ...]

    def relations(self) -> Relations:
        d = Draft()
        sizes = [d.size(name) for name in NAMES]
        weighed = total(w * size for w, size in zip(self.weights, sizes, strict=True))
        d.equal(weighed, marks(self.whole), "they make the whole")
        a, b = self.alike
        d.same([NAMES[a], NAMES[b]], "alike", NAMES[b])
        which, least = self.at_least
        d.at_least(sizes[which] - marks(least), "swells", Yields.SEASON)
        d.rule(sizes[self.rule[0]], marks(self.rule[1]), "proportion")
        for which, usual in self.habits:
            d.usual(sizes[which], marks(usual))
        return d.relations()

    def cost(self, sizes: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
        """What is to be least, in the written order: season, alike, rules, habits."""
        which, least = self.at_least
        rule = abs(sizes[self.rule[0]] - self.rule[1])
        habits = [abs(sizes[n] - usual) for n, usual in self.habits]
        return (
            max(Fraction(0), least - sizes[which]),
            abs(sizes[self.alike[0]] - sizes[self.alike[1]]),
            Fraction(rule != 0),
            rule,
            Fraction(sum(by != 0 for by in habits)),
            sum(habits, Fraction(0)),
            *(Fraction(by != 0) for by in habits),
        )

    def on_the_tape(self) -> Iterator[tuple[Fraction, ...]]:
        for counts in product(range(1, REACH + 1), repeat=3):
            if sum(w * c for w, c in zip(self.weights, counts, strict=True)) == self.whole:
                yield tuple(Fraction(c) for c in counts)


WHICH = st.integers(0, 2)
USUAL = st.integers(1, 7)


@st.composite
def puzzles(draw: st.DrawFn) -> Puzzle:
    a, b = draw(st.sampled_from([(0, 1), (0, 2), (1, 2)]))
    order = draw(st.permutations([0, 1, 2]))
    return Puzzle(
        whole=draw(st.integers(7, 16)),
        weights=(1, draw(st.integers(1, 3)), draw(st.integers(1, 2))),
        alike=(a, b),
        at_least=(draw(WHICH), draw(st.integers(1, 4))),
        rule=(draw(WHICH), draw(USUAL)),
        habits=tuple((n, draw(USUAL)) for n in order),
    )


@settings(max_examples=40, deadline=None)
@given(puzzles())
def test_the_short_way_of_one_habit_ends_where_the_long_way_does(puzzle: Puzzle) -> None:
    quick = sized(puzzle.relations(), {})
    with patch("scantling.sizes.search.closed_by_one", return_value=None):
        long = sized(puzzle.relations(), {})

    assert quick == long


@settings(max_examples=60, deadline=None)
@given(puzzles())
def test_no_set_of_marks_is_better_than_the_solved_one(puzzle: Puzzle) -> None:
    best = min(map(puzzle.cost, puzzle.on_the_tape()), default=None)

    solved = sized(puzzle.relations(), {})
    found = tuple(solved[name] for name in NAMES)

    if best is not None:
        assert all(size.denominator == 1 for size in found)
    if best is not None and max(found) <= REACH:
        assert puzzle.cost(found) == best


def _row_of(whole: int, leasts: tuple[int, ...], most_of_first: int) -> Relations:
    d = Draft()
    names = [f"board {n + 1}.width" for n in range(len(leasts))]
    boards = [d.size(name) for name in names]
    d.equal(total(boards), marks(whole), "they fill the opening")
    d.same(names, "boards of a row are alike", names[-1])
    for board, least in zip(boards, leasts, strict=True):
        d.at_least(board - marks(least), "swells", Yields.SEASON)
    d.at_least(marks(most_of_first) - boards[0], "room for the nail", Yields.SEASON)
    return d.relations()


def _cost_of_row(
    sizes: tuple[int, ...], leasts: tuple[int, ...], most_of_first: int
) -> tuple[object, ...]:
    """What decision 01 asks to be least of a row of alike boards, in its order."""
    short = [max(0, least - size) for size, least in zip(sizes, leasts, strict=True)]
    short.append(max(0, sizes[0] - most_of_first))
    apart = [abs(size - sizes[0]) for size in sizes[1:]]
    others = sizes[:-1]
    return (
        sum(short),
        max(sizes) - min(sizes),
        max(others) - min(others),
        sum(apart),
        *apart,
        *short,
    )


@settings(max_examples=30, deadline=None)
@given(
    st.integers(18, 34),
    st.tuples(*[st.integers(1, 8)] * 4),
    st.integers(3, 9),
)
def test_a_row_of_boards_is_alike_as_every_row_on_the_tape_tried_in_turn(
    whole: int, leasts: tuple[int, ...], most_of_first: int
) -> None:
    solved = solve(_row_of(whole, leasts, most_of_first), grid=GRID)
    found = tuple(int(solved.sizes[f"board {n + 1}.width"] / GRID) for n in range(4))
    rows = (row for row in product(range(1, 16), repeat=4) if sum(row) == whole)
    best = min(_cost_of_row(row, leasts, most_of_first) for row in rows)
    assert _cost_of_row(found, leasts, most_of_first) == best
