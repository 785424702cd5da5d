"""Rows of a front that make no front are told at their row."""

from __future__ import annotations

import pytest
from tests.pieces.edited import DEMO, findings_of

MID = '  { rail = "mid rail",    tall = "1 1/2" },\n'
DOORS = '  { opening = "doors" },    # 25 follows\n'
BOTTOM = '  { rail = "bottom rail", tall = 3, arch = "1/2" },\n'
FOOT = "  { foot = 1 },\n"

NO_FRONT = {
    "feet over the lowest rail": (
        BOTTOM + FOOT,
        FOOT + BOTTOM,
        {
            "{ foot": "Feet stand below all other rows.",
            '{ opening = "doors"': "The opening 'doors' has no rail right above and right below",
        },
    ),
    "two feet": (FOOT, FOOT * 2, {"{ foot": "Feet stand below all other rows."}),
    "a drawer for every day": (
        "across = 2",
        "across = 51",
        {"51, mullion": "51 openings side by side are more than a front is set out"},
    ),
    "an opening on the feet": (
        BOTTOM,
        "",
        {'{ opening = "doors"': "The opening 'doors' has no rail right above and right below"},
    ),
    "an opening on an opening": (
        MID,
        "",
        {
            '{ opening = "drawers"': "The opening 'drawers' has no rail right above and right",
            '{ opening = "doors"': "The opening 'doors' has no rail right above and right below",
        },
    ),
    "an opening that reaches the floor": (
        BOTTOM + FOOT,
        "",
        {'{ opening = "doors"': "The opening 'doors' has no rail right above and right below"},
    ),
}


@pytest.mark.parametrize("case", NO_FRONT)
def test_each_row_that_stands_wrong_is_told_once_where_it_stands(case: str) -> None:
    old, new, wrong = NO_FRONT[case]
    assert DEMO.count(old) == 1
    text = DEMO.replace(old, new)
    found = [f for f in findings_of(text) if f.code == "piece.row-stands-wrong"]
    expected = {}
    for row, says in wrong.items():
        line = text[: text.index(row)].count("\n")
        expected[line + 1, text.split("\n")[line].index(row) + 1] = says
    assert {(f.place.line, f.place.column) for f in found if f.place} == expected.keys()
    assert len(found) == len(expected)
    for f in found:
        assert f.place is not None
        assert f.says.startswith(expected[f.place.line, f.place.column])
        assert f.cure
