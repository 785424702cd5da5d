"""Faces that a joint says meet do meet."""

from __future__ import annotations

from itertools import pairwise
from math import dist
from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.joints._joint import Contact, Glue
from scantling.proofs._proof import Case
from scantling.solids.contact import SLAB, contact_area, patch_area

CLOSE = 1e-6  # [-] share of a patch that floating point may cost


class TrueContact:
    """Proves that each declared patch has wood of both parts against it over all its area.

    Glue asked for where there is air would make the strength of the joint a fiction.
    """

    title: ClassVar[str] = "true contact"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each patch that is not wholly touched by both parts."""
        found = []
        for contact in case.contacts:
            area = patch_area(contact.patch)
            touched = _touched(case, contact)
            if touched < area * (1 - CLOSE) - SLAB * _rim(contact):
                found.append(_finding(case, contact, area=area, touched=touched))
        return tuple(found)


def _touched(case: Case, contact: Contact) -> float:
    one, other = (case.standing_by_name[name] for name in contact.between)
    return contact_area(one, other, patch=contact.patch, store=case.store)


def _rim(contact: Contact) -> float:
    """Length round the patch, along which wood may slope away within the thickness looked at."""
    ring = [tuple(float(x) for x in point) for point in contact.patch]
    return sum(dist(one, other) for one, other in pairwise([*ring, ring[0]]))


def _finding(case: Case, contact: Contact, *, area: float, touched: float) -> Finding:
    one, other = contact.between
    glued = contact.glue is not Glue.DRY
    return Finding(
        code="proofs.no-contact",
        weight=Weight.HALT if glued else Weight.MIND,
        says=(
            f"{one} and {other} do not meet over all of the {contact.zone} of {contact.joined}: "
            f"{touched / area:.0%} of it touches"
        ),
        cure="Move or stop whatever is cut away there, or bring the two faces together.",
        place=case.place((contact.joined, one, other)),
        figure=f"{touched:.6g} mm²",
        limit=f"{area:.6g} mm²",
        parts=(one, other),
    )
