"""What hangs together of the things a search must look at.

A size moves only when some soft row yields, so everything asked is written as a sum over the
soft rows it rests on. What shares no row is searched apart.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from scantling.findings import Place
from scantling.sizes.certificate import Asked, Case
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Alike, Bound, Kind, Yields
from scantling.sizes.rows import counts_with, floor_of, members
from scantling.sizes.shape import Expression, Reading, expression


@dataclass(frozen=True, slots=True)
class Mark:
    """Sizes that fall on the tape together or not at all."""

    moves: Expression
    stage: int
    unknowns: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Limit:
    """A bound on the way."""

    moves: Expression
    bound: Bound

    def __hash__(self) -> int:
        return self.moves.__hash__()


@dataclass(frozen=True, slots=True)
class Wish:
    """A soft row that other rows settle: it is kept or broken with them."""

    row: int
    moves: Expression


@dataclass(frozen=True, slots=True)
class Knot:
    """One search: soft rows that may yield, and all that must be looked at while they do."""

    rows: tuple[int, ...]  # kept soft rows
    marks: tuple[Mark, ...]
    limits: tuple[Limit, ...]
    wishes: tuple[Wish, ...]
    groups: tuple[tuple[Alike, tuple[Expression, ...]], ...]  # members less the first


Item = Mark | Limit | Wish | tuple[Alike, tuple[Expression, ...]]


class _Sorted:
    """Items gathered by the rows they share."""

    def __init__(self) -> None:
        self._above: dict[int, int] = {}

    def root(self, row: int) -> int:
        above = self._above
        above.setdefault(row, row)
        while above[row] != row:
            above[row] = above[above[row]]
            row = above[row]
        return row

    def join(self, rows: Iterable[int]) -> None:
        rows = list(rows)
        for other in rows[1:]:
            self._above[self.root(other)] = self.root(rows[0])


def knots(case: Case, base: Reading, asked: Asked) -> list[Knot]:
    """The searches that are asked for, in order of their first row."""
    items: list[Item] = [
        *_marks(case, base, asked),
        *_limits(case, base, asked),
        *_wishes(case, base, asked),
    ]
    items += _drawn_in(case, base, items, asked)
    members_off = _members_on_tape(case, items) - asked.tape
    if members_off:
        return knots(case, base, asked | Asked(tape=members_off))
    together = _Sorted()
    for item in items:
        together.join(_rows(item))
    for rows in _counted_together(case, [i for item in items for i in _rows(item)]):
        together.join(rows)
    gathered: dict[int, list[Item]] = {}
    for item in items:
        rows = _rows(item)
        if rows:
            gathered.setdefault(together.root(rows[0]), []).append(item)
    found = [_knot(items) for items in gathered.values()]
    return sorted(found, key=lambda knot: knot.rows)


def _knot(items: list[Item]) -> Knot:
    return Knot(
        tuple(sorted({i for item in items for i in _rows(item)})),
        tuple(item for item in items if isinstance(item, Mark)),
        tuple(item for item in items if isinstance(item, Limit)),
        tuple(item for item in items if isinstance(item, Wish)),
        tuple(item for item in items if isinstance(item, tuple)),
    )


def _rows(item: Item) -> list[int]:
    if isinstance(item, tuple):
        return [i for moves in item[1] for i, _ in moves.terms]
    return [i for i, _ in item.moves.terms]


def _marks(case: Case, base: Reading, asked: Asked) -> Iterator[Mark]:
    alike: dict[tuple[Expression, int], list[int]] = {}
    for v in sorted(asked.tape):
        name = case.shape.names[v]
        moves = expression(case.shape, base, size_of(name))
        moves = Expression(moves.start % case.grid, moves.terms)
        alike.setdefault((moves, case.dimensions[name].stage), []).append(v)
    for (moves, stage), unknowns in alike.items():
        yield Mark(moves, stage, tuple(unknowns))


def _limits(case: Case, base: Reading, asked: Asked) -> Iterator[Limit]:
    for v in sorted(asked.floors):
        dimension = case.dimensions[case.shape.names[v]]
        floor = floor_of(dimension, above=True)
        if floor is not None:
            yield Limit(expression(case.shape, base, floor.sum), floor)
    for i in sorted(asked.bounds):
        yield Limit(expression(case.shape, base, case.bounds[i].sum), case.bounds[i])


def _wishes(case: Case, base: Reading, asked: Asked) -> Iterator[Wish]:
    for i in sorted(asked.rows):
        row = case.rows[i]
        if not isinstance(row.source, Alike):
            yield Wish(i, expression(case.shape, base, Linear(row.terms, row.constant)))


def _group(case: Case, base: Reading, group: Alike) -> tuple[Alike, tuple[Expression, ...]]:
    first, *others = members(group)
    return group, tuple(
        expression(case.shape, base, size_of(other) - size_of(first)) for other in others
    )


def _drawn_in(case: Case, base: Reading, items: list[Item], asked: Asked) -> list[Item]:
    """Alike groups and broken rows that share rows with what is asked, until no more join."""
    found: list[Item] = []
    groups: set[Alike] = set()
    touched: set[int] = set()
    open_ends = {
        i: case.shape.echelon.combination(i)
        for i in base.open_ends
        if case.rows[i].strength > case.shape.firm and i not in asked.rows
    }
    new: list[Item] = [*items]
    wanted = [case.rows[i].source for i in asked.rows]
    while new or wanted:
        fresh = {i for item in new for i in _rows(item)} - touched
        touched |= fresh
        wanted += [case.rows[i].source for i in sorted(fresh)]
        new = []
        for source in wanted:
            if isinstance(source, Alike) and source not in groups:
                groups.add(source)
                new.append(_group(case, base, source))
        wanted = []
        for i, circuit in list(open_ends.items()):
            if not touched.isdisjoint(circuit):
                del open_ends[i]
                row = case.rows[i]
                if isinstance(row.source, Alike):
                    wanted.append(row.source)
                else:
                    new.append(
                        Wish(i, expression(case.shape, base, Linear(row.terms, row.constant)))
                    )
        found += new
    return found


def _members_on_tape(case: Case, items: Iterable[Item]) -> frozenset[int]:
    """Members of alike groups: that their spread is whole graduations makes it easy to prove."""
    names = [name for item in items if isinstance(item, tuple) for name in item[0].names]
    return frozenset(
        case.shape.at[name] for name in names if case.dimensions[name].kind is Kind.TAPE
    ) - (case.shape.fixed)


def _counted_together(case: Case, rows: Iterable[int]) -> Iterator[list[int]]:
    """Rows that count as broken as a whole."""
    whole: dict[str | Place, list[int]] = {}
    for i in sorted(set(rows)):
        key = counts_with(case.rows[i])
        if key is not None:
            whole.setdefault(key, []).append(i)
    yield from whole.values()


def is_season(limit: Limit) -> bool:
    """Whether a limit may be broken."""
    return limit.bound.yields is Yields.SEASON
