"""A guide whose slots are shorter than the side behind it moves."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.edited import edited, with_line

from scantling.setting_out import SettingOut
from scantling.units import INCH

HELD = 'guides  = { held_by = { joint = "screws in slots", count = 2 } }'
GUIDE = "drawer 1 left guide"


def guided(travel: str) -> tuple[SettingOut, str]:
    """The demo with a guide of 16 in, screwed an inch from its ends, and so much room each way."""
    text, line = with_line(HELD, HELD.replace("= 2", f'= 2, end_distance = 1, travel = "{travel}"'))
    text = text.replace("[also]", f'[also]\n"{GUIDE}.length" = 16')
    column = text.split("\n")[line - 1].index("screws in slots") + 1
    return edited(text), f"piece.toml {line}:{column}"


def test_slots_shorter_than_the_wood_moves_are_told_at_their_joint() -> None:
    found, place = guided("1/8")
    (told,) = (f for f in found.findings if f.code == "screws-in-slots.short-slot")
    assert told.weight == "mind"
    assert str(told.place) == place
    assert "slots longer" in told.cure
    assert GUIDE in told.parts or "left side" in told.parts
    assert told.figure
    # Wood Handbook 2010: white ash 0.00274 a percent across the rings (table 13-5); 7.4 % at 38 %
    # of humidity and 14.4 % at 75 % (table 4-2, 21 C; read between 35 and 40 %). From the first
    # screw to the last are 14 in: 14 x 0.00274 x 7.0 is 0.27, less 1/8
    assert float(_missing(found) / INCH) == pytest.approx(0.1435, abs=0.008)


@pytest.mark.parametrize(("short", "is_told"), [("0.11", True), ("0.09", False)])
def test_slots_short_by_less_than_a_shaving_are_no_matter(short: str, *, is_told: bool) -> None:
    moves = INCH / 8 + _missing(guided("1/8")[0])
    found, _ = guided(f"{float(moves) - float(short):.4f} mm")
    assert float(_missing(found)) == pytest.approx(float(short), abs=1e-4)
    codes = {f.code for f in found.findings if f.weight == "mind"}
    assert ("screws-in-slots.short-slot" in codes) is is_told


def _missing(found: SettingOut) -> Fraction:
    """What the slots of that guide are too short by. [mm]"""
    assert found.settled is not None
    breaches = found.settled.solved.breaches
    (breach,) = (b for b in breaches if b.bound.code == "screws-in-slots.short-slot")
    return breach.short


def test_slots_as_long_as_the_wood_moves_are_let_through() -> None:
    found, _ = guided("9/32")  # 0.281 over 0.27
    assert [f for f in found.findings if f.code == "screws-in-slots.short-slot"] == []
    assert found.sizes[f"{GUIDE}.length"] == 16 * INCH
