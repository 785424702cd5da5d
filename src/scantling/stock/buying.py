"""What to buy for the blanks that found no place: the cheapest boards on the merchant's list.

A board is reckoned as narrow as the list allows, so what is bought does at least what is said.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.sizes.stopping import Stop
from scantling.stock._lumber import widest_from
from scantling.stock.job import Job, Wanted
from scantling.stock.lay_out import cost
from scantling.stock.merchant import Offer
from scantling.stock.plan import Plan
from scantling.stock.rule import Turn, by_rule

MOST = 12  # boards of one kind; who needs more surveys them first
_WAY = (Turn.WIDE, Turn.STRIPS)


@dataclass(frozen=True, kw_only=True)
class Bought:
    """Boards to buy for some blanks, with the plan that shows they are enough."""

    offer: Offer
    feet: int  # length of each [ft]
    job: Job
    plan: Plan

    @property
    def count(self) -> int:
        """How many boards."""
        return len(self.plan.boards)

    @property
    def cost(self) -> Fraction:
        """In the maker's money."""
        return cost(self.plan, self.job)


@dataclass(frozen=True, kw_only=True)
class Shopping:
    """What to buy, and what nobody sells."""

    bought: tuple[Bought, ...]
    unsold: tuple[Wanted, ...]


def shopping(short: Sequence[Wanted], *, offers: Sequence[Offer], job: Job, stop: Stop) -> Shopping:
    """Boards to buy for blanks that are short.

    Args:
        short: The blanks.
        offers: The merchant's list.
        job: The job they come from.
        stop: When to leave off comparing [runs of the rule]; each blank gets one kind at least.
    """
    groups: dict[Offer, list[Wanted]] = {}
    unsold = []
    for each in short:
        fit = [offer for offer in offers if _fits(each, offer, job)]
        if not fit:
            unsold.append(each)
            continue
        # the thinnest that does, and of those the cheapest to the foot
        first = min(fit, key=lambda offer: (offer.thickness, offer.price, offer.place))
        groups.setdefault(first, []).append(each)
    bought = []
    for offer, wanted in groups.items():
        found = min(
            _tried(offer, wanted, job, stop),
            key=lambda each: (len(each.plan.short), each.cost, each.count, each.feet),
        )
        bought.append(found)
        unsold += [each for each in wanted if each.part in found.plan.short]
    return Shopping(bought=tuple(each for each in bought if each.count), unsold=tuple(unsold))


def _fits(wanted: Wanted, offer: Offer, job: Job) -> bool:
    board = offer.board("new", feet=offer.lengths[-1])
    return bool(widest_from(wanted, board, job=job))


def _tried(offer: Offer, wanted: Sequence[Wanted], job: Job, stop: Stop) -> Iterator[Bought]:
    """A plan for each length that is sold, the longest first."""
    for feet in reversed(offer.lengths):
        if feet != offer.lengths[-1] and not stop.left():
            return
        stop.spent(1)
        boards = tuple(offer.board(f"new {n + 1}", feet=feet) for n in range(MOST))
        own = replace(job, boards=boards, wanted=tuple(wanted))
        yield Bought(offer=offer, feet=feet, job=own, plan=by_rule(own, turns=_WAY))
