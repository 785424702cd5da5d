"""The survey of the rack is read to the last defect, and what is wrong with it has its place."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import pytest

from scantling.exact import Fraction, from_figures
from scantling.findings import Finding, underlined
from scantling.stock.boards import Board, Harm
from scantling.stock.survey import read
from scantling.timber.movement import Cut
from scantling.units import FOOT, INCH, Unit

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "boards.csv"
HEAD = "id,species,cut,rough_t_in,width_a_in,width_b_in,length_in,defects\n"
GOOD = "A1,white ash,flat,1.03,7.6,7.9,121.5,\n"


def _boards(rows: str, head: str = HEAD) -> tuple[Board, ...]:
    survey = read(head + rows, unit=Unit.INCH)
    assert survey.findings == ()
    return survey.boards


def _fault(rows: str, head: str = HEAD) -> tuple[Finding, str]:
    """The one finding of a list, and the text it points at."""
    (finding,) = read(head + rows, unit=Unit.INCH).findings
    assert finding.place is not None
    line, carets = underlined(head + rows, finding.place).split("\n")
    return finding, line[carets.index("^") : carets.rindex("^") + 1]


def test_the_rack_of_the_demo_measures_what_its_maker_reckoned() -> None:
    """Board feet as printed under the survey of the example pieces (section 4, last lines)."""
    survey = read(DEMO.read_text(encoding="utf-8"), unit=Unit.INCH)
    assert len(survey.boards) == 32
    assert [f.code for f in survey.findings] == ["stock.depth-not-said"]
    feet: dict[tuple[str, Fraction], Fraction] = defaultdict(Fraction)
    for board in survey.boards:
        feet[board.wood, board.nominal] += board.board_feet
    assert round(feet["white ash", Fraction(1)], 1) == from_figures("40.2")
    assert round(feet["white ash", Fraction(5, 4)], 1) == from_figures("13.1")
    assert round(feet["yellow-poplar", Fraction(1)], 1) == from_figures("42.5")
    assert abs(feet["yellow-poplar", Fraction(5, 4)] - from_figures("15.4")) < from_figures("0.06")


def test_what_was_paid_is_board_feet_at_the_list_price() -> None:
    """Prices of the merchant's list of the same pieces, each board as its row prints it."""
    paid = {board.name: board for board in read(DEMO.read_text(), unit=Unit.INCH).boards}
    for name, price in (("A1", "7.20"), ("W4", "8.90"), ("M2", "8.20"), ("N4", "16.20")):
        board = paid[name]
        assert board.paid is not None
        assert abs(board.board_feet * from_figures(price) - board.paid) < from_figures("0.05")


def test_lengths_are_read_in_any_notation() -> None:
    (board,) = _boards('A1,"ash, white",quarter,1 1/32,195 mm,7-3/4",10 ft 1 1/2 in,\n')
    assert board.wood == "white ash"
    assert board.cut is Cut.QUARTER
    assert board.thickness == INCH + INCH / 32
    assert [board.width_a, board.width_b] == [195, 7 * INCH + 3 * INCH / 4]
    assert board.length == 10 * FOOT + 3 * INCH / 2


def test_a_column_may_say_its_unit() -> None:
    head = "id,species,rough_t_mm,width_a_mm,length\n"
    (board,) = _boards("A1,ash,26,195,72\n", head)
    assert [board.thickness, board.width_b, board.length] == [26, 195, 6 * FOOT]


DEFECTS = {
    "knot 0.8@71.5:5.2": (Harm.KNOT, ("71.1", "71.9", "4.8", "5.6")),
    "pin knot 1/2@62:1 1/2": (Harm.KNOT, ("61.75", "62.25", "1.25", "1.75")),
    "black knot 0.9@51.0:6.5 loose": (Harm.SPOILS, ("50.55", "51.45", "6.05", "6.95")),
    "knot 0.8@40.0:6.6 face_b only": (Harm.KNOT, ("39.6", "40.4", "6.2", "7")),
    "pitch pocket 3.0x0.3@44.0:5.0": (Harm.SPOILS, ("42.5", "45.5", "4.85", "5.15")),
    "check end_a 0-3.0": (Harm.SPOILS, ("0", "3", "0", "7.9")),
    "bad 40 to 52": (Harm.SPOILS, ("40", "52", "0", "7.9")),
    "wane edge_b 80-98.2 x0.5": (Harm.SPOILS, ("80", "98.2", "7.1", "7.9")),
    "pith edge_a 60-84 x3/4": (Harm.SPOILS, ("60", "84", "0", "0.75")),
    "sap edge_a 0-97 x1.0": (Harm.LOOK, ("0", "97", "0", "1")),
}


