"""The year on the page: each gap at its own size, and the same figures for whoever reads."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect
from tests.page.conftest import GOOD, Opened, Served
from tests.web.told import year

pytestmark = pytest.mark.page

PX = 96 / 25.4  # [px/mm] CSS Values and Units 3, section 5.2
SECTION = "#through-the-year"
FITS = year("1/16")["fits"]


def fit(page: Page, what: str) -> Locator:
    return page.locator(".fit", has=page.get_by_role("heading", name=what))


def drawn(one: Locator) -> list[float]:
    """What is white between the wood above and the wood below, by column. [mm]"""
    gaps: list[float] = one.locator(".year-gap").evaluate(
        """(svg) => [...svg.querySelectorAll("[data-month]")].map((each) => {
          const [above, below] = [".above", ".below"]
            .map((edge) => each.querySelector(edge).getBoundingClientRect());
          return below.top - above.bottom;
        })"""
    )
    return [gap / PX for gap in gaps]


def sizes(told: dict[str, Any]) -> list[float]:
    return [each["value_mm"] for each in (told["made"], *told["months"])]


@pytest.mark.parametrize("wide", [390, 1280])
def test_gaps_stand_at_the_size_they_are(opened: Opened, wide: int) -> None:
    page = opened(SECTION, wide=wide)
    panel = FITS[1]
    assert drawn(fit(page, "Room beside the panel")) == pytest.approx(sizes(panel), abs=0.02)
    # where wood meets wood no gap is left, and the overlap is crossed out as deep as it is
    door = fit(page, "Gap across the door")
    assert drawn(door) == pytest.approx([max(0, size) for size in sizes(FITS[0])], abs=0.02)
    crossed = door.locator("[data-month=August] .bound").evaluate("(path) => path.getBBox().height")
    assert crossed == pytest.approx(25.4 / 32, abs=0.001)
    expect(door.locator(".lens")).to_have_text("Too much wood: August, five times as large")
    assert door.locator(".year-gap .bound").count() == sum(size < 0 for size in sizes(FITS[0]))


def test_of_a_wide_gap_alike_is_left_out_of_every_month(opened: Opened) -> None:
    one = fit(opened(SECTION), "Air behind the shelf")
    shown, true = drawn(one), sizes(FITS[-1])
    out = true[0] - shown[0]
    assert out > 25
    assert shown == pytest.approx([size - out for size in true], abs=0.02)
    expect(one).to_contain_text("At the jagged line a part of the gap is left out")


def test_what_fails_says_so_in_a_word_and_what_to_do(opened: Opened) -> None:
    page = opened(SECTION)
    expect(page.locator(".fit.fails")).to_have_count(1)
    door = fit(page, "Gap across the door")
    expect(door.locator(".verdict")).to_contain_text("Mind")
    expect(door).to_contain_text("The door binds in August by 1/32 in.")
    expect(door).to_contain_text("Make it 5/32 in or more today, not 1/16 in.")
    expect(door.get_by_role("img")).to_have_attribute(
        "aria-label",
        "gap across the door, full size: made 1/16, least -1/32 in August, most 1/16 in February",
    )
    expect(door.locator("text.lowest")).to_have_text("A")


def test_a_gap_thinner_than_a_line_is_enlarged(opened: Opened) -> None:
    panel = fit(opened(SECTION), "Room beside the panel")
    expect(panel.locator(".lens")).to_have_text("August, ten times as large")
    heights = panel.locator(".lens .saw").evaluate("(path) => path.getBBox().height")
    # 1/64 in ten times, and the middles of two lines half a millimetre wide
    assert heights == pytest.approx(10 * 25.4 / 64 + 0.5, abs=0.01)


def test_fits_of_one_name_are_told_apart_by_their_parts(opened: Opened) -> None:
    page = opened(SECTION)
    titles = page.locator(".fit h4").all_inner_texts()
    assert titles[1:4] == [
        "Room beside the panel",
        "Gap between boards (board 1, board 2)",
        "Gap between boards (board 3, board 4 and 2 more)",
    ]
    heads = page.locator(".year-figures tbody th").all_inner_texts()
    assert heads[3:6] == titles[1:4]


def test_the_table_tells_what_is_drawn(opened: Opened) -> None:
    page = opened(SECTION)
    table = page.get_by_role("region", name="The same in figures")
    rows = [row.all_inner_texts() for row in map(cells, table.locator("tbody tr").all())]
    told = [
        [each["as_written"] for each in (one["made"], *one["months"], one["least"])] for one in FITS
    ]
    assert rows[2:] == told
    expect(table.locator("tr.fails th")).to_have_text("Gap across the door, mind")
    assert rows[0][:3] == ["38.0", "42.7", "40.0"]
    expect(table.locator("td.lowest")).to_have_text(["-1/32", "1/64", "1/16", "1/16", "1 7/16"])


def cells(row: Locator) -> Locator:
    return row.locator("td")


def test_the_table_is_reached_and_moved_by_the_keyboard(opened: Opened) -> None:
    page = opened(SECTION, wide=390)
    region = page.get_by_role("region", name="The same in figures")
    region.focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_function("() => document.querySelector('.year-figures').scrollLeft > 0")


def test_the_air_is_a_line_and_its_months_are_said_plainly(opened: Opened) -> None:
    page = opened(SECTION)
    expect(
        page.get_by_role(
            "img", name="Humidity of the room: 40 % in February, 75 % in August; at the bench 38 %."
        )
    ).to_be_visible()
    expect(page.locator("main")).to_contain_text("driest in February and dampest in August")


def test_wide_parts_carry_the_sign_of_their_change(opened: Opened) -> None:
    region = opened(SECTION).get_by_role("region", name="How far each wide part moves")
    # shrinking by less than nothing is growing
    expect(region.locator("td.number")).to_have_text(["7 1/4", "+1/8", "+1/64", "7/64"])


def test_an_edit_that_eases_a_fit_shows_by_itself(opened: Opened, served: Served) -> None:
    page = opened(SECTION)
    expect(page.locator(".fit.fails")).to_have_count(1)
    served.save(GOOD.replace("Wall", "Eased"))
    expect(page.locator(".fit.fails")).to_have_count(0)
    eased = sizes(year("1/4")["fits"][0])
    assert drawn(fit(page, "Gap across the door")) == pytest.approx(eased, abs=0.02)


def test_on_paper_the_gaps_keep_their_size(opened: Opened) -> None:
    page = opened(SECTION)
    page.emulate_media(media="print")
    expect(page.locator(".stick")).to_be_hidden()
    assert drawn(fit(page, "Room beside the panel")) == pytest.approx(sizes(FITS[1]), abs=0.02)
