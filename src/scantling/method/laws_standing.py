"""Laws of fitting, strength, pairs, hardware and coats; written apart from the planner too."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.findings import Finding
from scantling.method.floor import GLUES, STANDING, Floor
from scantling.method.job import Step
from scantling.method.laws import LATE, Law, found
from scantling.shop.operations import word

TAILS = ("cut tails", "cut pins", "cut blind pins")


def opening_is_real(floor: Floor, step: Step) -> Iterator[Finding]:
    """Doors and drawers are fitted to an opening that is glued and level."""
    if step.name not in {"fit to opening", "shoot door", "run drawer"}:
        return
    if not any(floor.job.by_name[p].moves_with for p in step.parts):
        return
    fixed = [p for p in floor.facts.glued_with if not floor.job.by_name[p].moves_with]
    late = [m for p in fixed for m in floor.lacks(p, (*GLUES, "flush"))]
    late += [m for joint in floor.facts.tied for m in _untied(floor, joint.name)]
    if step.name == "run drawer":
        names = ("fit guide", "fit runner")
        late += [a[0] for p in floor.job.by_name for a in floor.waiting(p, *names)]
    if late:
        yield found(
            step,
            "method.opening-not-final",
            f"its real opening is not final, it waits for {late[0]}",
            "Fit doors and drawers to the opening as it stands, not to the drawing.",
        )


def _untied(floor: Floor, name: str) -> Iterator[str]:
    for place, each in enumerate(floor.job.joints_by_name[name].work):
        if each.name != "dry assemble" and (name, place) not in floor.answered:
            yield each.name


def panel_to_its_frame(floor: Floor, step: Step) -> Iterator[Finding]:
    """A caught panel is cut to the size its dry frame tells."""
    for part in step.parts:
        if step.name == "take size":
            late = [m for p in floor.job.captured.get(part, ()) for m in _dry(floor, p)]
        elif step.name in {"plane to width", "cut to length"}:
            late = [name for name, _ in floor.waiting(part, "take size")]
        else:
            continue
        if late:
            yield found(
                step,
                "method.panel-from-the-drawing",
                f"the {part} is sized before its real frame has told the size",
                "Put the frame together dry and take the size from it.",
            )


def _dry(floor: Floor, part: str) -> Iterator[str]:
    return floor.lacks(part, ("dry assemble",))


def work_stands(floor: Floor, step: Step) -> Iterator[Finding]:
    """What is fastened to the work finds it glued and level."""
    if word(step.name).stage not in STANDING:
        return
    for name, _ in step.answers:
        if name in floor.facts.tied_names:
            continue
        late = list(_not_made(floor, floor.job.joints_by_name[name].parts))
        late += list(_own_fit(floor, step))
        if late:
            yield found(
                step,
                "method.fitted-before-it-stands",
                f"the work does not stand yet, it waits for {late[0]}",
                "Glue and level first, and fit to what is there.",
            )


def _not_made(floor: Floor, parts: tuple[str, ...]) -> Iterator[str]:
    whole = [floor.facts.glued_with[p] for p in parts if p in floor.facts.glued_with]
    near = frozenset().union(*whole)
    for joint in floor.facts.tied:
        if not near.isdisjoint(joint.parts):
            yield from _untied(floor, joint.name)
            near = near.union(*(floor.facts.glued_with.get(p, ()) for p in joint.parts))
    for part in sorted(near):
        yield from floor.lacks(part, (*GLUES, "flush"))


def _own_fit(floor: Floor, step: Step) -> Iterator[str]:
    moving = {floor.job.by_name[p].moves_with for p in step.parts} - {""}
    members = [p for p in floor.facts.glued_with if floor.job.by_name[p].moves_with in moving]
    if step.name in {"cut gain", "hang door"}:
        yield from (m for p in members for m in floor.lacks(p, ("shoot door",)))
    if step.name == "fit bottom":
        yield from (m for p in members for m in floor.lacks(p, ("run drawer",)))


def both_sides_ready(floor: Floor, step: Step) -> Iterator[Finding]:
    """Two glue-ups are level before they are glued to each other."""
    for name in dict.fromkeys(name for name, _ in step.answers):
        if name not in floor.facts.tied_names:
            continue
        parts = floor.job.joints_by_name[name].parts
        near = frozenset().union(*(floor.facts.glued_with.get(p, ()) for p in parts))
        late = [m for p in sorted(near) for m in floor.lacks(p, (*GLUES, "flush"))]
        if late:
            yield found(
                step,
                "method.glued-on-too-early",
                f"one side is not glued and level yet, it waits for {late[0]}",
                "Level both sides before one is glued to the other.",
            )
            return


def wood_left_for_strength(floor: Floor, step: Step) -> Iterator[Finding]:
    """Mortises before the horns are off, grooves before shoulders."""
    for part in step.parts:
        if step.name == "chop mortise" and floor.job.horned(part) and "flush" in floor.words[part]:
            yield found(
                step,
                "method.horns-off-before-mortise",
                f"the horns of the {part} are sawn off, and its end splits under the chisel",
                "Leave the horns on until the frame is glued.",
            )
        if step.name == "saw tenon" and any(floor.waiting(part, "plough groove")):
            yield found(
                step,
                "method.groove-after-shoulder",
                f"the edge of the {part} is cut away before the plough has run along it",
                "Plough the groove first, along the whole edge.",
            )


def first_cut_guides(floor: Floor, step: Step) -> Iterator[Finding]:
    """Groove and mortise, groove and tails: the first guides the second, as the maker works."""
    habits = floor.job.habits
    first = "chop mortise" if habits.groove_after_mortise else "plough groove"
    second = "plough groove" if habits.groove_after_mortise else "chop mortise"
    grooves: tuple[str, ...] = ("plough groove",)
    before: tuple[str, ...] = grooves
    after: tuple[str, ...] = TAILS
    if habits.drawer_groove_after_dovetails:
        before, after = TAILS, grooves
    for part in step.parts:
        late = [*floor.waiting(part, first)] if step.name == second else []
        late += [*floor.waiting(part, *before)] if step.name in after else []
        if late:
            yield found(
                step,
                "method.guide-cut-later",
                f"the cut that guides it on the {part} is not made yet ({late[0][0]})",
                "Keep to the order of your habits; the first cut guides the second.",
            )


def pair_together(floor: Floor, step: Step) -> Iterator[Finding]:
    """Both of a pair lie there to size when one is marked."""
    if step.name != "mark pair across":
        return
    for part in step.parts:
        mine = floor.job.by_name[part]
        for other in floor.job.parts:
            alike = (other.family, other.moves_with) == (mine.family, mine.moves_with)
            for missing in floor.lacks_size(other.name) if alike else ():
                yield found(
                    step,
                    "method.pair-apart",
                    f"the {other.name} belongs beside it and waits for {missing}",
                    "Bring both of a pair to size and mark them as one.",
                )


def hardware_and_coats(floor: Floor, step: Step) -> Iterator[Finding]:
    """Hardware on, off, finish, on; what would mar a coat comes before it."""
    for part in step.parts:
        if step.name == "coat":
            yield from _coat(floor, step, part)
        elif step.name == "rub down":
            yield from _waits(floor, step, part, ("coat",), "there is no coat to rub down")
        elif step.name == "refit hardware":
            yield from _waits(floor, step, part, ("rub down",), "the finish is not hard yet")
            if any(floor.waiting(part, "take off hardware")):
                yield _hardware_on(step, part)
        elif step.name in {"fasten top", "fit back board"} and part not in floor.facts.glued_with:
            says = "it is fastened before it is finished all round"
            yield from _waits(floor, step, part, ("smooth", "prefinish", "rub down"), says)


def _coat(floor: Floor, step: Step, part: str) -> Iterator[Finding]:
    late = set(LATE)
    if not floor.job.habits.hinges_before_finish:
        late.add("hang door")
    for asked, each in floor.facts.on[part]:
        if each.name in late or asked in floor.answered:
            continue
        if each.name == "take off hardware":
            yield _hardware_on(step, part)
        else:
            yield _mars(step, part, each.name)
    rows = [name for name, on in floor.facts.due if on == part and name not in late]
    yield from (_mars(step, part, missing) for missing in floor.lacks(part, rows))


def _hardware_on(step: Step, part: str) -> Finding:
    return found(
        step,
        "method.finished-with-hardware-on",
        f"the hardware sits on the {part} still",
        "Take the hardware off and label it, finish, and put it back.",
    )


def _mars(step: Step, part: str, what: str) -> Finding:
    return found(
        step,
        "method.coat-too-early",
        f"the {part} still waits for {what}, which would mar the coat",
        f"Do {what} first.",
    )


def _waits(
    floor: Floor, step: Step, part: str, names: tuple[str, ...], says: str
) -> Iterator[Finding]:
    for missing in floor.lacks(part, names):
        yield found(step, "method.finish-out-of-order", f"{part}: {says}", f"Do {missing} first.")


def smooth_last(floor: Floor, step: Step) -> Iterator[Finding]:
    """Last shavings after joints and levelling, before finish and fastening."""
    fastening = {"prefinish", "fit guide", "fit bottom", "fasten top"}
    for part in step.parts:
        free = part not in floor.facts.glued_with
        if step.name == "smooth":
            yield from _before_smoothing(floor, step, part)
        elif step.name in fastening and free:
            says = "it is not smooth yet"
            yield from _waits(floor, step, part, ("smooth",), says)


def _before_smoothing(floor: Floor, step: Step, part: str) -> Iterator[Finding]:
    late = [*floor.lacks(part, ("shape", "flush"))]
    for asked, each in floor.facts.on[part]:
        early = word(each.name).stage in {"marking", "joints"}
        early = early or each.name in {"fit shelf", "flush"}
        if early and asked not in floor.answered:
            late.append(each.name)
    if late:
        yield found(
            step,
            "method.smoothed-too-early",
            f"the {part} still waits for {late[0]}, which leaves its marks",
            f"Do {late[0]} first.",
        )


def as_the_joint_says(floor: Floor, step: Step) -> Iterator[Finding]:
    """An operation is the one its joint asks for: same tool, same surface, same setting."""
    for name, place in step.answers:
        asked = floor.job.joints_by_name[name].work[place]
        made = step.operation
        if asked.reference is not made.reference:
            yield found(
                step,
                "method.worked-from-two-faces",
                f"it is worked from the {made.reference} and its mate from the "
                f"{asked.reference}: the two will not lie flush",
                f"Work both from the {asked.reference}.",
            )
        sizes = (_held(asked.setting), _held(made.setting))
        if sizes[0] != sizes[1] or not set(asked.parts) <= set(made.parts):
            yield found(
                step,
                "method.not-as-the-joint-asks",
                f"the joint {name} asks for it otherwise",
                "Do it as the joint is set out.",
            )


def _held(setting: object) -> object:
    return getattr(setting, "dimensions", None)


LAWS: tuple[Law, ...] = (
    opening_is_real,
    panel_to_its_frame,
    work_stands,
    both_sides_ready,
    wood_left_for_strength,
    first_cut_guides,
    pair_together,
    hardware_and_coats,
    smooth_last,
    as_the_joint_says,
)
