"""How each size is set out: from which surface, with which gauge."""

import re
from functools import cache

from tests.papers.pieces import pine_bookcase
from tests.pieces.worked import worked

from scantling.papers import Sheet, part_drawing
from scantling.papers._paper import rule_of
from scantling.papers._set_out import SetOut, set_out_on
from scantling.papers.setting_out_json import SettingOutJson


@cache
def told(name: str) -> dict[str, SetOut]:
    part = worked().part(name)
    rows = set_out_on(part, setting_out=worked(), rule=rule_of(worked()))
    return {each.title: each for each in rows}


def lines(found: SetOut) -> list[str]:
    return [f"{row.says} | {row.by}" for row in found.rows]


def test_a_part_is_trued_from_its_end_face_edge_and_face_side() -> None:
    assert lines(told("left stile")["By itself"]) == [
        "37 long, from the reference end | story stick",
        "1 3/4 wide, from the face edge | pin gauge",
        "3/4 thick, from the face side | pin gauge",
    ]


# by hand: the top rail is 1 1/2 wide; the haunch takes 15/32, so the mortise starts there from the
# upper end and is 29/32 long; chisel 1/4, set in 1/4
def test_a_mortise_is_gauged_from_the_face_side() -> None:
    found = lines(told("left stile")["top rail in left stile, mortise and tenon"])
    assert "mortise: 15/32 from the far end, 29/32 along the grain | " in found
    assert "1/4 from the face side, 1/4 into the wood | mortise gauge" in found


def test_what_the_mate_gives_is_knifed_and_not_measured() -> None:
    found = told("left side")["front sub-top rail in left side, half-blind dovetail"]
    assert any("transfer with the knife, from the mate" in act for act in found.acts)
    # how deep is gauged; where the walls run is not said
    assert not any("from the face edge" in row.says for row in found.rows)


def test_holes_of_a_row_are_told_together() -> None:
    found = lines(told("left side")["loose shelves, shelf pins"])
    assert sum("13, 14, 15, 16, 17, 18, 19, 20, 21 from the reference end" in f for f in found) == 2
    assert any(row.startswith("9 front holes: ") for row in found)


def test_every_joint_of_a_part_has_its_say() -> None:
    for part in worked().made:
        rows = set_out_on(part, setting_out=worked(), rule=rule_of(worked()))
        owners = {cut.owner.replace(".", " ") for cut in part.cuts}
        for owner in owners:
            assert any(each.title.startswith(owner) for each in rows), (part.name, owner)


def pine(name: str) -> list[str]:
    part = pine_bookcase().part(name)
    found = set_out_on(part, setting_out=pine_bookcase(), rule=rule_of(pine_bookcase()))
    return [text for each in found for text in (*(r.says for r in each.rows), *each.acts)]


# screws at 2, 15 and 28 along a rail 30 long; two ends and one middle of each slot are no slots
def test_slots_are_counted_as_slots_with_their_length() -> None:
    said = pine("rear sub-top rail")
    assert "3 slots: middle 2, 15, 28 from the reference end" in said
    assert "middle 1 1/4 from the face edge" in said
    assert "5/16 long, across; 3/16 wide" in said
    assert not any("9 slots" in text for text in said)


# the rail 2 1/2 wide ends where the back's rabbet of 9/16 begins, in a side 10 wide
def test_a_mate_that_is_laid_on_has_its_distance_from_front_and_back() -> None:
    said = pine("left side")
    assert "rear sub-top rail from 6 15/16 to 9 7/16 from the face edge" in said
    assert "front sub-top rail level with the face edge, to 2 1/2 from the face edge" in said


# the rail's end stands 1/4 in from the outside of the side, over which the top reaches 1/2: its
# screws at 2, 15, 28 are 2 3/4, 15 3/4, 28 3/4 along the top; 1 1/4 of 2 1/2 from the rail's edge,
# and 3/4 more for the overhang in front
def test_pilots_stand_in_the_part_that_the_screws_bite_in() -> None:
    (front, _) = [text for text in pine("top") if text.startswith("pilots")]
    assert front.startswith("pilots for 3 screws: 2 3/4, 15 3/4, 28 3/4 from the reference end; ")
    assert "2 from the face edge; 1/4 into the back face" in front


def test_what_is_set_with_a_rule_falls_on_its_marks() -> None:
    """The shop's rule shows 32nds; 23/64 falls between two of them, 5/64 is a drill's own step."""
    said = " ".join(text for part in pine_bookcase().made for text in pine(part.name))
    assert "/64" not in re.sub(r"\S+ across the hole", "", said)
    drawn = part_drawing(pine_bookcase().part("back board 1"), setting_out=pine_bookcase())
    assert not any("/64" in text.says for text in drawn.texts)
    # exact behind it
    document = SettingOutJson.render(pine_bookcase(), sheet=Sheet.A4)["setting-out.json"]
    assert b"23/64" in document
