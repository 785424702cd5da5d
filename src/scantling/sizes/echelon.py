"""Exact elimination of sparse linear equations, the shape apart from the constants.

Rows are offered in order of strength. Each either settles one more unknown (it is kept) or
depends on rows kept before it, whatever the constants are; so the shape is worked out once and
new constants only pass through it. A row that depends and does not close is contradicted by
the rows its combination names, and by no others.

All coefficients are whole numbers. Constants travel as whole numbers over one common scale,
which grows only where a division does not come out even.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush
from math import gcd, lcm

from scantling.exact import Fraction


@dataclass(frozen=True, slots=True)
class _Recipe:
    """How an offered row was reduced: `own` times the row less multiples of kept rows."""

    own: int
    used: tuple[tuple[int, int], ...]  # (kept position, factor)
    kept: int  # position among the kept rows, -1 if the row depends on others


@dataclass(slots=True)
class Echelon:
    """Rows reduced in the order they were offered.

    Args:
        weights: How often each unknown occurs; rare unknowns are settled first, so that rows
            stay short.
    """

    weights: Sequence[int]
    rows: list[dict[int, int]] = field(default_factory=list)
    settled: list[int] = field(default_factory=list)  # unknown settled by each kept row
    origin: list[int] = field(default_factory=list)  # offered row behind each kept row
    _at: dict[int, int] = field(default_factory=dict)  # unknown -> kept position
    _recipes: list[_Recipe] = field(default_factory=list)

    @property
    def offered(self) -> int:
        """How many rows have been offered."""
        return len(self._recipes)

    def offer(self, row: Mapping[int, int]) -> bool:
        """Take one more row; true if it settles an unknown."""
        own, used, left = self.reduced(row)
        kept = -1
        if left:
            kept = len(self.rows)
            unknown = min(left, key=lambda v: (abs(left[v]) != 1, self.weights[v], v))
            self._at[unknown] = kept
            self.rows.append(left)
            self.settled.append(unknown)
            self.origin.append(len(self._recipes))
        self._recipes.append(_Recipe(own, tuple(used), kept))
        return kept >= 0

    def reduced(
        self, row: Mapping[int, int], *, upto: int | None = None
    ) -> tuple[int, list[tuple[int, int]], dict[int, int]]:
        """Row with every settled unknown replaced; only rows kept before `upto` count."""
        limit = len(self.rows) if upto is None else upto
        at, rows = self._at, self.rows
        work = dict(row)
        heap = [at[v] for v in work if at.get(v, limit) < limit]
        heapify(heap)
        own, used = 1, list[tuple[int, int]]()
        while heap:
            position = heappop(heap)
            factor = work.get(self.settled[position], 0)
            if not factor:
                continue
            kept = rows[position]
            pivot = kept[self.settled[position]]
            if factor % pivot:
                grow = abs(pivot) // gcd(factor, pivot)
                own *= grow
                factor *= grow
                work = {v: c * grow for v, c in work.items()}
                used = [(p, m * grow) for p, m in used]
            times = factor // pivot
            used.append((position, times))
            for v, c in kept.items():
                if v not in work:
                    work[v] = -times * c
                    if at.get(v, limit) < limit:
                        heappush(heap, at[v])
                    continue
                left = work[v] - times * c
                if left:
                    work[v] = left
                else:
                    del work[v]
        return own, used, work

    def kept(self, offered: int) -> bool:
        """Whether the offered row settled an unknown."""
        return self._recipes[offered].kept >= 0

    def kept_before(self, offered: int) -> int:
        """How many of the rows offered earlier were kept."""
        lo, hi = 0, len(self.origin)
        while lo < hi:
            mid = (lo + hi) // 2
            if self.origin[mid] < offered:
                lo = mid + 1
            else:
                hi = mid
        return lo

    def unsettled(self, count: int) -> tuple[int, ...]:
        """Unknowns below `count` that no row settles."""
        return tuple(v for v in range(count) if v not in self._at)

    def combination(self, offered: int) -> dict[int, Fraction]:
        """A dependent row as a sum of kept offered rows: offered row -> factor."""
        recipe = self._recipes[offered]
        return self._unfolded(recipe.used, recipe.own)

    def combined(self, row: Mapping[int, int]) -> dict[int, Fraction] | None:
        """Any row as a sum of kept offered rows; None if it is free of them in part."""
        own, used, left = self.reduced(row)
        return None if left else self._unfolded(used, own)

    def _unfolded(self, used: Sequence[tuple[int, int]], own: int) -> dict[int, Fraction]:
        pending = {position: Fraction(m, own) for position, m in used}
        heap = [-position for position in pending]
        heapify(heap)
        found: dict[int, Fraction] = {}
        while heap:
            position = -heappop(heap)
            factor = pending.pop(position)
            if not factor:
                continue
            recipe = self._recipes[self.origin[position]]
            found[self.origin[position]] = factor * recipe.own
            for earlier, m in recipe.used:
                if earlier not in pending:
                    pending[earlier] = Fraction(0)
                    heappush(heap, -earlier)
                pending[earlier] -= factor * m
        return found

    def constants(self, given: Sequence[int]) -> tuple[list[int], dict[int, int]]:
        """Constants of the kept rows after reduction, and what dependent rows fail to close by.

        Args:
            given: Constant of each offered row, whole numbers over a common scale.

        Returns:
            Reduced constants by kept position; for each dependent row that does not close its
            remainder (times the factor the row was grown by).
        """
        reduced: list[int] = []
        open_ends: dict[int, int] = {}
        for i, recipe in enumerate(self._recipes):
            value = recipe.own * given[i]
            for position, m in recipe.used:
                value -= m * reduced[position]
            if recipe.kept >= 0:
                reduced.append(value)
            elif value:
                open_ends[i] = value
        return reduced, open_ends

    def values(self, given: Sequence[int]) -> tuple[list[int], int, dict[int, int]]:
        """Every unknown from the constants; unsettled ones are 0.

        Returns:
            Values by unknown as whole numbers over `scale` times the scale of `given`; that
            scale; the open ends of `constants`.
        """
        reduced, open_ends = self.constants(given)
        values = [0] * len(self.weights)
        scale = 1
        for position in range(len(reduced) - 1, -1, -1):
            row, unknown = self.rows[position], self.settled[position]
            total = reduced[position] * scale
            pivot = row[unknown]
            for v, c in row.items():
                if v != unknown:
                    total += c * values[v]
            if total % pivot:
                grow = abs(pivot) // gcd(total, pivot)
                scale *= grow
                total *= grow
                values = [value * grow for value in values]
            values[unknown] = -total // pivot
        return values, scale, open_ends

    def fixed(self, upto: int) -> set[int]:
        """Unknowns whose value the rows kept before `upto` settle all by themselves."""
        known: set[int] = set()
        for position in range(upto - 1, -1, -1):
            unknown = self.settled[position]
            if all(v == unknown or v in known for v in self.rows[position]):
                known.add(unknown)
        return known

    def pairs(self, upto: int) -> Iterator[tuple[int, dict[int, int]]]:
        """Kept rows before `upto` with the unknown each settles."""
        return zip(self.settled[:upto], self.rows[:upto], strict=True)


def whole(terms: Sequence[tuple[int, Fraction]]) -> tuple[dict[int, int], int]:
    """Coefficients as whole numbers and the factor they were multiplied by."""
    factor = lcm(*(c.denominator for _, c in terms))
    return {v: c.numerator * (factor // c.denominator) for v, c in terms}, factor
