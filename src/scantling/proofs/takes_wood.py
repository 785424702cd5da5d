"""Every cut takes wood."""

from __future__ import annotations

from itertools import groupby
from operator import itemgetter
from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.parts.part import Part
from scantling.proofs._proof import Case
from scantling.solids.kernel import NOISE


class TakesWood:
    """Proves that no cut has lost its size and none misses the part it is made in.

    Sizes that leave no depth for a rabbet, or put a hole beyond the end of a board, would
    otherwise show nowhere: the part would simply come out without the cut.
    """

    title: ClassVar[str] = "every cut takes wood"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for the cuts of each joint that take none of a part."""
        return tuple(
            _finding(case, part, owner, list(names))
            for part in case.parts
            for owner, names in groupby(_in_vain(case, part), key=itemgetter(0))
        )


def _in_vain(case: Case, part: Part) -> list[tuple[str, str]]:
    """Cuts that take no wood: whose they are and their names."""
    cuts = zip(part.cuts, case.taken(part), strict=True)
    return sorted((cut.owner, cut.name) for cut, taken in cuts if taken.volume <= NOISE)


def _finding(case: Case, part: Part, owner: str, cuts: list[tuple[str, str]]) -> Finding:
    (_, first), *others = cuts
    named = f"{first} and {len(others)} more" if others else first
    verb = "take" if others else "takes"
    return Finding(
        code="proofs.cut-takes-nothing",
        weight=Weight.HALT,
        says=f"{named} ({owner}) {verb} no wood of the {part.name}",
        cure="Give it a depth and a place within the part, or leave it out.",
        place=case.place((owner, part.name)),
        figure="nothing",
        parts=(part.name,),
    )
