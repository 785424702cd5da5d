"""What must come before what, each rule by itself and each pair with its reason.

Nothing here is typed in for a piece: everything follows from states of parts, references,
real mates, openings, what a glue-up shuts in, and the maker's habits.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from scantling.method.desk import AT_THE_BENCH, NOT_TO_THE_PART, ON_THE_WORK, Desk, sequence
from scantling.method.job import Before
from scantling.shop.habits import Sizing
from scantling.shop.operations import Reference, State

Rule = Callable[[Desk], Iterator[Before]]
MAKES = {  # the step that makes a reference surface
    Reference.FACE_SIDE: ("true face", "flatten panel"),
    Reference.FACE_EDGE: ("shoot edge",),
    Reference.TRUE_END: ("square one end",),
    Reference.ENDS: ("cut to length", "fit to opening"),
}
NEEDS = {  # sizes a part must have before what finds it in that state
    State.THICKNESSED: (Sizing.THICKNESS,),
    State.TO_WIDTH: (Sizing.WIDTH, Sizing.THICKNESS),
    State.TO_LENGTH: tuple(Sizing),
    State.MARKED: tuple(Sizing),
    State.CUT: tuple(Sizing),
    State.FITTED: tuple(Sizing),
}


def precedence(desk: Desk) -> tuple[Before, ...]:
    """Every pair that some rule puts in order, each once, with the first rule's reason."""
    found: dict[tuple[int, int], Before] = {}
    for rule in RULES:
        for each in rule(desk):
            if each.first != each.then:
                found.setdefault((each.first, each.then), each)
    return tuple(found.values())


def _pairs(first: Iterable[int], then: Iterable[int], because: str) -> Iterator[Before]:
    later = tuple(then)
    for a in first:
        for b in later:
            yield Before(first=a, then=b, because=because)


def truing(desk: Desk) -> Iterator[Before]:
    """R1. Face, edge, sizes in the maker's order; strips are a panel first."""
    for part in desk.job.by_name:
        own = [i for i in desk.by_part.get(part, ()) if desk.steps[i].of == part]
        rows = [
            [i]
            for i in own
            if desk.stage(i) in {"truing", "panels"} or desk.steps[i].name == "fit to opening"
        ]
        for a, b in sequence(rows):
            yield Before(first=a, then=b, because=f"the {part} comes to size in this order")


def sized(desk: Desk) -> Iterator[Before]:
    """R1. What finds a part to size waits until it is."""
    for part, steps in desk.by_part.items():
        for i in steps:
            step = desk.steps[i]
            if step.of == part and desk.stage(i) in {"truing", "panels"}:
                continue
            if step.name in NOT_TO_THE_PART or step.name == "fit to opening":
                continue
            kinds = NEEDS.get(step.operation.state_before, ())
            if kinds:
                yield from _pairs(
                    desk.sizings(part, *kinds), [i], f"the {part} has its size before that"
                )


def ladder(desk: Desk) -> Iterator[Before]:
    """R1. What brings a part to a state comes before what finds it there."""
    for part, steps in desk.by_part.items():
        climbing = [i for i in steps if _climbs(desk, i)]
        for b in steps:
            foot = desk.steps[b].operation.state_before
            if foot.rung < State.FITTED.rung or desk.steps[b].name in NOT_TO_THE_PART:
                continue
            lower = [
                a
                for a in climbing
                if desk.steps[a].operation.state_after.rung <= foot.rung
                and not _same_joint(desk, a, b)
            ]
            yield from _pairs(lower, [b], f"the {part} is {foot} by then")


def _climbs(desk: Desk, step: int) -> bool:
    made = desk.steps[step].operation
    return made.state_after.rung > made.state_before.rung


def _same_joint(desk: Desk, one: int, other: int) -> bool:
    mine = {joint for joint, _ in desk.steps[one].answers}
    return any(joint in mine for joint, _ in desk.steps[other].answers)


def joint_order(desk: Desk) -> Iterator[Before]:
    """R1. A joint's own order, among operations that share a part."""
    for joint, steps in desk.by_joint.items():
        for place, b in enumerate(steps):
            mine = set(desk.steps[b].parts)
            earlier = [a for a in steps[:place] if not mine.isdisjoint(desk.steps[a].parts)]
            yield from _pairs(earlier, [b], f"the order of the joint {joint}")


