"""One nail at mid width: where it stands, what it presses, what it holds, and limits."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import pi

import pytest
from tests.joints.on_the_bench import SHOP, Built, built, woods

from scantling.joints._joint import Bench, Said, State
from scantling.joints.one_nail_at_mid_width import OneNailAtMidWidth
from scantling.parts import Way
from scantling.shop.habits import Habits
from scantling.sizes.linear import exactly
from scantling.solids.contact import patch_area
from scantling.units import INCH

NAME = "boards on rail"


def said(value: int | str | Fraction) -> Said:
    return Said(value=Fraction(value), text=str(value))


def case(
    *, nail: int | str | None = None, off: int | str = 0, up: int | str | None = None
) -> Bench:
    """The bench case, its first nail `off` the middle, both `up` from the boards' feet."""
    bench = OneNailAtMidWidth.bench()
    first, second = bench.joined.row("enters")
    first = replace(first, across=first.across + Fraction(off))
    if up is not None:
        first, second = (replace(s, along=exactly(Fraction(up))) for s in (first, second))
    joint = OneNailAtMidWidth(nail=said(nail) if nail is not None else None, shank=said(2))
    seats = {**bench.joined.seats, "enters": (first, second)}
    return replace(bench, joined=replace(bench.joined, joint=joint, seats=seats))


def told(found: Built) -> set[str]:
    return {
        finding.code
        for finding in found.joint.faults(
            found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
        )
    }


def test_each_board_has_one_nail_in_the_middle_of_its_width() -> None:
    found = built(case())
    places = [
        (f.between, tuple(map(float, f.at)), f.by)
        for f in found.joint.fixings(
            found.bench.joined, sizes=found.sizes, choice=found.choice, parts=found.parts
        )
    ]
    # rail 19 thick from 150 up; boards 100 and 120 wide, the second from 102 on
    assert places == [
        (("board 1", "rail"), (50, 60, 159.5), "nail"),
        (("board 2", "rail"), (162, 60, 159.5), "nail"),
    ]


def test_nails_lie_flush_behind_and_reach_into_the_bearer() -> None:
    found = built(case(nail=32))
    first, second = found.loose
    assert first.placement.at[1] == 60 + 12
    assert second.placement.at[1] == 60 + 13
    assert {nail.placement.along for nail in found.loose} == {Way.FRONT}


def test_pressed_wood_is_the_nail_less_its_pilot() -> None:
    found = built(case(nail=32))
    pilot = float(found.sizes[f"{NAME}.pilot"])
    volumes = {press.between[1]: float(press.volume) for press in found.presses[:2]}
    ring, whole = pi / 4 * (4 - pilot**2) * 12, pi * 20
    # drawn with 24 sides, 1.2 % inside the nail and 0.6 % outside the pilot
    assert volumes["board 1"] == pytest.approx(ring, abs=0.02 * pi * 12)
    assert volumes["rail"] == pytest.approx(whole, rel=0.012)


@pytest.mark.parametrize(("thick", "inches"), [("12.7", "5/4"), ("13", "3/2"), ("10.1", "1")])
def test_a_nail_is_two_and_a_half_times_the_board_as_sold(thick: str, inches: str) -> None:
    stated = {f"board {i}.thickness": Fraction(thick) for i in (1, 2)}
    found = built(case(), stated=stated)
    assert found.sizes[f"{NAME}.nail"] == INCH * Fraction(inches)


def test_pilot_is_the_largest_drill_that_leaves_the_nail_a_hold() -> None:
    # drills of the shop go by 1/64 or 1/32 in: 1/16 in (1.59) is under nine tenths of 2
    assert built(case()).sizes[f"{NAME}.pilot"] == INCH / 16


def test_boards_touch_the_bearer_where_no_lap_reaches() -> None:
    found = built(case())
    half = float(found.sizes[f"{NAME}.pilot"]) * 0.51
    areas = [patch_area(c.patch) for c in found.contacts]
    assert areas == pytest.approx([19 * (25 - half)] * 2 + [19 * (30 - half)] * 2)


def test_withdrawal_follows_the_handbook() -> None:
    found = built(case(nail=32))
    j = found.bench.joined
    (estimate,) = j.joint.holds(j, sizes=found.sizes, choice=found.choice, woods=woods(found.bench))
    # 54.12 x 0.60^2.5 x 2 x (32 - 13); gravity of white ash 0.60, Wood Handbook table 5-3b
    assert estimate.value == pytest.approx(54.12 * 0.60**2.5 * 2 * 19, rel=0.01)


def test_nailed_it_comes_off_after_the_nails() -> None:
    found = built(case())
    j = found.bench.joined
    moves = {s: j.joint.moves(j, state=s, sizes=found.sizes, parts=found.parts) for s in State}
    assert [m.unlocked_by for s in State for m in moves[s]] == ["", "nails", "nails"]
    assert tuple(map(int, moves[State.OPEN][0].way)) == (0, 1, 0)


def test_boards_are_nailed_one_after_the_other() -> None:
    found = built(case())
    j = found.bench.joined
    done = j.joint.work(j, choice=found.choice, shop=SHOP, habits=Habits())
    assert [each.parts for each in done] == [
        ("board 1", "board 2"),
        ("board 1", "rail"),
        ("board 2", "rail"),
    ]


@pytest.mark.parametrize(
    ("code", "guilty", "twin"),
    [
        ("off-middle", {"off": "12.6"}, {"off": "12.5"}),  # an eighth of 100
        ("near-end", {"up": "12.9"}, {"up": 13}),  # the second board is 13 thick
        ("near-end", {"up": "237.1"}, {"up": 237}),
        ("short", {"nail": "32.4"}, {"nail": "32.5"}),
        ("through", {"nail": 72}, {"nail": "71.9"}),  # 12 and 60
    ],
)
def test_limits(code: str, guilty: dict[str, int | str], twin: dict[str, int | str]) -> None:
    found = [f"one-nail-at-mid-width.{code}" in told(built(case(**o))) for o in (guilty, twin)]
    assert found == [True, False]
