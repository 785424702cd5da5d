"""Which solids of a piece claim the same room, and how much of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scantling.solids.kernel import NOISE, Placed, shared
from scantling.solids.pattern import turned_bounds
from scantling.solids.store import Store

SLACK = 1e-6  # [mm] the coarse search errs on the side of looking twice


@dataclass(frozen=True, kw_only=True)
class Overlap:
    """Two solids in the same place."""

    between: tuple[str, str]
    volume: float  # [mm3]
    depth: float  # [mm] volume over half the surface of what is shared


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
        volume, depth = store.kept(
            ("shared", one.solid, other.solid, turn),
            lambda a=one.solid, b=other.solid, t=turn: shared(a, b, turn=t),  # type: ignore[misc] # mypy can't infer defaults of a lambda
        )
        if volume > least:
            found.append(Overlap(between=(one.name, other.name), volume=volume, depth=depth))
    return found


def near_pairs(placed: Sequence[Placed]) -> list[tuple[Placed, Placed]]:
    """Pairs whose blocks have more than a surface in common, in the order of `placed`."""
    boxes = [turned_bounds(p.solid.extent, p.turn) for p in placed]
    low, high = (
        np.array([[x.numerator / x.denominator for x in end] for end in ends]).reshape(-1, 3)
        for ends in ([box.low for box in boxes], [box.high for box in boxes])
    )
    into = np.full((len(boxes), len(boxes)), np.inf)  # how far one reaches into the other [mm]
    for axis in range(3):
        into = np.minimum(into, high[:, None, axis] - low[None, :, axis])
    into = np.triu(np.minimum(into, into.T), k=1)
    # floating point decides what is clear; what is close is told exactly
    clear = into > SLACK
    close = np.triu((into >= -SLACK) & ~clear, k=1)
    for i, k in np.argwhere(close).tolist():
        clear[i, k] = boxes[i].meets(boxes[k])
    return [(placed[i], placed[k]) for i, k in np.argwhere(clear).tolist()]
