"""From rough boards to parts that are true, to size and shaped by their forms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from scantling.exact import Fraction
from scantling.method.assemblies import GlueUp
from scantling.method.job import Job, Step
from scantling.parts import Part
from scantling.shop.habits import Sizing
from scantling.shop.operations import (
    Operation,
    Per,
    Reference,
    Setting,
    SetTo,
    State,
    operation,
    word,
)
from scantling.shop.tools import Tool

PIN_REACHES = Fraction(150)  # [mm] stem of a common pin gauge; common practice
STANDS = {  # what each step of coming to size is called, and leaves
    Sizing.WIDTH: ("plane to width", State.TO_WIDTH),
    Sizing.THICKNESS: ("plane to thickness", State.THICKNESSED),
    Sizing.LENGTH: ("cut to length", State.TO_LENGTH),
}


def preparing(job: Job, glue_ups: tuple[GlueUp, ...]) -> Iterator[Step]:
    """Operations that bring every made part to size, in the maker's order of sizing.

    Parts of a drawer are cut to the length of their real opening and not to the drawing.
    """
    drawers = {p for each in glue_ups if each.is_drawer for p in each.members}
    for part in job.parts:
        yield from _panel(job, part)
        yield from _true(job, part)
        yield from _to_size(job, part, fitted=part.name in drawers)
        for owner in job.shapings(part.name):
            yield Step(operation=operation("shape", part.name), of=owner)


def _panel(job: Job, part: Part) -> Iterator[Step]:
    count = job.strips(part.name)
    if not count:
        return
    for name, amount in (
        ("order strips", 1),
        ("mate edges", count - 1),
        ("glue panel", 1),
    ):
        yield Step(operation=operation(name, part.name, amount=amount), of=part.name)
    # it lies and waits: no tool is taken up
    rest = operation("rest panel", part.name, tool=Tool.CLAMPS)
    yield Step(operation=rest, of=part.name)


def _true(job: Job, part: Part) -> Iterator[Step]:
    first = "flatten panel" if job.strips(part.name) else "true face"
    for name in (first, "shoot edge"):
        yield _step(part, operation(name, part.name, amount=_amount(name, part)))


def _to_size(job: Job, part: Part, *, fitted: bool) -> Iterator[Step]:
    before = State.EDGED
    for sizing in job.habits.sizing:
        name, after = STANDS[sizing]
        if sizing is Sizing.LENGTH:
            yield _step(part, _stands(operation("square one end", part.name), before, before))
            name = "fit to opening" if fitted else name
        made = operation(
            name,
            part.name,
            setting=_setting(job, part, sizing),
            amount=_amount(name, part),
            note=_note(job, part) if sizing is Sizing.LENGTH else "",
        )
        yield _step(part, _stands(made, before, after))
        before = after


def _stands(made: Operation, before: State, after: State) -> Operation:
    return replace(made, state_before=before, state_after=after)


def _step(part: Part, made: Operation) -> Step:
    return Step(operation=made, of=part.name)


def _note(job: Job, part: Part) -> str:
    if not job.horned(part.name):
        return ""
    ends = " and ".join(job.shop.reads(horn) for horn in part.horns)
    return f"longer by its horns, {ends}"


def _setting(job: Job, part: Part, sizing: Sizing) -> Setting | None:
    if sizing is Sizing.LENGTH:
        return None
    wide = sizing is Sizing.WIDTH and part.extent.width > PIN_REACHES
    tool = Tool.PANEL_GAUGE if wide and job.shop.owns(Tool.PANEL_GAUGE) else Tool.PIN_GAUGE
    wide_from = Reference.FACE_EDGE if sizing is Sizing.WIDTH else Reference.FACE_SIDE
    to = SetTo(f"{part.name}.{sizing.value}", f"{sizing.value} of the part", wide_from)
    return Setting(to=(to,), held_by=tool)


def _amount(name: str, part: Part) -> float:
    """What the assumed minutes grow with. [each, m or m²]"""
    extent = part.extent
    per = word(name).per
    if per is Per.EACH:
        return 1.0
    if per is Per.METRE:
        return float(extent.length) / 1000
    return float(extent.length * extent.width) / 1e6


def area(parts: tuple[Part, ...]) -> float:
    """One face of each part, together. [m²]"""
    return float(sum((p.extent.length * p.extent.width for p in parts), Fraction(0))) / 1e6
