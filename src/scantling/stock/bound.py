"""What no plan can beat: the least count and the least cost of boards, proven.

Every way of sawing must give each of a few sums enough: the area of all blanks, and for each
length the widths of the blanks that are at least so long; each of them also for the blanks that
need thick boards alone. Weights on these sums make one inequality; what it proves is reckoned in
exact numbers, whatever the weights are. The weights come from a linear programme.

References:
    The weighing is weak duality of linear programming. That blanks of at least a length meet one
    of the lines drawn through a board at every such length is the argument behind dual feasible
    functions: S. P. Fekete and J. Schepers, Math. Methods of Operations Research 60 (2004),
    311-329 (from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Any

import highspy
import numpy as np
from highspy._core import _Highs

from scantling.exact import Fraction
from scantling.stock.boards import Board, Harm
from scantling.stock.job import Cutting, Job, Wanted

_new: Callable[[], Any] = _Highs  # the bare solver: its comely cover writes a banner
_WEIGHT = 10**9  # weights are rounded to so many parts; any weights prove something


@dataclass(frozen=True, kw_only=True)
class Sum:
    """A sum that must suffice: what blanks need, and the most each board brings. [mm, mm2]"""

    says: str
    need: Fraction
    brings: tuple[Fraction, ...]  # of each board of the job, in their order

    @property
    def lacks(self) -> bool:
        """Whether all boards together do not bring enough."""
        return sum(self.brings, Fraction(0)) < self.need


@dataclass(frozen=True, kw_only=True)
class Bound:
    """What is proven of every plan that leaves no blank out."""

    count: int  # boards at the least
    cost: Fraction  # at the least, of boards whose price is known
    lacking: tuple[Sum, ...] = ()  # sums that all boards together do not reach: no plan can do it


def bound(job: Job) -> Bound:
    """The least that a plan for all blanks of a job can take."""
    found = tuple(sums(job))
    lacking = tuple(each for each in found if each.lacks)
    if lacking or not job.boards or not found:
        return Bound(count=0, cost=Fraction(0), lacking=lacking)
    ones = [Fraction(1)] * len(job.boards)
    paid = [board.paid or Fraction(0) for board in job.boards]
    return Bound(count=ceil(_proven(found, ones)), cost=_proven(found, paid))


def sums(job: Job) -> Iterator[Sum]:
    """Everything that must suffice, by thickness and by length."""
    for thick in sorted({each.thickness for each in job.wanted}):
        blanks = [each for each in job.wanted if each.thickness >= thick]
        boards = [_most(board, job=job) >= thick for board in job.boards]
        yield _sum(job, blanks, boards, says="area", needed=_area_needed, brought=_area_brought)
        for long in sorted({each.length for each in blanks}):
            least = [each for each in blanks if each.length >= long]
            yield _sum(job, least, boards, says="width", needed=_width_needed, brought=_lines(long))


def _sum(
    job: Job,
    blanks: Sequence[Wanted],
    serves: Sequence[bool],
    *,
    says: str,
    needed: Callable[[Wanted, Job], Fraction],
    brought: Callable[[Board, Cutting], Fraction],
) -> Sum:
    zero = Fraction(0)
    return Sum(
        says=says,
        need=sum((needed(each, job) for each in blanks), zero),
        brings=tuple(
            brought(board, job.cutting) if able else zero
            for board, able in zip(job.boards, serves, strict=True)
        ),
    )


def _most(board: Board, *, job: Job) -> Fraction:
    """Thickness of the flattest piece it could give. [mm]"""
    return job.gives(board, length=Fraction(0), width=Fraction(0))


def _width_needed(wanted: Wanted, job: Job) -> Fraction:
    """Width of a blank with the kerf beside it; of a panel, of as few strips as may be. [mm]"""
    cutting = job.cutting
    if not wanted.glued_up:
        return wanted.width + cutting.kerf_along
    widest = max((b.widest for b in job.boards if b.wood == wanted.wood), default=Fraction(1))
    net = max(min(cutting.widest_strip, widest - cutting.strip_joint), Fraction(1))
    each = cutting.strip_joint + cutting.kerf_along
    return wanted.width + ceil(wanted.width / net) * each


def _area_needed(wanted: Wanted, job: Job) -> Fraction:
    """The same times its length with the kerf behind it. [mm2]"""
    return _width_needed(wanted, job) * (wanted.length + job.cutting.kerf_across)


def _area_brought(board: Board, cutting: Cutting) -> Fraction:
    """Area that is not spoilt over the whole width, each stretch with a kerf behind it. [mm2]"""
    stretches = [high - low + cutting.kerf_across for low, high in _sound(board, cutting)]
    return sum(stretches, Fraction(0)) * (board.widest + cutting.kerf_along)


def _lines(long: Fraction) -> Callable[[Board, Cutting], Fraction]:
    """Width that blanks of at least a length find in a board. [mm]"""

    def brought(board: Board, cutting: Cutting) -> Fraction:
        # The lines stand a blank and its kerf apart; whatever is that long meets one of them.
        lines = sum(
            floor((high - low + cutting.kerf_across) / (long + cutting.kerf_across))
            for low, high in _sound(board, cutting)
        )
        return lines * (board.widest + cutting.kerf_along)

    return brought


def _sound(board: Board, cutting: Cutting) -> list[tuple[Fraction, Fraction]]:
    """Stretches between the trimmed ends that are not spoilt over the whole width. [mm]"""
    at, last = cutting.end_trim, board.length - cutting.end_trim
    found = []
    for start, stop in _spoilt(board):
        found.append((at, min(start, last)))
        at = max(at, stop)
    return [(low, high) for low, high in (*found, (at, last)) if low < high]


def _spoilt(board: Board) -> list[tuple[Fraction, Fraction]]:
    return sorted(
        (each.start, each.stop)
        for each in board.defects
        if each.harm is Harm.SPOILS and each.near <= 0 and each.far >= board.widest
    )


def _proven(sums: Sequence[Sum], cost: Sequence[Fraction]) -> Fraction:
    """Least cost of boards that reach all sums, by the best weights that were found.

    Reckoned in exact numbers: weights times needs, less what every board brings above its cost.
    """
    weights = _weights(sums, cost)
    worth = sum((w * each.need for w, each in zip(weights, sums, strict=True)), Fraction(0))
    for i, price in enumerate(cost):
        brings = sum(
            (w * each.brings[i] for w, each in zip(weights, sums, strict=True)), Fraction(0)
        )
        worth -= max(brings - price, Fraction(0))
    return max(worth, Fraction(0))


def _weights(sums: Sequence[Sum], cost: Sequence[Fraction]) -> list[Fraction]:
    """Weights of the sums: duals of the programme that buys boards by shares."""
    solver = _new()
    for name, value in (("output_flag", False), ("threads", 1), ("parallel", "off")):
        solver.setOptionValue(name, value)
    solver.passModel(_model(sums, cost))
    solver.run()
    duals = solver.getSolution().row_dual
    return [
        Fraction(round(max(dual, 0) * _WEIGHT), _WEIGHT) / each.need
        for dual, each in zip(duals, sums, strict=True)
    ]


def _model(sums: Sequence[Sum], cost: Sequence[Fraction]) -> highspy.HighsLp:
    """Each board is bought by a share from none to all; every sum is reached, 1 being its need."""
    model, boards = highspy.HighsLp(), len(cost)
    model.num_col_, model.num_row_ = boards, len(sums)
    model.col_cost_ = np.array([float(price) for price in cost])
    model.col_lower_, model.col_upper_ = np.zeros(boards), np.ones(boards)
    model.row_lower_ = np.ones(len(sums))
    model.row_upper_ = np.full(len(sums), highspy.kHighsInf)
    matrix = model.a_matrix_
    matrix.format_ = highspy.MatrixFormat.kRowwise
    matrix.num_col_, matrix.num_row_ = boards, len(sums)
    matrix.start_ = np.arange(0, boards * len(sums) + 1, boards, dtype=np.int32)
    matrix.index_ = np.tile(np.arange(boards, dtype=np.int32), len(sums))
    matrix.value_ = np.array([float(b / each.need) for each in sums for b in each.brings])
    return model
