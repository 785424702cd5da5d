"""Through dovetail. Worked figures: E11 and E13 of a set worked by hand for this project."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.sawn import SHOP, said, sawn

from scantling.joints._joint import Bench
from scantling.joints._tail_bench import corner_bench
from scantling.joints.through_dovetail import ThroughDovetail
from scantling.parts import Extent, Way
from scantling.shop.habits import Habits
from scantling.solids.contact import patch_area

E11 = ThroughDovetail(tails=4, half_pin=said(6), pin=said(5), slope=said(Fraction(1, 8)))


def size(length: int, width: int, thickness: int) -> Extent:
    return Extent(length=Fraction(length), width=Fraction(width), thickness=Fraction(thickness))


def corner(joint: ThroughDovetail = E11) -> Bench:
    return corner_bench(
        joint,
        name="corner",
        board=size(300, 141, 19),
        tails=size(220, 141, 13),
        set_off=Fraction(0),
    )


def test_four_tails_across_a_case_side() -> None:
    made = sawn(corner())
    drawn = made.j.joint.drawn(made.j, sizes=made.sizes, choice=made.choice)
    found = {d.word: d.value for d in drawn}
    assert found["tail at the tip"] == Fraction(57, 2)
    assert found["tail at the base"] == Fraction(95, 4)
    assert found["pin at the base"] == Fraction(39, 4)
    assert found["half pin at the base"] == Fraction(67, 8)
    assert 2 * Fraction(67, 8) + 4 * Fraction(95, 4) + 3 * Fraction(39, 4) == 141


def test_tails_are_as_long_as_the_mate_is_thick() -> None:
    made = sawn(corner())
    assert made.own("entry") == 19
    thicker = sawn(corner(), stated={"front.thickness": 23})
    assert thicker.own("entry") == 23
    assert thicker.parts["side"].placement.at[1] == 0  # flush with the far face


def test_corner_is_whole_again() -> None:
    made = sawn(corner())
    tails = 4 * (Fraction(57, 2) + Fraction(95, 4)) / 2 * 19 * 13
    assert made.volume("front") == pytest.approx(float(300 * 141 * 19 - tails))
    assert made.volume("side") == pytest.approx(float(220 * 141 * 13 - 19 * 141 * 13 + tails))
    assert not made.overlapping


def test_it_leaves_only_past_the_end() -> None:
    for bench in (corner(), ThroughDovetail.bench()):
        made = sawn(bench)
        assert made.leaves("enters") == made.free("side") == {Way.LEFT}


def test_back_of_a_drawer_takes_tails_across_its_own_width() -> None:
    made = sawn(ThroughDovetail.bench())
    side = made.parts["side"]
    # the side keeps its wood below the back and above it
    tip = 17 + 117
    assert made.volume("side") > (250 - 11) * 138 * 13 + 11 * 13 * (17 + 138 - tip)
    joint = made.j.joint
    assert isinstance(joint, ThroughDovetail)
    layout = joint.layout(made.j, sizes=made.sizes, choice=made.choice)
    assert [layout.start, layout.stop] == [0, made.parts["front"].extent.width]
    taken = [c.corners(extent=side.extent) for c in side.cuts]
    low = min(y for corners in taken for _, y, _ in corners)
    high = max(y for corners in taken for _, y, _ in corners)
    assert [low, high] == [17, tip]
    assert made.codes() == []


def test_filling_the_other_part_is_refused_where_it_stands_out() -> None:
    bench = ThroughDovetail.bench()
    for filled, codes in (("enters", ["through-dovetail.outside"]), ("receives", [])):
        joint = ThroughDovetail(filled="enters" if filled == "enters" else "receives")
        made = sawn(replace(bench, joined=replace(bench.joined, joint=joint)))
        assert [c for c in made.codes() if c.endswith("outside")] == codes


def test_tips_touch_nothing_but_air() -> None:
    made = sawn(corner())
    found = made.j.joint.contacts(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    assert {c.zone for c in found} == {"flank", "floor", "root"}
    # floors are trapezoids of 28 1/2 and 23 3/4 by 19
    floors = [patch_area(c.patch) for c in found if c.zone == "floor"]
    assert floors == pytest.approx([(28.5 + 23.75) / 2 * 19] * 4)


def test_both_baselines_come_from_the_planed_mates() -> None:
    made = sawn(corner())
    done = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    assert [(e.setting.dimensions, e.parts) for e in done if e.setting] == [
        (("corner.entry",), ("side",)),
        (("side.thickness",), ("front",)),
    ]
    assert "cut pins" in [e.name for e in done]
