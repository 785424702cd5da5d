"""The year in the packet and in `setting-out.json`: what is told, and gaps drawn full size."""

from __future__ import annotations

import io
from functools import cache

import pdfplumber
import pytest
from pdfplumber.page import Page
from tests.papers import read_back
from tests.pieces.edited import DEMO, edited

from scantling.papers import Sheet
from scantling.papers._year import year
from scantling.papers.packet import Packet
from scantling.setting_out import SettingOut, year_fits
from scantling.units import INCH

POINT = 25.4 / 72  # [mm]
TIGHT = DEMO.replace('hinge = "1/16", meeting = "1/8"', 'hinge = "1/32", meeting = "1/16"')


@cache
def tight() -> SettingOut:
    """The demo with doors that bind."""
    return edited(TIGHT)


@cache
def pages() -> list[tuple[str, list[tuple[float, float, float]]]]:
    """Text of each page of the year, and its thick level lines: from, to, how far down. [mm]"""
    made = Packet.render(tight(), sheet=Sheet.A4)["packet.pdf"]
    texts = read_back.texts(made)
    first = next(i for i, text in enumerate(texts) if text.startswith("Through the year"))
    last = next(i for i, text in enumerate(texts) if "How far each wide part moves" in text)
    with pdfplumber.open(io.BytesIO(made), pages=[*range(first + 1, last + 2)]) as opened:
        lines = [_thick_and_level(page) for page in opened.pages]
    return list(zip(texts[first : last + 1], lines, strict=True))


def _thick_and_level(page: Page) -> list[tuple[float, float, float]]:
    return [
        (line["x0"] * POINT, line["x1"] * POINT, line["top"] * POINT)
        for line in page.lines
        if line["height"] < 1e-3 and line["linewidth"] * POINT == pytest.approx(0.5, abs=0.01)
    ]


def test_the_page_tells_what_binds_first_and_what_to_do() -> None:
    text, _ = pages()[0]
    said = " ".join(text.split())
    assert "The doors bind in August by 3/64 in. Plane each meeting stile 3/64 in" in said
    assert said.index("The doors bind") < said.index("Gap over the drawer fronts")
    assert "driest in February and dampest in August, with a sine wave between" in said


def test_gaps_stand_full_size_month_by_month() -> None:
    _, lines = pages()[0]
    # of each month the wood above, then the wood below, in the order they are drawn
    downs = [down for start, end, down in lines if end - start == pytest.approx(5.4, abs=0.01)]
    drawn = [below - above for above, below in zip(downs[::2], downs[1::2], strict=True)]
    assert len(drawn) >= 3 * 13, "the day it is made, and twelve months"
    fits = [fit for fit in year_fits(tight()) if max(fit.made, *fit.months) <= 14]
    sizes = [max(float(size), 0) for fit in fits for size in (fit.made, *fit.months)]
    assert drawn == pytest.approx(sizes[: len(drawn)], abs=0.005)


def test_the_file_tells_the_same_month_by_month() -> None:
    found = year(tight())
    assert (
        found["moisture"]["months"][1]
        == found["moisture"]["driest"]
        == pytest.approx(7.8, abs=0.05)
    )
    assert found["moisture"]["months"][7] == found["moisture"]["dampest"]
    assert (found["driest_in"], found["dampest_in"]) == ("February", "August")
    assert found["air"]["bench"] == 38
    assert found["air"]["months"][1] == found["air"]["driest"] == 40
    assert found["air"]["months"][7] == found["air"]["dampest"] == 75
    doors = found["fits"][0]
    assert (doors["what"], doors["holds"]) == ("gaps across the doors, together", False)
    assert doors["months"][7] == doors["in_damp"]
    assert doors["made"]["as_written"] == "1/8"
    assert doors["make_least"]["value_mm"] > float(INCH / 8)
    assert (
        doors["place"] == f"piece.toml {TIGHT[: TIGHT.index('gaps   = {')].count(chr(10)) + 1}:10"
    )


def test_wide_parts_carry_their_movement() -> None:
    (top,) = (part for part in year(tight())["wide_parts"] if part["part"] == "top")
    # 19 in of white ash, 0.00274 a percent, 6.69 points from 7.76 to 14.45 %
    assert top["swing"]["value_mm"] / 25.4 == pytest.approx(19 * 0.00274 * 6.69, abs=0.001)
    assert top["coefficient"] == pytest.approx(0.00274)
