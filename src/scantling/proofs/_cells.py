"""Convex cells with exact corners: cut by planes, taken from each other, measured.

Knows nothing of parts, cuts or the geometry kernel, so that what it measures is a second
opinion. All numbers are fractions; nothing is rounded.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

Point = tuple[Fraction, Fraction, Fraction]
Flat = tuple[Fraction, Fraction]
Face = tuple[Point, ...]

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
    """A convex body by its faces, each a plane convex polygon, once round either way."""

    faces: tuple[Face, ...]

    @property
    def corners(self) -> tuple[Point, ...]:
        """Each corner once."""
        return tuple(dict.fromkeys(point for face in self.faces for point in face))


@dataclass(frozen=True, kw_only=True)
class Amount:
    """Volume [mm3] and the sums of volume times distance along each axis. [mm4]"""

    volume: Fraction
    moments: Point

    def less(self, other: Amount) -> Amount:
        """What is left when another amount is taken away."""
        a, b, c = (m - o for m, o in zip(self.moments, other.moments, strict=True))
        return Amount(volume=self.volume - other.volume, moments=(a, b, c))


def box(low: Point, high: Point) -> tuple[Plane, ...]:
    """Six planes round a box."""
    found = []
    for axis in range(3):
        normal = [ZERO, ZERO, ZERO]
        normal[axis] = Fraction(1)
        up = (normal[0], normal[1], normal[2])
        found.append(Plane(normal=up, distance=high[axis]))
        found.append(Plane(normal=up, distance=low[axis]).turned)
    return tuple(found)


def block(low: Point, high: Point) -> Cell:
    """The box itself."""
    x, y, z = ((a, b) for a, b in zip(low, high, strict=True))
    ring = ((0, 0), (1, 0), (1, 1), (0, 1))
    faces: list[Face] = []
    for k in (0, 1):
        faces.append(tuple((x[k], y[i], z[j]) for i, j in ring))
        faces.append(tuple((x[i], y[k], z[j]) for i, j in ring))
        faces.append(tuple((x[i], y[j], z[k]) for i, j in ring))
    return Cell(faces=tuple(faces))


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
    volume = ZERO
    moments = [ZERO, ZERO, ZERO]
    for cell in cells:
        top = cell.faces[0][0]
        for face in cell.faces:
            if top in face:
                continue  # it would add nothing
            for one, other in pairwise(face[1:]):
                share = abs(_six_volumes(top, face[0], one, other))
                volume += share
                for axis in range(3):
                    middle = top[axis] + face[0][axis] + one[axis] + other[axis]
                    moments[axis] += share * middle
    return Amount(volume=volume / 6, moments=(moments[0] / 24, moments[1] / 24, moments[2] / 24))


def apart(one: Cell, other: Cell) -> bool:
    """Whether the boxes round two cells have no room in common."""
    mine, theirs = one.corners, other.corners
    return any(
        max(p[axis] for p in mine) <= min(p[axis] for p in theirs)
        or max(p[axis] for p in theirs) <= min(p[axis] for p in mine)
        for axis in range(3)
    )


def _cut(cell: Cell, plane: Plane) -> Cell | None:
    beyond = {point: plane.beyond(point) for point in cell.corners}
    if all(value <= 0 for value in beyond.values()):
        return cell
    if all(value >= 0 for value in beyond.values()):
        return None
    faces = []
    rim: dict[Point, None] = {}
    for face in cell.faces:
        kept = _clipped(face, beyond, rim)
        if len(kept) >= 3:
            faces.append(kept)
    faces.append(_ring(tuple(rim), plane))
    return Cell(faces=tuple(faces))


def _clipped(face: Face, beyond: dict[Point, Fraction], rim: dict[Point, None]) -> Face:
    kept: list[Point] = []
    for one, other in zip(face, (*face[1:], face[0]), strict=True):
        a, b = beyond[one], beyond[other]
        if a <= 0:
            kept.append(one)
        if a == 0:
            rim[one] = None
        if a * b < 0:
            share = a / (a - b)
            x, y, z = (p + (q - p) * share for p, q in zip(one, other, strict=True))
            kept.append((x, y, z))
            rim[x, y, z] = None
    # a face that only touches the plane along an edge is no face of what is left
    return tuple(kept) if any(beyond.get(point, ZERO) < 0 for point in kept) else ()


def _ring(points: Sequence[Point], plane: Plane) -> Face:
    """Corners in one plane, once round their hull."""
    drop = next(axis for axis in range(3) if plane.normal[axis] != 0)
    u, v = (axis for axis in range(3) if axis != drop)
    order = sorted(points, key=lambda p: (p[u], p[v]))
    lower = _chain(order, u, v)
    upper = _chain(order[::-1], u, v)
    return tuple(lower[:-1] + upper[:-1])


def _chain(points: Sequence[Point], u: int, v: int) -> list[Point]:
    chain: list[Point] = []
    for point in points:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], point, u, v) <= 0:
            chain.pop()
        chain.append(point)
    return chain


def _turn(a: Point, b: Point, c: Point, u: int, v: int) -> Fraction:
    return (b[u] - a[u]) * (c[v] - b[v]) - (b[v] - a[v]) * (c[u] - b[u])


def _six_volumes(a: Point, b: Point, c: Point, d: Point) -> Fraction:
    p, q, r = ([w - o for w, o in zip(point, a, strict=True)] for point in (b, c, d))
    return (
        p[0] * (q[1] * r[2] - q[2] * r[1])
        - p[1] * (q[0] * r[2] - q[2] * r[0])
        + p[2] * (q[0] * r[1] - q[1] * r[0])
    )
