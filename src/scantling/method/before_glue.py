"""What must be done before a glue-up shuts it in: the list that hangs over the bench."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.method.assemblies import GlueUp
from scantling.method.job import Before, Step


@dataclass(frozen=True, kw_only=True)
class BeforeGlue:
    """One glue-up with everything that comes before it, and why."""

    name: str
    glue: Step
    lines: tuple[tuple[Step, str], ...]  # in the order of the work
    lies_dry: tuple[str, ...]  # parts to be laid in before it closes


def before_glue(
    steps: Sequence[Step], pairs: Sequence[Before], glue_ups: Sequence[GlueUp]
) -> tuple[BeforeGlue, ...]:
    """The lists of all glue-ups, in the order they are closed."""
    found = []
    names = {each.name: each for each in glue_ups}
    for place, step in enumerate(steps):
        each = names.get(step.of)
        if each is None or step.name != each.word:
            continue
        rows = sorted((p.first, p.because) for p in pairs if p.then == place)
        found.append(
            BeforeGlue(
                name=each.name,
                glue=step,
                lines=tuple((steps[i], because) for i, because in rows),
                lies_dry=each.captured,
            )
        )
    return tuple(found)
