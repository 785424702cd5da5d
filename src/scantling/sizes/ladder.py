"""True priorities: one aim after the other, each held fast before the next is looked at."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from scantling.sizes.columns import SAME, Answer, Columns, Yielding
from scantling.sizes.programme import INFINITE
from scantling.sizes.rows import Strength

SLACK = 1e-6  # [graduations] by which a held aim may be missed in the numbers

Aim = Mapping[int, float]


@dataclass(slots=True)
class Ladder:
    """The best answer so far, rung by rung."""

    columns: Columns
    best: Answer = field(default_factory=list)

    def climb(self) -> bool:
        """Settle every level in turn; false if equations, lines and physical bounds clash."""
        if not self._first():
            return False
        self._fewest_off_tape()
        self._least_amounts(self.columns.yielding.get(Strength.WISHED, []))
        self._plan_is_kept()
        self._seasons()
        self._alike()
        self._rules(Strength.RULE)
        self._rules(Strength.HABIT)
        return True

    def _first(self) -> bool:
        found = self.columns.programme.least(self._marks_missed())
        if found is None:
            return False
        self.best = self.columns.tightened(found)
        return True

    def _marks_missed(self) -> Aim:
        return {off: float(len(mark.unknowns)) for mark, off in self.columns.off}

    def _value(self, aim: Aim) -> float:
        return sum(cost * self.best[column] for column, cost in aim.items())

    def _least(self, aim: Aim, *, floor: float | None = 0.0) -> float:
        """Make the aim as small as it goes; its value. No solve where it cannot be smaller."""
        if floor is None or self._value(aim) > floor + SAME:
            found = self.columns.programme.least(aim, start=self.best)
            if found is not None:
                self.best = self.columns.tightened(found)
        return self._value(aim)

    def _hold(self, aim: Aim, most: float) -> None:
        programme = self.columns.programme
        if len(aim) > 1:
            programme.row(aim, -INFINITE, most)
        for column in aim if len(aim) == 1 else ():
            programme.limit(column, programme.lower[column], min(programme.upper[column], most))

    def _fewest(self, columns: Iterable[int]) -> None:
        aim = dict.fromkeys(columns, 1.0)
        self._hold(aim, round(self._least(aim)) + 0.5)

    def _nearest(self, aim: Aim) -> None:
        self._hold(aim, max(self._least(aim), 0.0) + SLACK)

    def _in_order(self, columns: Iterable[int]) -> None:
        """Of equally good answers the one that breaks the first named last."""
        programme = self.columns.programme
        for column in columns:
            programme.limit(column, 0.0, 0.0)
            if self.best[column] < 0.5:
                continue
            found = programme.least({})
            if found is None:
                programme.limit(column, 1.0, 1.0)
            else:
                self.best = self.columns.tightened(found)

    def _fewest_off_tape(self) -> None:
        self._hold(self._marks_missed(), round(self._least(self._marks_missed())) + 0.5)
        stages: dict[int, dict[int, float]] = {}
        for mark, off in self.columns.off:
            stages.setdefault(mark.stage, {})[off] = float(len(mark.unknowns))
        for stage in sorted(stages):
            if len(stages) > 1:
                self._hold(stages[stage], round(self._least(stages[stage])) + 0.5)
            self._in_order(stages[stage])

    def _plan_is_kept(self) -> None:
        self._fewest(self.columns.parts)
        self._in_order(self.columns.parts)
        self._rules(Strength.KEPT)

    def _seasons(self) -> None:
        short = [column for _, column in self.columns.short]
        self._nearest(dict.fromkeys(short, 1.0))
        for column in short:
            self._nearest({column: 1.0})

    def _alike(self) -> None:
        groups = self.columns.groups
        spreads = [{group.spread[0]: 1.0, group.spread[1]: -1.0} for group in groups]
        self._nearest({column: cost for aim in spreads for column, cost in aim.items()})
        for spread in spreads:
            self._nearest(spread)
        for group in groups:
            if group.without_sink is not None:
                self._nearest({group.without_sink[0]: 1.0, group.without_sink[1]: -1.0})
            self._nearest(dict.fromkeys(group.from_first, 1.0))
            for distance in group.from_first:
                self._nearest({distance: 1.0})

    def _rules(self, strength: Strength) -> None:
        rows = self.columns.yielding.get(strength, [])
        self._fewest(y.broken for y in rows)
        self._nearest({y.amount: 1.0 for y in rows})
        self._in_order(y.broken for y in rows)
        self._least_amounts(rows)

    def _least_amounts(self, rows: Sequence[Yielding]) -> None:
        for row in rows:
            if self.best[row.broken] > 0.5:
                self._nearest({row.amount: 1.0})
