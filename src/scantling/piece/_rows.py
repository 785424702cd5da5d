"""Rows of a front: rails, openings and feet, from the top down, with their heights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.findings import Finding, Place, Weight
from scantling.piece._section import Count, Length, Section, Word
from scantling.piece._words import alike, follows, free, habit
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Level, Relations

FIRST = "left stile"  # planed first; the others take their thickness from it


class Row(Section):
    """One row of the front as it stands: a rail, an opening, or the feet."""

    rail: Word | None = None
    opening: Word | None = None
    foot: Length | None = None
    tall: Length | None = None
    across: Count = Count(1)
    mullion: Length | None = None
    arch: Length | None = None


@dataclass(frozen=True, kw_only=True)
class Storey:
    """A row with its height above the floor."""

    row: Row
    tall: Linear
    below: Linear

    @property
    def top(self) -> Linear:
        return self.below + self.tall


def faults_of(rows: Sequence[Row], *, place: Place | None) -> tuple[Finding, ...]:
    """Rows that make no front: each is one thing, and an opening stands between two rails."""
    found = []
    for i, row in enumerate(rows):
        kinds = [word for word in ("rail", "opening", "foot") if getattr(row, word) is not None]
        if len(kinds) != 1:
            cure = 'write { rail = "top rail" }, { opening = "doors" } or { foot = 1 }, one a row'
            found.append(_fault("a row is a rail, an opening or feet", cure, row.place or place))
        elif kinds == ["foot"] and i < len(rows) - 1:
            found.append(_fault("feet stand below all other rows", "put them last", row.place))
        elif kinds == ["opening"] and not _between_rails(rows, i):
            says = f"the opening {str(row.opening)!r} has no rail right above and right below it"
            found.append(_fault(says, "put a rail above it and one below", row.place or place))
    return tuple(found)


def _between_rails(rows: Sequence[Row], i: int) -> bool:
    return 0 < i < len(rows) - 1 and bool(rows[i - 1].rail) and bool(rows[i + 1].rail)


def _fault(says: str, cure: str, place: Place | None) -> Finding:
    return Finding(
        code="piece.row-stands-wrong", weight=Weight.HALT, says=says, cure=cure, place=place
    )


def storeys(rows: Sequence[Row]) -> list[Storey]:
    found: list[Storey] = []
    below: Linear = ZERO
    for row in reversed(rows):
        tall = _tall(row)
        found.append(Storey(row=row, tall=tall, below=below))
        below = below + tall
    return found[::-1]


def _tall(row: Row) -> Linear:
    if row.rail:
        return size_of(f"{row.rail}.width")
    if row.opening:
        return size_of(f"{opening_name(row, 0)}.tall")
    return size_of("face frame.foot")


def as_thick_as_the_frame(member: str) -> Relations:
    """A member's thickness: one setting for the whole frame, its face flush, its back on the case.

    One planed thinner stands off the case behind it.
    """
    off = size_of(f"{member}.stands off")
    thickness = size_of(f"{member}.thickness")
    frame = (f"{FIRST}.thickness", f"{member}.thickness")
    return Relations(
        dimensions=(
            free(f"{member}.stands off", says=f"room behind the {member}", may_be_nothing=True),
        ),
        equations=(follows(thickness + off, size_of("case.front"), "the frame is flush in front"),),
        rules=(habit(off, 0, f"the {member} lies on the case", level=Level.RULE),),
        alike=() if member == FIRST else (alike(frame, "the frame is of one thickness"),),
    )


def opening_name(row: Row, index: int) -> str:
    return f"{row.opening} opening" if row.across == 1 else f"{row.opening} opening {index + 1}"
