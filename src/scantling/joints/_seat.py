"""Where a joint sits: seats, the corner they count from, and what the form tells of neighbours."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from scantling.exact import Fraction
from scantling.findings import Place
from scantling.parts import REFERENCE, Corner, Cut, Made, Part, Point, Shape, Way
from scantling.sizes.linear import ZERO, Linear


@dataclass(frozen=True, kw_only=True)
class Said:
    """A length or ratio as the maker wrote it."""

    value: Fraction  # [mm], or a ratio
    text: str = ""
    place: Place | None = None


def option(*, dimension: str, says: str, reads: str = "length", words: tuple[str, ...] = ()) -> Any:  # noqa: ANN401 - what `field` returns
    """A field of a joint that states one of its own dimensions when the maker gives it.

    Args:
        dimension: Word of the dimension.
        says: What it is.
        reads: "length" above 0, "gap" at least 0, "offset" of any sign, or "ratio".
        words: Further words that the maker may use for it.
    """
    said = {"dimension": dimension, "says": says, "reads": reads, "words": words}
    return field(default=None, metadata=said)


@dataclass(frozen=True, kw_only=True)
class Seat:
    """Where a joint sits on one part: the corner it counts from and how far in it starts."""

    part: str
    corner: Corner = REFERENCE
    along: Linear = ZERO
    across: Linear = ZERO
    into: Linear = ZERO

    def origin(self, sizes: Mapping[str, Fraction]) -> Point:
        """The joint's own origin, counted from the corner. [mm]"""
        return (self.along.at(sizes), self.across.at(sizes), self.into.at(sizes))

    def cut(
        self,
        sizes: Mapping[str, Fraction],
        *,
        name: str,
        owner: str,
        shape: Shape,
        made: Made = Made.BEFORE_GLUE,
        shares: frozenset[str] = frozenset(),
        sized: Mapping[str, str] | None = None,
    ) -> Cut:
        """A cut of this seat; `shape` is in the joint's coordinates."""
        return Cut(
            name=name,
            owner=owner,
            shape=shape.moved(self.origin(sizes)),
            corner=self.corner,
            made=made,
            shares=shares,
            sized=tuple(sorted((sized or {}).items())),
        )

    def to_piece(self, point: Point, *, sizes: Mapping[str, Fraction], part: Part) -> Point:
        """A point of the joint as a point of the piece. [mm]"""
        moved = tuple(p + o for p, o in zip(point, self.origin(sizes), strict=True))
        local = (moved[0], moved[1], moved[2])
        return part.placement.to_piece(self.corner.to_part(local, part.extent))

    def way(self, *, axis: int, part: Part) -> Way:
        """Direction in the piece in which the joint's coordinate of that axis grows."""
        way = part.placement.ways[axis]
        return way if self.corner.surface(axis).is_reference else way.opposite


@dataclass(frozen=True, kw_only=True)
class Beside:
    """A neighbour's cut that this joint meets, told by the form; never fetched."""

    what: str  # "groove"
    owner: str  # whose claim on the wood it shares
    role: str  # in the coordinates of which seat
    axis: int  # across which axis it lies
    start: Linear  # [mm]
    size: Linear  # [mm]
    depth: Linear  # [mm]


@dataclass(frozen=True, kw_only=True)
class SeatRole:
    """A role, and how many parts may sit in it."""

    role: str
    means: str  # what its coordinates start from
    least: int = 1
    most: int | None = 1


def rectangle(
    *, axis: int, at: Fraction, first: tuple[Fraction, Fraction], second: tuple[Fraction, Fraction]
) -> tuple[Point, ...]:
    """Corners of a rectangle square to `axis`, in a joint's coordinates, once round. [mm]

    Args:
        axis: Axis the rectangle is square to.
        at: Coordinate on that axis. [mm]
        first: From and to on the lower of the other axes. [mm]
        second: From and to on the higher one. [mm]
    """
    u, v = [a for a in range(3) if a != axis]
    ring = ((0, 0), (1, 0), (1, 1), (0, 1))
    points = []
    for i, k in ring:
        point = [at, at, at]
        point[u], point[v] = first[i], second[k]
        points.append((point[0], point[1], point[2]))
    return tuple(points)


def lifted(
    seat: Seat, points: Sequence[Point], *, sizes: Mapping[str, Fraction], part: Part
) -> tuple[Point, ...]:
    """Points of a joint as points of the piece. [mm]"""
    return tuple(seat.to_piece(p, sizes=sizes, part=part) for p in points)
