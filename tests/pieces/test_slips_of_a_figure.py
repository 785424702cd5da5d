"""One figure that cannot be is told once, first, at its own line, with what would cure it."""

from __future__ import annotations

import pytest
from tests.pieces.edited import edited, halts, with_line

# line of the file as it is, the figure in it, what it is called, and what the wood leaves it
SLIPS = {
    "a tenon of the frame through its stile and out": (
        'tenon  = "1 1/4"            # of',
        '"1 1/4"',
        "Length of the tenon, top rail in left stile",
        "1 3/4 in",  # as wide as a frame stile
    ),
    "a tenon of the doors likewise": (
        'joint  = { joint = "mortise and tenon", tenon = "1 1/2" }',
        '"1 1/2"',
        "Length of the tenon, left door.top rail in left stile",
        "2 1/4 in",  # as wide as a door stile
    ),
}


@pytest.mark.parametrize("case", SLIPS)
def test_a_tenon_longer_than_there_is_wood_is_one_slip(case: str) -> None:
    old, figure, name, left = SLIPS[case]
    text, line = with_line(old, old.replace(figure, "60"))
    (found,) = halts(text)
    assert found.code == "sizes.conflict"
    assert str(found.place) == f"piece.toml {line}:{text.split(chr(10))[line - 1].index('60') + 1}"
    assert found.says.startswith(f"{name} cannot be 60 in: ")
    assert "a tenon and its mortise end within the wood they are in" in found.says
    assert (found.figure, found.limit) == ("60 in", left)
    assert f"make it {name[0].lower()}{name[1:]} {left} (piece.toml {line}:" in found.cure
    # and nothing else is asked of the maker before that is mended
    assert [f.code for f in edited(text).findings if f.weight == "mind"] == []


def test_a_door_rail_wider_than_the_case_is_tall_is_told_at_its_own_line() -> None:
    text, line = with_line("bottom_rail = 3", "bottom_rail = 70")
    (found,) = halts(text)
    assert str(found.place) == f"piece.toml {line}:15"
    assert found.figure == "70 in"


def test_a_tenon_a_mark_longer_than_there_is_wood_is_told_with_both_ways_out() -> None:
    text, line = with_line('tenon  = "1 1/4"            # of', 'tenon  = "1 25/32"          # of')
    (found,) = halts(text)
    assert f"length of the tenon, top rail in left stile 1 3/4 in (piece.toml {line}:" in found.cure
    stiles = text[: text.index('stiles = "1 3/4"')].count("\n") + 1
    assert f"width of the left stile 1 25/32 in (piece.toml {stiles}:" in found.cure


def test_a_tenon_as_long_as_the_stile_is_wide_clashes_with_nothing() -> None:
    text, _ = with_line('tenon  = "1 1/4"            # of', 'tenon = "1 3/4" # of')
    assert [f for f in edited(text).findings if f.code == "sizes.conflict"] == []
