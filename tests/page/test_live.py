"""The page follows the file and leaves what is under the maker's hand where it is."""

import pytest
from playwright.sync_api import expect
from tests.page.conftest import GOOD, Opened, Served

pytestmark = pytest.mark.page

OTHER = GOOD.replace("Wall cupboard", "Corner cupboard")
BROKEN = 'name = "Wall cupboard"\nwide = sixteen?\n'


def test_a_saved_change_shows_by_itself(opened: Opened, served: Served) -> None:
    page = opened()
    served.save(OTHER)
    expect(page.locator("h1")).to_have_text("Corner cupboard")
    expect(page.locator(".work > [role=status]")).to_contain_text("The file has changed.")


def test_half_typed_words_open_strips_and_place_survive(opened: Opened, served: Served) -> None:
    page = opened()
    field = page.get_by_label("Find a part")
    page.locator('[data-part="right stile"] > h4 > button').click()
    field.click()
    page.keyboard.type("stil")
    strip = page.locator('[data-part="right stile"]')
    before, typed_at = strip.bounding_box(), field.bounding_box()
    served.save(OTHER)
    expect(page.locator("h1")).to_have_text("Corner cupboard")
    expect(field).to_have_value("stil")
    expect(field).to_be_focused()
    page.keyboard.type("e")
    expect(field).to_have_value("stile")
    expect(strip.locator(".under")).to_be_visible()
    assert strip.bounding_box() == before
    assert field.bounding_box() == typed_at


def test_a_broken_file_keeps_the_last_good_piece_under_its_fault(
    opened: Opened, served: Served
) -> None:
    page = opened()
    served.save(BROKEN)
    fault = page.get_by_role("region", name="Fault in the file")
    expect(fault).to_contain_text("The file cannot be worked as it stands.")
    expect(fault).to_contain_text("This is no length.")
    expect(fault.locator(".where")).to_have_text("piece.toml 2:15")
    expect(fault.locator("mark")).to_have_text("?")
    expect(page.locator("h1")).to_have_text("Wall cupboard")
    expect(page.locator('[data-part="left side"]')).to_be_visible()
    expect(page.locator(".work > [role=status]")).to_contain_text("The file cannot be worked.")
    served.save(OTHER)
    expect(fault).to_have_count(0)
    expect(page.locator("h1")).to_have_text("Corner cupboard")
    expect(page.locator(".work > [role=status]")).to_contain_text("can be worked again")


def test_a_fault_moves_nothing_under_the_hand(opened: Opened, served: Served) -> None:
    page = opened(tall=500)
    strip = page.locator('[data-part="top"] > h4 > button')
    strip.focus()
    before = strip.bounding_box()
    served.save(BROKEN)
    expect(page.locator(".broken")).to_be_visible()
    after = strip.bounding_box()
    assert before
    assert after
    assert after["y"] == pytest.approx(before["y"], abs=1.5)
    expect(page.locator(".broken")).to_be_in_viewport()


@pytest.mark.parametrize("text", [BROKEN], ids=["no length"])
def test_a_file_broken_from_the_start_is_mended_into_a_piece(
    opened: Opened, served: Served
) -> None:
    page = opened()
    expect(page.locator(".broken")).to_be_visible()
    expect(page.locator("header h1")).to_have_count(0)
    served.save(GOOD)
    expect(page.locator("header h1")).to_have_text("Wall cupboard")
    expect(page.locator("main h2")).to_have_text("Setting out")
    expect(page.locator(".broken")).to_have_count(0)


def test_the_eye_stays_where_it_looks_while_the_piece_changes(
    opened: Opened, served: Served
) -> None:
    page = opened()
    page.get_by_role("button", name="Call up the piece").click()
    view = page.locator("piece-view")
    expect(view).to_have_attribute("data-state", "drawn")
    page.get_by_role("button", name="left end").click()
    page.get_by_role("button", name="pull apart").click()  # brings all of it in sight
    page.get_by_role("button", name="nearer").click()
    page.get_by_role("button", name="turn", exact=True).click()
    turn = "-1.31 0.00"  # a quarter and, back from it, a twenty-fourth of a full turn
    expect(view).to_have_attribute("data-turn", turn)
    where = "() => document.querySelector('piece-view').whereIs('shelf')"
    spot = page.evaluate(where)
    loads = int(view.get_attribute("data-loads") or 0)
    served.save(OTHER)
    expect(page.locator("dialog h2")).to_have_text("Corner cupboard")
    expect(view).to_have_attribute("data-loads", f"{loads + 1}")
    expect(view).to_have_attribute("data-state", "drawn")
    assert view.get_attribute("data-turn") == turn
    assert page.evaluate(where) == spot
    expect(page.locator("dialog .said")).to_contain_text("step 1 of")


def test_a_server_that_has_ended_is_said(opened: Opened, served: Served) -> None:
    page = opened()
    served.end()
    expect(page.locator(".gone")).to_contain_text("The bench does not answer.")
    # what was there can still be read
    expect(page.locator('[data-part="left side"]')).to_be_visible()
