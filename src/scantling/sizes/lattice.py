"""Whether sizes can fall on the tape while sums are held: whole-number equations, exactly.

Bounds are left aside, so a no is final and a yes is not. The solver's branching cannot see that
an odd number is never twice a whole one; here it is seen at once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import gcd, lcm
from typing import TypeVar

from scantling.exact import Fraction
from scantling.sizes.echelon import Echelon, whole
from scantling.sizes.shape import Expression

Marks = dict[int, Fraction]  # sum on the tape -> by how much its mark counts
Step = dict[int, int]

T = TypeVar("T")


@dataclass(slots=True)
class _Held:
    """Sums held at zero and sums held on the tape, eliminated."""

    zero: int  # how many sums are held at zero; those on the tape follow
    grid: Fraction  # [mm]
    index: dict[int, int]
    echelon: Echelon
    starts: list[Fraction]  # [graduations]
    factors: list[int]

    def over_marks(self, moves: Expression) -> tuple[Marks, Fraction] | None:
        """A sum over the marks it rests on, in graduations; None if it moves freely."""
        if any(row not in self.index for row, _ in moves.terms):
            return None
        terms, factor = whole([(self.index[row], c) for row, c in moves.terms])
        combined = self.echelon.combined(terms)
        if combined is None:
            return None
        shares = {j: a * self.factors[j] / factor for j, a in combined.items()}
        constant = moves.start / self.grid
        constant -= sum((a * self.starts[j] for j, a in shares.items()), Fraction(0))
        return {j: a for j, a in shares.items() if j >= self.zero}, constant


@dataclass(slots=True)
class _Points:
    """Marks at which every sum falls on the tape: one choice, and steps to all others."""

    point: Step
    steps: list[Step]


@dataclass(frozen=True, slots=True)
class Lattice:
    """All sizes at which some sums are zero and others on the tape; bounds left aside."""

    held: _Held
    points: _Points | None

    @property
    def is_empty(self) -> bool:
        """Whether no sizes at all are like that."""
        return self.points is None

    def nearest_to_zero(self, moves: Expression) -> Fraction:
        """The least a sum can be away from zero. [graduations]"""
        over = self.held.over_marks(moves)
        if self.points is None or over is None:
            return Fraction(0)
        marks, at = over
        point, steps = self.points.point, self.points.steps
        at += sum((a * point.get(j, 0) for j, a in marks.items()), Fraction(0))
        heights = [sum((a * s.get(j, 0) for j, a in marks.items()), Fraction(0)) for s in steps]
        # Marks that no congruence holds are free: each is a step of its own.
        heights += [a for j, a in marks.items() if j not in point]
        stride = _common_measure(heights)
        if not stride:
            return abs(at)
        return min(at % stride, stride - at % stride)


def lattice(
    zero: Sequence[Expression], on_tape: Sequence[Expression], *, grid: Fraction
) -> Lattice:
    """The sizes at which all of `zero` are zero and all of `on_tape` on the tape."""
    return Lattice(*_points(zero, on_tape, grid))


def _common_measure(heights: Iterable[Fraction]) -> Fraction:
    """The greatest length of which all are whole multiples."""
    found = Fraction(0)
    for height in heights:
        found = Fraction(
            gcd(found.numerator * height.denominator, height.numerator * found.denominator),
            found.denominator * height.denominator,
        )
    return found


def _points(
    zero: Sequence[Expression], on_tape: Sequence[Expression], grid: Fraction
) -> tuple[_Held, _Points | None]:
    index: dict[int, int] = {}
    for moves in (*zero, *on_tape):
        for row, _ in moves.terms:
            index.setdefault(row, len(index))
    held = _Held(len(zero), grid, index, Echelon([0] * len(index)), [], [])
    wanted = []
    for n, moves in enumerate((*zero, *on_tape)):
        over = held.over_marks(moves)
        if over is not None and n >= len(zero):
            wanted.append(over)
        elif over is not None and over[1]:
            return held, None
        terms, factor = whole([(index[row], c) for row, c in moves.terms])
        held.echelon.offer(terms)
        held.starts.append(moves.start / grid)
        held.factors.append(factor)
    return held, _solved(wanted)


def _solved(wanted: Sequence[tuple[Marks, Fraction]]) -> _Points | None:
    """Whole numbers that make every sum whole, if there are any."""
    names = sorted({j for marks, _ in wanted for j in marks})
    point = dict.fromkeys(names, 0)
    steps = [{name: int(name == own) for name in names} for own in names]
    for marks, constant in wanted:
        scale = lcm(constant.denominator, *(a.denominator for a in marks.values()))
        counts = {j: int(a * scale) for j, a in marks.items()}
        missing = int(constant * scale) + sum(a * point[j] for j, a in counts.items())
        heights = [sum(a * step[j] for j, a in counts.items()) % scale for step in steps]
        moved = _levelled(steps, heights, missing, scale)
        if moved is None:
            return None
        for j, by in moved.items():
            point[j] += by
    return _Points(point, steps)


def _levelled(steps: list[Step], heights: list[int], missing: int, scale: int) -> Step | None:
    """Move by steps until `missing` is a multiple of `scale`; keep only steps that leave it so.

    `steps` is changed in place; `heights` is by how much each moves the sum, modulo `scale`.
    """
    lead = _one_lead(steps, heights, scale)
    if lead is None:
        return {} if missing % scale == 0 else None
    height = heights[lead]
    if missing % height:
        return None
    times = (-missing // height) % (scale // height)
    moved = {j: c * times for j, c in steps[lead].items()}
    steps[lead] = {j: c * (scale // height) for j, c in steps[lead].items()}
    return moved


def _one_lead(steps: list[Step], heights: list[int], scale: int) -> int | None:
    """Recombine steps by Euclid's rule until at most one moves the sum, by a divisor of scale."""
    while True:
        moving = [n for n, height in enumerate(heights) if height]
        if not moving:
            return None
        lead = min(moving, key=lambda n: heights[n])
        if len(moving) == 1 and scale % heights[lead] == 0:
            return lead
        for n in moving:
            if n != lead:
                times = heights[n] // heights[lead]
                steps[n] = {j: c - times * steps[lead][j] for j, c in steps[n].items()}
                heights[n] -= times * heights[lead]
        if len(moving) == 1:
            # Between the lead and the scale: so many leads fall just beyond it.
            times = -(-scale // heights[lead])
            steps.append({j: c * times for j, c in steps[lead].items()})
            heights.append(heights[lead] * times - scale)


def cores(items: Sequence[T], agrees: Callable[[Sequence[T]], bool]) -> list[list[T]]:
    """Disjoint sets of items that cannot all be had, each without an idle member.

    What is left over can be had together, as far as `agrees` tells.
    """
    left, found = list(items), []
    while not agrees(left):
        core = _core([], left, agrees)
        found.append(core)
        left = [item for item in left if item not in core]
    return found


def _core(held: list[T], items: list[T], agrees: Callable[[Sequence[T]], bool]) -> list[T]:
    if held and not agrees(held):
        return []
    if len(items) == 1:
        return items
    half = len(items) // 2
    first, second = items[:half], items[half:]
    of_second = _core(held + first, second, agrees)
    of_first = _core(held + of_second, first, agrees)
    return of_first + of_second
