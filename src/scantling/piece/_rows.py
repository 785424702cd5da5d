"""Rows of a front: rails, openings and feet, from the top down, with their heights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.piece._section import Count, Length, Section, Word
from scantling.sizes.linear import ZERO, Linear, size_of


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


def opening_name(row: Row, index: int) -> str:
    return f"{row.opening} opening" if row.across == 1 else f"{row.opening} opening {index + 1}"
