"""What is searched once for many that are alike is what each would have had by itself."""

from __future__ import annotations

from collections.abc import Hashable
from fractions import Fraction
from unittest.mock import patch

import pytest
from tests.sizes.cupboards import GRID, Draft
from tests.sizes.test_priorities import marks

from scantling.sizes.certificate import Case
from scantling.sizes.knot import Knot
from scantling.sizes.likeness import likeness
from scantling.sizes.linear import total
from scantling.sizes.model import Kind, Relations, Yields
from scantling.sizes.solving import solve

# of each row: width, and how it differs from the plain one
ROWS = {
    "plain": (43, ""),
    "twin": (43, ""),
    "triplet": (43, ""),
    "wider": (45, ""),
    "a habit": (43, "habit"),
    "a rule": (43, "rule"),
    "never": (43, "never"),
    "no tape": (43, "free"),
}


def row(name: str, whole: int, differs: str) -> Draft:
    """Four boards, alike if they may, in an opening that they cannot fill evenly."""
    d = Draft()
    names = [f"{name} board {n + 1}.width" for n in range(4)]
    kind = Kind.FOLLOWS if differs == "free" else Kind.TAPE
    boards = [d.size(each, kind) for each in names]
    d.equal(total(boards), marks(whole), "they fill the opening")
    d.same(names, "boards of a row are alike", names[-1])
    yields = Yields.NEVER if differs == "never" else Yields.SEASON
    d.at_least(boards[1] - marks(12), "swells", yields)
    d.at_least(marks(Fraction(21, 2)) - boards[3], "room for the nail", Yields.SEASON)
    if differs == "rule":
        d.rule(boards[2], marks(9), "a narrow third")
    if differs == "habit":
        d.usual(boards[2], marks(9))
    return d


def widths(relations: Relations) -> dict[str, Fraction]:
    return dict(solve(relations, grid=GRID).sizes.items())


def together(names: list[str]) -> Relations:
    return Relations.joined(row(name, *ROWS[name]).relations() for name in names)


def test_rows_side_by_side_come_out_as_each_would_alone() -> None:
    alone: dict[str, Fraction] = {}
    for name, (whole, differs) in ROWS.items():
        alone |= widths(row(name, whole, differs).relations())
    assert widths(together(list(ROWS))) == alone
    assert widths(together(list(reversed(ROWS)))) == alone


def test_three_that_are_alike_are_searched_for_once() -> None:
    one = solve(together(["plain"]), grid=GRID).trail.solves
    assert one > 0
    assert solve(together(["plain", "twin", "triplet"]), grid=GRID).trail.solves == one
    assert solve(together(["plain", "wider"]), grid=GRID).trail.solves > one


@pytest.mark.parametrize("name", [name for name in ROWS if ROWS[name] != ROWS["plain"]])
def test_what_differs_is_not_taken_for_the_same(name: str) -> None:
    seen = set()

    def noted(case: Case, knot: Knot) -> Hashable:
        seen.add(likeness(case, knot))
        return object()

    with patch("scantling.sizes.search.likeness", noted):
        solve(together(["plain", name]), grid=GRID)
    assert len(seen) == 2
