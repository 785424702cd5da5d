"""Hinge. E19 is worked by hand in a set made for this project."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.sawn import SHOP, Sawn, area, mm, said, sawn

from scantling.joints._hinge import hinge_bench
from scantling.joints._joint import Motion, Move, State
from scantling.joints.hinge import Hinge
from scantling.parts import Box, Made, Round, Span, Way
from scantling.shop.habits import Habits
from scantling.units import INCH, Unit, length

PLAIN = Hinge.bench().joined.joint


def hinge(joint: Hinge, *, tall: int = 612, gap: int | str = 1) -> Sawn:
    return sawn(hinge_bench(joint, tall=Fraction(tall), gap=Fraction(gap)))


def small(**more: object) -> Hinge:
    """E19's hinge with other options."""
    assert isinstance(PLAIN, Hinge)
    return replace(PLAIN, **more)  # type: ignore[arg-type]  # options of any kind


def swing(made: Sawn) -> Move:
    (move,) = made.j.joint.moves(made.j, state=State.CLOSED, sizes=made.sizes, parts=made.parts)
    return move


def test_gains_and_places_by_hand() -> None:
    # E19: knuckle 7, gap 1: gains of 3; leaf 16: gauge 15.5; door 612 with rails 62 and 78,
    # hinges 50 long: 500 to 550 and 78 to 128
    made = sawn(Hinge.bench())
    assert made.box("door stile", "gain 1") == Box(
        along=Span(*mm(78, 128)), across=Span(None, Fraction(3)), into=Span(None, Fraction("15.5"))
    )
    assert made.box("door stile", "gain 2").along == Span(*mm(500, 550))
    assert made.box("stile", "gain 1").along == Span(*mm(78 + 14, 128 + 14))


def test_wood_taken_is_two_gains_in_each_stile() -> None:
    made = sawn(Hinge.bench())
    gains = 2 * 50 * 3 * 15.5
    assert made.volume("door stile") == pytest.approx(612 * 55 * 22 - gains)
    assert made.volume("stile") == pytest.approx(652 * 45 * 20 - gains)


