"""Choices and sizes in turn."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import pytest
from tests.sizes.cupboards import GRID, INCH, Draft, inch, says

from scantling.errors import InternalError
from scantling.sizes.answer import Solved
from scantling.sizes.model import Relations
from scantling.sizes.settle import settle
from scantling.sizes.solving import solve

CHISELS = [inch("1/4"), inch("5/16"), inch("3/8"), inch("1/2")]


@dataclass(frozen=True)
class Chisel:
    """The chisel that a mortise is chopped with."""

    width: Fraction


def solved_for(relations: Relations, before: Solved | None) -> Solved:
    return solve(relations, stated=[says("frame.wide", "9")], grid=GRID, before=before)


def joined(chisel: Chisel) -> Relations:
    """A stile is what a panel leaves; the panel is wider for a wider tenon."""
    d = Draft()
    wide, stile, panel = d.size("frame.wide"), d.size("stile.width"), d.size("panel.width")
    d.equal(wide, stile + panel, "stile and panel")
    d.usual(panel, Fraction(8) + chisel.width / INCH / 2)  # type: ignore[arg-type]  # a number reads as inches
    return d.relations()


def nearest_third(solved: Solved, _: Chisel) -> Chisel:
    third = solved.sizes["stile.width"] / 3
    return Chisel(min(CHISELS, key=lambda width: (abs(width - third), width)))


def test_a_tool_is_chosen_again_until_the_sizes_keep_it() -> None:
    found = settle(Chisel(inch("1/2")), joined, nearest_third, solved_for=solved_for)

    # 1/2 leaves 3/4 of stile, a third of which is 1/4; 1/4 leaves 7/8, nearer 5/16 (0.292);
    # 5/16 leaves 27/32, a third 0.281: the tie of 1/4 and 5/16 goes to the smaller: 1/4.
    assert found.choice in (Chisel(inch("1/4")), Chisel(inch("5/16")))
    assert found.solved.sizes["stile.width"] == inch(1) - found.choice.width / 2


def test_a_choice_that_stays_takes_one_round() -> None:
    found = settle(Chisel(inch("3/8")), joined, lambda _, choice: choice, solved_for=solved_for)

    assert (found.rounds, found.findings) == (1, ())


def test_choices_in_a_ring_keep_the_earliest_and_say_so() -> None:
    after = {inch("1/2"): inch("3/8"), inch("3/8"): inch("1/4"), inch("1/4"): inch("3/8")}

    found = settle(
        Chisel(inch("1/2")),
        joined,
        lambda _, choice: Chisel(after[choice.width]),
        solved_for=solved_for,
    )

    assert found.choice == Chisel(inch("3/8"))
    assert found.solved.sizes["stile.width"] == inch(1) - inch("3/16")
    (finding,) = found.findings
    assert finding.code == "sizes.choices-turn"


def test_choices_that_never_rest_are_an_error_after_eight_rounds() -> None:
    seen: list[Chisel] = []

    def restless(_: Solved, choice: Chisel) -> Chisel:
        seen.append(choice)
        return Chisel(choice.width + GRID)

    with pytest.raises(InternalError, match="8 rounds"):
        settle(Chisel(inch("1/4")), joined, restless, solved_for=solved_for)
    assert len(seen) == 8
