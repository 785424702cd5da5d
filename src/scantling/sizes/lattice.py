"""Whether sizes can fall on the tape while sums are held: whole-number equations, exactly.

Bounds are left aside, so a no is final and a yes is not. The solver's branching cannot see that
an odd number is never twice a whole one; here it is seen at once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from math import lcm
from typing import TypeVar

from scantling.sizes.echelon import Echelon, whole
from scantling.sizes.shape import Expression

Congruence = tuple[dict[int, Fraction], Fraction]  # sum of marks and constant that is whole

T = TypeVar("T")


def agree(zero: Iterable[Expression], on_tape: Iterable[Expression], *, grid: Fraction) -> bool:
    """Whether all of `zero` can be zero and all of `on_tape` on the tape at once."""
    zero, on_tape = list(zero), list(on_tape)
    index: dict[int, int] = {}
    for moves in (*zero, *on_tape):
        for row, _ in moves.terms:
            index.setdefault(row, len(index))
    echelon = Echelon([0] * len(index))
    starts: list[Fraction] = []
    factors: list[int] = []
    wanted: list[Congruence] = []
    for n, moves in enumerate((*zero, *on_tape)):
        terms, factor = whole([(index[row], c) for row, c in moves.terms])
        starts.append(moves.start / grid)
        factors.append(factor)
        if echelon.offer(terms):
            continue
        # What moves this sum moves others: it is its start and a combination of their moves.
        combined = {j: a * factors[j] / factor for j, a in echelon.combination(n).items()}
        constant = starts[n] - sum((a * starts[j] for j, a in combined.items()), Fraction(0))
        if n < len(zero):
            if constant:
                return False
            continue
        marks = {j: a for j, a in combined.items() if j >= len(zero)}
        wanted.append((marks, constant))
    return solvable(wanted)


def solvable(wanted: Sequence[Congruence]) -> bool:
    """Whether whole numbers exist that make every sum whole."""
    names = sorted({j for marks, _ in wanted for j in marks})
    point = dict.fromkeys(names, 0)
    steps = [{name: int(name == own) for name in names} for own in names]
    for marks, constant in wanted:
        scale = lcm(constant.denominator, *(a.denominator for a in marks.values()))
        whole_marks = {j: int(a * scale) for j, a in marks.items()}
        missing = int(constant * scale) + sum(a * point[j] for j, a in whole_marks.items())
        heights = [sum(a * step[j] for j, a in whole_marks.items()) for step in steps]
        moved = _level(steps, heights, missing, scale)
        if moved is None:
            return False
        for j, by in moved.items():
            point[j] += by
    return True


def _level(
    steps: list[dict[int, int]], heights: list[int], missing: int, scale: int
) -> dict[int, int] | None:
    """Move by steps until `missing` is a multiple of `scale`; keep only steps that stay so.

    `steps` is changed in place to a basis of the moves that keep the sum whole.
    """
    lead: int | None = None
    for n, height in enumerate(heights):
        heights[n] = height % scale
    while True:
        open_ = [n for n, height in enumerate(heights) if height]
        if not open_:
            lead = None
            break
        lead = min(open_, key=lambda n: heights[n])
        others = [n for n in open_ if n != lead]
        if not others and scale % heights[lead] == 0:
            break
        for n in others:
            times = heights[n] // heights[lead]
            _less(steps[n], steps[lead], times)
            heights[n] -= times * heights[lead]
        if not others:
            # Euclid between the lead and the scale itself: so many leads fall just beyond it.
            times = -(-scale // heights[lead])
            steps.append({j: c * times for j, c in steps[lead].items()})
            heights.append(heights[lead] * times - scale)
    if lead is None:
        return {} if missing % scale == 0 else None
    height = heights[lead]
    if missing % height:
        return None
    times = (-missing // height) % (scale // height)
    moved = {j: c * times for j, c in steps[lead].items()}
    steps[lead] = {j: c * (scale // height) for j, c in steps[lead].items()}
    return moved


def _less(step: dict[int, int], other: dict[int, int], times: int) -> None:
    for j, c in other.items():
        step[j] -= times * c


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
    of_second = _core(held + first, second, agrees) if first else items
    of_first = _core(held + of_second, first, agrees)
    return of_first + of_second
