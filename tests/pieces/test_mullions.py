"""Mullions of one row and of several: how they are called, and where they stand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.edited import DEMO, edited, without

from scantling.setting_out import SettingOut
from scantling.units import INCH

UPPER = '{ opening = "drawers",  tall = 5, across = 2, mullion = "1 1/2" }'
LOWER = '{ opening = "doors" }'
OPEN = ("drawers", "doors", "partition", "shelf.deck", "shelf.loose", "back", "top")


def front(*, lower: str, text: str) -> SettingOut:
    """That cupboard with a lower row of other openings."""
    assert text.count(UPPER) == text.count(LOWER) == 1
    return edited(text.replace(LOWER, lower))


def standing(found: SettingOut) -> dict[str, tuple[Fraction, Fraction]]:
    """Of each mullion, its left edge from the left of the piece, and its width. [in]"""
    return {
        part.name: (part.placement.at[0] / INCH, part.extent.width / INCH)
        for part in found.made
        if part.family == "mullion"
    }


def test_mullions_of_two_rows_are_numbered_from_the_left_the_highest_row_first() -> None:
    lower = '{ opening = "shelves", across = 3, mullion = "1 1/4" }'
    found = front(lower=lower, text=without(*OPEN))
    assert not found.halts
    # 42 less two stiles of 1 3/4 is 38 1/2: less 1 1/2 that is twice 18 1/2; less twice 1 1/4
    # three times 12
    assert standing(found) == {
        "mullion 1": (Fraction(81, 4), Fraction(3, 2)),
        "mullion 2": (Fraction(55, 4), Fraction(5, 4)),
        "mullion 3": (Fraction(27), Fraction(5, 4)),
    }
    joints = {j.name for j in found.joints if j.name.startswith("mullion")}
    assert {"mullion 1 in top rail", "mullion 3 in bottom rail"} < joints


def test_the_only_mullion_of_a_front_has_no_number() -> None:
    found = front(lower=LOWER, text=without(*OPEN))
    assert list(standing(found)) == ["mullion"]


BINS = """{ opening = "bins", tall = 8, across = 2, mullion = "1 1/4" },
  { rail = "low rail", tall = "1 1/2" },
  { opening = "doors" }"""
LOW = """[shelf.low]
flush_with = "low rail"
joint = "sliding dovetail"
deep  = "1/4"

[partition]
"""


@pytest.mark.parametrize("under", ["mullion", "mullion 1"])
def test_a_partition_stands_behind_the_mullion_of_the_highest_row(under: str) -> None:
    text = without("doors", "shelf.loose").replace("[partition]\n", LOW)
    found = front(lower=BINS, text=text.replace('under = "mullion"', f'under = "{under}"'))
    assert not found.halts
    assert [p.name for p in found.made if p.family == "partition"] == ["partition"]
    # 3/4 thick behind the middle of 1 1/2, which begins at 1 3/4 and 18 1/2
    assert found.part("partition").placement.at[0] / INCH == Fraction(81, 4) + Fraction(3, 8)


def test_a_partition_behind_a_mullion_that_is_not_under_the_top_is_told_at_its_line() -> None:
    text = without("doors", "shelf.loose").replace("[partition]\n", LOW)
    text = text.replace('under = "mullion"', 'under = "mullion 2"').replace(LOWER, BINS)
    found = [f for f in edited(text).findings if f.code == "piece.nothing-to-stand-on"]
    line = text[: text.index('under = "mullion 2"')].count("\n") + 1
    assert [str(f.place) for f in found] == [f"piece.toml {line}:10"]
    assert "highest opening" in found[0].cure


def test_feet_side_by_side_have_no_mullion() -> None:
    text = without(*OPEN)
    assert "{ foot = 1 }" in DEMO
    found = front(lower=LOWER, text=text.replace("{ foot = 1 }", "{ foot = 1, across = 3 }"))
    assert list(standing(found)) == ["mullion"]
    assert not found.halts


DOORS = '{ opening = "doors", across = 2, mullion = "1 1/4" }'


def spans(found: SettingOut, name: str) -> tuple[Fraction, Fraction]:
    """Where a part begins and ends, from the left of the piece. [in]"""
    part = found.part(name)
    extent = part.extent
    ends = [
        part.placement.to_piece(corner)[0] / INCH
        for corner in (
            (Fraction(0), Fraction(0), Fraction(0)),
            (extent.length, extent.width, extent.thickness),
        )
    ]
    return min(ends), max(ends)


def test_a_pair_of_doors_hangs_on_either_side_of_a_mullion_below_the_drawers() -> None:
    found = front(lower=DOORS, text=DEMO)
    assert not found.halts
    # 38 1/2 between the stiles less 1 1/4 is twice 18 5/8: 1/16 at the hinges, 1/16 at the lock
    assert spans(found, "left door.left stile")[0] == Fraction(7, 4) + Fraction(1, 16)
    assert spans(found, "left door.right stile")[1] == Fraction(7, 4) + Fraction(297, 16)
    assert spans(found, "mullion 2") == (Fraction(163, 8), Fraction(173, 8))
    assert spans(found, "right door.left stile")[0] == Fraction(173, 8) + Fraction(1, 16)
    assert spans(found, "right door.right stile")[1] == 42 - Fraction(7, 4) - Fraction(1, 16)
    hung = {j.name for j in found.joints if j.title == "hinge"}
    assert hung == {"left door on left stile", "right door on right stile"}


@pytest.mark.parametrize(
    ("across", "pair", "cure"),
    [(2, "false", "pair = true"), (3, "true", "one opening"), (3, "false", "one opening")],
)
def test_doors_in_more_openings_than_they_fill_are_told_at_their_line(
    across: int, pair: str, cure: str
) -> None:
    text = DEMO.replace("pair   = true", f"pair   = {pair}")
    text = text.replace(LOWER, DOORS.replace("across = 2", f"across = {across}"))
    (found,) = (f for f in edited(text).findings if f.weight == "halt")
    line = text[: text.index('fill   = "doors"')].count("\n") + 1
    assert str(found.place) == f"piece.toml {line}:11"
    assert f"has {across} openings" in found.says
    assert cure in found.cure


@pytest.mark.parametrize(
    ("pair", "lower", "idle"),
    [
        ("true", DOORS, "meeting"),
        ("false", LOWER, "meeting"),
        ("true", LOWER, "lock"),
    ],
)
def test_a_gap_that_the_doors_have_not_is_told_as_a_note(pair: str, lower: str, idle: str) -> None:
    text = DEMO.replace("pair   = true", f"pair   = {pair}").replace(LOWER, lower)
    text = text.replace('meeting = "1/8"', 'meeting = "1/8", lock = "3/32"')
    (found,) = (f for f in edited(text).findings if f.code == "piece.no-such-gap")
    assert found.weight == "note"
    at = text.index('"', text.index(f"{idle} = ")) + 1
    line = text[:at].count("\n") + 1
    assert str(found.place) == f"piece.toml {line}:{at - text.rindex(chr(10), 0, at)}"


def test_a_gap_that_the_doors_have_is_no_matter() -> None:
    assert "piece.no-such-gap" not in {f.code for f in edited(DEMO).findings}
