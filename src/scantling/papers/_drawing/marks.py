"""Marks of the bench: face mark, edge mark and grain arrow, set where nothing else is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from scantling.papers._drawing.line_types import Kind, Spot, Stroke
from scantling.papers._drawing.projection import Eye, Plan

Floats = NDArray[np.float64]
Box = tuple[float, float, float, float]  # left, low, right, high [mm]

# A loop whose tail runs to the face edge at the left, drawn with one stroke of the pencil; in
# units of its height, the foot of the tail at the origin. Common practice.
_LOOP = (
    (0.0, 0.0), (0.16, 0.02), (0.3, 0.12), (0.4, 0.3), (0.46, 0.52), (0.53, 0.76), (0.64, 0.94),
    (0.78, 1.0), (0.88, 0.92), (0.88, 0.76), (0.76, 0.62), (0.58, 0.52), (0.34, 0.42),
)  # fmt: skip
FACE_TALL = 6.0  # [mm]
EDGE_TALL = 3.2  # [mm]
LEAST_TICK = 1.6  # [mm] that the edge mark opens, on the thinnest part
ARROWS = (16.0, 9.0)  # [mm] lengths of the grain arrow that are tried
BARB = 1.8  # [mm]
BESIDE = 6.0  # [mm] from a view to an arrow that found no room on it
CLEAR = 0.8  # [mm] between a mark and any line
HAIR = 0.05  # [mm]
STEPS = 41  # places tried along a view
ACROSS_STEPS = 9  # and across it
LEVEL = 1e-12  # [mm] a piece shorter than that along an axis is square to it


def bench_marks(plan: Plan, strokes: Sequence[Stroke]) -> Iterator[Stroke]:
    """Face mark and edge mark side by side, and the grain arrow, where there is room for them."""
    long, wide, thick = plan.size
    faced = plan.side > 0
    ends = segments(strokes)
    edge, side = plan.spot(Eye.FACE, (0.0, 0.0, 0.0))[0], plan.spot(Eye.EDGE, (0.0, 0.0, 0.0))[0]
    tall = min(FACE_TALL, wide / 0.95)
    opens = min(max(thick - 2 * CLEAR, LEAST_TICK), EDGE_TALL)
    boxes = (
        _ordered(edge, edge + _sided(faced, 0.9 * tall), -CLEAR, tall + CLEAR),
        _ordered(side, side - _sided(faced, opens), -EDGE_TALL / 2, EDGE_TALL / 2),
    )
    at = _free_height(ends, between=(CLEAR, long - tall - CLEAR), boxes=boxes)
    found = [
        face_mark((edge, at), to_right=faced, tall=tall),
        edge_mark((side, at), to_right=not faced, wide=opens),
    ]
    yield from found
    yield from grain_arrow(*_grain_place(plan, np.concatenate([ends, segments(found)])))


def _sided(positive: bool, size: float) -> float:  # noqa: FBT001 - a sign
    return size if positive else -size


def _ordered(one: float, other: float, low: float, high: float) -> Box:
    """A box between two lines, a hair inside of them, as one of them is the outline."""
    left, right = sorted((one, other))
    return left + HAIR, low, right - HAIR, high


def _grain_place(plan: Plan, ends: Floats) -> tuple[Spot, float]:
    """Middle and length of the grain arrow: on the face side, or else beside the end. [mm]"""
    long, wide, _ = plan.size
    for length in ARROWS:
        spot = _free_spot(ends, within=(0.0, 0.0, wide, long), size=(BARB, length))
        if spot is not None:
            return spot, length
    # nothing stands beside the end on the side where lengths are written
    x = -BESIDE if plan.edge_is_right else wide + BESIDE
    y = plan.end_at + plan.size[2] / 2
    return (x, y), ARROWS[-1]


def face_mark(foot: Spot, *, to_right: bool, tall: float = FACE_TALL) -> Stroke:
    """The loop on the face side, its tail's foot on the face edge.

    Args:
        foot: Where the tail ends. [mm]
        to_right: Whether the wood lies to the right of the face edge.
        tall: Its height. [mm]
    """
    side = 1.0 if to_right else -1.0
    points = tuple((foot[0] + side * tall * x, foot[1] + tall * y) for x, y in _LOOP)
    return Stroke(kind=Kind.MARK, points=points)


def edge_mark(tip: Spot, *, to_right: bool, wide: float) -> Stroke:
    """The tick on the face edge, its tip at the face side, where the loop's tail ends.

    Args:
        tip: On the face side. [mm]
        to_right: Whether the wood lies to the right of the face side.
        wide: How far the tick opens into the wood. [mm]
    """
    x, y = tip
    far = x + (wide if to_right else -wide)
    half = EDGE_TALL / 2
    return Stroke(kind=Kind.MARK, points=((far, y + half), (x, y), (far, y - half)))


def grain_arrow(middle: Spot, length: float) -> Iterator[Stroke]:
    """A line along the grain, so long, with half a barb at either end. [mm]"""
    x, y = middle
    half = length / 2
    yield Stroke(kind=Kind.MARK, points=((x, y - half), (x, y + half)))
    yield Stroke(kind=Kind.MARK, points=((x, y + half), (x - BARB / 2, y + half - BARB)))
    yield Stroke(kind=Kind.MARK, points=((x, y - half), (x + BARB / 2, y - half + BARB)))


def _free_height(ends: Floats, *, between: tuple[float, float], boxes: Sequence[Box]) -> float:
    """Where boxes stand as clear as can be, nearest to the middle."""
    low, high = between
    places = _outward(low, max(low, high), count=STEPS)
    lifted = np.array([[(a, b + at, c, d + at) for a, b, c, d in boxes] for at in places])
    counts = touches(ends, lifted.reshape(-1, 4)).reshape(len(places), -1).sum(axis=1)
    return places[int(np.argmin(counts))]


def _free_spot(ends: Floats, *, within: Box, size: Spot) -> Spot | None:
    """The middle of a box of that size in which nothing is drawn, nearest to the middle."""
    left, low, right, high = within
    wide, tall = size[0] + 2 * CLEAR, size[1] + 2 * CLEAR
    if right - left < wide or high - low < tall:
        return None
    spots = [
        (x, y)
        for y in _outward(low + tall / 2, high - tall / 2, count=STEPS)
        for x in _outward(left + wide / 2, right - wide / 2, count=ACROSS_STEPS)
    ]
    half = np.array([wide, tall]) / 2
    boxes = np.concatenate([np.array(spots) - half, np.array(spots) + half], axis=1)
    free = np.flatnonzero(touches(ends, boxes) == 0)
    return spots[int(free[0])] if len(free) else None


def _outward(low: float, high: float, *, count: int) -> list[float]:
    middle = (low + high) / 2
    places = np.round(np.linspace(low, high, count), 6).tolist()
    return sorted(places, key=lambda at: (round(abs(at - middle), 6), at))


def segments(strokes: Iterable[Stroke]) -> Floats:
    """Every straight piece, n by 2 by 2. [mm]"""
    found = [pair for stroke in strokes for pair in pairwise(stroke.points)]
    return np.array(found, dtype=np.float64).reshape(-1, 2, 2)


def touches(ends: Floats, boxes: Floats) -> NDArray[np.int64]:
    """How many straight pieces run through each box.

    Clipped against the four sides in turn (Liang and Barsky, "A new concept and method for line
    clipping", ACM Transactions on Graphics 3, 1984).

    Args:
        ends: n by 2 by 2. [mm]
        boxes: m by 4: left, low, right, high. [mm]
    """
    start, run = ends[None, :, 0], ends[None, :, 1] - ends[None, :, 0]
    first, last = np.zeros((len(boxes), len(ends))), np.ones((len(boxes), len(ends)))
    for axis in (0, 1):
        pace, at = run[..., axis], start[..., axis]
        level = np.abs(pace) < LEVEL
        near, far = (
            (boxes[:, None, side] - at) / np.where(level, 1.0, pace) for side in (axis, axis + 2)
        )
        outside = (at < boxes[:, None, axis]) | (at > boxes[:, None, axis + 2])
        enters = np.where(level, np.where(outside, 2.0, 0.0), np.minimum(near, far))
        first = np.maximum(first, enters)
        last = np.minimum(last, np.where(level, 1.0, np.maximum(near, far)))
    found: NDArray[np.int64] = (first <= last).sum(axis=1)
    return found
