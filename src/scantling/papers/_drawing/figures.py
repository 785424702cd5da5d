"""Which distances a drawing of a part gives: where each cut starts and ends, from the references.

Everything counts from the reference end, the face edge and the face side, the three surfaces a
maker trues first. What is knifed from its mate gets no figure of its own, or one in brackets
where it helps to know about where it comes (auxiliary dimension, ISO 129-1:2018, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.parts import Bore, Box, Cut, Drawn, Part, drawn
from scantling.setting_out import SetJoint, SettingOut

TRANSFER = "transfer"  # the operation that takes lines from a mate
SAME = Fraction(1, 100)  # [mm] distances nearer than this are one


@dataclass(frozen=True, kw_only=True)
class Distance:
    """How far from the reference surface of an axis something is. [mm]"""

    axis: int
    value: Fraction
    is_from_mate: bool = False


def distances(part: Part, *, setting_out: SettingOut) -> tuple[Distance, ...]:
    """All distances a drawing gives, each once, by axis and size; ends of the part left out."""
    knifed = from_mates(part, setting_out=setting_out)
    found: dict[tuple[int, Fraction], Distance] = {}
    for cut in part.cuts:
        for each in _of_cut(cut, part, is_knifed=cut.owner in knifed):
            if not SAME < each.value < part.extent[each.axis] - SAME:
                continue
            key = (each.axis, round(each.value / SAME) * SAME)
            # a figure that is set out somewhere needs no brackets
            if key not in found or found[key].is_from_mate:
                found[key] = each
    return tuple(sorted(found.values(), key=lambda each: (each.axis, each.value)))


def from_mates(part: Part, *, setting_out: SettingOut) -> frozenset[str]:
    """Joints whose lines on this part are taken from the mate."""
    return frozenset(
        joint.name
        for joint in joints_of(part, setting_out=setting_out)
        if any(op.name == TRANSFER and part.name in op.parts for op in joint.work)
    )


def joints_of(part: Part, *, setting_out: SettingOut) -> tuple[SetJoint, ...]:
    """Joints that the part takes part in."""
    return tuple(j for j in setting_out.joints if part.name in j.joined.parts)


def _of_cut(cut: Cut, part: Part, *, is_knifed: bool) -> Iterator[Distance]:
    read = drawn(cut)
    if is_knifed and not isinstance(cut.shape, Box | Bore):
        # sockets and pins: their sloping walls are knifed, their depth is gauged
        rows = [row for row in _spans(read) if row[0] == read.sweep]
    else:
        rows = [*_spans(read), *points(read)]
    for axis, value, is_start in rows:
        local = cut.corner.surface(axis)
        counted = value if local.is_reference else part.extent[axis] - value
        yield Distance(axis=axis, value=counted, is_from_mate=is_knifed and not is_start)


def _spans(read: Drawn) -> Iterator[tuple[int, Fraction, bool]]:
    """Both ends of each stretch, from the cut's own corner: axis, distance, whether the first."""
    sizes = {m.axis: m.value for m in read.measures if m.word.endswith(" size")}
    starts = {m.axis: m.value for m in read.measures if m.word.endswith(" start")}
    for axis, start in starts.items():
        yield axis, start, True
    for axis, size in sizes.items():
        yield axis, starts.get(axis, Fraction(0)) + size, False


def points(read: Drawn) -> Iterator[tuple[int, Fraction, bool]]:
    """Centres of holes; of profiles what shows in a surface, and what a gauge is set to."""
    shown = {i for side in read.open_sides for i in (side, side + 1)}
    corners = {m.word.split()[-2] for m in read.measures if "point " in m.word}
    for measure in read.measures:
        if measure.word.startswith("centre "):
            yield measure.axis, measure.value, True
        elif "point " in measure.word:
            number = int(measure.word.split()[-2]) % len(corners)
            if measure.dimension is not None or number in {i % len(corners) for i in shown}:
                yield measure.axis, measure.value, False
