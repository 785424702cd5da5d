"""A legal order in which what is done at one setting is done together.

List scheduling under headings: a heading is one kind of operation at one setting. Of the
headings that can be finished in one go, the earliest kind of the vocabulary is taken up; where
none can, the one of which most can be done. It proves nothing about being shortest.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Mapping, Sequence

from scantling.errors import InternalError
from scantling.exact import Fraction
from scantling.method.gauges import key_of
from scantling.method.job import Before, Step
from scantling.shop.operations import vocabulary

Heading = tuple[int, str, Hashable]


class CycleError(InternalError):
    """Rules that contradict each other, with the steps that go round."""


def in_order(
    steps: Sequence[Step], pairs: Sequence[Before], *, sizes: Mapping[str, Fraction]
) -> tuple[int, ...]:
    """Places of the steps, in an order that keeps every pair.

    Raises:
        CycleError: The pairs go round in a ring; the message names it.
    """
    waits, frees = _links(len(steps), pairs)
    kinds = {name: place for place, name in enumerate(vocabulary())}
    headings = [_heading(step, kinds, sizes) for step in steps]
    left = Counter(headings)
    ready: dict[Heading, list[int]] = {}
    for i in (i for i, count in enumerate(waits) if not count):
        ready.setdefault(headings[i], []).append(i)
    order: list[int] = []
    last: Heading | None = None
    while ready:
        last = _next(ready, left, last)
        step = ready[last].pop(0)
        if not ready[last]:
            del ready[last]
        left[last] -= 1
        order.append(step)
        for other in frees[step]:
            waits[other] -= 1
            if not waits[other]:
                ready.setdefault(headings[other], []).append(other)
    if len(order) < len(steps):
        raise CycleError(_ring(steps, pairs, done=set(order)))
    return tuple(order)


def _links(count: int, pairs: Sequence[Before]) -> tuple[list[int], list[list[int]]]:
    waits, frees = [0] * count, [[] for _ in range(count)]  # type: list[int], list[list[int]]
    for each in pairs:
        waits[each.then] += 1
        frees[each.first].append(each.then)
    return waits, frees


def _heading(step: Step, kinds: Mapping[str, int], sizes: Mapping[str, Fraction]) -> Heading:
    setting = key_of(step.operation, sizes)
    return kinds[step.name], step.name, setting


def _next(
    ready: Mapping[Heading, list[int]], left: Mapping[Heading, int], last: Heading | None
) -> Heading:
    if last is not None and last in ready:
        return last  # what is in hand stays in hand

    def rank(heading: Heading) -> tuple[bool, int, int, int]:
        whole = len(ready[heading]) == left[heading]
        # without a setting nothing is lost by coming back
        cheap = whole or heading[2] is None
        return not cheap, heading[0], -len(ready[heading]), ready[heading][0]

    return min(ready, key=rank)


def _ring(steps: Sequence[Step], pairs: Sequence[Before], *, done: set[int]) -> str:
    """The steps of one ring, told in a line."""
    before: dict[int, Before] = {}
    for each in pairs:
        if each.first not in done and each.then not in done:
            before.setdefault(each.then, each)
    step = min(before)
    seen: list[int] = []
    while step not in seen:
        seen.append(step)
        step = before[step].first
    ring = seen[seen.index(step) :]
    told = "; ".join(f"{steps[i].told} waits: {before[i].because}" for i in ring)
    return f"the order goes round in a ring: {told}"
