"""What can be wrong with a tenon that no single size shows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault, surfaces
from scantling.joints._joint import Joined
from scantling.joints._tenon import Tenon
from scantling.parts import ALONG, Part
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes

LEAST_FLOOR = Fraction(9, 2)  # [mm] wood below a stopped mortise
LEAST_CHEEK = Fraction(7, 10)  # of the tenon's thickness, on each side of the mortise
LEAST_END = Fraction(12)  # [mm] wood between a mortise and the part's end
LEAST_HAUNCH = Fraction(3, 2)  # of the tenon's thickness
WIDEST_GLUED = Fraction(75)  # [mm] across the grain
BROADEST = 5  # times the tenon's thickness

_LESSON = "common practice"


def tenon_faults(
    j: Joined, found: Tenon, *, sizes: Sizes, shop: Shop, parts: Mapping[str, Part]
) -> tuple[Finding, ...]:
    """Faults of one tenon in its mortise."""
    return (
        *_walls(j, found, sizes=sizes, shop=shop, parts=parts),
        *_chisel(j, found, shop=shop),
        *_end_wood(j, found, sizes=sizes, shop=shop, parts=parts),
        *_widths(j, found, shop=shop),
    )


def _walls(
    j: Joined, found: Tenon, *, sizes: Sizes, shop: Shop, parts: Mapping[str, Part]
) -> Iterator[Finding]:
    left = j.width("receives").at(sizes) - found.mortise
    if left < LEAST_FLOOR:
        yield fault(
            j,
            "mortise-and-tenon.thin-floor",
            Weight.MIND,
            says=f"Chopping the mortise may break through the {j.seat('receives').part}.",
            cure="Make the tenon shorter, or its mate wider.",
            figure=left,
            limit=LEAST_FLOOR,
            shop=shop,
            source=_LESSON,
        )
    receiving, _ = surfaces(j, sizes=sizes, parts=parts)
    cheek = min(found.into[0] - receiving[0], receiving[1] - found.into[1])
    least = found.thickness * LEAST_CHEEK
    if cheek < least:
        yield fault(
            j,
            "mortise-and-tenon.thin-cheek",
            Weight.MIND,
            says=f"The wood beside the mortise in the {j.seat('receives').part} is thin.",
            cure="Take a narrower chisel, or set the tenon in the middle.",
            figure=cheek,
            limit=least,
            shop=shop,
        )


def _chisel(j: Joined, found: Tenon, *, shop: Shop) -> Iterator[Finding]:
    if found.thickness in shop.tenon_sizes or not shop.tenon_sizes:
        return
    nearest = min(shop.tenon_sizes, key=lambda size: (abs(size - found.thickness), size))
    yield fault(
        j,
        "mortise-and-tenon.no-chisel",
        Weight.MIND,
        says="No mortise chisel of this shop is as wide as the tenons of the"
        f" {j.seat('enters').part} are thick.",
        cure="Make tenon and groove as thick as a chisel owned; the limit is the nearest one.",
        figure=found.thickness,
        limit=nearest,
        shop=shop,
    )


def _end_wood(
    j: Joined, found: Tenon, *, sizes: Sizes, shop: Shop, parts: Mapping[str, Part]
) -> Iterator[Finding]:
    seat = j.seat("receives")
    start = seat.along.at(sizes)
    length = parts[seat.part].extent[ALONG]
    left = min(start + found.along[0], length - start - found.along[1])
    haunched = found.haunch is not None
    if found.groove and not haunched and min(start, length - start - found.whole[1]) <= 0:
        yield fault(
            j,
            "mortise-and-tenon.open-groove",
            Weight.MIND,
            says=f"The panel's groove stays open at the end of the {seat.part}.",
            cure="Leave a haunch on the tenon; it fills the groove.",
            figure=Fraction(0),
            limit=found.groove,
            shop=shop,
            source="Handwork in Wood, 1910",
        )
    least = found.thickness * LEAST_HAUNCH if haunched else LEAST_END
    if left < least:
        yield fault(
            j,
            "mortise-and-tenon.short-end",
            Weight.MIND,
            says=f"Little wood is left between the mortise and the end of the {seat.part}.",
            cure="Widen the haunch." if haunched else "Leave a haunch on the tenon.",
            figure=left,
            limit=least,
            shop=shop,
        )


def _widths(j: Joined, found: Tenon, *, shop: Shop) -> Iterator[Finding]:
    entering = j.seat("enters").part
    if found.width > WIDEST_GLUED:
        yield fault(
            j,
            "mortise-and-tenon.wide-glue",
            Weight.MIND,
            says=f"The tenons of the {entering} are wide for grain glued across grain"
            " and may let go at their edges.",
            cure="Divide each into two tenons, or glue its middle only.",
            figure=found.width,
            limit=WIDEST_GLUED,
            shop=shop,
        )
    elif found.width > BROADEST * found.thickness:
        yield fault(
            j,
            "mortise-and-tenon.broad",
            Weight.NOTE,
            says=f"The tenons of the {entering} are broader than {BROADEST} times their thickness.",
            cure="Divide each into two, or leave them if the wood that is mortised is stout.",
            figure=found.width,
            limit=BROADEST * found.thickness,
            shop=shop,
            source=_LESSON,
        )
