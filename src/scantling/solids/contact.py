"""How much of a plane patch two solids truly share: wood behind it on both sides."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from scantling.errors import OutOfRangeError
from scantling.solids.kernel import Placed, Solid, shared_twice
from scantling.solids.pattern import Point, Turn
from scantling.solids.store import Store

SLAB = 1e-3  # [mm] thickness of what is looked at on each side of the patch
FLAT = 1e-6  # [mm] how far a corner of a patch may lie out of its plane

Floats = NDArray[np.float64]


def patch_area(patch: Sequence[Point]) -> float:
    """Area of a plane convex patch; 0 where its corners lie in one line. [mm2]

    Raises:
        OutOfRangeError: Fewer than three corners, or corners out of one plane.
    """
    _, area = _plane(_floats(patch))
    return area


def contact_area(one: Placed, other: Placed, *, patch: Sequence[Point], store: Store) -> float:
    """Area of the patch with one solid close behind it and the other close before it. [mm2]

    Which of the two lies on which side is found out; the patch need not be turned either way.

    Args:
        one: A solid where it stands.
        other: The solid it is said to touch.
        patch: Corners of a plane convex patch in the room, once round. [mm]
        store: Remembers the answer while neither solid nor their stand to each other changes.

    Raises:
        OutOfRangeError: Fewer than three corners, or corners out of one plane.
    """
    local = tuple(one.turn.back(point) for point in patch)
    turn = other.turn.seen_from(one.turn)
    key = ("contact", one.solid, other.solid, turn, local)
    return store.kept(key, lambda: _touching(one.solid, other.solid, turn=turn, patch=local))


def _touching(one: Solid, other: Solid, *, turn: Turn, patch: Sequence[Point]) -> float:
    points = _floats(patch)
    normal, area = _plane(points)
    best = 0.0
    if area == 0:
        return best
    for side in (normal * SLAB, -normal * SLAB):
        # what the first leaves of its slab, laid over what the second leaves of the slab beyond
        slabs = _slab(points, -side), _slab(points, side)
        volume = shared_twice(one, other, turn=turn, slabs=slabs, shift=side)
        best = max(best, volume / SLAB)
        if best > area / 2:
            break  # the other way round they cannot lie
    return best


def _floats(patch: Sequence[Point]) -> Floats:
    return np.array([[float(x) for x in point] for point in patch], dtype=np.float64)


def _plane(points: Floats) -> tuple[Floats, float]:
    """Unit normal and area. [mm2] Without area there is no normal either: it is nought."""
    if len(points) < 3:
        msg = f"a patch of {len(points)} corners has no area"
        raise OutOfRangeError(msg)
    arms = points[1:] - points[0]
    total = np.cross(arms[:-1], arms[1:]).sum(axis=0)
    length = float(np.linalg.norm(total))
    if length <= FLAT * float(np.linalg.norm(arms, axis=1).max()):
        return np.zeros(3), 0.0
    normal = total / length
    off = float(np.abs(arms @ normal).max())
    if off > FLAT:
        msg = f"a corner of a patch lies {off:g} mm out of its plane"
        raise OutOfRangeError(msg)
    return normal, length / 2


def _slab(points: Floats, step: Floats) -> Floats:
    return np.concatenate([points, points + step])
