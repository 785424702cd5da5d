"""The page as a maker reads it: sections, strips, sketches, figures."""

import re

import pytest
from playwright.sync_api import Page, expect
from tests.page.conftest import Opened, Served
from tests.web.cupboard import parts

pytestmark = pytest.mark.page


def part(page: Page, name: str) -> Page:
    page.locator(f'[data-part="{name}"] > h4 > button').click()
    return page


def test_every_part_has_its_strip(opened: Opened) -> None:
    page = opened()
    page.locator("summary", has_text="Bought").click()
    names = [each.get_attribute("data-part") for each in page.locator(".part").all()]
    assert sorted(map(str, names)) == sorted(each.name for each in parts())


def test_a_strip_is_as_long_as_its_part(opened: Opened) -> None:
    page = opened()
    widths = {
        name: page.locator(f'[data-part="{name}"] .strip .body').bounding_box()
        for name in ("left side", "bottom")
    }
    long, short = widths["left side"], widths["bottom"]
    assert long
    assert short
    # 24 in and 15 in
    assert short["width"] / long["width"] == pytest.approx(15 / 24, abs=0.01)


def test_the_stick_leads_to_every_section(opened: Opened) -> None:
    page = opened()
    for title in ("Joints", "Findings", "Through the year", "To pin up", "Setting out"):
        page.get_by_role("navigation").get_by_role("link", name=re.compile(title)).click()
        expect(page.locator("main h2")).to_have_text(title)
        expect(page.locator("main h2")).to_be_focused()
        here = page.locator("nav [aria-current=page]")
        expect(here).to_have_count(1)
        expect(here).to_contain_text(title)


def test_the_sketch_of_a_part_opens_under_its_strip(opened: Opened) -> None:
    page = part(opened(), "left side")
    under = page.locator('[data-part="left side"] .under')
    expect(under.get_by_role("img", name="Drawing of left side")).to_be_visible()
    # housings and rabbet as `cupboard.py` cuts them
    expect(under.locator(".cuts li")).to_have_text(
        [
            re.compile(r"a\s*housing for bottom in left side: 1 1/4 from the reference end"),
            re.compile(r"b\s*housing for top in left side: 23 1/4 from the reference end"),
            re.compile(r"c\s*back rabbet for back: 1/4 across; 3/8 deep"),
        ]
    )


def test_holes_in_a_row_are_written_once(opened: Opened) -> None:
    page = part(opened(), "right side")
    rows = page.locator('[data-part="right side"] .cuts li')
    expect(rows.last).to_have_text(
        re.compile(r"d\s*3 times hole for shelf: 11, 12, 13 to the centre, from the reference end")
    )


def test_a_measured_figure_does_not_stand_by_colour_alone(opened: Opened) -> None:
    page = opened()
    measured = page.locator('[data-part="left side"] .measured')
    expect(measured).to_have_text("3/4")
    expect(measured).to_have_css("text-decoration-style", "double")
    about = page.locator('[data-part="shelf"] .about')
    expect(about).to_have_text("about 14 3/8")


def test_fractions_are_drawn_as_such_and_digits_stand_in_columns(opened: Opened) -> None:
    page = opened()
    page.evaluate("() => document.fonts.ready")
    widths = page.evaluate(
        """() => [["111", ""], ["888", ""], ["13/16", "fraction"], ["13/16", ""]].map(
          ([text, kind]) => {
            const made = document.createElement("span");
            made.textContent = text;
            made.className = kind;
            document.querySelector("main").append(made);
            const { width } = made.getBoundingClientRect();
            made.remove();
            return width;
          })"""
    )
    ones, eights, drawn, plain = widths
    assert ones == pytest.approx(eights, abs=0.1)
    assert drawn < 0.85 * plain
    loaded = page.evaluate("() => [...document.fonts].filter((f) => f.status === 'loaded').length")
    assert loaded >= 3


