"""Which opening loose shelves lie in, and how they share its height.

The form tells of floors and ceilings, by `Beside`. An opening reaches from a floor to the nearest
ceiling above it. Of several the shelves lie in the tallest.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._joint import Beside, Choice, Joined
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Dimension, Equation, Kind, Relations, Sizes
from scantling.units import INCH, Unit

BAY = "opening"  # what the choice calls the opening, counted from 0
STARTS = "opening starts"
LEAST_ROW = Fraction(1, 4)  # [-] of an opening that is left free of holes at either end


def floors(j: Joined) -> tuple[Beside, ...]:
    """Where openings begin."""
    return j.neighbours("floor", role="receives")


def floor(j: Joined) -> Linear:
    """What the lowest hole is counted from, along the sides. [mm]"""
    known = floors(j)
    if len(known) > 1:
        return j.size(STARTS)
    return known[0].start if known else ZERO


def bay_relations(j: Joined, choice: Choice) -> Relations:
    """Where the chosen opening starts, if there is a choice."""
    if BAY not in choice:
        return Relations()
    chosen = floors(j)[choice.count(BAY)]
    return Relations(
        dimensions=(
            Dimension(
                name=j.own(STARTS),
                kind=Kind.FOLLOWS,
                says=f"height at which the opening of the {j.name} starts",
                positive=False,
            ),
        ),
        equations=(
            Equation(
                sum=size_of(j.own(STARTS)) - chosen.start,
                because=f"the {j.name} lie in the opening {chosen.owner}",
            ),
        ),
    )


def heights(j: Joined, *, sizes: Sizes) -> list[Fraction | None]:
    """Clear height of each opening; None where no ceiling is known. [mm]"""
    ceilings = [b.start.at(sizes) for b in j.neighbours("ceiling", role="receives")]
    found = []
    for each in floors(j):
        low = each.start.at(sizes)
        found.append(min((high - low for high in ceilings if high > low), default=None))
    return found


def bay_of(tall: Sequence[Fraction | None]) -> int:
    """The tallest opening; the lowest of those that are alike. Counted from 0."""
    return max(range(len(tall)), key=lambda i: tall[i] or 0, default=0)


@dataclass(frozen=True, kw_only=True)
class Row:
    """A row of holes in an opening, and the holes on which the shelves lie, counted from 0."""

    lowest: Fraction  # [mm] above the opening's floor
    count: int
    holes: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """What is known of a row before its shelves are laid."""

    lowest: Fraction  # [mm] usual, or said
    said: bool  # whether the lowest is said
    pitch: Fraction  # [mm]
    rest: Fraction  # [mm]
    count: int | None  # said
    first: int | None  # said: hole of the lowest shelf, counted from 1
    unit: Unit


def row_in(tall: Fraction, thick: Sequence[Fraction], wanted: Wanted) -> Row:
    """Holes over the height of an opening, each shelf on the one nearest to its share of it.

    Args:
        tall: Clear height of the opening. [mm]
        thick: Of the shelves, the lowest first. [mm]
        wanted: What the maker says of the row, and what is usual.

    References:
        Shelves that part their opening equally; common practice.
    """
    step = INCH / 2 if wanted.unit is Unit.INCH else Fraction(10)
    free = min(wanted.lowest, tall * LEAST_ROW) // step * step
    lowest = wanted.lowest if wanted.said else free
    fitting = int((tall - lowest - free) // wanted.pitch) + 1
    count = wanted.count or max(fitting, len(thick), 1)
    clear = (tall - sum(thick, Fraction(0))) / (len(thick) + 1)
    targets = [(i + 1) * clear + sum(thick[:i], Fraction(0)) for i in range(len(thick))]
    nearest = [(t - wanted.rest - lowest) / wanted.pitch + Fraction(1, 2) for t in targets]
    if wanted.first is not None:
        nearest[0] = Fraction(wanted.first - 1)
    holes: list[int] = []
    for i, each in enumerate(nearest):
        least = holes[-1] + 1 if holes else 0
        holes.append(max(min(int(each // 1), count - len(thick) + i), least))
    return Row(lowest=lowest, count=count, holes=tuple(holes))


def opening_unsaid(j: Joined, choice: Choice) -> Iterator[Finding]:
    """Loose shelves whose opening was taken for them."""
    known = floors(j)
    if len(known) > 1:
        taken = known[choice.count(BAY)].owner
        others = ", ".join(f'"{each.owner}"' for each in known if each.owner != taken)
        yield Finding(
            code="shelf-pins.opening-unsaid",
            weight=Weight.NOTE,
            says=f"Nobody says in which opening the {j.name} lie: they lie in the tallest,"
            f" {taken}.",
            cure=f'Write in = "{taken}" if it is meant; there are {others} besides.',
            source="common practice",
            place=j.place,
            parts=tuple(seat.part for seat in j.row("enters")),
        )