def references(desk: Desk) -> Iterator[Before]:
    """R2. What is worked from a surface waits for the step that makes it."""
    for i, step in enumerate(desk.steps):
        strips = desk.stage(i) == "panels"  # strips lie by their own faces
        makers = () if strips else MAKES.get(step.operation.reference, ())
        for part in step.parts:
            because = f"it is worked from the {step.operation.reference} of the {part}"
            yield from _pairs(desk.named(*makers, part=part), [i], because)


def settings(desk: Desk) -> Iterator[Before]:
    """R2. A gauge that is set from a real part waits for that size."""
    for i, step in enumerate(desk.steps):
        for name in step.operation.setting.dimensions if step.operation.setting else ():
            part, _, size = name.rpartition(".")
            if part in desk.job.by_name and size in tuple(Sizing):
                made = [a for a in desk.sizings(part, Sizing(size)) if a != i]
                yield from _pairs(made, [i], f"its gauge is set from the real {part}")


def transfer(desk: Desk) -> Iterator[Before]:
    """R3. What is marked from or fitted to the mate waits for the real mate."""
    for joint, steps in desk.by_joint.items():
        for place, b in enumerate(steps):
            step = desk.steps[b]
            if not step.operation.mate_first or b in desk.tied:
                continue
            mates = [p for p in desk.job.joints_by_name[joint].parts if p not in step.parts]
            because = f"the real mate is the measure in the joint {joint}"
            for mate in mates:
                ready = [a for a in steps[:place] if mate in desk.steps[a].parts]
                yield from _pairs([*ready, *desk.sizings(mate)], [b], because)


def openings(desk: Desk) -> Iterator[Before]:
    """R4. What is fitted to an opening waits until the opening is final."""
    yield from _taken(desk)
    fixed = [each for each in desk.glue_ups if not each.opens]
    standing = [i for each in fixed for i in (*desk.glue(each), *desk.own(each, "flush"))]
    standing += sorted(i for i in desk.tied if desk.steps[i].name != "dry assemble")
    in_the_way = desk.named("fit guide", "fit runner")
    for i, step in enumerate(desk.steps):
        opens = {desk.job.by_name[p].moves_with for p in step.parts} - {""}
        if step.name in {"fit to opening", "shoot door", "run drawer"} and opens:
            yield from _pairs(standing, [i], f"the real opening of the {step.of} is the measure")
        if step.name == "run drawer":
            yield from _pairs(in_the_way, [i], "a drawer runs between its guides")
    yield from _stands(desk)


def _taken(desk: Desk) -> Iterator[Before]:
    """The opening of a panel is its frame put together dry; then the panel is cut to it."""
    for i in desk.named("take size"):
        part = desk.steps[i].parts[0]
        held = next((g for g in desk.glue_ups if part in g.captured), None)
        dry = desk.own(held, "dry assemble") if held else ()
        yield from _pairs(dry, [i], f"the dry frame tells the size of the {part}")
        sizes = desk.sizings(part, Sizing.WIDTH, Sizing.LENGTH)
        yield from _pairs([i], sizes, f"the {part} is cut to the size taken")


def _stands(desk: Desk) -> Iterator[Before]:
    """What is fastened to the work waits until the work stands, glued and level."""
    for joint, steps in desk.by_joint.items():
        homes = [desk.home(part) for part in desk.job.joints_by_name[joint].parts]
        made = [i for each in homes if each for i in _made(desk, each.name)]
        for i in steps:
            if desk.stage(i) in ON_THE_WORK and i not in desk.tied:
                yield from _pairs(made, [i], "it is fitted to the work as it stands glued")
    for i in desk.named("cut gain", "hang door"):
        doors = {desk.job.by_name[p].moves_with for p in desk.steps[i].parts} - {""}
        shot = [a for a in desk.named("shoot door") if desk.steps[a].of in doors]
        yield from _pairs(shot, [i], "the hinges are let into the door as it fits")
    for i in desk.named("fit bottom", "fit stops"):
        opens = {desk.job.by_name[p].moves_with for p in desk.steps[i].parts}
        run = [a for a in desk.named("run drawer") if desk.steps[a].of in opens]
        yield from _pairs(run, [i], "the drawer runs before that")


