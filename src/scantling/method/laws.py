"""What a step must find when its turn comes, each law by itself, with what a maker would say.

Written apart from the planner, from the job alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from scantling.findings import Finding, Weight
from scantling.method.floor import BENCH, GLUES, Floor
from scantling.method.job import Step
from scantling.shop.habits import Sizing
from scantling.shop.operations import Reference, State, word

Law = Callable[[Floor, Step], Iterator[Finding]]
MADE_BY = {
    Reference.FACE_SIDE: ("true face", "flatten panel"),
    Reference.FACE_EDGE: ("shoot edge",),
    Reference.TRUE_END: ("square one end",),
    Reference.ENDS: ("cut to length", "fit to opening"),
}
LOOSE_SIZES = {
    State.THICKNESSED: (Sizing.THICKNESS,),
    State.TO_WIDTH: (Sizing.WIDTH, Sizing.THICKNESS),
}
OF_THE_PART = ("truing", "panels")
FOR_THE_PART = frozenset({"take size", "make guide"})  # nothing is done to the part itself
LATE = frozenset({"fasten top", "fit back board", "coat", "rub down", "refit hardware"})


def found(step: Step, code: str, says: str, cure: str) -> Finding:
    """A finding of a step."""
    return Finding(
        code=code,
        weight=Weight.HALT,
        says=f"step {step.number}, {step.told}: {says}",
        cure=cure,
        source=word(step.name).source,
        parts=step.parts,
    )


def to_size_in_order(floor: Floor, step: Step) -> Iterator[Finding]:
    """Faces, edges and sizes follow each other."""
    if step.answers:
        return
    for part in step.parts:
        rows = floor.facts.prepared(part)
        if step.name not in rows:
            continue
        earlier = rows[: rows.index(step.name)]
        for missing in floor.lacks(part, [n for n in earlier if n != step.name]):
            if step.name == "flatten panel" and missing == "rest panel":
                yield found(
                    step,
                    "method.panel-not-rested",
                    f"the glue of the {part} has not let go of its water yet",
                    "Let the panel rest first, or its joints sink later.",
                )
                continue
            yield found(
                step,
                "method.size-before-reference",
                f"the {part} still waits for {missing}",
                f"Do {missing} first.",
            )


def sized(floor: Floor, step: Step) -> Iterator[Finding]:
    """Joints are marked and cut on parts that have their size."""
    if word(step.name).stage in OF_THE_PART or step.name in FOR_THE_PART:
        return
    before = step.operation.state_before
    if step.name == "fit to opening" or before.rung < State.THICKNESSED.rung:
        return
    for part in step.parts:
        for missing in floor.lacks_size(part, LOOSE_SIZES.get(before, tuple(Sizing))):
            yield found(
                step,
                "method.not-to-size",
                f"the {part} is not to size yet, it waits for {missing}",
                "Bring the part to size before its joints are marked.",
            )


def has_reference(floor: Floor, step: Step) -> Iterator[Finding]:
    """The surface it is worked from exists."""
    if word(step.name).stage == "panels":
        return
    for part in step.parts:
        for missing in floor.lacks(part, MADE_BY.get(step.operation.reference, ())):
            yield found(
                step,
                "method.no-reference",
                f"it is worked from the {step.operation.reference} of the {part}, "
                f"which is not made yet",
                f"Do {missing} first.",
            )


def gauge_from_the_real_part(floor: Floor, step: Step) -> Iterator[Finding]:
    """A gauge set from a part finds the part at that size."""
    setting = step.operation.setting
    for name in setting.dimensions if setting else ():
        part, _, size = name.rpartition(".")
        if part not in floor.job.by_name or size not in tuple(Sizing):
            continue
        if step.parts == (part,) and word(step.name).stage in OF_THE_PART:
            continue
        for _ in floor.lacks_size(part, (Sizing(size),)):
            yield found(
                step,
                "method.gauge-from-the-drawing",
                f"its gauge is set from the real {part}, which has no {size} yet",
                f"Plane the {part} first and set the gauge from it.",
            )


def joint_in_order(floor: Floor, step: Step) -> Iterator[Finding]:
    """A joint's own order holds on every part."""
    for name, place in step.answers:
        mine = set(step.parts)
        for i, each in enumerate(floor.job.joints_by_name[name].work[:place]):
            if not mine.isdisjoint(each.parts) and (name, i) not in floor.answered:
                yield found(
                    step,
                    "method.joint-out-of-order",
                    f"in the joint {name} it comes before {each.name}",
                    f"Do {each.name} first.",
                )


def real_mate(floor: Floor, step: Step) -> Iterator[Finding]:
    """What is transferred or fitted finds its real mate ready."""
    if not step.operation.mate_first:
        return
    for name, place in step.answers:
        joint = floor.job.joints_by_name[name]
        if joint.own_glue:
            continue
        mates = [p for p in joint.parts if p not in step.parts]
        late = [
            each.name
            for i, each in enumerate(joint.work[:place])
            if (name, i) not in floor.answered and not set(mates).isdisjoint(each.parts)
        ]
        late += [missing for mate in mates for missing in floor.lacks_size(mate)]
        if late:
            yield found(
                step,
                "method.mate-not-ready",
                f"it is taken from its real mate, which still waits for {late[0]}",
                "Cut the mate first and mark from it, never from a measure.",
            )


