"""Line views of solids: what is seen from one side, and what is hidden behind it.

Every edge is cut where an outline crosses it; on each stretch between, visibility cannot change,
so one look at its middle settles it. The look goes to both sides of the stretch: it is seen if on
either side nothing stands nearer to the eye.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from scantling.errors import OutOfRangeError
from scantling.solids._sight import ASIDE, Scene, looked_at, scene
from scantling.solids._strokes import Floats, united
from scantling.solids.kernel import Placed
from scantling.solids.store import Store

Spot = tuple[float, float]


class LineKind(StrEnum):
    """What a line of a view is."""

    OUTLINE = "outline"  # nothing stands behind it on one side
    EDGE = "edge"
    HIDDEN = "hidden"


@dataclass(frozen=True, kw_only=True)
class View:
    """Where the eye is, seen from the piece, far away.

    Raises:
        OutOfRangeError: The eye is nowhere, or straight along `up`.
    """

    eye: tuple[float, float, float]  # to the right, back and up [-]
    up: tuple[float, float, float] = (0.0, 0.0, 1.0)  # points upwards on the sheet [-]

    def __post_init__(self) -> None:
        if np.linalg.norm(np.cross(self.up, self.eye)) < 1e-9 * np.linalg.norm(self.eye) + 1e-300:
            msg = f"an eye at {self.eye} cannot see {self.up} upwards"
            raise OutOfRangeError(msg)

    @property
    def rows(self) -> Floats:
        """Unit vectors to the right and upwards on the sheet, and towards the eye. [-]"""
        eye = np.array(self.eye) / np.linalg.norm(self.eye)
        right = np.cross(self.up, eye)
        right /= np.linalg.norm(right)
        return np.array([right, np.cross(eye, right), eye])


FRONT = View(eye=(0.0, -1.0, 0.0))
LEFT_END = View(eye=(-1.0, 0.0, 0.0))
RIGHT_END = View(eye=(1.0, 0.0, 0.0))
BACK = View(eye=(0.0, 1.0, 0.0))
ABOVE = View(eye=(0.0, 0.0, 1.0), up=(0.0, 1.0, 0.0))
BELOW = View(eye=(0.0, 0.0, -1.0), up=(0.0, -1.0, 0.0))
OBLIQUE = View(eye=(-0.55, -1.0, 0.45))  # from the front, a little to the left and above


@dataclass(frozen=True, kw_only=True)
class Line:
    """One stroke on the sheet, x to the right and y upwards. [mm]"""

    kind: LineKind
    points: tuple[Spot, ...]


def lines(placed: Sequence[Placed], *, view: View, store: Store) -> tuple[Line, ...]:
    """What is seen of solids that do not overlap.

    Round surfaces show their rims and their outline. Two lines in one place are drawn once: as
    the outline rather than as an edge, and seen rather than hidden.

    Args:
        placed: Solids where they stand.
        view: Where the eye is.
        store: Keeps their surfaces.

    Returns:
        By kind, then from left to right. The sheet's origin is that of the piece.
    """
    seen = scene(placed, rows=view.rows, store=store)
    first, last, hidden, outer = _stretches(seen)
    drawn: list[Line] = []
    above: list[NDArray[np.float64]] = []
    for kind, chosen in (
        (LineKind.OUTLINE, outer & ~hidden),
        (LineKind.EDGE, ~outer & ~hidden),
        (LineKind.HIDDEN, hidden),
    ):
        mine = np.stack([first[chosen], last[chosen]], axis=1)
        strokes = united(mine, without=np.concatenate([*above, np.zeros((0, 2, 2))]))
        above.append(strokes)
        drawn.extend(_line(kind, stroke) for stroke in strokes)
    return tuple(drawn)


def _line(kind: LineKind, stroke: Floats) -> Line:
    (a, b), (c, d) = stroke.tolist()
    return Line(kind=kind, points=((a, b), (c, d)))


def _stretches(seen: Scene) -> tuple[Floats, Floats, NDArray[np.bool_], NDArray[np.bool_]]:
    """Both ends of each stretch on the sheet, whether hidden, whether with nothing beside it."""
    first, last, owner = seen.stretches()
    hidden = ~seen.faces_eye[owner]
    outer = np.zeros(len(first), dtype=bool)
    facing = np.flatnonzero(~hidden)
    middle = (first + last)[facing] / 2
    along = (last - first)[facing, :2]
    aside = np.stack([-along[:, 1], along[:, 0]], axis=1)
    aside *= ASIDE / np.linalg.norm(aside, axis=1, keepdims=True)
    behind = np.ones(len(facing), dtype=bool)
    for side in (aside, -aside):
        nearer, covered = looked_at(seen, middle[:, :2] + side, middle[:, 2], owner[facing])
        behind &= nearer
        outer[facing] |= ~covered
    hidden[facing] = behind
    return first[:, :2], last[:, :2], hidden, outer