def test_metal_fills_the_gains_and_meets_no_wood() -> None:
    made = sawn(Hinge.bench())
    assert not made.overlapping
    assert not made.apart
    assert not made.j.joint.presses(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    leaves = [p for p in made.loose if p.family == "hinge leaf"]
    assert {leaf.extent.thickness for leaf in leaves} == {made.own("gain depth")}
    # behind the knuckle, whose pin stands 0.5 before the face: 15.5 - (3.5 - 0.5)
    assert {leaf.extent.width for leaf in leaves} == {Fraction("12.5")}
    assert [area(p) for p in made.contacts("leaf")] == [50 * Fraction("12.5")] * 4


def test_knuckle_stands_in_the_middle_of_the_gap() -> None:
    made = sawn(Hinge.bench())
    knuckles = [p for p in made.loose if p.family == "hinge knuckle"]
    assert all(isinstance(p.blank, Round) and p.hardware for p in knuckles)
    assert {p.extent.width for p in knuckles} == {7}
    # pin at the middle of a gap of 1 beside a stile of 45, 0.5 before the face
    assert swing(made).about == mm("45.5", "-0.5", 14)
    corner = knuckles[0].placement
    middle = corner.to_piece((Fraction(0), Fraction("3.5"), Fraction("3.5")))
    assert middle[:2] == mm("45.5", "-0.5")


def test_door_hung_on_the_left_opens_to_the_front() -> None:
    # a right-handed turn about `way` takes right, where the door reaches, to the front
    way = swing(sawn(Hinge.bench())).way
    assert way == mm(0, 0, -1)
    assert swing(sawn(Hinge.bench())).motion is Motion.SWING


def test_door_hung_on_the_right_turns_the_other_way() -> None:
    bench = Hinge.bench()
    parts = tuple(
        replace(p, ways=(Way.UP, Way.RIGHT, Way.BACK), at=(-p.at[0], *p.at[1:]))
        for p in bench.parts
    )
    made = sawn(replace(bench, parts=parts))
    assert swing(made).way == mm(0, 0, 1)
    assert not made.overlapping


def test_unhung_door_comes_forward_or_off() -> None:
    made = sawn(Hinge.bench())
    assert made.leaves("enters") == {Way.FRONT, Way.RIGHT}
    assert made.leaves("enters", State.LOCKED) == set()


def test_gains_are_cut_after_the_glue() -> None:
    made = sawn(Hinge.bench())
    assert {c.made for p in made.parts.values() for c in p.cuts} == {Made.AFTER_GLUE}


def test_places_may_count_from_the_ends() -> None:
    made = hinge(small(from_end=said(100)))
    assert made.box("door stile", "gain 1").along == Span(*mm(100, 150))
    assert made.box("door stile", "gain 2").along == Span(*mm(462, 512))


def test_door_without_rails_keeps_a_hinge_s_length_from_its_ends() -> None:
    # Handwork in Wood: on a box, one hinge length from the end
    bench = Hinge.bench()
    told = replace(bench.joined, beside=())
    made = sawn(replace(bench, joined=told), stated={"door on stile.gap": 1})
    assert made.box("door stile", "gain 1").along == Span(*mm(50, 100))
    assert made.box("door stile", "gain 2").along == Span(*mm(512, 562))


def test_tall_door_hangs_on_three_evenly() -> None:
    made = hinge(small(), tall=902)
    starts = [made.own(f"place {n}") for n in (1, 2, 3)]
    assert starts == [78, 434, 790]  # the upper below a rail of 62: 902 - 62 - 50
    assert "place 3" not in {
        n.removeprefix("door on stile.") for n in hinge(small(), tall=900).sizes
    }


def test_usual_hinge_is_a_tenth_of_the_door() -> None:
    made = hinge(Hinge(), tall=730)
    assert made.own("length") == 70
    assert hinge(Hinge(), tall=400).own("length") == 50


def test_cupboard_door_in_inches() -> None:
    # hinge 2 1/2 by 1 3/8, knuckle 1/4, gap 1/16: gains of 3/32
    def inch(text: str) -> Fraction:
        return length(text, unit=Unit.INCH)

    joint = Hinge(
        length=said(inch("2 1/2")), open_width=said(inch("1 3/8")), knuckle=said(inch("1/4"))
    )
    bench = hinge_bench(joint, tall=inch("24 7/8"), gap=inch("1/16"))
    rails = {"top rail": str(inch("2 1/4")), "bottom rail": str(inch("3"))}
    shop = replace(SHOP, unit=Unit.INCH, finest=INCH / 32)
    made = sawn(bench, shop=shop, grid=INCH / 32, stated=rails)
    assert made.own("gain depth") == inch("3/32")
    assert made.own("place 1") == inch("3")
    assert made.own("place 2") == inch("20 1/8")  # 24 7/8 less rail and hinge
    assert not made.overlapping


def test_frame_is_marked_from_the_hung_door() -> None:
    made = sawn(Hinge.bench())
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    gains = [s for s in steps if s.name == "cut gain"]
    assert [(s.parts, s.mate_first) for s in gains] == [
        (("door stile",), False),
        (("stile",), True),
    ]
    assert len({s.setting for s in gains}) == 1  # one gauge for both


@pytest.mark.parametrize("first", [True, False])
def test_hinges_come_off_again_where_they_go_on_before_finish(first: bool) -> None:  # noqa: FBT001 - a case
    made = sawn(Hinge.bench())
    habits = replace(Habits(), hinges_before_finish=first)
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=habits)
    assert ("take off hardware" in {s.name for s in steps}) is first


def test_each_leaf_is_screwed_and_the_gap_keeps() -> None:
    made = sawn(Hinge.bench())
    found = made.j.joint.fixings(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    assert {f.between[1] for f in found} == {p.name for p in made.loose if "leaf" in p.name}
    assert {f.by for f in found} == {"screw"}
    (gap,) = made.j.joint.gaps(made.j, choice=made.choice)
    assert gap.at_bench.at(made.sizes) == 1


def test_hinge_sizes_are_drawn() -> None:
    made = sawn(Hinge.bench())
    drawn = made.j.joint.drawn(made.j, sizes=made.sizes, choice=made.choice)
    found = {d.word: d.value for d in drawn}
    assert (found["hinge 2 starts"], found["hinge 2 stops"]) == mm(500, 550)
    assert found["gain width"] == Fraction("15.5")


def test_plain_door_has_no_fault() -> None:
    assert hinge(small()).codes() == []


def test_gain_almost_through_is_said() -> None:
    # the frame stile is 20 thick
    assert hinge(small(gain_width=said("35/2"), open_width=said(36))).codes() == [
        "hinge.leaf-too-wide"
    ]
    assert hinge(small(gain_width=said(17), open_width=said(36))).codes() == []


def test_too_few_hinges_are_said() -> None:
    assert hinge(small(count=2), tall=901).codes() == ["hinge.too-few"]
    assert hinge(small(count=2), tall=900).codes() == []


def test_hinges_over_each_other_are_said() -> None:
    # 612 less rails leaves 472 for ten of 50
    assert "hinge.crowded" in hinge(small(count=10)).codes()
    assert hinge(small(count=9)).codes() == []


def test_hinge_over_a_rail_is_said() -> None:
    assert hinge(small(from_end=said(77))).codes() == ["hinge.over-tenon"]
    assert hinge(small(from_end=said(78))).codes() == []
