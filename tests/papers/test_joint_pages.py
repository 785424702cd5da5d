"""The sheets of joints: what a maker sets his tools to is what his parts say."""

from typing import Any

import pytest
from tests.papers.pieces import EXAMPLES, pine_bookcase
from tests.pieces.worked import worked

from scantling.papers._joint_pages import joints
from scantling.papers._paper import rule_of
from scantling.papers._set_out import set_out_on
from scantling.parts import Part
from scantling.parts.cut import EVEN
from scantling.setting_out import SetJoint, SettingOut
from scantling.shop.operations import Reference

Rows = Any  # pages are JSON

AXES = {Reference.TRUE_END: 0, Reference.FACE_EDGE: 1, Reference.FACE_SIDE: 2}
KNIFED = {"gauge joint"}  # both parts from their face sides; one may stand back from the other


def places(part: Part, joint: SetJoint, *, axis: int) -> set[object]:
    """Where the joint's cuts begin, end and have their middles, from the part's own surface."""
    found: set[object] = set()
    for cut in part.cuts:
        if cut.owner == joint.name:
            at = [corner[axis] for corner in cut.corners(extent=part.extent, over=EVEN)]
            found |= {min(at), max(at), (min(at) + max(at)) / 2}
    return found


def counted(whole: SettingOut) -> list[tuple[str, str, bool]]:
    """Every figure of a setting that is counted from a surface, and whether the wood has it."""
    found = []
    for joint in whole.joints:
        for done in joint.work:
            for each in done.setting.to if done.setting else ():
                if each.reference not in AXES:
                    continue
                axis, value = AXES[each.reference], whole.sizes[each.dimension]
                at = [value in places(whole.part(name), joint, axis=axis) for name in done.parts]
                agrees = any(at) if done.name in KNIFED else all(at)
                found.append((joint.name, each.marks, agrees))
    return found


@pytest.mark.parametrize("folder", EXAMPLES)
def test_a_figure_set_from_a_surface_is_where_the_wood_is_cut(folder: str) -> None:
    found = counted(worked(folder))
    assert found
    assert [each for each in found if not each[2]] == []


def test_of_a_high_row_of_pins_too() -> None:
    found = counted(pine_bookcase())
    assert len([each for each in found if "loose" in each[0]]) == 8
    assert [each for each in found if not each[2]] == []


def group(whole: SettingOut, where: str) -> Rows:
    kinds: Rows = joints(whole)
    (found,) = [g for kind in kinds for g in kind["groups"] if g["where"] == where]
    return found


# the lowest hole 36 above the top face of the bottom, which stands 3 above the floor: the stick
# laid to the foot of the side reads 39
def test_the_strip_for_pin_holes_reads_from_the_end_it_is_laid_to() -> None:
    whole = pine_bookcase()
    stick, stop = group(whole, "high loose shelves")["settings"]
    assert stick["tool"] == "story stick"
    assert stick["to"][0] == {"reads": "39", "marks": "middle of the first hole from the true end"}
    assert [to["reads"] for to in stick["to"]] == ["39", "1", "1 1/2", "7 13/16"]
    assert stop["to"] == [{"reads": "3/8", "marks": "depth of the holes from the face side"}]
    assert stick["on"] == "left side and right side"
    side = whole.part("left side")
    rows = [
        row.says
        for each in set_out_on(side, setting_out=whole, rule=rule_of(whole))
        if each.title.startswith("high loose")
        for row in each.rows
    ]
    assert any(row.startswith("39, 40, 41") for row in rows)


def test_the_lowest_hole_is_said_to_count_from_the_bottom_and_the_first_from_the_end() -> None:
    figures = group(pine_bookcase(), "high loose shelves")["figures"]
    said = {each["word"]: (each["reads"], each["from"]) for each in figures}
    assert said["lowest"] == ("36", "from the top face of the bottom")
    assert said["first hole"] == ("39", "from the true end")
    assert said["last hole"] == ("50", "from the true end")


def test_a_row_set_back_from_the_front_is_struck_from_the_side_and_not_from_the_shelf() -> None:
    # shelves stand 1/2 behind the front of the sides, and the row 1 1/2 behind theirs
    back = pine_bookcase(('[shelf."high loose"]', '[shelf."high loose"]\nnose = "1/2"'))
    stick = group(back, "high loose shelves")["settings"][0]
    assert stick["to"][2] == {"reads": "2", "marks": "front row from the face edge"}


def test_a_setting_says_what_it_marks_and_on_which_boards() -> None:
    settings = group(pine_bookcase(), "back boards")["settings"]
    assert [(s["tool"], s["on"]) for s in settings] == [
        ("moving fillister", "back boards 2 to 5"),
        ("moving fillister", "back boards 1 to 4"),
    ]
    assert settings[0]["to"] == [
        {"reads": "3/8", "marks": "width of the lap, in from its edge"},
        {"reads": "1/4", "marks": "depth of the lap from the face side"},
    ]


@pytest.mark.parametrize("folder", EXAMPLES)
def test_no_setting_is_without_its_mark_and_its_parts(folder: str) -> None:
    kinds: Rows = joints(worked(folder))
    settings = [s for kind in kinds for g in kind["groups"] for s in g["settings"]]
    assert settings
    assert all(s["on"] and all(to["marks"] and to["reads"] for to in s["to"]) for s in settings)


def test_nails_alike_are_told_once_with_the_boards_they_hold_for() -> None:
    figures = group(pine_bookcase(), "back boards on bottom")["figures"]
    words = [each["word"] for each in figures]
    assert "back boards 1 to 3, across" in words
    assert "back boards 4 and 5, across" in words
    assert "back boards 1 to 5, along" in words
    assert len(words) == 6  # length, thickness and pilot, and those three


def test_one_tail_is_no_tails() -> None:
    where = "front sub-top rail in left side, front sub-top rail in right side"
    kinds: Rows = joints(pine_bookcase())
    (found,) = [g for kind in kinds for g in kind["groups"] if g["where"].startswith(where)]
    assert ("1", "tail") in [(f["reads"], f["word"]) for f in found["figures"]]
    assert "1 more" not in found["few"]


# a fifth of what gives is what the note at the head of the page tells to plan for
def test_a_load_is_told_at_a_fifth_of_what_the_joint_gives_at() -> None:
    whole = pine_bookcase()
    joint = next(each for each in whole.joints if each.name == "low loose shelves")
    least = min(each.value for each in joint.holds)
    (said, *_) = group(whole, "low loose shelves")["holds"]
    pounds = float(said["reads"].removesuffix(" lb"))
    assert pounds == pytest.approx(least / 5 / 4.448222, rel=0.05)


@pytest.mark.parametrize("name", ["high loose", "high loose shelf", "high loose shelves"])
def test_a_row_of_shelves_is_called_shelves_once(name: str) -> None:
    whole = pine_bookcase(('[shelf."high loose"]', f'[shelf."{name}"]'))
    assert "high loose shelves" in [joint.name for joint in whole.joints]
    names = [part.name for part in whole.made if part.name.startswith("high loose")]
    assert names == ["high loose shelf 1", "high loose shelf 2"]
