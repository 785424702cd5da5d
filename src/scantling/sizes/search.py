"""What elimination could not prove is searched for, as locally as the proof allows.

First only what is amiss is looked at, all other rows left to elimination. That is a looser
question: its best answer cannot be worse than the true one. If nothing else is amiss once the
answer stands, it is the answer to the whole question too; otherwise what came amiss is looked
at as well. The end is reached at the latest when everything is.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field, replace

from scantling.exact import Fraction
from scantling.sizes.certificate import (
    Asked,
    Case,
    broken_bounds,
    off_tape,
    roots,
    too_small,
    unproven,
)
from scantling.sizes.closing import Closed, closed
from scantling.sizes.columns import Answer, Columns, reach_of
from scantling.sizes.knot import Knot, knots
from scantling.sizes.ladder import Ladder
from scantling.sizes.likeness import likeness
from scantling.sizes.linear import size_of
from scantling.sizes.programme import Programme
from scantling.sizes.rows import Terms
from scantling.sizes.shape import Reading, reading
from scantling.sizes.single import closed_by_one
from scantling.sizes.stopping import Stop

MOST_TO_BEGIN = 500  # things looked at; beyond this a fresh start is quicker
ROOTS_ALONE = 3  # turns in which only sizes that miss the tape by themselves are looked at


class FactsClashError(Exception):
    """Facts and physical bounds cannot all hold. Only for the room itself."""


@dataclass(frozen=True, slots=True)
class Searched:
    """Final sizes, with what was searched on the way."""

    found: Reading
    knots: Mapping[Knot, Closed]
    looked_at: Mapping[Knot, Closed]  # those on the way too; they save work next time
    asked: Asked
    yielded: Mapping[int, Fraction]  # kept soft row -> its sum [mm], where it is not zero
    solves: int
    stopped: bool  # some search was told to end: the sizes hold, better ones may be left


def searched_out(
    case: Case, base: Reading, earlier: Mapping[Knot, Closed], *, begin: Asked, stop: Stop
) -> Searched:
    """Sizes that are best on every level.

    Args:
        case: The question.
        base: Sizes as elimination gives them.
        earlier: Searches of an earlier answer of the same shape.
        begin: What that answer had to look at. Looking at more changes no answer, and what
            was amiss once is likely amiss again.
        stop: When to end with sizes that hold and are not proven to be the best.

    Raises:
        FactsClashError: Facts and physical bounds cannot all hold.
    """
    asked, found = Asked(), base
    done: dict[Knot, Closed] = {}
    used: dict[Knot, Closed] = {}
    yielded: dict[int, Fraction] = {}
    reach = reach_of([base.at(v) for v in range(len(case.shape.names))], case.grid)
    climbs = _Climbs(case, reach, stop)
    more = unproven(case, base)
    if more and len(begin) <= MOST_TO_BEGIN:
        more |= begin
    turns = 0
    while more:
        asked |= more
        used = {}
        for knot in knots(case, base, asked):
            known = done.get(knot) or earlier.get(knot) or closed_by_one(case, knot)
            used[knot] = done[knot] = known or climbs.closed(knot)
        yielded = {i: by for part in used.values() for i, by in part.yielded.items()}
        found = reading(case.shape, case.rows, yielded)
        more = _amiss(case, base, found) - asked
        turns += 1
        if turns <= ROOTS_ALONE:
            more = replace(more, tape=roots(case, more.tape))
        if more.floors or more.bounds:
            rows = frozenset(i for knot in used for i in knot.rows)
            more |= _limits_on(case, rows) - asked
    looked_at = {knot: known for knot, known in done.items() if knot not in climbs.hurried}
    stopped = not climbs.hurried.isdisjoint(used)
    return Searched(found, used, looked_at, asked, yielded, climbs.solves, stopped)


@dataclass(slots=True)
class _Climbs:
    """Knots given to the solver; those that are one but for the names, once."""

    case: Case
    reach: float  # [graduations] furthest anything moves
    stop: Stop
    hurried: set[Knot] = field(default_factory=set)
    solves: int = 0
    _answers: dict[Hashable, Answer] = field(default_factory=dict)

    def closed(self, knot: Knot) -> Closed:
        """The best answer to a knot, exactly.

        Raises:
            FactsClashError: Facts and physical bounds cannot all hold.
        """
        like = likeness(self.case, knot)
        columns = Columns(self.case, knot, self.reach, Programme(stop=self.stop))
        if like in self._answers:
            return closed(columns, self._answers[like])
        ladder = Ladder(columns)
        if not ladder.climb():
            raise FactsClashError
        self.solves += columns.programme.solves
        if ladder.stopped:
            self.hurried.add(knot)
        else:
            self._answers[like] = ladder.best
        return closed(columns, ladder.best, stopped=ladder.stopped)


def _amiss(case: Case, base: Reading, found: Reading) -> Asked:
    """What does not hold, or holds otherwise than elimination left it."""
    was = frozenset(broken_bounds(case, base))
    off = frozenset(off_tape(case, found)) - case.shape.fixed
    ends = {*base.open_ends, *found.open_ends}
    changed = {i for i in ends if base.open_ends.get(i) != found.open_ends.get(i)}
    return Asked(
        off,
        frozenset(too_small(case, found)),
        frozenset(i for i in broken_bounds(case, found) if i not in was),
        frozenset(changed),
    )


def _limits_on(case: Case, rows: frozenset[int]) -> Asked:
    """Every floor and bound that one of the rows moves: where one breaks, others are near."""
    shape = case.shape

    def moved(terms: Terms) -> bool:
        return any(i in rows for i, _ in shape.rests_on(terms))

    return Asked(
        floors=frozenset(
            v
            for v, name in enumerate(shape.names)
            if case.dimensions[name].least is not None and moved(size_of(name).terms)
        ),
        bounds=frozenset(i for i, bound in enumerate(case.bounds) if moved(bound.sum.terms)),
    )
