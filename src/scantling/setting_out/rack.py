"""The boards a piece is sawn from: what lies beside its file, laid out for its parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.findings import Finding, in_order
from scantling.setting_out.answer import OnBoards, SettingOut
from scantling.setting_out.told import together
from scantling.shop.habits import Habits
from scantling.sizes.stopping import CountedWork, Stop
from scantling.stock import merchant, survey
from scantling.stock.boards import Board
from scantling.stock.buying import shopping
from scantling.stock.job import Job
from scantling.stock.lay_out import ENOUGH, lay_out
from scantling.stock.merchant import Offer
from scantling.stock.rough import cutting, wanted
from scantling.stock.verdict import findings
from scantling.timber.species import all_species
from scantling.units import Unit

BOARDS_FILE = "boards.csv"  # the survey, beside the piece file
MERCHANT_FILE = "merchant.csv"  # what can be bought, beside it too


@dataclass(frozen=True, kw_only=True)
class Rack:
    """The maker's boards and what his merchant sells."""

    boards: tuple[Board, ...]
    offers: tuple[Offer, ...] = ()
    findings: tuple[Finding, ...] = ()  # of reading both

    def attainable(self, habits: Habits) -> Mapping[str, Sequence[Fraction]]:
        """Thickness each board of a wood comes out at, by every name of the wood. [mm]"""
        gives: dict[str, list[Fraction]] = {}
        for board in self.boards:
            left = board.thickness - (Fraction(0) if board.dressed else habits.planing)
            wood = all_species()[board.wood]
            for name in (wood.name, *wood.trade_names):
                gives.setdefault(name, []).append(left)
        return gives


def rack(boards: str, *, prices: str = "", unit: Unit) -> Rack:
    """The rack that a survey and a price list describe.

    Args:
        boards: The survey, as `boards.csv` has it.
        prices: The merchant's list, as `merchant.csv` has it; empty if there is none.
        unit: Of lengths in the survey whose cell and column name none.
    """
    surveyed = survey.read(boards, unit=unit, file=BOARDS_FILE)
    listed = merchant.read(prices, file=MERCHANT_FILE) if prices else None
    return Rack(
        boards=surveyed.boards,
        offers=listed.offers if listed else (),
        findings=(*surveyed.findings, *(listed.findings if listed else ())),
    )


def beside_the_piece(
    setting_out: SettingOut,
    read: Callable[[str], str],
    *,
    before: SettingOut | None = None,
    stop: Stop | None = None,
) -> SettingOut:
    """The setting-out laid out on the boards surveyed beside its file; as it is without a survey.

    Args:
        setting_out: A piece worked through.
        read: Text of a file by its name; empty if there is none.
        before: As for `laid_out`.
        stop: As for `laid_out` [runs of the rule].
    """
    if not (boards := read(BOARDS_FILE)):
        return setting_out
    found = rack(boards, prices=read(MERCHANT_FILE), unit=setting_out.piece.whole.measure)
    return laid_out(setting_out, found, before=before, stop=stop)


def laid_out(
    setting_out: SettingOut,
    rack: Rack,
    *,
    before: SettingOut | None = None,
    stop: Stop | None = None,
) -> SettingOut:
    """The setting-out with its blanks laid out on boards, and what was found doing so.

    Args:
        setting_out: A piece worked through.
        rack: Boards and prices.
        before: An earlier answer; its layout is kept where boards, blanks and saws are the same.
        stop: When to leave off looking [runs of the rule].
    """
    if not setting_out.made:
        return _told(setting_out, rack.findings)
    stop = CountedWork(most=ENOUGH) if stop is None else stop
    habits = setting_out.habits
    job = Job(
        boards=rack.boards,
        wanted=wanted(setting_out.parts, habits=habits),
        cutting=cutting(shop=setting_out.shop, habits=habits),
    )
    found = before.boards if before is not None else None
    if found is None or found.laid.job != job or found.offers != rack.offers:
        laid = lay_out(job, stop=stop)
        # what to buy is asked when the search is over, so it has a stop of its own
        buying = CountedWork(most=ENOUGH)
        found = OnBoards(
            laid=laid,
            offers=rack.offers,
            shopping=shopping(laid.short, offers=rack.offers, job=job, stop=buying),
        )
    unit = habits.figures or setting_out.piece.whole.measure
    told = (*rack.findings, *findings(found.laid, found.shopping, unit=unit))
    return _told(replace(setting_out, boards=found), told)


def _told(setting_out: SettingOut, more: Sequence[Finding]) -> SettingOut:
    return replace(setting_out, findings=in_order(together((*setting_out.findings, *more))))
