"""What the order of work is made from, and the steps it is made of.

A `Job` tells facts alone: made parts, joints with the operations they ask for, what is glued
and what a glue-up would catch. A `Step` is one operation with what it belongs to.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from scantling.exact import Fraction
from scantling.parts import Part
from scantling.parts.part import GluedUp
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation
from scantling.shop.tools import Shop


@dataclass(frozen=True, kw_only=True)
class JobJoint:
    """A joint as the order of work sees it."""

    name: str
    parts: tuple[str, ...]  # made parts it joins
    work: tuple[Operation, ...]  # in the joint's own order
    glued: bool = False  # glue holds made parts together here

    @property
    def own_glue(self) -> bool:
        """Whether the joint is glued by an operation of its own, after both its sides."""
        return self.glued and any(each.name.startswith("glue ") for each in self.work)


@dataclass(frozen=True, kw_only=True)
class Job:
    """Everything the order of work follows from."""

    parts: tuple[Part, ...]  # made, no hardware
    joints: tuple[JobJoint, ...]
    shop: Shop
    habits: Habits
    sizes: Mapping[str, Fraction] = field(default_factory=dict)  # [mm] by name
    # parts held dry that cannot leave straight once the parts that hold them are glued
    captured: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @cached_property
    def by_name(self) -> Mapping[str, Part]:
        """Made parts by name."""
        return {part.name: part for part in self.parts}

    @cached_property
    def joints_by_name(self) -> Mapping[str, JobJoint]:
        """Joints by name."""
        return {joint.name: joint for joint in self.joints}

    def strips(self, part: str) -> int:
        """How many strips a part is glued up from; 0 where it is one board."""
        blank = self.by_name[part].blank
        return len(blank.strips) if isinstance(blank, GluedUp) else 0

    def horned(self, part: str) -> bool:
        """Whether waste is left beyond the ends of a part until it is glued."""
        return any(self.by_name[part].horns)

    def shapings(self, part: str) -> tuple[str, ...]:
        """Owners of cuts that no joint makes: an arch, the bevel of a top."""
        owners = (cut.owner for cut in self.by_name[part].cuts)
        return tuple(dict.fromkeys(o for o in owners if o not in self.joints_by_name))


@dataclass(frozen=True, kw_only=True)
class Step:
    """One operation of the order, with what it belongs to."""

    operation: Operation
    of: str  # part, joint, glue-up or assembly that asks for it
    answers: tuple[tuple[str, int], ...] = ()  # joint and place in its work that it carries out
    holds: tuple[str, ...] = ()  # parts that lie dry inside what is glued
    number: int = 0  # in the order, from 1

    @property
    def name(self) -> str:
        """The word of the vocabulary."""
        return self.operation.name

    @property
    def parts(self) -> tuple[str, ...]:
        """Parts it is done to."""
        return self.operation.parts

    @property
    def told(self) -> str:
        """`chop mortise: left stile`, as lists and findings name it."""
        shown = ", ".join(self.parts[:3])
        more = len(self.parts) - 3
        return f"{self.name}: {shown}" + (f" and {more} more" if more > 0 else "")


@dataclass(frozen=True, kw_only=True)
class Before:
    """One step stands before another, and why."""

    first: int  # index of a step
    then: int
    because: str
