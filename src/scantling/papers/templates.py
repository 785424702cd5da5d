"""Templates at full size and the story stick, to be pasted on card. `templates.pdf`."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from scantling.exact import Fraction
from scantling.papers._drawing.line_types import Spot
from scantling.papers._full_size import Template, templates
from scantling.papers._paper import Sheet, rule_of
from scantling.papers._shown import in_words
from scantling.papers._stick import levels
from scantling.papers._tiles import LEAST, Tile, laid_out
from scantling.papers._typeset import Plain, pdf
from scantling.setting_out import SettingOut

MARGIN = 12.0  # [mm] no printer reaches nearer to the edge
STRIP = 62.0  # [mm] at the foot of a sheet, for the squares that are measured first
STICK = 30.0  # [mm] width of the story stick on paper


class Templates:
    """Templates: tails, tenons and mortises at full size, and a story stick for height."""

    title: ClassVar[str] = "templates"

    @classmethod
    def render(cls, setting_out: SettingOut, *, sheet: Sheet) -> Mapping[str, bytes]:
        """`templates.pdf`, its fonts inside, without a date."""
        drawn = templates(setting_out)
        wide, tall = (float(x) for x in sheet.size)
        room = (wide - 2 * MARGIN, tall - 2 * MARGIN - STRIP)
        sheets = laid_out([each.size for each in drawn], room=room)
        data: dict[str, Plain] = {
            "name": setting_out.piece.whole.name,
            "margin": MARGIN,
            "strip": STRIP,
            "sheets": [[_tile(tile, drawn[tile.drawing]) for tile in each] for each in sheets],
            "stick": _stick(setting_out, room),
        }
        shown = in_words(data, setting_out)
        return {"templates.pdf": pdf("templates.typ", shown, sheet=sheet)}


def _tile(tile: Tile, of: Template) -> Plain:
    strokes = [[_on_tile(spot, tile, of) for spot in stroke] for stroke in of.strokes]
    column, row, columns, rows = tile.place
    return {
        "at": [*tile.at],
        "caption": max(tile.size[0], LEAST),
        "size": [*tile.size],
        "strokes": [[[*a], [*b]] for a, b in strokes],
        "joint": of.joint,
        "face": of.face,
        "ends": of.ends,
        "turned": tile.turned,
        "parts": [*of.parts],
        "place": ""
        if columns * rows == 1
        else f"column {column} of {columns}, row {row} of {rows}",
        "meets": [column < columns, row < rows],
    }


def _on_tile(spot: Spot, tile: Tile, of: Template) -> Spot:
    x, y = (of.size[1] - spot[1], spot[0]) if tile.turned else spot
    return x - tile.start[0], y - tile.start[1]


def _stick(setting_out: SettingOut, room: Spot) -> Plain:
    """The stick in stretches that fit a sheet, each with its levels, the lowest first."""
    rule, tall = rule_of(setting_out), room[1]
    found = levels(setting_out)
    top = float(found[-1].height) if found else 0.0
    stretches: list[Plain] = []
    start = 0.0
    while start < top:
        end = min(start + tall, top)
        stretches.append(
            {
                "from": rule.reads(Fraction(start).limit_denominator(10_000)),
                "tall": end - start,
                "levels": [
                    {
                        "at": float(level.height) - start,
                        "reads": rule.reads(level.height),
                        "what": ", ".join(level.what),
                    }
                    for level in found
                    if start <= float(level.height) <= end
                ],
            }
        )
        start = end
    return {"wide": STICK, "stretches": stretches, "each": int(room[0] // (STICK * 2))}
