"""The only door to the solver: columns, rows, and the least of a sum over them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from math import isfinite
from typing import Any

import highspy
import numpy as np
from highspy._core import _Highs

from scantling.errors import InternalError
from scantling.sizes.stopping import NO_END, NoStop, Stop

INFINITE = float(highspy.kHighsInf)
# The public class greets on standard output before it can be told to be silent; this is the
# one beneath it, without callbacks. Neither ships types.
_new: Callable[[], Any] = _Highs
WORTH = 1e-6  # share by which an answer may miss its stated worth
TOLERANCE = 1e-9  # the solver's, on rows and on whole numbers


class StoppedError(Exception):
    """The search was told to end before it was through. Only for the room itself."""

    def __init__(self, found: list[float] | None) -> None:
        super().__init__("the search was told to end")
        self.found = found  # columns of an answer that holds, if one was met


@dataclass(slots=True)
class Programme:
    """A mixed programme, solved again and again with other aims. Its numbers are bare. [-]"""

    lower: list[float] = field(default_factory=list)
    upper: list[float] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    rows: list[tuple[Mapping[int, float], float, float]] = field(default_factory=list)
    stop: Stop = field(default_factory=NoStop)
    solves: int = 0  # how often the solver ran
    _solver: Any = None
    _loose: Programme | None = None  # the same without whole numbers, kept in step

    def column(self, *, lower: float, upper: float, whole: bool = False) -> int:
        """A new column between two limits [-]; its number."""
        self.lower.append(lower)
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.lower) - 1

    def row(self, terms: Mapping[int, float], *, lower: float, upper: float) -> None:
        """A sum of columns between two limits. [-]"""
        self.rows.append((terms, lower, upper))
        if self._solver is not None:
            cols = np.fromiter(terms.keys(), dtype=np.int32, count=len(terms))
            coefs = np.fromiter(terms.values(), dtype=np.float64, count=len(terms))
            self._solver.addRow(lower, upper, len(terms), cols, coefs)
        if self._loose is not None:
            self._loose.row(terms, lower=lower, upper=upper)

    def limit(self, column: int, *, lower: float, upper: float) -> None:
        """Set new limits to a column. [-]"""
        self.lower[column], self.upper[column] = lower, upper
        if self._solver is not None:
            self._solver.changeColBounds(column, lower, upper)
        if self._loose is not None:
            self._loose.limit(column, lower=lower, upper=upper)

    def least(
        self,
        costs: Mapping[int, float],
        *,
        start: Sequence[float] | None = None,
        most: int = NO_END,
    ) -> list[float] | None:
        """Columns at which the sum is least [-], or None if the rows cannot all hold.

        Args:
            costs: Weight of each column in the sum. [-]
            start: An answer known to hold, to begin from.
            most: Nodes looked at before any answer that holds is good enough.

        Raises:
            StoppedError: `stop` leaves no work.
            InternalError: The solver stops for any other reason.
        """
        if not self.stop.left() and any(self.whole):
            raise StoppedError(None if start is None else list(start))
        self._aim(costs)
        solver = self._solver
        if start is not None:
            begun = highspy.HighsSolution()
            begun.col_value = list(start)
            solver.setSolution(begun)
        found = self._run(most)
        if found is not None and not self._is_worth(found, costs):
            # A start is now and then handed back as it came, beside the aim of a better answer.
            solver.clearSolver()
            found = self._run(most)
            if found is None or not self._is_worth(found, costs):
                raise InternalError("the solver's answer is not worth what it says")
        return found

    def _aim(self, costs: Mapping[int, float]) -> None:
        if self._solver is None:
            self._load()
        every = np.zeros(len(self.lower))
        for column, cost in costs.items():
            every[column] = cost
        columns = np.arange(len(self.lower), dtype=np.int32)
        self._solver.changeColsCost(len(self.lower), columns, every)

    def _is_worth(self, found: Sequence[float], costs: Mapping[int, float]) -> bool:
        """Whether an answer is worth what the solver says it is."""
        said = float(self._solver.getInfo().objective_function_value)
        worth = sum(cost * found[column] for column, cost in costs.items())
        return abs(worth - said) <= WORTH * (1 + abs(said))

    def floor(self, costs: Mapping[int, float]) -> float:
        """What a sum cannot be less than, whole numbers or not. [-]

        It takes a small share of the time that `least` takes, and often says as much. Endless
        if the rows cannot all hold; endlessly small where the solver cannot tell.
        """
        if self._loose is None:
            self._loose = self.fixed({})
        return self._loose.worth(costs)

    def worth(self, costs: Mapping[int, float]) -> float:
        """The least of a sum [-], or an end beyond all where there is none or it is not known."""
        self._aim(costs)
        self._solver.run()
        status = self._solver.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            return INFINITE
        if status != highspy.HighsModelStatus.kOptimal:
            return -INFINITE
        return float(self._solver.getInfo().objective_function_value)

    def prices(self, costs: Mapping[int, float]) -> list[float]:
        """By how much each row's limit weighs on the least of a sum [-]; 0 where it does not.

        Raises:
            InternalError: The programme has whole columns, or its rows cannot all hold.
        """
        if any(self.whole) or self.least(costs) is None or self._solver is None:
            raise InternalError("prices are asked of a programme that has none")
        found: list[float] = list(self._solver.getSolution().row_dual)
        return found

    def fixed(self, values: Mapping[int, float]) -> Programme:
        """The same rows without whole numbers, some columns held at a value. [-]"""
        lower = [values.get(column, limit) for column, limit in enumerate(self.lower)]
        upper = [values.get(column, limit) for column, limit in enumerate(self.upper)]
        return Programme(lower, upper, [False] * len(lower), list(self.rows))

    def _run(self, most: int) -> list[float] | None:
        solver = self._solver
        solver.setOptionValue("mip_max_nodes", min(most, self.stop.left()))
        if isfinite(seconds := self.stop.seconds()):
            # The solver's limit counts from its first run.
            solver.setOptionValue("time_limit", solver.getRunTime() + max(seconds, 0.0))
        solver.run()
        self.solves += 1
        self.stop.spent(1 + max(int(solver.getInfo().mip_node_count), 0))
        try:
            return self._answer()
        except StoppedError as stopped:
            if stopped.found is None or not self.stop.left():
                raise
            return stopped.found

    def _answer(self) -> list[float] | None:
        solver = self._solver
        status = solver.getModelStatus()
        if status in (
            highspy.HighsModelStatus.kSolutionLimit,
            highspy.HighsModelStatus.kTimeLimit,
        ):
            holds = solver.getInfo().primal_solution_status == highspy.kSolutionStatusFeasible
            raise StoppedError(list(solver.getSolution().col_value) if holds else None)
        if status == highspy.HighsModelStatus.kInfeasible:
            return None
        if status != highspy.HighsModelStatus.kOptimal:
            raise InternalError(f"the solver stopped: {solver.modelStatusToString(status)}")
        found: list[float] = list(solver.getSolution().col_value)
        return found

    def _load(self) -> None:
        solver = self._solver = _new()
        for name, value in (
            ("output_flag", False),
            ("threads", 1),
            ("parallel", "off"),
            ("random_seed", 0),
            # a guess made at length before anything is proven: half the time of small programmes
            ("mip_heuristic_run_feasibility_jump", False),
            ("mip_rel_gap", 0.0),
            ("mip_abs_gap", TOLERANCE),
            ("mip_feasibility_tolerance", TOLERANCE),
            ("primal_feasibility_tolerance", TOLERANCE),
            ("dual_feasibility_tolerance", TOLERANCE),
        ):
            solver.setOptionValue(name, value)
        solver.passModel(self._model())

    def _model(self) -> highspy.HighsLp:
        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(self.lower), len(self.rows)
        model.col_cost_ = np.zeros(len(self.lower))
        model.col_lower_, model.col_upper_ = np.array(self.lower), np.array(self.upper)
        model.row_lower_ = np.array([row[1] for row in self.rows])
        model.row_upper_ = np.array([row[2] for row in self.rows])
        matrix = model.a_matrix_
        matrix.format_ = highspy.MatrixFormat.kRowwise
        matrix.num_col_, matrix.num_row_ = model.num_col_, model.num_row_
        matrix.start_ = np.cumsum([0, *(len(row[0]) for row in self.rows)], dtype=np.int32)
        matrix.index_ = np.array([c for row in self.rows for c in row[0]], dtype=np.int32)
        matrix.value_ = np.array([v for row in self.rows for v in row[0].values()], dtype=float)
        if any(self.whole):
            kinds = highspy.HighsVarType
            model.integrality_ = [kinds.kInteger if w else kinds.kContinuous for w in self.whole]
        return model
