"""Every cut takes wood."""

from __future__ import annotations

from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.parts.cut import Cut
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
        """One for each cut that takes none."""
        return tuple(
            _finding(case, part, cut)
            for part in case.parts
            for cut, taken in zip(part.cuts, case.taken(part), strict=True)
            if taken.volume <= NOISE
        )


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
