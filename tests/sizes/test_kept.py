"""Once parts are cut: fewest other parts changed, then fewest sizes, then the least amount."""

from __future__ import annotations

from fractions import Fraction

from tests.sizes.cupboards import GRID, Draft, inch, reads, says

from scantling.sizes.linear import total
from scantling.sizes.model import Relations
from scantling.sizes.rows import Kept
from scantling.sizes.solving import solve

SHELF_SIZES = ("shelf.length", "shelf.width")


def shelf_case() -> Relations:
    """A side that came out narrow can be met by the shelf alone or by rail and back together."""
    d = Draft()
    side, shelf, back = d.size("side.width"), d.size("shelf.width"), d.size("back.thickness")
    rail, edge = d.size("rail.length"), d.size("rail.width")
    d.equal(side, shelf + back, "shelf and back fill the side")
    d.equal(rail, side * 2 + edge, "the rail goes round")
    d.usual(side, "17 1/4")
    d.usual(back, "9/16")
    d.usual(edge, "3")
    return d.relations()


def plan_and_cut(cut: set[str]) -> tuple[dict[str, Fraction], Kept]:
    plan = dict(solve(shelf_case(), grid=GRID).sizes)
    return plan, Kept(sizes=plan, cut=frozenset(cut))


def test_one_part_changed_twice_is_better_than_two_changed_once() -> None:
    d = Draft()
    post = d.size("post.width")
    long, wide = d.size("shelf.length"), d.size("shelf.width")
    rail, apron = d.size("rail.length"), d.size("apron.length")
    d.equal(post, long + rail, "along")
    d.equal(post, wide + apron, "across")
    for size, usual in ((long, "7"), (wide, "9"), (rail, "5"), (post, "12")):
        d.usual(size, usual)
    plan = dict(solve(d.relations(), grid=GRID).sizes)

    solved = solve(
        d.relations(),
        measured=[reads("post.width", "12 1/16")],
        kept=Kept(sizes=plan, cut=frozenset({"post"})),
        grid=GRID,
    )

    changed = {name for name in plan if solved.sizes[name] != plan[name]}
    assert changed == {"post.width", "shelf.length", "shelf.width"}


def test_an_uncut_part_keeps_its_plan_against_a_habit() -> None:
    relations = shelf_case()
    plan = dict(solve(relations, stated=[says("back.thickness", "1/2")], grid=GRID).sizes)

    # The line is gone from the file, yet the plan it made is being cut.
    kept = solve(relations, kept=Kept(sizes=plan, cut=frozenset({"side"})), grid=GRID)

    assert kept.sizes["back.thickness"] == inch("1/2")
    assert solve(relations, grid=GRID).sizes["back.thickness"] == inch("9/16")


def test_a_stated_size_wins_over_the_plan_of_an_uncut_part() -> None:
    _, kept = plan_and_cut({"side"})

    solved = solve(shelf_case(), stated=[says("back.thickness", "3/8")], kept=kept, grid=GRID)

    assert solved.sizes["back.thickness"] == inch("3/8")
    assert solved.sizes["shelf.width"] == inch("16 7/8")


def test_a_measured_cut_part_moves_what_is_not_cut() -> None:
    plan, kept = plan_and_cut({"side", "back"})

    solved = solve(shelf_case(), measured=[reads("side.width", "17 3/16")], kept=kept, grid=GRID)

    assert solved.sizes["back.thickness"] == plan["back.thickness"]
    assert solved.sizes["shelf.width"] == inch("16 5/8")
    # One size of the rail is enough; its length stays as planned.
    assert solved.sizes["rail.length"] == plan["rail.length"]
    assert solved.sizes["rail.width"] == inch("3 1/8")


def test_sizes_not_in_the_plan_are_solved_as_ever() -> None:
    d = Draft()
    parts = [d.size("left.width"), d.size("right.width")]
    d.equal(d.size("whole.wide"), total(parts), "two")
    d.usual(parts[0], "2")
    d.usual(parts[1], "3")
    kept = Kept(sizes={"left.width": inch(4)}, cut=frozenset())

    solved = solve(d.relations(), kept=kept, grid=GRID)

    assert solved.sizes["whole.wide"] == inch(7)
