"""What carries a drawer, guides it and keeps it from tipping, each just inside and just outside.

The limits are common practice: wood within 1/8 in, along half of a side.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.proofs.work import part

from scantling.parts import Part, Placement, Way
from scantling.parts.pulled import Pulled, Remedy, Slide
from scantling.proofs._proof import Case
from scantling.proofs.drawer_runs import DrawerRuns
from scantling.solids.store import Store

F = Fraction
Span = tuple[F | int, F | int]
REMEDY = Remedy(cure="do something", place=None)


def block(name: str, wide: Span, deep: Span, tall: Span) -> Part:
    """A block from and to, counted from the left, the front and the floor."""
    sizes = [F(b) - F(a) for a, b in (wide, deep, tall)]
    placement = Placement(
        along=Way.RIGHT, across=Way.BACK, into=Way.UP, at=(F(wide[0]), F(deep[0]), F(tall[0]))
    )
    return replace(part(name, (sizes[0], sizes[1], sizes[2])), placement=placement)


# a drawer 120 to 420 wide, its sides 6 to 406 deep and 700 to 797 tall
SIDES = (
    replace(block("left", (120, 132), (6, 406), (700, 797)), moves_with="drawer"),
    replace(block("right", (409, 420), (6, 406), (700, 797)), moves_with="drawer"),
)
RAIL = block("top rail", (40, 500), (0, 19), (800, 838))
STANDING = {
    "deck": block("deck", (19, 521), (19, 440), (681, 700)),
    "left guide": block("left guide", (90, 119), (19, 425), (700, 751)),
    "right guide": block("right guide", (421, 455), (19, 425), (700, 751)),
    "left kicker": block("left kicker", (100, 140), (60, 380), (800, 838)),
    "right kicker": block("right kicker", (400, 452), (60, 380), (800, 838)),
}


def missing(**changed: Part | None) -> list[tuple[str, str]]:
    """What the proof finds, by part, with something moved or gone."""
    words = {word.replace("_", " "): found for word, found in changed.items()}
    standing = [p for p in {**STANDING, **words}.values() if p is not None]
    slides = [
        Slide(part=name, on_left=name == "left", behind="stiles", unguided=REMEDY, tips=REMEDY)
        for name in ("left", "right")
    ]
    drawer = Pulled(
        name="drawer",
        over="mid rail",
        under="top rail",
        slides=(slides[0], slides[1]),
        not_carried=REMEDY,
    )
    found = Case(parts=(*SIDES, RAIL, *standing), store=Store(), pulled=(drawer,))
    return [
        (f.code.removeprefix("proofs.drawer-"), f.parts[0]) for f in DrawerRuns().findings(found)
    ]


def test_a_drawer_on_a_deck_between_guides_under_kickers_runs() -> None:
    assert missing() == []


@pytest.mark.parametrize(
    ("gone", "found"),
    [
        ("deck", [("not-carried", "left"), ("not-carried", "right")]),
        ("left_guide", [("unguided", "left")]),
        ("right_guide", [("unguided", "right")]),
        ("left_kicker", [("tips", "left")]),
        ("right_kicker", [("tips", "right")]),
    ],
)
def test_each_thing_missing_is_found_where_it_is_missing(
    gone: str, found: list[tuple[str, str]]
) -> None:
    assert missing(**{gone: None}) == found


def test_a_guide_an_eighth_of_an_inch_off_guides_and_one_farther_does_not() -> None:
    near, far = F(120) - F(127, 40), F(120) - F(127, 40) - F(1, 100)
    assert missing(left_guide=block("g", (90, near), (19, 425), (700, 751))) == []
    assert missing(left_guide=block("g", (90, far), (19, 425), (700, 751))) == [
        ("unguided", "left")
    ]


def test_a_guide_along_half_of_the_side_guides_and_a_shorter_one_does_not() -> None:
    assert missing(right_guide=block("g", (421, 455), (19, 219), (700, 751))) == []
    assert missing(right_guide=block("g", (421, 455), (19, 218), (700, 751))) == [
        ("unguided", "right")
    ]


def test_two_short_guides_beside_each_other_are_not_counted_twice() -> None:
    low = block("low", (421, 455), (19, 150), (700, 720))
    high = block("high", (421, 455), (30, 160), (730, 751))
    assert missing(right_guide=low, more=high) == [("unguided", "right")]


def test_a_kicker_far_above_the_opening_stops_nothing() -> None:
    above = F(800) + F(127, 40)
    assert missing(left_kicker=block("k", (100, 140), (60, 380), (above, 838))) == []
    higher = above + F(1, 100)
    assert missing(left_kicker=block("k", (100, 140), (60, 380), (higher, 838))) == [
        ("tips", "left")
    ]


def test_a_kicker_beside_a_side_stops_nothing() -> None:
    assert missing(right_kicker=block("k", (420, 452), (60, 380), (800, 838))) == [
        ("tips", "right")
    ]


def test_a_guide_that_goes_out_with_the_drawer_guides_nothing() -> None:
    pulled = replace(STANDING["left guide"], moves_with="drawer")
    assert missing(left_guide=pulled) == [("unguided", "left")]
