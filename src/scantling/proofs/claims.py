"""Wood is cut away once: each joint's claim on a part is its own unless shared by name."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.parts.cut import Cut
from scantling.parts.part import Part
from scantling.parts.solid import block, claim
from scantling.proofs._proof import Case
from scantling.solids.kernel import NOISE, shared_by_hulls
from scantling.solids.pattern import bounds


class Claims:
    """Proves that cuts of different joints in one part do not meet unless that is meant."""

    title: ClassVar[str] = "claims on wood"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each pair of joints that take the same wood of a part."""
        return tuple(finding for part in case.parts for finding in _of_part(case, part))


def _of_part(case: Case, part: Part) -> Iterator[Finding]:
    told = set()
    key = ("claims", part.extent, part.cuts, part.is_round)
    for one, other, volume in case.store.kept(key, lambda: tuple(_shared(part))):
        if (one.owner, other.owner) not in told:
            told.add((one.owner, other.owner))
            yield _finding(case, part, one, other, volume=volume)


def _shared(part: Part) -> Iterator[tuple[Cut, Cut, float]]:
    """Cuts of different joints that take the same wood, and how much. [mm3]"""
    whole = block(part)
    claims = [(cut, claim(cut, extent=part.extent)) for cut in part.cuts]
    sound = [(cut, taken, bounds(taken.corners)) for cut, taken in claims if taken is not None]
    for (one, mine, room), (other, theirs, there) in combinations(sound, 2):
        allowed = one.owner in other.shares or other.owner in one.shares
        if one.owner == other.owner or allowed or not room.meets(there):
            continue
        volume = shared_by_hulls(mine, theirs, within=whole)
        if volume > NOISE:
            yield one, other, volume


def _finding(case: Case, part: Part, one: Cut, other: Cut, *, volume: float) -> Finding:
    return Finding(
        code="proofs.wood-claimed-twice",
        weight=Weight.HALT,
        says=(
            f"{one.name} ({one.owner}) and {other.name} ({other.owner}) "
            f"take the same wood of the {part.name}"
        ),
        cure="Move or stop one of the two cuts.",
        place=case.place((one.owner, other.owner, part.name)),
        figure=f"{volume:.6g} mm³",
        limit="nothing",
        parts=(part.name,),
    )
