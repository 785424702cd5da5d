"""From the solver's answer to exact sizes.

The answer tells which marks of the rule, which rows and which bounds the sizes stand on. These
are taken as equations and solved in rationals, so that no digit of the solver remains.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations
from math import lcm

from scantling.errors import InternalError
from scantling.sizes.columns import MORE_THAN, SAME, Answer, Columns
from scantling.sizes.echelon import Echelon, whole
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Alike, Bound
from scantling.sizes.rows import Row, Strength, floor_of, members


@dataclass(frozen=True, slots=True)
class Closed:
    """Exact sizes of a tangle and the rows they stand on, strongest first."""

    values: dict[int, Fraction]  # [mm]
    rows: tuple[Row, ...]


def closed(columns: Columns, answer: Answer) -> Closed:
    """Exact sizes where the answer stands.

    Raises:
        InternalError: What the answer stands on does not settle every size, or contradicts
            itself in the rationals.
    """
    unknowns = columns.tangle.unknowns
    place = {v: i for i, v in enumerate(unknowns)}
    echelon = Echelon([0] * len(unknowns))
    given: list[Fraction] = []
    for fact in columns.tangle.facts:
        echelon.offer({place[v]: c for v, c in fact.items()})
        given.append(Fraction(0))
    rows = []
    for row in _stood_on(columns, answer):
        moved, factor = whole(_free_terms(columns, row, place))
        if not moved:
            continue
        start = columns.base.sum(Linear(row.terms, row.constant), columns.case.shape.at) * factor
        if echelon.reduced(moved)[2]:
            echelon.offer(moved)
            given.append(start)
            rows.append(row)
    if echelon.unsettled(len(unknowns)):
        loose = ", ".join(columns.case.shape.names[unknowns[i]] for i in echelon.unsettled(len(unknowns)))
        raise InternalError(f"the solver's answer leaves {loose} open")
    common = lcm(*(g.denominator for g in given))
    moved_by, scale, _ = echelon.values([int(g * common) for g in given])
    values = {
        v: columns.base.at(v) + Fraction(moved_by[place[v]], scale * common) for v in unknowns
    }
    return Closed(values, tuple(rows))


def _free_terms(
    columns: Columns, row: Row, place: dict[int, int]
) -> list[tuple[int, Fraction]]:
    at = columns.case.shape.at
    return [(place[at[name]], c) for name, c in row.terms if at[name] in place]


def _stood_on(columns: Columns, answer: Answer) -> Iterator[Row]:
    """Rows that hold in the answer: soft ones, bounds come up against, marks of the rule."""
    case = columns.case
    for i in columns.tangle.soft:
        row = case.rows[i]
        if row.strength is not Strength.ALIKE and _holds(columns, answer, row):
            yield row
        elif isinstance(row.source, Alike):
            yield from _equal_pairs(columns, answer, row.source)
    yield from _marks(columns, answer)
    yield from _bounds(columns, answer)


def _holds(columns: Columns, answer: Answer, row: Row) -> bool:
    terms, start = columns.moves(Linear(row.terms, row.constant))
    return abs(sum(c * answer[column] for column, c in terms.items()) + start) <= SAME


def _equal_pairs(columns: Columns, answer: Answer, group: Alike) -> Iterator[Row]:
    for a, b in combinations(members(group), 2):
        equal = size_of(b) - size_of(a)
        row = Row(Strength.ALIKE, equal.terms, equal.constant, group)
        if _holds(columns, answer, row):
            yield row


def _marks(columns: Columns, answer: Answer) -> Iterator[Row]:
    case = columns.case
    for unknown, off in columns.off.items():
        if answer[off] < 0.5:
            name = case.shape.names[unknown]
            moved = Fraction(answer[columns.moved[unknown]]) * case.grid
            mark = round((columns.base.at(unknown) + moved) / case.grid) * case.grid
            yield Row(Strength.TAPE, ((name, Fraction(1)),), -mark, case.dimensions[name])


def _bounds(columns: Columns, answer: Answer) -> Iterator[Row]:
    for bound in (*columns.tangle.bounds, *_floors(columns)):
        row = Row(Strength.BOUND, bound.sum.terms, bound.sum.constant, bound)
        if _holds(columns, answer, row):
            yield row


def _floors(columns: Columns) -> Iterator[Bound]:
    case = columns.case
    for unknown in columns.tangle.unknowns:
        dimension = case.dimensions[case.shape.names[unknown]]
        floor = floor_of(dimension)
        if floor is not None:
            yield replace(floor, sum=floor.sum - MORE_THAN) if dimension.positive else floor
