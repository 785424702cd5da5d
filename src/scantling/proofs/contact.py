"""Faces that a joint says meet do meet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import dist
from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.joints._joint import Contact, Glue
from scantling.parts.cut import Cut
from scantling.parts.part import Part
from scantling.parts.solid import placed
from scantling.proofs._proof import Case
from scantling.solids.contact import SLAB, contact_area, patch_area

CLOSE = 1e-6  # [-] share of a patch that floating point may cost
LEAST_SHARE = 0.5  # [-] of a patch that the cuts of other joints must leave; common practice


class TrueContact:
    """Proves that each declared patch has wood of both parts against it over all its area.

    Glue asked for where there is air would make the strength of the joint a fiction. Wood that
    another joint takes out of the patch - a tenon's cheek at the end of a glued rail - is no
    fault while half of it is left; what truly touches is what is reckoned with.
    """

    title: ClassVar[str] = "true contact"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each patch not wholly touched, and for each joint with patches of no area."""
        found = []
        lost = []
        for contact, touched in zip(case.contacts, case.touched, strict=True):
            area = patch_area(contact.patch)
            if area == 0:
                lost.append(contact)
                continue
            if _is_whole(contact, area=area, touched=touched):
                continue
            alone = _touched_alone(case, contact)
            if touched < area * LEAST_SHARE or not _is_whole(contact, area=area, touched=alone):
                found.append(_finding(case, contact, area=area, touched=touched))
        return (*_no_faces(case, lost), *found)


def _is_whole(contact: Contact, *, area: float, touched: float) -> bool:
    return touched >= area * (1 - CLOSE) - SLAB * _rim(contact)


def _touched_alone(case: Case, contact: Contact) -> float:
    """What would touch if this joint's own cuts were the only ones made. [mm2]"""
    one, other = (
        placed(part, case.solid(replace(part, cuts=_own_cuts(part, contact.joined))))
        for name in contact.between
        for part in case.parts
        if part.name == name
    )
    return contact_area(one, other, patch=contact.patch, store=case.store)


def _own_cuts(part: Part, owner: str) -> tuple[Cut, ...]:
    return tuple(cut for cut in part.cuts if cut.owner == owner)


def _rim(contact: Contact) -> float:
    """Length round the patch, along which wood may slope away within the thickness looked at."""
    ring = [tuple(float(x) for x in point) for point in contact.patch]
    return sum(dist(one, other) for one, other in pairwise([*ring, ring[0]]))


def _no_faces(case: Case, contacts: Sequence[Contact]) -> Iterator[Finding]:
    """One for each joint: the sizes leave a tongue no width, a shoulder no height."""
    of_joint: dict[tuple[str, Weight], list[Contact]] = {}
    for contact in contacts:
        of_joint.setdefault((contact.joined, _weight(contact)), []).append(contact)
    for (joined, weight), lost in of_joint.items():
        zones = ", ".join(dict.fromkeys(contact.zone for contact in lost))
        parts = tuple(dict.fromkeys(name for contact in lost for name in contact.between))
        yield Finding(
            code="proofs.no-face",
            weight=weight,
            says=f"{joined}: the sizes leave no face for its parts to meet in ({zones})",
            cure=f"Look at the sizes of {', '.join(parts)}, and at those said of the joint.",
            place=case.place((joined, *parts)),
            figure="0 mm²",
            parts=parts,
        )


def _weight(contact: Contact) -> Weight:
    return Weight.MIND if contact.glue is Glue.DRY else Weight.HALT


def _finding(case: Case, contact: Contact, *, area: float, touched: float) -> Finding:
    one, other = contact.between
    return Finding(
        code="proofs.no-contact",
        weight=_weight(contact),
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
