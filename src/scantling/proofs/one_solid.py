"""Every part is one solid."""

from __future__ import annotations

from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.proofs._proof import Case


class OneSolid:
    """Proves that the cuts of a part leave wood, and leave it in one piece.

    A skin left standing where a cut was meant to run out, and a rail sawn in two by a housing
    from each side, are both found here.
    """

    title: ClassVar[str] = "one solid"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each part that is gone or falls apart."""
        found = []
        for part in case.parts:
            pieces = case.solid(part).pieces
            if pieces == 1:
                continue
            owners = sorted({cut.owner for cut in part.cuts})
            says = (
                f"{part.name} is cut away altogether"
                if pieces == 0
                else f"{part.name} falls into {pieces} pieces once its cuts are made"
            )
            found.append(
                Finding(
                    code="proofs.not-one-solid",
                    weight=Weight.HALT,
                    says=says,
                    cure="Move its cuts apart, make them shallower, or make the part stouter.",
                    place=case.place((part.name, *owners)),
                    figure=f"{pieces}",
                    limit="1",
                    parts=(part.name,),
                )
            )
        return tuple(found)
