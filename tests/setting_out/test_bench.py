"""Which parts are glued up from strips, and how the rings of the strips look."""

from __future__ import annotations

from fractions import Fraction

from tests.pieces.edited import DEMO, demo

from scantling.parts import GluedUp, Part
from scantling.piece import read
from scantling.setting_out import set_out
from scantling.shop.habits import Habits
from scantling.units import INCH

SIDE = Fraction(69, 4) * INCH  # 18 deep less the frame of 3/4


def side(*, widest: Fraction) -> Part:
    """A side of the demo by a maker whose strips are at most so wide."""
    base, habits = demo(), Habits(widest_strip=widest)
    found = set_out(read(DEMO), shop=base.shop, habits=habits, store=base.store, before=base)
    return found.part("left side")


def strips(part: Part) -> list[tuple[str, bool]]:
    assert isinstance(part.blank, GluedUp)
    return [(strip.name, strip.ring_side_up) for strip in part.blank.strips]


def test_a_side_as_wide_as_the_widest_strip_is_one_board() -> None:
    assert demo().part("left side").extent.width == SIDE
    assert not isinstance(side(widest=SIDE).blank, GluedUp)
    # and a mark wider than that it is glued up from two
    assert len(strips(side(widest=SIDE - INCH / 32))) == 2


def test_no_strip_of_a_glued_up_side_is_wider_than_the_widest() -> None:
    # 3 strips of 5 3/4 are 17 1/4 just so
    assert len(strips(side(widest=Fraction(23, 4) * INCH))) == 3
    assert len(strips(side(widest=Fraction(23, 4) * INCH - 1))) == 4


def test_the_rings_of_neighbouring_strips_look_opposite_ways() -> None:
    assert strips(side(widest=5 * INCH)) == [
        ("strip a", True),
        ("strip b", False),
        ("strip c", True),
        ("strip d", False),
    ]
