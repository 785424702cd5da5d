"""Gaps of forms through the year: what the size solver is asked to keep, and what is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import ceil

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._joint import Gap, Strains
from scantling.piece._form import Fitting
from scantling.setting_out.answer import SetGap
from scantling.sizes.linear import total
from scantling.sizes.model import Bound, Relations, Sizes, Stated, Yields
from scantling.sizes.words import SHAVING
from scantling.timber.movement import LINEAR, Strain, within_linear
from scantling.timber.room import Room
from scantling.units import FINEST_INCH, Unit, written_with_unit

SOURCE = (
    "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2 and table 13-5, moisture by eq. 4-5;"
    " what is to be left: common practice"
)


def kept_open(
    fittings: Iterable[Fitting], strains: Strains, *, stated: Iterable[Stated]
) -> Relations:
    """Bounds: what each gap has left in the spell that closes it.

    A gap that may grow, and that nobody stated, is made wide enough. Another may be too narrow:
    then no other size is bent to save it, and `through_the_year` says so.

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-2, by way of the strains.
    """
    said = {each.name for each in stated}
    free = (fitting for fitting in fittings if not said.issuperset(fitting.may_grow))
    return Relations(bounds=tuple(_bound(fitting, strains) for fitting in free))


def _bound(fitting: Fitting, strains: Strains) -> Bound:
    gap = fitting.gap
    moved = total(
        width * _closing(fitting, strains[part]) for part, width in gap.moving if part in strains
    )
    return Bound(
        sum=gap.at_bench - moved - gap.least,
        because=gap.because,
        yields=Yields.SEASON,
        code=fitting.code,
        source=SOURCE,
        cure=gap.cure,
        place=fitting.place,
        told=False,
    )


def _closing(fitting: Fitting, strain: Strain) -> Fraction:
    """By what share of a width the gap gets smaller. [-]"""
    return -strain.narrowest if fitting.in_dry_spell else strain.widest


def gaps_of(fittings: Iterable[Fitting], *, sizes: Sizes, strains: Strains) -> tuple[SetGap, ...]:
    """The gaps of forms today and at both ends of the year."""
    return tuple(
        SetGap.of(fitting.gap, sizes=sizes, strains=strains, place=fitting.place)
        for fitting in fittings
    )


def through_the_year(
    fittings: Iterable[Fitting], gaps: Iterable[SetGap], *, room: Room, unit: Unit
) -> Iterator[Finding]:
    """What the year does to gaps of forms, with the figures that show it.

    Args:
        fittings: What the forms watch.
        gaps: The same at these sizes, in the same order.
        room: Where the piece will stand.
        unit: Measure to tell amounts in.
    """
    for fitting, found in zip(fittings, gaps, strict=True):
        left = found.driest if fitting.in_dry_spell else found.dampest
        if found.gap.least - left >= SHAVING:
            yield _too_tight(fitting, found, left, room=room, unit=unit)
        elif fitting.unneeded and found.gap.least < found.at_bench <= found.tightest:
            yield _unneeded(fitting, found, room=room, unit=unit)
    yield from _past_linear(room)


def _too_tight(
    fitting: Fitting, found: SetGap, left: Fraction, *, room: Room, unit: Unit
) -> Finding:
    gap = found.gap
    spell, moisture, word = (
        (room.dry, room.driest, "driest")
        if fitting.in_dry_spell
        else (room.damp, room.dampest, "dampest")
    )
    moved, open_now = found.at_bench - left, amount(found.at_bench, unit)
    return Finding(
        code=fitting.code,
        weight=Weight.MIND,
        says=f"{gap.closed} in the {word} month ({spell.humidity:g} % at {spell.temperature:g} C,"
        f" wood at {moisture:.1f} % from {room.made_at:.1f} % at the bench):"
        f" {amount(moved, unit)} of movement"
        f" {_leaves(left, unit)} of {open_now}{_wanted(gap, unit)}",
        cure=cured(gap, short=gap.least - left, unit=unit),
        place=fitting.place,
        figure=amount(moved + gap.least, unit),
        limit=open_now,
        source=SOURCE,
        parts=tuple(part for part, _ in gap.moving),
    )


def _leaves(left: Fraction, unit: Unit) -> str:
    return f"leave {amount(left, unit)}" if left > 0 else "leave nothing"


def _wanted(gap: Gap, unit: Unit) -> str:
    return f", and {amount(gap.least, unit)} is wanted" if gap.least else ""


def _unneeded(fitting: Fitting, found: SetGap, *, room: Room, unit: Unit) -> Finding:
    gap = found.gap
    return Finding(
        code="kickers.gap-for-nothing",
        weight=Weight.NOTE,
        says=f"nothing ever closes the {gap.what}: this room never gets drier than the bench"
        f" ({room.driest:.1f} % against {room.made_at:.1f} %)",
        cure=fitting.unneeded,
        place=fitting.place,
        figure=amount(found.at_bench, unit),
        source=SOURCE,
    )


def _past_linear(room: Room) -> Iterator[Finding]:
    low, high = LINEAR
    past = [m for m in (room.driest, room.made_at, room.dampest) if not within_linear(m)]
    if past:
        yield Finding(
            code="year.past-its-range",
            weight=Weight.NOTE,
            says="movement is reckoned in proportion to moisture, which is stated to hold"
            f" from {low:g} to {high:g} %, and this wood will be at"
            f" {' and '.join(f'{m:.1f} %' for m in past)}: take its figures as near, not exact",
            cure="",
            figure=", ".join(f"{m:.1f} %" for m in past),
            limit=f"{low:g} to {high:g} %",
            source="Wood Handbook, FPL-GTR-190, 2010, p. 13-18, eq. 13-2",
        )


def cured(gap: Gap, *, short: Fraction, unit: Unit) -> str:
    """The cure of a gap, with what is lacking, shared among its parts and never too little. [mm]"""
    mark = FINEST_INCH if unit is Unit.INCH else Fraction(1, 10)
    each = ceil(short / gap.shared_by / mark) * mark
    return gap.cure.replace("{short}", written_with_unit(each, unit=unit))


def amount(value: Fraction, unit: Unit) -> str:
    """A movement as callipers show it: `1/8 in`, `0.129 in`, `3.28 mm`. [mm]"""
    return written_with_unit(value, unit=unit)
