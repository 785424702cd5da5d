"""Openings that nobody states are of one height: rows of a front, and room between shelves."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.edited import DEMO, edited

from scantling.setting_out import SettingOut
from scantling.units import INCH

PIECES = Path(__file__).parents[2] / "pieces"
METRIC = (PIECES / "metric" / "bookcase" / "piece.toml").read_text("utf-8")
METRIC = METRIC.replace('measure = "mm" ', 'measure = "mm"\nfinest = 0.5 ')
CASE = (PIECES / "bookcase" / "piece.toml").read_text("utf-8")
ROW = '{ opening = "middle" }'


def tall(found: SettingOut) -> dict[str, Fraction]:
    return {
        name.removesuffix(" opening.tall"): found.sizes[name]
        for name in found.sizes
        if name.endswith(" opening.tall")
    }


def test_rows_that_nobody_states_share_what_the_stated_ones_leave() -> None:
    # 1880 less rails of 60, 40, 40 and 70, feet of 10 and the folders' 330 leaves twice 665
    assert tall(edited(METRIC)) == {"upper": 665, "middle": 665, "folders": 330}


def test_equal_may_be_said() -> None:
    said = METRIC.replace(ROW, '{ opening = "middle", tall = "Equal" }')
    assert tall(edited(said)) == tall(edited(METRIC))


def test_an_odd_mark_goes_to_one_opening_and_no_rail_is_made_odd_for_it() -> None:
    # marks of 1/2: 1880.5 leaves 1330.5, or 2661 marks
    text = METRIC.replace("tall  = 1880 ", 'tall  = "1880.5" ').replace(
        '{ rail = "upper rail", tall = 40 }', '{ rail = "upper rail" }'
    )
    found = edited(text)
    openings = tall(found)
    assert found.sizes["upper rail.width"] == 38  # what is usual
    assert abs(openings["upper"] - openings["middle"]) == Fraction(1, 2)
    assert openings["upper"] + openings["middle"] == Fraction(26650, 20)


def shelves(*heights: int | None) -> SettingOut:
    """The bookcase with other fixed shelves, `a` being written first."""
    head, rest = CASE.split('[shelf."lower shelf"]')
    sections = [
        f'[shelf.{name}]\njoint = "housing"\n' + (f"top_face = {height}\n" if height else "")
        for name, height in zip("abc", heights, strict=False)
    ]
    return edited("\n".join((head, *sections)) + "\n[back]" + rest.split("[back]")[1])


# The bottom's top face is at 3, the rails under the top begin at 48 - 3/4. All shelves are 3/4.
@pytest.mark.parametrize(
    ("said", "stand"),
    {
        # less two shelves of 3/4, 44 1/4 leaves thrice 14 1/4: 3 + 15 and 3 + 30
        "none placed": ((None, None), (18, 33)),
        # 32 - 3/4 - 3 less 3/4 is twice 13 3/4
        "the lower one not placed": ((None, 32), (Fraction(35, 2), 32)),
        # from 40 down as from 3 up: between 40 - 3/4 and 20 there are twice 9 1/4
        "written from the top down": ((40, None, 20), (40, 30, 20)),
    }.values(),
)
def test_shelves_that_nobody_places_make_equal_openings(
    said: tuple[int | None, ...], stand: tuple[Fraction | int, ...]
) -> None:
    found = shelves(*said)
    assert [found.sizes[f"{name}.top face"] / INCH for name in "abc"[: len(said)]] == list(stand)


def test_an_opening_alone_takes_what_is_left() -> None:
    assert tall(edited(DEMO))["doors"] == 25 * INCH


def test_what_is_bought_for_a_metric_piece_is_metric_whatever_the_tools() -> None:
    found = edited(METRIC)  # with a shop of inch tools
    bought = {part.family: part.extent.length for part in found.parts if part.wood == "steel"}
    # lengths of screws and nails as sold in millimetres: common practice
    assert bought["screw"] in {25, 30, 35, 40}
    assert bought["nail"] in {25, 30, 40, 50}
