"""Where the screws of a row stand, which are fast, and the slots of the others."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from scantling.exact import Fraction
from scantling.joints._joint import Joined
from scantling.parts import ACROSS, ALONG, INTO, Bore, Box, Cut, Shape, Span
from scantling.sizes.model import Sizes

Held = Literal["all", "none", "first", "middle", "last"]
IN_A_ROW = {"first", "middle", "last"}
BEHIND = {"back", "rear", "behind"}


def held(fixed_at: str, part: str) -> Held:
    """Which screws of a row are fast.

    "first", "middle" and "last" name a screw, counted from the end the form counts from. Other
    words name a part: its screws are all fast, those of other parts all in slots. "front" alone
    is the part in front where there is one; of a part that runs backwards, its first screw.
    """
    for word in ("all", "none", "first", "middle", "last"):
        if fixed_at == word:
            return word
    wanted, words = set(fixed_at.split()), set(part.replace("-", " ").split())
    if wanted <= words:
        return "all"
    return "first" if wanted == {"front"} and not words & BEHIND else "none"


@dataclass(frozen=True, kw_only=True)
class Row:
    """A row of screws along a part, in the coordinates of its seat. [mm]"""

    places: tuple[Fraction, ...]  # along
    line: Fraction  # across
    held: Held
    along: bool  # whether slots run with the row
    clearance: Fraction  # width of hole and slot
    travel: Fraction  # each way in a slot

    def is_fast(self, index: int) -> bool:
        """Whether that screw stands in a round hole."""
        last = len(self.places) - 1
        fast = {"first": 0, "last": last, "middle": last // 2}.get(self.held)
        return self.held == "all" or index == fast

    @property
    def has_slots(self) -> bool:
        """Whether any screw stands in a slot."""
        return not all(self.is_fast(i) for i in range(len(self.places)))

    def half(self, index: int) -> Fraction:
        """Half of what a hole or slot takes along the part. [mm]"""
        slides = self.along and not self.is_fast(index)
        # a drawn hole is a little larger than its circle
        return self.clearance * Fraction(51, 100) + (self.travel if slides else 0)

    def between(self, *, length: Fraction) -> Iterator[tuple[Fraction, Fraction]]:
        """Stretches of the part without a hole. [mm]"""
        start = Fraction(0)
        for i, place in enumerate(self.places):
            stop = place - self.half(i)
            if stop > start:
                yield start, stop
            start = place + self.half(i)
        if length > start:
            yield start, length


def places(j: Joined, *, sizes: Sizes, count: int) -> tuple[Fraction, ...]:
    """Evenly from end distance to end distance; one alone in the middle. [mm]"""
    length = j.length("enters").at(sizes)
    if count == 1:
        return (length / 2,)
    first = sizes[j.own("end distance")]
    step = (length - 2 * first) / (count - 1)
    return tuple(first + i * step for i in range(count))


def row_cuts(j: Joined, row: Row, *, sizes: Sizes) -> tuple[Cut, ...]:
    """A round hole for each fast screw, a slot with round ends for each other."""
    seat = j.seat("enters")
    return tuple(
        seat.cut(sizes, name=name, owner=j.name, shape=shape)
        for i, place in enumerate(row.places)
        for name, shape in _hole(row, i, place)
    )


def _hole(row: Row, index: int, place: Fraction) -> Iterator[tuple[str, Shape]]:
    name = f"{'hole' if row.is_fast(index) else 'slot'} {index + 1}"
    if row.is_fast(index) or row.travel == 0:
        yield name, _bore(row, (place, row.line))
        return
    axis = ALONG if row.along else ACROSS
    centre = [place, row.line]
    low, high = centre[axis] - row.travel, centre[axis] + row.travel
    half = row.clearance / 2
    spans = [Span(place - half, place + half), Span(row.line - half, row.line + half)]
    spans[axis] = Span(low, high)
    yield name, Box(along=spans[0], across=spans[1])
    for word, end in (("near", low), ("far", high)):
        centre[axis] = end
        yield f"{name}, {word} end", _bore(row, (centre[0], centre[1]))


def _bore(row: Row, centre: tuple[Fraction, Fraction]) -> Bore:
    return Bore(axis=INTO, centre=centre, radius=row.clearance / 2, span=Span())
