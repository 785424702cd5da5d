"""All that speaks about sizes as one list of rows, strongest first.

A row is a sum that is zero. Alike groups become one row per further member; what was measured,
cut or stated becomes a row of one term.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from enum import IntEnum

from scantling.errors import InternalError, UnknownNameError
from scantling.exact import Fraction
from scantling.findings import Place
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import (
    Alike,
    Bound,
    Dimension,
    Equation,
    Level,
    Measured,
    Relations,
    Rule,
    Stated,
)

Terms = tuple[tuple[str, Fraction], ...]
ONE = Fraction(1)
MORE_THAN = Fraction(1, 100)  # [mm] a size is more than its floor by this: no bench shows less


class Strength(IntEnum):
    """How firmly a row is held, strongest first."""

    EQUATION = 0
    MEASURED = 1
    CUT = 2  # sizes of a part already cut that nobody has measured
    STATED = 3
    WISHED = 4  # a line given up in a conflict: as near as may be
    KEPT = 5  # sizes of uncut parts as they were planned when cutting began
    ALIKE = 6
    RULE = 7
    HABIT = 8
    BOUND = 9  # a bound that a size has come up against
    TAPE = 10  # a mark of the rule that a size has been moved to


@dataclass(frozen=True, kw_only=True)
class Kept:
    """Plan of a piece whose cutting has begun.

    `sizes` are those of the last answer [mm]; the part of a size is its name up to the last
    point. Parts in `cut` keep their sizes like measured ones, the others if they can.
    """

    sizes: Mapping[str, Fraction] = field(default_factory=dict)
    cut: frozenset[str] = frozenset()


@dataclass(frozen=True, kw_only=True)
class Line:
    """One fact or wish of the maker as the solver holds it: a name and its value. [mm]"""

    name: str
    value: Fraction
    strength: Strength
    said: Stated | Measured | None = None


Source = Equation | Line | Alike | Rule | Bound | Dimension


@dataclass(frozen=True, slots=True)
class Row:
    """A sum that is zero, how firmly it is held and who says so."""

    strength: Strength
    terms: Terms
    constant: Fraction
    source: Source


def part_of(name: str) -> str:
    """The part a size belongs to."""
    return name.rpartition(".")[0]


def counts_with(row: Row) -> str | Place | None:
    """What a row counts with when it is broken.

    Planned sizes of one uncut part are one change of the plan, and what one line of the file
    states of several sizes is one line to give up: a slip there is one slip.
    """
    if row.strength is Strength.KEPT:
        return part_of(row.terms[0][0])
    if row.strength is Strength.STATED and isinstance(row.source, Line) and row.source.said:
        return row.source.said.place
    return None


def lines_of(
    relations: Relations,
    stated: Iterable[Stated],
    measured: Iterable[Measured],
    kept: Kept | None,
) -> list[Line]:
    """What the maker measured, cut and stated, strongest first."""
    lines = [Line(name=m.name, value=m.value, strength=Strength.MEASURED, said=m) for m in measured]
    read = {line.name for line in lines}
    if kept is not None:
        lines += [
            Line(name=d.name, value=kept.sizes[d.name], strength=Strength.CUT)
            for d in relations.dimensions
            if part_of(d.name) in kept.cut and d.name in kept.sizes and d.name not in read
        ]
    lines += [Line(name=s.name, value=s.value, strength=Strength.STATED, said=s) for s in stated]
    return lines


def rows_of(
    relations: Relations, lines: Sequence[Line], kept: Kept | None, *, given_up: frozenset[int]
) -> list[Row]:
    """Every row, strongest first and in order of naming within a strength.

    Args:
        relations: What forms and joints say.
        lines: What the maker says; see `lines_of`.
        kept: Plan of a piece whose cutting has begun.
        given_up: Lines that cannot hold, by place among `lines`: stated ones are wished for.
    """
    rows = [Row(Strength.EQUATION, e.sum.terms, e.sum.constant, e) for e in relations.equations]
    wished: list[Row] = []
    for i, line in enumerate(lines):
        strength = Strength.WISHED if i in given_up else line.strength
        row = Row(strength, ((line.name, ONE),), -line.value, line)
        (wished if i in given_up else rows).append(row)
    rows += wished
    rows += _kept_rows(relations, kept)
    for group in relations.alike:
        rows += _alike_rows(group)
    for level, strength in ((Level.RULE, Strength.RULE), (Level.HABIT, Strength.HABIT)):
        rows += [
            Row(strength, r.sum.terms, r.sum.constant, r)
            for r in relations.rules
            if r.level is level
        ]
    return rows


def _kept_rows(relations: Relations, kept: Kept | None) -> list[Row]:
    if kept is None:
        return []
    named = {d.name for d in relations.dimensions}
    return [
        Row(
            Strength.KEPT,
            ((name, ONE),),
            -value,
            Line(name=name, value=value, strength=Strength.KEPT),
        )
        for name, value in kept.sizes.items()
        if part_of(name) not in kept.cut and name in named
    ]


def members(group: Alike) -> tuple[str, ...]:
    """Names of an alike group, the sink last."""
    if group.sink is None:
        return group.names
    return (*(n for n in group.names if n != group.sink), group.sink)


def _alike_rows(group: Alike) -> list[Row]:
    first, *others = members(group)
    rows = []
    for other in others:
        equal = size_of(other) - size_of(first)
        rows.append(Row(Strength.ALIKE, equal.terms, equal.constant, group))
    return rows


def floor_of(dimension: Dimension, *, above: bool = False) -> Bound | None:
    """The physical bound a dimension carries by itself.

    Args:
        dimension: The dimension.
        above: Ask for `MORE_THAN` beyond the floor where the floor itself is too little.
    """
    if dimension.least is None:
        return None
    floor = "nothing" if dimension.least == 0 else "its least"
    rule = f"is more than {floor}" if dimension.positive else f"is never less than {floor}"
    least = dimension.least + (MORE_THAN if above and dimension.positive else 0)
    return Bound(
        sum=Linear(((dimension.name, ONE),), -least),
        because=f"{dimension.says or dimension.name} {rule}",
    )


def check_names(relations: Relations) -> dict[str, Dimension]:
    """Dimensions by name.

    Raises:
        InternalError: One name stands for two different dimensions, or an alike group names a
            sink that is not its member.
        UnknownNameError: A relation names what is no dimension.
    """
    found: dict[str, Dimension] = {}
    for dimension in relations.dimensions:
        if found.setdefault(dimension.name, dimension) != dimension:
            raise InternalError(f"two different dimensions are called {dimension.name!r}")
    spoken: list[Equation | Bound | Rule] = [
        *relations.equations,
        *relations.bounds,
        *relations.rules,
    ]
    for one in spoken:
        for name, _ in one.sum.terms:
            if name not in found:
                raise UnknownNameError(f"{one.because!r} names no dimension: {name!r}")
    for group in relations.alike:
        for name in group.names:
            if name not in found:
                raise UnknownNameError(f"{group.because!r} names no dimension: {name!r}")
        if group.sink is not None and group.sink not in group.names:
            raise InternalError(f"{group.because!r}: sink {group.sink!r} is not of the group")
    return found
