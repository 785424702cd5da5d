"""Pages of parts: each distinct part once, in three views, with how it is set out beside it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.papers._drawing.figures import distances
from scantling.papers._drawing.line_types import LINE_TYPES, Drawing, Kind
from scantling.papers._drawing.part import part_drawing
from scantling.papers._paper import Rule, Sheet, rule_of
from scantling.papers._set_out import SetOut, set_out_on
from scantling.papers._typeset import Plain
from scantling.parts import Part
from scantling.setting_out import SettingOut

MARGIN = 18.0  # [mm] at both sides of the sheet
HEAD = 82.0  # [mm] of the sheet's height that margins and heading take
NARROW = 100.0  # [mm] a drawing that leaves room for words beside it
BETWEEN = 5.0  # [mm] of half a sheet, for what stands between two parts
LINES, FIGURES = 14, 6  # said of a part and drawn on it at the most, that two share a sheet [-]
COARSE = 5  # one to more than this, a drawing takes the whole width of the sheet [-]


@dataclass(frozen=True, kw_only=True)
class Distinct:
    """Parts that are cut alike, or are mirror images of each other."""

    mark: int
    parts: tuple[Part, ...]

    @property
    def first(self) -> Part:
        """The one that is drawn."""
        return self.parts[0]

    @property
    def mirrored(self) -> tuple[Part, ...]:
        """Those that are the drawn one's mirror images."""
        side = self.first.placement.is_mirrored
        return tuple(p for p in self.parts if p.placement.is_mirrored != side)


def distinct(setting_out: SettingOut) -> tuple[Distinct, ...]:
    """The made parts as they stand on the cutting list, those cut alike together."""
    found = []
    for line in setting_out.lines:
        alike: dict[object, list[Part]] = {}
        for part in line.parts:
            alike.setdefault(part.outline, []).append(part)
        found += [Distinct(mark=line.mark, parts=tuple(parts)) for parts in alike.values()]
    return tuple(found)


def part_pages(setting_out: SettingOut, *, sheet: Sheet) -> list[Plain]:
    """What the template shows of every distinct part."""
    rule = rule_of(setting_out)
    return [_page(each, setting_out, sheet, rule) for each in distinct(setting_out)]


def _page(each: Distinct, setting_out: SettingOut, sheet: Sheet, rule: Rule) -> dict[str, Plain]:
    part = each.first
    said = set_out_on(part, setting_out=setting_out, rule=rule)
    drawing = _drawing(part, setting_out, sheet, is_quiet=_is_quiet(part, said, setting_out))
    beside = drawing.size[0] <= NARROW
    return {
        "mark": each.mark,
        "title": _names(each.parts),
        "drawn": part.name.replace(".", " ") if len(each.parts) > 1 else "",
        "mirrored": _names(each.mirrored) if each.mirrored else "",
        "wood": part.wood,
        "how_many": len(each.parts),
        "drawing": drawn(drawing),
        "beside": beside,
        "set_out": _columns(said, count=1 if beside else 2),
    }


def _columns(found: Sequence[SetOut], *, count: int) -> list[Plain]:
    """What is set out, in so many columns of about one height."""
    heights = [2 + len(each.rows) + len(each.acts) for each in found]
    columns: list[list[Plain]] = [[] for _ in range(count)]
    done = 0
    for each, tall in zip(found, heights, strict=True):
        columns[min(count - 1, done * count // sum(heights))].append(each.told)
        done += tall
    return [list(column) for column in columns]


def _is_quiet(part: Part, said: Sequence[SetOut], setting_out: SettingOut) -> bool:
    """Whether so little happens on a part that it is read as well at half a sheet."""
    lines = sum(2 + len(each.rows) + len(each.acts) for each in said)
    return lines <= LINES and len(distances(part, setting_out=setting_out)) <= FIGURES


def _drawing(part: Part, setting_out: SettingOut, sheet: Sheet, *, is_quiet: bool) -> Drawing:
    wide, tall = (float(size) for size in sheet.size)
    high = (tall - HEAD) / 2 - BETWEEN if is_quiet else tall - HEAD
    found = part_drawing(part, setting_out=setting_out, angle=sheet.angle, room=(NARROW, high))
    if found.scale <= COARSE or is_quiet:
        return found
    room = (wide - 2 * MARGIN, high)
    return part_drawing(part, setting_out=setting_out, angle=sheet.angle, room=room)


def _names(parts: Sequence[Part]) -> str:
    return ", ".join(part.name.replace(".", " ") for part in parts)


def drawn(drawing: Drawing) -> dict[str, Plain]:
    """A drawing as the template takes it: strokes by kind, the broad ones last."""
    by_kind: dict[Kind, list[Plain]] = {}
    for stroke in drawing.strokes:
        points: list[Plain] = [[x, y] for x, y in stroke.points]
        by_kind.setdefault(stroke.kind, []).append(points)
    order = sorted(by_kind, key=lambda kind: (LINE_TYPES[kind].width, kind))
    return {
        "size": list(drawing.size),
        "scale": drawing.scale,
        "alt": drawing.alt,
        "strokes": [{"kind": kind, "lines": by_kind[kind]} for kind in order],
        "texts": [
            {
                "says": text.says,
                "at": list(text.at),
                "ends": text.anchor == "end",
                "turned": text.turned,
                "bold": text.bold,
            }
            for text in drawing.texts
        ],
    }


def line_types() -> dict[str, Plain]:
    """Widths and dashes of every kind of line, for the template. [mm]"""
    return {
        kind: {"width": found.width, "dashes": list(found.dashes)}
        for kind, found in LINE_TYPES.items()
    }
