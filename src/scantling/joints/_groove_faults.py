"""What can be wrong with a groove."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._joint import Joined
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes

LEAST_WALL = Fraction(4)  # [mm] between a groove in an edge and either face
LEAST_FLOOR = Fraction(5)  # [mm] behind a groove in a face
DEEPEST = Fraction(1, 2)  # [-] of the thickness, in a face


def groove_faults(
    j: Joined,
    left: Iterable[tuple[str, Fraction]],
    *,
    in_edge: bool,
    sizes: Sizes,
    shop: Shop,
) -> tuple[Finding, ...]:
    """Thin walls, a thin floor, a width that no iron cuts.

    Args:
        j: The groove.
        left: Wood left beside or behind it, with where that is. [mm]
        in_edge: Whether it is in an edge, or in a face.
        sizes: Solved sizes.
        shop: Irons owned.
    """
    part, thick = j.seat("receives").part, j.thickness("receives").at(sizes)
    least = LEAST_WALL if in_edge else max(LEAST_FLOOR, thick * (1 - DEEPEST))
    found = [
        fault(
            j,
            "groove.thin",
            Weight.MIND,
            says=f"Little wood of the {part} is left beside the groove ({word}).",
            cure="Move the groove, make it shallower or narrower, or the part thicker.",
            figure=wood,
            limit=least,
            shop=shop,
        )
        for word, wood in left
        if wood < least
    ]
    return (*found, *_no_iron(j, sizes=sizes, shop=shop))


def _no_iron(j: Joined, *, sizes: Sizes, shop: Shop) -> tuple[Finding, ...]:
    wide, irons = sizes[j.own("width")], shop.groove_sizes
    if wide in irons or any(iron < wide <= 2 * iron for iron in irons):
        return ()  # a wider one is ploughed twice, the fence moved between
    return (
        fault(
            j,
            "groove.no-iron",
            Weight.MIND,
            says="No iron that is owned cuts a groove of this width.",
            cure="Plane what goes in to the width of an iron, or chop the groove.",
            figure=wide,
            limit=irons[0] if irons else Fraction(0),
            shop=shop,
        ),
    )