def test_a_part_is_found_by_a_word_of_its_name(opened: Opened) -> None:
    page = opened()
    expect(page.locator(".seek-count")).to_have_text("15 parts, 4 pieces of hardware")
    page.get_by_label("Find a part").fill("door rail")
    expect(page.locator(".part")).to_have_count(2)
    expect(page.locator(".seek-count")).to_have_text("Found: 2 parts")
    page.get_by_label("Find a part").fill("zebra")
    expect(page.locator("main")).to_contain_text("No part answers to “zebra”.")


def test_joints_alike_are_set_once(opened: Opened) -> None:
    page = opened("#joints")
    housing = page.locator(".kind", has_text="Housing")
    expect(housing.locator(".setting")).to_have_count(1)
    expect(housing.get_by_role("button")).to_have_count(4)


def test_findings_say_wood_cure_and_place(opened: Opened) -> None:
    page = opened("#findings")
    halt = page.locator(".weighs-halt")
    expect(halt).to_have_count(1)
    expect(halt.locator(".says")).to_have_text("The door binds in August by 1/32.")
    expect(halt.locator(".cure")).to_have_text("Plane each stile 1/64.")
    expect(halt.locator(".where")).to_have_text("piece.toml 2:8")
    expect(halt.locator("mark")).to_have_text("16 1/4")
    expect(page.locator("nav")).to_contain_text(re.compile(r"Findings\s*1"))


def test_the_cutting_list_hangs_to_be_pinned_up(opened: Opened) -> None:
    page = opened("#to-pin-up")
    heads = page.locator("thead th").all_inner_texts()
    assert heads[:7] == ["mark", "part", "wood", "how many", "long", "wide", "thick"]
    expect(page.locator("tbody tr")).to_have_count(11)


def test_a_part_is_drawn_under_its_strip_and_drawn_anew(opened: Opened, served: Served) -> None:
    page = part(opened(), "left side")
    drawing = page.get_by_role("img", name="The left side of the Wall cupboard")
    expect(drawing).to_be_visible()
    expect(drawing.locator("text")).to_have_text("7 1/4 Wall cupboard")
    expect(drawing.locator("tspan.fraction")).to_have_text("1/4")
    box = drawing.locator("path").bounding_box()
    assert box
    assert box["height"] == pytest.approx(3 * box["width"], rel=0.01)
    served.save('name = "Corner cupboard"\nwide = 16 1/4\n')
    expect(page.get_by_role("img", name="The left side of the Corner cupboard")).to_be_visible()


def test_words_and_figures_are_chosen_at_the_foot(opened: Opened) -> None:
    page = opened("#to-pin-up")
    expect(page.locator("#list")).to_have_text("Stock bill")
    expect(page.locator(".overall")).to_contain_text("in millimeters")
    foot = page.locator("footer")
    expect(foot.get_by_role("button", name="millimeters")).to_have_attribute("aria-pressed", "true")
    expect(foot.get_by_role("button", name="US words")).to_have_attribute("aria-pressed", "true")
    with page.expect_request("**/api/show?*") as asked:
        foot.get_by_role("button", name="inches").click()
    assert asked.value.post_data_json == {"words": "US", "figures": "inch"}
    with page.expect_request("**/api/show?*") as asked:
        foot.get_by_role("button", name="UK words").click()
    assert asked.value.post_data_json == {"words": "UK", "figures": "inch"}  # both are wished for


def test_hostile_text_stays_text(opened: Opened, served: Served) -> None:
    hostile = "<img src=x onerror=alert(1)><script>alert(2)</script>"
    served.save(f'name = "{hostile}"\nwide = 16 1/4\n')
    page = opened()
    page.on("dialog", lambda dialog: pytest.fail(dialog.message))
    expect(page.locator("h1")).to_have_text(hostile)
    assert page.locator("h1 *").count() == 0


def test_the_first_load_is_light(opened: Opened) -> None:
    page = opened()
    page.evaluate("document.fonts.ready")
    sizes: dict[str, float] = page.evaluate(
        """() => Object.fromEntries(performance.getEntriesByType("resource")
             .filter((each) => !each.name.includes("/api/"))
             .map((each) => [each.name.split("/").pop(), each.encodedBodySize]))"""
    )
    assert not any(name.startswith("view-") for name in sizes)
    assert 50_000 < sum(sizes.values()) < 250_000
