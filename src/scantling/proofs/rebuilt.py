"""The parts once more, from their drawings alone, by exact arithmetic.

What the kernel cut from the cuts of a part is held against what the drawn dimensions say. The two
share no code: here a cut is read as planes from its figures, the blank is split along them into
convex cells, and the cells are added up in fractions. Volume alone would not notice a mortise in
the wrong place, so the moments of the wood along the three axes are compared too.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import ClassVar

from scantling.errors import OutOfRangeError
from scantling.findings import Finding, Weight
from scantling.parts.drawn import Drawn
from scantling.proofs import _cells
from scantling.proofs._cells import Amount, Cell, Flat, Plane, Point
from scantling.proofs._proof import Case

CLOSE = 1e-12  # [-] share of the volume; of the volume times the size, for moments
WORDS = ("along", "across", "into")
SIDES = 24  # of the polygon drawn round a hole, or inside a round blank
ZERO = Fraction(0)
ORIGIN: Point = (ZERO, ZERO, ZERO)


class Rebuilt:
    """Proves that drawing and solid tell of the same part."""

    title: ClassVar[str] = "rebuilt from the drawing"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each part whose drawing and solid differ, or whose drawing tells of no part."""
        found = []
        for part in case.parts:
            extent = part.extent
            size = (extent.length, extent.width, extent.thickness)
            cuts = case.drawn(part)
            try:
                wanted = case.store.kept(
                    ("rebuilt", size, _figures_alone(cuts), part.is_round),
                    lambda s=size, c=cuts, r=part.is_round: (  # type: ignore[misc] # mypy can't infer defaults of a lambda
                        remaining(size=s, cuts=c, is_round=r)
                    ),
                )
            except OutOfRangeError as fault:
                found.append(_finding(case, part.name, str(fault), figure="", limit=""))
                continue
            solid = case.solid(part)
            limit = f"{float(wanted.volume):.9g} mm³"
            if says := _difference(wanted, size, solid.volume, solid.moments):
                figure = f"{solid.volume:.9g} mm³"
                found.append(_finding(case, part.name, says, figure=figure, limit=limit))
        return tuple(found)


def remaining(*, size: Point, cuts: Sequence[Drawn], is_round: bool = False) -> Amount:
    """Wood left of a blank once everything drawn is cut away. [mm3, mm4]

    Args:
        size: Length, width and thickness of the blank. [mm]
        cuts: Its cuts, as drawn.
        is_round: Whether the blank is a many-sided bar inside the circle of its width.

    Raises:
        OutOfRangeError: A figure is missing or the figures of a cut make no body.
    """
    blank: Cell | None = _cells.block(ORIGIN, size)
    if is_round and blank is not None:
        blank = _cells.within(blank, _bar(size))
    if blank is None:
        msg = "the blank has no size"
        raise OutOfRangeError(msg)
    taken: list[tuple[Cell, tuple[Plane, ...]]] = []
    removed: list[Cell] = []
    for cut in cuts:
        planes = _planes(cut, size)
        cell = _cells.within(blank, planes)
        if cell is not None:
            removed.extend(_less(cell, taken))
            taken.append((cell, planes))
    return _cells.amount([blank]).less(_cells.amount(removed))


def _figures_alone(cuts: Sequence[Drawn]) -> tuple[object, ...]:
    # names and owners left out: both of a pair are reckoned once
    return tuple(
        (
            cut.form,
            cut.sweep,
            cut.corner,
            cut.open_start,
            cut.open_stop,
            cut.open_sides,
            tuple((row.word, row.value, row.from_surface) for row in cut.measures),
        )
        for cut in cuts
    )


def _less(cell: Cell, taken: Sequence[tuple[Cell, tuple[Plane, ...]]]) -> list[Cell]:
    left = [cell]
    for other, planes in taken:
        if not _cells.apart(cell, other):
            left = [piece for each in left for piece in _cells.without(each, planes)]
    return left


def _difference(
    wanted: Amount, size: Point, volume: float, moments: tuple[float, float, float]
) -> str:
    whole = float(wanted.volume)
    if abs(volume - whole) > CLOSE * whole:
        return "solid and drawing differ in volume"
    for axis, found in enumerate(moments):
        if abs(found - float(wanted.moments[axis])) > CLOSE * whole * float(size[axis]):
            return f"solid and drawing differ in where the wood lies {WORDS[axis]} the part"
    return ""


def _finding(case: Case, name: str, says: str, *, figure: str, limit: str) -> Finding:
    return Finding(
        code="proofs.drawing-differs",
        weight=Weight.HALT,
        says=f"{name}: {says}",
        cure="Do not cut from this drawing: one of the two is wrong, and the program is at fault.",
        place=case.place((name,)),
        figure=figure,
        limit=limit,
        source="volume rebuilt from the drawn dimensions",
        parts=(name,),
    )


def _planes(cut: Drawn, size: Point) -> tuple[Plane, ...]:
    """The planes a cut lies between, in the part's own frame. Open sides have none."""
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


def _bar(size: Point) -> list[Plane]:
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
