"""What a layout comes to, in sentences: how many boards, what is proven, what is short."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.stock.boards import Board
from scantling.stock.buying import Bought, Shopping
from scantling.stock.job import Wanted
from scantling.stock.lay_out import Beyond, Laid, Reckoned, Why
from scantling.units import FINEST_INCH, Unit, rounded, written_with_unit

_WORDS = (
    *("no", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)

_BEYOND = {  # worded so that several parts may be named at once
    Why.WOOD: ("stock.no-board-of-its-wood", "no board of {wood} was surveyed for the {part}"),
    Why.RINGS: (
        "stock.no-board-so-sawn",
        "no board of {wood} is {cut}-sawn, as is asked of the {part}",
    ),
    Why.LENGTH: (
        "stock.longer-than-any-board",
        "no board of {wood} gives the length of the {part}",
    ),
    Why.THICKNESS: (
        "stock.thicker-than-any-board",
        "no board of {wood} gives the thickness of the {part}",
    ),
    Why.WIDTH: ("stock.wider-than-any-board", "no board of {wood} gives the width of the {part}"),
    Why.FLATNESS: (
        "stock.too-warped",
        "no board of {wood} is flat enough for the thickness of the {part}",
    ),
}
_CURES = {
    Why.WOOD: "Survey a board of it.",
    Why.RINGS: "Survey a board sawn so, or state another cut of the wood where the year allows it.",
    Why.LENGTH: "Survey a longer board, or make the part shorter.",
    Why.THICKNESS: "Survey a thicker board, or glue it up face to face from thinner ones.",
    Why.WIDTH: "Survey a wider board, or let widest_strip have it glued up from strips.",
    Why.FLATNESS: "Survey a flatter board, or make the part a little thinner.",
}
_NO_PLACE = "Survey another board, or buy one."


def verdict(found: Reckoned) -> str:
    """The plan of a wood in plain words. Only what is proven is told as such."""
    boards = _boards(found.count)
    if found.plan.short:
        many = len(found.plan.short)
        lost = f"{boards[0].upper()}{boards[1:]}, and {_counted(many, 'part')} without a place"
        if found.bound.lacking:
            return f"{lost}: these boards cannot give all of it, however they are sawn."
        return f"{lost}; whether another way of sawing finds one is not proven."
    fewer = found.bound.count - 1
    said = f"{boards[0].upper()}{boards[1:]}"
    if fewer < 1:
        unknown = "; whether one could do it is not proven" if found.count > 1 else ""
        return f"{said}{unknown}."
    cannot = f"{_word(fewer)} cannot do it"
    if found.is_best:
        return f"{said}; {cannot}."
    return f"{said}; {cannot}, and whether {_word(fewer + 1)} could is not proven."


def findings(laid: Laid, shopping: Shopping, *, unit: Unit) -> tuple[Finding, ...]:
    """What is short, each part with what to buy for it.

    Args:
        laid: The layout.
        shopping: What was found to buy.
        unit: In which lengths are told.
    """
    bought = {w.part: each for each in shopping.bought for w in each.job.wanted}
    for each in shopping.unsold:
        bought.pop(each.part, None)
    told = [_beyond(each, laid, bought, unit) for each in laid.beyond]
    return (*told, *_without_place(laid, bought))


def _beyond(found: Beyond, laid: Laid, bought: Mapping[str, Bought], unit: Unit) -> Finding:
    wanted = found.wanted
    code, says = _BEYOND[found.why]
    figure, limit = _held(found, laid, unit)
    return Finding(
        code=code,
        weight=Weight.MIND,
        says=says.format(part=wanted.part, wood=wanted.wood, cut=wanted.cut),
        cure=_cure(bought.get(wanted.part), _CURES[found.why]),
        figure=figure,
        limit=limit,
        parts=(wanted.part,),
    )


def _held(found: Beyond, laid: Laid, unit: Unit) -> tuple[str, str]:
    """The size that is too large, and the most that any board of its wood has."""
    wanted, job = found.wanted, laid.job
    own = [board for board in job.boards if board.wood == wanted.wood]
    zero = Fraction(0)

    def most_thick(board: Board) -> Fraction:
        return job.gives(board, length=zero, width=zero)

    if found.why is Why.LENGTH:
        trims = 2 * job.cutting.end_trim
        size, most = wanted.length, max(board.length for board in own) - trims
    elif found.why is Why.THICKNESS:
        size, most = wanted.thickness, max(most_thick(board) for board in own)
    elif found.why is Why.WIDTH:
        size, most = wanted.width, max(board.widest for board in own)
    else:
        return "", ""
    return _reads(size, unit), _reads(most, unit)


def _reads(value: Fraction, unit: Unit) -> str:
    near = rounded(value, to=FINEST_INCH if unit is Unit.INCH else Fraction(1))
    return written_with_unit(near, unit=unit)


def _without_place(laid: Laid, bought: Mapping[str, Bought]) -> Iterator[Finding]:
    for wood in laid.woods:
        for wanted in wood.job.wanted:
            if wanted.part in wood.plan.short:
                yield _no_place(wanted, bought.get(wanted.part), wood)


def _no_place(wanted: Wanted, bought: Bought | None, wood: Reckoned) -> Finding:
    if wood.bound.lacking:
        why = f"the boards of {wanted.wood} are not enough for all, however they are sawn"
    else:
        why = f"no place was found on the boards of {wanted.wood}"
    return Finding(
        code="stock.no-place",
        weight=Weight.MIND,
        says=f"there is nothing to saw the {wanted.part} from: {why}",
        cure=_cure(bought, _NO_PLACE),
        parts=(wanted.part,),
    )


def _cure(bought: Bought | None, otherwise: str) -> str:
    if bought is None:
        return otherwise
    return f"Buy {told(bought)}."


def told(bought: Bought) -> str:
    """What to ask the merchant for, and what it comes to."""
    offer = bought.offer
    boards = _counted(bought.count, "board")
    grade = f" {offer.grade}," if offer.grade else ""
    return (
        f"{boards} of {offer.wood},{grade} {offer.size}, {bought.feet} ft long or longer,"
        f" for about {money(bought.cost)}"
    )


def money(value: Fraction) -> str:
    """An amount with its cents, in whatever money the maker writes."""
    return f"{float(value):.2f}"


def _boards(count: int) -> str:
    return _counted(count, "board")


def _counted(count: int, what: str) -> str:
    return f"{_word(count)} {what}{'' if count == 1 else 's'}"


def _word(count: int) -> str:
    return _WORDS[count] if count < len(_WORDS) else str(count)
