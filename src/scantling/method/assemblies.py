"""What is glued together in one go.

Parts that glue holds to each other are one glue-up. A joint that is glued by an operation of its
own, as a face frame on its case, ties two glue-ups and comes after both.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from scantling.method.job import Job, JobJoint
from scantling.shop.operations import word


@dataclass(frozen=True, kw_only=True)
class GlueUp:
    """Parts that are closed with glue in one go."""

    name: str  # "left side and 9 more"
    members: tuple[str, ...]
    captured: tuple[str, ...]  # parts that lie dry inside and cannot enter later
    word: str  # operation of the vocabulary: "glue case"
    opens: str = ""  # assembly that opens or slides as one

    @property
    def shuts_in(self) -> frozenset[str]:
        """Members and what is caught between them."""
        return frozenset((*self.members, *self.captured))

    @property
    def is_drawer(self) -> bool:
        """Whether it is glued as a drawer is."""
        return self.word == "glue drawer"


@dataclass(frozen=True, kw_only=True)
class Tie:
    """Glue-ups that joints with a glue operation of their own bring together."""

    name: str
    joints: tuple[str, ...]
    glue_ups: tuple[str, ...]


def glue_ups(job: Job) -> tuple[GlueUp, ...]:
    """Every glue-up, in the order of the parts."""
    joints = [j for j in job.joints if j.glued and not j.own_glue]
    groups = connected([j.parts for j in joints])
    order = {part.name: place for place, part in enumerate(job.parts)}
    ordered = sorted(
        (sorted(group, key=order.__getitem__) for group in groups),
        key=lambda members: order[members[0]],
    )
    return tuple(_glue_up(job, members, joints) for members in ordered)


def ties(job: Job, found: Sequence[GlueUp]) -> tuple[Tie, ...]:
    """What ties glue-ups to each other; joints between the same ones are glued as one."""
    home = {part: each.name for each in found for part in each.members}
    rows: dict[tuple[str, ...], list[str]] = {}
    for joint in job.joints:
        if joint.own_glue:
            sides = tuple(sorted({home.get(part, part) for part in joint.parts}))
            rows.setdefault(sides, []).append(joint.name)
    return tuple(
        Tie(name=" to ".join(sides), joints=tuple(row), glue_ups=sides)
        for sides, row in rows.items()
    )


def connected(rows: Iterable[Sequence[str]]) -> list[set[str]]:
    """Names that hang together through rows that share one."""
    groups: list[set[str]] = []
    for row in rows:
        met = [group for group in groups if not group.isdisjoint(row)]
        groups = [group for group in groups if group.isdisjoint(row)]
        groups.append(set(row).union(*met))
    return groups


def _glue_up(job: Job, members: Sequence[str], joints: Sequence[JobJoint]) -> GlueUp:
    inside = set(members)
    captured = tuple(p for p, held in job.captured.items() if inside.issuperset(held))
    opens = job.by_name[members[0]].moves_with
    within = [j for j in joints if inside.issuperset(j.parts)]
    more = f" and {len(members) - 1} more"
    return GlueUp(
        name=opens or members[0] + more,
        members=tuple(members),
        captured=captured,
        word=_word(job, opens, within),
        opens=opens,
    )


def _word(job: Job, opens: str, within: Sequence[JobJoint]) -> str:
    if opens and "drawers" in stages(job, opens):
        return "glue drawer"
    framed = all(any(o.name == "chop mortise" for o in j.work) for j in within)
    return "glue frame" if framed else "glue case"


def stages(job: Job, opens: str) -> frozenset[str]:
    """Stages of the vocabulary that joints ask for on parts of an assembly that opens."""
    moving = {part.name for part in job.parts if part.moves_with == opens}
    return frozenset(
        word(each.name).stage
        for joint in job.joints
        for each in joint.work
        if not moving.isdisjoint(each.parts)
    )
