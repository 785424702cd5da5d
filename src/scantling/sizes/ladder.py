"""True priorities: one aim after the other, each held fast before the next is looked at.

Before an aim is given to the solver, whole-number reasoning finds sets of which at least one
member must yield. Often that already proves the answer in hand to be the best.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from math import ceil, isfinite

from scantling.exact import Fraction
from scantling.sizes.columns import HALF, SAME, Answer, Columns, Group, Yielding
from scantling.sizes.knot import Mark
from scantling.sizes.lattice import Lattice, cores, lattice
from scantling.sizes.programme import INFINITE, StoppedError
from scantling.sizes.rows import Strength
from scantling.sizes.shape import Expression

SLACK = 1e-6  # [graduations] by which a held aim may be missed in the numbers

A_GUESS = 100  # nodes looked at for the first answer; the levels prove the rest

# How much each level weighs in the first guess, from which every level is then settled truly.
WEIGHTS = {
    Strength.MEASURED: 1e7,
    Strength.CUT: 1e6,
    Strength.STATED: 1e5,
    Strength.TAPE: 1e4,
    Strength.WISHED: 3e3,
    Strength.KEPT: 1e3,
    Strength.BOUND: 3e2,
    Strength.ALIKE: 1e2,
    Strength.RULE: 1e1,
    Strength.HABIT: 1e0,
}
MOST_OF_DIGITS = 1e4  # of a sum whose whole parts count one after the other
A_LITTLE = 1e3  # graduations of change that weigh as much as one row more

Aim = Mapping[int, float]


@dataclass(slots=True)
class Ladder:
    """The best answer so far, rung by rung."""

    columns: Columns
    best: Answer = field(default_factory=list)
    zero: list[Expression] = field(default_factory=list)  # held from now on
    on_tape: list[Mark] = field(default_factory=list)  # held on the tape from now on
    stopped: bool = False  # the answer holds, but a better one may be left
    _lattice: Lattice | None = None

    def climb_lines(self) -> bool:
        """Give up as few lines of the maker as may be, the weakest and last named first.

        What one line of the file says of several sizes is one line.

        False if equations and physical bounds clash by themselves.
        """
        return self._until_stopped(self._lines)

    def climb(self) -> bool:
        """Settle every level in turn; false if facts and physical bounds clash."""
        return self._until_stopped(self._levels)

    def _until_stopped(self, climbed: Callable[[], bool]) -> bool:
        try:
            return climbed()
        except StoppedError as stop:
            self.stopped = True
            if stop.found is not None:
                self.best = self.columns.tightened(stop.found)
            return self._made_do()

    def _lines(self) -> bool:
        if not self._begun({}):
            return False
        self._rules(Strength.MEASURED)
        self._rules(Strength.CUT)
        self._fewest(dict.fromkeys(self.columns.said, 1.0))
        self._in_order(self.columns.said)
        self._rules(Strength.STATED)
        return True

    def _levels(self) -> bool:
        if not self._fewest_off_tape():
            return False
        self._wishes()
        self._fewest(dict.fromkeys(self.columns.parts, 1.0))
        self._in_order(self.columns.parts)
        self._rules(Strength.KEPT)
        self._seasons()
        self._alike()
        self._each_season()
        self._rules(Strength.RULE)
        self._rules(Strength.HABIT)
        self._rather_less()
        return True

    # ------------------------------------------------------------------------------------ aims

    def lines_yielded(self) -> dict[int, Fraction]:
        """By how much each row yields, to the solver's precision. [mm]"""
        grid = self.columns.case.grid
        return {
            i: Fraction(self.best[column]) * grid
            for i, column in self.columns.yields.items()
            if abs(self.best[column]) > SAME
        }

    def _begun(self, aim: Aim) -> bool:
        try:
            found = self.columns.programme.least(aim, most=A_GUESS)
        except StoppedError as stop:
            if stop.found is not None or not self.columns.programme.stop.left():
                raise
            found = self.columns.programme.least({})
        if found is not None:
            self.best = self.columns.tightened(found)
        return found is not None

    def _likely(self, off: Aim) -> Aim:
        """All levels weighed in one sum: no proof of anything, but a good place to begin."""
        columns = self.columns
        aim = {column: cost * WEIGHTS[Strength.TAPE] for column, cost in off.items()}
        aim |= dict.fromkeys((short for _, short in columns.short), WEIGHTS[Strength.BOUND])
        for group in columns.groups:
            aim |= dict.fromkeys(group.from_first, WEIGHTS[Strength.ALIKE])
        for strength, rows in columns.yielding.items():
            for row in rows:
                aim[row.broken] = WEIGHTS[strength]
                aim[row.amount] = WEIGHTS[strength] / A_LITTLE
        return aim

    def _made_do(self) -> bool:
        """From the answer in hand, or from none, one that stands somewhere; all levels weighed.

        Marks met are kept, other whole numbers left open: that is a plain programme, quickly
        solved. False if facts and physical bounds clash.
        """
        columns = self.columns
        held = columns.met(self.best) if self.best else {}
        aim = {c: cost for c, cost in self._likely({}).items() if not columns.programme.whole[c]}
        for group in columns.groups:
            aim |= {c: sign * A_LITTLE**-1 for c, sign in _spread(group.spread).items()}
        found = columns.programme.fixed(held).least(aim)
        if found is None and held:
            # What was met may be met to the solver's precision only.
            found = columns.programme.fixed({}).least(aim)
        if found is not None:
            self.best = columns.tightened(found)
        return bool(self.best)

    def _value(self, aim: Aim) -> float:
        return sum(cost * self.best[column] for column, cost in aim.items())

    def _least(self, aim: Aim, *, floor: float = 0.0, whole: bool = False) -> float:
        """Make the aim as small as it goes; its value. No search where it cannot be smaller.

        Args:
            aim: A sum of columns.
            floor: What it cannot be less than, as far as known.
            whole: Whether nothing but whole graduations can come of it.
        """
        if self._value(aim) > floor + SAME and self._may_be_less(aim, whole=whole):
            found = self.columns.programme.least(aim, start=self.best)
            # The answer in hand holds all rungs so far to within SLACK; where the solver, stricter
            # with itself, sees no room at all, nothing is nearer than what is in hand.
            if found is not None:
                self.best = self.columns.tightened(found)
        return self._value(aim)

    def _may_be_less(self, aim: Aim, *, whole: bool) -> bool:
        """Whether the aim could be less than it is if marks were left out of account."""
        floor = self.columns.programme.floor(aim)
        if whole and isfinite(floor):
            floor = ceil(floor - SAME)
        return self._value(aim) > floor + SAME

    def _hold(self, aim: Aim, most: float) -> None:
        programme = self.columns.programme
        if len(aim) > 1:
            programme.row(aim, lower=-INFINITE, upper=most)
        for column in aim if len(aim) == 1 else ():
            programme.limit(
                column, lower=programme.lower[column], upper=min(programme.upper[column], most)
            )

    def _fewest(self, aim: Aim, *, floor: float = 0.0) -> None:
        self._hold(aim, round(self._least(aim, floor=floor, whole=True)) + HALF)

    def _nearest(self, aim: Aim, *, floor: float = 0.0, whole: bool = False) -> None:
        self._hold(aim, max(self._least(aim, floor=floor, whole=whole), 0.0) + SLACK)

    def _in_order(self, columns: Iterable[int]) -> None:
        """Of equally good answers the one that breaks the first named last."""
        programme = self.columns.programme
        for column in columns:
            programme.limit(column, lower=0.0, upper=0.0)
            if self.best[column] < HALF:
                continue
            found = programme.least({}) if isfinite(programme.floor({})) else None
            if found is None:
                programme.limit(column, lower=1.0, upper=1.0)
            else:
                self.best = self.columns.tightened(found)

    def _agree(self, zero: Iterable[Expression]) -> bool:
        marks = [mark.moves for mark in self.on_tape]
        return not lattice([*self.zero, *zero], marks, grid=self.columns.case.grid).is_empty

    def _also_zero(self, moves: Iterable[Expression]) -> None:
        self.zero += moves
        self._lattice = None

    def _floor(self, moves: Expression) -> float:
        """The least a sum can be away from zero by what is held already. [graduations]"""
        if self._lattice is None:
            marks = [mark.moves for mark in self.on_tape]
            self._lattice = lattice(self.zero, marks, grid=self.columns.case.grid)
        return float(self._lattice.nearest_to_zero(moves))

    # ---------------------------------------------------------------------------------- levels

    def _fewest_off_tape(self) -> bool:
        off = dict(self.columns.off)
        weights = {column: float(len(mark.unknowns)) for mark, column in off.items()}
        floor = 0.0
        grid = self.columns.case.grid
        for core in cores(list(off), _fit_on(grid)):
            self.columns.programme.row({off[mark]: 1.0 for mark in core}, lower=1.0, upper=INFINITE)
            floor += min(weights[off[mark]] for mark in core)
        if not self._begun(self._likely(weights)):
            return False
        self._fewest(weights, floor=floor)
        stages: dict[int, dict[int, float]] = {}
        for mark, column in off.items():
            stages.setdefault(mark.stage, {})[column] = weights[column]
        for stage in sorted(stages):
            if len(stages) > 1:
                self._fewest(stages[stage])
            self._in_order(stages[stage])
        self.on_tape = [mark for mark, column in off.items() if self.best[column] < HALF]
        return True

    def _seasons(self) -> None:
        """The least shortfall in all; how it is shared is asked once alike sizes are settled."""
        self._nearest({column: 1.0 for _, column in self.columns.short})

    def _each_season(self) -> None:
        """Of equally good answers the one in which the bound named first is kept best."""
        for _, column in self.columns.short:
            self._nearest({column: 1.0})

    def _alike(self) -> None:
        groups = self.columns.groups
        taped = self._taped()
        spreads = [_spread(group.spread) for group in groups]
        self._nearest(
            {c: cost for aim in spreads for c, cost in aim.items()},
            floor=self._least_spread(groups),
            whole=all(taped.issuperset(group.names) for group in groups),
        )
        for group in groups:
            self._one_group(group, whole=taped.issuperset(group.names))
            near = zip(group.from_first, group.apart, strict=True)
            self._also_zero(moves for column, moves in near if self.best[column] <= SAME)

    def _one_group(self, group: Group, *, whole: bool) -> None:
        spread = _spread(group.spread)
        pair = len(group.apart) == 1 and self._value(spread) > SAME
        self._nearest(spread, floor=self._floor(group.apart[0]) if pair else 0.0, whole=whole)
        if group.without_sink is not None:
            self._nearest(_spread(group.without_sink), whole=whole)
        most = round(self._value(spread))
        if whole and (most + 1) ** len(group.from_first) <= MOST_OF_DIGITS:
            self._digits(group.from_first, base=most + 1)
        else:
            self._distances(group, whole=whole, together=self._value(spread))

    def _digits(self, columns: Sequence[int], *, base: int) -> None:
        """Whole amounts, as small as may be together and then each in turn: in one search.

        All are below `base`, so they are the digits of a number, and their sum leads it.
        """
        lead = base ** len(columns)
        aim = {c: float(lead + base**n) for n, c in enumerate(reversed(columns))}
        self._least(aim, whole=True)
        for column in columns:
            self._hold({column: 1.0}, self.best[column] + SLACK)

    def _distances(self, group: Group, *, whole: bool, together: float) -> None:
        """The least distance from the first in all, then of each in turn."""
        self._nearest(dict.fromkeys(group.from_first, 1.0), floor=together, whole=whole)
        for distance, moves in zip(group.from_first, group.apart, strict=True):
            far = self.best[distance] > SAME
            floor = self._floor(moves) if far else 0.0
            self._nearest({distance: 1.0}, floor=floor, whole=whole)

    def _taped(self) -> set[str]:
        """Names of the sizes held on the tape."""
        return {self.columns.case.shape.names[v] for mark in self.on_tape for v in mark.unknowns}

    def _least_spread(self, groups: Sequence[Group]) -> float:
        """Graduations by which groups must spread, each set of which one must counted once."""
        taped = self._taped()
        floor = 0.0
        for core in cores(
            list(groups), lambda some: self._agree([m for group in some for m in group.apart])
        ):
            if all(taped.issuperset(group.names) for group in core):
                aim = {c: cost for group in core for c, cost in _spread(group.spread).items()}
                self.columns.programme.row(aim, lower=1.0, upper=INFINITE)
                floor += 1.0
        return floor

    def _rules(self, strength: Strength) -> None:
        rows = self.columns.yielding.get(strength, [])
        must = cores(rows, lambda some: self._agree([y.moves for y in some]))
        for core in must:
            self.columns.programme.row({y.broken: 1.0 for y in core}, lower=1.0, upper=INFINITE)
        self._fewest({y.broken: 1.0 for y in rows}, floor=len(must))
        total = {y.amount: 1.0 for y in rows}
        self._nearest(total, floor=sum(self._floor(y.moves) for y in self._broken(rows)))
        self._in_order(y.broken for y in rows)
        self._least_amounts(rows)
        self._also_zero(y.moves for y in rows if self.best[y.broken] < HALF)

    def _broken(self, rows: Sequence[Yielding]) -> list[Yielding]:
        return [row for row in rows if self.best[row.broken] > HALF]

    def _wishes(self) -> None:
        """Lines given up in a conflict come as near as they may."""
        rows = self.columns.yielding.get(Strength.WISHED, [])
        self._nearest({row.amount: 1.0 for row in rows})
        self._least_amounts(rows)

    def _least_amounts(self, rows: Sequence[Yielding]) -> None:
        broken = self._broken(rows)
        for row in broken if len(broken) > 1 else ():
            self._nearest({row.amount: 1.0}, floor=self._floor(row.moves))

    def _rather_less(self) -> None:
        """What may as well be more or less by the same amount: a sink is more, all else less."""
        for group in self.columns.groups:
            *others, sink = group.apart
            self._rather(sink, sign=-1.0)
            for moves in others:
                self._rather(moves, sign=1.0)
        for rows in self.columns.yielding.values():
            for row in self._broken(rows):
                self._rather(row.moves, sign=1.0)

    def _rather(self, moves: Expression, *, sign: float) -> None:
        terms, start = self.columns.sum(moves)
        by = sign * (start + self._value(terms))
        if by > SAME:
            aim = {column: sign * cost for column, cost in terms.items()}
            self._least(aim, floor=-by - sign * start)
            held = self._value(terms)
            self.columns.programme.row(terms, lower=held - SLACK, upper=held + SLACK)


def _fit_on(grid: Fraction) -> Callable[[Sequence[Mark]], bool]:
    return lambda marks: not lattice([], [mark.moves for mark in marks], grid=grid).is_empty


def _spread(columns: tuple[int, int]) -> Aim:
    return {columns[0]: 1.0, columns[1]: -1.0}
