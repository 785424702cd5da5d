"""An arch sawn into the lower edge of a rail: a fixed polygon inside the true circle."""

from __future__ import annotations

from math import isqrt

from scantling.exact import Fraction
from scantling.joints._joint import Said
from scantling.parts import INTO, Corner, Cut, Profile, Surface
from scantling.piece._form import Sketch
from scantling.piece._words import free
from scantling.sizes.linear import Linear
from scantling.sizes.model import Relations, Sizes

CHORDS = 32  # the polygon stays within rise / 256 of the circle, on the side of the wood
FINE = 10**6  # heights are kept to a millionth of a millimetre


def arch_below(sketch: Sketch, rail: str, *, rise: Said, start: Linear, stop: Linear) -> Sketch:
    """A rail whose lower edge (its back edge) rises in an arc between two stiles.

    Args:
        sketch: With the rail planned, face edge up.
        rail: The rail.
        rise: Height of the arc at its middle. [mm]
        start: Where the arc starts, along the rail from its reference end. [mm]
        stop: Where it ends. [mm]
    """
    name = f"{rail}.arch"

    def cuts(sizes: Sizes) -> tuple[Cut, ...]:
        first, last = start.at(sizes), stop.at(sizes)
        points = tuple(
            (first + along, up) for along, up in arc_points(chord=last - first, rise=sizes[name])
        )
        shape = Profile(axis=INTO, points=points, open_sides=frozenset({len(points) - 1}))
        corner = Corner(edge=Surface.BACK_EDGE)
        return (Cut(name="arch", owner=f"arch of {rail}", shape=shape, corner=corner),)

    sketch = sketch.with_relations(
        Relations(dimensions=(free(name, says=f"rise of the arch in the {rail}"),))
    )
    return sketch.with_stated((name, rise)).with_shaping(rail, cuts)


def arc_points(*, chord: Fraction, rise: Fraction) -> list[tuple[Fraction, Fraction]]:
    """Points on an arc over a chord, from its start to its end, both included. [mm]

    Args:
        chord: Length of the chord. [mm]
        rise: Height of the arc over the middle of the chord. [mm]
    """
    radius = (chord * chord / 4 + rise * rise) / (2 * rise)
    points = []
    for i in range(CHORDS + 1):
        along = chord * i / CHORDS
        square = radius * radius - (along - chord / 2) ** 2
        height = Fraction(isqrt(int(square * FINE * FINE)), FINE) - (radius - rise)
        points.append((along, max(height, Fraction(0))))
    points[0], points[-1] = (Fraction(0), Fraction(0)), (chord, Fraction(0))
    return points
