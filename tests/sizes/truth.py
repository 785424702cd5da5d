"""The test of truth: state other sizes of the same piece, and the same piece must come out.

A piece has as many freedoms as it has sizes less independent equations. Any so many of its
solved sizes that determine the rest are a full set; stated in place of the maker's own lines,
they must give every size back.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from scantling.errors import InternalError
from scantling.sizes.answer import Solved
from scantling.sizes.echelon import Echelon, whole
from scantling.sizes.model import Origin, Relations, Stated
from scantling.sizes.solving import solve


@dataclass(frozen=True)
class Difference:
    """A size that did not come out the same, or came by a habit though all was stated."""

    name: str
    drawn: str
    found: str


def full_sets(
    relations: Relations, solved: Solved, *, seed: int, count: int
) -> Iterator[list[Stated]]:
    """Random full sets of solved sizes; any dimension may be in one."""
    chance = random.Random(seed)  # noqa: S311 - which sizes are drawn is no secret
    names = [d.name for d in relations.dimensions]
    at = {name: i for i, name in enumerate(names)}
    for _ in range(count):
        echelon = _of_equations(relations, at)
        order = chance.sample(names, len(names))
        yield [
            Stated(name=name, value=solved.sizes[name])
            for name in order
            if echelon.offer({at[name]: 1})
        ]


def _of_equations(relations: Relations, at: Mapping[str, int]) -> Echelon:
    echelon = Echelon([0] * len(at))
    for equation in relations.equations:
        echelon.offer(whole([(at[n], c) for n, c in equation.sum.terms])[0])
    return echelon


def left_free(relations: Relations, stated: Sequence[Stated]) -> int:
    """How many sizes could still be anything: none, where a full set is stated."""
    at = {d.name: i for i, d in enumerate(relations.dimensions)}
    echelon = _of_equations(relations, at)
    for line in stated:
        echelon.offer({at[line.name]: 1})
    return sum(echelon.offer({i: 1}) for i in at.values())


def differences(relations: Relations, drawn: Solved, stated: list[Stated]) -> list[Difference]:
    """What does not come out as drawn when a full set is stated instead.

    A size that still rests on a rule or habit is a difference too: the relations then have a
    freedom more than the set was drawn for, so an equation is missing.
    """
    try:
        found = solve(relations, stated=stated, grid=drawn.trail.grid)
    except InternalError as fault:
        return [Difference("", "settled", str(fault))]
    weak = {Origin.RULE, Origin.HABIT}
    wrong = []
    if free := left_free(relations, stated):
        wrong.append(Difference("", "every size settled", f"{free} could be anything"))
    for name in drawn.sizes:
        was, now = drawn.sizes[name], found.sizes.get(name)
        origin = found.sizes.size(name).origin if now is not None else None
        if now != was or origin in weak:
            wrong.append(Difference(name, str(was), f"{now} by {origin}"))
    return wrong
