"""A cupboard thought out in millimetres, in a metric shop: nothing of it is a converted inch.

Hand figures: between stiles of 45 a frame of 980 leaves 890. Rows of 40, 130, 40, 70 and feet of
25 leave 575 of 880 for the doors; two doors with gaps of 1.5, 3 and 1.5 share 890 at 442 each,
and are 575 less twice 1.5 tall. A mullion of 40 leaves 425 for each drawer.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from scantling.setting_out import SettingOut

F = Fraction
BY_HAND = {
    "doors opening.tall": F(575),
    "left door.wide": F(442),
    "right door.wide": F(442),
    "left door.tall": F(572),
    "drawers opening 1.wide": F(425),
    "drawers opening 2.wide": F(425),
    # rails reach 30 into both stiles, the mullion 15 into both rails
    "mid rail.length": F(890 + 2 * 30),
    "mullion.length": F(130 + 2 * 15),
    # flush with the mid rail: feet, bottom rail, doors, rail
    "deck.top face": F(25 + 70 + 575 + 40),
    "left door.top rail in left stile.thickness": F(8),
    "mid rail in left stile.thickness": F(8),
    "loose shelves.size": F(5),
    "loose shelves.pitch": F(32),
}
NOTES = {  # code -> text of the line it stands at, once each
    ("mortise-and-tenon.broad", 'joint  = { joint = "mortise and tenon", thick = 8 }'),
    ("mortise-and-tenon.broad", "kicker = { wide = 70, stub = 12, rear_gap = 3 }"),
    ("mortise-and-tenon.broad", 'joint  = { joint = "mortise and tenon", tenon = 38, thick = 8 }'),
    (
        "screws-in-slots.short-thread",
        'guides  = { held_by = { joint = "screws in slots", count = 2',
    ),
    ("screws-in-slots.short-thread", 'held_by = { joint = "screws in slots", count = 3 }'),
    ("one-nail-at-mid-width.near-end", "[back]"),
}


def test_nothing_stops_the_work_and_nothing_is_to_mind(metric_cupboard: SettingOut) -> None:
    assert {f.weight for f in metric_cupboard.findings} == {"note"}


def test_the_notes_stand_at_their_lines(metric_cupboard: SettingOut) -> None:
    lines = metric_cupboard.piece.text.splitlines()
    told = [(f.code, lines[f.place.line - 1]) for f in metric_cupboard.findings if f.place]
    assert len(told) == len(metric_cupboard.findings) == len(NOTES)
    assert all(any(code == c and text in line for code, line in told) for c, text in NOTES)


@pytest.mark.parametrize("name", BY_HAND)
def test_a_size_is_as_worked_by_hand(metric_cupboard: SettingOut, name: str) -> None:
    assert metric_cupboard.sizes[name] == BY_HAND[name]


def test_every_made_part_is_as_long_and_wide_as_a_half_millimetre_rule_shows(
    metric_cupboard: SettingOut,
) -> None:
    loose = {"left door.panel", "right door.panel"}  # what is left of a groove and its ease
    off = {
        part.name
        for part in metric_cupboard.made
        if part.name not in loose and "back board" not in part.name
        for size in (part.extent.length, part.extent.width)
        if (size * 2).denominator != 1
    }
    assert off == set()


def test_amounts_are_told_in_millimetres(metric_cupboard: SettingOut) -> None:
    assert all(" mm" in f.figure and " in" not in f.figure for f in metric_cupboard.findings)
    assert all(f.limit.endswith(" mm") for f in metric_cupboard.findings)
