"""Shapes of wood taken away: box, profile, taper and bore, exact and convex.

Coordinates are local: measured from the corner a cut names. Where a shape leaves the part it is
said to be open there, and its corners are carried past the surface so that no skin is left.

`over` is how far that is, for each axis of the part. [mm] A shape of no size, or one that is not
convex, has no corners: every `corners` raises OutOfRangeError for it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction
from scantling.parts.frame import ACROSS, ALONG, INTO, Extent, Point
from scantling.parts.outline import Flat, run_out, sides, turn_of

BORE_SIDES = 24  # sides of the polygon that stands for a round hole, drawn round the circle


@dataclass(frozen=True)
class Span:
    """From start to stop along one axis; None runs past the surface. [mm]"""

    start: Fraction | None = None
    stop: Fraction | None = None

    def ends(self, *, full: Fraction, over: Fraction) -> tuple[Fraction, Fraction]:
        """Coordinates of both ends for a part of that full size. [mm]

        Raises:
            OutOfRangeError: It stops before it starts, within the part.
        """
        low = Fraction(0) if self.start is None else self.start
        high = full if self.stop is None else self.stop
        if high <= low:
            msg = f"a cut from {float(low):g} mm to {float(high):g} mm has no size"
            raise OutOfRangeError(msg)
        return (
            -over if self.start is None else low,
            full + over if self.stop is None else high,
        )

    def moved(self, by: Fraction) -> Span:
        """The same span further along; an open end stays open."""
        return Span(
            None if self.start is None else self.start + by,
            None if self.stop is None else self.stop + by,
        )


THROUGH = Span()


def others(axis: int) -> tuple[int, int]:
    """The two axes a profile swept along `axis` is drawn in, in their order."""
    return ((ACROSS, INTO), (ALONG, INTO), (ALONG, ACROSS))[axis]


@dataclass(frozen=True, kw_only=True)
class Box:
    """A cut with six square sides."""

    along: Span = THROUGH
    across: Span = THROUGH
    into: Span = THROUGH

    @property
    def spans(self) -> tuple[Span, Span, Span]:
        """Along, across, into."""
        return (self.along, self.across, self.into)

    def corners(self, *, extent: Extent, over: Point) -> tuple[Point, ...]:
        """Eight corners in local coordinates. [mm]"""
        ends = [s.ends(full=extent[a], over=over[a]) for a, s in enumerate(self.spans)]
        return tuple((x, y, z) for x in ends[0] for y in ends[1] for z in ends[2])

    def moved(self, by: Point) -> Box:
        """The same box further in."""
        return Box(
            along=self.along.moved(by[0]),
            across=self.across.moved(by[1]),
            into=self.into.moved(by[2]),
        )


@dataclass(frozen=True, kw_only=True)
class Profile:
    """A convex polygon swept along one axis.

    `points` go round once, in the two other axes in their order; side i runs from point i to the
    next. Through open sides it leaves the part: they are carried on past the surface.
    """

    axis: int
    points: tuple[Flat, ...]
    open_sides: frozenset[int] = frozenset()
    span: Span = THROUGH

    def corners(self, *, extent: Extent, over: Point) -> tuple[Point, ...]:
        """Corners in local coordinates, one end after the other. [mm]"""
        low, high = self.span.ends(full=extent[self.axis], over=over[self.axis])
        room = _flat((extent.length, extent.width, extent.thickness), self.axis)
        outline = run_out(self.points, self.open_sides, room=room, over=_flat(over, self.axis))
        return tuple(_lifted(flat, self.axis, at) for at in (low, high) for flat in outline)

    def moved(self, by: Point) -> Profile:
        """The same profile further in."""
        u, v = others(self.axis)
        return Profile(
            axis=self.axis,
            points=tuple((p + by[u], q + by[v]) for p, q in self.points),
            open_sides=self.open_sides,
            span=self.span.moved(by[self.axis]),
        )


@dataclass(frozen=True, kw_only=True)
class Taper:
    """The hull between two profiles of the same number of points with parallel sides.

    `start` and `stop` are always given; an end named open is carried on in a straight line past
    the surface.
    """

    axis: int
    first: tuple[Flat, ...]
    last: tuple[Flat, ...]
    start: Fraction
    stop: Fraction
    open_sides: frozenset[int] = frozenset()
    open_start: bool = False
    open_stop: bool = False

    def corners(self, *, extent: Extent, over: Point) -> tuple[Point, ...]:
        """Corners in local coordinates, first profile before last. [mm]"""
        self._check()
        room = _flat((extent.length, extent.width, extent.thickness), self.axis)
        flat = _flat(over, self.axis)
        first = run_out(self.first, self.open_sides, room=room, over=flat)
        last = run_out(self.last, self.open_sides, room=room, over=flat)
        ends = Span(None if self.open_start else self.start, None if self.open_stop else self.stop)
        low, high = ends.ends(full=extent[self.axis], over=over[self.axis])
        full = self.stop - self.start
        near = _carried_on(last, first, share=(self.start - low) / full)
        far = _carried_on(first, last, share=(high - self.stop) / full)
        if not turn_of(near) == turn_of(far) == turn_of(first):
            msg = "the sides of a taper meet before it leaves the part"
            raise OutOfRangeError(msg)
        return (
            *(_lifted(flat, self.axis, low) for flat in near),
            *(_lifted(flat, self.axis, high) for flat in far),
        )

    def _check(self) -> None:
        if self.stop <= self.start:
            msg = f"a taper from {float(self.start):g} mm to {float(self.stop):g} mm has no size"
            raise OutOfRangeError(msg)
        if len(self.first) != len(self.last):
            msg = f"a taper runs from {len(self.first)} points to {len(self.last)}"
            raise OutOfRangeError(msg)
        for i, (one, two) in enumerate(zip(sides(self.first), sides(self.last), strict=True)):
            same_way = one[0] * two[0] + one[1] * two[1] > 0
            if one[0] * two[1] != one[1] * two[0] or not same_way:
                msg = f"side {i} of a taper is not parallel to its other end"
                raise OutOfRangeError(msg)

    def moved(self, by: Point) -> Taper:
        """The same taper further in."""
        u, v = others(self.axis)
        return Taper(
            axis=self.axis,
            first=tuple((p + by[u], q + by[v]) for p, q in self.first),
            last=tuple((p + by[u], q + by[v]) for p, q in self.last),
            start=self.start + by[self.axis],
            stop=self.stop + by[self.axis],
            open_sides=self.open_sides,
            open_start=self.open_start,
            open_stop=self.open_stop,
        )


@dataclass(frozen=True, kw_only=True)
class Bore:
    """A round hole along one axis, as a polygon of BORE_SIDES drawn round the circle.

    The polygon is 0.58 % larger in area than the circle. A round part is drawn inside its circle
    with as many sides, so that a pin in a hole of its own size touches and never overlaps.
    """

    axis: int
    centre: Flat  # in the two other axes, in their order
    radius: Fraction
    span: Span

    def corners(self, *, extent: Extent, over: Point) -> tuple[Point, ...]:
        """Corners in local coordinates, one end after the other. [mm]"""
        low, high = self.span.ends(full=extent[self.axis], over=over[self.axis])
        if self.radius <= 0:
            msg = f"a hole of radius {float(self.radius):g} mm has no size"
            raise OutOfRangeError(msg)
        flats = _drilled(self.centre, self.radius)
        return tuple(_lifted(flat, self.axis, at) for at in (low, high) for flat in flats)

    def moved(self, by: Point) -> Bore:
        """The same hole further in."""
        u, v = others(self.axis)
        return Bore(
            axis=self.axis,
            centre=(self.centre[0] + by[u], self.centre[1] + by[v]),
            radius=self.radius,
            span=self.span.moved(by[self.axis]),
        )


Shape = Box | Profile | Taper | Bore


def around(ring: Sequence[Flat], *, centre: Flat, radius: Fraction) -> tuple[Flat, ...]:
    """A ring of the unit circle, enlarged and moved to its place. [mm]"""
    return tuple((centre[0] + radius * u, centre[1] + radius * v) for u, v in ring)


@lru_cache(maxsize=1024)  # a hole keeps its place from its own corner whatever else changes
def _drilled(centre: Flat, radius: Fraction) -> tuple[Flat, ...]:
    return around(ROUND_CIRCLE, centre=centre, radius=radius)


def _carried_on(
    start: Sequence[Flat], stop: Sequence[Flat], *, share: Fraction
) -> tuple[Flat, ...]:
    """The outline beyond `stop`, on the straight lines from `start` through it."""
    return tuple(
        (c + (c - a) * share, d + (d - b) * share)
        for (a, b), (c, d) in zip(start, stop, strict=True)
    )


def _crossing(one: tuple[Flat, Fraction], two: tuple[Flat, Fraction]) -> Flat:
    (a, b), e = one
    (c, d), f = two
    det = a * d - b * c
    return ((e * d - b * f) / det, (a * f - e * c) / det)


def _flat(point: Point, axis: int) -> Flat:
    u, v = others(axis)
    return (point[u], point[v])


def _lifted(flat: Flat, axis: int, at: Fraction) -> Point:
    u, v = flat
    if axis == ALONG:
        return (at, u, v)
    return (u, at, v) if axis == ACROSS else (u, v, at)


def _unit_points() -> tuple[Flat, ...]:
    """Points on the unit circle with rational coordinates, near equal steps, by half-angle."""
    quarter = BORE_SIDES // 4
    # tan of half of i * 90/quarter degrees, to three places: any rational lies on the circle
    halves = (0, 132, 268, 414, 577, 767)[:quarter]
    first = []
    for thousandths in halves:
        t = Fraction(thousandths, 1000)
        first.append(((1 - t * t) / (1 + t * t), 2 * t / (1 + t * t)))
    found = list(first)
    for _ in range(3):
        first = [(-v, u) for u, v in first]
        found.extend(first)
    return tuple(found)


def _tangent_corners(points: Sequence[Flat]) -> tuple[Flat, ...]:
    lines = [((u, v), Fraction(1)) for u, v in points]
    return tuple(_crossing(lines[i - 1], lines[i]) for i in range(len(lines)))


INSIDE_CIRCLE = _unit_points()
ROUND_CIRCLE = _tangent_corners(INSIDE_CIRCLE)
