"""Layouts of tails: they add up, hide grooves, and what is wrong with them is said."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.joints.drawer_corner import E12, corner
from tests.joints.sawn import SHOP, said, sawn

from scantling.findings import Weight
from scantling.joints._tails import WIDEST_TAIL, Asked, laid_out
from scantling.joints.half_blind_dovetail import HalfBlindDovetail
from scantling.shop.tools import Saw, Tool
from scantling.units import Unit

# --- faults, each with its clean twin


@pytest.mark.parametrize(
    ("word", "guilty", "clean"),
    [
        ("thin-lap", replace(E12, lap=said("4.5")), replace(E12, lap=said(5))),
        ("no-room", replace(E12, tails=20), replace(E12, tails=9)),
        ("short-grain", replace(E12, half_pin=said("3.5")), replace(E12, half_pin=said(4))),
        ("wide-tail", replace(E12, tails=2), replace(E12, tails=3)),
        ("no-chisel", replace(E12, pin=said("0.5")), replace(E12, pin=said(1))),
        ("steep", replace(E12, slope=said("4/15")), replace(E12, slope=said("1/4"))),
        ("flat", replace(E12, slope=said("1/11")), replace(E12, slope=said("1/10"))),
    ],
)
def test_a_fault_is_said_and_its_twin_is_clean(
    word: str, guilty: HalfBlindDovetail, clean: HalfBlindDovetail
) -> None:
    code = f"half-blind-dovetail.{word}"
    assert code in sawn(corner(guilty)).codes()
    assert code not in sawn(corner(clean)).codes()


def test_widest_tail_is_forty_five() -> None:
    one = replace(E12, tails=1)
    assert sawn(corner(one, width=57)).codes() == []
    assert sawn(corner(one, width="57.5")).codes() == ["half-blind-dovetail.wide-tail"]


def test_rail_needs_ten_millimetres_beside_its_tail() -> None:
    code = ["half-blind-dovetail.short-grain"]
    for half_pin, found in (("9.5", code), ("10", [])):
        joint = replace(E12, tails=1, half_pin=said(half_pin))
        assert sawn(corner(joint, width=60, front=300)).codes() == found


def test_tails_wider_than_the_mate_are_refused() -> None:
    wide_side = corner(E12, width=138, front=120)
    assert sawn(wide_side).codes() == []  # the narrower part is filled
    for filled, codes in (("enters", ["half-blind-dovetail.outside"]), ("receives", [])):
        joint = replace(E12, filled="enters" if filled == "enters" else "receives")
        found = sawn(corner(joint, width=138, front=120)).codes()
        assert [c for c in found if c.endswith("outside")] == codes


def test_a_coping_saw_takes_out_what_no_chisel_enters() -> None:
    joint = replace(E12, pin=said("0.5"))
    made = sawn(corner(joint))
    saw = Saw(tool=Tool.COPING_SAW, kerf=Fraction(1))
    for saws, weight, word in (((), Weight.HALT, "chisel"), ((saw,), Weight.MIND, "coping saw")):
        (found,) = made.j.joint.faults(
            made.j,
            sizes=made.sizes,
            choice=made.choice,
            shop=replace(SHOP, saws=saws),
            parts=made.parts,
        )
        assert found.weight is weight
        assert word in found.cure


def test_pins_are_wide_enough_for_the_narrowest_chisel() -> None:
    free = HalfBlindDovetail(lap=said(7), slope=said("1/8"))
    narrow = corner(free, thick=16)  # a quarter is 4, at the root 4 + 9/4: a 6 goes in
    assert sawn(narrow).choice["pin"] == 4
    wide = replace(SHOP, chisels=(Fraction(8), Fraction(12)))
    assert sawn(narrow, shop=wide).choice["pin"] == 6  # 6 + 9/4 at the root: an 8 goes in
    assert sawn(narrow, shop=wide).codes(wide) == []


# --- any layout

halves = st.integers(2, 400).map(lambda n: Fraction(n, 2))


@given(
    width=halves.map(lambda w: w + 30),
    thickness=st.integers(10, 60).map(lambda n: Fraction(n, 2)),
    slope=st.sampled_from([Fraction(1, n) for n in (5, 6, 7, 8)]),
    start=halves,
    low=halves,
    unit=st.sampled_from(Unit),
)
def test_tails_and_pins_add_up_at_either_line(
    *,
    width: Fraction,
    thickness: Fraction,
    slope: Fraction,
    start: Fraction,
    low: Fraction,
    unit: Unit,
) -> None:
    asked = Asked(
        start=start,
        width=width,
        depth=thickness * Fraction(3, 4),
        slope=slope,
        thickness=thickness,
        count=None,
        pin=None,
        half_pin=None,
        narrow=False,
        grooves=((start + low, start + low + 5),),
        chisel=None,
        unit=unit,
    )
    found = laid_out(asked)
    n = found.count
    assert n * found.tail + (n - 1) * found.pin + 2 * found.half_pin == width
    assert n * found.tail_base + (n - 1) * found.pin_base + 2 * found.half_pin_base == width
    assert sum(high - low for low, high in found.roots) + n * found.tail_base == width
    assert found.tips[0][0] - start == found.half_pin == start + width - found.tips[-1][1]
    assert found.has_room
    if width > 60 and not found.hides(asked.grooves[0]):
        assert found.tail <= WIDEST_TAIL
    # what hides the groove, if anything does, is taken
    if not found.hides(asked.grooves[0]):
        free = laid_out(replace(asked, grooves=()))
        assert found == free


def test_thick_pins_take_tails_no_wider_than_others() -> None:
    # pin 15, at its root 33: by the ratio alone a tail would be 82 at its neck
    asked = Asked(
        start=Fraction(0),
        width=Fraction(300),
        depth=Fraction(45),
        slope=Fraction(1, 5),
        thickness=Fraction(60),
        count=None,
        pin=None,
        half_pin=Fraction(6),
        narrow=False,
        grooves=(),
        chisel=None,
        unit=Unit.MM,
    )
    none = laid_out(asked)
    never = laid_out(replace(asked, grooves=((Fraction(2), Fraction(8)),)))
    for found in (none, never):
        assert found.pin == 15
        assert found.tail <= WIDEST_TAIL
