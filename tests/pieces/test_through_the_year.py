"""Fits of the demo through the year, against figures worked by hand beside its description.

They are worked with white ash 0.00274 and yellow-poplar 0.00158 radial and 0.00289 tangential, a
percent (Wood Handbook 2010, table 13-5), and 6.95 points of moisture from the bench to the dampest
spell (table 4-2, 38 % at 17 C and 75 % at 20 C), where the equation behind that table gives 6.98.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.edited import DEMO, edited, findings_of, with_line

from scantling.findings import Finding
from scantling.setting_out import SettingOut, YearFit, year_fits, year_moves
from scantling.units import INCH

CLOSE = 0.0025  # [in] of hand figures rounded to a hundredth or a thousandth on the way


def inches(value: Fraction) -> float:
    return float(value / INCH)


def fit(found: SettingOut, what: str) -> YearFit:
    (one,) = (each for each in year_fits(found) if each.what == what)
    return one


def told(text: str, code: str) -> Finding:
    (one,) = (f for f in findings_of(text) if f.code == code)
    return one


GROWS = {
    "drawer front": 0.093,
    "door panel": 0.286,
    "back board": 0.141,
    "top": 0.36,
    "side": 0.33,
}


@pytest.mark.parametrize("family", GROWS)
def test_wide_parts_grow_as_worked_by_hand(glaze_cupboard: SettingOut, family: str) -> None:
    (move,) = (m for m in year_moves(glaze_cupboard) if m.family == family)
    assert inches(move.grow) == pytest.approx(GROWS[family], abs=2 * CLOSE)
    assert move.shrink < 0, "this room never gets drier than the bench"


def test_every_wide_part_is_told_and_no_narrow_one(glaze_cupboard: SettingOut) -> None:
    told_of = {part for move in year_moves(glaze_cupboard) for part in move.parts}
    wide = {p.name for p in glaze_cupboard.made if p.extent.width >= 3 * INCH}
    assert told_of == wide


# as it is made, and what is left of it in the dampest month
FITS = {
    "gap over the drawer fronts": (Fraction(1, 8), 1 / 8 - 0.093),
    "gap over the drawer sides": (Fraction(1, 8), 1 / 8 - 4.875 * 0.00158 * 6.95),
    "room beside each panel": (Fraction(3, 16), 3 / 16 - 0.286 / 2),
    "gap between boards": (Fraction(5, 32), 5 / 32 - 0.141),
    "gaps across the doors, together": (
        Fraction(1, 4),
        # hand: 9 in flat-sawn 0.171; here rift, the mean of radial and tangential
        1 / 4 - 9 * (0.00274 + 0.00169) / 2 * 6.95 - 2 * 0.00274 * 6.95,
    ),
    # half of the mid rail, 1 1/2 in, and of the bottom rail, 3 in: each grows from its middle
    "gap over the doors": (Fraction(1, 16), 1 / 16 - 0.75 * 0.00274 * 6.95),
    "gap under the doors": (Fraction(1, 16), 1 / 16 - 1.5 * 0.00274 * 6.95),
    "room each way in the slots of the rails": (Fraction(1, 16), 1 / 16 - 0.033),
    "what of the kickers' rear stubs stays in the rail": (Fraction(3, 8), 0.155),
}


@pytest.mark.parametrize("what", FITS)
def test_fits_close_as_worked_by_hand(glaze_cupboard: SettingOut, what: str) -> None:
    made, damp = FITS[what]
    found = fit(glaze_cupboard, what)
    assert found.made == made * INCH
    assert inches(found.in_damp) == pytest.approx(damp, abs=2 * CLOSE)
    assert found.holds, found.verdict
    assert found.place is not None


def test_laps_cover_an_eighth_in_the_driest_month(glaze_cupboard: SettingOut) -> None:
    cover = fit(glaze_cupboard, "cover of the laps")
    assert inches(cover.made) == pytest.approx(0.22, abs=CLOSE)
    assert cover.months[1] == cover.in_dry > INCH / 8


def test_flat_stiles_leave_what_the_hand_says() -> None:
    found = edited(DEMO.replace('"white ash, rift"', '"white ash, flat"'))
    doors = fit(found, "gaps across the doors, together")
    # 0.25 less 0.171 of the doors and about 0.04 of the frame: just enough
    assert inches(doors.in_damp) == pytest.approx(0.25 - 0.171 - 0.04, abs=2 * CLOSE)
    assert doors.holds


def test_flat_sawn_drawer_sides_stick_and_the_cure_is_other_stock() -> None:
    text, line = with_line('"yellow-poplar, quarter"', '"yellow-poplar, flat"')
    del line
    found = told(text, "drawers.sticks")
    assert found.weight == "mind"
    assert "drawer sides stick in the dampest month" in found.says
    assert "quarter-sawn or rift stock" in found.cure
    # by hand 0.129 of 1/8
    assert float(found.figure.removesuffix(" in")) == pytest.approx(0.129, abs=CLOSE)
    assert found.limit == "1/8 in"
    gaps = DEMO[: DEMO.index('{ top = "1/8" }')].count("\n") + 1
    assert found.place is not None
    assert found.place.line == gaps
    worst, *_ = year_fits(edited(text))
    assert worst.what == "gap over the drawer sides", "what fails stands first"
    assert not worst.holds
    assert "in August" in worst.verdict
    assert worst.advice.startswith("Make it from 5/32 in to")


def test_rift_sides_do() -> None:
    rift = DEMO.replace('"yellow-poplar, quarter"', '"yellow-poplar, rift"')
    assert not [f for f in findings_of(rift) if f.code == "drawers.sticks"]


def test_a_gap_left_to_the_tool_is_made_wide_enough_for_flat_sawn_sides() -> None:
    text = DEMO.replace('"yellow-poplar, quarter"', '"yellow-poplar, flat"')
    text = text.replace('gaps    = { top = "1/8" }', "")
    found = edited(text)
    assert found.sizes["drawer 1.top gap"] == Fraction(5, 32) * INCH
    assert found.sizes["drawer 1.low gap"] == 0, "it still runs on its rail"
    assert fit(found, "gap over the drawer sides").holds


def test_doors_hung_too_close_bind_and_the_meeting_stiles_are_planed() -> None:
    text = DEMO.replace('hinge = "1/16", meeting = "1/8"', 'hinge = "1/32", meeting = "1/16"')
    found = told(text, "doors.bind")
    # by hand 0.139 + 0.038 of movement in a gap of 1/8, and 1/32 is wanted: 0.083 is lacking,
    # 0.042 at each of the two stiles, which is 3/64 on the rule
    assert "leave nothing of 1/8 in" in found.says
    assert found.cure.startswith("Plane each meeting stile 3/64 in")
    doors = fit(edited(text), "gaps across the doors, together")
    assert doors.verdict.startswith("The doors bind in August by 3/64 in. Plane each meeting stile")


def test_a_rail_rubs_on_doors_hung_too_close_to_it() -> None:
    text = DEMO.replace(', bottom = "1/16"', ', bottom = "1/32"')
    found = [f for f in findings_of(text) if f.code == "doors.rub"]
    assert {f.weight for f in found} == {"mind"}
    assert {part for f in found for part in f.parts} == {"bottom rail"}, "not the rail over them"
    # 0.029 of 1/32 is taken and 1/32 is wanted: 0.029 is lacking, 1/32 on the rule
    assert "leave 1/32 in more under the doors" in found[0].cure
    (under,) = (f for f in year_fits(edited(text)) if not f.holds)
    assert under.what == "gap under the doors"
    assert under.parts == ("bottom rail",)


def test_nobody_said_the_gap_and_a_broad_rail_makes_it_wide_enough() -> None:
    text = DEMO.replace('{ rail = "bottom rail", tall = 3,', '{ rail = "bottom rail", tall = 5,')
    text = text.replace(', bottom = "1/16"', "").replace("top_face = 4", "top_face = 6")
    under = fit(edited(text), "gap under the doors")
    # 2 1/2 in of 5 x 0.00274 x 6.95 = 0.048, and 1/32 left: 0.079, on the rule 3/32
    assert under.made == Fraction(3, 32) * INCH
    assert under.holds


def test_a_rear_gap_that_nothing_closes_is_told() -> None:
    notes = [f for f in findings_of(DEMO) if f.code == "kickers.gap-for-nothing"]
    assert {f.weight for f in notes} == {"note"}
    assert all("rear gap of 0 would be sounder" in f.cure for f in notes)


SHOP = DEMO.replace('"40 % at 18 C"', '"28 % at 21 C"').replace('"75 % at 20 C"', '"60 % at 22 C"')


def test_a_room_that_dries_and_swells_needs_that_gap() -> None:
    codes = {f.code for f in findings_of(SHOP)}
    assert not codes & {"kickers.gap-for-nothing", "kickers.push"}
    shoulder = fit(edited(SHOP), "gap at the kickers' rear shoulders")
    # 7.5 to 5.9 %: by hand 11 11/16 x 0.00274 x 1.57 = 0.050
    assert inches(shoulder.in_dry) == pytest.approx(1 / 8 - 0.050, abs=CLOSE)
    assert shoulder.months[1] < shoulder.made < shoulder.months[7]


def test_kickers_without_a_gap_push_the_rails_apart_there() -> None:
    text = SHOP.replace('rear_gap = "1/8"', "rear_gap = 0")
    pushed = [f for f in findings_of(text) if f.code == "kickers.push"]
    assert {f.figure for f in pushed} == {"0.052 in"}
    assert all("Leave 1/16 in more" in f.cure for f in pushed)


def test_stubs_too_short_let_go_in_the_damp() -> None:
    text = DEMO.replace('kickers = { wide = "1 3/4", stub = "1/2"', 'kickers = { stub = "7/16"')
    found = told(text, "kickers.let-go")
    # 7/16 - 1/8 - 0.22 leaves 0.09
    assert "0.089 in" in found.says


def test_a_drawer_as_deep_as_the_case_meets_its_back_when_the_case_dries() -> None:
    text = SHOP.replace("deep   = 16\n", 'deep   = "17 1/4"\n')
    found = told(text, "drawers.meets-back")
    # 17 7/16 inside, frame counted; the sides lose 17 1/4 x 0.00274 x 1.57 = 0.074 of them
    assert float(found.limit.split(" in")[0].replace("3/16", "0.1875")) == pytest.approx(3 / 16)


def test_a_piece_made_in_july_opens_more_than_it_closes() -> None:
    found = edited(DEMO.replace('bench = "38 % at 17 C"', 'bench = "60 % at 22 C"'))
    doors = fit(found, "gaps across the doors, together")
    assert doors.in_damp < doors.made < doors.in_dry
    # 10.9 to 7.8 %: 9 in of rift stiles and 2 in of frame, 3.1 points
    by_hand = (9 * (0.00274 + 0.00169) / 2 + 2 * 0.00274) * 3.1
    assert inches(doors.in_dry - doors.made) == pytest.approx(by_hand, abs=2 * CLOSE)


@pytest.mark.parametrize(("text", "past"), [(DEMO, "14.5 %"), (SHOP, "5.9 %")])
def test_a_room_past_the_range_of_the_law_is_a_note(text: str, past: str) -> None:
    found = told(text, "year.past-its-range")
    assert found.weight == "note"
    assert found.figure == past


def test_a_room_within_the_range_is_not() -> None:
    text = DEMO.replace('"75 % at 20 C"', '"70 % at 20 C"')
    assert not [f for f in findings_of(text) if f.code == "year.past-its-range"]


SOUTH = DEMO.replace('"38 % at 17 C"', '"38 % at 17 C"\ndampest = "January"')


def test_where_january_is_dampest_doors_bind_in_january() -> None:
    tight = 'hinge = "1/32", meeting = "1/16"'
    north, south = (
        year_fits(edited(text.replace('hinge = "1/16", meeting = "1/8"', tight)))[0]
        for text in (DEMO, SOUTH)
    )
    assert south.verdict == north.verdict.replace("August", "January")
    # dampest in January instead of in August: seven months earlier
    assert south.months == (*north.months[7:], *north.months[:7])
    assert south.in_dry == south.months[6], "July, half a year from January"


def test_both_months_may_be_said() -> None:
    said = SOUTH.replace('dampest = "January"', 'dampest = "January"\ndriest = "September"')
    found = fit(edited(said), "gaps across the doors, together")
    assert found.months[8] == found.in_dry
    assert found.months[0] == found.in_damp
    assert list(found.months[:9]) == sorted(found.months[:9]), "it opens from January on"
