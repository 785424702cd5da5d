"""Cautions, where the hand meets the hazard. Only those that this piece calls for.

Each names what stands behind it. Figures not read in the source are left out.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.errors import UnknownNameError
from scantling.exact import Fraction
from scantling.papers._mates import strap
from scantling.papers._paper import rule_of
from scantling.parts.solid import finished
from scantling.setting_out import SettingOut
from scantling.timber.species import species
from scantling.units import Unit

POUND = Fraction(45359237, 100_000_000)  # [kg] exact: the international pound of 1959
CUBIC_M = 1e9  # [mm3]
ALONE = 23.0  # [kg] load constant of the NIOSH lifting equation: the most, at a perfect lift
TAKEN_OUT = {"door": "doors", "drawer": "drawers", "loose shelf": "loose shelves"}
TALL = 600.0  # [mm] lower than this a case hardly goes over; common practice


@dataclass(frozen=True, kw_only=True)
class Caution:
    """One caution."""

    title: str
    says: str
    source: str = "common practice"


def cautions(setting_out: SettingOut) -> tuple[Caution, ...]:
    """Cautions in the order in which the work meets them."""
    return (
        EDGES,
        _dust(setting_out),
        _rags(setting_out),
        *_lifting(setting_out),
        *_tipping(setting_out),
        FAIR,
    )


EDGES = Caution(
    title="Edges",
    says=(
        "Clamp the work and keep both hands behind the edge. Cut away from yourself. Carry a "
        "chisel edge down. A sharp edge needs the least push, so hone before you force."
    ),
)
FAIR = Caution(
    title="How far to trust these figures",
    says=(
        "Sizes follow exactly from what you wrote. How the wood moves, sags and holds is an "
        "estimate from tables of clear, straight-grained wood; your boards are not the table's. "
        "Nothing here says that the piece meets a law or a code: one that is to be sold, or that "
        "stands where a public building's rules or a landlord's hold, may have to meet more."
    ),
)


def _dust(setting_out: SettingOut) -> Caution:
    says = (
        "Planing makes shavings; sanding and sawing make dust that is bad for the lungs, and "
        "wood dust can bring on cancer of the nose. Wear a mask that fits and clear the air."
    )
    if any("cedar" in part.wood.casefold() for part in setting_out.made):
        says += " Cedar dust can make the airways touchy for good: take more care with it."
    return Caution(title="Dust", says=says, source="IARC, wood dust, group 1 (from memory)")


def _rags(setting_out: SettingOut) -> Caution:
    says = (
        "A rag wet with linseed oil, tung oil or oil varnish warms up as it cures and can set "
        "itself alight hours later. Spread each one out alone, in the open, until it is hard, or "
        "drop it into water in a metal can with a lid. That goes for every coat"
    )
    if _has(setting_out, "panel"):
        says += ", also for the panels finished before the glue"
    says += ". Read the label, open a window, put out every flame."
    return Caution(title="Finish rags", says=says, source="fire services' advice on oily rags")


def weight(setting_out: SettingOut) -> float | None:
    """Mass of all wood, finished, at the bench's moisture, an estimate. [kg]

    None where a wood stands in no table, or there is none.
    """
    moisture = setting_out.piece.whole.room.made_at
    total = 0.0
    for part in setting_out.made:
        try:
            wood = species(part.wood)
        except UnknownNameError:
            return None
        volume = finished(part, store=setting_out.store).volume
        moist = min(moisture, float(wood.shrinkage_start))
        total += volume / CUBIC_M * wood.density(moisture=moist)
    return total or None


def weight_reads(mass: float, *, unit: Unit) -> str:
    """A mass [kg] as the maker reads it: `96 lb` or `44 kg`, to two figures."""
    value = mass / float(POUND) if unit is Unit.INCH else mass
    return f"{float(f'{value:.2g}'):g} {'lb' if unit is Unit.INCH else 'kg'}"


def _lifting(setting_out: SettingOut) -> Iterator[Caution]:
    mass = weight(setting_out)
    if mass is None:
        return
    reads = weight_reads(mass, unit=rule_of(setting_out).unit)
    most = weight_reads(ALONE, unit=rule_of(setting_out).unit)
    says = (
        f"All the wood together weighs about {reads}, an estimate without hardware, glue and "
        "what you keep in it. "
    )
    if mass > ALONE:
        says += f"That is more than one should lift alone: {most} is the most at a perfect lift. "
    out = [what for word, what in TAKEN_OUT.items() if _has(setting_out, word)]
    if out:
        says += f"Take {' and '.join(out)} out first. "
    says += "A case with wet glue is turned by two."
    source = "NIOSH 94-110 (rev. 2021), load constant; Wood Handbook ch. 4, density"
    yield Caution(title="Lifting", says=says, source=source)


def _has(setting_out: SettingOut, word: str) -> bool:
    """Whether a part's family speaks of that."""
    return any(word in part.family for part in setting_out.made)


def _tipping(setting_out: SettingOut) -> Iterator[Caution]:
    if not setting_out.made or setting_out.overall[2] < TALL:
        return
    opens = sorted({part.moves_with for part in setting_out.made if part.moves_with})
    says = "Strap it to the studs with two restraints, and look for pipes and cables first. "
    if opens:
        says += (
            "What opens takes its weight in front of the feet: with every drawer out, or a child "
            "hanging on a door, a case goes over far sooner than it looks. "
        )
    says += strap(setting_out, rule_of(setting_out))
    says += "Heavy things go low. Restraints of plastic grow brittle; use metal ones."
    yield Caution(title="Tipping", says=says, source="CPSC 2024, advice to anchor every unit")
