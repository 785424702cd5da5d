"""A cut: one piece of wood taken from a part, with what it is called and what it may share."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from scantling.exact import Fraction
from scantling.parts.frame import REFERENCE, Corner, Extent, Point
from scantling.parts.shape import Shape
from scantling.solids.store import Key

OVER: Point = (Fraction(1), Fraction(1), Fraction(1))  # [mm] how far an open cut runs past
EVEN: Point = (Fraction(0), Fraction(0), Fraction(0))  # [mm] an open cut ends in the surface


class Made(StrEnum):
    """When a cut is made."""

    BEFORE_GLUE = "before glue"
    AFTER_GLUE = "after glue"


@dataclass(frozen=True, kw_only=True)
class Cut:
    """Wood taken away by one joint or form.

    Cuts of one `owner` may overlap each other (the shoulders of a tenon meet at its corners);
    cuts of different owners may not, unless one names the other in `shares`.
    """

    name: str  # "back rabbet", "mortise"
    owner: str  # the joint or form it comes from, as named in the piece
    shape: Shape
    corner: Corner = REFERENCE
    made: Made = Made.BEFORE_GLUE
    shares: frozenset[str] = frozenset()  # owners that may claim the same wood
    sized: tuple[tuple[str, str], ...] = ()  # measure -> name of the dimension that sets it

    @cached_property
    def outline(self) -> Key:
        """Its shape and corner alone: both of a pair, and every drawer side, are one solid."""
        return Key((self.shape, self.corner))

    def corners(self, *, extent: Extent, over: Point = OVER) -> tuple[Point, ...]:
        """Corners of the convex cutter in the part's own frame. [mm]

        Args:
            extent: Finished size of the part.
            over: How far open ends run past the surface along each axis. [mm]

        Raises:
            OutOfRangeError: The shape has no size, or is not convex.
        """
        local = self.shape.corners(extent=extent, over=over)
        if self.corner == REFERENCE:
            return local
        columns = [
            column if self.corner.surface(axis).is_reference else _from_far(column, extent[axis])
            for axis, column in enumerate(zip(*local, strict=True))
        ]
        x, y, z = columns
        return tuple(zip(x, y, z, strict=True))


def _from_far(column: Sequence[Fraction], full: Fraction) -> list[Fraction]:
    # many corners of a cutter hold one and the same number: it is taken off once
    turned: dict[tuple[int, int], Fraction] = {}
    found = []
    for value in column:
        ratio = value.numerator, value.denominator  # as telling as the value, quicker to hash
        if ratio not in turned:
            turned[ratio] = full - value
        found.append(turned[ratio])
    return found
