"""The cutting list: like parts on one line, with the rough sizes they are sawn to first."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.exact import Fraction
from scantling.parts import GluedUp, Part
from scantling.setting_out.answer import Line
from scantling.shop.habits import Habits


def lines(parts: Sequence[Part], habits: Habits) -> tuple[Line, ...]:
    """Made parts by family, wood and size, marked in the order they come in the piece."""
    groups: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        if part.hardware:
            continue
        key = (part.family, part.wood, part.cut_of_wood, part.extent, part.horns)
        groups.setdefault(key, []).append(part)
    return tuple(
        Line(
            mark=i + 1,
            family=group[0].family,
            parts=tuple(group),
            rough=_rough(group[0], habits),
            note=_note(group[0]),
        )
        for i, group in enumerate(groups.values())
    )


def _rough(part: Part, habits: Habits) -> tuple[Fraction, Fraction, Fraction]:
    """Finished size and horns with the allowances of the shop. [mm]"""
    extent = part.extent
    return (
        extent.length + sum(part.horns) + habits.rough_length,
        extent.width + habits.rough_width,
        extent.thickness + habits.rough_thickness,
    )


def _note(part: Part) -> str:
    notes = []
    if part.cut_of_wood != "flat":
        notes.append(f"{part.cut_of_wood}-sawn")
    if isinstance(part.blank, GluedUp):
        notes.append(f"glued up from {len(part.blank.strips)} strips")
    if any(part.horns):
        notes.append("horns at both ends" if all(part.horns) else "horn at one end")
    return ", ".join(notes)
