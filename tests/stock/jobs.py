"""Jobs drawn by chance from a number, for tests: boards with faults, blanks and panels."""

from __future__ import annotations

from random import Random

from scantling.exact import Fraction
from scantling.stock.boards import Board, Defect, Harm
from scantling.stock.job import Cutting, Job, Wanted
from scantling.timber.movement import Cut

WOODS = ("white ash", "yellow-poplar")
CUTTING = Cutting(
    kerf_across=Fraction(13, 10),
    kerf_along=Fraction(8, 5),
    end_trim=Fraction(12),
    strip_joint=Fraction(3),
    narrowest_strip=Fraction(60),
    widest_strip=Fraction(250),
    knot_from_end=Fraction(75),
    knot_from_edge=Fraction(13),
    planing=Fraction(19, 4),
)


def job(seed: int) -> Job:
    """The job of that number; the same one every time."""
    dice = Random(seed)  # noqa: S311 - chance for tests, no secret
    boards = tuple(_board(dice, i) for i in range(dice.randint(1, 6)))
    wanted = tuple(_wanted(dice, i) for i in range(dice.randint(1, 14)))
    return Job(boards=boards, wanted=wanted, cutting=CUTTING)


def _tenth(dice: Random, low: int, high: int) -> Fraction:
    return Fraction(dice.randint(10 * low, 10 * high), 10)


def _board(dice: Random, number: int) -> Board:
    long, wide = _tenth(dice, 700, 3100), _tenth(dice, 90, 300)
    return Board(
        name=f"B{number}",
        wood=dice.choice(WOODS),
        cut=dice.choice(tuple(Cut)),
        grade="",
        thickness=dice.choice((Fraction(26), Fraction(131, 5), Fraction(33))),
        width_a=wide,
        width_b=wide + _tenth(dice, -10, 10),
        length=long,
        cup=_tenth(dice, 0, 4),
        bow=_tenth(dice, 0, 12),
        crook=_tenth(dice, 0, 10),
        twist=_tenth(dice, 0, 8),
        defects=tuple(_defect(dice, long, wide) for _ in range(dice.randint(0, 3))),
        paid=_tenth(dice, 20, 90),
    )


def _defect(dice: Random, long: Fraction, wide: Fraction) -> Defect:
    at = _tenth(dice, 5, int(long) - 5)
    if dice.random() < 0.3:
        return Defect(
            says="check",
            harm=Harm.SPOILS,
            start=at,
            stop=min(at + _tenth(dice, 10, 80), long),
            near=Fraction(0),
            far=wide + 11,
        )
    across, half = _tenth(dice, 0, int(wide)), _tenth(dice, 3, 15)
    return Defect(
        says="knot",
        harm=dice.choice((Harm.KNOT, Harm.KNOT, Harm.SPOILS, Harm.LOOK)),
        start=max(at - half, Fraction(0)),
        stop=min(at + half, long),
        near=across - half,
        far=across + half,
    )


def _wanted(dice: Random, number: int) -> Wanted:
    panel = dice.random() < 0.3
    return Wanted(
        part=f"part {number}",
        family="part",
        wood=dice.choice(WOODS),
        cut=dice.choice(("flat", "flat", "rift")),
        length=_tenth(dice, 120, 1300),
        width=_tenth(dice, 260, 480) if panel else _tenth(dice, 25, 240),
        thickness=dice.choice((Fraction(12), Fraction(19), Fraction(25))),
        clear=dice.random() < 0.5,
        glued_up=panel,
    )
