"""The order of work of a piece: steps, gauge card, before-glue lists, nights of waiting."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.findings import Finding, Weight
from scantling.method.assemblies import GlueUp, Tie, glue_ups, ties
from scantling.method.before_glue import BeforeGlue, before_glue
from scantling.method.desk import Desk
from scantling.method.finishing import asked, finishing
from scantling.method.gauges import Held, gauge_card, lettered
from scantling.method.job import Before, Job, Step
from scantling.method.ordering import in_order
from scantling.method.precedence import precedence
from scantling.method.preparing import preparing
from scantling.shop.operations import word
from scantling.shop.tools import Shop, Tool


@dataclass(frozen=True, kw_only=True)
class Order:
    """A legal order of work. Its minutes are assumed, every one."""

    job: Job | None = None  # what it was made for
    steps: tuple[Step, ...] = ()
    pairs: tuple[Before, ...] = ()  # by number of the step, less one
    nights: tuple[int, ...] = ()  # nights of waiting behind each step when it begins
    gauges: tuple[Held, ...] = ()
    before_glue: tuple[BeforeGlue, ...] = ()
    glue_ups: tuple[GlueUp, ...] = ()
    ties: tuple[Tie, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def minutes_assumed(self) -> float:
        """Time at the bench, waiting not counted. [min]"""
        return sum(step.operation.minutes_assumed for step in self.steps)

    @property
    def settings(self) -> int:
        """How many different settings are wanted; no order sets gauges less often."""
        return len({each.letter for each in self.gauges})


NO_ORDER = Order()


def order_of_work(job: Job) -> Order:
    """Operations of the whole job in a legal order.

    Same job, same order. It is not proven shortest, and sittings are not laid into a calendar.
    """
    desk = laid_out(job)
    pairs = precedence(desk)
    places = in_order(desk.steps, pairs, sizes=job.sizes)
    numbered = [replace(desk.steps[i], number=n) for n, i in enumerate(places, start=1)]
    steps = lettered(numbered, job.sizes)
    at = {i: n for n, i in enumerate(places)}
    moved = tuple(replace(p, first=at[p.first], then=at[p.then]) for p in pairs)
    gauges = gauge_card(steps, shop=job.shop, sizes=job.sizes)
    return Order(
        job=job,
        steps=steps,
        pairs=moved,
        nights=_nights(steps, moved),
        gauges=gauges,
        before_glue=before_glue(steps, moved, desk.glue_ups),
        glue_ups=desk.glue_ups,
        ties=desk.ties,
        findings=tuple(_no_gauge(steps, job.shop)),
    )


def laid_out(job: Job) -> Desk:
    """Every step of the job, in no order yet."""
    groups = glue_ups(job)
    tied = ties(job, groups)
    steps = (*preparing(job, groups), *asked(job, tied), *finishing(job, groups))
    return Desk(job=job, steps=steps, glue_ups=groups, ties=tied)


def _nights(steps: Sequence[Step], pairs: Sequence[Before]) -> tuple[int, ...]:
    """Nights behind each step: those it waits for itself, and those waited for before it."""
    waits: dict[int, int] = {}
    rows: dict[int, list[int]] = {}
    for each in pairs:
        rows.setdefault(each.then, []).append(each.first)
    now = 0
    for i in range(len(steps)):
        own = (waits[a] + word(steps[a].name).nights_after for a in rows.get(i, ()))
        now = max(now, *own, 0)
        waits[i] = now
    return tuple(waits[i] for i in range(len(steps)))


def _no_gauge(steps: Sequence[Step], shop: Shop) -> Iterator[Finding]:
    wanted: dict[Tool, list[Step]] = {}
    for step in steps:
        setting = step.operation.setting
        if setting is not None and not shop.holding(setting.held_by):
            wanted.setdefault(setting.held_by, []).append(step)
    for tool, row in wanted.items():
        parts: Mapping[str, None] = dict.fromkeys(part for step in row for part in step.parts)
        yield Finding(
            code="method.no-gauge",
            weight=Weight.MIND,
            says=f"no {tool} stands in the shop, and {len(row)} steps are worked at its setting",
            cure=f"List a {tool} in the shop's file, or borrow one and keep it set till the last.",
            figure="0",
            limit="1",
            parts=tuple(parts),
        )
