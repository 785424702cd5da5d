"""Gaps of forms through the year: what the size solver is asked to keep, and what is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from scantling.findings import Finding, Weight
from scantling.joints._joint import Strains
from scantling.piece._form import Fitting, Whole
from scantling.setting_out.answer import SetGap
from scantling.sizes.linear import total
from scantling.sizes.model import Bound, Relations, Sizes, Yields
from scantling.timber.movement import Strain
from scantling.units import INCH, Unit, written_with_unit

SOURCE = (
    "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2 and table 13-5, moisture by eq. 4-5;"
    " what is to be left: common practice"
)


def kept_open(fittings: Iterable[Fitting], strains: Strains) -> Relations:
    """Bounds: what each gap has left in the spell that closes it.

    A gap nobody stated is made wide enough; one that is stated may be too narrow, and `faults`
    says so.

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-2, by way of the strains.
    """
    return Relations(bounds=tuple(_bound(fitting, strains) for fitting in fittings))


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
        cure=fitting.cure,
        place=fitting.place,
        told=False,
    )


def _closing(fitting: Fitting, strain: Strain) -> Fraction:
    """By what share of a width the gap gets smaller. [-]"""
    return -strain.narrowest if fitting.in_dry_spell else strain.widest


def gaps_of(
    fittings: Iterable[Fitting], *, sizes: Sizes, strains: Strains
) -> tuple[SetGap, ...]:
    """The gaps of forms today and at both ends of the year."""
    return tuple(SetGap.of(fitting.gap, sizes=sizes, strains=strains) for fitting in fittings)


def faults(
    fittings: Iterable[Fitting], gaps: Iterable[SetGap], *, whole: Whole
) -> Iterator[Finding]:
    """Gaps that one spell of the year closes too far, with the figures that show it.

    Args:
        fittings: What the forms watch.
        gaps: The same at these sizes, in the same order.
        whole: The room, and the maker's measure.
    """
    for fitting, found in zip(fittings, gaps, strict=True):
        left = found.driest if fitting.in_dry_spell else found.dampest
        if left < found.gap.least:
            yield _finding(fitting, found, left, whole)


def _finding(fitting: Fitting, found: SetGap, left: Fraction, whole: Whole) -> Finding:
    room, gap = whole.room, found.gap
    spell, moisture, word = (
        (room.dry, room.driest, "driest")
        if fitting.in_dry_spell
        else (room.damp, room.dampest, "dampest")
    )
    moved = found.at_bench - left
    open_now = written_with_unit(found.at_bench, unit=whole.measure)
    return Finding(
        code=fitting.code,
        weight=Weight.MIND,
        says=f"{fitting.says} in the {word} spell ({spell.humidity:g} % at {spell.temperature:g} C,"
        f" wood at {moisture:.1f} % from {room.made_at:.1f} % at the bench): {_fine(moved, whole)}"
        f" of movement leave {_fine(left, whole)} of a gap of {open_now}, and"
        f" {_fine(gap.least, whole)} is wanted",
        cure=fitting.cure,
        place=fitting.place,
        figure=_fine(moved + gap.least, whole),
        limit=open_now,
        source=SOURCE,
        parts=tuple(part for part, _ in gap.moving),
    )


def _fine(amount: Fraction, whole: Whole) -> str:
    """A movement, finer than any rule shows: `0.129 in`, `3.28 mm`."""
    if whole.measure is Unit.INCH:
        return f"{float(amount / INCH):.3f} in"
    return f"{float(amount):.2f} mm"
