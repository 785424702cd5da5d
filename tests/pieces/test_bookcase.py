"""The bookcase that ships as an example: hand figures, and a shelf where none can be."""

from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from scantling.piece import read
from scantling.setting_out import SettingOut, set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.units import INCH

TEXT = (Path(__file__).parents[2] / "pieces" / "bookcase" / "piece.toml").read_text("utf-8")

# Sides 48 tall and 11 deep. Clear width 30 - 2 x 3/4 = 28 1/2, so a shelf let in 1/4 at both ends
# is 29 long; before the rabbet of 9/16 it is 11 - 9/16 = 10 7/16 wide. Rails under the top reach
# 3/4 - 1/4 = 1/2 into each side: 28 1/2 + 2 x 1/2 = 29 1/2. Between rabbets 3/8 deep the back has
# 28 1/2 + 2 x 3/8 = 29 1/4.
BY_HAND = {
    "left side": ("48", "11", "3/4"),
    "bottom": ("29", "10 7/16", "3/4"),
    "lower shelf": ("29", "10 7/16", "3/4"),
    "upper shelf": ("29", "10 7/16", "3/4"),
    "front sub-top rail": ("29 1/2", "2 1/2", "3/4"),
}


@cache
def worked(text: str = TEXT) -> SettingOut:
    return set_out(read(text), shop=default_shop(), habits=Habits())


def test_nothing_stops_the_work() -> None:
    assert not worked().halts


@pytest.mark.parametrize("name", BY_HAND)
def test_its_parts_are_as_by_hand(name: str) -> None:
    part = next(part for part in worked().parts if part.name == name)
    extent = part.extent
    assert (extent.length, extent.width, extent.thickness) == tuple(
        sum(map(Fraction, text.split())) * INCH for text in BY_HAND[name]
    )


def test_boards_of_the_back_fill_the_opening_between_the_rabbets() -> None:
    boards = [part for part in worked().parts if part.family == "back board"]
    # five boards lap by 3/8 less a gap of 1/8 at four places, with 1/16 at both edges
    faces = sum(board.extent.width for board in boards) - 4 * Fraction(1, 4) * INCH
    assert faces + 2 * Fraction(1, 16) * INCH == Fraction(117, 4) * INCH


def test_a_shelf_over_the_top_is_told_once_at_its_own_line() -> None:
    text = TEXT.replace("top_face = 32", "top_face = 52")
    (halt,) = [found for found in worked(text).findings if found.weight == "halt"]
    assert halt.place is not None
    assert text.split("\n")[halt.place.line - 1] == "top_face = 52"
    assert "48 in leaves it at most 47 in" in halt.says
