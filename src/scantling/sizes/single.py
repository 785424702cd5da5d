"""The commonest knot: one habit gives way, and that is proven to be the least there is.

If nothing is amiss without yielding, nothing yields. Else at least one row must; where one
habit alone can set everything right, no level above habits suffers and no fewer than one habit
is changed. Among such habits the least change wins, then the last named gives way.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil, floor, gcd, lcm

from scantling.exact import Fraction
from scantling.sizes.certificate import Case
from scantling.sizes.closing import Closed
from scantling.sizes.knot import Knot
from scantling.sizes.linear import size_of
from scantling.sizes.rows import Row, Strength
from scantling.sizes.shape import Expression


@dataclass(frozen=True, slots=True)
class _Beads:
    """Amounts `first + n * step` for every whole n; any amount at all if the step is 0."""

    first: Fraction
    step: Fraction

    def met(self, other: _Beads) -> _Beads | None:
        """The amounts that are in both, or None."""
        if not other.step:
            return self
        if not self.step:
            return other
        scale = lcm(
            self.first.denominator,
            self.step.denominator,
            other.first.denominator,
            other.step.denominator,
        )
        a, m = int(self.first * scale), int(self.step * scale)
        b, n = int(other.first * scale), int(other.step * scale)
        common = gcd(m, n)
        if (b - a) % common:
            return None
        turns = (b - a) // common * pow(m // common, -1, n // common)
        both = lcm(m, n)
        return _Beads(Fraction((a + m * turns) % both, scale), Fraction(both, scale))

    def nearest_to_zero(self, low: Fraction | None, high: Fraction | None) -> Fraction | None:
        """The least amount between two limits; of two equally far the lesser."""
        if low is not None and high is not None and low > high:
            return None
        aim = Fraction(0)
        aim = aim if low is None else max(aim, low)
        aim = aim if high is None else min(aim, high)
        if not self.step:
            return aim
        turns = (aim - self.first) / self.step
        near = {self.first + self.step * n for n in (floor(turns), ceil(turns))}
        within = [x for x in near if (low is None or x >= low) and (high is None or x <= high)]
        return min(within, key=lambda x: (abs(x), x), default=None)


@dataclass(slots=True)
class _Pulls:
    """What one row alone moves: starts and shares of marks and limits."""

    marks: list[tuple[Fraction, Fraction]] = field(default_factory=list)
    limits: list[tuple[Fraction, Fraction]] = field(default_factory=list)
    amiss: int = 0  # how many of them are not as they should be

    def amount(self, grid: Fraction) -> Fraction | None:
        """By how much the row must yield to set right all it moves, if it can."""
        beads = _Beads(Fraction(0), Fraction(0))
        for start, share in self.marks:
            met = beads.met(_Beads(-start / share, abs(grid / share)))
            if met is None:
                return None
            beads = met
        lows = [-start / share for start, share in self.limits if share > 0]
        highs = [-start / share for start, share in self.limits if share < 0]
        return beads.nearest_to_zero(max(lows, default=None), min(highs, default=None))


def closed_by_one(case: Case, knot: Knot) -> Closed | None:
    """The answer to a knot that one habit sets right, or that nothing troubles; else None."""
    held = [moves for _, apart in knot.groups for moves in apart]
    held += [wish.moves for wish in knot.wishes]
    if any(moves.start for moves in held):
        return None
    pulls, amiss = _pulls(case, knot)
    if not amiss:
        return Closed({}, ())
    bound = {i for moves in held for i, _ in moves.terms}
    best: tuple[Fraction, int, Fraction] | None = None
    for i in knot.rows:
        if case.rows[i].strength is not Strength.HABIT or i in bound or pulls[i].amiss < amiss:
            continue
        amount = pulls[i].amount(case.grid)
        if amount is not None and (best is None or abs(amount) <= best[0]):
            best = abs(amount), i, amount
    if best is None:
        return None
    _, i, amount = best
    return Closed({i: amount}, tuple(_reached(case, knot, i, amount)))


def _pulls(case: Case, knot: Knot) -> tuple[dict[int, _Pulls], int]:
    """What each row moves, and how many marks and limits are amiss in all."""
    pulls = {i: _Pulls() for i in knot.rows}
    total = 0
    for mark in knot.marks:
        off = (mark.moves.start / case.grid).denominator != 1
        total += off
        for i, share in mark.moves.terms:
            pulls[i].marks.append((mark.moves.start, share))
            pulls[i].amiss += off
    for limit in knot.limits:
        broken = limit.moves.start < 0
        total += broken
        for i, share in limit.moves.terms:
            pulls[i].limits.append((limit.moves.start, share))
            pulls[i].amiss += broken
    return pulls, total


def _share(moves: Expression, i: int) -> Fraction:
    return next((c for row, c in moves.terms if row == i), Fraction(0))


def _reached(case: Case, knot: Knot, i: int, amount: Fraction) -> Iterator[Row]:
    """What the row gave way to: the first limit it stands at, else the first mark it moved to."""
    for limit in knot.limits:
        share = _share(limit.moves, i)
        if share and limit.moves.start + share * amount == 0:
            yield Row(Strength.BOUND, limit.bound.sum.terms, limit.bound.sum.constant, limit.bound)
            return
    for mark in knot.marks:
        if _share(mark.moves, i):
            name = case.shape.names[mark.unknowns[0]]
            yield Row(Strength.TAPE, size_of(name).terms, Fraction(0), case.dimensions[name])
            return
