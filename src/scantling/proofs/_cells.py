"""Convex cells with exact corners: cut by planes, taken from each other, measured.

Knows nothing of parts, cuts or the geometry kernel, so that what it measures is a second
opinion. Nothing is rounded. Corners and planes are held as whole numbers over a common
denominator, which costs a tenth of reckoning with fractions.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import gcd, lcm

from scantling.exact import Fraction

Point = tuple[Fraction, Fraction, Fraction]
Flat = tuple[Fraction, Fraction]
Corner = tuple[int, int, int, int]  # three numerators and their denominator, above 0
Face = tuple[int, ...]  # corners by number, once round either way

ZERO = Fraction(0)


@dataclass(frozen=True, kw_only=True)
class Plane:
    """All points whose sum with `normal` is `distance`; wood lies on the lower side."""

    normal: Point
    distance: Fraction

    def beyond(self, point: Point) -> Fraction:
        """Above 0 outside, 0 in the plane, below 0 inside."""
        n = self.normal
        return n[0] * point[0] + n[1] * point[1] + n[2] * point[2] - self.distance

    @property
    def turned(self) -> Plane:
        """The same plane with the other side inside."""
        a, b, c = self.normal
        return Plane(normal=(-a, -b, -c), distance=-self.distance)


@dataclass(frozen=True, kw_only=True)
class Cell:
    """A convex body by its corners and its plane faces."""

    corners: tuple[Corner, ...]
    faces: tuple[Face, ...]

    @cached_property
    def ends(self) -> tuple[Flat, ...]:
        """Least and greatest along each axis."""
        axes = ([Fraction(p[axis], p[3]) for p in self.corners] for axis in range(3))
        return tuple((min(values), max(values)) for values in axes)


@dataclass(frozen=True, kw_only=True)
class Amount:
    """Volume [mm3] and the sums of volume times distance along each axis. [mm4]"""

    volume: Fraction
    moments: Point

    def less(self, other: Amount) -> Amount:
        """What is left when another amount is taken away."""
        a, b, c = (m - o for m, o in zip(self.moments, other.moments, strict=True))
        return Amount(volume=self.volume - other.volume, moments=(a, b, c))


def block(low: Point, high: Point) -> Cell:
    """The box between two corners."""
    ends = [(a, b) for a, b in zip(low, high, strict=True)]
    corners = [
        _corner((ends[0][i], ends[1][j], ends[2][k]))
        for i in (0, 1)
        for j in (0, 1)
        for k in (0, 1)
    ]
    faces = ((0, 1, 3, 2), (4, 5, 7, 6), (0, 1, 5, 4), (2, 3, 7, 6), (0, 2, 6, 4), (1, 3, 7, 5))
    return Cell(corners=tuple(corners), faces=faces)


def within(cell: Cell, planes: Iterable[Plane]) -> Cell | None:
    """The part of a cell inside all planes, or None if nothing is left."""
    left: Cell | None = cell
    for plane in planes:
        if left is None:
            return None
        left = _cut(left, plane)
    return left


def without(cell: Cell, planes: Sequence[Plane]) -> tuple[Cell, ...]:
    """The part of a cell outside a convex body, in convex cells that only touch."""
    found = []
    inside: Cell | None = cell
    for plane in planes:
        if inside is None:
            break
        outside = _cut(inside, plane.turned)
        if outside is not None:
            found.append(outside)
        inside = _cut(inside, plane)
    # a body that does not reach the cell leaves it whole
    return tuple(found) if inside is not None else (cell,)


def amount(cells: Iterable[Cell]) -> Amount:
    """Volume and moments of cells that only touch. [mm3, mm4]"""
    volume, x, y, z = ZERO, ZERO, ZERO, ZERO
    for cell in cells:
        shared = lcm(*(corner[3] for corner in cell.corners))
        share, *moments = _whole_amount(cell, shared)
        volume += Fraction(share, 6 * shared**3)
        x, y, z = (m + Fraction(n, 24 * shared**4) for m, n in zip((x, y, z), moments, strict=True))
    return Amount(volume=volume, moments=(x, y, z))


def _whole_amount(cell: Cell, shared: int) -> tuple[int, int, int, int]:
    """Six times the volume and 24 times the moments, in parts of a millimetre."""
    volume = x = y = z = 0
    at = [tuple(n * (shared // corner[3]) for n in corner[:3]) for corner in cell.corners]
    for numbers in _split(cell):
        (a, b, c), *others = corners = [at[number] for number in numbers]
        share = abs(_determinant([(i - a, j - b, k - c) for i, j, k in others]))
        volume += share
        x += share * sum(corner[0] for corner in corners)
        y += share * sum(corner[1] for corner in corners)
        z += share * sum(corner[2] for corner in corners)
    return volume, x, y, z


def apart(one: Cell, other: Cell) -> bool:
    """Whether the boxes round two cells have no room in common."""
    return any(a[1] <= b[0] or b[1] <= a[0] for a, b in zip(one.ends, other.ends, strict=True))


def _split(cell: Cell) -> Iterable[tuple[int, int, int, int]]:
    """Tetrahedra that fill a cell, each by the numbers of its corners."""
    top = cell.faces[0][0]
    for face in cell.faces:
        if top not in face:
            for one, other in pairwise(face[1:]):
                yield top, face[0], one, other


def _cut(cell: Cell, plane: Plane) -> Cell | None:
    a, b, c, d = _whole((*plane.normal, plane.distance))[:4]
    beyond = [a * x + b * y + c * z - d * w for x, y, z, w in cell.corners]
    if all(value <= 0 for value in beyond):
        return cell
    if all(value >= 0 for value in beyond):
        return None
    return _Halved(cell, beyond).lower()


class _Halved:
    """A cell that a plane runs through. Corners keep their order, so nothing is compared."""

    def __init__(self, cell: Cell, beyond: Sequence[int]) -> None:
        self._cell = cell
        self._beyond = beyond
        self._corners: list[Corner] = []
        self._number: dict[tuple[int, int], int] = {}  # of a corner, or of one between two
        self._rim: dict[int, list[int]] = {}  # corners in the plane, and those beside each

    def lower(self) -> Cell:
        """What lies below the plane, with the face that the plane leaves."""
        faces = [face for face in map(self._clipped, self._cell.faces) if face]
        faces.append(self._ring())
        return Cell(corners=tuple(self._corners), faces=tuple(faces))

    def _clipped(self, face: Face) -> Face:
        beyond = self._beyond
        sides = [beyond[corner] for corner in face]
        if min(sides) >= 0:
            return ()  # it touches the plane at most
        if max(sides) < 0:
            return tuple(map(self._kept, face))
        kept: list[int] = []
        rim: list[int] = []
        for one, other in zip(face, (*face[1:], face[0]), strict=True):
            if beyond[one] <= 0:
                kept.append(self._kept(one))
            if beyond[one] == 0:
                rim.append(kept[-1])
            if beyond[one] * beyond[other] < 0:
                kept.append(self._between(min(one, other), max(one, other)))
                rim.append(kept[-1])
        if len(rim) == 2:
            self._rim.setdefault(rim[0], []).append(rim[1])
            self._rim.setdefault(rim[1], []).append(rim[0])
        return tuple(kept)

    def _kept(self, corner: int) -> int:
        if (corner, corner) not in self._number:
            self._number[corner, corner] = len(self._corners)
            self._corners.append(self._cell.corners[corner])
        return self._number[corner, corner]

    def _between(self, one: int, other: int) -> int:
        if (one, other) not in self._number:
            self._number[one, other] = len(self._corners)
            near, far = abs(self._beyond[one]), abs(self._beyond[other])
            p, q = self._cell.corners[one], self._cell.corners[other]
            x, y, z, w = (far * i + near * k for i, k in zip(p, q, strict=True))
            shared = gcd(x, y, z, w)
            self._corners.append((x // shared, y // shared, z // shared, w // shared))
        return self._number[one, other]

    def _ring(self) -> Face:
        """Corners of the new face, each beside the next."""
        first = next(iter(self._rim))
        ring, before = [first], first
        following = self._rim[first][0]
        while following != first:
            ring.append(following)
            a, b = self._rim[following]
            before, following = following, b if a == before else a
        return tuple(ring)


def _corner(point: Point) -> Corner:
    x, y, z, w = _whole(point)
    return x, y, z, w


def _whole(values: Sequence[Fraction]) -> tuple[int, ...]:
    """Numerators over one denominator, which comes last."""
    shared = lcm(*(value.denominator for value in values))
    return (*(value.numerator * (shared // value.denominator) for value in values), shared)


def _determinant(rows: Sequence[Sequence[int]]) -> int:
    (a, b, c), (d, e, f), (g, h, i) = rows
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
