"""What a drawer's bottom holds: the board itself, its ends, and the ledges it lies on."""

from __future__ import annotations

from scantling.joints._drawer_groove import Bottom
from scantling.joints._joint import Estimate, Joined, Woods
from scantling.joints._strength import ledge, strip_bending, strip_shear
from scantling.sizes.model import Sizes

SIDES = ("left", "right")


def bottom_holds(j: Joined, found: Bottom, *, sizes: Sizes, woods: Woods) -> tuple[Estimate, ...]:
    """Load spread evenly over the bottom, by whichever gives first. [N]

    It is taken as a board that spans from side to side. What the front's groove and the screw
    behind carry is not counted.

    Args:
        j: The bottom in its grooves.
        found: Its figures. [mm]
        sizes: Solved sizes. [mm]
        woods: Species by part.

    References:
        Equations and sources stand in `_strength`; loads are ultimate, once, on clear wood.
    """
    bottom, sides = j.seat("bottom").part, [j.seat(role).part for role in SIDES]
    if any(part not in woods for part in (bottom, *sides)):
        return ()
    wood, wide = woods[bottom], float(found.width - found.depth)
    span = float(found.length - 2 * found.reach)
    end = float(min(found.groove, found.thickness))
    links = [
        (strip_bending(wood, span=span, wide=wide, thick=float(found.thickness)), "the board"),
        (strip_shear(wood, wide=wide, thick=end), "ends of the board in their grooves"),
    ]
    for side in sides:
        lip = ledge(woods[side], tall=float(sizes[j.own("set up")]))
        links.append((None if lip is None else 2 * lip * wide, f"ledge of the {side}"))
    known = [(load, weakest) for load, weakest in links if load is not None]
    if len(known) < len(links):
        return ()
    load, weakest = min(known)
    return (
        Estimate(
            what=f"load spread over the {bottom}",
            value=load,
            unit="N",
            basis="least of the board in bending, its ends in shear, and the ledges under them in "
            "shear across the grain; ultimate",
            weakest=weakest,
        ),
    )
