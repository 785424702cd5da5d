"""Line views of solids: what is seen from one side, and what is hidden behind it.

Every edge is cut where an outline crosses it; on each stretch between, visibility cannot change,
so one look at its middle settles it. The look goes to both sides of the stretch: it is seen if on
either side nothing stands nearer to the eye.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from scantling.errors import OutOfRangeError
from scantling.solids._sight import (
    ASIDE,
    OnFace,
    Scene,
    looked_at,
    scene,
    standing,
)
from scantling.solids._strokes import Floats, united
from scantling.solids.kernel import Placed
from scantling.solids.store import Store

__all__ = [
    "ABOVE",
    "BACK",
    "BELOW",
    "FRONT",
    "LEFT_END",
    "OBLIQUE",
    "RECEDING",
    "RIGHT_END",
    "Cabinet",
    "Eye",
    "Line",
    "LineKind",
    "OnFace",
    "View",
    "lines",
    "standing",
]

Spot = tuple[float, float]

RECEDING = float(0.5 * np.sqrt(0.5))  # [-] right and up for one of depth: 45 degrees, half size


class LineKind(StrEnum):
    """What a line of a view is."""

    OUTLINE = "outline"  # nothing stands behind it on one side
    EDGE = "edge"
    HIDDEN = "hidden"
    GRAIN = "grain"  # drawn on a surface, where it is seen


class Eye(Protocol):
    """Where one looks from, and how what is seen comes onto the sheet."""

    @property
    def rows(self) -> Floats:
        """Rows that give a point's place to the right and upwards on the sheet, and nearness. [-]

        The third is the direction towards the eye: a step along it changes nothing on the sheet.
        """
        ...


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


@dataclass(frozen=True, kw_only=True)
class Cabinet:
    """Front or back at its true size, depth running off to the right and up at half of its own.

    What lies flat to the front can carry dimension lines, and an end and the top are still seen:
    the cabinet projection of drawing books (ISO 5456-3:1996, 5.2.2, from memory).
    """

    from_behind: bool = False

    @property
    def rows(self) -> Floats:
        """As of an eye to the right, in front and above; from behind it is the other right. [-]"""
        side = -1.0 if self.from_behind else 1.0
        off = side * RECEDING
        return np.array([[side, off, 0.0], [0.0, off, 1.0], [off, -side, RECEDING]])


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


def lines(
    placed: Sequence[Placed], *, view: Eye, store: Store, grain: Sequence[OnFace] = ()
) -> tuple[Line, ...]:
    """What is seen of solids that do not overlap.

    Round surfaces show their rims and their outline. Two lines in one place are drawn once: as
    the outline rather than as an edge, and seen rather than hidden.

    Args:
        placed: Solids where they stand.
        view: Where the eye is.
        store: Keeps their surfaces.
        grain: Strokes on their faces, drawn where they are seen.

    Returns:
        By kind, then from left to right. The sheet's origin is that of the piece.
    """
    seen = scene(placed, rows=view.rows, store=store, on_faces=grain)
    first, last, hidden, outer, drawn_on = _stretches(seen)
    drawn: list[Line] = []
    above: list[NDArray[np.float64]] = []
    for kind, chosen in (
        (LineKind.OUTLINE, outer & ~hidden & ~drawn_on),
        (LineKind.EDGE, ~outer & ~hidden & ~drawn_on),
        (LineKind.HIDDEN, hidden & ~drawn_on),
        (LineKind.GRAIN, ~hidden & drawn_on),
    ):
        mine = np.stack([first[chosen], last[chosen]], axis=1)
        strokes = united(mine, without=np.concatenate([*above, np.zeros((0, 2, 2))]))
        above.append(strokes)
        drawn.extend(_line(kind, stroke) for stroke in strokes)
    return tuple(drawn)


def _line(kind: LineKind, stroke: Floats) -> Line:
    (a, b), (c, d) = stroke.tolist()
    return Line(kind=kind, points=((a, b), (c, d)))


_Flags = NDArray[np.bool_]


def _stretches(seen: Scene) -> tuple[Floats, Floats, _Flags, _Flags, _Flags]:
    """Both ends of each stretch, whether hidden, with nothing beside it, drawn on a face."""
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
    return first[:, :2], last[:, :2], hidden, outer, seen.drawn_on[owner]
