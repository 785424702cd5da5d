"""What a maker looks for on the first sheet: how large, what is clear, may it be cut."""

import io
from dataclasses import replace
from typing import Any

import pypdfium2
import pytest
from tests.papers.cupboard import FINDINGS, cupboard
from tests.papers.pieces import pine_bookcase
from tests.pieces.worked import worked

from scantling import PAPERS, SettingOut
from scantling.papers import Sheet
from scantling.papers._cover import cover, halted_in_words
from scantling.papers._overall import openings, sizes_in_words
from scantling.papers._paper import rule_of
from scantling.units import INCH

Rows = Any  # pages are JSON
HALT = FINDINGS[0]


def told(whole: SettingOut) -> str:
    return " ".join(sizes_in_words(whole, rule_of(whole)))


# 30 1/2 by 10 by 59 9/32 as its maker wrote; a top of 23/32, 31 1/2 wide and 3/4 over in front;
# inside: less two sides of 23/32, and less a rabbet 9/16 wide
def test_the_case_is_told_by_itself_and_with_its_top() -> None:
    said = told(pine_bookcase())
    assert "Over everything 31 1/2 wide, 10 3/4 deep, 60 tall." in said
    assert "The case by itself 30 1/2 wide, 10 deep, 59 9/32 tall" in said
    assert "inside 29 1/16 wide, 9 7/16 deep" in said
    over = "3/4 over in front, 1/2 over at the left, 1/2 over at the right and level behind"
    assert f"The top stands {over}." in said


def test_the_case_s_width_stands_under_the_drawing_only_where_it_is_another() -> None:
    page: Rows = cover(pine_bookcase(), sheet=Sheet.LETTER)
    assert page["drawing"]["case"]["reads"] == "30 1/2"
    assert page["drawing"]["wide"] == "31 1/2"
    level = pine_bookcase(('wide  = "31 1/2"', 'wide  = "30 1/2"'))
    page = cover(level, sheet=Sheet.LETTER)
    assert page["drawing"]["case"] is None


# a shelf 7/8 thick with its top face at 30, a bottom 23/32 thick with its own at 3; pins 12 holes
# from 12 and from 39 on, shelves on the 4th and 10th, 1/16 of flat above the middle
def test_each_face_of_a_level_board_has_its_figure_and_its_name() -> None:
    page: Rows = cover(pine_bookcase(), sheet=Sheet.LETTER)
    by_row: dict[str, list[str]] = {}
    for mark in page["drawing"]["stick"]:
        if mark["reads"]:
            by_row.setdefault(mark["row"], []).append(mark["reads"])
    assert by_row["top face"] == ["3", "15 15/16", "21 15/16", "30", "42 15/16", "48 15/16", "60"]
    assert by_row["underside"][:4] == ["2 9/32", "15 1/16", "21 1/16", "29 1/8"]
    assert by_row["underside"][-1] == "59 9/32"


def test_what_is_clear_between_boards_stands_in_the_openings() -> None:
    whole = pine_bookcase()
    clear = [each.tall / INCH for each in openings(whole)]
    rail = 59 + 9 / 32 - 3 / 4
    by_hand = [
        15.0625 - 3, 21.0625 - 15.9375, 29.125 - 21.9375,
        42.0625 - 30, 48.0625 - 42.9375, rail - 48.9375,
    ]  # fmt: skip
    assert [float(each) for each in clear] == pytest.approx(by_hand)
    page: Rows = cover(whole, sheet=Sheet.LETTER)
    assert page["drawing"]["openings"][0]["reads"] == "12 1/16"


def test_doors_and_drawers_leave_no_opening_to_see() -> None:
    assert list(openings(worked("pieces/glaze_cupboard"))) == []


def sheets(whole: SettingOut) -> list[str]:
    found = PAPERS["packet"].render(whole, sheet=Sheet.A4)["packet.pdf"]
    pages = pypdfium2.PdfDocument(io.BytesIO(found))
    return [page.get_textpage().get_text_range() for page in pages]


def test_every_sheet_of_a_piece_with_a_halt_says_not_to_cut() -> None:
    halted = replace(cupboard(), findings=(HALT, replace(HALT, code="other.halt"), FINDINGS[2]))
    said = "NOT TO BE CUT FROM: 2 findings halt the work"
    texts = sheets(halted)
    assert len(texts) > 5
    assert all(said in text for text in texts)
    assert not any("NOT TO BE CUT" in text for text in sheets(replace(halted, findings=())))


def test_one_halt_is_said_as_one_and_a_note_is_none() -> None:
    assert halted_in_words([HALT]) == "NOT TO BE CUT FROM: 1 finding halts the work"
    assert halted_in_words(FINDINGS[1:]) == ""


def test_a_load_that_nothing_reckons_with_is_said_to_be_kept_only() -> None:
    page: Rows = cover(pine_bookcase(), sheet=Sheet.LETTER)
    assert any("load said for low loose is kept, and not yet reckoned" in n for n in page["notes"])
    page = cover(pine_bookcase(('load = "25 lb/ft2"', "")), sheet=Sheet.LETTER)
    assert page["notes"] == []
