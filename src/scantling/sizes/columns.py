"""A knot as a programme for the solver.

Everything is counted in graduations and from the sizes that elimination gave, so numbers stay
small. The first columns are by how much each soft row yields; every other column is a measure
of them (how far off, how much apart) and can be read off any answer.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from scantling.exact import Fraction
from scantling.sizes.certificate import Case
from scantling.sizes.knot import Knot, Limit, Mark, is_season
from scantling.sizes.model import Alike
from scantling.sizes.programme import INFINITE, Programme
from scantling.sizes.rows import Strength, counts_with
from scantling.sizes.shape import Expression

SAME = 1e-5  # [graduations] nearer than this is equal; the exact check follows

HALF = 0.5  # between no and yes in a column that is one of them

Answer = list[float]
Sum = tuple[dict[int, float], float]  # columns with their weights, and the start


@dataclass(frozen=True, slots=True, kw_only=True)
class Yielding:
    """A row that may yield: columns for whether and by how much it does."""

    row: int
    moves: Expression
    broken: int
    amount: int


@dataclass(frozen=True, slots=True)
class Group:
    """An alike group: columns for its spread, the spread without the sink, and distances."""

    spread: tuple[int, int]  # greatest, least
    without_sink: tuple[int, int] | None
    from_first: tuple[int, ...]
    apart: tuple[Expression, ...]
    names: tuple[str, ...]


@dataclass(slots=True)
class Columns:
    """The programme of one knot, and what its columns mean."""

    case: Case
    knot: Knot
    reach: float  # [graduations] furthest anything moves
    programme: Programme = field(default_factory=Programme)
    yields: dict[int, int] = field(default_factory=dict)  # kept soft row -> column
    off: list[tuple[Mark, int]] = field(default_factory=list)
    yielding: dict[Strength, list[Yielding]] = field(default_factory=dict)
    parts: list[int] = field(default_factory=list)  # whether anything of each is changed
    said: list[int] = field(default_factory=list)  # whether each line of the file is given up
    short: list[tuple[Limit, int]] = field(default_factory=list)
    groups: list[Group] = field(default_factory=list)
    _lines: list[int] = field(default_factory=list)  # of each mark, the graduation it is at
    _measures: list[tuple[int, Callable[[Answer], float]]] = field(
        default_factory=list
    )  # column and how to read it off the others [graduations]

    def __post_init__(self) -> None:
        for i in self.knot.rows:
            self.yields[i] = self.programme.column(lower=-self.reach, upper=self.reach)
        for limit in self.knot.limits:
            self._limit(limit)
        for mark in self.knot.marks:
            self._mark(mark)
        for i in self.knot.rows:
            if not isinstance(self.case.rows[i].source, Alike):
                self._may_yield(i, Expression(Fraction(0), ((i, Fraction(1)),)))
        for wish in self.knot.wishes:
            self._may_yield(wish.row, wish.moves)
        for rows in self.yielding.values():
            rows.sort(key=lambda y: y.row)
        self.parts = self._together(Strength.KEPT)
        self.said = self._together(Strength.STATED)
        for group, others in self.knot.groups:
            self._group(group, others)

    def sum(self, moves: Expression) -> Sum:
        """A sum over the columns and its start. [graduations]"""
        terms = {self.yields[i]: float(c) for i, c in moves.terms}
        return terms, float(moves.start / self.case.grid)

    def tightened(self, answer: Answer) -> Answer:
        """The answer with every measure set to what the rows make it."""
        for column, measure in self._measures:
            answer[column] = measure(answer)
        return answer

    def met(self, answer: Answer) -> dict[int, float]:
        """Whole columns of marks that are met and rows that do not yield, with values. [-]"""
        held: dict[int, float] = {}
        for (_, off), line in zip(self.off, self._lines, strict=True):
            if answer[off] < HALF:
                held |= {off: 0.0, line: round(answer[line])}
        rows = [row.broken for rows in self.yielding.values() for row in rows]
        return held | {broken: 0.0 for broken in rows if answer[broken] < HALF}

    def holds(self, moves: Expression, answer: Answer) -> bool:
        """Whether a sum is zero in an answer, as far as the numbers tell."""
        return abs(value(self.sum(moves), answer)) <= SAME

    def _measure(self, column: int, measure: Callable[[Answer], float]) -> None:
        self._measures.append((column, measure))

    def _limit(self, limit: Limit) -> None:
        terms, start = self.sum(limit.moves)
        if is_season(limit):
            short = self.programme.column(lower=0.0, upper=INFINITE)
            self.short.append((limit, short))
            self._measure(short, _shortfall((dict(terms), start)))
            terms[short] = 1.0
        self.programme.row(terms, lower=-start, upper=INFINITE)

    def _mark(self, mark: Mark) -> None:
        terms, start = self.sum(mark.moves)
        off = self.programme.column(lower=0.0, upper=1.0, whole=True)
        line = self.programme.column(lower=-self.reach, upper=self.reach, whole=True)
        self.off.append((mark, off))
        self._lines.append(line)
        self._measure(line, _nearest((terms, start)))
        self._measure(off, _missed((terms, start), line))
        between = {**terms, line: -1.0}
        self.programme.row({**between, off: 0.5}, lower=-start, upper=INFINITE)
        self.programme.row({**between, off: -0.5}, lower=-INFINITE, upper=-start)

    def _may_yield(self, i: int, moves: Expression) -> None:
        amount = self._amount(self.sum(moves))
        broken = self.programme.column(lower=0.0, upper=1.0, whole=True)
        self._measure(broken, lambda answer: float(answer[amount] > SAME))
        self.programme.row({amount: 1.0, broken: -self.reach}, lower=-INFINITE, upper=0.0)
        strength = self.case.rows[i].strength
        self.yielding.setdefault(strength, []).append(
            Yielding(row=i, moves=moves, broken=broken, amount=amount)
        )

    def _amount(self, by: Sum) -> int:
        terms, start = by
        amount = self.programme.column(lower=0.0, upper=INFINITE)
        self._measure(amount, lambda answer: abs(value(by, answer)))
        self.programme.row({**terms, amount: 1.0}, lower=-start, upper=INFINITE)
        self.programme.row({**terms, amount: -1.0}, lower=-INFINITE, upper=-start)
        return amount

    def _together(self, strength: Strength) -> list[int]:
        """Of the rows of that strength, a column for each that counts by itself or as a whole."""
        whole: dict[object, list[int]] = {}
        for size in self.yielding.get(strength, []):
            key = counts_with(self.case.rows[size.row])
            whole.setdefault(size.row if key is None else key, []).append(size.broken)
        return [self._any(broken) for broken in whole.values()]

    def _any(self, broken: Sequence[int]) -> int:
        if len(broken) == 1:
            return broken[0]
        found = self.programme.column(lower=0.0, upper=1.0, whole=True)
        self._measure(found, _greatest(broken))
        for one in broken:
            self.programme.row({found: 1.0, one: -1.0}, lower=0.0, upper=INFINITE)
        return found

    def _group(self, group: Alike, others: tuple[Expression, ...]) -> None:
        apart = [self.sum(moves) for moves in others]
        placed: list[Sum] = [({}, 0.0), *apart]
        self.groups.append(
            Group(
                self._spread(placed),
                self._spread(placed[:-1]) if len(placed) > 2 else None,
                tuple(self._amount(by) for by in apart),
                others,
                group.names,
            )
        )

    def _spread(self, placed: Sequence[Sum]) -> tuple[int, int]:
        most = self.programme.column(lower=-INFINITE, upper=INFINITE)
        least = self.programme.column(lower=-INFINITE, upper=INFINITE)
        self._measure(most, lambda answer: max(value(by, answer) for by in placed))
        self._measure(least, lambda answer: min(value(by, answer) for by in placed))
        for terms, start in placed:
            self.programme.row({**terms, most: -1.0}, lower=-INFINITE, upper=-start)
            self.programme.row({**terms, least: -1.0}, lower=-start, upper=INFINITE)
        return most, least


def value(by: Sum, answer: Answer) -> float:
    """Value of a sum in an answer. [graduations]"""
    return by[1] + sum(c * answer[column] for column, c in by[0].items())


def reach_of(sizes: Sequence[Fraction], grid: Fraction) -> float:
    """How far anything may move: twice the largest size and a hand's breadth. [graduations]"""
    return float((2 * max((abs(size) for size in sizes), default=Fraction(0)) + 100) / grid)


def _shortfall(by: Sum) -> Callable[[Answer], float]:
    return lambda answer: max(0.0, -value(by, answer))


def _nearest(by: Sum) -> Callable[[Answer], float]:
    return lambda answer: float(round(value(by, answer)))


def _missed(by: Sum, line: int) -> Callable[[Answer], float]:
    return lambda answer: float(abs(value(by, answer) - answer[line]) > SAME)


def _greatest(columns: Sequence[int]) -> Callable[[Answer], float]:
    return lambda answer: max(answer[column] for column in columns)
