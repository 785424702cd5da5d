"""What is said of several parts alike is said once; what stands at two lines is said twice."""

from __future__ import annotations

from scantling.findings import Finding, Place, Weight
from scantling.setting_out.told import together


def thin(stile: str, *, line: int = 7, figure: str = "5 mm", limit: str = "6 mm") -> Finding:
    """A stile that its screws come through, asked for in that line."""
    return Finding(
        code="hinge.screw-through",
        weight=Weight.MIND,
        says=f"too little wood is left for the screws in the {stile}",
        cure="a thicker stile, or shorter screws",
        place=Place(file="piece.toml", line=line, column=10),
        figure=figure,
        limit=limit,
        parts=(stile, "leaf"),
    )


def test_findings_alike_at_one_place_are_told_as_one() -> None:
    (found,) = together([thin("left stile"), thin("right stile", figure="4 mm")])
    assert found.says == "Too little wood is left for the screws in the left stile and right stile."
    assert found.parts == ("left stile", "leaf", "right stile")
    assert (found.figure, found.limit) == ("5 mm (left stile) and 4 mm (right stile)", "6 mm")


def test_a_figure_that_several_parts_share_names_them_together() -> None:
    found = together(thin(name, figure=f) for name, f in (("oak", "5"), ("elm", "4"), ("ash", "5")))
    assert [each.figure for each in found] == ["5 (oak and ash) and 4 (elm)"]


def test_findings_alike_at_two_lines_are_two_things_to_mend() -> None:
    found = together([thin("left stile"), thin("post", line=9), thin("right stile")])
    assert [f.place.line for f in found if f.place] == [7, 9]
    assert [set(f.parts) for f in found] == [
        {"left stile", "right stile", "leaf"},
        {"post", "leaf"},
    ]


def test_of_many_parts_three_are_named_and_all_are_kept() -> None:
    names = ["oak", "elm", "ash", "yew", "fir"]
    (found,) = together(thin(f"{name} stile") for name in names)
    assert found.says.endswith("in the oak stile, elm stile, ash stile and 2 more.")
    assert set(found.parts) == {*(f"{name} stile" for name in names), "leaf"}


def test_a_finding_by_itself_keeps_its_words() -> None:
    (found,) = together([thin("left stile")])
    assert found.says == "Too little wood is left for the screws in the left stile."
