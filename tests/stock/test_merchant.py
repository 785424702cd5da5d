"""The merchant's list is read for its timber, and what is short is bought from it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.stock.jobs import CUTTING

from scantling.exact import Fraction, from_figures
from scantling.sizes.stopping import CountedWork
from scantling.stock.buying import shopping
from scantling.stock.job import Job, Wanted
from scantling.stock.merchant import NARROWEST, Offer, read
from scantling.stock.replay import faults
from scantling.timber.movement import Cut
from scantling.units import FOOT, INCH

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "merchant.csv"
HEAD = "source,species,grade,size,unit,price,lengths_ft,note\n"


def _offers() -> dict[tuple[str, str], Offer]:
    found = read(DEMO.read_text(encoding="utf-8"))
    assert found.findings == ()
    return {(each.wood, each.size): each for each in found.offers}


def test_timber_is_read_and_hardware_passed_over() -> None:
    """Seventeen rows of the list have lengths; printed with the example pieces, section 3."""
    offers = _offers()
    assert len(read(DEMO.read_text()).offers) == 17
    rough = offers["white ash", "4/4 rough random 6-10 in"]
    assert (rough.price, rough.dressed, rough.per) == (from_figures("7.2"), False, "bd ft")
    assert [rough.thickness, rough.width] == [INCH, 6 * INCH]
    assert rough.lengths == (8, 9, 10, 11, 12)
    wide = offers["yellow-poplar", "4/4 rough 7-12 in"]
    assert wide.width == 7 * INCH
    assert offers["white ash", "5/4 rough"].width == NARROWEST


def test_a_dressed_board_is_as_thick_and_wide_as_its_brackets_say() -> None:
    found = _offers()["Douglas-fir", "1x6 (3/4 x 5-1/2)"]
    assert [found.thickness, found.width] == [3 * INCH / 4, 11 * INCH / 2]
    assert (found.dressed, found.cut) == (True, Cut.QUARTER)


def test_a_board_costs_its_board_feet_or_its_feet() -> None:
    """By hand: 6 in x 8 ft of 4/4 are 4 bd ft at 7.20; 8 ft of 1x6 at 3.75."""
    ash = _offers()["white ash", "4/4 rough random 6-10 in"].board("new", feet=8)
    fir = _offers()["Douglas-fir", "1x6 (3/4 x 5-1/2)"].board("new", feet=8)
    assert [ash.paid, fir.paid] == [from_figures("28.8"), 30]


@pytest.mark.parametrize(
    ("row", "code"),
    [
        ("yard,whit ash,FAS,4/4 rough,bd ft,7.20,8-12,", "stock.unknown-wood"),
        ("yard,white ash,FAS,thick,bd ft,7.20,8-12,", "stock.not-a-size"),
        ("yard,white ash,FAS,4/4 rough,each,7.20,8-12,", "stock.unknown-unit"),
        ("yard,white ash,FAS,4/4 rough,bd ft,7.20,long,", "stock.not-a-length"),
        ("yard,white ash,FAS,4/4 rough,bd ft,dear,8-12,", "stock.not-a-number"),
        ("yard,white ash,FAS,4/4 rough,bd ft,,8-12,", "stock.not-said"),
    ],
)
def test_a_wrong_row_is_told(row: str, code: str) -> None:
    found = read(f"{HEAD}{row}\n")
    assert [finding.code for finding in found.findings] == [code]
    assert found.offers == ()


SHELF = Wanted(
    part="shelf",
    family="shelf",
    wood="white ash",
    cut="flat",
    length=4 * FOOT,
    width=5 * INCH,
    thickness=3 * INCH / 4,
)
JOB = Job(boards=(), wanted=(), cutting=replace(CUTTING, planing=3 * INCH / 16))


def test_the_thinnest_and_cheapest_that_is_enough_is_bought() -> None:
    """By hand: 5 in of two shelves and trims need 8 ft 2 in, so one board of 9 ft: 4 1/2 bd ft.

    No. 1 Common at 4.90 is the cheaper of the two sorts of 4/4; its 9 ft cost 22.05.
    """
    short = (SHELF, replace(SHELF, part="other shelf"))
    offers = tuple(read(DEMO.read_text()).offers)
    found = shopping(short, offers=offers, job=JOB, stop=CountedWork(most=50))
    (bought,) = found.bought
    assert (bought.offer.grade, bought.feet, bought.count) == ("No. 1 Common", 9, 1)
    assert bought.cost == from_figures("22.05")
    assert faults(bought.plan, job=bought.job) == ()
    assert found.unsold == ()


def test_thick_parts_take_thick_stock_and_what_nobody_sells_is_told() -> None:
    """4/4 comes out at 13/16 and 5/4 at 1 1/16 (NHLA surfaced thicknesses)."""
    thick = replace(SHELF, part="thick", thickness=7 * INCH / 8)
    post = replace(SHELF, part="post", thickness=3 * INCH / 2)
    oak = replace(SHELF, part="long", length=20 * FOOT)
    found = shopping(
        (thick, post, oak),
        offers=tuple(read(DEMO.read_text()).offers),
        job=JOB,
        stop=CountedWork(most=50),
    )
    assert [bought.offer.size for bought in found.bought] == ["5/4 rough"]
    assert found.unsold == (post, oak)


def test_a_full_stop_still_buys() -> None:
    found = shopping(
        (SHELF,), offers=read(DEMO.read_text()).offers, job=JOB, stop=CountedWork(most=0)
    )
    assert sum((each.cost for each in found.bought), Fraction(0)) > 0
