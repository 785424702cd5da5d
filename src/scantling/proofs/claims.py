"""Wood is cut away once: each joint's claim on a part is its own unless shared by name."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.parts.cut import Cut
from scantling.parts.part import Part
from scantling.parts.solid import block, claim, is_sound
from scantling.proofs._proof import Case
from scantling.solids.kernel import NOISE, shared_by_hulls
from scantling.solids.pattern import Convex, bounds


class Claims:
    """Proves that cuts of different joints in one part do not meet unless that is meant."""

    title: ClassVar[str] = "claims on wood"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each pair of joints that take the same wood of a part."""
        return tuple(finding for part in case.parts for finding in _of_part(case, part))


def _of_part(case: Case, part: Part) -> Iterator[Finding]:
    told = set()
    whole = block(part)
    for one, other in _strangers(part):
        pair = (one.owner, other.owner)
        if pair in told:
            continue
        volume = case.store.kept(
            ("claims", part.extent, one, other),
            lambda a=one, b=other: _both(part, a, b, within=whole),  # type: ignore[misc] # mypy can't infer defaults of a lambda
        )
        if volume > NOISE:
            told.add(pair)
            yield _finding(case, part, one, other, volume=volume)


def _strangers(part: Part) -> Iterator[tuple[Cut, Cut]]:
    for one, other in combinations(part.cuts, 2):
        allowed = one.owner in other.shares or other.owner in one.shares
        if one.owner != other.owner and not allowed:
            yield one, other


def _both(part: Part, one: Cut, other: Cut, *, within: Convex) -> float:
    if not (is_sound(one, extent=part.extent) and is_sound(other, extent=part.extent)):
        return 0.0  # another proof reports it
    claims = claim(one, extent=part.extent), claim(other, extent=part.extent)
    if not bounds(claims[0].corners).meets(bounds(claims[1].corners)):
        return 0.0
    return shared_by_hulls(*claims, within=within)


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
        limit="0 mm³",
        parts=(part.name,),
    )
