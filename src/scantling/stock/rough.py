"""Rough sizes: from the parts of a piece to the blanks that are got out of the boards."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.exact import Fraction
from scantling.parts import GluedUp, Part
from scantling.shop.habits import Habits
from scantling.shop.tools import Shop, Tool
from scantling.stock.job import Cutting, Wanted
from scantling.timber.species import species

KERF = Fraction(16, 10)  # [mm] of a saw the shop file does not list; a guess from memory


def wanted(parts: Iterable[Part], *, habits: Habits) -> tuple[Wanted, ...]:
    """One blank for each made part, with horns and the allowances of the shop.

    A part that shows is asked to be free of knots; of the others only ends and edges are.
    """
    return tuple(
        Wanted(
            part=part.name,
            family=part.family,
            wood=species(part.wood).name,
            cut=part.cut_of_wood,
            length=part.extent.length + sum(part.horns, Fraction(0)) + habits.rough_length,
            width=part.extent.width + habits.rough_width,
            thickness=part.extent.thickness,
            clear=bool(part.show),
            glued_up=isinstance(part.blank, GluedUp),
        )
        for part in parts
        if not part.hardware
    )


def cutting(*, shop: Shop, habits: Habits) -> Cutting:
    """How boards are cut up with the saws of this shop and the habits of its maker."""
    return Cutting(
        kerf_across=_kerf(shop, Tool.CROSSCUT_SAW),
        kerf_along=_kerf(shop, Tool.RIP_SAW),
        end_trim=habits.end_trim,
        strip_joint=habits.strip_joint,
        narrowest_strip=habits.narrowest_strip,
        widest_strip=habits.widest_strip,
        knot_from_end=habits.knot_from_end,
        knot_from_edge=habits.knot_from_edge,
        planing=habits.planing,
    )


def _kerf(shop: Shop, tool: Tool) -> Fraction:
    return max((saw.kerf for saw in shop.saws if saw.tool is tool), default=KERF)
