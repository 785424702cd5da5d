"""What a groove holds, for each mm of its length: its walls, and what presses on its floor."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.exact import Fraction
from scantling.joints._joint import Estimate, Joined, Woods
from scantling.joints._strength import ledge
from scantling.sizes.model import Sizes


def groove_holds(j: Joined, *, in_edge: bool, sizes: Sizes, woods: Woods) -> tuple[Estimate, ...]:
    """Push against either wall, and onto the floor where something stands on it. [N/mm]

    How much of the groove is filled only the parts know, so all is told for each mm of length.

    Args:
        j: The groove.
        in_edge: Whether it is in an edge, or in a face.
        sizes: Solved sizes. [mm]
        woods: Species by part.

    References:
        Shear across the grain at the root of a wall (see `ledge`); on the floor compression
        across the grain at the proportional limit, of the weaker wood: Wood Handbook ch. 5.
    """
    part = j.seat("receives").part
    if part not in woods:
        return ()
    found = []
    for wall, thick in walls(j, in_edge=in_edge, sizes=sizes):
        holds = ledge(woods[part], tall=float(thick))
        if holds is not None:
            found.append(
                Estimate(
                    what=f"push sideways against the {wall} wall",
                    value=holds,
                    unit="N/mm",
                    basis="shear across the grain at the root of the wall, ultimate",
                    weakest=f"{wall} wall in the {part}",
                )
            )
    return (*found, *_floor(j, sizes=sizes, woods=woods))


def walls(
    j: Joined, *, in_edge: bool, sizes: Sizes
) -> tuple[tuple[str, Fraction], tuple[str, Fraction]]:
    """Wood left before and beyond the groove, as thick as it is at the root of a wall. [mm]"""
    seat, wide = j.seat("receives"), sizes[j.own("width")]
    before = (seat.into if in_edge else seat.across).at(sizes)
    whole = (j.thickness("receives") if in_edge else j.width("receives")).at(sizes)
    return ("near", before), ("far", whole - before - wide)


def _floor(j: Joined, *, sizes: Sizes, woods: Woods) -> Iterator[Estimate]:
    if sizes[j.own("floor gap")] > 0:
        return
    part = j.seat("receives").part
    for seat in j.row("enters"):
        known = [
            (wood.compression_across, name)
            for name in (part, seat.part)
            if (wood := woods.get(name)) is not None and wood.compression_across is not None
        ]
        if len(known) == len({part, seat.part}):
            least, weakest = min(known)
            yield Estimate(
                what=f"the {seat.part} pressed onto the floor",
                value=least * float(sizes[j.own("width")]),
                unit="N/mm",
                basis="compression across the grain, to where the wood starts to give",
                weakest=f"wood of the {weakest}",
            )
