"""The before-glue list and the gauge card, as the order of work has them."""

from __future__ import annotations

from typing import Any

import pytest
from tests.papers import read_back
from tests.pieces.worked import worked

from scantling.papers import PAPERS
from scantling.papers._order_page import before_glue_page, gauge_card
from scantling.papers._paper import Sheet
from scantling.setting_out import SettingOut


@pytest.fixture(scope="module")
def demo() -> SettingOut:
    return worked()


def rows(piece: SettingOut, first: str) -> dict[str, str]:
    """What is told of the glue-up whose name begins so."""
    pages: Any = before_glue_page(piece)
    (found,) = [each for each in pages if each["name"].startswith(first)]
    return {row["does"]: row["parts"] for row in found["rows"]}


def test_every_glue_up_has_its_list(demo: SettingOut) -> None:
    pages: Any = before_glue_page(demo)
    assert len(pages) == len(demo.order.before_glue) == 6  # frame, case, two doors, two drawers
    assert all(page["rows"] for page in pages)


def test_what_the_case_shuts_in_is_on_its_list(demo: SettingOut) -> None:
    # pieces of this kind, common practice: pin holes, slots and inside faces before the glue
    case = rows(demo, "left side")
    assert any("pin" in does or "template" in does for does in case)
    assert any("slot" in does for does in case)
    assert any("faces" in does for does in case)


def test_a_panel_is_laid_in_dry(demo: SettingOut) -> None:
    pages: Any = before_glue_page(demo)
    dry = {page["name"].partition(",")[0]: page["lies_dry"] for page in pages}
    assert [name for name, parts in dry.items() if "panel" in parts] == [
        "left door left stile",
        "right door left stile",
    ]


def test_threads_run_from_where_a_setting_is_made_to_where_it_is_let_go(demo: SettingOut) -> None:
    card: Any = gauge_card(demo)
    assert card["settings"] <= card["set"] == len(card["rows"])
    for row in card["rows"]:
        assert 0 <= row["start"] < row["stop"] <= 1
        assert row["figures"]
    assert card["nights"] == sorted(card["nights"])
    assert card["nights"]


def test_both_sheets_are_in_the_packet(demo: SettingOut) -> None:
    (content,) = PAPERS["packet"].render(demo, sheet=Sheet.LETTER).values()
    texts = read_back.texts(content)
    before = next(text for text in texts if "Before the glue" in text)
    assert "to pin up" in before
    assert any(text.lstrip().startswith("Gauges") for text in texts)
