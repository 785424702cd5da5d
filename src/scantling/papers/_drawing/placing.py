"""Where figures go: one chain of them outside the outline, like the marks of a story stick.

All distances run from one reference surface (running dimensioning, ISO 129-1), so a chain needs
one line, whatever the number of its marks. Figures that would touch are moved apart along the
chain and led back to their marks by a bent line; none ever crosses another, as they keep their
order.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from scantling.papers._drawing.line_types import (
    LINE_TALL,
    Anchor,
    Kind,
    Spot,
    Stroke,
    Text,
)

OFF = 8.0  # [mm] from the outline to the chain; common practice
CLEAR = 1.0  # [mm] between the outline and a line led off it
PAST = 1.0  # [mm] that a line led off runs past the chain
BENT = 3.0  # [mm] room for lines to bend to their figures
FREE = 0.6  # [mm] between a line and its figure
APART = 3.8  # [mm] from the middle of one figure to that of the next, at the least
TICK = 1.1  # [mm] half a mark on the chain
ORIGIN = 0.8  # [mm] radius of the ring where the chain starts
RING = ((1, 0), (0.7, 0.7), (0, 1), (-0.7, 0.7), (-1, 0), (-0.7, -0.7), (0, -1), (0.7, -0.7))


@dataclass(frozen=True, kw_only=True)
class Mark:
    """One mark of a chain."""

    at: float  # along the chain, on paper [mm]
    says: str
    bold: bool = False


@dataclass(frozen=True, kw_only=True)
class Chain:
    """Marks along one side of a view, from its reference surface on."""

    start: float  # of the reference surface, along the chain [mm]
    marks: tuple[Mark, ...]
    places: tuple[float, ...]  # of the figures, along the chain [mm]

    @property
    def span(self) -> tuple[float, float]:
        """What the chain takes up along itself, figures counted. [mm]"""
        ends = [self.start, *(m.at for m in self.marks)]
        figures = [p + side * LINE_TALL / 2 for p in self.places for side in (-1, 1)]
        return min(ends + figures), max(ends + figures)

    def moved(self, by: float) -> Chain:
        """The same chain further along. [mm]"""
        return Chain(
            start=self.start + by,
            marks=tuple(replace(mark, at=mark.at + by) for mark in self.marks),
            places=tuple(place + by for place in self.places),
        )


def chain(marks: Sequence[Mark], *, start: float) -> Chain:
    """Marks in their order, with figures that do not touch.

    Args:
        marks: In any order.
        start: Where the reference surface is, along the chain. [mm]
    """
    ordered = tuple(sorted(marks, key=lambda mark: mark.at))
    return Chain(start=start, marks=ordered, places=tuple(spread([m.at for m in ordered])))


def spread(wanted: Sequence[float], *, apart: float = APART) -> list[float]:
    """Places as near as can be to those wanted, and never nearer to each other than `apart`.

    The sum of the squares of what they are moved is the least (pooling of neighbours that
    violate the order, the regression of an ordered row).

    Args:
        wanted: In rising order. [mm]
        apart: The least distance. [mm]
    """
    blocks: list[tuple[float, int]] = []  # mean of place less what stands before it; count
    for i, place in enumerate(wanted):
        blocks.append((place - i * apart, 1))
        while len(blocks) > 1 and blocks[-2][0] > blocks[-1][0]:
            (low, n), (high, m) = blocks[-2:]
            blocks[-2:] = [((low * n + high * m) / (n + m), n + m)]
    shifts = [mean for mean, count in blocks for _ in range(count)]
    return [shift + i * apart for i, shift in enumerate(shifts)]


@dataclass(frozen=True, kw_only=True)
class Side:
    """Which side of a view a chain stands on."""

    upright: bool  # runs upwards, its figures beside it
    out: int  # +1: to the right of it or above it
    edge: float  # of the view, across the chain [mm]

    def spot(self, *, along: float, off: float) -> Spot:
        """A point so far along the chain and so far out from the view. [mm]"""
        across = self.edge + self.out * off
        return (across, along) if self.upright else (along, across)


def drawn_chain(found: Chain, side: Side) -> tuple[list[Stroke], list[Text]]:
    """A chain as strokes and texts."""
    if not found.marks:
        return [], []
    ends = [found.start, *(m.at for m in found.marks)]
    strokes = [
        _led(side, (min(ends), OFF), (max(ends), OFF)),
        _led(side, (found.start, CLEAR), (found.start, OFF + PAST)),
        _ring(side.spot(along=found.start, off=OFF)),
    ]
    texts = []
    for mark, place in zip(found.marks, found.places, strict=True):
        bend = [(mark.at, CLEAR), (mark.at, OFF + PAST), (place, OFF + PAST + BENT)]
        strokes += [
            _led(side, *bend),
            _tick(side.spot(along=mark.at, off=OFF)),
        ]
        texts.append(
            Text(
                says=mark.says,
                at=side.spot(along=place, off=OFF + PAST + BENT + FREE),
                anchor=Anchor.START if side.out > 0 else Anchor.END,
                turned=not side.upright,
                bold=mark.bold,
            )
        )
    return strokes, texts


def _led(side: Side, *places: tuple[float, float]) -> Stroke:
    return _line(*(side.spot(along=along, off=off) for along, off in places))


def _line(*points: Spot) -> Stroke:
    return Stroke(kind=Kind.DIMENSION, points=points)


def _tick(at: Spot) -> Stroke:
    x, y = at
    return _line((x - TICK * 0.7, y - TICK * 0.7), (x + TICK * 0.7, y + TICK * 0.7))


def _ring(at: Spot) -> Stroke:
    x, y = at
    around = [(x + ORIGIN * u, y + ORIGIN * v) for u, v in (*RING, RING[0])]
    return _line(*around)
