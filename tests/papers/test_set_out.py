"""How each size is set out: from which surface, with which gauge."""

from functools import cache

from tests.pieces.worked import worked

from scantling.papers._paper import rule_of
from scantling.papers._set_out import SetOut, set_out_on


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
