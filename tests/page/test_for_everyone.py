"""Readable and workable for everyone: axe, both schemes, keyboard, small screens, large targets.

References:
    WCAG 2.2: 1.4.3 (contrast), 1.4.10 (reflow at 320 px), 2.4.7 (focus visible), 2.5.8 (targets of
    24 px), 4.1.3 (status messages). axe-core 4.14, kept beside this file.
"""

from pathlib import Path
from typing import Any, Literal

import pytest
from playwright.sync_api import Page, expect
from tests.page.conftest import GOOD, Opened, Served

pytestmark = pytest.mark.page

AXE = Path(__file__).with_name("axe.min.js").read_text()
SECTIONS = ("setting-out", "joints", "findings", "through-the-year", "record", "to-pin-up")
SMALLEST = 24  # [px]

RUN = """async () => {
  const { violations } = await axe.run(document, { resultTypes: ["violations"] });
  return violations.map((each) => [each.id, ...each.nodes.map((node) => node.html.slice(0, 160))]);
}"""


def violations(page: Page) -> list[Any]:
    found: list[Any] = page.evaluate(RUN)
    return found


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(
    opened: Opened, served: Served, scheme: Literal["light", "dark"]
) -> None:
    page = opened(scheme=scheme, script=AXE)
    page.locator('[data-part="left side"] > h4 > button').click()
    for section in SECTIONS:
        page.goto(f"{served.address}#{section}")
        page.wait_for_selector("main h2")
        assert violations(page) == [], section
    page.get_by_role("button", name="Call up the piece").click()
    expect(page.locator("piece-view")).to_have_attribute("data-state", "drawn")
    page.locator("summary", has_text="Parts and joints by name").click()
    page.get_by_role("button", name="shelf", exact=True).click()
    assert violations(page) == [], "the piece"
    page.keyboard.press("Escape")
    served.save(GOOD.replace("16", "?"))
    expect(page.locator(".broken")).to_be_visible()
    assert violations(page) == [], "a broken file"


def test_axe_is_not_blind(opened: Opened) -> None:
    page = opened(script=AXE)
    page.evaluate("() => document.querySelector('#seek').labels[0].remove()")
    assert "label" in [each[0] for each in violations(page)]


@pytest.mark.parametrize("section", SECTIONS)
def test_nothing_has_to_be_scrolled_sideways_on_a_small_screen(
    opened: Opened, section: str
) -> None:
    page = opened(f"#{section}", wide=320, tall=640)
    if section == "setting-out":
        page.locator('[data-part="left side"] > h4 > button').click()
    assert page.evaluate("() => document.documentElement.scrollWidth") == 320
    cut_off = page.evaluate(
        """() => [...document.querySelectorAll(".work *")]
             .filter((each) => !each.closest(".wide, .unseen, .line, svg"))
             .filter((each) => each.getBoundingClientRect().right > 320.5)
             .map((each) => each.outerHTML.slice(0, 120))"""
    )
    assert cut_off == []


def test_the_piece_fits_a_small_screen(opened: Opened) -> None:
    page = opened(wide=320, tall=640)
    page.get_by_role("button", name="Call up the piece").click()
    view = page.locator("piece-view")
    expect(view).to_have_attribute("data-state", "drawn")
    box = view.bounding_box()
    assert box
    assert box["width"] == 320
    assert box["height"] >= 180
    assert page.evaluate("() => document.querySelector('dialog').scrollWidth") <= 320


@pytest.mark.parametrize("wide", [320, 1280])
def test_every_target_is_large_enough(opened: Opened, wide: int) -> None:
    page = opened(wide=wide)
    page.locator('[data-part="left side"] > h4 > button').click()
    small: list[Any] = []
    seen = 0
    measure = """(within) => [...document.querySelectorAll(within)].flatMap((root) =>
      [...root.querySelectorAll("a, button, input, summary")]
      .filter((each) => !each.closest("p.sum"))  // inline in a sentence: 2.5.8 spares it
      .map((each) => [each.textContent.trim(), each.getBoundingClientRect()])
      .map(([text, { width, height }]) => [text, width, height]))"""
    for section in SECTIONS:
        page.goto(page.url.partition("#")[0] + f"#{section}")
        found = page.evaluate(measure, "body")
        seen += len(found)
        small += [each for each in found if min(each[1:]) < SMALLEST]
    page.get_by_role("button", name="Call up the piece").click()
    expect(page.locator("piece-view")).to_have_attribute("data-state", "drawn")
    found = page.evaluate(measure, "dialog")
    small += [each for each in found if 0 < min(each[1:]) < SMALLEST]
    assert seen > 60
    assert small == []


def test_focus_is_seen_wherever_it_goes(opened: Opened) -> None:
    page = opened()
    for _ in range(14):
        page.keyboard.press("Tab")
        style = page.evaluate(
            """() => {
              const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement);
              return [document.activeElement.tagName, outlineStyle, parseFloat(outlineWidth)];
            }"""
        )
        assert style[0] != "BODY"
        assert style[1] == "solid"
        assert style[2] >= 2


def test_the_policy_holds_in_the_browser(opened: Opened) -> None:
    page = opened(minds_console=False)
    page.evaluate(
        """() => {
          window.broken = [];
          document.addEventListener("securitypolicyviolation", (event) => {
            window.broken.push(event.effectiveDirective);
          });
          const made = document.createElement("img");
          made.src = "http://example.invalid/x.png";
          document.body.append(made);
          document.body.setAttribute("style", "color: red");
        }"""
    )
    page.wait_for_function("() => window.broken.length > 1")
    assert sorted(page.evaluate("() => window.broken")) == ["img-src", "style-src-attr"]
