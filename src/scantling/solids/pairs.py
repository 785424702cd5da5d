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
    low = np.array([[float(x) for x in box.low] for box in boxes]).reshape(-1, 3)
    high = np.array([[float(x) for x in box.high] for box in boxes]).reshape(-1, 3)
    apart = np.zeros((len(boxes), len(boxes)), dtype=bool)
    for axis in range(3):
        # floating point only rules out what lies clearly apart
        apart |= low[:, None, axis] > high[None, :, axis] + SLACK
    maybe = np.argwhere(np.triu(~(apart | apart.T), k=1))
    return [(placed[i], placed[k]) for i, k in maybe.tolist() if boxes[i].meets(boxes[k])]
