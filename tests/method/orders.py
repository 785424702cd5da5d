"""The orders of the example pieces, made once, and ways to spoil them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache

from tests.pieces.worked import worked

from scantling.method.job import Job, Step
from scantling.method.order import Order, order_of_work
from scantling.setting_out.order import job

DEMO = "pieces/glaze_cupboard"
Spoiled = Callable[[Sequence[Step]], list[Step]]


@cache
def asked(folder: str = DEMO) -> Job:
    """The job of an example piece."""
    return job(worked(folder))


@cache
def ordered(folder: str = DEMO) -> Order:
    """Its order of work."""
    return order_of_work(asked(folder))


def place(steps: Sequence[Step], name: str, part: str = "", of: str = "") -> int:
    """Where the first step of that word on that part stands."""
    return next(
        i
        for i, step in enumerate(steps)
        if step.name == name and (not part or part in step.parts) and of in step.of
    )


def after(moved: tuple[str, ...], fixed: tuple[str, ...]) -> Spoiled:
    """The order with one step done only after another."""

    def spoil(steps: Sequence[Step]) -> list[Step]:
        a, b = place(steps, *moved), place(steps, *fixed)
        assert a < b, "the order has them the wrong way round already"
        return [*steps[:a], *steps[a + 1 : b + 1], steps[a], *steps[b + 1 :]]

    return spoil


def before(moved: tuple[str, ...], fixed: tuple[str, ...]) -> Spoiled:
    """The order with one step done before another already."""

    def spoil(steps: Sequence[Step]) -> list[Step]:
        a, b = place(steps, *moved), place(steps, *fixed)
        assert b < a, "the order has them the wrong way round already"
        return [*steps[:b], steps[a], *steps[b:a], *steps[a + 1 :]]

    return spoil


def otherwise(step: tuple[str, ...], change: Callable[[Step], Step]) -> Spoiled:
    """The order with one step done differently."""

    def spoil(steps: Sequence[Step]) -> list[Step]:
        i = place(steps, *step)
        return [*steps[:i], change(steps[i]), *steps[i + 1 :]]

    return spoil


def without_part(part: str) -> Callable[[Step], Step]:
    """A step that forgets a part."""

    def change(step: Step) -> Step:
        parts = tuple(each for each in step.parts if each != part)
        return replace(step, operation=replace(step.operation, parts=parts))

    return change
