"""Round things bought: pins, screws, nails. Drawn as rods of one diameter, without heads."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.exact import Fraction
from scantling.joints._joint import Seat
from scantling.parts import ACROSS, ALONG, INTO, Cut, Extent, Part, Placement, Round
from scantling.parts.shape import INSIDE_CIRCLE

ROD = Round()


def rod(
    seat: Seat,
    *,
    name: str,
    family: str,
    stuff: str,
    at: tuple[Fraction, Fraction],
    deepest: Fraction,
    length: Fraction,
    diameter: Fraction,
    sizes: Mapping[str, Fraction],
    part: Part,
    cuts: tuple[Cut, ...] = (),
) -> Part:
    """A rod square to a face, from its deepest point outwards.

    Its width lies along the part it sits in, its thickness across it.

    Args:
        seat: Seat whose coordinates are used.
        name: Name of the rod.
        family: What it is: "shelf pin".
        stuff: What it is made of.
        at: Middle of the rod, along and across. [mm]
        deepest: Where its inner end stands, into the part. [mm]
        length: Of the rod. [mm]
        diameter: Of the rod. [mm]
        sizes: Solved sizes.
        part: The part in that seat.
        cuts: What is filed off it.
    """
    corner = (at[0] - diameter / 2, at[1] - diameter / 2, deepest)
    return Part(
        name=name,
        family=family,
        extent=Extent(length=length, width=diameter, thickness=diameter),
        wood=stuff,
        cut_of_wood="",
        placement=Placement(
            along=seat.way(axis=INTO, part=part).opposite,
            across=seat.way(axis=ALONG, part=part),
            into=seat.way(axis=ACROSS, part=part),
            at=seat.to_piece(corner, sizes=sizes, part=part),
        ),
        blank=ROD,
        cuts=cuts,
        hardware=True,
        moves_with=part.moves_with,
    )


def rod_area(diameter: Fraction) -> Fraction:
    """Area of the polygon that stands for the section of a rod. [mm2]"""
    ring = zip(INSIDE_CIRCLE, (*INSIDE_CIRCLE[1:], INSIDE_CIRCLE[0]), strict=True)
    twice = sum((u * d - v * c for (u, v), (c, d) in ring), Fraction(0))
    return twice / 2 * (diameter / 2) ** 2
