"""A tangle as a programme for the solver.

Everything is counted in graduations and from the sizes that elimination gave, so numbers stay
small. The first columns are how far each size moves from there; every other column is a
measure of them (how far off, how much apart) and can be read off any answer.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from scantling.sizes.certificate import Case
from scantling.sizes.linear import Linear
from scantling.sizes.model import Alike, Kind, Yields
from scantling.sizes.programme import INFINITE, Programme
from scantling.sizes.rows import Row, Strength, floor_of, members, part_of
from scantling.sizes.shape import Reading
from scantling.sizes.tangle import Tangle

SAME = 1e-5  # [graduations] nearer than this is equal; the exact check follows
MORE_THAN = Fraction(1, 100)  # [mm] a size is more than its floor by this: no bench shows less
MARGIN = 256  # [graduations] beyond twice the largest size: nothing moves further

Answer = list[float]


@dataclass(frozen=True, slots=True)
class Yielding:
    """A row that may yield: columns for whether and by how much it does."""

    row: int
    broken: int
    amount: int


@dataclass(frozen=True, slots=True)
class Group:
    """An alike group: columns for its spread, the spread without the sink, and distances."""

    spread: tuple[int, int]  # greatest, least
    without_sink: tuple[int, int] | None
    from_first: tuple[int, ...]
    first: int | None  # column of the first member, if it can move


@dataclass(slots=True)
class Columns:
    """The programme of one tangle, and what its columns mean."""

    case: Case
    base: Reading
    tangle: Tangle
    programme: Programme = field(default_factory=Programme)
    moved: dict[int, int] = field(default_factory=dict)  # unknown -> column
    off: dict[int, int] = field(default_factory=dict)  # unknown -> column
    yielding: dict[Strength, list[Yielding]] = field(default_factory=dict)
    parts: list[int] = field(default_factory=list)
    short: list[int] = field(default_factory=list)  # by season bound
    groups: list[Group] = field(default_factory=list)
    reach: float = 0.0  # [graduations] furthest any sum moves
    _measures: list[tuple[int, Callable[[Answer], float]]] = field(default_factory=list)

    def __post_init__(self) -> None:
        largest = max((abs(self.base.at(v)) for v in self.tangle.unknowns), default=Fraction(0))
        self.reach = MARGIN + 2 * self._graduations(largest)
        for unknown in self.tangle.unknowns:
            self.moved[unknown] = self.programme.column(-self.reach, self.reach)
        for row in self.tangle.facts:
            self.programme.row({self.moved[v]: float(c) for v, c in row.items()}, 0.0, 0.0)
        self._floors()
        self._bounds()
        self._marks()
        self._soft()
        self._parts()

    def tightened(self, answer: Answer) -> Answer:
        """The answer with every measure set to what the sizes make it."""
        for column, measure in self._measures:
            answer[column] = measure(answer)
        return answer

    def _measure(self, column: int, measure: Callable[[Answer], float]) -> None:
        self._measures.append((column, measure))

    def _graduations(self, length: Fraction) -> float:
        return float(length / self.case.grid)

    def moves(self, linear: Linear) -> tuple[dict[int, float], float]:
        """A sum over the columns, and its value at the start. [graduations]"""
        at = self.case.shape.at
        terms = {
            self.moved[at[name]]: float(c) for name, c in linear.terms if at[name] in self.moved
        }
        return terms, self._graduations(self.base.sum(linear, at))

    def _floors(self) -> None:
        for unknown in self.tangle.unknowns:
            dimension = self.case.dimensions[self.case.shape.names[unknown]]
            floor = floor_of(dimension)
            if floor is not None:
                least = MORE_THAN if dimension.positive else Fraction(0)
                spare = self.base.sum(floor.sum, self.case.shape.at) - least
                lowest = max(-self.reach, -self._graduations(spare))
                self.programme.limit(self.moved[unknown], lowest, max(self.reach, lowest))

    def _bounds(self) -> None:
        for bound in self.tangle.bounds:
            terms, start = self.moves(bound.sum)
            if bound.yields is Yields.SEASON:
                short = self.programme.column(0.0, INFINITE)
                self.short.append(short)
                self._measure(short, _shortfall(dict(terms), start))
                terms[short] = 1.0
            self.programme.row(terms, -start, INFINITE)

    def _marks(self) -> None:
        for unknown in self.tangle.unknowns:
            name = self.case.shape.names[unknown]
            if self.case.dimensions[name].kind is not Kind.TAPE:
                continue
            start = float((self.base.at(unknown) / self.case.grid) % 1)
            off = self.programme.column(0.0, 1.0, whole=True)
            mark = self.programme.column(-self.reach, self.reach, whole=True)
            self.off[unknown] = off
            moved = self.moved[unknown]
            self._measure(mark, _nearest(moved, start))
            self._measure(off, _missed(moved, mark, start))
            between = {moved: 1.0, mark: -1.0}
            self.programme.row({**between, off: 0.5}, -start, INFINITE)
            self.programme.row({**between, off: -0.5}, -INFINITE, -start)

    def _soft(self) -> None:
        groups: dict[Alike, None] = {}
        for i in self.tangle.soft:
            row = self.case.rows[i]
            if isinstance(row.source, Alike):
                groups[row.source] = None
            elif not self.case.shape.constant_under(row.terms, self.case.shape.facts):
                self._may_yield(i, row)
        for group in groups:
            self._group(members(group))

    def _may_yield(self, i: int, row: Row) -> None:
        terms, start = self.moves(Linear(row.terms, row.constant))
        amount = self._amount(terms, start)
        broken = self.programme.column(0.0, 1.0, whole=True)
        self._measure(broken, lambda answer: float(answer[amount] > SAME))
        self.programme.row({amount: 1.0, broken: -self.reach}, -INFINITE, 0.0)
        self.yielding.setdefault(row.strength, []).append(Yielding(i, broken, amount))

    def _amount(self, terms: dict[int, float], start: float) -> int:
        amount = self.programme.column(0.0, INFINITE)
        self._measure(amount, lambda answer: abs(_value(terms, answer) + start))
        self.programme.row({**terms, amount: 1.0}, -start, INFINITE)
        self.programme.row({**terms, amount: -1.0}, -INFINITE, -start)
        return amount

    def _parts(self) -> None:
        parts: dict[str, list[int]] = {}
        for size in self.yielding.get(Strength.KEPT, []):
            name = self.case.rows[size.row].terms[0][0]
            parts.setdefault(part_of(name), []).append(size.broken)
        for broken in parts.values():
            part = self.programme.column(0.0, 1.0, whole=True)
            self._measure(part, _greatest(broken))
            for one in broken:
                self.programme.row({part: 1.0, one: -1.0}, 0.0, INFINITE)
            self.parts.append(part)

    def _group(self, names: Sequence[str]) -> None:
        sums = [self.moves(Linear(((name, Fraction(1)),))) for name in names]
        # Starts count from the first member: what is compared stays small.
        nought = sums[0][1]
        placed = [(terms, start - nought) for terms, start in sums]
        apart = [
            self.moves(Linear(((a, Fraction(1)), (names[0], Fraction(-1))))) for a in names[1:]
        ]
        self.groups.append(
            Group(
                self._spread(placed),
                self._spread(placed[:-1]) if len(placed) > 2 else None,
                tuple(self._amount(terms, start) for terms, start in apart),
                next(iter(sums[0][0]), None),
            )
        )

    def _spread(self, placed: Sequence[tuple[dict[int, float], float]]) -> tuple[int, int]:
        most = self.programme.column(-INFINITE, INFINITE)
        least = self.programme.column(-INFINITE, INFINITE)
        self._measure(most, lambda answer: max(_value(t, answer) + s for t, s in placed))
        self._measure(least, lambda answer: min(_value(t, answer) + s for t, s in placed))
        for terms, start in placed:
            self.programme.row({**terms, most: -1.0}, -INFINITE, -start)
            self.programme.row({**terms, least: -1.0}, -start, INFINITE)
        return most, least


def _value(terms: dict[int, float], answer: Answer) -> float:
    return sum(c * answer[column] for column, c in terms.items())


def _shortfall(terms: dict[int, float], start: float) -> Callable[[Answer], float]:
    return lambda answer: max(0.0, -(_value(terms, answer) + start))


def _nearest(moved: int, start: float) -> Callable[[Answer], float]:
    return lambda answer: float(round(answer[moved] + start))


def _missed(moved: int, mark: int, start: float) -> Callable[[Answer], float]:
    return lambda answer: float(abs(answer[moved] + start - answer[mark]) > SAME)


def _greatest(columns: Sequence[int]) -> Callable[[Answer], float]:
    return lambda answer: max(answer[column] for column in columns)
