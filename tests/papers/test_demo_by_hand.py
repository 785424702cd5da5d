"""Figures of the example's papers against what a maker reads off by himself."""

from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from typing import Any

import pytest
from tests.pieces.edited import demo

from scantling.papers import Sheet
from scantling.papers._cover import _scale
from scantling.papers._drawing.line_types import SCALES
from scantling.papers._drawing.piece import PieceDrawing
from scantling.papers._pages import cutting_list, hardware
from scantling.papers.setting_out_json import document


@cache
def told() -> Mapping[str, Any]:
    return document(demo())


@cache
def pages() -> Any:  # noqa: ANN401 - what a page shows is of any shape
    return {"cutting list": cutting_list(demo()), "hardware": hardware(demo())}


def length_of(text: str) -> float:
    return float(sum(Fraction(each) for each in text.split()))


def test_wood_of_a_thickness_adds_up_to_what_its_lines_take() -> None:
    for wood in pages()["cutting list"]:
        lines = wood["lines"]
        taken = sum(
            length_of(line["rough"][0]) * length_of(line["rough"][1]) * line["how_many"]
            for line in lines
        )
        assert float(wood["area"].split()[0]) == pytest.approx(taken / 144, rel=0.01, abs=0.06)


def test_round_ware_is_told_by_length_and_thickness_flat_ware_by_all_three() -> None:
    large = {(each["what"], each["large"].count("×")) for each in pages()["hardware"]}
    assert {("shelf pin", 1), ("nail", 1), ("hinge leaf", 2)} <= large


def fixing(joint: str, one: str) -> Mapping[str, Any]:
    found: Mapping[str, Any] = next(
        each
        for made in told()["joints"]
        if made["title"] == joint
        for each in made["fixings"]
        if each["between"][0] == one and each["free"]
    )
    return found


@pytest.mark.parametrize(
    ("joint", "part", "free", "held"),
    [
        # common practice: a shelf lies on its pins; a panel in its grooves is pinned at mid width
        ("shelf pins", "loose shelf 1", "up", "down"),
        ("fielded panel", "left door.bottom rail", "up", "left"),
        # boards of a back lap: neither can come forward, each may grow
        ("shiplap", "back board 1", "left", "front"),
    ],
)
def test_what_a_fixing_leaves_free_it_does_not_hold(
    joint: str, part: str, free: str, held: str
) -> None:
    found = fixing(joint, part)
    assert free in found["free"]
    assert held in found["holds"]


def test_where_wood_swells_from_the_day_it_is_made_its_gap_closes_in_the_damp() -> None:
    # pieces stand in a room that never gets drier than the bench: 7.8 to 14.5 %, made at 7.5
    closes = [
        gap
        for joint in told()["joints"]
        for gap in joint["gaps"]
        if gap["name"].endswith((".side gap", ".top gap", "rear gap"))
        and joint["title"] in ("fielded panel", "shiplap")
        and gap["moving"]
    ]
    assert closes
    for gap in closes:
        made, damp, dry = (gap[word]["value_mm"] for word in ("at_bench", "dampest", "driest"))
        assert damp < made
        assert damp < dry <= made


@pytest.mark.parametrize("sheet", list(Sheet))
def test_beside_the_picture_there_is_room_for_stick_and_depth(sheet: Sheet) -> None:
    # margins of 18 mm; figures 2.5 mm tall: the stick with "37 7/8" takes 26 mm, "about 19" 12
    free = float(sheet.size[0]) - 2 * 18 - 26 - 12
    for wide in range(200, 3000, 37):
        picture = PieceDrawing(strokes=(), low=(0.0, 0.0), high=(float(wide), 100.0))
        scale = _scale(picture, sheet=sheet)
        assert scale == SCALES[-1] or wide / scale <= free
