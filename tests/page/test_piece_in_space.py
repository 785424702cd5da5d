"""The piece standing by itself: by hand and by name, without looking at a pixel."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect
from tests.page.conftest import Opened
from tests.web.cupboard import parts

pytestmark = pytest.mark.page

MADE = len(parts())
TALLY = "15 parts, 4 pieces of hardware"


def called_up(page: Page) -> Locator:
    page.get_by_role("button", name="Call up the piece").click()
    view = page.locator("piece-view")
    expect(view).to_have_attribute("data-state", "drawn")
    return view


def by_keyboard(page: Page, name: str) -> None:
    """Walk on with Tab until the button of that name has the focus, then press it."""
    wanted = page.get_by_role("button", name=name, exact=True)
    for _ in range(80):
        page.keyboard.press("Tab")
        if wanted.evaluate("(button) => button === document.activeElement"):
            page.keyboard.press("Enter")
            return
    pytest.fail(f"Tab never comes to {name!r}")


def test_every_part_is_drawn_in_lines(opened: Opened) -> None:
    page = opened()
    assert page.evaluate("() => customElements.get('piece-view')") is None  # fetched when called
    view = called_up(page)
    expect(view).to_have_attribute("data-parts", f"{MADE}")
    expect(view).to_have_attribute("data-seen", f"{MADE}")
    # a box alone has twelve edges
    assert int(view.get_attribute("data-lines") or 0) > 12 * MADE


def test_something_is_drawn_on_the_ground(opened: Opened) -> None:
    page = opened()
    called_up(page)
    picture = page.locator("piece-view canvas").screenshot()
    page.get_by_role("button", name="further").click(click_count=20)
    page.evaluate("() => new Promise(requestAnimationFrame)")
    far = page.locator("piece-view canvas").screenshot()
    # an even ground packs well, lines do not: twenty times further off little is left of them
    assert len(picture) > 4 * len(far)


def test_views_go_by_words(opened: Opened) -> None:
    page = opened()
    view = called_up(page)
    turns = {
        "front": "0.00 0.00",
        "left end": "-1.57 0.00",
        "back": "3.14 0.00",
        "right end": "1.57 0.00",
        "above": "0.00 1.57",
        "below": "0.00 -1.57",
    }
    for word, turn in turns.items():
        page.get_by_role("button", name=word, exact=True).click()
        expect(view).to_have_attribute("data-turn", turn)


def test_a_part_is_picked_by_hand(opened: Opened) -> None:
    page = opened()
    view = called_up(page)
    page.get_by_role("button", name="front", exact=True).click()
    at = page.evaluate("() => document.querySelector('piece-view').whereIs('door.panel')")
    page.mouse.click(at["x"], at["y"])
    expect(view).to_have_attribute("data-chosen", "door.panel")
    expect(page.locator(".caption")).to_contain_text("door.panel")
    box = view.bounding_box()
    assert box
    page.mouse.click(box["x"] + 5, box["y"] + 5)
    expect(view).to_have_attribute("data-chosen", "")


def test_what_is_pulled_away_is_picked_where_it_stands(opened: Opened) -> None:
    page = opened()
    view = called_up(page)
    where = "() => document.querySelector('piece-view').whereIs('door.panel')"
    before = page.evaluate(where)
    page.get_by_role("button", name="pull apart").click()
    after = page.evaluate(where)
    assert abs(after["x"] - before["x"]) + abs(after["y"] - before["y"]) > 40
    page.mouse.click(after["x"], after["y"])
    expect(view).to_have_attribute("data-chosen", "door.panel")


def test_dragging_turns_and_the_wheel_comes_nearer(opened: Opened) -> None:
    page = opened()
    view = called_up(page)
    where = "() => document.querySelector('piece-view').whereIs('shelf')"
    turn, spot = view.get_attribute("data-turn"), page.evaluate(where)
    page.mouse.move(600, 300)
    page.mouse.down()
    page.mouse.move(700, 330, steps=4)
    page.mouse.up()
    expect(view).not_to_have_attribute("data-turn", str(turn))
    expect(view).to_have_attribute("data-chosen", "")  # a drag is no pick
    turned = page.evaluate(where)
    assert spot != turned
    page.mouse.wheel(0, -400)
    page.wait_for_function(f"(was) => ({where})().x !== was", arg=turned["x"])


def test_arrow_keys_turn_the_piece(opened: Opened) -> None:
    page = opened()
    view = called_up(page)
    page.get_by_role("button", name="front", exact=True).click()
    expect(view).to_have_attribute("data-turn", "0.00 0.00")
    page.locator("piece-view canvas").focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowUp")
    expect(view).to_have_attribute("data-turn", "0.26 0.26")  # 15 degrees each


def test_the_door_comes_away_first_and_everything_comes_apart(opened: Opened) -> None:
    page = opened()
    called_up(page)
    pull = page.get_by_role("button", name="pull apart")
    said = page.locator("dialog .said")
    pull.click()
    expect(said).to_contain_text(re.compile(r"step 1 of \d: .*\bdoor\b"))
    expect(said).not_to_contain_text("door.panel")  # as one
    for _ in range(12):
        if pull.is_disabled():
            break
        pull.click()
    expect(pull).to_be_disabled()
    together = page.get_by_role("button", name="put together")
    while together.is_enabled():
        together.click()
    expect(said).to_have_text(f"All {TALLY}.")


def test_all_of_it_goes_by_keyboard_from_the_list_of_parts(opened: Opened) -> None:
    page = opened()
    strip = page.locator('[data-part="shelf"] > h4 > button')
    strip.focus()
    page.keyboard.press("Enter")
    expect(strip).to_have_attribute("aria-expanded", "true")
    by_keyboard(page, "Show it alone")
    view = page.locator("piece-view")
    expect(view).to_have_attribute("data-state", "drawn")
    expect(view).to_have_attribute("data-chosen", "shelf")
    expect(view).to_have_attribute("data-seen", "1")
    by_keyboard(page, "show the others")
    expect(view).to_have_attribute("data-seen", f"{MADE}")
    by_keyboard(page, "pull apart")
    expect(page.locator("dialog .said")).to_contain_text("shelf chosen. Pulled apart, step 1 of")
    page.locator("summary", has_text="Parts and joints by name").focus()
    page.keyboard.press("Enter")
    by_keyboard(page, "left side")
    expect(view).to_have_attribute("data-chosen", "left side")
    by_keyboard(page, "hide the others")
    expect(view).to_have_attribute("data-seen", "1")
    page.keyboard.press("Escape")
    expect(page.locator("dialog")).to_have_count(0)
    expect(page.get_by_role("button", name="Show it alone")).to_be_focused()


def test_a_joint_is_looked_at_with_the_others_faded(opened: Opened) -> None:
    page = opened("#joints")
    page.get_by_role("button", name="Look at bottom rail in left stile", exact=True).click()
    view = page.locator("piece-view")
    expect(view).to_have_attribute("data-state", "drawn")
    expect(view).to_have_attribute("data-seen", "2")
    expect(page.locator("dialog h2")).to_have_text("bottom rail in left stile")
    wide = page.evaluate(
        """() => {
          const view = document.querySelector('piece-view');
          return view.whereIs('right stile').x - view.whereIs('left stile').x;
        }"""
    )
    assert wide > 1280 / 2  # the piece, some 380 wide when all of it is seen, is near now
    page.get_by_role("button", name="pull apart").click()
    expect(page.locator("dialog .said")).to_contain_text("step 1 of 1")


def test_a_rail_leaves_its_stile_along_the_tenon_and_no_other_way(opened: Opened) -> None:
    page = opened("#joints")
    page.get_by_role("button", name="Look at top rail in left stile", exact=True).click()
    expect(page.locator("piece-view")).to_have_attribute("data-state", "drawn")
    page.get_by_role("button", name="front", exact=True).click()
    apart = """() => {
      const view = document.querySelector('piece-view');
      const [rail, stile] = [view.whereIs('top rail'), view.whereIs('left stile')];
      return [rail.x - stile.x, stile.y - rail.y];
    }"""
    right, up = page.evaluate(apart)
    page.get_by_role("button", name="pull apart").click()
    expect(page.locator("dialog .said")).to_contain_text("step 1 of 1")
    more_right, as_far_up = page.evaluate(apart)
    # the view is framed anew, so compare as shares: 8 - 3/4 in right, 23 1/4 - 12 in up at first
    assert up / right == pytest.approx(11.25 / 7.25, abs=0.01)
    assert more_right / as_far_up > 1.2 * right / up


def test_where_nothing_can_be_drawn_the_lists_remain(opened: Opened) -> None:
    page = opened(script="HTMLCanvasElement.prototype.getContext = () => null;")
    page.get_by_role("button", name="Call up the piece").click()
    view = page.locator("piece-view")
    expect(view).to_have_attribute("data-state", "failed")
    expect(view).to_contain_text("This browser cannot draw the piece in space.")
    page.locator("summary", has_text="Parts and joints by name").click()
    page.get_by_role("button", name="shelf", exact=True).click()
    expect(page.locator(".caption")).to_contain_text("about 14 3/8 long")


def test_the_piece_is_described_to_whoever_cannot_see_it(opened: Opened) -> None:
    page = opened()
    called_up(page)
    page.get_by_role("button", name="front", exact=True).click()
    picture = page.locator("piece-view canvas")
    expect(picture).to_have_attribute(
        "aria-label", re.compile(rf"^Wall cupboard, drawn front\. All {TALLY}\. Arrow keys")
    )
