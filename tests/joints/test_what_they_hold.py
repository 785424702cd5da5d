"""What hinge, groove and drawer bottom hold, worked a second way: in pounds and inches.

Strength figures as printed in Wood Handbook table 5-3b: white ash, gravity 0.60, shear 1910 psi,
compression across the grain 1160 psi; yellow-poplar, gravity 0.42, shear 1190 psi, compression
across 500 psi, modulus of rupture 10 100 psi.
"""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import built
from tests.joints.on_the_bench import woods as bench_woods
from tests.joints.sawn import SHOP, Sawn, said, sawn

from scantling.joints._drawer_bench import drawer_bench
from scantling.joints._hinge import hinge_bench
from scantling.joints._joint import Estimate, Joint, Seat
from scantling.joints.drawer_bottom import DrawerBottom
from scantling.joints.groove import Groove
from scantling.joints.hinge import Hinge
from scantling.sizes.linear import exactly
from scantling.timber.species import Species, species

POUND = 4.448222  # [N] NIST SP 811 (2008), appendix B.8
INCH = 25.4  # [mm]
ASH, POPLAR = species("white ash"), species("yellow-poplar")


def estimates(made: Sawn, woods: Mapping[str, Species]) -> Mapping[str, Estimate]:
    found = made.j.joint.holds(made.j, sizes=made.sizes, choice=made.choice, woods=woods)
    return {each.what: each for each in found}


# --- hinge

PULL = "pull on one leaf, straight off its stile"
SAG = "sag: weight on the door times its distance from the pins"
DOWN = "weight down along the stile, on all hinges"


def hung(joint: Hinge | None = None, *, door: Species = ASH) -> Mapping[str, Estimate]:
    bench = Hinge.bench() if joint is None else hinge_bench(joint, tall=Fraction(612))
    return estimates(sawn(bench), {"stile": ASH, "door stile": door})


def test_two_screws_to_a_leaf_hold_by_two_thirds_of_their_length() -> None:
    # 15 700 G^2 D L, number 6 or 3.5 mm, thread 2/3 of 20 mm; ash 0.60
    pounds = 2 * 15_700 * 0.60**2 * (3.5 / INCH) * (20 * 2 / 3 / INCH)
    pull = hung()[PULL]
    assert pull.value == pytest.approx(pounds * POUND, rel=1e-3)  # about 3600 N
    assert pull.unit == "N"


def test_a_thick_leaf_leaves_less_thread_in_the_wood() -> None:
    # knuckle 17 less gap 1: leaf of 8, so 12 of 20 mm are in the wood, less than two thirds
    joint = Hinge(length=said(50), open_width=said(52), knuckle=said(17))
    pounds = 2 * 15_700 * 0.60**2 * (3.5 / INCH) * (12 / INCH)
    assert hung(joint)[PULL].value == pytest.approx(pounds * POUND, rel=1e-3)


def test_the_softer_stile_gives_first() -> None:
    soft = hung(door=POPLAR)
    assert soft[PULL].value == pytest.approx(hung()[PULL].value * (0.42 / 0.60) ** 2)
    assert {each.weakest.rpartition(" the ")[2] for each in soft.values()} == {"door stile"}


def test_sag_is_the_pull_at_the_distance_of_the_outer_hinges() -> None:
    # lower hinge from 78, upper from 500: 0.422 m between their middles
    found = hung()
    assert found[SAG].value == pytest.approx(found[PULL].value * 0.422)
    assert found[SAG].unit == "N m"
    assert SAG not in hung(Hinge(count=1))


def test_weight_hangs_on_all_screws_in_proportion_to_their_depth() -> None:
    # K 6400 lb for ash, table 8-4; 17 of 20 mm in the wood, of 7 x 3.5 wanted; 4 screws
    pounds = 4 * 6400 * (3.5 / INCH) ** 2 * 17 / (7 * 3.5)
    assert hung()[DOWN].value == pytest.approx(pounds * POUND, rel=1e-3)


def test_three_screws_to_a_leaf_from_two_and_a_half_inches_or_where_the_maker_says() -> None:
    two = hung(Hinge(length=said(63)))[PULL].value
    assert hung(Hinge(length=said(64)))[PULL].value == pytest.approx(two * 3 / 2)
    assert hung(Hinge(length=said(63), screws=5))[PULL].value == pytest.approx(two * 5 / 2)


def test_longer_and_thicker_screws_hold_more() -> None:
    usual, said_so = hung(Hinge())[PULL], hung(Hinge(screw=said(4), screw_length=said(30)))[PULL]
    assert said_so.value / usual.value == pytest.approx(4 / 3.5 * 30 / 20)


def test_screws_that_nearly_come_through_are_told() -> None:
    # the frame stile is 45 wide, and 3 are left beyond the point
    assert sawn(hinge_bench(Hinge(screw_length=said(42)), tall=Fraction(612))).codes() == []
    assert sawn(hinge_bench(Hinge(screw_length=said("42.5")), tall=Fraction(612))).codes() == [
        "hinge.screw-through"
    ]


