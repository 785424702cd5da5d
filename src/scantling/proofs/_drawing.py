"""Cuts read off their drawing as planes, exactly.

Knows what is drawn and nothing else of a cut, so that what is rebuilt from it is a second opinion.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction
from scantling.parts.drawn import Drawn
from scantling.proofs._cells import Flat, Plane, Point

WORDS = ("along", "across", "into")
SIDES = 24  # of the polygon drawn round a hole, or inside a round blank
ZERO = Fraction(0)


def planes(cut: Drawn, size: Point) -> tuple[Plane, ...]:
    """The planes a cut lies between, in the part's own frame. Open sides have none.

    Args:
        cut: The cut as drawn.
        size: Length, width and thickness of the part. [mm]

    Raises:
        OutOfRangeError: A figure is missing or the figures make no body.
    """
    figures = _Figures(cut, size)
    match cut.form:
        case "box":
            found = [p for axis in range(3) for p in _span(figures, axis)]
        case "profile":
            found = _sides(figures, "point") + _span(figures, figures.sweep)
        case "bore":
            found = _hole(figures) + _span(figures, figures.sweep)
        case "taper":
            found = _tapered(figures) + _span(figures, figures.sweep)
        case _:
            msg = f"{cut.cut} is drawn as a {cut.form}, which no one can read"
            raise OutOfRangeError(msg)
    flipped = [not found.is_reference for found in cut.corner]
    return tuple(_from_reference(plane, flipped, size) for plane in found)


class _Figures:
    """The figures of one cut, counted from the corner that it is drawn from. [mm]"""

    def __init__(self, cut: Drawn, size: Point) -> None:
        self.cut = cut
        self._size = size
        self._by_word: dict[str, Fraction] = {}
        for row in cut.measures:
            near = row.from_surface in {None, cut.corner[row.axis]}
            self._by_word[row.word] = row.value if near else size[row.axis] - row.value

    @property
    def sweep(self) -> int:
        """The axis it is swept along."""
        if self.cut.sweep is None:
            msg = f"{self.cut.cut} is drawn as a {self.cut.form} but runs along no axis"
            raise OutOfRangeError(msg)
        return self.cut.sweep

    def check_open(self, side: int, one: Flat, other: Flat) -> None:
        """A side through which it leaves the part must be drawn in a surface."""
        across = [axis for axis in range(3) if axis != self.sweep]
        for axis, a, b in zip(across, one, other, strict=True):
            if a == b and a in {ZERO, self._size[axis]}:
                return
        msg = f"side {side} of {self.cut.cut} is drawn open but lies in no surface"
        raise OutOfRangeError(msg)

    def figure(self, word: str) -> Fraction:
        """A figure that must be drawn."""
        if word not in self._by_word:
            msg = f"{self.cut.cut} is drawn without its {word}"
            raise OutOfRangeError(msg)
        return self._by_word[word]

    def start(self, axis: int) -> Fraction:
        """Where it starts; nothing is drawn where it starts in the surface."""
        return self._by_word.get(f"{WORDS[axis]} start", ZERO)

    def ring(self, word: str) -> list[Flat]:
        """Points of that name, in the two axes across the sweep."""
        u, v = (WORDS[axis] for axis in range(3) if axis != self.sweep)
        found: list[Flat] = []
        while f"{word} {len(found)} {u}" in self._by_word:
            name = f"{word} {len(found)}"
            found.append((self.figure(f"{name} {u}"), self.figure(f"{name} {v}")))
        if len(found) < 3:
            msg = f"{self.cut.cut} is drawn with {len(found)} points"
            raise OutOfRangeError(msg)
        return found


def _span(figures: _Figures, axis: int) -> list[Plane]:
    cut, start = figures.cut, figures.start(axis)
    found = []
    if not cut.open_start[axis]:
        found.append(_square(axis, start).turned)
    if not cut.open_stop[axis]:
        size = figures.figure(f"{WORDS[axis]} size")
        if size <= 0:
            msg = f"{cut.cut} is drawn {float(size):g} mm {WORDS[axis]}"
            raise OutOfRangeError(msg)
        found.append(_square(axis, start + size))
    return found


def _sides(figures: _Figures, word: str) -> list[Plane]:
    ring = figures.ring(word)
    middle = _middle(ring)
    found = []
    for i, (one, other) in enumerate(zip(ring, [*ring[1:], ring[0]], strict=True)):
        if i in figures.cut.open_sides:
            figures.check_open(i, one, other)
            continue
        across = (other[1] - one[1], one[0] - other[0])
        plane = _upright(figures.sweep, across, across[0] * one[0] + across[1] * one[1])
        found.append(_holding(plane, _lifted(middle, figures.sweep, ZERO), figures))
    return found


def _hole(figures: _Figures) -> list[Plane]:
    axis = figures.sweep
    u, v = (figures.figure(f"centre {WORDS[a]}") for a in range(3) if a != axis)
    radius = figures.figure("diameter") / 2
    if radius <= 0:
        msg = f"{figures.cut.cut} is drawn with a diameter of {float(2 * radius):g} mm"
        raise OutOfRangeError(msg)
    return [_upright(axis, (p, q), p * u + q * v + radius) for p, q in _circle()]


def _tapered(figures: _Figures) -> list[Plane]:
    axis = figures.sweep
    start = figures.start(axis)
    stop = start + figures.figure(f"{WORDS[axis]} size")
    rings = figures.ring("first point"), figures.ring("last point")
    first, last = (
        [_lifted(flat, axis, at) for flat in ring]
        for ring, at in zip(rings, (start, stop), strict=True)
    )
    if len(first) != len(last) or stop <= start:
        msg = f"{figures.cut.cut} is drawn with ends that do not fit each other"
        raise OutOfRangeError(msg)
    middle = _mean([*first, *last])
    found = []
    for i in range(len(first)):
        k = (i + 1) % len(first)
        if i in figures.cut.open_sides:
            for ring in rings:
                figures.check_open(i, ring[i], ring[k])
            continue
        plane = _holding(_through(first[i], first[k], last[i]), middle, figures)
        if plane.beyond(last[k]) != 0:
            msg = f"side {i} of {figures.cut.cut} is drawn twisted"
            raise OutOfRangeError(msg)
        found.append(plane)
    return found


def bar(size: Point) -> list[Plane]:
    """The planes of a round blank: a many-sided bar inside the circle of its width."""
    radius = size[1] / 2
    ring = [(radius + radius * p, radius + radius * q) for p, q in _circle()]
    found = []
    for one, other in zip(ring, [*ring[1:], ring[0]], strict=True):
        across = (other[1] - one[1], one[0] - other[0])
        plane = _upright(0, across, across[0] * one[0] + across[1] * one[1])
        inside = plane.beyond((ZERO, radius, radius)) < 0
        found.append(plane if inside else plane.turned)
    return found


def _circle() -> list[Flat]:
    """Points of the unit circle near equal steps, from half-angle tangents of three places."""
    found: list[Flat] = []
    for step in range(SIDES):
        quarter, rest = divmod(step, SIDES // 4)
        t = Fraction(round(1000 * math.tan(math.pi * rest / SIDES)), 1000)
        p, q = (1 - t * t) / (1 + t * t), 2 * t / (1 + t * t)
        for _ in range(quarter):
            p, q = -q, p
        found.append((p, q))
    return found


def _square(axis: int, at: Fraction) -> Plane:
    normal = [ZERO, ZERO, ZERO]
    normal[axis] = Fraction(1)
    return Plane(normal=(normal[0], normal[1], normal[2]), distance=at)


def _upright(axis: int, across: Flat, distance: Fraction) -> Plane:
    return Plane(normal=_lifted(across, axis, ZERO), distance=distance)


def _through(a: Point, b: Point, c: Point) -> Plane:
    p = [y - x for x, y in zip(a, b, strict=True)]
    q = [y - x for x, y in zip(a, c, strict=True)]
    normal = (
        p[1] * q[2] - p[2] * q[1],
        p[2] * q[0] - p[0] * q[2],
        p[0] * q[1] - p[1] * q[0],
    )
    flat = Plane(normal=normal, distance=ZERO)
    return Plane(normal=normal, distance=flat.beyond(a))


def _holding(plane: Plane, inside: Point, figures: _Figures) -> Plane:
    beyond = plane.beyond(inside)
    if beyond == 0:
        msg = f"{figures.cut.cut} is drawn with a side of no size"
        raise OutOfRangeError(msg)
    return plane if beyond < 0 else plane.turned


def _middle(ring: Sequence[Flat]) -> Flat:
    count = len(ring)
    return (sum((p for p, _ in ring), ZERO) / count, sum((q for _, q in ring), ZERO) / count)


def _mean(points: Sequence[Point]) -> Point:
    a, b, c = (sum((p[axis] for p in points), ZERO) / len(points) for axis in range(3))
    return (a, b, c)


def _lifted(flat: Flat, axis: int, at: Fraction) -> Point:
    point = [flat[0], flat[1]]
    point.insert(axis, at)
    return (point[0], point[1], point[2])


def _from_reference(plane: Plane, flipped: Sequence[bool], size: Point) -> Plane:
    """The same plane, counted from the reference surfaces."""
    normal, distance = list(plane.normal), plane.distance
    for axis in range(3):
        if flipped[axis]:
            distance -= normal[axis] * size[axis]
            normal[axis] = -normal[axis]
    return Plane(normal=(normal[0], normal[1], normal[2]), distance=distance)
