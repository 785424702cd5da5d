"""How a part comes onto the paper: three views, at one scale, in first or third angle.

The length runs upwards from the reference end. The first view looks at the face side; the face
edge and the reference end stand beside it where the projection puts them.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from scantling.papers._drawing.broken import Run
from scantling.papers._drawing.line_types import Angle, Spot
from scantling.parts import ACROSS, ALONG, INTO, Bore, Part
from scantling.parts.cut import EVEN
from scantling.parts.solid import finished
from scantling.solids.kernel import Placed
from scantling.solids.pattern import Turn
from scantling.solids.store import Store
from scantling.solids.views import Line, View, lines

Vec = tuple[float, float, float]
Box3 = tuple[Vec, Vec]  # lowest and highest corner [mm]


class Eye(StrEnum):
    """Which surface a view looks at."""

    FACE = "face side"
    EDGE = "face edge"
    END = "reference end"


@dataclass(frozen=True, kw_only=True)
class Plan:
    """A part, its run along the paper, and where its three views stand."""

    part: Part
    run: Run
    angle: Angle
    gap: float  # between the views of the face and of the edge [mm]
    below: float  # between the views of the face and of the end [mm]

    @property
    def side(self) -> int:
        """+1: the wood lies to the right of the face edge; -1: to the left, as in a mirror."""
        return side_of(self.part)

    @property
    def size(self) -> tuple[float, float, float]:
        """Length, width and thickness on paper. [mm]"""
        extent, scale = self.part.extent, self.run.scale
        return (
            self.run(float(extent.length)),
            float(extent.width) / scale,
            float(extent.thickness) / scale,
        )

    @property
    def edge_is_right(self) -> bool:
        """Whether the view of the edge stands at the right of the first."""
        return (self.side < 0) == (self.angle is Angle.THIRD)

    @property
    def end_is_above(self) -> bool:
        """Whether the view of the end stands above the first."""
        return self.angle is Angle.FIRST

    @property
    def edge_at(self) -> float:
        """Left of the view of the edge; the first view starts at 0. [mm]"""
        _, wide, thick = self.size
        return wide + self.gap if self.edge_is_right else -self.gap - thick

    @property
    def end_at(self) -> float:
        """Foot of the view of the end. [mm]"""
        long, _, thick = self.size
        return long + self.below if self.end_is_above else -self.below - thick

    def place(self, axis: int, *, value: float) -> float:
        """Where a distance from a reference surface stands in its view, from the left or foot.

        Lengths and widths stand in the first view, thicknesses in that of the edge. [mm]
        """
        if axis == ALONG:
            return self.run(value)
        from_left = (self.side > 0) == (axis == ACROSS)
        short = value / self.run.scale
        return short if from_left else self.size[axis] - short

    def spot(self, eye: Eye, point: Vec) -> Spot:
        """Where a point of the part stands on paper. [mm]"""
        along, across, into = point
        if eye is Eye.FACE:
            return self.place(ACROSS, value=across), self.place(ALONG, value=along)
        if eye is Eye.EDGE:
            return self.edge_at + self.place(INTO, value=into), self.place(ALONG, value=along)
        return self.place(ACROSS, value=across), self.end_at + self.size[
            INTO
        ] - into / self.run.scale

    def back(self, eye: Eye, spot: Spot) -> Vec:
        """A point of a view's own sheet as one of the part; what is not seen is 0. [mm]"""
        right, up = spot
        if eye is Eye.FACE:
            return up, self.side * right, 0.0
        if eye is Eye.EDGE:
            return up, 0.0, -self.side * right
        return 0.0, self.side * right, -up


def side_of(part: Part) -> int:
    """+1: seen at the face side with its length upwards, the face edge is at the left."""
    return -1 if part.placement.is_mirrored else 1


def seen(part: Part, eye: Eye, *, store: Store) -> tuple[Line, ...]:
    """What one view shows, at full size. [mm]"""
    side = side_of(part)
    eyes = {
        Eye.FACE: View(eye=(0.0, 0.0, -1.0), up=(1.0, 0.0, 0.0)),
        Eye.EDGE: View(eye=(0.0, float(-side), 0.0), up=(1.0, 0.0, 0.0)),
        Eye.END: View(eye=(-1.0, 0.0, 0.0), up=(0.0, 0.0, -1.0)),
    }
    # in its own coordinates, but with the width turned round for one of a mirrored pair
    stood = Placed(name=part.name, solid=finished(part, store=store), turn=Turn(signs=(1, side, 1)))
    key = ("part view", part.outline, side, eye)
    return store.kept(key, lambda: lines([stood], view=eyes[eye], store=store))


def holes(part: Part) -> tuple[tuple[int, Box3], ...]:
    """Round holes: the axis of each and the box it fills within the part. [mm]"""
    extent = part.extent
    found: dict[tuple[int, Box3], None] = {}
    for cut in part.cuts:
        if not isinstance(cut.shape, Bore):
            continue
        corners = [tuple(map(float, p)) for p in cut.corners(extent=extent, over=EVEN)]
        low, high = (
            tuple(pick(values) for values in zip(*corners, strict=True)) for pick in (min, max)
        )
        found[cut.shape.axis, ((low[0], low[1], low[2]), (high[0], high[1], high[2]))] = None
    return tuple(found)
