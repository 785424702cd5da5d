"""Choices and sizes in turn, until neither changes the other.

Tool sizes, counts of tails, numbers of boards are chosen, not solved; they decide which
relations there are, and the sizes that follow may ask for another choice.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from scantling.errors import InternalError
from scantling.findings import Finding, Weight
from scantling.sizes.answer import Solved
from scantling.sizes.model import Relations

ROUNDS = 8  # more is an error: some joint changes its mind for ever

Choice = TypeVar("Choice")


@dataclass(frozen=True, kw_only=True)
class Settled(Generic[Choice]):
    """A choice and the sizes that go with it."""

    choice: Choice
    solved: Solved
    rounds: int
    findings: tuple[Finding, ...] = ()


def settle(
    first: Choice,
    relations_of: Callable[[Choice], Relations],
    choose: Callable[[Solved, Choice], Choice],
    *,
    solved_for: Callable[[Relations, Solved | None], Solved],
    before: Solved | None = None,
    rounds: int = ROUNDS,
) -> Settled[Choice]:
    """Choose, solve and choose again until the choice stays.

    Args:
        first: Where to begin. Choices are compared with `==`.
        relations_of: Relations under a choice.
        choose: The choice for solved sizes; it should keep the given one while it may.
        solved_for: Solves relations; the earlier answer is passed along for re-use.
        before: An earlier answer.
        rounds: How many rounds at most.

    Returns:
        The settled choice. If choices come round in a ring, the earliest of the ring, with a
        finding that says so.

    Raises:
        InternalError: Choices still change after the last round.
    """
    seen: list[tuple[Choice, Solved]] = []
    choice, last = first, before
    for turn in range(1, rounds + 1):
        solved = last = solved_for(relations_of(choice), last)
        seen.append((choice, solved))
        chosen = choose(solved, choice)
        if chosen == choice:
            return Settled(choice=choice, solved=solved, rounds=turn)
        for again, (known, its_sizes) in enumerate(seen):
            if chosen == known:
                ring = len(seen) - again
                return Settled(choice=known, solved=its_sizes, rounds=turn, findings=(_ring(ring),))
        choice = chosen
    raise InternalError(f"choices still change after {rounds} rounds: {choice!r}")


def _ring(length: int) -> Finding:
    return Finding(
        code="sizes.choices-turn",
        weight=Weight.NOTE,
        says=f"{length} choices of joints and forms ask for each other in a ring; the first"
        " was kept.",
        cure="State the choice to have another.",
    )
