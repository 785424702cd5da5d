"""Whole pieces with something wrong: the finding, its line and its cure, and never a traceback."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from scantling.findings import Finding
from scantling.piece import read
from scantling.setting_out import set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.units import INCH

DEMO = (Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml").read_text(
    encoding="utf-8"
)


def halts(text: str) -> list[Finding]:
    """What stops the work on that text."""
    piece = read(text)
    assert piece.complete, piece.findings
    found = set_out(piece, shop=default_shop(), habits=Habits())
    return [f for f in found.findings if f.weight == "halt"]


def with_line(old: str, new: str) -> tuple[str, int]:
    """The demo with one text replaced, and the line it stands in."""
    assert DEMO.count(old) == 1, old
    return DEMO.replace(old, new), DEMO[: DEMO.index(old)].count("\n") + 1


def without(*sections: str) -> str:
    """The demo without those sections."""
    blocks = re.split(r"(?m)^(?=\[)", DEMO)
    return "".join(b for b in blocks if b.split("]")[0].strip("[") not in sections)


IN_FRONT = ("face_frame", "partition", "drawers", "doors")

WRONG = {
    "doors in no opening": ('fill   = "doors"', 'fill   = "dors"', "piece.nothing-to-stand-on"),
    "drawers in no opening": (
        'fill   = "drawers"',
        'fill   = "shelves"',
        "piece.nothing-to-stand-on",
    ),
    "under no mullion": ('under = "mullion"', 'under = "mulion"', "piece.nothing-to-stand-on"),
    "a name twice": ('{ rail = "mid rail", ', '{ rail = "top rail", ', "piece.name-taken"),
    "an opening under the top": (
        '{ rail = "top rail",    tall = "1 1/2" },',
        "",
        "piece.row-stands-wrong",
    ),
    "a row that is two things": (
        '{ opening = "doors" }',
        '{ opening = "doors", rail = "x" }',
        "piece.row-stands-wrong",
    ),
    "a size that is not there": (
        "[also]",
        '[also]\n"left door.left stile.wide" = "2 1/4"',
        "sizes.unknown-name",
    ),
    "feet against bottom": ("{ foot = 1 }", "{ foot = 2 }", "sizes.conflict"),
    "no rails for a kicker": (
        "rails_under_top = {",
        "# rails_under_top = {",
        "piece.nothing-to-stand-on",
    ),
    "wood there is none of": (
        "[also]",
        '[also]\n"left side.thickness" = "as the boards give"',
        "sizes.no-boards",
    ),
}


@pytest.mark.parametrize("case", WRONG)
def test_the_finding_is_told_once_with_a_cure(case: str) -> None:
    old, new, code = WRONG[case]
    text, _ = with_line(old, new)
    found = [f for f in halts(text) if f.code == code]
    assert len(found) == 1
    assert found[0].cure
    assert found[0].place is not None


@pytest.mark.parametrize("case", ["doors in no opening", "under no mullion"])
def test_the_finding_stands_at_the_guilty_word(case: str) -> None:
    old, new, code = WRONG[case]
    text, line = with_line(old, new)
    (found,) = (f for f in halts(text) if f.code == code)
    assert found.place is not None
    assert found.place.line == line
    start = found.place.column - 1
    assert text.splitlines()[line - 1][start : start + found.place.width].strip('"') in new
    assert "did you mean" in found.cure


def test_a_shelf_flush_with_no_rail_is_told_first() -> None:
    text, line = with_line('flush_with = "mid rail"', 'flush_with = "middle rail"')
    found = [f for f in halts(text) if f.code == "piece.nothing-to-stand-on"]
    # the shelf, and the partition that was to stand on it
    assert [f.place.line == line for f in found if f.place] == [True, False]


def test_a_knuckle_wider_than_its_hinge_leaves_nothing_of_a_leaf() -> None:
    text, _ = with_line('knuckle = "1/4"', "knuckle = 12")
    assert "proofs.part-has-no-size" in {f.code for f in halts(text)}


def test_two_clashes_are_told_as_two() -> None:
    text, _ = with_line("{ foot = 1 }", "{ foot = 2 }")
    text = text.replace("over_front = 1", "over_front = 1\nover_back = 1")
    assert [f.code for f in halts(text)].count("sizes.conflict") == 2


def test_a_section_without_its_case_says_what_it_stands_on() -> None:
    codes = {f.code for f in halts(without("case"))}
    assert codes == {"piece.nothing-to-stand-on"}


def test_a_case_that_says_nothing_is_built_all_the_same() -> None:
    text = without(
        "face_frame", "partition", "drawers", "doors", "shelf.loose", "shelf.deck", "top"
    )
    text = re.sub(r"(?m)^(wide|deep|tall)  = .*$", "", text).replace(", top_face = 4", "")
    assert halts(text) == []


def test_a_case_without_a_bottom_has_a_back_to_the_floor() -> None:
    text = re.sub(r"(?m)^bottom = .*$", "", without(*IN_FRONT, "shelf.loose"))
    text = text.replace('flush_with = "mid rail"', "top_face = 16")
    assert halts(text) == []


def test_a_stated_top_settles_the_case() -> None:
    text = re.sub(r"(?m)^wide  = 42.*$", "", DEMO)
    piece = read(text)
    found = set_out(piece, shop=default_shop(), habits=Habits())
    assert found.sizes["case.wide"] == 42 * INCH


@pytest.mark.parametrize(
    "gone",
    [
        ("doors",),
        ("drawers",),
        ("partition", "drawers"),
        ("top",),
        ("back",),
        ("shelf.loose",),
        ("partition", "drawers", "doors", "top", "back", "shelf.loose"),
    ],
)
def test_a_cupboard_without_them_is_a_cupboard(gone: tuple[str, ...]) -> None:
    assert halts(without(*gone)) == []


def test_a_case_with_shelves_and_a_back_is_a_bookcase() -> None:
    text = without("face_frame", "partition", "drawers", "doors", "shelf.loose")
    text = text.replace('flush_with = "mid rail"', "top_face = 16")
    assert halts(text) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("pair   = true", "pair   = false"),
        ("across = 2", "across = 3"),
        ('joint  = "mortise and tenon"    # or', 'joint  = "half lap"    # or'),
    ],
)
def test_other_fronts_are_built_too(old: str, new: str) -> None:
    text = DEMO.replace(old, new)
    assert text != DEMO
    if new == "pair   = false":
        text = text.replace('meeting = "1/8", ', "")
    if new == "across = 3":
        text = text.replace('under = "mullion"', 'under = "mullion 1"')
    assert halts(text) == []


def test_a_cupboard_as_small_as_a_box_says_which_joint_has_no_face_left() -> None:
    text = DEMO
    for old, new in (("wide  = 42", "wide  = 8"), ("deep  = 18", "deep  = 4"), ("37", "12")):
        assert text.count(old) == 1
        text = text.replace(old, new)
    piece = read(text)
    found = set_out(piece, shop=default_shop(), habits=Habits())
    assert found.halts
    lost = [f for f in found.findings if f.code == "proofs.no-face"]
    assert {f.says.split(":")[0] for f in lost} == {
        "left door.panel in frame",
        "right door.panel in frame",
    }
    assert all("left door.panel" in f.parts or "right door.panel" in f.parts for f in lost)
    line = text[: text.index('panel  = { joint = "fielded panel"')].count("\n") + 1
    assert [f.place.line for f in lost if f.place] == [line] * 2
