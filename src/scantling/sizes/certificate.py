"""Proof that sizes reached by elimination are the best on every level, or where they are not.

Elimination uses the rows greedily, strongest first. The answer is the optimum of all levels at
once if nothing but what had to yield has yielded:

- each size that should fall on the tape does, unless facts alone settle it;
- each physical bound holds; each broken season bound is settled by what is stronger than it;
- each row that does not close is settled by stronger rows, or shares its circuit with rows of
  its own strength which no other broken row has a part in, and which could not close it with
  less. Then one row a circuit must break, and the last named of the cheapest has.

By induction over the levels every better answer is ruled out. Whatever fails here is handed to
true search, together with all that is connected to it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Alike, Bound, Dimension, Kind, Yields
from scantling.sizes.rows import Row, Strength, Terms, floor_of
from scantling.sizes.shape import Reading, Shape


@dataclass(frozen=True, slots=True)
class Trouble:
    """Something that yields without being forced to: the sum it stands in."""

    terms: Terms
    hopeless: bool = False  # a physical bound that facts alone break


@dataclass(frozen=True, slots=True)
class Case:
    """One question: dimensions, rows with their shape, bounds, graduation."""

    dimensions: Mapping[str, Dimension]
    rows: Sequence[Row]
    shape: Shape
    bounds: Sequence[Bound]
    grid: Fraction  # [mm]


def off_tape(case: Case, found: Reading) -> list[int]:
    """Unknowns that should fall on the tape and do not."""
    n, d = case.grid.numerator, case.grid.denominator
    step = n * found.scale
    at = case.shape.at
    return [
        at[name]
        for name, dimension in case.dimensions.items()
        if dimension.kind is Kind.TAPE and found.values[at[name]] * d % step
    ]


def too_small(case: Case, found: Reading) -> list[Dimension]:
    """Dimensions below their own physical bound."""
    values, at, scale = found.values, case.shape.at, found.scale
    broken = []
    for name, dimension in case.dimensions.items():
        least = dimension.least
        if least is None:
            continue
        spare = values[at[name]] * least.denominator - least.numerator * scale
        if spare < 0 or (dimension.positive and not spare):
            broken.append(dimension)
    return broken


def broken_bounds(case: Case, found: Reading) -> list[Bound]:
    """Bounds that do not hold, the dimensions' own left aside."""
    at = case.shape.at
    return [bound for bound in case.bounds if found.is_negative(bound.sum, at)]


def troubles(case: Case, found: Reading) -> Iterator[Trouble]:
    """What yields without a proof that it must."""
    shape = case.shape
    for unknown in off_tape(case, found):
        if unknown not in shape.fixed:
            yield Trouble(size_of(shape.names[unknown]).terms)
    for dimension in too_small(case, found):
        floor = floor_of(dimension)
        if floor is not None:
            yield from _physical(shape, floor.sum)
    before_season = shape.kept_under(Strength.ALIKE)
    for bound in broken_bounds(case, found):
        if bound.yields is Yields.NEVER:
            yield from _physical(shape, bound.sum)
        elif not shape.constant_under(bound.sum.terms, before_season):
            yield Trouble(bound.sum.terms)
    yield from _unforced_rows(case, found)


def _physical(shape: Shape, sum_: Linear) -> Iterator[Trouble]:
    settled = shape.constant_under(sum_.terms, shape.facts)
    yield Trouble(sum_.terms, hopeless=settled)


def _unforced_rows(case: Case, found: Reading) -> Iterator[Trouble]:
    taken: set[int] = set()
    for i in found.open_ends:
        row = case.rows[i]
        if row.strength <= Strength.STATED:
            continue
        circuit = case.shape.echelon.combination(i)
        if not _is_forced(case, i, circuit, taken):
            yield Trouble(row.terms)


def _is_forced(
    case: Case, i: int, circuit: Mapping[int, Fraction], taken: set[int]
) -> bool:
    strength, shape = case.rows[i].strength, case.shape
    if strength is Strength.ALIKE:
        group = case.rows[i].source
        assert isinstance(group, Alike)
        return all(shape.at[name] in shape.fixed for name in group.names)
    if strength in (Strength.KEPT, Strength.WISHED):
        return all(case.rows[j].strength <= Strength.STATED for j in circuit)
    equals = [j for j in circuit if case.rows[j].strength is strength]
    own = {i, *equals}
    if equals and own & taken:
        return False
    taken |= own if equals else set()
    return all(
        abs(circuit[j]) * shape.factors[j] <= shape.factors[i] for j in equals
    )


