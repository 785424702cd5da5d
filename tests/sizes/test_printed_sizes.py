"""Printed sizes close: what a maker reads adds up to what he reads elsewhere."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sizes.cupboards import GRID, Draft, says

from scantling.sizes.linear import total
from scantling.sizes.model import Kind, Relations
from scantling.sizes.solving import solve
from scantling.units import Unit, length, on_grid, written

SLATS = 3


def fence() -> Relations:
    """Slats between two posts, gaps in between; a rail let into both posts."""
    d = Draft()
    posts = [d.size(f"{s} post.width") for s in ("left", "right")]
    slats = [d.size(f"slat {n}.width") for n in range(SLATS)]
    gaps = [d.gap(f"gap {n}.wide") for n in range(SLATS + 1)]
    whole, between = d.size("whole.wide"), d.size("between.wide")
    rail, depth = d.size("rail.length"), d.size("mortise.depth")
    d.equal(whole, total([*posts, between]), "posts and what is between")
    d.equal(between, total([*slats, *gaps]), "slats and gaps")
    d.equal(rail, between + depth * 2, "the rail enters both posts")
    d.same([f"slat {n}.width" for n in range(SLATS)], "slats alike", "slat 1.width")
    d.same([f"gap {n}.wide" for n in range(SLATS + 1)], "gaps alike", "gap 3.wide")
    d.usual(slats[0], "2")
    d.usual(depth, "3/4")
    for post, usual in zip(posts, ("1 3/4", "2 1/4"), strict=True):
        d.usual(post, usual)
    d.usual(whole, "30")
    return d.relations()


@settings(max_examples=30, deadline=None)
@given(st.integers(20 * 32, 40 * 32), st.integers(40, 90))
def test_sizes_read_back_from_paper_meet_every_equation(whole: int, post: int) -> None:
    relations = fence()
    given = [says("whole.wide", f"{whole}/32"), says("left post.width", f"{post}/32")]

    solved = solve(relations, stated=given, grid=GRID)

    assert not any(solved.sizes.size(name).off_tape for name in solved.sizes)
    paper = {
        name: length(written(value, unit=Unit.INCH, finest=GRID), unit=Unit.INCH)
        for name, value in solved.sizes.items()
    }
    assert all(equation.sum.at(paper) == 0 for equation in relations.equations)


@settings(max_examples=30, deadline=None)
@given(st.integers(20 * 32, 40 * 32), st.integers(4000, 9000))
def test_beside_a_measured_post_only_what_is_marked_misses_the_tape(whole: int, post: int) -> None:
    relations = fence()
    wide = says("whole.wide", f"{whole}/32")
    thick = says("left post.width", Fraction(post, 4000))

    solved = solve(relations, stated=[wide, thick], grid=GRID)

    assert all(equation.sum.at(solved.sizes) == 0 for equation in relations.equations)
    for name in solved.sizes:
        size = solved.sizes.size(name)
        if size.kind is Kind.TAPE:
            assert size.off_tape is not on_grid(size.value, to=GRID)
