"""Every plan can be sawn, and a plan that cannot is caught, whatever is wrong with it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.stock.jobs import CUTTING, job

from scantling.exact import Fraction
from scantling.sizes.stopping import CountedWork
from scantling.stock.boards import Board, Defect, Harm
from scantling.stock.job import Job, Wanted
from scantling.stock.lay_out import lay_out
from scantling.stock.plan import Plan, Sawn, Section
from scantling.stock.replay import faults
from scantling.timber.movement import Cut

QUICK, ALL = 40, 300


def _held(seed: int) -> None:
    asked = job(seed)
    laid = lay_out(asked, stop=CountedWork(most=6))
    assert faults(laid.plan, job=asked) == ()
    for wood in laid.woods:
        if wood.bound.lacking:
            assert wood.plan.short
        elif not wood.plan.short:
            assert wood.bound.count <= wood.count
            assert wood.bound.cost <= wood.cost


@pytest.mark.parametrize("seed", range(QUICK))
def test_a_plan_can_be_sawn_and_is_no_better_than_its_bound(seed: int) -> None:
    _held(seed)


@pytest.mark.slow
def test_three_hundred_plans_can_be_sawn_and_are_no_better_than_their_bounds() -> None:
    for seed in range(QUICK, ALL):
        _held(seed)


def test_the_jobs_by_chance_are_not_idle() -> None:
    """Enough of them place parts, glue panels up, and run short, or the test above says little."""
    laid = [lay_out(job(seed), stop=CountedWork(most=1)) for seed in range(QUICK)]
    sawn = [sawn for each in laid for s in each.plan.sections for sawn in s.sawn]
    panels = {w.part for each in laid for w in each.job.wanted if w.glued_up}
    assert len(sawn) > 2 * QUICK
    assert sum(each.part in panels for each in sawn) > QUICK
    assert QUICK // 4 < sum(bool(each.plan.short) for each in laid) < QUICK
    assert any(each.bound.lacking for found in laid for each in found.woods)


KNOT = Defect(
    says="knot",
    harm=Harm.KNOT,
    start=Fraction(500),
    stop=Fraction(520),
    near=Fraction(60),
    far=Fraction(80),
)
CHECK = Defect(
    says="check",
    harm=Harm.SPOILS,
    start=Fraction(1450),
    stop=Fraction(1600),
    near=Fraction(0),
    far=Fraction(220),
)
BOARD = Board(
    name="one",
    wood="white ash",
    cut=Cut.FLAT,
    grade="FAS",
    thickness=Fraction(26),
    width_a=Fraction(220),
    width_b=Fraction(200),
    length=Fraction(1600),
    cup=Fraction(2),
    crook=Fraction(4),
    defects=(KNOT, CHECK),
)
POPLAR = replace(BOARD, name="two", wood="yellow-poplar", defects=())


def _blank(part: str, long: int, wide: int, **more: object) -> Wanted:
    plain = Wanted(
        part=part,
        family=part,
        wood="white ash",
        cut="flat",
        length=Fraction(long),
        width=Fraction(wide),
        thickness=Fraction(19),
    )
    return replace(plain, **more)  # type: ignore[arg-type]  # of the fields named


RAIL = _blank("rail", 700, 90)
STILE = _blank("stile", 650, 100)
PANEL = _blank("panel", 600, 170, glued_up=True)
JOB = Job(boards=(BOARD, POPLAR), wanted=(RAIL, STILE, PANEL), cutting=CUTTING)


def _sawn(part: str, start: int, length: int, near: int, width: int) -> Sawn:
    return Sawn(
        part=part,
        start=Fraction(start),
        length=Fraction(length),
        near=Fraction(near),
        width=Fraction(width),
    )


# By hand: the knot lies in the middle of the rail, 60 to 80 across, within its 13 of either edge.
FIRST = Section(
    board="one",
    start=Fraction(100),
    stop=Fraction(800),
    sawn=(_sawn("rail", 100, 700, 2, 98), _sawn("stile", 100, 650, 102, 100)),
)
SECOND = Section(
    board="one",
    start=Fraction(802),
    stop=Fraction(1402),
    sawn=(_sawn("panel", 802, 600, 0, 100), _sawn("panel", 802, 600, 102, 76)),
)
PLAN = Plan(sections=(FIRST, SECOND))


def _changed(section: Section, part: str, /, **more: object) -> Section:
    sawn = [
        replace(each, **more) if each.part == part else each  # type: ignore[arg-type]  # ditto
        for each in section.sawn
    ]
    return replace(section, sawn=tuple(sawn))


def _first(**more: object) -> Plan:
    return Plan(sections=(replace(FIRST, **more), SECOND))  # type: ignore[arg-type]  # ditto


def _rail(**more: object) -> Plan:
    return Plan(sections=(_changed(FIRST, "rail", **more), SECOND))


def _second(*sawn: Sawn) -> Plan:
    return Plan(sections=(FIRST, replace(SECOND, sawn=sawn)))


def _over_the_check() -> Plan:
    late = replace(
        SECOND,
        start=Fraction(900),
        stop=Fraction(1500),
        sawn=tuple(replace(each, start=Fraction(900)) for each in SECOND.sawn),
    )
    return Plan(sections=(FIRST, late))


def test_a_plan_made_by_hand_has_no_fault() -> None:
    assert faults(PLAN, job=JOB) == ()


PLANTED: dict[str, tuple[Callable[[], Plan], str]] = {
    "no such board": (lambda: _first(board="three"), "there is no board three"),
    "wood": (lambda: _first(board="two"), "rail is of white ash, and two is not"),
    "trimmed end": (
        lambda: _first(start=Fraction(5)),
        "a section of one reaches into its trimmed ends",
    ),
    "no kerf across": (
        lambda: _first(stop=Fraction(801)),
        "no kerf between two sections of one",
    ),
    "no kerf along": (
        lambda: _rail(width=Fraction(99)),
        "no kerf between rail and stile in one",
    ),
    "over the edge": (
        lambda: Plan(sections=(_changed(FIRST, "stile", near=Fraction(111)), SECOND)),
        "a strip of one reaches over its edge",
    ),
    "out of its section": (
        lambda: _rail(start=Fraction(101)),
        "rail does not lie in its section of one",
    ),
    "too short": (lambda: _rail(length=Fraction(699)), "rail is too short in one"),
    "too narrow": (lambda: _rail(width=Fraction(89)), "rail is too narrow in one"),
    "knot at an edge": (
        lambda: _rail(near=Fraction(0), width=Fraction(92)),
        "the knot of one comes where rail wants none",
    ),
    "over the check": (_over_the_check, "panel lies over the check of one"),
    "missing": (
        lambda: Plan(sections=(replace(FIRST, sawn=FIRST.sawn[:1]), SECOND)),
        "stile is missing",
    ),
    "twice": (
        lambda: Plan(
            sections=(_changed(FIRST, "stile", part="rail", length=Fraction(700)), SECOND)
        ),
        "rail is sawn 2 times",
    ),
    "unwanted": (lambda: _rail(part="batten"), "nobody wants batten"),
    "short and sawn": (
        lambda: replace(PLAN, short=("rail",)),
        "rail is called short and sawn all the same",
    ),
    "short of nothing": (
        lambda: replace(PLAN, short=("batten",)),
        "batten is short, and nobody wants it",
    ),
    "one strip": (
        lambda: _second(SECOND.sawn[0]),
        "the strips of panel do not make up its width",
    ),
    "sliver": (
        lambda: _second(*SECOND.sawn, _sawn("panel", 802, 600, 180, 12)),
        "a strip of panel is too narrow",
    ),
    "nothing in it": (_second, "a section of one holds nothing"),
    "no length": (lambda: _first(stop=Fraction(100)), "a section of one has no length"),
}


@pytest.mark.parametrize("planted", PLANTED)
def test_a_planted_fault_is_caught(planted: str) -> None:
    wrong, says = PLANTED[planted]
    assert says in faults(wrong(), job=JOB)


def _asked(**more: object) -> Job:
    rail = replace(RAIL, **more)  # type: ignore[arg-type]  # of the fields named
    return replace(JOB, wanted=(rail, STILE, PANEL))


def test_what_a_part_asks_is_asked_of_the_plan() -> None:
    assert faults(PLAN, job=_asked(clear=True)) == ("the knot of one comes where rail wants none",)
    assert faults(PLAN, job=_asked(cut="rift")) == ("rail asks for rift, and one is flat",)
    thick = faults(PLAN, job=_asked(thickness=Fraction(22)))
    assert thick == ("rail is not thick enough in one",)


def test_a_wide_strip_of_a_cupped_board_is_thinner_than_a_narrow_one() -> None:
    """By hand: 8 over 220; a strip of 98 rises 8 x (98/220)^2 = 1.59, one of 100 rises 1.65."""
    planing = replace(CUTTING, planing=Fraction(0))
    cupped = replace(JOB, boards=(replace(BOARD, cup=Fraction(8)), POPLAR), cutting=planing)
    held = replace(cupped, wanted=(replace(RAIL, thickness=Fraction(244, 10)), STILE, PANEL))
    over = replace(cupped, wanted=(replace(RAIL, thickness=Fraction(245, 10)), STILE, PANEL))
    assert faults(PLAN, job=held) == ()
    assert faults(PLAN, job=over) == ("rail is not thick enough in one",)


def test_a_strip_too_wide_for_a_panel_is_caught() -> None:
    narrow = replace(JOB, cutting=replace(CUTTING, widest_strip=Fraction(96)))
    assert faults(PLAN, job=narrow) == ("a strip of panel is too wide",)
