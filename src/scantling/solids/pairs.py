"""Which solids of a piece claim the same room, and how much of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scantling.exact import Fraction
from scantling.solids._boxes import turned_box
from scantling.solids._nook import Nook, nook
from scantling.solids.kernel import NOISE, Placed, Solid, depth_filled, room_filled
from scantling.solids.pattern import Turn
from scantling.solids.store import Store

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

WIDE = 0  # axis along which pieces stand side by side, if they do
SLACK = 1e-6  # [mm] the coarse search errs on the side of looking twice


@dataclass(frozen=True, kw_only=True)
class Overlap:
    """Two solids in the same place."""

    between: tuple[str, str]
    volume: float  # [mm3]
    room: Nook  # where they do

    @property
    def depth(self) -> float:
        """Volume over half the surface of what is shared. [mm]"""
        return depth_filled(self.room)


def overlaps(placed: Sequence[Placed], *, store: Store, least: float = NOISE) -> list[Overlap]:
    """Pairs that share more volume than exact contact leaves in floating point.

    Args:
        placed: Solids where they stand, each under its own name.
        store: Remembers each pair by its solids and how they stand to each other.
        least: Volume below which two solids only touch. [mm3]

    Returns:
        In the order of `placed`.
    """
    found = []
    for one, other in near_pairs(placed):
        turn = other.turn.seen_from(one.turn)
        room, volume = store.kept(
            ("shared", one.solid, other.solid, turn),
            lambda a=one.solid, b=other.solid, t=turn: _shared(a, b, turn=t, store=store),  # type: ignore[misc] # mypy can't infer defaults of a lambda
        )
        if room is not None and volume > least:
            found.append(Overlap(between=(one.name, other.name), volume=volume, room=room))
    return found


def _shared(one: Solid, other: Solid, *, turn: Turn, store: Store) -> tuple[Nook | None, float]:
    # solids may be new and yet meet in the same way: a longer board round the same screw
    room = nook(one.wood, other.wood, turn=turn, least=NOISE)
    if room is None:
        return None, 0.0
    return room, store.kept(("filled", room), lambda: room_filled(room))


def near_pairs(placed: Sequence[Placed]) -> list[tuple[Placed, Placed]]:
    """Pairs whose blocks have more than a surface in common, in the order of `placed`."""
    boxes = np.array([turned_box(p.solid.wood.block.box, p.turn) for p in placed]).reshape(-1, 6)
    low, high = boxes[:, :3], boxes[:, 3:]
    one, other = _side_by_side(low[:, WIDE], high[:, WIDE])
    # along each axis, how far one reaches into the other [mm]
    reach = np.minimum(high[one] - low[other], high[other] - low[one])
    near = reach.min(axis=1) >= -SLACK
    one, other, reach = one[near], other[near], reach[near]
    order = np.lexsort((other, one))
    found = []
    for i, k, axes in zip(one[order], other[order], reach[order] <= SLACK, strict=True):
        first, second = placed[i], placed[k]
        # floating point decides what is clear; what is close is told exactly
        if not axes.any() or all(
            _meet(first, second, axis) for axis, close in enumerate(axes) if close
        ):
            found.append((first, second))
    return found


def _side_by_side(low: Floats, high: Floats) -> tuple[Ints, Ints]:
    """Numbers of those whose spans along one axis meet or nearly do, the lower number first."""
    order = np.argsort(low, kind="stable")
    place = np.arange(len(order))
    stop = np.searchsorted(low[order], high[order] + SLACK, side="right")
    count = np.maximum(stop - place - 1, 0)
    before = np.repeat(place, count)
    after = before + 1 + np.arange(count.sum()) - np.repeat(np.cumsum(count) - count, count)
    one, other = order[before], order[after]
    return np.minimum(one, other), np.maximum(one, other)


def _meet(one: Placed, other: Placed, axis: int) -> bool:
    (a, b), (c, d) = _span(one, axis), _span(other, axis)
    return a < d and c < b


def _span(placed: Placed, axis: int) -> tuple[Fraction, Fraction]:
    """Where the block of a solid starts and stops along an axis of the room. [mm]"""
    turn, extent = placed.turn, placed.solid.wood.extent
    own = turn.axes.index(axis)
    at, low, high = turn.at[axis], extent.low[own], extent.high[own]
    return (at + low, at + high) if turn.signs[own] > 0 else (at - high, at - low)
