"""The one door from a job to a plan with its bound; what searches behind it may be replaced.

Each wood is laid out by itself. The maker's rule is run in several ways, then again with one
board after the other left on the rack, the dearest first; the best that was found is kept.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from scantling.exact import Fraction
from scantling.sizes.stopping import CountedWork, Stop
from scantling.stock._lumber import widest_from
from scantling.stock.boards import Board
from scantling.stock.bound import Bound, bound
from scantling.stock.job import Job, Wanted
from scantling.stock.plan import Plan
from scantling.stock.rule import Turn, by_rule

ENOUGH = 60  # runs of the rule for one piece; the demo needs 20
_WAYS = (tuple(Turn), *((turn,) for turn in Turn), (Turn.STRIPS, Turn.NARROW))


class Why(StrEnum):
    """What no board of the rack has enough of for a blank."""

    WOOD = "wood"
    RINGS = "rings"
    LENGTH = "length"
    THICKNESS = "thickness"
    WIDTH = "width"
    FLATNESS = "flatness"


@dataclass(frozen=True, kw_only=True)
class Beyond:
    """A blank that no board gives, however it is laid out."""

    wanted: Wanted
    why: Why


@dataclass(frozen=True, kw_only=True)
class Reckoned:
    """A wood laid out: its plan, what that costs, and what no plan could beat."""

    wood: str
    job: Job  # without what lies beyond every board
    plan: Plan
    bound: Bound

    @property
    def cost(self) -> Fraction:
        """What was paid for the boards that are cut into, where that is known."""
        return cost(self.plan, self.job)

    @property
    def count(self) -> int:
        """Boards that are cut into."""
        return len(self.plan.boards)

    @property
    def is_best(self) -> bool:
        """Whether it is proven that fewer boards cannot do it."""
        return not self.plan.short and self.count == self.bound.count


@dataclass(frozen=True, kw_only=True)
class Laid:
    """A job laid out."""

    job: Job
    woods: tuple[Reckoned, ...]
    beyond: tuple[Beyond, ...]

    @property
    def plan(self) -> Plan:
        """All woods in one plan; what lies beyond every board is short too."""
        short = {part for each in self.woods for part in each.plan.short}
        short |= {each.wanted.part for each in self.beyond}
        return Plan(
            sections=tuple(section for each in self.woods for section in each.plan.sections),
            short=tuple(each.part for each in self.job.wanted if each.part in short),
        )

    @property
    def short(self) -> tuple[Wanted, ...]:
        """Blanks without a place."""
        names = frozenset(self.plan.short)
        return tuple(each for each in self.job.wanted if each.part in names)


def lay_out(job: Job, *, stop: Stop | None = None) -> Laid:
    """The best plan found for a job, with what is proven of every other.

    Args:
        job: Boards, blanks and saws.
        stop: When to leave off looking [runs of the rule]. None: after `ENOUGH` of them.
    """
    stop = CountedWork(most=ENOUGH) if stop is None else stop
    woods = dict.fromkeys(each.wood for each in job.wanted)
    reckoned, beyond = [], []
    for wood in woods:
        boards = tuple(board for board in job.boards if board.wood == wood)
        wanted = tuple(each for each in job.wanted if each.wood == wood)
        lost = [Beyond(wanted=w, why=why) for w in wanted if (why := _beyond(w, boards, job))]
        beyond += lost
        names = {each.wanted.part for each in lost}
        own = replace(job, boards=boards, wanted=tuple(w for w in wanted if w.part not in names))
        if own.wanted:
            found = Reckoned(wood=wood, job=own, plan=_best(own, stop), bound=bound(own))
            reckoned.append(found)
    return Laid(job=job, woods=tuple(reckoned), beyond=tuple(beyond))


def cost(plan: Plan, job: Job) -> Fraction:
    """What was paid for the boards a plan cuts into, where that is known."""
    paid = {board.name: board.paid or Fraction(0) for board in job.boards}
    return sum((paid[name] for name in plan.boards), Fraction(0))


def _beyond(wanted: Wanted, boards: tuple[Board, ...], job: Job) -> Why | None:
    """Why no board gives a blank: the first thing of which none that is left has enough."""
    if any(widest_from(wanted, board, job=job) for board in boards):
        return None
    trim = 2 * job.cutting.end_trim
    least = wanted.width
    if wanted.glued_up:
        least = min(job.cutting.narrowest_strip, wanted.width) + job.cutting.strip_joint
    for why, serves in (
        (Why.WOOD, lambda _: True),
        (Why.RINGS, lambda b: b.serves(wanted.cut)),
        (Why.LENGTH, lambda b: b.length - trim >= wanted.length),
        (Why.THICKNESS, lambda b: job.gives(b, length=_NONE, width=_NONE) >= wanted.thickness),
        (Why.WIDTH, lambda b: b.widest >= least),
    ):
        boards = tuple(board for board in boards if serves(board))
        if not boards:
            return why
    return Why.FLATNESS


_NONE = Fraction(0)


def _best(job: Job, stop: Stop) -> Plan:
    """The best plan of the rule run in several ways. The first is made whatever `stop` says."""
    best = min(_tried(job, stop), key=lambda plan: _rank(plan, job))
    kept = job.boards
    for board in sorted(job.boards, key=lambda board: (-(board.paid or _NONE), board.name)):
        if best.short or not stop.left():
            break
        if board.name not in best.boards:
            continue
        fewer = tuple(each for each in kept if each is not board)
        found = min(_tried(replace(job, boards=fewer), stop), key=lambda plan: _rank(plan, job))
        if _rank(found, job) < _rank(best, job):
            best, kept = found, fewer
    return best


def _tried(job: Job, stop: Stop) -> Iterator[Plan]:
    """Plans of the rule run in every way, until nothing is short."""
    for i, turns in enumerate(_WAYS):
        if i and not stop.left():
            return
        stop.spent(1)
        plan = by_rule(job, turns=turns)
        yield plan


def _rank(plan: Plan, job: Job) -> tuple[Fraction, Fraction, int]:
    """Least area short, then cheapest, then fewest boards."""
    short = frozenset(plan.short)
    area = sum((w.length * w.width for w in job.wanted if w.part in short), _NONE)
    return area, cost(plan, job), len(plan.boards)
