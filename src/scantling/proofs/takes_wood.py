"""Every cut takes wood."""

from __future__ import annotations

from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.parts.cut import Cut
from scantling.parts.part import Part
from scantling.parts.solid import block, claim
from scantling.proofs._proof import Case
from scantling.solids.kernel import NOISE, shared_by_hulls
from scantling.solids.pattern import Bounds, Convex, bounds


class TakesWood:
    """Proves that no cut has lost its size and none misses the part it is made in.

    Sizes that leave no depth for a rabbet, or put a hole beyond the end of a board, would
    otherwise show nowhere: the part would simply come out without the cut.
    """

    title: ClassVar[str] = "every cut takes wood"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each cut that takes none."""
        found: list[Finding] = []
        for part in case.parts:
            # names and owners left out: both of a pair are looked at once
            shapes = tuple((cut.shape, cut.corner) for cut in part.cuts)
            key = ("takes wood", part.extent, shapes, part.is_round)
            idle = case.store.kept(key, lambda p=part: _idle(p))  # type: ignore[misc] # mypy can't infer defaults of a lambda
            found.extend(_finding(case, part, part.cuts[place]) for place in idle)
        return tuple(found)


def _idle(part: Part) -> tuple[int, ...]:
    """Places of the cuts that take nothing."""
    whole = block(part)
    room = bounds(whole.corners)
    return tuple(
        place
        for place, cut in enumerate(part.cuts)
        if not _takes(cut, part=part, whole=whole, room=room)
    )


def _takes(cut: Cut, *, part: Part, whole: Convex, room: Bounds) -> bool:
    taken = claim(cut, extent=part.extent)
    if taken is None or not bounds(taken.corners).meets(room):
        return False
    return shared_by_hulls(taken, whole, within=whole) > NOISE


def _finding(case: Case, part: Part, cut: Cut) -> Finding:
    return Finding(
        code="proofs.cut-takes-nothing",
        weight=Weight.HALT,
        says=f"{cut.name} ({cut.owner}) takes no wood of the {part.name}",
        cure="Give it a depth and a place within the part, or leave it out.",
        place=case.place((cut.owner, part.name)),
        figure="0 mm³",
        parts=(part.name,),
    )