def _made(desk: Desk, name: str) -> list[int]:
    """The glue and flushing of a glue-up and of what it is tied to."""
    tied = [tie for tie in desk.ties if name in tie.glue_ups]
    names = {name, *(other for tie in tied for other in tie.glue_ups)}
    glued = [i for each in desk.glue_ups if each.name in names for i in _closing(desk, each.name)]
    last = [i for tie in tied for joint in tie.joints for i in desk.by_joint[joint]]
    return [*glued, *(i for i in last if desk.steps[i].name != "dry assemble")]


def _closing(desk: Desk, name: str) -> list[int]:
    each = next(g for g in desk.glue_ups if g.name == name)
    return [*desk.glue(each), *desk.own(each, "flush")]


def reach(desk: Desk) -> Iterator[Before]:
    """R5, R6. What a glue-up shuts in comes first, and so does what it catches."""
    for each in desk.glue_ups:
        closing = desk.glue(each)
        for part in (*each.members, *each.captured):
            for i in desk.by_part.get(part, ()):
                caught = part in each.captured
                if i in closing or i in desk.tied or not _shut_in(desk, i, caught=caught):
                    continue
                yield from _pairs([i], closing, why_before(desk, i, caught=caught))
        for part in each.captured:
            last = desk.named("smooth", part=part)
            first = desk.named("prefinish", part=part)
            yield from _pairs(last, first, f"the {part} is smooth before it is finished")


def _shut_in(desk: Desk, step: int, *, caught: bool) -> bool:
    name = desk.steps[step].name
    if name == "bore pin holes" and not desk.job.habits.pin_holes_before_glue:
        return False
    return desk.stage(step) in AT_THE_BENCH or (caught and name == "smooth")


WHY_BEFORE = {
    **dict.fromkeys(
        ("smooth inside", "prefinish"),
        "no plane and no brush reaches the inside corners afterwards",
    ),
    **dict.fromkeys(
        ("cut slot", "bore screw hole", "bore pin holes"),
        "there is no room for a brace afterwards",
    ),
    **dict.fromkeys(
        ("plough groove", "cut rabbet", "cut stopped rabbet"),
        "no plane runs through there afterwards",
    ),
    "dry assemble": "the first assembly is not the one with glue on",
    "lay out glue-up": "everything lies ready before glue is spread",
}


def why_before(desk: Desk, step: int, *, caught: bool) -> str:
    """Why a step cannot wait until the glue is in."""
    if caught:
        return "the part lies caught inside afterwards"
    return WHY_BEFORE.get(desk.steps[step].name, "the joint is closed afterwards")


def wood_left(desk: Desk) -> Iterator[Before]:
    """R7. Wood is left where the next cut needs its strength."""
    for part in desk.job.by_name:
        mortises = desk.named("chop mortise", part=part)
        if desk.job.horned(part):
            because = f"the horns keep the {part} from splitting at its mortise"
            yield from _pairs(mortises, desk.named("flush", part=part), because)
        grooves = desk.named("plough groove", part=part)
        because = f"the plough needs the whole edge of the {part} to bear on"
        yield from _pairs(grooves, desk.named("saw tenon", part=part), because)


def first_guides(desk: Desk) -> Iterator[Before]:
    """R8. The first cut guides the second; which is first is a habit."""
    habits = desk.job.habits
    for part in desk.job.by_name:
        grooves = desk.named("plough groove", part=part)
        mortises = desk.named("chop mortise", part=part)
        tails = desk.named("cut tails", "cut pins", "cut blind pins", part=part)
        if habits.groove_after_mortise:
            yield from _pairs(mortises, grooves, "the mortise is chopped first, a habit")
        else:
            yield from _pairs(grooves, mortises, "the groove guides the mortise chisel")
        if habits.drawer_groove_after_dovetails:
            yield from _pairs(tails, grooves, "the groove follows the dovetails, a habit")
        else:
            yield from _pairs(grooves, tails, "the tails are laid out round the groove")


