"""What was made so far, against the plan: what is left to make follows what is there.

The plan is the piece as it would be if nothing had been measured. What was measured and cut are
facts; of what is left, as little as may be is changed from the plan.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._joint import Choice
from scantling.parts import Part
from scantling.record.facts import Facts
from scantling.setting_out.memory import Memory
from scantling.sizes.model import Kind, Size, Sizes
from scantling.sizes.rows import Kept, part_of
from scantling.sizes.settle import Settled

NOTHING_CUT: Mapping[str, Mapping[str, Fraction]] = {}


@dataclass(frozen=True, kw_only=True)
class Plan:
    """The piece as it would be if nothing had been measured."""

    of: tuple[object, ...]  # what it was made from: text, shop, habits, boards
    settled: Settled[dict[str, Choice]]
    memory: Memory = field(default_factory=Memory, compare=False)

    @property
    def sizes(self) -> Sizes:
        """Planned sizes. [mm]"""
        return self.settled.solved.sizes


@dataclass(frozen=True, kw_only=True)
class Changed:
    """A size that is no more what it was to be."""

    name: str
    was: Fraction  # [mm]
    value: Fraction  # it has now [mm]
    because: str
    kind: Kind
    is_fact: bool  # measured


def kept(plan: Plan, told: Facts) -> Kept | None:
    """The plan for a piece whose cutting has begun; None before."""
    if not told.cut:
        return None
    cut = {name: value for sizes in told.cut.values() for name, value in sizes.items()}
    return Kept(sizes={**dict(plan.sizes), **cut}, cut=frozenset(told.cut))


def changes(plan: Plan, now: Sizes, *, told: Facts) -> Iterator[Changed]:
    """Sizes that are not what they were planned to be, in the order of the piece."""
    read_off = {fact.name for fact in told.measured}
    for name, size in now.by_name.items():
        was = plan.sizes.by_name.get(name)
        if was is not None and was.value != size.value:
            yield Changed(
                name=name,
                was=was.value,
                value=size.value,
                because=_because(size),
                kind=size.kind,
                is_fact=name in read_off,
            )


def _because(size: Size) -> str:
    return size.because or "it follows from what was measured"


def gone(told: Facts, parts: tuple[Part, ...]) -> Iterator[Finding]:
    """Parts that were cut and that the piece has no more."""
    there = {part.name for part in parts}
    for name in told.cut:
        if name not in there:
            yield Finding(
                code="record.cut-part-gone",
                weight=Weight.MIND,
                says=f"The record has the {name} cut, and the piece has no part of that name.",
                cure="Call it as the piece does by a correction in the record, or take it back.",
                parts=(name,),
            )


def cut_sizes(name: str, sizes: Sizes) -> dict[str, Fraction]:
    """The sizes a part has, to be kept when it is cut. [mm]"""
    return {size: value for size, value in sizes.items() if part_of(size) == name}
