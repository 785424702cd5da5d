"""The connected sizes within which something must yield."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from scantling.sizes.certificate import Case
from scantling.sizes.model import Bound
from scantling.sizes.rows import Strength, Terms, part_of


@dataclass(frozen=True, slots=True)
class Tangle:
    """Unknowns that facts leave free and that touch each other, with all that is said of them."""

    unknowns: tuple[int, ...]
    facts: tuple[dict[int, int], ...]  # what equations and lines leave between the unknowns
    soft: tuple[int, ...]  # rows weaker than facts
    bounds: tuple[Bound, ...]


class _Joined:
    """Disjoint sets of unknowns."""

    def __init__(self, count: int) -> None:
        self._above = list(range(count))

    def root(self, unknown: int) -> int:
        above = self._above
        while above[unknown] != unknown:
            above[unknown] = above[above[unknown]]
            unknown = above[unknown]
        return unknown

    def join(self, unknowns: Sequence[int]) -> None:
        if unknowns:
            first = self.root(unknowns[0])
            for other in unknowns[1:]:
                self._above[self.root(other)] = first


def tangles(case: Case, guilty: Iterable[Terms]) -> Iterator[Tangle]:
    """The tangles that the guilty sums stand in, in order of naming."""
    free = _Free(case)
    joined = _Joined(len(case.shape.names))
    facts = [
        {v: c for v, c in row.items() if v not in case.shape.fixed}
        for row in case.shape.echelon.rows[: case.shape.facts]
    ]
    for row in facts:
        joined.join(list(row))
    for bound in case.bounds:
        joined.join(free.of(bound.sum.terms))
    for unknowns in free.by_part():
        joined.join(unknowns)
    soft = [i for i, row in enumerate(case.rows) if row.strength > Strength.STATED]
    for i in soft:
        joined.join(free.of(case.rows[i].terms))
    roots = sorted({joined.root(v) for terms in guilty for v in free.of(terms)})
    for root in roots:
        yield Tangle(
            tuple(
                v
                for v in range(len(case.shape.names))
                if v not in case.shape.fixed and joined.root(v) == root
            ),
            tuple(row for row in facts if row and joined.root(next(iter(row))) == root),
            tuple(i for i in soft if _touches(free.of(case.rows[i].terms), joined, root)),
            tuple(b for b in case.bounds if _touches(free.of(b.sum.terms), joined, root)),
        )


def _touches(unknowns: Sequence[int], joined: _Joined, root: int) -> bool:
    return bool(unknowns) and joined.root(unknowns[0]) == root


@dataclass(frozen=True, slots=True)
class _Free:
    case: Case

    def of(self, terms: Terms) -> list[int]:
        """Unknowns of a sum that facts leave free."""
        shape = self.case.shape
        return [v for v in (shape.at[name] for name, _ in terms) if v not in shape.fixed]

    def by_part(self) -> Iterator[list[int]]:
        """Free unknowns of each uncut part whose plan is kept: it counts as changed as a whole."""
        parts: dict[str, list[int]] = {}
        for row in self.case.rows:
            if row.strength is Strength.KEPT:
                name = row.terms[0][0]
                parts.setdefault(part_of(name), []).extend(self.of(row.terms))
        yield from parts.values()
