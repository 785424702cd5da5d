"""Sheets of parts: plain ones share a sheet, and what reads the same is told once."""

import io
from typing import Any

import pypdfium2
from tests.papers.pieces import pine_bookcase

from scantling import PAPERS
from scantling.papers import Sheet
from scantling.papers._part_pages import part_pages
from scantling.papers._year import year_page

Rows = Any  # pages are JSON


def sheets() -> list[str]:
    found = PAPERS["packet"].render(pine_bookcase(), sheet=Sheet.LETTER)["packet.pdf"]
    pages = pypdfium2.PdfDocument(io.BytesIO(found))
    return [page.get_textpage().get_text_range() for page in pages]


def test_plain_parts_share_a_sheet() -> None:
    (page,) = [text for text in sheets() if "Middle shelf" in text and "reference end" in text]
    assert "Low loose shelf 1" in page


def test_a_part_on_which_much_happens_has_the_whole_height() -> None:
    pages: Rows = part_pages(pine_bookcase(), sheet=Sheet.LETTER)
    tall = {page["title"].partition(",")[0]: page["drawing"]["size"][1] for page in pages}
    half = (11 * 25.4 - 82) / 2
    assert tall["Left side".lower()] > half
    assert tall["middle shelf"] < half


# four gaps and four laps between five boards, and room at both ends, all alike to the maker's eye
def test_fits_that_read_the_same_are_told_once_with_the_parts_they_hold_for() -> None:
    page: Rows = year_page(pine_bookcase())
    told = {fit["what"]: (fit["times"], fit["where"]) for fit in page["fits"]}
    assert len(told) == len(page["fits"])
    assert told["gap between boards"] == (4, "back boards 1 to 5")
    assert told["cover of the laps"] == (4, "back boards 1 to 5")
    assert told["room beside the row of boards"] == (2, "back boards 1 and 5")
