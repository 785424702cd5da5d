"""The part's own frame and how it stands in the piece.

Origin: where reference end, face edge and face side meet. Length runs along the grain from the
reference end, width across from the face edge, thickness into the wood from the face side. A left
and a right part share these references, so one of the two frames is left-handed.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction

Point = tuple[Fraction, Fraction, Fraction]

ALONG, ACROSS, INTO = 0, 1, 2  # axes of a part
WIDE, DEEP, TALL = 0, 1, 2  # axes of the piece: from the left, from the front, from the floor


class Surface(StrEnum):
    """The six faces of a blank; the first of each pair is the reference."""

    REFERENCE_END = "reference end"
    FAR_END = "far end"
    FACE_EDGE = "face edge"
    BACK_EDGE = "back edge"
    FACE_SIDE = "face side"
    BACK_FACE = "back face"

    @property
    def axis(self) -> int:
        """ALONG for ends, ACROSS for edges, INTO for faces."""
        return _PLACE[self] // 2

    @property
    def is_reference(self) -> bool:
        """Whether coordinates start here."""
        return _PLACE[self] % 2 == 0


_PLACE = {found: place for place, found in enumerate(Surface)}  # asked for every corner of a cut


def surface(*, axis: int, far: bool) -> Surface:
    """The surface at the near or far end of an axis."""
    return list(Surface)[2 * axis + int(far)]


@dataclass(frozen=True, kw_only=True)
class Extent:
    """Finished size of a part. [mm]"""

    length: Fraction
    width: Fraction
    thickness: Fraction

    def __getitem__(self, axis: int) -> Fraction:
        return (self.length, self.width, self.thickness)[axis]


@dataclass(frozen=True, kw_only=True)
class Corner:
    """Which end, edge and face local coordinates of a cut are measured from."""

    end: Surface = Surface.REFERENCE_END
    edge: Surface = Surface.FACE_EDGE
    face: Surface = Surface.FACE_SIDE

    def __post_init__(self) -> None:
        for found, axis in ((self.end, ALONG), (self.edge, ACROSS), (self.face, INTO)):
            if found.axis != axis:
                msg = f"{found} is no surface of axis {axis}"
                raise OutOfRangeError(msg)

    def surface(self, axis: int) -> Surface:
        """Surface where the coordinate of that axis is 0."""
        return (self.end, self.edge, self.face)[axis]

    def opposite(self, axis: int) -> Surface:
        """Surface at the other end of that axis."""
        return surface(axis=axis, far=self.surface(axis).is_reference)

    def to_part(self, point: Point, extent: Extent) -> Point:
        """Local coordinates as coordinates of the part's own frame, and back. [mm]"""
        x, y, z = point
        return (
            x if self.end.is_reference else extent.length - x,
            y if self.edge.is_reference else extent.width - y,
            z if self.face.is_reference else extent.thickness - z,
        )


REFERENCE = Corner()  # where the part's own coordinates start


class Way(StrEnum):
    """Directions in the piece, seen from the front."""

    RIGHT = "right"
    LEFT = "left"
    BACK = "back"
    FRONT = "front"
    UP = "up"
    DOWN = "down"

    @property
    def axis(self) -> int:
        """WIDE, DEEP or TALL."""
        return _WAY_PLACE[self] // 2

    @property
    def sign(self) -> int:
        """+1 for right, back and up."""
        return 1 if _WAY_PLACE[self] % 2 == 0 else -1

    @property
    def opposite(self) -> Way:
        """The other way."""
        return list(Way)[_WAY_PLACE[self] ^ 1]


_WAY_PLACE = {found: place for place, found in enumerate(Way)}


@dataclass(frozen=True, kw_only=True)
class Placement:
    """How a part stands in the piece: one of 48 turns, and where its origin is. [mm]

    Wide from the left end, deep from the foremost face towards the back, tall from the floor.
    """

    along: Way
    across: Way
    into: Way
    at: Point

    def __post_init__(self) -> None:
        if {self.along.axis, self.across.axis, self.into.axis} != {WIDE, DEEP, TALL}:
            msg = f"{self.along}, {self.across}, {self.into} are not three different directions"
            raise OutOfRangeError(msg)

    @property
    def ways(self) -> tuple[Way, Way, Way]:
        """Directions of length, width and thickness."""
        return (self.along, self.across, self.into)

    @property
    def is_mirrored(self) -> bool:
        """Whether the frame is left-handed here (face winding turns round)."""
        first, second, _ = (way.axis for way in self.ways)
        even = (second - first) % 3 == 1
        return (self.along.sign * self.across.sign * self.into.sign > 0) != even

    def to_piece(self, point: Point) -> Point:
        """Coordinates of the part as coordinates of the piece. [mm]"""
        moved = list(self.at)
        for axis, way in enumerate(self.ways):
            if way.sign > 0:  # no product: fractions are slow to multiply by 1
                moved[way.axis] += point[axis]
            else:
                moved[way.axis] -= point[axis]
        return (moved[0], moved[1], moved[2])

    def to_part(self, point: Point) -> Point:
        """Coordinates of the piece as coordinates of the part. [mm]"""
        found = [way.sign * (point[way.axis] - self.at[way.axis]) for way in self.ways]
        return (found[0], found[1], found[2])
