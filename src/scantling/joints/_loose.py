"""Bought round things as parts, and how much wood they press aside."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.exact import Fraction
from scantling.parts import Extent, Part, Placement, Point, Round, Way
from scantling.parts.outline import Flat
from scantling.parts.shape import INSIDE_CIRCLE, ROUND_CIRCLE

METAL = "steel"


def shank(
    name: str,
    *,
    family: str,
    head: Point,
    ways: tuple[Way, Way, Way],
    length: Fraction,
    across: Fraction,
) -> Part:
    """A screw or nail as the plain round of its shank; its head lies in a sinking and is not drawn.

    Args:
        name: Its name.
        family: "screw", "nail".
        head: Middle of its upper end, in the piece. [mm]
        ways: Direction from head to point, and two square to it.
        length: From head to point. [mm]
        across: Diameter. [mm]
    """
    at = list(head)
    for way in ways[1:]:
        at[way.axis] -= way.sign * across / 2
    return Part(
        name=name,
        family=family,
        extent=Extent(length=length, width=across, thickness=across),
        wood=METAL,
        cut_of_wood="flat",
        placement=Placement(along=ways[0], across=ways[1], into=ways[2], at=(at[0], at[1], at[2])),
        blank=Round(),
        hardware=True,
    )


def _area(ring: Sequence[Flat]) -> Fraction:
    turned = [*ring[1:], *ring[:1]]
    return (
        sum((a * d - b * c for (a, b), (c, d) in zip(ring, turned, strict=True)), Fraction(0)) / 2
    )


ROUND_AREA = _area(INSIDE_CIRCLE)  # [-] of a shank, over its radius squared
HOLE_AREA = _area(ROUND_CIRCLE)  # [-] of a hole, over its radius squared


def pressed(*, across: Fraction, hole: Fraction, length: Fraction) -> Fraction:
    """Wood pressed aside by a shank in a smaller hole, or in none. [mm3]

    Args:
        across: Diameter of the shank. [mm]
        hole: Diameter of the hole bored for it, 0 for none. [mm]
        length: How far it goes. [mm]
    """
    return (ROUND_AREA * across**2 - HOLE_AREA * hole**2) / 4 * length
