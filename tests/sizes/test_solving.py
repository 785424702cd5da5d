"""Cases of the page on sizes: odd widths, unequal sides, tape, tool and what yields first."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.sizes.cupboards import GRID, INCH, Draft, inch, reads, says

from scantling.errors import InternalError, OutOfRangeError, UnknownNameError
from scantling.findings import Weight
from scantling.sizes.linear import Linear, size_of, total
from scantling.sizes.model import Kind, Origin, Relations, Yields
from scantling.sizes.solving import solve

FOUR = ("first.tall", "second.tall", "third.tall", "fourth.tall")


def stack(*, sink: str | None = "fourth.tall") -> Relations:
    """Four drawers over each other that are to be alike, in a case of two sides."""
    d = Draft()
    row = [d.size(name) for name in FOUR]
    d.equal(d.size("stack.tall"), total(row), "the drawers fill the stack")
    d.same(FOUR, "drawers alike", sink)
    d.usual(size_of("stack.tall"), "20")
    return d.relations()


def case() -> Relations:
    d = Draft()
    wide, inside = d.size("case.wide"), d.size("inside.wide", stage=1)
    left, right = d.size("left side.thickness"), d.size("right side.thickness")
    d.equal(wide, left + inside + right, "two sides and the inside make the width")
    d.same(["left side.thickness", "right side.thickness"], "sides alike")
    d.usual(left, "3/4", "stock of this shop")
    d.usual(wide, "24")
    return d.relations()


def shares(stated: str, *, sink: str | None = "fourth.tall") -> list[Fraction]:
    solved = solve(stack(sink=sink), stated=[says("stack.tall", stated)], grid=GRID)
    return [solved.sizes[name] / INCH for name in FOUR]


def test_equal_shares_are_equal_and_not_5_1_2_5_5_5() -> None:
    assert shares("21 1/2") == [Fraction(43, 8)] * 4


def test_the_odd_graduation_goes_to_the_sink() -> None:
    assert shares("21 17/32") == [Fraction(43, 8)] * 3 + [Fraction(173, 32)]
    assert shares("21 17/32", sink="second.tall")[1] == Fraction(173, 32)


def test_one_graduation_too_few_leaves_the_sink_short() -> None:
    assert shares("21 19/32") == [Fraction(173, 32)] * 3 + [Fraction(43, 8)]


def test_two_odd_graduations_spread_no_further_than_one() -> None:
    found = shares("21 9/16")

    assert max(found) - min(found) == Fraction(1, 32)
    assert sum(found) == Fraction(345, 16)


def test_two_drawers_alike_under_42_1_32_differ_by_one_graduation() -> None:
    d = Draft()
    pair = [d.size("left.wide"), d.size("right.wide")]
    d.equal(d.size("opening.wide"), total(pair), "drawers fill the opening")
    d.same(["left.wide", "right.wide"], "a pair", "right.wide")

    solved = solve(d.relations(), stated=[says("opening.wide", "42 1/32")], grid=GRID)

    assert solved.sizes["left.wide"] == inch(21)
    assert solved.sizes["right.wide"] == inch("21 1/32")
    assert solved.findings == ()


def test_two_drawers_equal_by_equation_under_42_1_32_leave_the_tape() -> None:
    d = Draft()
    pair = [d.size("left.wide", stage=1), d.size("right.wide", stage=2)]
    d.equal(d.size("opening.wide"), total(pair), "drawers fill the opening")
    d.equal(pair[0], pair[1], "one drawer is turned round for the other")

    solved = solve(d.relations(), stated=[says("opening.wide", "42 1/32")], grid=GRID)

    assert solved.sizes["left.wide"] == solved.sizes["right.wide"] == inch("21 1/64")
    assert all(solved.sizes.size(n).off_tape for n in ("left.wide", "right.wide"))
    assert {f.code for f in solved.findings} == {"sizes.off-tape"}
    assert all("On 1/64 in all sizes would fall on a mark" in f.says for f in solved.findings)
    assert solved.conflicts == ()


def test_unequal_measured_sides_put_only_the_latest_size_off_the_tape() -> None:
    sides = [reads("left side.thickness", "734/1000"), reads("right side.thickness", "741/1000")]

    solved = solve(case(), measured=sides, grid=GRID)

    assert solved.sizes["case.wide"] == inch(24)
    assert solved.sizes["inside.wide"] == inch(24) - inch("1475/1000")
    assert [n for n in solved.sizes if solved.sizes.size(n).off_tape] == ["inside.wide"]
    assert solved.sizes.size("left side.thickness").origin is Origin.MEASURED
    (finding,) = solved.findings
    assert finding.weight is Weight.NOTE
    assert "about 22.525 in" in finding.says
    assert "On 1/64" not in finding.says


def test_a_stated_inside_makes_the_outside_leave_the_tape() -> None:
    sides = [reads("left side.thickness", "734/1000"), reads("right side.thickness", "741/1000")]

    solved = solve(case(), stated=[says("inside.wide", "22 1/2")], measured=sides, grid=GRID)

    assert solved.sizes["case.wide"] == inch("22 1/2") + inch("1475/1000")
    assert [n for n in solved.sizes if solved.sizes.size(n).off_tape] == ["case.wide"]


def test_a_measured_side_is_no_conflict_with_what_was_stated_of_it() -> None:
    solved = solve(
        case(),
        stated=[says("left side.thickness", "3/4"), says("case.wide", "24")],
        measured=[reads("left side.thickness", "734/1000", "742/1000")],
        grid=GRID,
    )

    assert solved.sizes["left side.thickness"] == inch("738/1000")
    assert solved.conflicts == ()


def test_sizes_on_half_millimetres_stay_on_them() -> None:
    solved = solve(
        stack(), stated=[says("stack.tall", Fraction(1001, 2) / INCH)], grid=Fraction(1, 2)
    )

    assert [solved.sizes[name] for name in FOUR] == [125, 125, 125, Fraction(251, 2)]


def test_a_gap_from_a_tool_need_not_fall_on_the_tape() -> None:
    d = Draft()
    whole, rest, iron = d.size("board.width"), d.size("tongue.width", Kind.FOLLOWS), None
    iron = d.size("groove.width", Kind.TOOL)
    d.equal(whole, rest + iron, "groove and tongue make the board")
    d.usual(iron, Fraction(6) / INCH)  # type: ignore[arg-type]  # a metric iron in an inch shop

    solved = solve(d.relations(), stated=[says("board.width", "3/4")], grid=GRID)

    assert solved.sizes["groove.width"] == 6
    assert solved.findings == ()


def test_a_habit_gives_way_to_a_physical_bound() -> None:
    d = Draft()
    opening = d.size("opening.tall")
    front, gap = d.size("front.width"), d.gap("gap.top")
    d.equal(opening, front + gap, "front and gap fill the opening")
    d.usual(gap, "1/8")
    d.usual(front, "5")

    solved = solve(d.relations(), stated=[says("opening.tall", "4 15/16")], grid=GRID)

    assert solved.sizes["front.width"] == inch("4 13/16")
    assert solved.sizes["gap.top"] == inch("1/8")


def test_a_season_bound_is_broken_as_little_as_may_be_and_said() -> None:
    d = Draft()
    opening = d.size("opening.tall")
    front, gap = d.size("front.width"), d.gap("gap.top")
    d.equal(opening, front + gap, "front and gap fill the opening")
    d.usual(gap, "1/32")
    d.at_least(gap - inch("3/32"), "the front swells in August", Yields.SEASON)
    given = [says("opening.tall", "5"), says("front.width", "4 31/32")]

    free = solve(d.relations(), stated=given[:1], grid=GRID)
    tight = solve(d.relations(), stated=given, grid=GRID)

    assert free.sizes["gap.top"] == inch("3/32")
    assert free.breaches == ()
    (breach,) = tight.breaches
    assert breach.short == inch("1/16")
    assert [f.weight for f in tight.findings] == [Weight.MIND]


@pytest.mark.parametrize(("short", "told"), [("0.1", ["0.004 in"]), ("0.0999", []), ("0.004", [])])
def test_what_is_missing_by_less_than_a_shaving_is_not_told(short: str, told: list[str]) -> None:
    # 0.1 mm, common practice
    d = Draft()
    gap = d.gap("gap.top")
    d.usual(gap, "1/32")
    d.at_least(gap - inch("3/32") - Linear((), Fraction(short)), "it swells", Yields.SEASON)

    solved = solve(d.relations(), stated=[says("gap.top", "3/32")], grid=GRID)

    (breach,) = solved.breaches
    assert breach.short == Fraction(short)
    assert [f.figure for f in solved.findings] == told


def test_a_missing_habit_is_named() -> None:
    d = Draft()
    d.equal(d.size("case.wide"), d.size("inside.wide") + d.size("sides.thickness"), "width")

    with pytest.raises(InternalError, match=r"sides\.thickness|inside\.wide"):
        solve(d.relations(), stated=[says("case.wide", "24")], grid=GRID)


def test_a_relation_may_not_name_what_is_no_dimension() -> None:
    d = Draft()
    d.equal(d.size("case.wide"), size_of("case.widht"), "a slip of the pen")

    with pytest.raises(UnknownNameError, match=r"case\.widht"):
        solve(d.relations(), grid=GRID)


def test_a_name_stands_for_one_dimension() -> None:
    d = Draft()
    d.usual(d.size("case.wide"), "24")
    d.size("case.wide", Kind.TOOL)

    with pytest.raises(InternalError, match=r"case\.wide"):
        solve(d.relations(), grid=GRID)


def test_a_graduation_is_more_than_nothing() -> None:
    with pytest.raises(OutOfRangeError, match="graduation"):
        solve(stack(), grid=Fraction(0))
