"""A reading is entered and a part ticked with a thumb, and what follows is there at once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect
from tests.page.conftest import Opened, Served

from scantling.cli import stager
from scantling.record.reading import FILE, read
from scantling.web.serve import drawings
from scantling.web.watch import watching
from scantling.web.workbench import Workbench

PIECES = Path(__file__).parents[2] / "pieces"
PHONE = 390
LEAST = 44  # [px] of a target at the bench: design of the page, WCAG 2.2 asks for 24


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """The bookcase, worked for true: what follows from a reading is what is asked here."""
    folder = tmp_path / "bench"
    folder.mkdir()
    text = (PIECES / "bookcase" / "piece.toml").read_text(encoding="utf-8")
    (folder / "piece.toml").write_text(text.replace('"../shop.toml"', '"shop.toml"'))
    (folder / "shop.toml").write_bytes((PIECES / "shop.toml").read_bytes())
    file = folder / "piece.toml"
    found = Served(file, Workbench(file, work=stager(), drawings=drawings()))  # type: ignore[arg-type] # of a real piece
    with watching(found.bench):
        found.begin()
        yield found
        found.end()


@pytest.mark.parametrize("wide", [PHONE, 1280])
def test_a_reading_is_kept_and_what_follows_is_shown(
    opened: Opened, served: Served, wide: int
) -> None:
    page = opened("#record", wide=wide, minds_console=False)  # a refusal is told there as 422
    page.get_by_label("part").select_option("left side")
    page.get_by_label("reads").fill("18")
    keep = page.get_by_role("button", name="Keep", exact=True).first
    keep.click()
    expect(page.get_by_role("alert")).to_contain_text("24 times more than planned")
    assert not (served.file.parent / FILE).exists()
    page.get_by_label("reads").fill("0.71")
    keep.click()
    row = page.get_by_role("row", name="left side thickness")
    expect(row.locator(".measured")).to_have_text("0.71")
    expect(page.get_by_role("row", name="bottom length")).to_be_visible()
    page.get_by_role("button", name="bottom is cut").click()
    expect(page.locator(".cut-already .done")).to_have_text("bottom")
    kept = read((served.file.parent / FILE).read_bytes()).entries
    assert [type(entry.said).__name__ for entry in kept] == ["Reading", "Done"]
    page.get_by_role("button", name="Take back entry 2").click()
    expect(page.locator(".cut-already .done")).to_have_count(0)


def test_targets_of_the_record_are_large_enough_for_a_thumb(opened: Opened) -> None:
    page = opened("#record", wide=PHONE)
    for each in page.locator("main button, main input, main select").all():
        box = each.bounding_box()
        assert box is not None
        assert box["height"] >= LEAST
    across = page.evaluate("document.documentElement.scrollWidth")
    assert across <= PHONE


def test_the_form_is_worked_by_keyboard_alone(opened: Opened, served: Served) -> None:
    page = opened("#record")
    page.get_by_label("words for later").focus()
    page.keyboard.type("knot by the mortise")
    page.keyboard.press("Enter")
    expect(page.locator(".entries li")).to_have_count(1)
    (entry,) = read((served.file.parent / FILE).read_bytes()).entries
    assert type(entry.said).__name__ == "Note"