def not_shut_in(floor: Floor, step: Step) -> Iterator[Finding]:
    """Nothing is done to a part where a glue-up has shut it in."""
    if all(name in floor.facts.tied_names for name, _ in step.answers) and step.answers:
        return
    stage = word(step.name).stage
    for part in step.parts:
        if part not in floor.shut or step.name in GLUES:
            continue
        free = part not in floor.facts.glued_with
        if stage in {*BENCH, *OF_THE_PART} or step.name == "shape":
            if step.name == "bore pin holes" and not floor.job.habits.pin_holes_before_glue:
                continue
        elif not free or step.name not in {"smooth", "coat", "rub down"}:
            continue
        code, says, cure = _shut(step, part, free=free)
        yield found(step, code, says, cure)


def _shut(step: Step, part: str, *, free: bool) -> tuple[str, str, str]:
    if free:
        return (
            "method.panel-caught-unfinished",
            f"the {part} lies caught in its glued frame already, its edges out of reach",
            f"Do {step.name} while the part is free, before the frame is glued round it.",
        )
    if step.name in {"smooth inside", "prefinish"}:
        return (
            "method.inside-after-glue",
            f"the inside faces of the {part} are closed in, no plane or brush reaches the corners",
            "Smooth and finish inside faces before the glue.",
        )
    if step.name == "bore pin holes":
        return (
            "method.pin-holes-after-glue",
            f"the {part} is glued up, and there is no room for brace and template inside",
            "Bore both of a pair while they lie flat on the bench.",
        )
    if step.name == "dry assemble":
        return (
            "method.no-dry-run",
            f"the {part} is glued already: its first assembly was the one with glue on",
            "Put it together dry first, and measure its diagonals.",
        )
    return (
        "method.shut-in",
        f"the {part} is glued already and closed where that is done",
        "Do it before the glue, while the part lies loose.",
    )


def closes_in_order(floor: Floor, step: Step) -> Iterator[Finding]:
    """Dry run, inside faces, finish, lay out, glue, clean, flush."""
    if step.answers:
        return
    for part in step.parts:
        rows = floor.facts.closed(part)
        if step.name not in rows:
            continue
        for missing in floor.lacks(part, rows[: rows.index(step.name)]):
            yield found(
                step,
                "method.glue-up-out-of-order",
                f"the {part} still waits for {missing}",
                f"Do {missing} first.",
            )


def joints_done(floor: Floor, step: Step) -> Iterator[Finding]:
    """Everything made at the bench is made before a part is assembled and glued."""
    foot = step.operation.state_before
    if foot.rung < State.FITTED.rung or step.name in FOR_THE_PART:
        return
    own = {name for name, _ in step.answers}
    gluing = step.name in GLUES
    for part in step.parts:
        for asked, each in floor.facts.on[part]:
            if asked in floor.answered or asked[0] in own or each.name in FOR_THE_PART:
                continue
            climbs = each.state_after.rung > each.state_before.rung
            low = climbs and each.state_after.rung <= foot.rung
            if low or (gluing and _bench(floor, asked[0], each.name)):
                yield found(
                    step,
                    "method.joint-not-made",
                    f"the {part} still waits for {each.name} ({asked[0]})",
                    f"Do {each.name} first: what is closed stays closed.",
                )
        for missing in floor.lacks(part, ("shape",)):
            yield found(
                step,
                "method.joint-not-made",
                f"the {part} has not its shape yet",
                f"Do {missing} first.",
            )
        yield from _prepared(floor, step, part)


def _prepared(floor: Floor, step: Step, part: str) -> Iterator[Finding]:
    """States of the whole part that a later state builds on."""
    climbs = {
        State.PREFINISHED: ("prefinish",),
        State.GLUED: ("prefinish", *GLUES),
        State.FLUSHED: ("prefinish", *GLUES, "flush", "run drawer"),
    }
    for missing in floor.lacks(part, climbs.get(step.operation.state_before, ())):
        if missing != step.name:
            yield found(
                step,
                "method.state-skipped",
                f"the {part} has to be {step.operation.state_before} and waits for {missing}",
                f"Do {missing} first.",
            )


def _bench(floor: Floor, joint: str, name: str) -> bool:
    if joint in floor.facts.tied_names:
        return False
    if name == "bore pin holes" and not floor.job.habits.pin_holes_before_glue:
        return False
    return word(name).stage in BENCH


def caught_parts_lie_inside(floor: Floor, step: Step) -> Iterator[Finding]:
    """What cannot enter later lies inside when the glue-up closes, made and finished."""
    if step.name not in GLUES:
        return
    inside = set(step.parts)
    for part, by in floor.job.captured.items():
        if not inside.issuperset(by):
            continue
        if part not in step.holds:
            yield found(
                step,
                "method.caught-part-outside",
                f"the {part} is left outside, and once the glue is in it cannot enter",
                f"Lay the {part} in dry before the last joint is closed.",
            )
        asked = [each.name for at, each in floor.facts.on[part] if at not in floor.answered]
        bare = [*floor.lacks(part, (*floor.facts.prepared(part), "smooth")), *asked]
        if bare:
            yield found(
                step,
                "method.panel-caught-unfinished",
                f"the {part} is caught while it still waits for {bare[0]}",
                f"Do {bare[0]} first; a strip left bare shows when the panel shrinks.",
            )


def whole_group(floor: Floor, step: Step) -> Iterator[Finding]:
    """A glue-up closes all its joints in one go."""
    if step.name not in GLUES:
        return
    for part in step.parts:
        left = floor.facts.glued_with.get(part, frozenset()) - set(step.parts)
        if left:
            yield found(
                step,
                "method.part-left-out-of-glue-up",
                f"the {min(left)} is left out and cannot be brought in afterwards",
                f"Lay the {min(left)} ready with the others.",
            )
            return
