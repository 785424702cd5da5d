"""Parts measured unequal left and right: nothing overlaps, and nothing else is driven wrong."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.measured import (
    Off,
    facts,
    made,
    moved,
    open_sums,
    pairs,
    relations,
    sawn,
    thicker,
    thinner,
    told,
    too_far,
)

from scantling.setting_out import SettingOut
from scantling.units import INCH

# A maker is stopped by these, and rightly: wood stands where other wood is to go.
STOPS: dict[str, set[str]] = {
    # the groove in it comes down on the partition by what it is too thick: plane it
    "centre kicker.thickness +0.02": {"proofs.parts-overlap"},
    # it stands so far behind the frame that the drawer runs askew: pack it out
    "drawer 1 left guide.thickness -0.1": {"proofs.drawer-unguided"},
    "drawer 2 left guide.thickness -0.1": {"proofs.drawer-unguided"},
}

# What was measured [in], and all other sizes that are changed by it
QUICK: dict[str, tuple[dict[str, str], set[str]]] = {
    "a deck sawn short is let in less deep on the right": ({"deck.length": "40.95"}, set()),
    "a side planed narrow shows less wood behind the back": ({"left side.width": "17.2"}, set()),
    "drawer sides of unlike width": (
        {"drawer 1.left side.width": "4.85", "drawer 1.right side.width": "4.83"},
        set(),
    ),
    "a rail sawn short has the shorter tenon": ({"mid rail.length": "40.95"}, set()),
    "a lowest rail planed narrow stands higher, and no foot is changed": (
        {"bottom rail.width": "2.95"},
        {"bottom rail in left stile.width", "bottom rail in right stile.width"},
    ),
    "a thin panel lies against the back of its groove": (
        {"left door.panel.thickness": "0.48"},
        {"left door.panel in frame.set back"},
    ),
    "a thin frame stile leaves the case and the frame as planned": (
        {"left stile.thickness": "0.73"},
        set(),
    ),
}


@pytest.mark.parametrize("case", QUICK)
def test_a_part_made_already_moves_what_it_must(case: str, glaze_cupboard: SettingOut) -> None:
    inches, expected = QUICK[case]
    off = {n: Fraction(v) - glaze_cupboard.sizes[n] / INCH for n, v in inches.items()}
    found = fits(off, glaze_cupboard)
    assert set(moved(glaze_cupboard, found)) == inches.keys() | expected


def test_sides_of_unlike_thickness_leave_all_else_outside(glaze_cupboard: SettingOut) -> None:
    planned = {"left side.thickness": "-0.016", "right side.thickness": "-0.009"}
    found = fits({n: Fraction(v) for n, v in planned.items()}, glaze_cupboard)
    for name in ("case.wide", "case.deep", "case.tall", "top.length", "face frame.wide"):
        assert found.sizes[name] == glaze_cupboard.sizes[name]
    # 42 less 0.734 and 0.741
    assert found.sizes["case.inside wide"] == Fraction("40.525") * INCH
    assert found.sizes["bottom.length"] == Fraction("41.025") * INCH


def test_a_short_door_stile_makes_a_short_door_under_a_wider_gap(
    glaze_cupboard: SettingOut,
) -> None:
    off = {"left door.right stile.length": -Fraction(5, 100)}
    found = fits(off, glaze_cupboard)
    assert found.sizes["left door.left stile.length"] == Fraction("24.825") * INCH
    assert found.sizes["left door.short of it"] == INCH * 5 / 100
    for word in ("top gap", "bottom gap"):
        assert found.sizes[f"left door.{word}"] == INCH / 16
    assert not [name for name in moved(glaze_cupboard, found) if name.startswith("right door")]


def test_a_deck_that_lacks_half_its_joint_is_made_anew(glaze_cupboard: SettingOut) -> None:
    # 1/4 goes in; of 0.13 too little less than half of it holds
    off = {"deck.length": -Fraction(13, 100)}
    found = made(facts(off, glaze_cupboard), glaze_cupboard)
    assert {f.code for f in found.findings if f.weight == "halt"} == {"sizes.conflict"}
    # and just inside the limit it holds
    fits({"deck.length": -Fraction(12, 100)}, glaze_cupboard)


def test_a_bottom_left_wide_is_in_the_way_of_the_back(glaze_cupboard: SettingOut) -> None:
    # it would press on the boards and on their nails: plane it
    off = {"bottom.width": Fraction(3, 100)}
    found = made(facts(off, glaze_cupboard), glaze_cupboard)
    codes = {f.code for f in found.findings if f.weight == "halt"}
    assert codes == {"proofs.parts-overlap", "proofs.press-differs"}


def test_the_list_names_every_part_and_all_its_fellows() -> None:
    assert len(sawn()) == 49
    assert len(list(thinner())) == 3 * 49
    # by hand: sides, sub-top rails, stiles, loose shelves, kickers, two back boards: 6; fronts,
    # backs and bottoms of drawers 3, their sides 4, guides 4; door stiles 4, rails and panels 3
    assert len(list(pairs())) == 3 * (6 + 3 + 4 + 4 + 4 + 3)


@pytest.mark.slow
@pytest.mark.parametrize("off", [*thinner(), *thicker(), *pairs()], ids=told)
def test_every_part_off_by_a_little_fits(off: Off, glaze_cupboard: SettingOut) -> None:
    fits(off, glaze_cupboard)


def fits(off: Off, base: SettingOut) -> SettingOut:
    """The piece with those parts as they are, once everything asked of it has been looked at."""
    measured = facts(off, base)
    found = made(measured, base)
    for fact in measured:
        assert found.sizes[fact.name] == fact.least
    halts = {f.code for f in found.findings if f.weight == "halt"}
    assert halts == STOPS.get(told(off), set())
    assert open_sums(relations(measured, found), found.sizes) == []
    for part in found.made:
        planned = (found.sizes[f"{part.name}.{word}"] for word in ("length", "width", "thickness"))
        extent = part.extent
        assert (extent.length, extent.width, extent.thickness) == tuple(planned)
    assert too_far(off, base, found) == {}
    return found
