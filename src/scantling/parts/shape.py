"""Shapes of wood taken away: box, profile, taper and bore, exact and convex.

Coordinates are local: measured from the corner a cut names. Where a shape leaves the part it is
said to be open there, and its corners are carried past the surface so that no skin is left.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from scantling.errors import OutOfRangeError
from scantling.parts.frame import ACROSS, ALONG, INTO, Extent, Point

Flat = tuple[Fraction, Fraction]

BORE_SIDES = 24  # sides of the polygon that stands for a round hole, drawn round the circle


@dataclass(frozen=True)
class Span:
    """From start to stop along one axis; None runs past the surface. [mm]"""

    start: Fraction | None = None
    stop: Fraction | None = None

    def ends(self, *, full: Fraction, over: Fraction) -> tuple[Fraction, Fraction]:
        """Coordinates of both ends for a part of that full size. [mm]"""
        low = -over if self.start is None else self.start
        high = full + over if self.stop is None else self.stop
        return low, high

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

    def corners(self, *, extent: Extent, over: Fraction) -> tuple[Point, ...]:
        """Eight corners in local coordinates. [mm]"""
        ends = [s.ends(full=extent[a], over=over) for a, s in enumerate(self.spans)]
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
    next. Open sides lie in a surface of the part and are pushed out past it.
    """

    axis: int
    points: tuple[Flat, ...]
    open_sides: frozenset[int] = frozenset()
    span: Span = THROUGH

    def corners(self, *, extent: Extent, over: Fraction) -> tuple[Point, ...]:
        """Corners in local coordinates, one end after the other. [mm]"""
        low, high = self.span.ends(full=extent[self.axis], over=over)
        outline = pushed_out(self.points, self.open_sides, over=over)
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

    `start` and `stop` are always given; an end named open is carried on in a straight line.
    """

    axis: int
    first: tuple[Flat, ...]
    last: tuple[Flat, ...]
    start: Fraction
    stop: Fraction
    open_sides: frozenset[int] = frozenset()
    open_start: bool = False
    open_stop: bool = False

    def corners(self, *, extent: Extent, over: Fraction) -> tuple[Point, ...]:
        """Corners in local coordinates, first profile before last. [mm]"""
        del extent  # both ends are given
        first = pushed_out(self.first, self.open_sides, over=over)
        last = pushed_out(self.last, self.open_sides, over=over)
        reach = over / (self.stop - self.start)
        ends = (
            (self.start, first, last, reach if self.open_start else Fraction(0), -over),
            (self.stop, last, first, reach if self.open_stop else Fraction(0), over),
        )
        found: list[Point] = []
        for at, near, far, share, step in ends:
            place = at + (step if share else 0)
            for (a, b), (c, d) in zip(near, far, strict=True):
                flat = (a + (a - c) * share, b + (b - d) * share)
                found.append(_lifted(flat, self.axis, place))
        return tuple(found)

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

    The polygon is 0.57 % larger in area than the circle. A pin is drawn inside its circle with
    the same number of sides, so that a pin in a hole of its own size touches and never overlaps.
    """

    axis: int
    centre: Flat  # in the two other axes, in their order
    radius: Fraction
    span: Span
    inside: bool = field(default=False)  # a pin: polygon inside the circle

    def corners(self, *, extent: Extent, over: Fraction) -> tuple[Point, ...]:
        """Corners in local coordinates, one end after the other. [mm]"""
        low, high = self.span.ends(full=extent[self.axis], over=over)
        ring = INSIDE_CIRCLE if self.inside else ROUND_CIRCLE
        p, q = self.centre
        flats = tuple((p + self.radius * u, q + self.radius * v) for u, v in ring)
        return tuple(_lifted(flat, self.axis, at) for at in (low, high) for flat in flats)

    def moved(self, by: Point) -> Bore:
        """The same hole further in."""
        u, v = others(self.axis)
        return Bore(
            axis=self.axis,
            centre=(self.centre[0] + by[u], self.centre[1] + by[v]),
            radius=self.radius,
            span=self.span.moved(by[self.axis]),
            inside=self.inside,
        )


Shape = Box | Profile | Taper | Bore


def pushed_out(
    points: Sequence[Flat], open_sides: frozenset[int], *, over: Fraction
) -> tuple[Flat, ...]:
    """Outline with its open sides moved out by `over`; the other sides run on in their own line.

    Raises:
        OutOfRangeError: Fewer than three points, or not convex.
    """
    if not open_sides:
        _turn(points)
        return tuple(points)
    turn = _turn(points)
    lines = []
    for i, p in enumerate(points):
        q = points[(i + 1) % len(points)]
        normal = ((q[1] - p[1]) * turn, (p[0] - q[0]) * turn)  # outward
        distance = normal[0] * p[0] + normal[1] * p[1]
        if i in open_sides:
            distance += over * (abs(normal[0]) + abs(normal[1]))  # one of them is 0
        lines.append((normal, distance))
    return tuple(_crossing(lines[i - 1], lines[i]) for i in range(len(points)))


def _turn(points: Sequence[Flat]) -> int:
    turns = set()
    for i in range(len(points)):
        (a, b), (c, d), (e, f) = (points[(i + k) % len(points)] for k in range(3))
        turns.add((c - a) * (f - d) - (d - b) * (e - c) > 0)
    if len(points) < 3 or len(turns) != 1:
        msg = f"profile of {len(points)} points is not convex"
        raise OutOfRangeError(msg)
    return 1 if turns.pop() else -1


def _crossing(one: tuple[Flat, Fraction], two: tuple[Flat, Fraction]) -> Flat:
    (a, b), e = one
    (c, d), f = two
    det = a * d - b * c
    return ((e * d - b * f) / det, (a * f - e * c) / det)


def _lifted(flat: Flat, axis: int, at: Fraction) -> Point:
    u, v = others(axis)
    point = [Fraction(0)] * 3
    point[axis], point[u], point[v] = at, flat[0], flat[1]
    return (point[0], point[1], point[2])


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
