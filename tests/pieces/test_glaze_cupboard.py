"""The demo piece against sizes worked by hand beside its description, as an exact system."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from scantling.piece import read
from scantling.piece._drafting import draft
from scantling.setting_out import SettingOut
from scantling.setting_out.bench import Bench
from scantling.setting_out.memory import Memory
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.units import INCH, Unit, length

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"

# length, width, thickness as printed beside the description of the piece. The back boards are
# printed there as 33 3/4 long and, in another place, as 1/16 short of the top: the equation of
# the form (a board ends 1/16 below the top) gives 33 11/16.
BY_HAND = {
    "left side": "37 | 17 1/4 | 3/4",
    "right side": "37 | 17 1/4 | 3/4",
    "bottom": "41 | 16 11/16 | 3/4",
    "deck": "41 | 16 11/16 | 3/4",
    "front sub-top rail": "41 1/2 | 2 1/2 | 3/4",
    "rear sub-top rail": "41 1/2 | 2 1/2 | 3/4",
    "partition": "5 5/8 | 16 11/16 | 3/4",
    "left kicker": "12 9/16 | 1 3/4 | 1 1/2",
    "right kicker": "12 9/16 | 1 3/4 | 1 1/2",
    "centre kicker": "12 9/16 | 3 | 1 1/2",
    "drawer 1 left guide": "16 | 2 | 1",
    "drawer 1 right guide": "16 | 2 | 3/8",
    "drawer 2 left guide": "16 | 2 | 3/8",
    "drawer 2 right guide": "16 | 2 | 1",
    "left stile": "37 | 1 3/4 | 3/4",
    "right stile": "37 | 1 3/4 | 3/4",
    "top rail": "41 | 1 1/2 | 3/4",
    "mid rail": "41 | 1 1/2 | 3/4",
    "bottom rail": "41 | 3 | 3/4",
    "mullion": "6 | 1 1/2 | 3/4",
    "left door.left stile": "24 7/8 | 2 1/4 | 3/4",
    "right door.right stile": "24 7/8 | 2 1/4 | 3/4",
    "left door.top rail": "17 5/8 | 2 1/4 | 3/4",
    "left door.bottom rail": "17 5/8 | 3 | 3/4",
    "left door.panel": "20 5/16 | 15 | 1/2",
    "right door.panel": "20 5/16 | 15 | 1/2",
    "loose shelf 1": "40 3/8 | 15 1/2 | 1",
    "loose shelf 2": "40 3/8 | 15 1/2 | 1",
    "back board 1": "33 11/16 | 7 1/32 | 1/2",
    "back board 6": "33 11/16 | 7 1/32 | 1/2",
    "top": "43 1/2 | 19 | 7/8",
    "drawer 1.front": "18 7/16 | 4 7/8 | 3/4",
    "drawer 2.left side": "15 3/4 | 4 7/8 | 1/2",
    "drawer 1.back": "18 7/16 | 4 | 1/2",
    "drawer 2.bottom": "17 7/8 | 15 1/2 | 3/8",
}


@pytest.mark.parametrize("name", BY_HAND)
def test_part_is_as_worked_by_hand(glaze_cupboard: SettingOut, name: str) -> None:
    by_hand = tuple(length(text, unit=Unit.INCH) for text in BY_HAND[name].split(" | "))
    extent = glaze_cupboard.part(name).extent
    assert (extent.length, extent.width, extent.thickness) == by_hand


def test_it_has_the_parts_listed(glaze_cupboard: SettingOut) -> None:
    assert len(glaze_cupboard.made) == 49
    assert glaze_cupboard.counted == "49 parts, 48 pieces of hardware"


def test_it_stands_as_large_as_said(glaze_cupboard: SettingOut) -> None:
    wide, deep, tall = (side / INCH for side in glaze_cupboard.overall)
    assert (wide, deep, tall) == (Fraction(87, 2), Fraction(19), Fraction(303, 8))


def test_nothing_stops_the_work(glaze_cupboard: SettingOut) -> None:
    assert [f for f in glaze_cupboard.findings if f.weight == "halt"] == []


def test_the_slope_of_dovetails_is_a_habit() -> None:
    piece = read(DEMO.read_text(encoding="utf-8"))
    habits = Habits(slope_hardwood=Fraction(1, 7))
    bench = Bench.of(draft(piece), piece, default_shop(), habits, attainable={}, memory=Memory())
    slopes = {choice["slope"] for choice in bench.choose(None).values() if "slope" in choice}
    assert slopes == {Fraction(1, 7)}