@pytest.mark.parametrize("says", DEFECTS)
def test_a_defect_takes_up_its_rectangle(says: str) -> None:
    (board,) = _boards(f"A1,white ash,flat,1.03,7.6,7.9,121.5,{says}\n")
    (found,) = board.defects
    harm, sides = DEFECTS[says]
    assert found.harm is harm
    rectangle = (found.start, found.stop, found.near, found.far)
    assert [side / INCH for side in rectangle] == [from_figures(side) for side in sides]


@pytest.mark.parametrize("says", ["clear", "ray fleck both faces", "home centre board dressed"])
def test_what_has_no_place_is_only_looked_at(says: str) -> None:
    (board,) = _boards(f"A1,white ash,flat,1.03,7.6,7.9,121.5,{says}\n")
    assert board.defects == ()
    assert board.dressed is ("dressed" in says)


WRONG = {
    "A1,white ash,flat,1.03,7.6,7.9,11/2,": ("stock.not-a-length", "11/2"),
    "A1,white ash,flat,1.03,7.6,7.9,4,": ("stock.out-of-range", "4"),
    "A1,whit ash,flat,1.03,7.6,7.9,96,": ("stock.unknown-wood", "whit ash"),
    "A1,white ash,quater,1.03,7.6,7.9,96,": ("stock.unknown-cut", "quater"),
    "A1,white ash,flat,1.03,7.6,7.9,96,knut 1@5:4": ("stock.unknown-defect", "knut 1@5:4"),
    "A1,white ash,flat,1.03,7.6,7.9,96,clear; knot": ("stock.not-a-defect", "knot"),
    "A1,white ash,flat,1.03,7.6,7.9,96,knot 1@99:4": ("stock.off-the-board", "knot 1@99:4"),
    "A1,white ash,flat,,7.6,7.9,96,": ("stock.not-said", "A1"),
    f"{GOOD}{GOOD}".rstrip(): ("stock.said-twice", "A1"),
}


@pytest.mark.parametrize("row", WRONG)
def test_a_wrong_cell_is_shown_in_its_place(row: str) -> None:
    finding, shown = _fault(f"{row}\n")
    assert (finding.code, shown) == WRONG[row]


def test_a_suggestion_comes_with_a_misspelt_wood() -> None:
    finding, _ = _fault("A1,whit ash,flat,1.03,7.6,7.9,96,\n")
    assert "white ash" in finding.cure


def test_a_comma_without_quotes_is_one_cell_too_many() -> None:
    finding, _ = _fault("A1,ash, white,flat,1.03,7.6,7.9,96,\n")
    assert finding.code == "stock.too-many-cells"
    assert "quotes" in finding.cure


def test_a_quote_left_open_is_told() -> None:
    found = read(f'{HEAD}A1,"white ash,flat,1.03,7.6,7.9,96,\n', unit=Unit.INCH).findings
    assert "stock.not-readable" in [finding.code for finding in found]


def test_a_column_that_lacks_is_named() -> None:
    finding, _ = _fault("A1,ash,1.03,7.6\n", "id,species,rough_t,width_a\n")
    assert finding.code == "stock.missing-column"
    assert "length" in finding.says


def test_a_misspelt_column_is_told_with_what_was_meant() -> None:
    head = HEAD.replace("cut", "kut")
    finding, shown = _fault(GOOD, head)
    assert (finding.code, shown, finding.cure) == ("stock.unknown-column", "kut", "Perhaps cut.")


def test_a_column_given_twice_is_told() -> None:
    finding, _ = _fault("A1,ash,1,7,72,72\n", "id,species,rough_t,width_a,length,length_in\n")
    assert finding.code == "stock.said-twice"


def test_what_is_no_number_is_told() -> None:
    head = "id,species,rough_t,width_a,length,paid\n"
    finding, shown = _fault("A1,ash,1,7,72,dear\n", head)
    assert (finding.code, shown) == ("stock.not-a-number", "dear")


def test_an_empty_list_and_an_endless_one_are_no_racks() -> None:
    for text in ("", "# nothing yet\n", "x" * 200_001):
        (finding,) = read(text, unit=Unit.INCH).findings
        assert finding.code == "stock.not-readable"


def test_of_a_rack_without_end_the_first_three_hundred_are_read() -> None:
    rows = "".join(GOOD.replace("A1", f"A{i}") for i in range(302))
    survey = read(HEAD + rows, unit=Unit.INCH)
    assert len(survey.boards) == 300
    assert [finding.code for finding in survey.findings] == ["stock.too-many-boards"]


def test_a_sound_row_is_kept_beside_a_wrong_one() -> None:
    survey = read(f"{HEAD}A0,whit ash,flat,1,7,7,96,\n{GOOD}", unit=Unit.INCH)
    assert [board.name for board in survey.boards] == ["A1"]
