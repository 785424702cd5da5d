"""Fits and wide parts through the year, month by month, as papers and the page show them.

The room's file tells its driest and its dampest spell. Which months these are, and what lies
between, is assumed where it does not say: see `scantling.timber.room.wave`.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

from scantling.exact import Fraction
from scantling.findings import Place
from scantling.setting_out.answer import Line, SetGap, SettingOut
from scantling.setting_out.year import amount, cured
from scantling.sizes.words import SHAVING
from scantling.timber.movement import Cut, coefficient, strain
from scantling.timber.room import MONTHS, Room
from scantling.timber.species import species
from scantling.units import FINEST_INCH, INCH, Unit, rounded

WIDE_INCH, WIDE_MM = 3 * INCH, Fraction(75)  # [mm] parts as wide as this are told


@dataclass(frozen=True, kw_only=True)
class YearFit:
    """A fit through the year. Lengths in mm; like fits at like sizes are one."""

    what: str  # in the maker's words: "gap over the drawer fronts"
    names: tuple[str, ...]  # of the gaps that are alike
    parts: tuple[str, ...]  # that move on it
    place: Place | None  # in the maker's file
    made: Fraction  # as it is made, at the bench's moisture
    months: tuple[Fraction, ...]  # from January to December; below 0 where wood would overlap
    in_damp: Fraction  # at the two ends that the room's file tells
    in_dry: Fraction
    least: Fraction  # allowed in any month
    greatest: Fraction | None  # None: any
    make: tuple[Fraction, Fraction | None]  # least and most to make it today, on the maker's rule
    holds: bool  # never less than the least nor more than the greatest
    verdict: str
    advice: str  # what to make it today
    because: str
    source: str

    @property
    def slack(self) -> Fraction:
        """What is left beyond the least in the tightest month, or on the day it is made. [mm]"""
        return min(self.made, *self.months) - self.least

    @property
    def moves(self) -> Fraction:
        """From the driest month to the dampest: below 0 where it closes. [mm]"""
        return self.in_damp - self.in_dry


@dataclass(frozen=True, kw_only=True)
class YearMove:
    """Movement of the width of like parts through the year. Lengths in mm."""

    mark: int  # of the cutting list
    family: str
    parts: tuple[str, ...]
    wood: str
    cut: str
    width: Fraction  # as made
    coefficient: Fraction  # change of width over width, per 1 % of moisture [-]
    grow: Fraction  # from the bench to the dampest month; below 0: narrower than made
    shrink: Fraction  # from the bench to the driest; below 0: wider than made
    source: str = "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2 and table 13-5"

    @property
    def swing(self) -> Fraction:
        """From the driest month to the dampest. [mm]"""
        return self.grow + self.shrink


def year_moves(setting_out: SettingOut) -> tuple[YearMove, ...]:
    """Every part 3 in (75 mm) wide or more, by the lines of the cutting list.

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-2 and table 13-5.
    """
    whole = setting_out.piece.whole
    wide = WIDE_INCH if whole.measure is Unit.INCH else WIDE_MM
    return tuple(
        _move(line, whole.room) for line in setting_out.lines if line.part.extent.width >= wide
    )


def _move(line: Line, room: Room) -> YearMove:
    part, wood = line.part, species(line.part.wood)
    cut, width = Cut(part.cut_of_wood), line.part.extent.width
    moved = strain(wood, cut, room)
    return YearMove(
        mark=line.mark,
        family=line.family,
        parts=tuple(each.name for each in line.parts),
        wood=part.wood,
        cut=part.cut_of_wood,
        width=width,
        coefficient=coefficient(wood, cut),
        grow=moved.grow * width,
        shrink=moved.shrink * width,
    )


def year_fits(setting_out: SettingOut) -> tuple[YearFit, ...]:
    """Every fit that the year works on: those that fail first, then the closest."""
    whole = setting_out.piece.whole
    alike: dict[tuple[object, ...], list[SetGap]] = {}
    for found in setting_out.year:
        if found.gap.what:
            key = (found.gap.what, found.at_bench, found.in_damp, found.in_dry, found.gap.least)
            alike.setdefault(key, []).append(found)
    unit = setting_out.habits.figures or whole.measure
    room, dampness = whole.room, whole.room.dampness
    fits = (
        _fit(gaps, unit=unit, finest=whole.finest, room=room, dampness=dampness)
        for gaps in alike.values()
    )
    return tuple(sorted(fits, key=lambda fit: (fit.holds, fit.slack)))


def _fit(
    alike: list[SetGap],
    *,
    unit: Unit,
    finest: Fraction,
    room: Room,
    dampness: tuple[Fraction, ...],
) -> YearFit:
    first, gap = alike[0], alike[0].gap
    make = _today(first, finest)
    return YearFit(
        what=gap.what,
        names=tuple(each.gap.name for each in alike),
        parts=tuple(dict.fromkeys(part for each in alike for part, _ in each.gap.moving)),
        place=first.place,
        made=first.at_bench,
        months=tuple(first.at(share) for share in dampness),
        in_damp=first.in_damp,
        in_dry=first.in_dry,
        least=gap.least,
        greatest=gap.greatest,
        make=make,
        holds=_holds(first),
        verdict=_verdict(first, unit, room),
        advice=_advice(first, make, unit),
        because=gap.because,
        source=gap.source,
    )


def _today(found: SetGap, finest: Fraction) -> tuple[Fraction, Fraction | None]:
    """Least and most to make it, on the rule: neither binds in one month nor gapes in another."""
    gap, made = found.gap, found.at_bench
    least = ceil(max(made - found.tightest + gap.least, Fraction(0)) / finest) * finest
    if gap.least - found.tightest < SHAVING:
        least = min(least, made)  # it does as it is, though between two marks
    if gap.greatest is None:
        return least, None
    return least, floor((made - found.most_open + gap.greatest) / finest) * finest


def _holds(found: SetGap) -> bool:
    gap = found.gap
    return gap.least - found.tightest < SHAVING and not _gapes(found)


def _gapes(found: SetGap) -> bool:
    return found.gap.greatest is not None and found.most_open > found.gap.greatest


def _verdict(found: SetGap, unit: Unit, room: Room) -> str:
    """What happens, in which month and by how much, and what the hand does about it."""
    gap, tight = found.gap, found.tightest
    when = _when(found, tight, room)
    if gap.least - tight >= SHAVING:
        short = gap.least - tight
        by = f"by {_near(-tight, unit)}" if tight < 0 else f": only {_near(tight, unit)} is left"
        happens = f"{gap.closed} {when} {by}".replace(" :", ":")
        return f"{happens[0].upper()}{happens[1:]}. {cured(gap, short=short, unit=unit)}"
    if _gapes(found):
        most = _near(found.most_open, unit)
        return (
            f"The {gap.what} will gape {_when(found, found.most_open, room)}: {most}."
            " Make it smaller today."
        )
    if tight == found.at_bench:
        return "Enough: it is never less than today."
    return f"Enough: {_near(tight, unit)} is left {when}, the least of the year."


def _when(found: SetGap, size: Fraction, room: Room) -> str:
    if size == found.at_bench:
        return "today"
    month = room.damp_month if size == found.in_damp else room.dry_month
    return f"in {MONTHS[month]}"


def _advice(found: SetGap, make: tuple[Fraction, Fraction | None], unit: Unit) -> str:
    least, most = make
    if most is not None and most < least:
        return "No size on your rule does for the whole year: take wood that moves less."
    upper = _from(least, most, unit)
    if found.at_bench < least or (most is not None and found.at_bench > most):
        return f"Make it {upper} today, not {amount(found.at_bench, unit)}."
    return f"Made {amount(found.at_bench, unit)}; {upper} will do today."


def _from(least: Fraction, most: Fraction | None, unit: Unit) -> str:
    if most is not None:
        return f"from {amount(least, unit)} to {amount(most, unit)}"
    return f"{amount(least, unit)} or more" if least else "none at all"


def _near(value: Fraction, unit: Unit) -> str:
    """An amount as a rule shows it, for a sentence; the exact one stands beside it."""
    mark = FINEST_INCH if unit is Unit.INCH else Fraction(1, 10)
    near = rounded(value, to=mark)
    return amount(near, unit) if near else f"less than {amount(mark, unit)}"
