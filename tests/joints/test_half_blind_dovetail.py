"""Half-blind dovetail. Worked figures: E12 of a set of joints worked by hand for this project."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.drawer_corner import E12, corner, figures, layout, ploughed, size
from tests.joints.sawn import SHOP, said, sawn

from scantling.findings import Weight
from scantling.joints._dovetail import flank_area, undercut_area
from scantling.joints._joint import Glue, State
from scantling.joints._tail_bench import corner_bench
from scantling.joints.half_blind_dovetail import HalfBlindDovetail
from scantling.parts import Profile, Way
from scantling.parts.solid import finished, placed
from scantling.proofs._proof import Case
from scantling.proofs.claims import Claims
from scantling.shop.habits import Habits
from scantling.shop.operations import Reference
from scantling.shop.read import default_shop
from scantling.solids.contact import contact_area, patch_area
from scantling.solids.store import Store
from scantling.timber.species import species
from scantling.units import INCH


def test_four_tails_across_a_drawer_side() -> None:
    made = sawn(corner())
    found = figures(made)
    assert made.own("entry") == 15
    assert found["tail at the tip"] == Fraction(57, 2)
    assert found["tail at the base"] == Fraction(47, 2)
    assert found["pin at the base"] == 9
    assert layout(made).tips[0] == (Fraction(6), Fraction(69, 2))
    assert layout(made).necks[0] == (Fraction(17, 2), Fraction(32))


def test_lap_and_side_make_up_the_depth_of_the_drawer() -> None:
    # E12: a drawer 255 deep has sides of 250
    side = sawn(corner()).parts["side"]
    assert side.placement.at[1] == 5
    assert side.placement.at[1] + side.extent.length == 255


def test_sockets_take_four_trapezoids_and_tails_leave_as_much() -> None:
    made = sawn(corner())
    tails = 4 * (Fraction(57, 2) + Fraction(47, 2)) / 2 * 15 * 12
    assert made.volume("front") == pytest.approx(float(410 * 138 * 20 - tails))
    assert made.volume("side") == pytest.approx(float(250 * 138 * 12 - 15 * 138 * 12 + tails))
    assert not made.overlapping


def test_undercut_and_glue_area() -> None:
    # E12, side 12 thick: 240 mm2 of undercut, 1440 mm2 of glue
    found = layout(sawn(corner()))
    assert undercut_area(found, thickness=Fraction(12)) == 240
    assert flank_area(found, thickness=Fraction(12)) == 1440


def test_glue_outdoes_the_undercut_in_ash_and_poplar() -> None:
    made = sawn(corner())
    woods = {"front": species("white ash"), "side": species("yellow-poplar")}
    pull, back = made.j.joint.holds(made.j, sizes=made.sizes, choice=made.choice, woods=woods)
    poplar = woods["side"]
    assert poplar.shear is not None
    assert poplar.compression_across is not None
    assert pull.value == pytest.approx(
        max(1440 * poplar.shear / 3, 240 * poplar.compression_across)
    )
    assert back.value == pytest.approx(1440 * poplar.shear / 3)
    assert pull.weakest == "glue on the flanks"
    assert made.j.joint.holds(made.j, sizes=made.sizes, choice=made.choice, woods={}) == ()


def test_thin_necks_hold_less_than_their_glue() -> None:
    joint = replace(E12, half_pin=said(62), tails=1)
    made = sawn(corner(joint))
    woods = {"front": species("white ash"), "side": species("yellow-poplar")}
    pull, _ = made.j.joint.holds(made.j, sizes=made.sizes, choice=made.choice, woods=woods)
    assert pull.weakest == "glue on the flanks"
    thinner = sawn(corner(replace(joint, half_pin=said("66.4"))))
    pull, _ = thinner.j.joint.holds(
        thinner.j, sizes=thinner.sizes, choice=thinner.choice, woods=woods
    )
    assert pull.weakest == "necks of the tails"
    # neck 138 - 2 * 66.4 - 2 * 2.5 = 0.2 wide, 12 thick
    assert pull.value == pytest.approx(0.2 * 12 * woods["side"].bending_strength)


def test_lap_is_a_quarter_up_to_a_whole_depth_unless_said() -> None:
    free = replace(E12, lap=None)
    assert sawn(corner(free)).own("lap") == 5
    assert sawn(corner(free, thick=22)).own("lap") == 6  # a quarter would be 5 1/2
    inch = sawn(corner(free, thick=str(INCH * Fraction(13, 16))), shop=default_shop())
    assert inch.own("lap") == INCH / 4  # a quarter would be 13/64
    assert sawn(corner(replace(E12, lap=said(6)), thick=22)).own("entry") == 16


def test_slope_follows_the_wood_of_the_tails_unless_said() -> None:
    free = HalfBlindDovetail()
    bench = corner(free)
    assert figures(sawn(bench))["slope"] == Fraction(1, 8)
    pine = [replace(p, wood="eastern white pine") if p.name == "side" else p for p in bench.parts]
    assert figures(sawn(replace(bench, parts=tuple(pine))))["slope"] == Fraction(1, 6)
    assert figures(sawn(corner(replace(free, slope=said(Fraction(1, 7))))))["slope"] == Fraction(
        1, 7
    )


def test_usual_layouts_of_the_worked_drawers() -> None:
    # by the ratio of 2 1/2 at the base the two worked cases, E11 and E12, take four tails
    assert sawn(corner(replace(E12, tails=None))).choice.count("tails") == 4
    wide = replace(E12, tails=None, pin=said(5), slope=said(Fraction(1, 8)), lap=said(1))
    assert sawn(corner(wide, width=141)).choice.count("tails") == 4


def test_a_rail_under_a_top_has_one_tail_and_wood_beside_it() -> None:
    side = size(str(37 * INCH), str(INCH * Fraction(69, 4)), str(INCH * Fraction(3, 4)))
    rail = size(str(INCH * Fraction(83, 2)), str(INCH * Fraction(5, 2)), str(INCH * Fraction(3, 4)))
    joint = HalfBlindDovetail(lap=said(str(INCH / 4)))
    bench = corner_bench(joint, name="rail in side", board=side, tails=rail, set_off=Fraction(0))
    made = sawn(bench, shop=default_shop(), grid=INCH / 32)
    found = figures(made)
    assert found["tails"] == 1
    assert made.own("entry") == INCH / 2
    assert found["half pin at the tip"] == INCH * Fraction(13, 32)  # 10 mm, up to the next mark
    assert found["tail at the base"] >= INCH * Fraction(5, 4)  # half of its width
    assert made.codes(default_shop()) == []
    assert not made.overlapping
    further = replace(
        bench,
        joined=corner_bench(
            joint, name="rail in side", board=side, tails=rail, set_off=Fraction(-200)
        ).joined,
    )
    assert further.joined.seat("enters").across.at({}) == 200


def test_a_rail_has_the_same_half_pins_wherever_it_stands() -> None:
    free = HalfBlindDovetail(lap=said(5))
    found = [
        figures(sawn(corner(free, width=50, front=300, set_off=off)))["half pin at the tip"]
        for off in (0, 30, 250)
    ]
    assert found == [10, 10, 10]


def test_a_narrower_side_is_set_off_and_both_stay_sound() -> None:
    made = sawn(HalfBlindDovetail.bench())
    assert layout(made).start == 0
    assert layout(made).stop == made.parts["side"].extent.width
    heights = [part.placement.at[2] for part in made.parts.values()]
    assert heights == [0, 5]
    assert not made.overlapping


def test_half_pins_run_out_through_the_edges_they_reach() -> None:
    (first, *_, last) = sawn(corner()).parts["side"].cuts
    assert isinstance(first.shape, Profile)
    assert isinstance(last.shape, Profile)
    assert first.shape.open_sides == {0, 3}
    assert last.shape.open_sides == {0, 1}


def test_it_leaves_only_past_the_end() -> None:
    for bench in (HalfBlindDovetail.bench(), corner()):
        made = sawn(bench)
        assert made.leaves("enters") == made.free("side") == {Way.LEFT}
        assert made.leaves("enters", State.LOCKED) == set()


def test_every_tail_is_glued_in_the_middle() -> None:
    made = sawn(corner())
    found = made.j.joint.fixings(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    # middles of the tails: 6 + 28.5 / 2, then every 32.5
    assert [at.at for at in found] == [
        (Fraction(6), 20 - Fraction(15, 2), Fraction(81, 4) + i * Fraction(65, 2)) for i in range(4)
    ]
    assert all(at.holds == frozenset(Way) and not at.free for at in found)


# --- grooves


def test_a_groove_in_the_lowest_tail_never_reaches_the_end_of_the_front() -> None:
    made = sawn(corner(groove=12), neighbours=ploughed(12))
    plain = sawn(corner())
    # within the socket nothing is left for it to take
    assert plain.volume("front") - made.volume("front") == pytest.approx((410 - 12) * 5 * 6)
    assert "half-blind-dovetail.groove-shows" not in made.codes()
    case = Case(parts=tuple(made.parts.values()), store=Store())
    assert Claims().findings(case) == ()  # the wood is claimed by both, and that is meant


def test_a_groove_through_the_pin_shows_and_is_said() -> None:
    # E12: groove 8..13, the neck of the tail starts at 8 1/2
    made = sawn(corner(groove=8), neighbours=ploughed(8))
    plain = sawn(corner())
    assert plain.volume("front") - made.volume("front") > (410 - 12) * 5 * 6 + 1
    (finding,) = made.j.joint.faults(
        made.j, sizes=made.sizes, choice=made.choice, shop=SHOP, parts=made.parts
    )
    assert finding.code == "half-blind-dovetail.groove-shows"
    assert finding.weight is Weight.MIND
    assert finding.figure == "0.5 mm"
    assert "stop the groove" in finding.cure
    assert "0.5 mm away from" in finding.cure


def test_half_pin_gives_way_to_a_groove_when_the_maker_left_it_free() -> None:
    free = replace(E12, half_pin=None)
    assert figures(sawn(corner(free)))["half pin at the tip"] == 6
    made = sawn(corner(free, groove=8))
    assert figures(made)["half pin at the tip"] == Fraction(11, 2)
    assert made.codes() == []


def test_number_of_tails_gives_way_to_a_groove() -> None:
    free = replace(E12, tails=None)
    assert sawn(corner(free)).choice.count("tails") == 4
    made = sawn(corner(free, groove=33))  # the second pin of four stands there
    assert made.choice.count("tails") != 4
    assert made.codes() == []


def test_a_groove_wider_than_any_tail_is_stopped() -> None:
    joint = replace(E12, tails=15, pin=said(1), half_pin=said(4), slope=said(Fraction(1, 10)))
    made = sawn(corner(joint, groove=30))
    findings = made.j.joint.faults(
        made.j, sizes=made.sizes, choice=made.choice, shop=SHOP, parts=made.parts
    )
    shows = [f for f in findings if f.code.endswith("groove-shows")]
    assert len(shows) == 1
    assert "fewer and wider tails" in shows[0].cure


@pytest.mark.parametrize("groove", [None, 12, 25])
def test_patches_are_just_where_wood_meets_wood(groove: int | None) -> None:
    cuts = {} if groove is None else ploughed(groove)
    made = sawn(corner(groove=groove), neighbours=cuts)
    store = Store()
    front, side = (placed(p, finished(p, store=store)) for p in made.parts.values())
    found = made.j.joint.contacts(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    for contact in found:
        area = patch_area(contact.patch)
        touching = contact_area(front, side, patch=contact.patch, store=store)
        assert touching == pytest.approx(area, abs=0.01), contact.zone


def test_what_glue_finds() -> None:
    made = sawn(corner())
    found = made.j.joint.contacts(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    by_zone = {c.zone: c.glue for c in found}
    assert by_zone == {
        "flank": Glue.CROSSING,
        "floor": Glue.END_GRAIN,
        "tip": Glue.END_GRAIN,
        "root": Glue.END_GRAIN,
    }
    # tips 28 1/2 by 12; roots are 6 + 2 1/2 twice and 9 three times by 12
    assert sum(patch_area(c.patch) for c in found if c.zone == "tip") == pytest.approx(4 * 342)
    assert sum(patch_area(c.patch) for c in found if c.zone == "root") == pytest.approx(44 * 12)


# --- work


@pytest.mark.parametrize(
    ("habits", "order", "transferred"),
    [
        (Habits(), ["set out tails", "cut tails", "transfer", "cut blind pins"], "front"),
        (
            Habits(tails_first=False),
            ["set out tails", "cut blind pins", "transfer", "cut tails"],
            "side",
        ),
    ],
)
def test_order_is_the_makers_habit(habits: Habits, order: list[str], transferred: str) -> None:
    made = sawn(corner())
    done = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=habits)
    names = [each.name for each in done]
    assert [n for n in names if n in order] == order
    by_name = {each.name: each for each in done}
    assert by_name["transfer"].parts == (transferred,)
    last = by_name[order[-1]]
    assert last.mate_first
    assert last.reference is Reference.MATE
    assert not by_name[order[1]].mate_first


def test_one_gauge_setting_for_side_and_front() -> None:
    made = sawn(corner())
    done = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    settings = [(e.setting.dimensions, e.parts) for e in done if e.setting]
    assert settings == [
        (("front at side.entry",), ("side", "front")),
        (("side.thickness",), ("front",)),
    ]


def test_widths_of_unlike_woods_pull_apart() -> None:
    made = sawn(corner())
    (gap,) = made.j.joint.gaps(made.j, choice=made.choice)
    assert gap.at_bench.at(made.sizes) == 0
    assert {part: width.at(made.sizes) for part, width in gap.moving} == {
        "front": 138,
        "side": -138,
    }
