"""All steps laid out before they are put in order, and how rules find them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from scantling.method.assemblies import GlueUp, Tie
from scantling.method.job import Job, Step
from scantling.method.preparing import STANDS
from scantling.shop.habits import Sizing
from scantling.shop.operations import word

AT_THE_BENCH = frozenset({"marking", "joints", "fitting", "before glue"})  # stages, parts loose
ON_THE_WORK = frozenset({"after glue", "doors", "drawers", "back and top"})  # stages, work stands
SIZINGS: Mapping[str, Sizing] = {
    **{name: sizing for sizing, (name, _) in STANDS.items()},
    "fit to opening": Sizing.LENGTH,
}
# done for a part and not to it: a size taken, a guide made
NOT_TO_THE_PART = frozenset({"take size", "make guide", "try piece", "set gauge", "sharpen"})


@dataclass(frozen=True, kw_only=True)
class Desk:
    """Steps without order; a step is known by its place here."""

    job: Job
    steps: tuple[Step, ...]
    glue_ups: tuple[GlueUp, ...]
    ties: tuple[Tie, ...]

    @cached_property
    def by_part(self) -> Mapping[str, tuple[int, ...]]:
        """Steps that are done to each part."""
        return _rows((part, i) for i, step in enumerate(self.steps) for part in step.parts)

    @cached_property
    def by_name(self) -> Mapping[str, tuple[int, ...]]:
        """Steps by the word of the vocabulary."""
        return _rows((step.name, i) for i, step in enumerate(self.steps))

    @cached_property
    def by_joint(self) -> Mapping[str, tuple[int, ...]]:
        """Steps that carry out each joint's work, in the joint's order."""
        placed = sorted((at, i) for i, step in enumerate(self.steps) for at in step.answers)
        return _rows((joint, i) for (joint, _), i in placed)

    @cached_property
    def tied(self) -> frozenset[int]:
        """Steps of joints that tie glue-ups."""
        joints = [name for tie in self.ties for name in tie.joints]
        return frozenset(i for name in joints for i in self.by_joint.get(name, ()))

    @cached_property
    def of(self) -> Mapping[str, tuple[int, ...]]:
        """Steps by what asks for them."""
        return _rows((step.of, i) for i, step in enumerate(self.steps))

    def named(self, *names: str, part: str | None = None) -> tuple[int, ...]:
        """Steps of some words, on one part or on any."""
        found = (i for name in names for i in self.by_name.get(name, ()))
        return tuple(i for i in found if part is None or part in self.steps[i].parts)

    def sizings(self, part: str, *kinds: Sizing) -> tuple[int, ...]:
        """Steps that bring a part to size."""
        return tuple(
            i
            for i in self.by_part.get(part, ())
            if SIZINGS.get(self.steps[i].name) in (kinds or tuple(Sizing))
        )

    def stage(self, step: int) -> str:
        """Stage of the vocabulary that a step belongs to."""
        return word(self.steps[step].name).stage

    def glue(self, each: GlueUp) -> tuple[int, ...]:
        """The step that closes a glue-up."""
        return tuple(i for i in self.of.get(each.name, ()) if self.steps[i].name == each.word)

    def own(self, each: GlueUp, *names: str) -> tuple[int, ...]:
        """Steps of a glue-up itself."""
        return tuple(i for i in self.of.get(each.name, ()) if self.steps[i].name in names)

    def home(self, part: str) -> GlueUp | None:
        """The glue-up a part belongs to."""
        return next((each for each in self.glue_ups if part in each.members), None)


def _rows(pairs: Iterable[tuple[str, int]]) -> Mapping[str, tuple[int, ...]]:
    rows: dict[str, dict[int, None]] = {}
    for key, value in pairs:
        rows.setdefault(key, {})[value] = None
    return {key: tuple(row) for key, row in rows.items()}


def sequence(rows: Sequence[Sequence[int]]) -> Iterable[tuple[int, int]]:
    """Each row before the next one that holds anything."""
    filled = [row for row in rows if row]
    for earlier, later in pairwise(filled):
        yield from ((a, b) for a in earlier for b in later)
