"""The gauge card: which gauge holds what, from which step to which.

For a given order the gauge that is let go is the one whose setting is wanted again last: no
other choice sets gauges less often (Belady, IBM Systems Journal 5, 1966).
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.method.job import Step
from scantling.shop.operations import Operation, Reference, SetTo
from scantling.shop.tools import Shop, Tool


@dataclass(frozen=True, kw_only=True)
class Held:
    """One gauge that holds one setting over a stretch of the order."""

    letter: str
    tool: Tool
    which: int  # of the gauges of that kind, from 1
    figures: tuple[tuple[SetTo, Fraction], ...]  # what is marked, and how far off [mm]
    reference: Reference
    first: int  # number of the step it is set for
    last: int  # number of the step after which it may be let go
    again: bool = False  # the setting had been let go


def key_of(made: Operation, sizes: Mapping[str, Fraction]) -> Hashable:
    """What makes two settings the same: gauge, figures and the surface worked from.

    Equal figures from different surfaces are different settings.
    """
    if made.setting is None:
        return None
    values = tuple((sizes.get(to.dimension, to), to.reference) for to in made.setting.to)
    return made.setting.held_by, values, made.reference


def lettered(steps: Sequence[Step], sizes: Mapping[str, Fraction]) -> tuple[Step, ...]:
    """The steps with a letter for every setting, in the order they are first wanted."""
    letters: dict[Hashable, str] = {}
    found = []
    for step in steps:
        setting = step.operation.setting
        if setting is not None:
            letter = letters.setdefault(key_of(step.operation, sizes), _letter(len(letters)))
            made = replace(step.operation, setting=replace(setting, letter=letter))
            step = replace(step, operation=made)  # noqa: PLW2901 - the same step, lettered
        found.append(step)
    return tuple(found)


def _letter(count: int) -> str:
    """A, B ... Z, AA, AB."""
    letters = ""
    count += 1
    while count:
        count, place = divmod(count - 1, 26)
        letters = chr(ord("A") + place) + letters
    return letters


def gauge_card(
    steps: Sequence[Step], *, shop: Shop, sizes: Mapping[str, Fraction]
) -> tuple[Held, ...]:
    """Who holds which setting from when to when; kinds of gauge not owned hold nothing."""
    uses: dict[Tool, list[Step]] = {}
    for step in steps:
        if step.operation.setting is not None:
            uses.setdefault(step.operation.setting.held_by, []).append(step)
    held = [
        each
        for tool, row in uses.items()
        if shop.holding(tool)
        for each in _of_kind(row, many=shop.holding(tool), sizes=sizes)
    ]
    return tuple(sorted(held, key=lambda each: (each.first, each.letter)))


def _of_kind(row: Sequence[Step], *, many: int, sizes: Mapping[str, Fraction]) -> list[Held]:
    letters = [_letter_of(step) for step in row]
    found: list[Held] = []
    open_at: dict[int, int] = {}  # gauge -> place in `found`
    for place, (step, letter) in enumerate(zip(row, letters, strict=True)):
        gauge = next((g for g, i in open_at.items() if found[i].letter == letter), None)
        if gauge is None:
            gauge = _to_set(open_at, found, letters[place:], many=many)
            again = any(each.letter == letter for each in found)
            open_at[gauge] = len(found)
            found.append(_held(step, letter, which=gauge, again=again, sizes=sizes))
        i = open_at[gauge]
        found[i] = replace(found[i], last=step.number)
    return found


def _letter_of(step: Step) -> str:
    return step.operation.setting.letter if step.operation.setting else ""


def _to_set(
    open_at: Mapping[int, int], found: Sequence[Held], coming: Sequence[str], *, many: int
) -> int:
    """The gauge to set: a free one, or that whose setting is wanted last."""
    free = next((g for g in range(1, many + 1) if g not in open_at), None)
    if free is not None:
        return free
    wanted = {g: _next_use(found[i].letter, coming) for g, i in open_at.items()}
    return max(sorted(wanted), key=wanted.__getitem__)


def _next_use(letter: str, coming: Sequence[str]) -> int:
    return next((i for i, each in enumerate(coming) if each == letter), len(coming))


def _held(
    step: Step, letter: str, *, which: int, again: bool, sizes: Mapping[str, Fraction]
) -> Held:
    setting = step.operation.setting
    to = setting.to if setting else ()
    tool = setting.held_by if setting else step.operation.tool
    return Held(
        letter=letter,
        tool=tool,
        which=which,
        figures=tuple((each, sizes[each.dimension]) for each in to if each.dimension in sizes),
        reference=step.operation.reference,
        first=step.number,
        last=step.number,
        again=again,
    )
