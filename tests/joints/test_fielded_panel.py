"""Fielded panel. E9 and E10 are worked by hand in a set made for this project."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.sawn import SHOP, Sawn, area, mm, said, sawn

from scantling.joints._joint import State, Strains
from scantling.joints._panel import FRAME, panel_bench
from scantling.joints.fielded_panel import FieldedPanel
from scantling.parts import Box, Profile, Span, Way
from scantling.shop.habits import Habits
from scantling.timber.moisture import Season
from scantling.timber.movement import Cut as Rings
from scantling.timber.movement import Strain, strain
from scantling.timber.room import Room
from scantling.timber.species import species
from scantling.units import INCH, Unit, length

FINE = Fraction(1, 100)
E9_YEAR = Strain(grow=Fraction("0.00744"), shrink=Fraction("0.00744"))  # 0.00248, 3 % each way
INCH_SHOP = replace(
    SHOP,
    unit=Unit.INCH,
    finest=INCH / 32,
    mortise_chisels=(INCH / 4, INCH * 5 / 16, INCH * 3 / 8),
    plough_irons=(INCH / 8, INCH * 3 / 16, INCH / 4, INCH * 5 / 16, INCH * 3 / 8, INCH / 2),
)


def inch(text: str) -> Fraction:
    return length(text, unit=Unit.INCH)


def panel(
    joint: FieldedPanel | None = None,
    *,
    thick: int | str | Fraction = 15,
    wide: int | str | Fraction = 240,
    grid: Fraction = Fraction(1, 2),
    year: Strain | None = None,
    stated: Mapping[str, int | str] | None = None,
) -> Sawn:
    bench = panel_bench(joint or FieldedPanel(), thick=Fraction(thick), wide=Fraction(wide))
    strains: Strains = {} if year is None else {"panel": year}
    return sawn(bench, grid=grid, strains=strains, stated=stated)


def door_e9(side_gap: str | None, *, pinned: bool = True) -> Sawn:
    """327 clear, grooves 8 deep, 1/2 ease on each side, 3 held."""
    joint = FieldedPanel(
        deep=said(8),
        ease=said("1/2"),
        hold=said(3),
        side_gap=None if side_gap is None else said(side_gap),
        pinned=pinned,
    )
    return panel(joint, wide=327, grid=FINE, year=E9_YEAR)


def room_left(made: Sawn, code: str) -> Fraction:
    """What a season bound leaves over, its ease or hold counted in. [mm]"""
    relations = made.j.joint.relations(made.j, choice=made.choice, strains={"panel": E9_YEAR})
    (bound,) = (b for b in relations.bounds if b.code == code)
    return made.sizes.at(bound.sum)


def test_panel_of_a_door_at_both_ends_of_the_year() -> None:
    # E9: 337 today; damp 339.50728, so 1.74636 left each side; dry 3.74636 held
    made = door_e9("3")
    assert made.sizes["panel.width"] == 337
    damp = room_left(made, "fielded-panel.bursts-its-frame") + Fraction(1, 2)
    dry = room_left(made, "fielded-panel.drops-out") + 3
    assert (damp, dry) == (Fraction("1.74636"), Fraction("3.74636"))
    assert made.breaches == []


@pytest.mark.parametrize(
    ("wide", "found"),
    [
        # E9: at most 339.474, at least 335.496
        ("339.48", ["fielded-panel.bursts-its-frame"]),
        ("339.46", []),
        ("335.50", []),
        ("335.48", ["fielded-panel.drops-out"]),
    ],
)
def test_widths_at_the_limits_of_the_year(wide: str, found: list[str]) -> None:
    gap = (327 + 16 - Fraction(wide)) / 2
    assert door_e9(str(gap)).breaches == found


def test_loose_panel_of_this_door_finds_no_width() -> None:
    # E9: at most 339.474 and at least 340.534 cannot both be
    made = door_e9(None, pinned=False)
    assert len(made.breaches) == 1
    assert door_e9(None).breaches == []


def test_season_asks_nothing_of_a_wood_it_is_not_told() -> None:
    assert panel(FieldedPanel(side_gap=said("1/2"))).breaches == []


def section_e10() -> Sawn:
    joint = FieldedPanel(
        groove=said(8),
        deep=said(8),
        set_in=said(7),
        set_back=said(2),
        edge=said("7.8"),
        flat=said(9),
        margin=said(45),
        step=said(2),
    )
    return panel(joint, thick=20)


def test_section_of_a_panel_with_a_rabbeted_back() -> None:
    # E10: 5 before the tongue, back rabbet 9 wide and 7.2 deep, bevel 1 in 12, back flush
    made = section_e10()
    drawn = made.j.joint.drawn(made.j, sizes=made.sizes, choice=made.choice)
    found = {d.word: d.value for d in drawn}
    assert found["before the tongue"] == 5
    assert found["behind the tongue"] == Fraction("7.2")
    assert found["bevel"] == Fraction(1, 12)
    rabbet = made.box("panel", "back rabbet left")
    assert rabbet == Box(across=Span(None, Fraction(9)), into=Span(Fraction("12.8"), None))
    assert made.own("set back") + made.sizes["panel.thickness"] == 22
    assert not made.overlapping
    assert {p[1] for p in made.contacts("tongue left")[0]} == {7}  # on the groove's front wall
    assert not made.apart


def test_bevel_runs_from_the_tongue_to_the_step() -> None:
    made = section_e10()
    shapes = {c.name: c.shape for c in made.parts["panel"].cuts}
    left, above = shapes["bevel left"], shapes["bevel above"]
    assert isinstance(left, Profile)
    assert isinstance(above, Profile)
    assert left.points == (mm(0, 0), mm(0, 5), mm(9, 5), mm(45, 2), mm(45, 0))
    assert above.points == left.points  # counted from the other end, across the other way
    assert (left.axis, above.axis) == (0, 1)


def test_tongue_lies_against_the_back_wall_where_thickness_allows() -> None:
    made = panel()  # 15 thick, groove 7 to 15
    assert made.own("set back") == 0
    assert [c.name for c in made.parts["panel"].cuts if "rabbet" in c.name] == []
    assert {p[1] for p in made.contacts("tongue below")[0]} == {15}


def test_thinner_panel_is_set_back_to_the_same_wall() -> None:
    made = panel(thick=12)
    assert made.own("set back") == 3
    assert not made.overlapping


def test_thicker_panel_is_flush_and_rabbeted_behind() -> None:
    made = panel(thick=18)
    assert made.own("set back") == 0
    assert {c.name for c in made.parts["panel"].cuts if "rabbet" in c.name} == {
        f"back rabbet {role}" for role in FRAME
    }
    assert not made.overlapping


def test_field_stands_proud_only_if_the_maker_says_so() -> None:
    proud = panel(FieldedPanel(set_back=said(-3)), thick=18)
    assert proud.choice["rabbet"] == 0
    assert not proud.overlapping
    assert not proud.apart
    unsaid = FieldedPanel().choose(
        proud.j, sizes=proud.sizes, shop=SHOP, habits=Habits(), woods={}, strains={}
    )
    assert unsaid["rabbet"] == 1


def test_cupboard_door_in_inches() -> None:
    # sight 14 5/8 by 19 5/8, frame 3/4; panel 15 by 20 5/16 by 1/2, edge 7/32, groove 1/4 by
    # 3/8, 3/16 at the sides: hand figures of the demonstration cupboard, in a damp room
    air = Room(
        dry=Season(humidity=40, temperature=18),
        damp=Season(humidity=75, temperature=20),
        bench=Season(humidity=38, temperature=17),
    )
    year = strain(species("white ash"), Rings.FLAT, air)
    bench = panel_bench(FieldedPanel(), thick=inch("1/2"), wide=inch("14 5/8"), tall=inch("19 5/8"))
    widths = dict.fromkeys(("left", "right", "above"), "2 1/4") | {"below": "3"}
    stated = {f"{role}.width": str(inch(text)) for role, text in widths.items()}
    stated |= {f"{role}.thickness": str(inch("3/4")) for role in FRAME}
    made = sawn(bench, shop=INCH_SHOP, grid=INCH / 32, strains={"panel": year}, stated=stated)
    assert made.sizes["panel.width"] == inch("15")
    assert made.sizes["panel.length"] == inch("20 5/16")
    own = {"groove": "1/4", "set in": "1/4", "depth": "3/8", "edge": "7/32", "side gap": "3/16"}
    assert {word: made.own(word) for word in own} == {w: inch(t) for w, t in own.items()}
    assert made.own("set back") == 0
    assert made.breaches == []
    assert made.codes(INCH_SHOP) == []
    assert not made.overlapping


def test_groove_is_an_iron_that_is_a_chisel_too() -> None:
    irons = replace(SHOP, plough_irons=mm(7, 8), mortise_chisels=mm(6, 8))
    bench = panel_bench(FieldedPanel(), thick=Fraction(15))
    assert sawn(bench, shop=irons).own("groove") == 8  # 7 is nearer a third of 22, but no chisel
    alone = replace(irons, mortise_chisels=())
    assert sawn(bench, shop=alone).own("groove") == 7


def test_each_member_is_drawn_off_and_the_closed_frame_holds() -> None:
    made = panel()
    for role, way in zip(FRAME, (Way.LEFT, Way.RIGHT, Way.DOWN, Way.UP), strict=True):
        assert made.leaves(role) == {way}
        assert way in made.free(role)
        assert made.leaves(role, State.CLOSED) == set()
    assert made.free("panel") == set()


def test_tongue_reaches_into_the_grooves_less_its_gaps() -> None:
    made = panel()  # groove 12 deep, gap 3, ease 1, sight 300 by 240
    patches = {role: area(made.contacts(f"tongue {role}")[0]) for role in FRAME}
    assert patches == {"left": 9 * 300, "right": 9 * 300, "below": 11 * 240, "above": 11 * 240}


def test_pin_holds_the_middle_sideways_only() -> None:
    made = panel()
    pins = made.j.joint.fixings(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    assert {pin.at[0] for pin in pins} == {55 + 120}
    assert {pin.holds for pin in pins} == {frozenset({Way.LEFT, Way.RIGHT})}
    loose = panel(FieldedPanel(pinned=False))
    assert not loose.j.joint.fixings(
        loose.j, sizes=loose.sizes, choice=loose.choice, parts=loose.parts
    )


def test_panel_is_sized_from_the_frame_after_its_grooves() -> None:
    made = panel()
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    assert [s.name for s in steps] == ["plough groove", "take size", "raise panel", "prefinish"]
    assert set(steps[0].parts) == set(FRAME)
    assert steps[0].setting is not None
    assert steps[0].setting.dimensions == ("panel in frame.set in", "panel in frame.depth")


def codes(joint: FieldedPanel | None = None, **more: int) -> list[str]:
    return panel(joint, **more).codes()  # type: ignore[arg-type]  # thickness or width


def test_panel_within_its_limits_has_no_fault() -> None:
    assert codes() == []


def test_thin_wall_beside_the_groove_is_said() -> None:
    assert codes(FieldedPanel(set_in=said("7/2"))) == ["fielded-panel.thin-wall"]
    assert codes(FieldedPanel(set_in=said(4))) == []


def test_groove_without_an_iron_is_said() -> None:
    assert codes(FieldedPanel(groove=said(9))) == ["fielded-panel.no-iron"]
    assert codes(FieldedPanel(groove=said(10))) == []


def test_panel_that_does_not_reach_its_wall_is_said() -> None:
    assert codes(FieldedPanel(set_back=said(-1))) == ["fielded-panel.rattles"]
    assert codes(FieldedPanel(set_back=said(0))) == []


def test_back_proud_of_the_frame_is_said() -> None:
    assert codes(thick=23) == ["fielded-panel.proud-back"]
    assert codes(thick=22) == []


def test_bevels_that_meet_are_said() -> None:
    # 258 wide with its tongues
    assert codes(FieldedPanel(margin=said(129))) == ["fielded-panel.no-field"]
    assert codes(FieldedPanel(margin=said("257/2"))) == []


def test_no_room_for_a_bevel_is_said() -> None:
    # 15 - 7.8 leaves 7.2 before the tongue
    assert codes(FieldedPanel(step=said("13/2"))) == ["fielded-panel.no-bevel"]
    assert codes(FieldedPanel(step=said(6))) == []


def test_very_wide_panel_is_noted() -> None:
    assert codes(wide=592) == ["fielded-panel.wide"]  # and 18 in its grooves: 610, over 24 in
    assert codes(wide=591) == []


def test_flat_panel_without_a_step_is_cut_to_its_field() -> None:
    made = panel(FieldedPanel(step=said(0)))
    shape = next(c.shape for c in made.parts["panel"].cuts if c.name == "bevel left")
    assert isinstance(shape, Profile)
    assert len(shape.points) == 4
    assert not made.overlapping
