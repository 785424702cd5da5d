"""What a part takes from its mates: where one is laid on to be knifed round, where pilots go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.papers._names import counted, joined, listed
from scantling.papers._paper import Rule
from scantling.parts import ACROSS, Part, Point
from scantling.parts.frame import REFERENCE
from scantling.setting_out import SetJoint, SettingOut

MOST = 6  # distances in a row that are worth reading out


def laid_on(part: Part, joint: SetJoint, *, setting_out: SettingOut, rule: Rule) -> str:
    """Where a mate that is narrower lies across the part: `rail 6 15/16 to 9 7/16 from ...`.

    Empty where its edges are level with the part's own, or it reaches beyond them.
    """
    mates = [name for name in dict.fromkeys(joint.joined.parts) if name != part.name]
    if len(mates) != 1:
        return ""
    mate, width = setting_out.part(mates[0]), part.extent.width
    zero, far = Fraction(0), mate.extent
    ends = ((zero, zero, zero), (far.length, far.width, far.thickness))
    low, high = sorted(_seen_from(part, mate, end)[ACROSS] for end in ends)
    if low < 0 or high > width or (low == 0 and high == width):
        return ""
    surface = REFERENCE.surface(ACROSS)
    stands = f"from {rule.reads(low)} to" if low else f"level with the {surface}, to"
    return f"{listed([mate.name])} {stands} {rule.reads(high)} from the {surface}"


@dataclass(frozen=True, kw_only=True)
class _Driven:
    """A screw or nail as the part it bites in sees it. [mm]"""

    family: str
    axis: int  # it goes in along
    at: Point  # its middle line
    deep: Fraction
    is_from_far: bool  # from the back, the far edge or the far end


def pilots(
    part: Part, joint: SetJoint, *, setting_out: SettingOut, rule: Rule
) -> Iterator[tuple[str, str]]:
    """Screws and nails that bite in a part which the joint cuts nothing from: where, and how."""
    if any(cut.owner == joint.name for cut in part.cuts):
        return
    found = list(_driven(part, joint, setting_out))
    if not found:
        return
    first = found[0]
    rows = []
    for axis in (axis for axis in range(3) if axis != first.axis):
        values = sorted({each.at[axis] for each in found})
        if len(values) <= MOST:
            figures = ", ".join(rule.sets(value) for value in values)
            rows.append(f"{figures} from the {REFERENCE.surface(axis)}")
    surface = REFERENCE.opposite(first.axis) if first.is_from_far else REFERENCE.surface(first.axis)
    rows.append(f"{rule.reads(first.deep)} into the {surface}")
    others = [name for name in dict.fromkeys(joint.joined.parts) if name != part.name]
    count = counted(len(found), f"{first.family}s")
    yield f"pilots for {count}: {'; '.join(rows)}", f"bored through the {listed(others)}"


def _driven(part: Part, joint: SetJoint, setting_out: SettingOut) -> Iterator[_Driven]:
    bought = {each.name: each for each in setting_out.hardware}
    names = dict.fromkeys(
        name for press in joint.presses if part.name in press.between for name in press.between
    )
    for thing in (bought[name] for name in names if name in bought):
        half = (thing.extent.width / 2, thing.extent.thickness / 2)
        head = _seen_from(part, thing, (Fraction(0), *half))
        tip = _seen_from(part, thing, (thing.extent.length, *half))
        axis = next(i for i in range(3) if head[i] != tip[i])
        is_from_far = head[axis] > tip[axis]
        yield _Driven(
            family=thing.family,
            axis=axis,
            at=tip,
            deep=part.extent[axis] - tip[axis] if is_from_far else tip[axis],
            is_from_far=is_from_far,
        )


def _seen_from(part: Part, other: Part, point: Point) -> Point:
    """A point of another part, counted from this one's references. [mm]"""
    return part.placement.to_part(other.placement.to_piece(point))


def strap(setting_out: SettingOut, rule: Rule) -> str:
    """Where wall straps are screwed to the piece; empty where nothing of it is made for that."""
    rails = [part for part in setting_out.made if part.family == "sub-top rail"]
    if not rails:
        return ""
    rear = max(rails, key=_middle_deep)
    ends = ((Fraction(0),) * 3, (rear.extent.length, rear.extent.width, rear.extent.thickness))
    low = min(rear.placement.to_piece((x, y, z))[2] for x, y, z in ends)
    where = joined(["near its left end", "near its right"])
    return (
        f"Screw them to the {listed([rear.name])}, {where}; its underside stands "
        f"{rule.reads(low)} above the floor. "
    )


def _middle_deep(part: Part) -> Fraction:
    half = (part.extent.length / 2, part.extent.width / 2, part.extent.thickness / 2)
    return part.placement.to_piece(half)[1]
