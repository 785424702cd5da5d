"""The shape of a sliding tail and its socket, straight or tapered on the near flank.

Coordinates are those of the receiving seat: along from the near face of the entering part,
across from its front edge, into from the face that it enters.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.joints._frame import Patch
from scantling.joints._housed import Run, shared_with, stop_patches
from scantling.joints._joint import Fit, Glue, Joined
from scantling.parts import ACROSS, Box, Cut, Point, Profile, Shape, Span, Taper
from scantling.parts.outline import Flat
from scantling.sizes.linear import ZERO
from scantling.sizes.model import Sizes

NONE = Fraction(0)


@dataclass(frozen=True, kw_only=True)
class Tail:
    """Tail and socket at their sizes. [mm]; slope and taper are ratios."""

    thick: Fraction  # of the entering part
    entry: Fraction
    depth: Fraction  # of the socket
    set_in: Fraction  # of the tip from both faces
    slope: Fraction
    taper: Fraction  # of the near flank, per length
    run: Run
    missing: Fraction = NONE  # of the tail, where its part was made too short

    @property
    def ends(self) -> tuple[Fraction, Fraction]:
        """Where the socket starts, and where the tail in it ends. [mm]"""
        front = self.run.edge if self.run.front is None else self.run.front
        return front, self.run.deep

    def near(self, *, across: Fraction, into: Fraction) -> Fraction:
        """The near flank, from the near face of the entering part. [mm]

        The taper is taken off the tail towards the front, so the flank never leaves the face;
        a tip set in from the face by more than that keeps its full set-in in front.
        """
        front, back = self.ends
        least = max(NONE, self.set_in - self.taper * (back - front))
        return least + self.taper * (back - across) + self.slope * (self.entry - into)

    def far(self, into: Fraction) -> Fraction:
        """The far flank, which is straight. [mm]"""
        return self.thick - self.set_in - self.slope * (self.entry - into)

    def width(self, *, across: Fraction, into: Fraction) -> Fraction:
        """From flank to flank. [mm]"""
        return self.far(into) - self.near(across=across, into=into)

    def tip(self, across: Fraction) -> Fraction:
        """Thickness of the tail at its tip. [mm]"""
        return self.width(across=across, into=self.entry)

    def neck(self, across: Fraction) -> Fraction:
        """Thickness of the tail at its shoulders, and width of the mouth. [mm]"""
        return self.width(across=across, into=NONE)

    def floor(self, across: Fraction) -> Fraction:
        """Width of the socket at its floor. [mm]"""
        return self.width(across=across, into=self.depth)


def tail_cuts(j: Joined, tail: Tail, *, sizes: Sizes) -> Mapping[str, tuple[Cut, ...]]:
    """Socket, flanks and notch by part."""
    a, b = j.seat("receives"), j.seat("enters")
    socket = a.cut(
        sizes,
        name="socket",
        owner=j.name,
        shape=_socket(tail),
        shares=shared_with(j),
        sized={
            "across start": j.own("stop"),
            **(_points("point 2 into", j.own("depth")) if a.into == ZERO else {}),
            **(_points("point 3 into", j.own("depth")) if a.into == ZERO else {}),
        },
    )
    entry = _points("point 1 along", j.own("entry")) | _points("point 2 along", j.own("entry"))
    words = entry if b.along == ZERO else {}
    flanks = [
        b.cut(sizes, name=f"{side} flank", owner=j.name, shape=shape, sized=words)
        for side, shape in (("near", _near_flank(tail)), ("far", _far_flank(tail)))
    ]
    if tail.run.notch is not None:
        shape = Box(along=Span(None, tail.entry), across=Span(None, tail.run.notch))
        sized = {"across size": j.own("notch")}
        if b.along == ZERO:
            sized |= {"along size": j.own("entry")}
        flanks.append(b.cut(sizes, name="notch", owner=j.name, shape=shape, sized=sized))
    return {a.part: (socket,), b.part: tuple(flanks)}


def _points(word: str, dimension: str) -> dict[str, str]:
    return {word: dimension, f"first {word}": dimension, f"last {word}": dimension}


def _socket(tail: Tail) -> Shape:
    front, _ = tail.ends

    def at(across: Fraction) -> tuple[Flat, ...]:
        deep = tail.depth
        return (
            (tail.near(across=across, into=NONE), NONE),
            (tail.far(NONE), NONE),
            (tail.far(deep), deep),
            (tail.near(across=across, into=deep), deep),
        )

    mouth = frozenset({0})
    if not tail.taper:
        span = Span(tail.run.front, None)
        return Profile(axis=ACROSS, points=at(front), open_sides=mouth, span=span)
    return Taper(
        axis=ACROSS,
        first=at(front),
        last=at(tail.run.far),
        start=front,
        stop=tail.run.far,
        open_sides=mouth,
        open_start=tail.run.front is None,
        open_stop=True,
    )


def _near_flank(tail: Tail) -> Shape:
    """What is cut from the near side of the end: in along and into of the entering part."""
    face = frozenset({0})
    if not tail.taper:
        points = _beside(tail, tail.near(across=NONE, into=tail.entry))
        sides = face if len(points) == 3 else face | {3}
        return Profile(axis=ACROSS, points=points, open_sides=sides)
    ends = NONE, tail.run.deep
    first, last = (_wedge(tail, tail.near(across=across, into=tail.entry)) for across in ends)
    return Taper(
        axis=ACROSS,
        first=first,
        last=last,
        start=ends[0],
        stop=ends[1],
        open_sides=face,
        open_start=True,
        open_stop=True,
    )


def _beside(tail: Tail, tip: Fraction) -> tuple[Flat, ...]:
    if tip == 0:
        return _wedge(tail, tip)
    deep, end = tail.entry, tail.missing
    return (
        (end, NONE),
        (deep, NONE),
        (deep, tip + tail.slope * deep),
        (end, tip + tail.slope * end),
    )


def _wedge(tail: Tail, tip: Fraction) -> tuple[Flat, ...]:
    """Drawn on to where the flank meets the face, beyond the tip: one shape at every width."""
    deep = tail.entry
    return ((-tip / tail.slope, NONE), (deep, NONE), (deep, tip + tail.slope * deep))


def _far_flank(tail: Tail) -> Shape:
    points = _beside(tail, tail.set_in)
    turned = tuple((x, tail.thick - z) for x, z in points)
    sides = frozenset({0}) if len(points) == 3 else frozenset({0, 3})
    return Profile(axis=ACROSS, points=turned, open_sides=sides)


def tail_patches(j: Joined, tail: Tail, *, sizes: Sizes) -> tuple[Patch, ...]:
    """Flanks, the shoulders beside them, and the one in front of a stop."""
    low, high = tail.run.touching
    start = max(NONE, tail.ends[0])
    fit = Fit.PRESS if tail.taper else Fit.SLIDE

    def flank(zone: str, top: tuple[Fraction, Fraction], tip: tuple[Fraction, Fraction]) -> Patch:
        points: tuple[Point, ...] = (
            (top[0], low, NONE),
            (top[1], high, NONE),
            (tip[1], high, tail.entry),
            (tip[0], low, tail.entry),
        )
        return Patch(zone=zone, glue=Glue.END_GRAIN, points=points, fit=fit)

    def shoulder(zone: str, face: Fraction, neck: tuple[Fraction, Fraction]) -> Patch:
        points = (
            (face, start, NONE),
            (face, high, NONE),
            (neck[1], high, NONE),
            (neck[0], start, NONE),
        )
        return Patch(zone=zone, glue=Glue.END_GRAIN, points=points, fit=Fit.TOUCH)

    def near(at: tuple[Fraction, Fraction], into: Fraction) -> tuple[Fraction, Fraction]:
        return tail.near(across=at[0], into=into), tail.near(across=at[1], into=into)

    ends = (low, high)
    mouth, tip = tail.far(NONE), tail.far(tail.entry)
    return (
        flank("near flank", near(ends, NONE), near(ends, tail.entry)),
        flank("far flank", (mouth, mouth), (tip, tip)),
        shoulder("near shoulder", NONE, near((start, high), NONE)),
        shoulder("far shoulder", tail.thick, (mouth, mouth)),
        *stop_patches(j, tail.run, sizes=sizes),
    )
