"""Lines that do not go together: who is against whom, and what each would have to be."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sizes.cupboards import GRID, Draft, front, inch, reads, says

from scantling.findings import Place, Weight
from scantling.sizes.linear import Linear, total
from scantling.sizes.model import Relations, Stated, Yields
from scantling.sizes.rows import Kept
from scantling.sizes.solving import solve


def box() -> Relations:
    d = Draft()
    for way, across in (("wide", "end"), ("deep", "board")):
        outside, inside = d.size(f"case.{way}"), d.size(f"case.inside {way}")
        thick = [d.size(f"{s} {across}.thickness") for s in ("first", "second")]
        d.equal(outside, inside + total(thick), f"two {across}s and the inside make it {way}")
        d.usual(outside, "30")
        for size in thick:
            d.usual(size, "3/4")
    return d.relations()


WIDE = {"case.wide": "48", "first end.thickness": "3/4", "second end.thickness": "7/8"}
DEEP = {"case.deep": "20", "first board.thickness": "1/2", "second board.thickness": "5/8"}


def test_a_conflict_names_its_lines_and_what_each_would_have_to_be() -> None:
    given = {**WIDE, "case.inside wide": "46"}

    solved = solve(box(), stated=[says(n, v) for n, v in given.items()], grid=GRID)

    (conflict,) = solved.conflicts
    assert {line.name: line.would_be for line in conflict.lines} == {
        "case.wide": inch("47 5/8"),
        "first end.thickness": inch("1 1/8"),
        "second end.thickness": inch("1 1/4"),
        "case.inside wide": inch("46 3/8"),
    }
    assert conflict.because == ("two ends and the inside make it wide",)
    assert conflict.given_up == "case.inside wide"
    assert solved.sizes["case.inside wide"] == inch("46 3/8")


def test_the_finding_says_what_the_others_leave() -> None:
    place = Place(file="piece.toml", line=12, column=9)
    lines = [says(n, v) for n, v in WIDE.items()]
    lines.append(replace(says("case.inside wide", "46"), place=place))

    (finding,) = solve(box(), stated=lines, grid=GRID).findings

    assert finding.weight is Weight.HALT
    assert finding.code == "sizes.conflict"
    assert finding.place == place
    assert finding.says.startswith(
        "case.inside wide cannot be 46 in: case.wide 48 in, first end.thickness 3/4 in and"
        " second end.thickness 7/8 in leave it 46 3/8 in"
    )
    assert "case.inside wide 46 3/8 in (piece.toml 12:9)" in finding.cure


def test_two_conflicts_at_once_are_found_as_two() -> None:
    given = {**WIDE, "case.inside wide": "46", **DEEP, "case.inside deep": "19 1/16"}

    solved = solve(box(), stated=[says(n, v) for n, v in given.items()], grid=GRID)

    wide, deep = solved.conflicts
    assert {line.name for line in wide.lines} == {*WIDE, "case.inside wide"}
    assert {line.name for line in deep.lines} == {*DEEP, "case.inside deep"}
    assert [f.code for f in solved.findings] == ["sizes.conflict"] * 2


def test_no_line_of_a_conflict_is_idle() -> None:
    given = {**WIDE, "case.inside wide": "46", **DEEP}
    lines = [says(n, v) for n, v in given.items()]
    (conflict,) = solve(box(), stated=lines, grid=GRID).conflicts

    for idle in conflict.lines:
        rest = [line for line in lines if line.name != idle.name]
        assert solve(box(), stated=rest, grid=GRID).conflicts == ()


def test_one_wrong_line_against_two_chains_is_given_up_alone() -> None:
    # Giving up 46 alone cures both; each chain would else lose a line.
    d = Draft()
    middle = d.size("middle.wide")
    for side in ("left", "right"):
        part, whole = d.size(f"{side}.wide"), d.size(f"{side} sum.wide")
        d.equal(whole, part + middle, f"{side} and middle")
        d.usual(part, "3")
    d.usual(middle, "4")
    lines = [says("middle.wide", "5")]
    lines += [says(f"{s}.wide", v) for s, v in (("left", "2"), ("right", "3"))]
    lines += [says(f"{s} sum.wide", v) for s, v in (("left", "6"), ("right", "7"))]

    solved = solve(d.relations(), stated=lines, grid=GRID)

    (conflict,) = solved.conflicts
    assert conflict.given_up == "middle.wide"
    assert solved.sizes["middle.wide"] == inch(4)


PEGS = Place(file="piece.toml", line=3, column=9)


def in_holes(d: Draft, holes: Sequence[Linear]) -> list[Stated]:
    """A peg in each hole, by one line of the file 10 in long."""
    for i, hole in enumerate(holes):
        peg = d.size(f"peg {i}.length")
        d.at_least(hole - peg, "a peg is no longer than its hole", Yields.NEVER)
        d.usual(peg, "1")
    return [replace(says(f"peg {i}.length", "10"), place=PEGS) for i in range(len(holes))]


def test_what_one_line_of_the_file_says_of_many_sizes_is_one_line_to_give_up() -> None:
    # The pegs are three sizes and one line, the hole and its block two sizes and two lines.
    d = Draft()
    hole, block = d.size("hole.length"), d.size("block.length")
    d.equal(block, hole + Linear((), inch(1)), "an inch is left below a hole")
    d.usual(hole, "2")
    lines = [*in_holes(d, [hole] * 3), says("hole.length", "4"), says("block.length", "5")]

    solved = solve(d.relations(), stated=lines, grid=GRID)

    assert {c.given_up for c in solved.conflicts} == {f"peg {i}.length" for i in range(3)}
    assert solved.sizes["hole.length"] == inch(4)
    assert solved.sizes["peg 2.length"] == inch(4)


def test_of_two_lines_the_one_named_last_is_given_up_however_many_sizes_it_says() -> None:
    d = Draft()
    hole = d.size("hole.length")
    d.usual(hole, "2")
    lines = [says("hole.length", "4"), *in_holes(d, [hole] * 3)]

    solved = solve(d.relations(), stated=lines, grid=GRID)

    assert {c.given_up for c in solved.conflicts} == {f"peg {i}.length" for i in range(3)}


def test_a_line_is_told_once_by_the_size_it_is_furthest_off_at() -> None:
    d = Draft()
    deep = {"first hole.length": "8", "second hole.length": "5", "third hole.length": "7"}
    holes = [d.size(name) for name in deep]
    for hole in holes:
        d.usual(hole, "2")
    lines = [*in_holes(d, holes), *(says(name, value) for name, value in deep.items())]

    (finding,) = solve(d.relations(), stated=lines, grid=GRID).findings

    assert finding.place == PEGS
    assert finding.says.startswith(
        "peg 1.length cannot be 10 in: second hole.length 5 in leaves it at most 5 in"
    )
    assert (finding.figure, finding.limit) == ("10 in", "5 in")
    assert {"peg 0", "peg 1", "peg 2"} <= set(finding.parts)
    # what the line itself may be is named before what another would have to be
    assert "make it peg 1.length 5 in (piece.toml 3:9) or second hole.length 10 in" in finding.cure


def test_a_bound_may_stand_against_two_lines() -> None:
    d = Draft()
    opening, gap = d.size("opening.wide"), d.gap("gap.wide")
    leaves = [d.size("left.wide"), d.size("right.wide")]
    d.equal(opening, total([*leaves, gap]), "leaves and gap fill the opening")
    d.usual(gap, "1/8")
    for leaf in leaves:
        d.usual(leaf, "9")
    lines = [says("opening.wide", "18"), says("left.wide", "9 1/4"), says("right.wide", "9")]

    solved = solve(d.relations(), stated=lines, grid=GRID)

    (conflict,) = solved.conflicts
    assert {line.name: line.would_be for line in conflict.lines} == {
        "opening.wide": inch("18 1/4"),
        "left.wide": inch("9"),
        "right.wide": inch("8 3/4"),
    }
    assert any("gap.wide" in because for because in conflict.because)
    assert solved.sizes["right.wide"] == inch("8 3/4")


def test_a_line_that_clashes_all_alone_is_told_alone() -> None:
    d = Draft()
    d.equal(d.size("peg.width"), Linear((), inch("3/8")), "pegs are of one bit")

    solved = solve(d.relations(), stated=[says("peg.width", "1/2")], grid=GRID)

    (conflict,) = solved.conflicts
    assert conflict.smallest
    assert [line.would_be for line in conflict.lines] == [inch("3/8")]


def test_one_name_stated_twice_is_a_conflict_of_two_lines() -> None:
    lines = [says("case.wide", "48"), says("case.wide", "1200")]

    (conflict,) = solve(box(), stated=lines, grid=GRID).conflicts

    assert [line.value for line in conflict.lines] == [inch("48"), inch("1200")]
    assert conflict.smallest


def test_measured_parts_that_come_to_another_sum_halt_nobody() -> None:
    facts = [
        reads("first end.thickness", "3/4"),
        reads("second end.thickness", "7/8"),
        reads("case.inside wide", "4641/100"),
    ]

    solved = solve(box(), stated=[says("case.wide", "48")], measured=facts, grid=GRID)

    finding, _off_tape = solved.findings
    assert finding.code == "sizes.came-out"
    assert finding.weight is Weight.MIND
    assert solved.sizes["case.wide"] == inch("4641/100") + inch("1 5/8")


def test_facts_win_over_any_number_of_stated_lines() -> None:
    facts = [reads("case.inside wide", "45")]

    solved = solve(box(), stated=[says(n, v) for n, v in WIDE.items()], measured=facts, grid=GRID)

    assert solved.sizes["case.inside wide"] == inch(45)
    assert len(solved.conflicts) == 1


def test_clashing_options_are_a_finding_and_no_error() -> None:
    d = Draft()
    stile, mortise, left = d.size("stile.width"), d.size("mortise.depth"), d.gap("stile.left")
    d.equal(stile, mortise + left, "what the mortise leaves")
    d.equal(mortise, Linear((), inch(3)), "mortise 3 in deep")
    d.equal(stile, Linear((), inch(2)), "stile of a 2 in batten")

    (finding,) = solve(d.relations(), grid=GRID).findings

    assert finding.weight is Weight.HALT
    assert finding.code == "sizes.impossible"
    assert finding.figure == "-1 in"


def test_equations_that_contradict_each_other_are_told_together() -> None:
    d = Draft()
    stile = d.size("stile.width")
    d.equal(stile, Linear((), inch(2)), "a 2 in batten")
    d.equal(stile, Linear((), inch(3)), "a 3 in batten")

    (finding,) = solve(d.relations(), grid=GRID).findings

    assert finding.code == "sizes.never-closes"
    assert "a 2 in batten; a 3 in batten" in finding.says


def test_a_cut_part_keeps_its_size_against_a_new_wish() -> None:
    plan = solve(box(), stated=[says("case.wide", "48")], grid=GRID)
    kept = Kept(sizes=dict(plan.sizes), cut=frozenset({"first end"}))

    solved = solve(box(), stated=[says("first end.thickness", "1")], kept=kept, grid=GRID)

    assert solved.sizes["first end.thickness"] == inch("3/4")
    assert [f.code for f in solved.findings] == ["sizes.came-out"]


@settings(max_examples=4)
@given(st.data())
def test_whatever_is_stated_wrongly_the_rest_still_closes(data: st.DataObject) -> None:
    _the_rest_still_closes(data)


@pytest.mark.slow
@pytest.mark.timeout(1200)
@settings(max_examples=60)
@given(st.data())
def test_whatever_else_is_stated_wrongly_the_rest_still_closes(data: st.DataObject) -> None:
    _the_rest_still_closes(data)


def _the_rest_still_closes(data: st.DataObject) -> None:
    relations = front()
    names = st.sampled_from([d.name for d in relations.dimensions if d.positive])
    chosen = data.draw(st.lists(names, min_size=3, max_size=7, unique=True))
    lines = [says(n, f"{data.draw(st.integers(1, 60))}/2") for n in chosen]

    solved = solve(relations, stated=lines, grid=GRID)

    assert all(equation.sum.at(solved.sizes) == 0 for equation in relations.equations)
    assert all(
        bound.sum.at(solved.sizes) >= 0
        for bound in relations.bounds
        if bound.yields is Yields.NEVER
    )
    given_up = {conflict.given_up for conflict in solved.conflicts}
    assert all(solved.sizes[s.name] == s.value for s in lines if s.name not in given_up)
    assert bool(given_up) == any(f.weight is Weight.HALT for f in solved.findings)


pytestmark = pytest.mark.timeout(120)
