"""Whole pieces with something wrong: the finding, its line and its cure, and never a traceback."""

from __future__ import annotations

import re

import pytest
from tests.pieces.edited import DEMO, edited, findings_of, fresh, halts, with_line, without

from scantling.parts import GluedUp
from scantling.piece import read
from scantling.setting_out import set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.units import INCH

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
    "a rail called like the case": (
        '{ rail = "top rail",',
        '{ rail = "case",',
        "piece.name-taken",
    ),
    "no rails for a kicker": (
        "rails_under_top = {",
        "# rails_under_top = {",
        "piece.nothing-to-stand-on",
    ),
    "wood there is none of": (
        "[also]",
        '[also]\n"right side.thickness" = "as the boards give"',
        "sizes.no-boards",
    ),
}


# what is guilty, where it is not what was changed
GUILTY = {
    "under no mullion": 'under = "mulion"',
    "a name twice": "[face_frame]",
    "a rail called like the case": "[face_frame]",
    "an opening under the top": '{ opening = "drawers"',
    "a size that is not there": '"left door.left stile.wide"',
    "feet against bottom": "tall = 3, arch",
    "no rails for a kicker": "[partition]",
    "wood there is none of": '"right side.thickness"',
    "doors in no opening": 'fill   = "dors"',
    "drawers in no opening": 'fill   = "shelves"',
    "a row that is two things": '{ opening = "doors", rail = "x" }',
}


@pytest.mark.parametrize("case", WRONG)
def test_the_finding_is_told_once_with_a_cure_at_the_guilty_line(case: str) -> None:
    old, new, code = WRONG[case]
    text, _ = with_line(old, new)
    (found,) = (f for f in halts(text) if f.code == code)
    assert found.cure
    assert found.place is not None
    assert text.count(GUILTY[case]) == 1
    assert found.place.line == text[: text.index(GUILTY[case])].count("\n") + 1
    guilty = text.splitlines()[found.place.line - 1][found.place.column - 1 :]
    assert guilty[: found.place.width].strip('"') in GUILTY[case]


@pytest.mark.parametrize(
    "case", ["doors in no opening", "drawers in no opening", "under no mullion"]
)
def test_a_word_that_is_nearly_right_is_told_what_was_meant(case: str) -> None:
    old, new, code = WRONG[case]
    text, _ = with_line(old, new)
    (found,) = (f for f in halts(text) if f.code == code)
    meant = old.split('"')[1] if case != "drawers in no opening" else None
    assert ("Did you mean" in found.cure) is (meant is not None)
    assert meant is None or meant in found.cure


@pytest.mark.parametrize(
    "case",
    [c if c == "under no mullion" else pytest.param(c, marks=pytest.mark.slow) for c in WRONG],
)
def test_a_fault_edited_in_is_the_fault_of_a_fresh_start(case: str) -> None:
    old, new, _ = WRONG[case]
    text, _ = with_line(old, new)
    assert edited(text).findings == fresh(text).findings


def test_a_shelf_flush_with_no_rail_is_told_first() -> None:
    text, line = with_line('flush_with = "mid rail"', 'flush_with = "middle rail"')
    found = [f for f in halts(text) if f.code == "piece.nothing-to-stand-on"]
    # the partition that was to stand on it is not told of
    assert [f.place.line for f in found if f.place] == [line]


def test_a_knuckle_wider_than_its_hinge_leaves_nothing_of_a_leaf() -> None:
    text, _ = with_line('knuckle = "1/4"', "knuckle = 12")
    assert "proofs.part-has-no-size" in {f.code for f in halts(text)}


@pytest.mark.slow
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
    found = edited(text)
    assert found.sizes["case.wide"] == 42 * INCH


@pytest.mark.parametrize(
    "gone",
    [
        ("doors",),
        pytest.param(("drawers",), marks=pytest.mark.slow),
        ("partition", "drawers"),
        pytest.param(("top",), marks=pytest.mark.slow),
        pytest.param(("back",), marks=pytest.mark.slow),
        pytest.param(("shelf.loose",), marks=pytest.mark.slow),
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
        pytest.param("pair   = true", "pair   = false", marks=pytest.mark.slow),
        ("across = 2", "across = 3"),  # a partition behind each mullion
        ('joint  = "mortise and tenon"    # or', 'joint  = "half lap"    # or'),
    ],
)
def test_other_fronts_are_built_too(old: str, new: str) -> None:
    text = DEMO.replace(old, new)
    assert text != DEMO
    if new == "pair   = false":
        text = text.replace('meeting = "1/8", ', "")
    assert halts(text) == []


@pytest.mark.slow
def test_a_cupboard_as_small_as_a_box_tells_its_clashes_and_not_what_follows_from_them() -> None:
    text = DEMO
    for old, new in (("wide  = 42", "wide  = 8"), ("deep  = 18", "deep  = 4"), ("37", "12")):
        assert text.count(old) == 1
        text = text.replace(old, new)
    found = halts(text)
    assert {f.code for f in found} == {"sizes.conflict"}
    clashing = ("wide  = 8", "deep  = 4", '{ opening = "drawers",  tall = 5')
    lines = [text[: text.index(line)].count("\n") + 1 for line in clashing]
    assert [f.place.line for f in found if f.place] == lines


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('panel  = { joint = "fielded panel"', 'panel  = { joint = "edge joint"'),
        ('hinge  = { joint = "hinge"', 'hinge  = { joint = "shiplap"'),
        ('back_joint   = "through dovetail"', 'back_joint   = "shelf pins"'),
        ('joint = { joint = "housing", deep', 'joint = { joint = "fielded panel"} #'),
        ('joint  = "mortise and tenon"    #', 'joint  = "hinge"    #'),
    ],
)
def test_a_joint_for_other_parts_is_told_with_those_that_fit(old: str, new: str) -> None:
    text, line = with_line(old, new)
    for option in (', thick = "1/2"', ', long = "2 1/2", wide = "1 3/8", knuckle = "1/4"'):
        text = text.replace(f'"shiplap"{option}', '"shiplap"')
    found = halts(text)
    assert {f.code for f in found} == {"piece.joint-does-not-fit"}
    assert [f.place.line for f in found if f.place] == [line]


def test_a_front_with_a_rail_missing_tells_of_its_rows_and_no_more() -> None:
    text = DEMO.replace('  { rail = "mid rail",    tall = "1 1/2" },\n', "")
    assert [f.code for f in findings_of(text)] == ["piece.row-stands-wrong"] * 2


def test_wood_for_parts_that_are_gone_is_no_misspelling() -> None:
    (found,) = (f for f in findings_of(without("doors")) if f.code == "piece.unknown-part")
    assert found.weight == "mind"
    assert "door stiles" in found.says
    assert "meant" not in found.cure


def test_a_top_wider_than_a_room_is_glued_up_from_more_strips_than_there_are_letters() -> None:
    text, _ = with_line("deep  = 19", "# deep  = 19")
    text = text.replace("deep  = 18 ", "deep  = 280 ").replace("[also]", "[also]\ntop.width = 280")
    text = text.replace("over_front = 1", "")
    piece = read(text.replace("top.width", '"top.width"'))
    found = set_out(piece, shop=default_shop(), habits=Habits())
    blank = found.part("top").blank
    assert isinstance(blank, GluedUp)
    assert [strip.name for strip in blank.strips][25:28] == ["strip z", "strip aa", "strip ab"]
