"""What is drawn at full size: the wood round a joint, seen from the face it is laid on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.papers._drawing.line_types import Spot
from scantling.parts import Part
from scantling.parts.cut import EVEN
from scantling.parts.solid import near
from scantling.setting_out import SetJoint, SettingOut
from scantling.solids.kernel import Placed
from scantling.solids.pattern import Bounds, Turn, bounds
from scantling.solids.views import BACK, BELOW, FRONT, LineKind, View, lines

AROUND = Fraction(20)  # [mm] of wood left along the grain beside the cuts
DIGITS = 4  # decimals of a coordinate, far below what paper holds [mm]

Lines = tuple[tuple[Spot, Spot], ...]


@dataclass(frozen=True, kw_only=True)
class Face:
    """A face of a part that a template is laid on."""

    name: str
    view: View
    axis: int  # it lies square to, of the part
    far: bool  # whether it is the one away from the reference


# the side with the face mark first, then the edges; above is thickness, into the wood
FACES = (
    Face(name="face side", view=BELOW, axis=2, far=False),
    Face(name="face edge", view=FRONT, axis=1, far=False),
    Face(name="edge across from the face edge", view=BACK, axis=1, far=True),
)


@dataclass(frozen=True, kw_only=True)
class Template:
    """One outline at full size, from its lower left corner, and the parts it is for."""

    joint: str  # title
    face: str
    ends: str  # which end of the part lies where on the paper
    strokes: Lines  # [mm]
    size: Spot  # [mm]
    parts: tuple[str, ...] = ()


def templates(setting_out: SettingOut) -> tuple[Template, ...]:
    """Every template once, with all the parts it serves, in the order of the joints."""
    found: dict[Template, list[str]] = {}
    known = {part.name: part for part in setting_out.parts}
    for joint in setting_out.joints:
        for role, count in joint.joined.joint.full_size.items():
            for part in (known[s.part] for s in joint.joined.row(role) if s.part in known):
                for drawn in _faces(part, joint, setting_out, most=count):
                    found.setdefault(drawn, []).append(part.name)
    return tuple(
        replace(drawn, parts=tuple(dict.fromkeys(parts))) for drawn, parts in found.items()
    )


def _faces(
    part: Part, joint: SetJoint, setting_out: SettingOut, *, most: int
) -> Iterator[Template]:
    """The part near the joint from the first faces that the joint's cuts break."""
    cuts = [cut for cut in part.cuts if cut.owner == joint.name]
    if not cuts:
        return
    reach = bounds([p for cut in cuts for p in cut.corners(extent=part.extent, over=EVEN)])
    region = _region(reach, part)
    solid = near(part, low=region.low, high=region.high, store=setting_out.store)
    if solid is None:
        return
    placed = Placed(name=part.name, solid=solid, turn=Turn())
    broken = [face for face in FACES if _breaks(reach, face, part)]
    for face in broken[:most]:
        seen = [
            line.points
            for line in lines([placed], view=face.view, store=setting_out.store)
            if line.kind in {LineKind.OUTLINE, LineKind.EDGE}
        ]
        strokes, size = _from_corner(seen)
        yield Template(
            joint=joint.title,
            face=face.name,
            ends=_ends(region, part, flipped=face.view is BACK),
            strokes=strokes,
            size=size,
        )


def _region(reach: Bounds, part: Part) -> Bounds:
    """The cuts along the grain and some wood; across it, all of the part. [mm]"""
    extent, zero = part.extent, Fraction(0)
    return Bounds(
        low=(max(reach.low[0] - AROUND, zero), zero, zero),
        high=(min(reach.high[0] + AROUND, extent.length), extent.width, extent.thickness),
    )


def _breaks(reach: Bounds, face: Face, part: Part) -> bool:
    """Whether something is cut out of that face."""
    if face.far:
        return reach.high[face.axis] >= part.extent[face.axis]
    return reach.low[face.axis] <= 0


def _ends(region: Bounds, part: Part, *, flipped: bool) -> str:
    """Which end of the part is on the paper, and at which side."""
    left, right = ("right", "left") if flipped else ("left", "right")
    if region.low[0] == 0:
        return f"reference end at the {left}"
    if region.high[0] == part.extent.length:
        return f"far end at the {right}"
    return f"reference end beyond the {left}"


def _from_corner(strokes: Sequence[Sequence[Spot]]) -> tuple[Lines, Spot]:
    """Strokes moved so that the lowest and leftmost of them lie at zero, and how far they go."""
    spots = [spot for stroke in strokes for spot in stroke]
    left, low = min(x for x, _ in spots), min(y for _, y in spots)

    def moved(spot: Spot) -> Spot:
        return round(spot[0] - left, DIGITS), round(spot[1] - low, DIGITS)

    found = sorted((moved(first), moved(last)) for first, last in strokes)
    wide, tall = (max(spot[i] for stroke in found for spot in stroke) for i in (0, 1))
    return tuple(found), (wide, tall)