def test_of_a_wood_that_no_table_knows_nothing_is_promised() -> None:
    assert estimates(sawn(Hinge.bench()), {"stile": ASH}) == {}
    light = replace(POPLAR, gravity_12=0.25)  # lighter than the table of screws goes
    assert set(hung(door=light)) == {PULL, SAG}


# --- groove

ROLLING = 0.18  # of shear along the grain, Wood Handbook ch. 5, from memory


def grooved(joint: Joint, *, alone: bool = False) -> Mapping[str, Estimate]:
    bench = Groove.bench()
    seats = dict(bench.joined.seats)
    if alone:
        seats = {"receives": (Seat(part="kicker", into=exactly(7)),)}
    found = built(replace(bench, joined=replace(bench.joined, joint=joint, seats=seats)))
    j, kinds = found.bench.joined, bench_woods(found.bench)
    told = j.joint.holds(j, sizes=found.sizes, choice=found.choice, woods=kinds)
    return {each.what: each for each in told}


def test_walls_of_a_groove_in_a_face_are_what_is_left_to_either_edge() -> None:
    # kicker of poplar 75 wide, groove 19 wide from 30: walls of 30 and 26
    found = grooved(Groove(surface="face"))
    for wall, mm in (("near", 30), ("far", 26)):
        each = found[f"push sideways against the {wall} wall"]
        pounds_an_inch = ROLLING * 1190 * mm / INCH
        assert each.value == pytest.approx(pounds_an_inch * POUND / INCH, rel=1e-3)
        assert each.unit == "N/mm"


def test_walls_of_a_groove_in_an_edge_are_what_is_left_to_either_face() -> None:
    # 38 thick, 10 wide from 7: walls of 7 and 21; nothing stands in it
    found = grooved(Groove(wide=said(10)), alone=True)
    values = [each.value / (ROLLING * 8.205) for each in found.values()]
    assert values == pytest.approx([7, 21])


def test_what_stands_on_the_floor_presses_the_softer_wood() -> None:
    # ash on poplar: 500 psi over 19 mm
    floor = grooved(Groove(surface="face"))["the partition pressed onto the floor"]
    assert floor.value == pytest.approx(500 * 19 / INCH * POUND / INCH, rel=1e-3)
    assert floor.weakest == "wood of the kicker"
    hanging = grooved(Groove(surface="face", floor_gap=said(1)))
    assert "the partition pressed onto the floor" not in hanging


# --- drawer bottom

LOAD = "load spread over the bottom"
POPLARS = dict.fromkeys(("bottom", "left", "right"), POPLAR)


def drawer(
    woods: Mapping[str, Species] | None = None,
    *,
    joint: DrawerBottom | None = None,
    **stated: int | str,
) -> Estimate:
    usual = joint or DrawerBottom(set_up=said(12), groove=said(6), deep=said(6))
    bench = drawer_bench(usual, name="bottom in grooves")
    named = {name.replace("_", "."): value for name, value in stated.items()}
    made = sawn(bench, shop=SHOP, grid=Fraction(1, 2), stated=named)
    (found,) = estimates(made, POPLARS if woods is None else woods).values()
    assert found.what == LOAD
    return found


def test_a_wide_drawer_breaks_its_bottom() -> None:
    # 800 wide inside, 9 thick: the moment W L / 8 of a strip 235 wide against its section
    # b t^2 / 6; front 826 less sides of 12 and 14 is 800
    found = drawer(front_length=826)
    moment = 10_100 * (235 / INCH) * (9 / INCH) ** 2 / 6  # [lb in]
    assert found.value == pytest.approx(8 * moment / (800 / INCH) * POUND, rel=1e-3)
    assert found.weakest == "the board"


def test_a_narrow_drawer_with_low_grooves_loses_its_ledges() -> None:
    # 100 wide, grooves 3 above the lower edge: each ledge takes half of the load
    joint = DrawerBottom(set_up=said(3), groove=said(6), deep=said(6))
    found = drawer(joint=joint, front_length=126)
    each = ROLLING * 1190 * (3 / INCH) * (235 / INCH)
    assert found.value == pytest.approx(2 * each * POUND, rel=1e-3)
    assert found.weakest == "ledge of the left"


def test_thin_ends_split_before_high_ledges_go() -> None:
    # ledges of 60 mm; ends 6 thick, 3/2 V / (b t) reaches the shear strength at V = W / 2
    joint = DrawerBottom(set_up=said(60), groove=said(6), deep=said(6))
    found = drawer(joint=joint, front_length=126)
    half = 1190 * (235 / INCH) * (6 / INCH) * 2 / 3
    assert found.value == pytest.approx(2 * half * POUND, rel=1e-3)
    assert found.weakest == "ends of the board in their grooves"


def test_the_softer_side_is_named() -> None:
    joint = DrawerBottom(set_up=said(3), groove=said(6), deep=said(6))
    woods = {**POPLARS, "left": ASH}
    assert drawer(woods, joint=joint, front_length=126).weakest == "ledge of the right"


def test_unknown_wood_promises_nothing() -> None:
    made = sawn(drawer_bench(DrawerBottom(), name="bottom in grooves"))
    assert estimates(made, {"bottom": POPLAR, "left": ASH}) == {}
    deaf = replace(POPLAR, shear=None)
    assert estimates(made, {**POPLARS, "right": deaf}) == {}
