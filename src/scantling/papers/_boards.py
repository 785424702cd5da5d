"""The layout on boards as `setting-out.json` tells it."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.exact import Fraction
from scantling.papers import _document_boards as doc
from scantling.papers._document_length import Length
from scantling.papers._paper import Rule, rule_of
from scantling.papers._year import length_of
from scantling.setting_out import SettingOut
from scantling.stock.boards import Board, Defect
from scantling.stock.lay_out import Reckoned
from scantling.stock.plan import Section
from scantling.stock.verdict import told, verdict


def on_boards(setting_out: SettingOut) -> doc.OnBoardsTold | None:
    """Boards, plan and shopping; None where no boards were surveyed."""
    found = setting_out.boards
    if found is None:
        return None
    rule, plan = rule_of(setting_out), found.laid.plan
    return {
        "boards": [
            _board(board, [s for s in plan.sections if s.board == board.name], rule)
            for board in found.laid.job.boards
        ],
        "woods": [_wood(each) for each in found.laid.woods],
        "short": list(plan.short),
        "to_buy": [
            {
                "says": told(each),
                "cost": _money(each.cost),
                "parts": [w.part for w in each.job.wanted if w.part not in each.plan.short],
            }
            for each in found.shopping.bought
        ],
    }


def _wood(found: Reckoned) -> doc.WoodOf:
    return {
        "wood": found.wood,
        "verdict": verdict(found),
        "boards": list(found.plan.boards),
        "cost": _money(found.cost),
        "at_least_boards": found.bound.count,
        "at_least_cost": _money(found.bound.cost),
        "short": list(found.plan.short),
    }


def _money(value: Fraction) -> float:
    return round(float(value), 2)


def _board(board: Board, sections: Sequence[Section], rule: Rule) -> doc.BoardOf:
    return {
        "name": board.name,
        "wood": board.wood,
        "cut": board.cut.value,
        "length": length_of(board.length, rule),
        "width_a": length_of(board.width_a, rule),
        "width_b": length_of(board.width_b, rule),
        "thickness": length_of(board.thickness, rule),
        "crook": length_of(board.crook, rule),
        "paid": None if board.paid is None else _money(board.paid),
        "defects": [_defect(defect, rule) for defect in board.defects],
        "sections": [_section(section, rule) for section in sections],
    }


def _defect(defect: Defect, rule: Rule) -> doc.Blemish:
    return {
        "says": defect.says,
        "harm": defect.harm.value,
        "start": length_of(defect.start, rule),
        "stop": length_of(defect.stop, rule),
        "near": length_of(defect.near, rule),
        "far": length_of(defect.far, rule),
    }


def _section(section: Section, rule: Rule) -> doc.SectionOf:
    def length(value: Fraction) -> Length:
        return length_of(value, rule)

    return {
        "start": length(section.start),
        "stop": length(section.stop),
        "sawn": [
            {
                "part": each.part,
                "start": length(each.start),
                "length": length(each.length),
                "near": length(each.near),
                "width": length(each.width),
            }
            for each in section.sawn
        ],
    }
