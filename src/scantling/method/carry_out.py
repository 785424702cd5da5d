"""Steps through an order of work as a careful maker would, and says where it fails him.

Written apart: it imports nothing of the planner and works out for itself, from the job alone,
what every step must find, what must be done in the end, and how often.

A designed cut is matched to operations by its owner and its part: it is made by those operations
of the joint that owns it which are done to the part and take wood from it. Where words of such
an operation stand in the name of the cut (`cut slot` and `slot 1`), it is made by those alone.
A cut that a form asks for (an arch) is made by the part's `shape`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from scantling.findings import Finding, Weight
from scantling.method import laws, laws_standing
from scantling.method.floor import Facts, Floor
from scantling.method.job import Job, Step
from scantling.parts.cut import Cut
from scantling.shop.operations import Operation, word

TAKES_WOOD = frozenset({"cut gain", "fit bottom", "bore screw hole", "fit back board"})
LAWS: tuple[laws.Law, ...] = (
    laws.to_size_in_order,
    laws.sized,
    laws.has_reference,
    laws.gauge_from_the_real_part,
    laws.joint_in_order,
    laws.real_mate,
    laws.not_shut_in,
    laws.closes_in_order,
    laws.joints_done,
    laws.caught_parts_lie_inside,
    laws.whole_group,
    *laws_standing.LAWS,
)


def carry_out(job: Job, steps: Sequence[Step]) -> tuple[Finding, ...]:
    """Everything that goes wrong when the steps are done one after the other.

    Args:
        job: What has to come of it.
        steps: The order, whoever made it.

    Returns:
        Findings in the order they are met, then what was left out or done twice. None: every
        reference exists when it is used, every part passes its states, nothing is done after it
        was shut in, and each designed cut is made once.
    """
    floor = Floor(Facts(job))
    found: list[Finding] = []
    for step in steps:
        for law in LAWS:
            found += law(floor, step)
        floor.note(step)
    found += _asked_once(job, steps)
    found += _due_once(floor.facts, steps)
    found += _cuts_made(job, steps)
    return tuple(dict.fromkeys(found))


def _asked_once(job: Job, steps: Sequence[Step]) -> Iterator[Finding]:
    """Each operation of each joint once."""
    done = Counter(asked for step in steps for asked in step.answers)
    for joint in job.joints:
        for place, each in enumerate(joint.work):
            times = done[joint.name, place]
            if times != 1:
                yield _times(each.name, each.parts, times=times, of=joint.name)


def _due_once(facts: Facts, steps: Sequence[Step]) -> Iterator[Finding]:
    """Everything else that is due on a part, as often as it is."""
    done = Counter((step.name, part) for step in steps if not step.answers for part in step.parts)
    for name, part in dict.fromkeys([*facts.due, *done]):
        times, due = done[name, part], facts.due.get((name, part), 0)
        if times < due or (times > due and due):
            yield _times(name, (part,), times=times, of=part)
        elif times > due:
            yield Finding(
                code="method.nobody-asks-for-it",
                weight=Weight.MIND,
                says=f"nothing in the work asks for {name} on the {part}",
                cure="Leave it out.",
                parts=(part,),
            )


def _times(name: str, parts: tuple[str, ...], *, times: int, of: str) -> Finding:
    told = ", ".join(parts)
    if not times:
        return Finding(
            code="method.left-out",
            weight=Weight.HALT,
            says=f"{name} of the {told} is left out ({of}), and what follows needs it",
            cure=f"Put {name} back into the order.",
            figure="0 times",
            limit="1 time",
            source=word(name).source,
            parts=parts,
        )
    return Finding(
        code="method.done-twice",
        weight=Weight.HALT,
        says=f"{name} of the {told} is done {times} times ({of}), once is right",
        cure="Do it once: a second cut makes a loose joint or a short part.",
        figure=f"{times} times",
        limit="1 time",
        source=word(name).source,
        parts=parts,
    )


def _cuts_made(job: Job, steps: Sequence[Step]) -> Iterator[Finding]:
    """Each designed cut is made by somebody."""
    done = {asked for step in steps for asked in step.answers}
    shaped = {(step.of, part) for step in steps if step.name == "shape" for part in step.parts}
    for part in job.parts:
        for cut in part.cuts:
            joint = job.joints_by_name.get(cut.owner)
            if joint is None:
                made = (cut.owner, part.name) in shaped
            else:
                makers = makers_of(cut, part.name, joint.work)
                made = bool(makers) and all((cut.owner, i) in done for i in makers)
            if not made:
                yield _uncut(cut, part.name)


def makers_of(cut: Cut, part: str, work: Sequence[Operation]) -> tuple[int, ...]:
    """Which operations of the owner's work make a cut in a part."""
    mine = [i for i, each in enumerate(work) if part in each.parts and _takes_wood(each)]
    named = [i for i in mine if set(work[i].name.split()[1:]) & set(cut.name.split())]
    return tuple(named or mine)


def _takes_wood(each: Operation) -> bool:
    return word(each.name).stage == "joints" or each.name in TAKES_WOOD


def _uncut(cut: Cut, part: str) -> Finding:
    return Finding(
        code="method.cut-not-made",
        weight=Weight.HALT,
        says=f"nobody makes the {cut.name} in the {part} ({cut.owner})",
        cure="Add the operation that makes it.",
        figure="0 times",
        limit="1 time",
        parts=(part,),
    )
