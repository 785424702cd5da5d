"""The commonest knot: one habit gives way, and that is proven to be the least there is.

If nothing is amiss without yielding, nothing yields. Else at least one row must; where one
habit alone can set everything right, no level above habits suffers and no fewer than one habit
is changed. Among such habits the least change wins, then the last named gives way.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, gcd, lcm

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


def closed_by_one(case: Case, knot: Knot) -> Closed | None:
    """The answer to a knot that one habit sets right, or that nothing troubles; else None."""
    if any(moves.start for _, apart in knot.groups for moves in apart):
        return None
    if any(wish.moves.start for wish in knot.wishes):
        return None
    if _fit(case, knot, {}):
        return Closed({}, ())
    best: tuple[Fraction, int, Fraction] | None = None
    for i in knot.rows:
        if case.rows[i].strength is Strength.HABIT:
            amount = _amount(case, knot, i)
            if amount is not None and (best is None or abs(amount) <= best[0]):
                best = abs(amount), i, amount
    if best is None:
        return None
    _, i, amount = best
    return Closed({i: amount}, tuple(_reached(case, knot, i, amount)))


def _share(moves: Expression, i: int) -> Fraction:
    return next((c for row, c in moves.terms if row == i), Fraction(0))


def _fit(case: Case, knot: Knot, yielded: dict[int, Fraction]) -> bool:
    """Whether marks and limits are met."""
    return all(
        (_at(mark.moves, yielded) / case.grid).denominator == 1 for mark in knot.marks
    ) and all(_at(limit.moves, yielded) >= 0 for limit in knot.limits)


def _at(moves: Expression, yielded: dict[int, Fraction]) -> Fraction:
    return moves.start + sum((c * yielded.get(i, 0) for i, c in moves.terms), Fraction(0))


def _amount(case: Case, knot: Knot, i: int) -> Fraction | None:
    """By how much one row alone must yield to set everything right, if it can."""
    held = [moves for _, apart in knot.groups for moves in apart]
    held += [wish.moves for wish in knot.wishes]
    if any(_share(moves, i) for moves in held):
        return None
    beads = _Beads(Fraction(0), Fraction(0))
    for mark in knot.marks:
        share = _share(mark.moves, i)
        if share:
            met = beads.met(_Beads(-mark.moves.start / share, abs(case.grid / share)))
            if met is None:
                return None
            beads = met
    low, high = _limits(knot, i)
    amount = beads.nearest_to_zero(low, high)
    return amount if amount is not None and _fit(case, knot, {i: amount}) else None


def _limits(knot: Knot, i: int) -> tuple[Fraction | None, Fraction | None]:
    low: Fraction | None = None
    high: Fraction | None = None
    for limit in knot.limits:
        share = _share(limit.moves, i)
        if share > 0:
            edge = -limit.moves.start / share
            low = edge if low is None else max(low, edge)
        elif share < 0:
            edge = -limit.moves.start / share
            high = edge if high is None else min(high, edge)
    return low, high


def _reached(case: Case, knot: Knot, i: int, amount: Fraction) -> Iterator[Row]:
    """What the row gave way to: the first limit it stands at, else the first mark it moved to."""
    for limit in knot.limits:
        if _share(limit.moves, i) and not _at(limit.moves, {i: amount}):
            yield Row(Strength.BOUND, limit.bound.sum.terms, limit.bound.sum.constant, limit.bound)
            return
    for mark in knot.marks:
        if _share(mark.moves, i):
            name = case.shape.names[mark.unknowns[0]]
            yield Row(Strength.TAPE, size_of(name).terms, Fraction(0), case.dimensions[name])
            return
