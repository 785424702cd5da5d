"""One door: a job goes in, a plan with its bound comes out, the same one every time."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.stock.jobs import CUTTING, job

from scantling.exact import Fraction
from scantling.sizes.stopping import CountedWork
from scantling.stock.boards import Board
from scantling.stock.buying import Shopping
from scantling.stock.job import Job, Wanted
from scantling.stock.lay_out import Why, lay_out
from scantling.stock.verdict import findings
from scantling.timber.movement import Cut
from scantling.units import Unit

NOTHING = Shopping(bought=(), unsold=())
BOARD = Board(
    name="one",
    wood="white ash",
    cut=Cut.RIFT,
    grade="FAS",
    thickness=Fraction(26),
    width_a=Fraction(210),
    width_b=Fraction(190),
    length=Fraction(1500),
    cup=Fraction(9),
    paid=Fraction(30),
)
RAIL = Wanted(
    part="rail",
    family="rail",
    wood="white ash",
    cut="flat",
    length=Fraction(700),
    width=Fraction(90),
    thickness=Fraction(19),
)


def _laid(wanted: Wanted) -> Job:
    return Job(boards=(BOARD,), wanted=(wanted,), cutting=CUTTING)


@pytest.mark.parametrize("seed", [3, 8, 21])
def test_the_same_job_has_the_same_plan(seed: int) -> None:
    assert lay_out(job(seed)).plan == lay_out(job(seed)).plan


def test_a_search_without_leave_to_look_still_gives_a_plan() -> None:
    stop = CountedWork(most=0)
    plan = lay_out(job(3), stop=stop).plan
    assert plan.sections
    assert stop.done <= 2  # one run for each wood


@pytest.mark.parametrize("seed", range(12))
def test_looking_longer_is_never_worse(seed: int) -> None:
    for few, many in zip(
        lay_out(job(seed), stop=CountedWork(most=1)).woods,
        lay_out(job(seed), stop=CountedWork(most=99)).woods,
        strict=True,
    ):
        assert len(many.plan.short) <= len(few.plan.short) or many.wood != few.wood
        if not few.plan.short:
            assert many.cost <= few.cost


BEYOND = {
    Why.WOOD: ({"wood": "black walnut"}, "stock.no-board-of-its-wood"),
    Why.RINGS: ({"cut": "quarter"}, "stock.no-board-so-sawn"),
    Why.LENGTH: ({"length": Fraction(1477)}, "stock.longer-than-any-board"),
    Why.THICKNESS: ({"thickness": Fraction(22)}, "stock.thicker-than-any-board"),
    Why.WIDTH: ({"width": Fraction(211)}, "stock.wider-than-any-board"),
    # 26 less 9 x (200/210)^2 is 17.8
    Why.FLATNESS: ({"width": Fraction(200)}, "stock.too-warped"),
}


@pytest.mark.parametrize("why", BEYOND)
def test_a_part_that_no_board_gives_is_found_and_told_why(why: Why) -> None:
    asks, code = BEYOND[why]
    laid = lay_out(_laid(replace(RAIL, **asks)))  # type: ignore[arg-type]  # of the fields named
    (beyond,) = laid.beyond
    assert beyond.why is why
    assert laid.plan.short == ("rail",)
    (found,) = findings(laid, NOTHING, unit=Unit.MM)
    assert found.code == code
    assert "the rail" in found.says


def test_a_part_that_a_board_just_gives_is_laid_out() -> None:
    """By hand: 1500 less two trims of 12; 21 of 26 less 4 3/4; 9 x (150/210)^2 = 4.6."""
    for asks in (
        {"length": Fraction(1476)},
        {"cut": "rift"},
        {"thickness": Fraction(21)},
        {"thickness": Fraction(21), "width": Fraction(150)},
    ):
        laid = lay_out(_laid(replace(RAIL, **asks)))
        assert laid.plan.short == ()
        assert findings(laid, NOTHING, unit=Unit.MM) == ()


def test_a_length_too_long_comes_with_the_longest_there_is() -> None:
    (found,) = findings(lay_out(_laid(replace(RAIL, length=Fraction(2000)))), NOTHING, unit=Unit.MM)
    assert (found.figure, found.limit) == ("2000 mm", "1476 mm")


def test_of_two_boards_that_do_the_dearer_stays_on_the_rack() -> None:
    dear = replace(BOARD, name="dear", paid=Fraction(90))
    for boards in ((BOARD, dear), (dear, BOARD)):
        asked = Job(boards=boards, wanted=(RAIL,), cutting=CUTTING)
        assert lay_out(asked).plan.boards == ("one",)


def test_what_finds_no_place_is_told_without_a_word_too_much() -> None:
    three = tuple(replace(RAIL, part=f"rail {i}", width=Fraction(120)) for i in range(3))
    laid = lay_out(Job(boards=(BOARD,), wanted=three, cutting=CUTTING))
    (found,) = findings(laid, NOTHING, unit=Unit.MM)
    assert found.code == "stock.no-place"
    assert found.cure == "Survey another board, or buy one."