def dry_run(desk: Desk) -> Iterator[Before]:
    """R9. Dry run, inside faces, finish, glue, cleaning, flushing: one after the other."""
    for each in desk.glue_ups:
        names = (
            ("dry assemble",),
            ("smooth inside",),
            ("prefinish",),
            ("lay out glue-up",),
            (each.word,),
            ("clean squeeze-out",),
            ("flush",),
        )
        rows = [desk.own(each, *row) for row in names]
        for a, b in sequence(rows):
            yield Before(first=a, then=b, because=f"the glue-up of {each.name} goes this way")
    for tie in desk.ties:
        made = [i for name in tie.glue_ups for i in _own_end(desk, name)]
        joined = [i for joint in tie.joints for i in desk.by_joint[joint]]
        yield from _pairs(made, joined, "both sides are glued and level before they are joined")
    for opens in dict.fromkeys(each.opens for each in desk.glue_ups if each.is_drawer):
        clean = [i for i in desk.of.get(opens, ()) if desk.steps[i].name == "clean squeeze-out"]
        run = [i for i in desk.of.get(opens, ()) if desk.steps[i].name == "run drawer"]
        yield from _pairs(clean, run, "hard glue would tear the fibres")


def _own_end(desk: Desk, name: str) -> list[int]:
    return [i for each in desk.glue_ups if each.name == name for i in _closing(desk, name)]


def pairs_as_one(desk: Desk) -> Iterator[Before]:
    """R12. Both of a pair are to size before one of them is marked."""
    families: dict[tuple[str, str], list[str]] = {}
    for name, part in desk.job.by_name.items():
        families.setdefault((part.family, part.moves_with), []).append(name)
    for row in families.values():
        marked = [i for part in row for i in desk.named("mark pair across", part=part)]
        made = [i for part in row for i in desk.sizings(part)]
        yield from _pairs(made, marked, f"the {' and the '.join(row)} are marked as one")


def hardware_and_coats(desk: Desk) -> Iterator[Before]:
    """R13. Hardware on, off, finish, on; coats after everything that would mar them."""
    for i in desk.named("refit hardware"):
        mine = set(desk.steps[i].parts)
        off = [a for a in desk.named("take off hardware") if mine == set(desk.steps[a].parts)]
        coats = [a for a in desk.named("rub down") if not mine.isdisjoint(desk.steps[a].parts)]
        yield from _pairs([*off, *coats], [i], "the finish is hard before the hardware goes back")
    for coat in desk.named("coat"):
        parts = desk.steps[coat].parts
        yield from _pairs(_under(desk, coat), [coat], "it would mar the finish")
        rubbed = [a for a in desk.named("rub down") if desk.steps[a].parts == parts]
        yield from _pairs([coat], rubbed, "the coat is hard before it is rubbed down")
        for i in desk.named("fasten top", "fit back board"):
            free = [p for p in desk.steps[i].parts if p in parts and not desk.home(p)]
            yield from _pairs(rubbed if free else (), [i], "it is coated while it is free")


def _under(desk: Desk, coat: int) -> list[int]:
    """What comes before a coat: all work on its parts but what fastens a free part."""
    found = []
    for part in desk.steps[coat].parts:
        late = {"fasten top", "fit back board", "coat", "rub down", "refit hardware"}
        if not desk.job.habits.hinges_before_finish:
            late |= {"hang door"}
        found += [i for i in desk.by_part[part] if desk.steps[i].name not in late]
    return found


def free_parts(desk: Desk) -> Iterator[Before]:
    """R1. A free part is fitted before its last shavings, and smooth before it is finished."""
    for i in desk.named("smooth"):
        step = desk.steps[i]
        for part in step.parts:
            earlier = [
                a
                for a in desk.by_part[part]
                if desk.stage(a) in {"marking", "joints"} or desk.steps[a].name == "fit shelf"
            ]
            yield from _pairs(earlier, [i], f"the {part} has its joints before its last shavings")
            done = desk.named("prefinish", "fit guide", "fit bottom", "fasten top", part=part)
            later = done if not desk.home(part) else ()
            yield from _pairs([i], later, f"the {part} is smooth before that")
            yield from _pairs(
                desk.named("flush", part=part), [i], "joints are level before the last shavings"
            )


RULES: tuple[Rule, ...] = (
    truing,
    sized,
    joint_order,
    references,
    settings,
    transfer,
    openings,
    reach,
    wood_left,
    first_guides,
    dry_run,
    pairs_as_one,
    hardware_and_coats,
    free_parts,
    ladder,
)
