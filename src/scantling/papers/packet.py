"""The packet: up to five sheets to pin up, and the rest behind them. `packet.pdf`."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from scantling.papers._boards_page import boards_page
from scantling.papers._cautions import cautions
from scantling.papers._changes import changes_page
from scantling.papers._cover import cover, halted_in_words
from scantling.papers._joint_pages import joints
from scantling.papers._order_page import before_glue_page, gauge_card
from scantling.papers._pages import cutting_list, findings, hardware, told
from scantling.papers._paper import Sheet
from scantling.papers._part_pages import line_types, part_pages
from scantling.papers._piece_page import piece_page
from scantling.papers._shown import in_words
from scantling.papers._typeset import Plain, pdf
from scantling.papers._year import year_page
from scantling.setting_out import SettingOut


class Packet:
    """Packet: sheets to pin up, and behind them every part, joint and finding."""

    title: ClassVar[str] = "packet"

    @classmethod
    def render(cls, setting_out: SettingOut, *, sheet: Sheet) -> Mapping[str, bytes]:
        """`packet.pdf`, its fonts inside, without a date."""
        data: dict[str, Plain] = {
            "cover": cover(setting_out, sheet=sheet),
            "changes": changes_page(setting_out),
            "list": cutting_list(setting_out),
            "hardware": hardware(setting_out),
            "boards": boards_page(setting_out, sheet=sheet),
            "line_types": line_types(),
            "angle": sheet.angle,
            "piece": piece_page(setting_out, sheet=sheet),
            "parts": part_pages(setting_out, sheet=sheet),
            "joints": joints(setting_out),
            "before_glue": before_glue_page(setting_out),
            "gauges": gauge_card(setting_out),
            "year": year_page(setting_out),
            "findings": findings(setting_out),
            "halted": halted_in_words(setting_out.findings),
            "cautions": told(cautions(setting_out)),
        }
        data["words"] = {"list": "Cutting list", "stick": "story stick"}
        shown = in_words(data, setting_out)
        return {"packet.pdf": pdf("packet.typ", shown, sheet=sheet)}
