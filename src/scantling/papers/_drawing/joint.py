"""A joint enlarged: the wood around it, sawn off and drawn apart along its own move."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.exact import Fraction
from scantling.papers._drawing.line_types import Drawing, Spot, Stroke
from scantling.papers._drawing.piece import PIECE_KINDS, PieceDrawing, scaled
from scantling.parts import Part, Point
from scantling.parts.cut import EVEN
from scantling.parts.solid import near, placed
from scantling.setting_out import SetJoint, SettingOut
from scantling.solids.kernel import Placed
from scantling.solids.pattern import Bounds, bounds
from scantling.solids.views import View, lines

ROOM: Spot = (70.0, 62.0)  # [mm] on paper
AROUND = Fraction(20)  # [mm] of wood left round the cuts
LONGEST = Fraction(110)  # [mm] of a joint that runs on, as much is drawn
APART = Fraction(12)  # [mm] between the parts, drawn apart, beyond what reaches in
ASIDE, ABOVE = 0.62, 0.5  # [-] how far aside and above of the front the eye is


def joint_drawing(joint: SetJoint, *, setting_out: SettingOut, room: Spot = ROOM) -> Drawing | None:
    """The parts of a joint near it, drawn apart; None if nothing is cut for it.

    Args:
        joint: The joint.
        setting_out: What it belongs to.
        room: The most it may take up, wide and tall. [mm]
    """
    names = list(dict.fromkeys(joint.joined.parts))
    known = {part.name: part for part in setting_out.parts}
    parts = [known[name] for name in names if name in known]
    cut = [part for part in parts if any(c.owner == joint.name for c in part.cuts)]
    if not cut:
        return None
    region = _region(cut[0], joint)
    way = joint.moves[0].way if joint.moves else (Fraction(0), Fraction(0), Fraction(0))
    moving = {seat.part for move in joint.moves[:1] for seat in joint.joined.row(move.role)}
    stood = list(_stood(parts, region, moving, _by(way, region), setting_out))
    found = lines(stood, view=_eye(way), store=setting_out.store)
    strokes = tuple(
        Stroke(kind=PIECE_KINDS[line.kind], points=line.points)
        for line in found
        if line.kind in PIECE_KINDS
    )
    said = " and ".join(each.name for each in stood)
    return scaled(PieceDrawing.of(strokes), room=room, alt=f"{joint.title}: {said} drawn apart")


def _region(part: Part, joint: SetJoint) -> Bounds:
    """A box in the piece round what the joint cuts from a part, and some wood round it. [mm]"""
    points = [
        part.placement.to_piece(point)
        for cut in part.cuts
        if cut.owner == joint.name
        for point in cut.corners(extent=part.extent, over=EVEN)
    ]
    found = bounds(points)
    low, high = list(found.low), list(found.high)
    for axis in range(3):
        # of what runs on, the left, the front or the foot is drawn
        high[axis] = min(high[axis], low[axis] + LONGEST) + AROUND
        low[axis] -= AROUND
    return Bounds(low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))


def _by(way: Point, region: Bounds) -> Point:
    """How far the moving part is drawn away. [mm]"""
    sizes = [high - low - AROUND for low, high in zip(region.low, region.high, strict=True)]
    far = max((abs(w) * size for w, size in zip(way, sizes, strict=True)), default=Fraction(0))
    x, y, z = (w * (far + APART) for w in way)
    return x, y, z


def _stood(
    parts: Sequence[Part], region: Bounds, moving: set[str], by: Point, setting_out: SettingOut
) -> Iterator[Placed]:
    for part in parts:
        box = bounds([part.placement.to_part(corner) for corner in (region.low, region.high)])
        found = near(part, low=box.low, high=box.high, store=setting_out.store)
        if found is not None:
            stood = placed(part, found)
            yield stood.moved(by) if part.name in moving else stood


def _eye(way: Point) -> View:
    """An eye that looks into the mouth which the moving part has left."""
    wide, deep, tall = (float(value) for value in way)
    return View(
        eye=(
            ASIDE if wide > 0 else -ASIDE,
            1.0 if deep > 0 else -1.0,
            -ABOVE if tall < 0 else ABOVE,
        )
    )
