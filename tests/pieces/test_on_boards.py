"""The demo on its own rack. Figures: section 4 of the example pieces, last lines, as printed."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from scantling.exact import Fraction, from_figures
from scantling.papers._boards_page import boards_page
from scantling.papers._document import schema
from scantling.papers._paper import Sheet
from scantling.papers.packet import Packet
from scantling.papers.setting_out_json import document
from scantling.setting_out import OnBoards, SettingOut
from scantling.setting_out.rack import laid_out, rack
from scantling.sizes.stopping import CountedWork
from scantling.stock.replay import faults
from scantling.stock.verdict import verdict
from scantling.units import FOOT, INCH, Unit

PIECE = Path(__file__).parents[2] / "pieces" / "glaze_cupboard"
SURVEY, PRICES = ((PIECE / name).read_text() for name in ("boards.csv", "merchant.csv"))
RACK = rack(SURVEY, prices=PRICES, unit=Unit.INCH)


@pytest.fixture(scope="module")
def sawn(glaze_cupboard: SettingOut) -> SettingOut:
    return laid_out(glaze_cupboard, RACK)


def _on(sawn: SettingOut) -> OnBoards:
    assert sawn.boards is not None
    return sawn.boards


def _from(sawn: SettingOut, part: str) -> set[str]:
    plan = _on(sawn).laid.plan
    return {s.board for s in plan.sections if any(each.part == part for each in s.sawn)}


def test_net_areas_are_what_the_rack_is_held_against(glaze_cupboard: SettingOut) -> None:
    """Ash 4/4 20.0 ft2 with horns, ash 5/4 5.7, poplar 5/4 8.7 (loose shelves); by hand."""
    area: dict[str, Fraction] = defaultdict(Fraction)
    for part in glaze_cupboard.made:
        long = part.extent.length + sum(part.horns)
        thick = part.extent.thickness > 3 * INCH / 4
        key = "shelf" if part.family == "loose shelf" else f"{part.wood} {thick}"
        area[key] += long * part.extent.width / FOOT**2
    for key, printed in (("white ash False", "20.0"), ("white ash True", "5.7"), ("shelf", "8.7")):
        assert abs(area[key] - from_figures(printed)) < from_figures("0.1")


def test_the_plan_can_be_sawn(sawn: SettingOut) -> None:
    assert faults(_on(sawn).laid.plan, job=_on(sawn).laid.job) == ()


def test_two_thick_boards_of_ash_make_the_top(sawn: SettingOut) -> None:
    """A8+A9 make the top."""
    assert _from(sawn, "top") == {"A8", "A9"}


def test_two_thick_boards_of_poplar_make_the_loose_shelves(sawn: SettingOut) -> None:
    """P7+P8 the loose shelves."""
    assert _from(sawn, "loose shelf 1") | _from(sawn, "loose shelf 2") == {"P7", "P8"}


def test_the_ash_is_enough_and_is_said_to_be(sawn: SettingOut) -> None:
    """40.2 bd ft for 20.0 ft2 and 13.1 for 5.7: about half of it."""
    ash = next(wood for wood in _on(sawn).laid.woods if wood.wood == "white ash")
    assert ash.plan.short == ()
    assert ash.bound.count <= ash.count < 9
    assert verdict(ash).startswith("Six boards; four cannot do it")


def test_the_poplar_fails_and_what_to_buy_is_said(sawn: SettingOut) -> None:
    """Of the poplar 69 % is wanted, so the layout may well fail and then says what to buy."""
    found = {part: f for f in sawn.findings if f.code == "stock.no-place" for part in f.parts}
    assert found
    assert all(
        finding.cure.startswith("Buy one board of yellow-poplar") for finding in found.values()
    )
    (bought,) = _on(sawn).shopping.bought
    assert faults(bought.plan, job=bought.job) == ()
    assert {w.part for w in bought.job.wanted} == set(found)


def test_what_no_board_gives_is_told_with_its_reason(sawn: SettingOut) -> None:
    """No poplar of 1 1/2 in was surveyed or is sold, and none that is quarter-sawn."""
    told = {finding.code: finding for finding in sawn.findings}
    thick = told["stock.thicker-than-any-board"]
    assert set(thick.parts) == {"centre kicker", "left kicker", "right kicker"}
    assert thick.figure == "1 1/2 in"
    assert len(told["stock.no-board-so-sawn"].parts) == 4
    assert not sawn.halts


def test_the_layout_is_kept_while_nothing_it_rests_on_changes(
    glaze_cupboard: SettingOut, sawn: SettingOut
) -> None:
    stop = CountedWork(most=99)
    again = laid_out(glaze_cupboard, RACK, before=sawn, stop=stop)
    assert again.boards is sawn.boards
    assert again.findings == sawn.findings
    assert stop.done == 0
    fewer = replace(RACK, boards=RACK.boards[:-1])
    assert laid_out(glaze_cupboard, fewer, before=sawn, stop=stop).boards is not sawn.boards


def test_the_document_tells_the_boards_as_its_schema_promises(sawn: SettingOut) -> None:
    found = json.loads(json.dumps(document(sawn)))
    assert list(Draft202012Validator(schema()).iter_errors(found)) == []
    told = found["boards"]
    assert len(told["boards"]) == 32
    placed = {s["part"] for b in told["boards"] for each in b["sections"] for s in each["sawn"]}
    assert placed | set(told["short"]) == {part.name for part in sawn.made}
    assert placed.isdisjoint(told["short"])
    assert told["woods"][0]["verdict"].startswith("Six boards; four cannot do it")


def test_the_sheet_draws_every_board_that_is_cut_and_tells_every_section(sawn: SettingOut) -> None:
    page = boards_page(sawn, sheet=Sheet.LETTER)
    assert page is not None
    assert isinstance(page["boards"], list)
    plan = _on(sawn).laid.plan
    names = [board["name"] for board in page["boards"] if isinstance(board, dict)]
    assert set(names) == set(plan.boards)
    told = json.dumps(page["boards"])
    assert told.count(" wide") == sum(len(section.sawn) for section in plan.sections)
    assert Packet.render(sawn, sheet=Sheet.LETTER)["packet.pdf"].startswith(b"%PDF")


def test_without_a_survey_the_document_tells_no_boards(glaze_cupboard: SettingOut) -> None:
    assert document(glaze_cupboard)["boards"] is None


def _one_changed(row: str, change: Callable[[str], str]) -> str:
    return "\n".join(change(each) if each.startswith(row) else each for each in SURVEY.split("\n"))


def test_a_knot_where_the_top_lay_is_kept_clear(glaze_cupboard: SettingOut) -> None:
    knotty = _one_changed("A8,", lambda row: row.replace("check end_b", "knot 1@20:4; check end_b"))
    found = laid_out(glaze_cupboard, rack(knotty, unit=Unit.INCH), stop=CountedWork(most=4))
    laid = _on(found).laid
    assert faults(laid.plan, job=laid.job) == ()


def test_a_rack_that_cannot_be_read_is_told_and_all_is_short(glaze_cupboard: SettingOut) -> None:
    found = laid_out(glaze_cupboard, rack("no,list\n", unit=Unit.INCH))
    codes = [finding.code for finding in found.findings]
    assert "stock.missing-column" in codes
    assert codes.count("stock.no-board-of-its-wood") == 2  # ash and poplar, told once each


def test_boards_give_a_thickness_when_they_are_asked(glaze_cupboard: SettingOut) -> None:
    """4/4 ash at 1.00 is the thinnest: less 3/16 it gives 13/16."""
    gives = RACK.attainable(glaze_cupboard.habits)
    assert min(gives["white ash"]) == 13 * INCH / 16
    assert gives["ash"] == gives["white ash"]
