"""From the dry run to the last coat: what no joint asks for by itself."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from scantling.method.assemblies import GlueUp, Tie, stages
from scantling.method.job import Job, Step
from scantling.method.preparing import area
from scantling.parts import Part
from scantling.shop.operations import Operation, State, operation


def finishing(job: Job, glue_ups: Sequence[GlueUp]) -> Iterator[Step]:
    """Dry runs, glue, flushing, fitting to openings, hardware and coats."""
    for each in glue_ups:
        yield from _glued(job, each)
    for opens in dict.fromkeys(p.moves_with for p in job.parts if p.moves_with):
        yield from _fitted(job, opens, glue_ups)
    yield from _free(job, glue_ups)
    yield from _coats(job, glue_ups)


def _glued(job: Job, each: GlueUp) -> Iterator[Step]:
    members = tuple(job.by_name[name] for name in each.members)
    names = each.members
    stands = State.FITTED if each.is_drawer else State.PREFINISHED
    yield _of(each, operation("dry assemble", *names))
    yield _of(each, operation("smooth inside", *names, amount=area(members)))
    if not each.is_drawer:  # finish inside a drawer would make its sides sticky
        yield _of(each, operation("prefinish", *names))
    lay_out = replace(operation("lay out glue-up", *names), state_before=stands, state_after=stands)
    yield _of(each, lay_out)
    yield replace(_of(each, operation(each.word, *names)), holds=each.captured)
    yield _of(each, operation("clean squeeze-out", *names))
    if not each.is_drawer:
        yield _of(each, operation("flush", *names))


def _of(each: GlueUp, made: Operation) -> Step:
    return Step(operation=made, of=each.name)


def _fitted(job: Job, opens: str, glue_ups: Sequence[GlueUp]) -> Iterator[Step]:
    """What brings an assembly that opens or slides into its real opening."""
    members = tuple(m for each in glue_ups if each.opens == opens for m in each.members)
    asked = stages(job, opens)
    if not members:
        return
    if "drawers" in asked:
        yield Step(operation=operation("run drawer", *members), of=opens)
        yield Step(operation=operation("fit stops", *members), of=opens)
    elif "doors" in asked:
        yield Step(operation=operation("shoot door", *members), of=opens)


def loose(job: Job, glue_ups: Sequence[GlueUp]) -> tuple[Part, ...]:
    """Parts that no glue-up holds: shelves, tops, back boards, guides, panels."""
    held = {name for each in glue_ups for name in each.members}
    return tuple(part for part in job.parts if part.name not in held)


def _free(job: Job, glue_ups: Sequence[GlueUp]) -> Iterator[Step]:
    """Last shavings and first coats of parts that are not glued, alike ones together."""
    for family in _families(loose(job, glue_ups)):
        names = tuple(part.name for part in family)
        yield Step(operation=operation("smooth", *names, amount=2 * area(family)), of=names[0])
        if _wants(job, names, State.PREFINISHED) and not _asks(job, names, "prefinish"):
            yield Step(operation=operation("prefinish", *names), of=names[0])


def _families(parts: Iterable[Part]) -> list[tuple[Part, ...]]:
    rows: dict[tuple[str, str], list[Part]] = {}
    for part in parts:
        rows.setdefault((part.family, part.moves_with), []).append(part)
    return [tuple(row) for row in rows.values()]


def _wants(job: Job, names: Sequence[str], state: State) -> bool:
    """Whether a joint asks for parts in that state."""
    inside = set(names)
    return any(
        each.state_before is state and not inside.isdisjoint(each.parts)
        for joint in job.joints
        for each in joint.work
    )


def _asks(job: Job, names: Sequence[str], what: str) -> bool:
    inside = set(names)
    return any(
        each.name == what and not inside.isdisjoint(each.parts)
        for joint in job.joints
        for each in joint.work
    )


def _coats(job: Job, glue_ups: Sequence[GlueUp]) -> Iterator[Step]:
    """Coats over what is seen and has none yet; hardware back on after them."""
    for parts in coated(job, glue_ups):
        names = tuple(part.name for part in parts)
        of = parts[0].moves_with or parts[0].name
        glued = any(names[0] in each.members for each in glue_ups)
        if glued and not _is_drawer(parts[0], glue_ups):
            yield Step(operation=operation("smooth", *names, amount=area(parts)), of=of)
        for name in ("coat", "rub down"):
            yield Step(operation=operation(name, *names, amount=2 * area(parts)), of=of)
    for joint in job.joints:
        for each in joint.work:
            if each.name == "take off hardware":
                yield Step(operation=operation("refit hardware", *each.parts), of=joint.name)


def _is_drawer(part: Part, glue_ups: Sequence[GlueUp]) -> bool:
    return any(each.is_drawer and part.name in each.members for each in glue_ups)


def coated(job: Job, glue_ups: Sequence[GlueUp]) -> list[tuple[Part, ...]]:
    """Parts with a surface in sight, those coated in one go together.

    What is finished before the glue, or while it is free, needs no second list.
    """
    free = {part.name for part in loose(job, glue_ups)}
    done = {
        n for n in free if _wants(job, (n,), State.PREFINISHED) or _asks(job, (n,), "prefinish")
    }
    rows: dict[tuple[str, str], list[Part]] = {}
    for part in job.parts:
        if part.show and part.name not in done:
            own = part.family if part.name in free else ""
            rows.setdefault((part.moves_with, own), []).append(part)
    return [tuple(row) for row in rows.values()]


def asked(job: Job, found: Sequence[Tie]) -> Iterator[Step]:
    """The operations of the joints; what ties two glue-ups is one operation for all its joints."""
    tied = {name: tie for tie in found for name in tie.joints}
    for joint in job.joints:
        if joint.name not in tied:
            for place, each in enumerate(joint.work):
                yield Step(operation=each, of=joint.name, answers=((joint.name, place),))
    for tie in found:
        yield from _tied(job, tie)


def _tied(job: Job, tie: Tie) -> Iterator[Step]:
    """One step for what every joint of the tie asks for; a joint may ask for a word twice."""
    rows: dict[tuple[str, int], list[tuple[str, int]]] = {}
    for name in tie.joints:
        met: Counter[str] = Counter()
        for place, each in enumerate(job.joints_by_name[name].work):
            rows.setdefault((each.name, met[each.name]), []).append((name, place))
            met[each.name] += 1
    for answers in rows.values():
        made = [job.joints_by_name[name].work[place] for name, place in answers]
        parts = dict.fromkeys(part for each in made for part in each.parts)
        yield Step(
            operation=replace(made[0], parts=tuple(parts)), of=tie.name, answers=tuple(answers)
        )
