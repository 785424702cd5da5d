"""What is called proven holds: worked by hand, and against every plan there could be."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.stock.jobs import CUTTING

from scantling.exact import Fraction
from scantling.stock.boards import Board, Defect, Harm
from scantling.stock.bound import bound, sums
from scantling.stock.job import Job, Wanted
from scantling.stock.lay_out import lay_out
from scantling.stock.verdict import verdict
from scantling.timber.movement import Cut

SHARP = replace(
    CUTTING,
    kerf_across=Fraction(0),
    kerf_along=Fraction(0),
    end_trim=Fraction(0),
    planing=Fraction(0),
)


def _board(name: str, long: int, wide: int, **more: object) -> Board:
    plain = Board(
        name=name,
        wood="white ash",
        cut=Cut.FLAT,
        grade="",
        thickness=Fraction(26),
        width_a=Fraction(wide),
        width_b=Fraction(wide),
        length=Fraction(long),
        paid=Fraction(10),
    )
    return replace(plain, **more)  # type: ignore[arg-type]  # of the fields named


def _blanks(many: int, long: int, wide: int, *, thick: int = 19) -> tuple[Wanted, ...]:
    return tuple(
        Wanted(
            part=f"{long} by {wide} by {thick}, {i}",
            family="blank",
            wood="white ash",
            cut="flat",
            length=Fraction(long),
            width=Fraction(wide),
            thickness=Fraction(thick),
        )
        for i in range(many)
    )


def _job(boards: tuple[Board, ...], wanted: tuple[Wanted, ...], **more: object) -> Job:
    cutting = replace(SHARP, **more)  # type: ignore[arg-type]  # of the fields named
    return Job(boards=boards, wanted=wanted, cutting=cutting)


def test_area_alone_proves_a_count() -> None:
    """By hand: 13 blanks of 500 x 100 are 0.65 m2; a board of 1000 x 200 has 0.2, so four."""
    boards = tuple(_board(f"{i}", 1000, 200) for i in range(6))
    found = bound(_job(boards, _blanks(13, 500, 100)))
    assert (found.count, found.cost) == (4, Fraction(65, 2))
    (laid,) = lay_out(_job(boards, _blanks(13, 500, 100))).woods
    assert laid.is_best
    assert verdict(laid) == "Four boards; three cannot do it."


def test_kerfs_are_counted_in_the_area() -> None:
    """By hand: with kerfs of 4 and 8, 501 + 8 twice is 1018 > 1000 + 8: one to a board's length."""
    boards = tuple(_board(f"{i}", 1000, 208) for i in range(5))
    wanted = _blanks(4, 498, 100)
    sawn = _job(boards, wanted, kerf_across=Fraction(8), kerf_along=Fraction(4))
    assert bound(_job(boards, wanted)).count == 1
    assert bound(sawn).count == 2


def test_blanks_longer_than_half_a_board_cannot_follow_each_other() -> None:
    """By hand: five of 600 in boards of 1000 x 200, side by side two to a board: three boards.

    Their area is 0.3 m2 of 0.2 each, which two boards have.
    """
    boards = tuple(_board(f"{i}", 1000, 200) for i in range(4))
    job = _job(boards, _blanks(5, 600, 100))
    assert bound(job).count == 3
    (laid,) = lay_out(job).woods
    assert verdict(laid) == "Three boards; two cannot do it."


def test_thick_blanks_need_thick_boards() -> None:
    """By hand: 450 across of 200 to a board make 2.25, so three boards are proven.

    Thick wood is needed for 300 of the 450, a board and a half at 25 each; 150 of 180 at 10.
    """
    thick = tuple(
        _board(f"thick {i}", 1000, 200, thickness=Fraction(33), paid=Fraction(25)) for i in (1, 2)
    )
    thin = _board("thin", 1000, 180)
    wanted = (*_blanks(2, 900, 150, thick=28), *_blanks(1, 800, 150))
    job = _job((*thick, thin), wanted)
    found = bound(job)
    assert found.count == 3
    exactly = Fraction(75, 2) + Fraction(1500, 180)
    assert exactly - Fraction(1, 1000) < found.cost <= exactly
    (laid,) = lay_out(job).woods
    assert [laid.count, laid.cost] == [3, 60]


def test_a_check_across_a_board_parts_its_length() -> None:
    """By hand: 1000 with 100 spoilt in the middle has no place for 600, and two for 400."""
    check = Defect(
        says="check",
        harm=Harm.SPOILS,
        start=Fraction(450),
        stop=Fraction(550),
        near=Fraction(0),
        far=Fraction(200),
    )
    board = _board("parted", 1000, 200, defects=(check,))
    assert bound(_job((board,), _blanks(1, 600, 100))).lacking
    found = bound(_job((board,), _blanks(4, 400, 100)))
    assert not found.lacking
    assert bound(_job((board,), _blanks(5, 400, 100))).lacking


def test_too_little_wood_is_proven_too_little() -> None:
    job = _job((_board("one", 1000, 200),), _blanks(3, 900, 90))
    assert bound(job).lacking
    (laid,) = lay_out(job).woods
    assert len(laid.plan.short) == 1
    assert verdict(laid) == (
        "One board, and one part without a place: these boards cannot give all of it,"
        " however they are sawn."
    )


def test_a_plan_not_proven_best_says_so() -> None:
    """By hand: one of 130 to a width of 200, so two boards; area and widths would let one do."""
    boards = tuple(_board(f"{i}", 1000, 200) for i in range(3))
    (laid,) = lay_out(_job(boards, _blanks(3, 490, 130))).woods
    assert (laid.count, laid.bound.count) == (2, 1)
    assert verdict(laid) == "Two boards; whether one could do it is not proven."
    (laid,) = lay_out(_job(boards, _blanks(5, 490, 130))).woods
    assert verdict(laid) == "Three boards; one cannot do it, and whether two could is not proven."


@pytest.mark.parametrize("many", [1, 4, 9])
def test_any_weights_prove_no_more_than_the_truth(many: int) -> None:
    """However the wood is bought, a bound never asks for more boards than a plan takes."""
    boards = tuple(_board(f"{i}", 1200 + 37 * i, 180 + 7 * i) for i in range(10))
    job = _job(boards, _blanks(many, 550, 85))
    (laid,) = lay_out(job).woods
    assert not laid.plan.short
    assert bound(job).count <= laid.count
    assert bound(job).cost <= laid.cost


def test_every_sum_says_what_it_is_of() -> None:
    boards = (_board("one", 1000, 200),)
    found = list(sums(_job(boards, (*_blanks(1, 500, 90), *_blanks(2, 300, 60, thick=25)))))
    area = [each for each in found if each.says == "area"]
    assert [each.need for each in area] == [45000 + 36000, 36000]
