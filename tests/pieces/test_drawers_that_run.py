"""Drawers are carried, guided and kept from tipping, and fit the depth there is, or it is told."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.edited import DEMO, edited, halts, with_line, without

from scantling.units import INCH


def test_three_drawers_stand_between_two_partitions() -> None:
    found = edited(DEMO.replace("across = 2", "across = 3"))
    stands = {p.name: p.placement.at[0] for p in found.parts if p.family == "partition"}
    # 42 less two stiles of 1 3/4 and two mullions of 1 1/2 leaves three openings of 11 5/6; the
    # rule's marks make them 11 27/32, 11 27/32 and 11 13/16
    first = (Fraction(7, 4) + Fraction(379, 32) + Fraction(3, 4) - Fraction(3, 8)) * INCH
    second = first + (Fraction(379, 32) + Fraction(3, 2)) * INCH
    assert stands == {"partition 1": first, "partition 2": second}
    assert {p.family for p in found.parts if p.name.startswith("centre kicker")} == {"kicker"}


DRAWERS_DO_NOT_RUN = {
    "three drawers and one partition": (
        'under = "mullion"',
        'under = "mullion 1"',
        {"proofs.drawer-unguided": {"drawer 2.right side", "drawer 3.left side"}},
    ),
    "no guides": (
        "guides  = {",
        "# guides  = {",
        {"proofs.drawer-unguided": {"drawer 1.left side", "drawer 1.right side"}},
    ),
    "no kickers": (
        "kickers = {",
        "# kickers = {",
        {"proofs.drawer-tips": {"drawer 1.left side"}},
    ),
    "a deck too low": (
        'flush_with = "mid rail"',
        "top_face = 29",
        {"proofs.drawer-not-carried": {"drawer 1.left side", "drawer 1.right side"}},
    ),
}


def one_drawer(text: str) -> str:
    """A single drawer in the row, so that no partition stands behind a mullion."""
    start = text.index("[partition]")
    text = text[:start] + text[text.index("[drawers]") :]
    return text.replace('across = 2, mullion = "1 1/2"', "across = 1")


@pytest.mark.parametrize("case", DRAWERS_DO_NOT_RUN)
def test_a_drawer_that_does_not_run_stops_the_work(case: str) -> None:
    old, new, wanted = DRAWERS_DO_NOT_RUN[case]
    text, _ = with_line(old, new)
    if case == "a deck too low":
        text = one_drawer(text)
    if case.startswith("three"):
        text = text.replace("across = 2", "across = 3")
    found = halts(text)
    for code, parts in wanted.items():
        told = [f for f in found if f.code == code]
        assert parts <= {part for f in told for part in f.parts}
        assert all(f.place is not None and f.cure for f in told)


def test_two_drawers_without_a_partition_are_told_at_their_row() -> None:
    text = without("partition")
    row = text[: text.index('{ opening = "drawers"')].count("\n") + 1
    found = {f.code: f for f in halts(text)}
    assert set(found) == {"proofs.drawer-unguided", "proofs.drawer-tips"}
    assert {f.place.line for f in found.values() if f.place} == {row}
    assert all("partition behind the mullion" in f.cure for f in found.values())


def test_the_partition_that_is_short_of_another_is_the_guilty_line() -> None:
    text, line = with_line('under = "mullion"', 'under = "mullion 2"')
    found = halts(text.replace("across = 2", "across = 3"))
    assert {(f.code, f.place.line) for f in found if f.place} == {
        ("proofs.drawer-unguided", line),
        ("proofs.drawer-tips", line),
    }


def test_drawers_below_the_doors_have_nothing_to_hang_a_kicker_from() -> None:
    drawers = '  { opening = "drawers",  tall = 5, across = 2, mullion = "1 1/2" },\n'
    doors = '  { opening = "doors" },    # 25 follows\n'
    text = one_drawer(DEMO.replace(drawers, "@").replace(doors, drawers).replace("@", doors))
    tips = [f for f in halts(text) if f.code == "proofs.drawer-tips"]
    assert {part for f in tips for part in f.parts} == {
        f"drawer 1.{side} side" for side in ("left", "right")
    }
    assert all("highest opening" in f.cure for f in tips)


def shallow(text: str) -> str:
    """That cupboard, 10 in deep: 8 11/16 inside behind the frame of 3/4, with a 9/16 rabbet."""
    assert text.count("deep  = 18 ") == 1
    return text.replace("deep  = 18 ", "deep  = 10 ")


def test_drawers_longer_than_the_case_is_deep_are_told_once() -> None:
    (found,) = halts(shallow(DEMO))
    assert found.code == "sizes.conflict"
    assert "a drawer ends before the back of the case" in found.says
    # 10 less the rabbet's 9/16, counted from the face of the frame; or 16 and the rabbet
    assert "depth of drawer 1 9 7/16 in (piece.toml 62:10)" in found.cure
    assert (found.figure, found.limit) == ("16 in", "9 7/16 in")
    assert "16 9/16 in (piece.toml 22:9)" in found.cure


def test_no_conflict_asks_for_less_than_nothing() -> None:
    (found,) = halts(shallow(DEMO))
    assert "-" not in found.cure


def test_drawers_of_no_stated_depth_are_as_long_as_a_shallow_case_lets_them() -> None:
    found = edited(shallow(DEMO).replace("\ndeep   = 16", ""))
    assert not found.halts
    assert found.sizes["drawer 1.deep"] <= Fraction(151, 16) * INCH
    assert found.sizes["drawer 1 left guide.length"] <= Fraction(139, 16) * INCH
