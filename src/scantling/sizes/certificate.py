"""Proof that sizes reached by elimination are the best on every level, or where they are not.

Elimination uses the rows greedily, strongest first. The answer is the optimum of all levels at
once if nothing but what had to yield has yielded:

- each size that should fall on the tape does, unless facts alone settle it;
- each physical bound holds; each broken season bound is settled by what is stronger than it;
- each row that does not close is settled by stronger rows, or shares its circuit with rows of
  its own strength which no other broken row has a part in, and which could not close it with
  less. Then one row a circuit must break, and the last named of the cheapest has.

By induction over the levels every better answer is ruled out. What fails here is searched for,
together with all that can move it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from scantling.exact import Fraction
from scantling.sizes.model import Alike, Bound, Dimension, Kind, Yields
from scantling.sizes.rows import Row, Strength
from scantling.sizes.shape import Reading, Shape


@dataclass(frozen=True)
class Case:
    """One question: dimensions, rows with their shape, bounds, graduation."""

    dimensions: Mapping[str, Dimension]
    rows: Sequence[Row]
    shape: Shape
    bounds: Sequence[Bound]
    grid: Fraction  # [mm]

    def has(self, row: Row) -> bool:
        """Whether a row is one of the question's own."""
        return any(self.rows[i] == row for i in self.shape.places(row.terms))

    @cached_property
    def taped(self) -> tuple[int, ...]:
        """Unknowns that should fall on the tape."""
        at = self.shape.at
        return tuple(at[n] for n, d in self.dimensions.items() if d.kind is Kind.TAPE)

    @cached_property
    def floors(self) -> tuple[tuple[int, int, int, bool], ...]:
        """Unknowns with a least, its numerator and denominator [mm], whether it is too little."""
        at = self.shape.at
        return tuple(
            (at[name], d.least.numerator, d.least.denominator, d.positive)
            for name, d in self.dimensions.items()
            if d.least is not None
        )


@dataclass(frozen=True, slots=True)
class Asked:
    """What a search must look at; all else is left to elimination and checked afterwards."""

    tape: frozenset[int] = frozenset()  # unknowns that should fall on the tape
    floors: frozenset[int] = frozenset()  # unknowns with their own physical bound
    bounds: frozenset[int] = frozenset()  # by place among the bounds
    rows: frozenset[int] = frozenset()  # dependent soft rows

    def __or__(self, other: Asked) -> Asked:
        return Asked(
            self.tape | other.tape,
            self.floors | other.floors,
            self.bounds | other.bounds,
            self.rows | other.rows,
        )

    def __sub__(self, other: Asked) -> Asked:
        return Asked(
            self.tape - other.tape,
            self.floors - other.floors,
            self.bounds - other.bounds,
            self.rows - other.rows,
        )

    def __bool__(self) -> bool:
        return bool(self.tape or self.floors or self.bounds or self.rows)

    def __len__(self) -> int:
        return len(self.tape) + len(self.floors) + len(self.bounds) + len(self.rows)


def off_tape(case: Case, found: Reading) -> list[int]:
    """Unknowns that should fall on the tape and do not."""
    step = case.grid.numerator * found.scale
    d, values = case.grid.denominator, found.values
    return [v for v in case.taped if values[v] * d % step]


def too_small(case: Case, found: Reading) -> list[int]:
    """Unknowns below their own physical bound."""
    values, scale = found.values, found.scale
    broken = []
    for v, top, bottom, positive in case.floors:
        spare = values[v] * bottom - top * scale
        if spare < 0 or (positive and not spare):
            broken.append(v)
    return broken


def broken_bounds(case: Case, found: Reading) -> list[int]:
    """Bounds that do not hold, the dimensions' own left aside."""
    at = case.shape.at
    return [i for i, bound in enumerate(case.bounds) if found.is_negative(bound.sum, at)]


def hopeless(case: Case, found: Reading) -> bool:
    """Whether facts alone break each other or a physical bound."""
    shape = case.shape
    return (
        any(case.rows[i].strength <= shape.firm for i in found.open_ends)
        or any(_is_fixed(case, v) for v in too_small(case, found))
        or any(
            case.bounds[i].yields is Yields.NEVER
            and shape.constant_under(case.bounds[i].sum.terms, shape.facts)
            for i in broken_bounds(case, found)
        )
    )


def _is_fixed(case: Case, unknown: int) -> bool:
    # What facts settle only together, as the difference of two open sizes, is seen by reducing.
    shape = case.shape
    terms = ((shape.names[unknown], Fraction(1)),)
    return unknown in shape.fixed or shape.constant_under(terms, shape.facts)


def unproven(case: Case, found: Reading) -> Asked:
    """What yields without a proof that it must."""
    shape = case.shape
    before_season = shape.kept_under(Strength.ALIKE)
    return Asked(
        roots(case, frozenset(off_tape(case, found)) - shape.fixed),
        frozenset(too_small(case, found)),
        frozenset(
            i
            for i in broken_bounds(case, found)
            if case.bounds[i].yields is Yields.NEVER
            or not shape.constant_under(case.bounds[i].sum.terms, before_season)
        ),
        frozenset(_unforced_rows(case, found)),
    )


def roots(case: Case, off: frozenset[int]) -> frozenset[int]:
    """Of sizes that miss the tape, those that do so by themselves.

    A size is no root if the row that gives it holds another that misses the tape.
    """
    shape = case.shape
    first = frozenset(
        v
        for v in off
        if not any(
            shape.at[name] in off and shape.at[name] != v
            for name, _ in shape.terms[shape.reasons[v]]
        )
    )
    return first or off


def _unforced_rows(case: Case, found: Reading) -> Iterator[int]:
    taken: set[int] = set()
    for i in found.open_ends:
        if case.rows[i].strength > case.shape.firm:
            circuit = case.shape.echelon.combination(i)
            if not _is_forced(case, i, circuit, taken):
                yield i


def _is_forced(case: Case, i: int, circuit: Mapping[int, Fraction], taken: set[int]) -> bool:
    row, shape = case.rows[i], case.shape
    if isinstance(row.source, Alike):
        return all(shape.at[name] in shape.fixed for name in row.source.names)
    if row.strength in (Strength.KEPT, Strength.WISHED):
        return all(case.rows[j].strength <= shape.firm for j in circuit)
    equals = [j for j in circuit if case.rows[j].strength is row.strength]
    own = {i, *equals} if equals else set()
    if own & taken:
        return False
    taken |= own
    return all(abs(circuit[j]) * shape.factors[j] <= shape.factors[i] for j in equals)
