"""Drawer bottom. Worked figures: E13 of a set of joints worked by hand for this project."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.sawn import SHOP, Sawn, said, sawn

from scantling.findings import Weight
from scantling.joints._drawer_bench import drawer_bench
from scantling.joints._drawer_groove import bottom_of
from scantling.joints._drawer_sizes import slot_needed
from scantling.joints._joint import Beside, State
from scantling.joints.drawer_bottom import DrawerBottom
from scantling.parts import Box, Cut, Part, Profile, Span, Way
from scantling.parts.solid import finished, placed
from scantling.shop.habits import Habits
from scantling.shop.operations import State as Worked
from scantling.shop.read import default_shop
from scantling.shop.tools import Shop
from scantling.sizes.linear import exactly
from scantling.solids.contact import contact_area, patch_area
from scantling.solids.pairs import overlaps
from scantling.solids.store import Store
from scantling.timber.movement import Strain
from scantling.units import INCH

DRY_AND_DAMP = Strain(grow=Fraction("0.00636"), shrink=Fraction("0.00636"))  # 0.00212 at 3 %

SIX = DrawerBottom(deep=said(6))  # so that no groove gives way to the seasons


def made(
    joint: DrawerBottom | None = None,
    *,
    strain: Strain | None = None,
    stated: Mapping[str, int | str] | None = None,
    beside: tuple[Beside, ...] = (),
    shop: Shop = SHOP,
    grid: Fraction = Fraction(1, 2),
) -> Sawn:
    bench = drawer_bench(joint or DrawerBottom(), name="bottom in grooves", beside=beside)
    strains = {} if strain is None else {"bottom": strain}
    return sawn(bench, shop=shop, grid=grid, strains=strains, stated=stated or {})


def e13(joint: DrawerBottom | None = None, *, strain: Strain | None = None) -> Sawn:
    found = joint or DrawerBottom(set_up=said(12), groove=said(5))
    return made(found, strain=strain, stated={"front.length": 410, "right.thickness": 12})


def figures(found: Sawn) -> Mapping[str, Fraction]:
    drawn = found.j.joint.drawn(found.j, sizes=found.sizes, choice=found.choice)
    return {d.word: d.value for d in drawn}


def cut(found: Sawn, part: str, name: str) -> Cut:
    (one,) = (c for c in found.parts[part].cuts if c.name == name)
    return one


def test_sizes_of_the_worked_drawer() -> None:
    found = e13()
    assert found.own("depth") == 6
    assert found.own("end ease") == Fraction(1, 2)
    assert found.sizes["bottom.length"] == 397
    assert found.sizes["bottom.width"] == 241
    assert found.sizes["back.width"] == 117


def test_slot_is_as_long_as_screw_and_year() -> None:
    # 4 + 2 * 1.53276 + 1 = 8.06552, on a rule of half millimetres 8 1/2
    found = e13(strain=DRY_AND_DAMP)
    assert found.own("slot") == Fraction(17, 2)
    needed, _ = slot_needed(found.j, {"bottom": DRY_AND_DAMP})
    assert float(needed.at(found.sizes)) == pytest.approx(8.06552, abs=1e-5)


def test_slot_leaves_room_before_the_screw_to_grow_and_behind_it_to_shrink() -> None:
    damp = Strain(grow=Fraction("0.02"), shrink=Fraction("-0.001"))
    found = made(strain=damp)
    bottom = bottom_of(found.j, sizes=found.sizes)
    shape = found.box("bottom", "slot for the screw")
    assert shape.across.start is not None
    _, at = bottom.screw_at
    assert at == 241 - Fraction(11, 2)
    ahead = at - 2 - shape.across.start
    assert ahead >= Fraction("0.02") * 241
    assert found.own("slot behind") == Fraction(1, 2)
    wide = shape.along.stop
    assert wide is not None
    assert wide - bottom.length / 2 == Fraction("2.15")


def test_slot_runs_out_behind_where_too_little_wood_would_be_left() -> None:
    # thin back: 11/2 - 2 - 1/2 = 3 behind a still slot stays closed; with movement it opens
    still = made().box("bottom", "slot for the screw")
    assert still.across.stop is not None
    moving = made(strain=DRY_AND_DAMP).box("bottom", "slot for the screw")
    assert moving.across.stop is None


@pytest.mark.parametrize("thick", [5, 7, 9, 11])
def test_bevel_fills_the_groove_at_its_mouth(thick: int) -> None:
    found = made(DrawerBottom(groove=said(6)), stated={"bottom.thickness": thick})
    bottom = bottom_of(found.j, sizes=found.sizes)
    if thick <= 6:
        assert not [c for c in found.parts["bottom"].cuts if "bevel" in c.name]
        assert bottom.edge(bottom.depth) == thick
        return
    for name, reach in (("bevel in front", 6), ("bevel at the left end", Fraction(11, 2))):
        shape = cut(found, "bottom", name).shape
        assert isinstance(shape, Profile)
        (_, edge), (run, full), _ = shape.points
        at_mouth = edge + (full - edge) * reach / run
        assert at_mouth == 6
        assert run == 30


def test_edges_of_the_worked_bottom() -> None:
    # 9 thick, groove 6, bevel 30: (9 - 6) / (30 - 6) = 1/8 in front, edge 6 - 6/8
    found = figures(made(DrawerBottom(groove=said(6))))
    assert found["edge in front"] == Fraction(21, 4)
    # at the ends 3 / (30 - 5.5) = 6/49, edge 6 - 33/49
    assert found["edge at the ends"] == Fraction(261, 49)


def test_wood_taken_by_grooves() -> None:
    found = made(DrawerBottom(groove=said(6)))
    for role, length in (("front", 412), ("left", 235), ("right", 235)):
        extent = found.parts[role].extent
        whole = length * extent.width * extent.thickness
        assert found.volume(role) == pytest.approx(float(whole - length * 6 * 6))
    stopped = made(DrawerBottom(groove=said(6), stopped=True))
    # from 12 - 6 to 412 - (14 - 6)
    front = stopped.box("front", "groove for the bottom")
    assert front.along == Span(Fraction(6), Fraction(404))
    assert stopped.overlapping == found.overlapping


def test_nothing_overlaps_but_the_screw_in_the_back() -> None:
    for held in ("slot screw", "nail"):
        joint = DrawerBottom(held_by="nail") if held == "nail" else DrawerBottom()
        found = made(joint)
        store = Store()
        solids = [placed(p, finished(p, store=store)) for p in found.everything.values()]
        laps = {frozenset(o.between): o.volume for o in overlaps(solids, store=store)}
        told = found.j.joint.presses(
            found.j, sizes=found.sizes, choice=found.choice, parts=found.parts
        )
        meant = {frozenset(p.between): float(p.volume) for p in told}
        assert laps.keys() == meant.keys()
        for pair, volume in laps.items():
            assert volume == pytest.approx(meant[pair], rel=1e-9)
        assert len(meant) == (2 if held == "nail" else 1)


def test_screw_bites_six_diameters_into_the_back() -> None:
    found = made()
    (screw,) = found.loose
    assert screw.hardware
    assert screw.extent.width == 4
    assert screw.extent.length - 9 >= 24
    at = screw.placement
    assert at.along is Way.UP
    bottom = found.parts["bottom"]
    assert at.at[2] == bottom.placement.at[2] - 9  # head under the bottom


def test_bottom_comes_out_to_the_rear_only() -> None:
    found = made()
    assert found.leaves("bottom") == {Way.BACK}
    assert _free(found.parts, "bottom") == {Way.BACK}
    assert found.leaves("bottom", State.LOCKED) == set()
    (closed,) = found.j.joint.moves(
        found.j, state=State.CLOSED, sizes=found.sizes, parts=found.parts
    )
    assert closed.unlocked_by == "slot screw"


def _free(wood: Mapping[str, Part], name: str) -> set[Way]:
    store = Store()
    free = set()
    for way in Way:
        at = list(wood[name].placement.at)
        at[way.axis] += 2 * way.sign
        turned = replace(wood[name].placement, at=(at[0], at[1], at[2]))
        parts = {**wood, name: replace(wood[name], placement=turned)}
        solids = [placed(p, finished(p, store=store)) for p in parts.values()]
        if not overlaps(solids, store=store):
            free.add(way)
    return free


def test_patches_touch() -> None:
    for joint in (DrawerBottom(), DrawerBottom(held_by="nail"), DrawerBottom(stopped=True)):
        found = made(joint, strain=DRY_AND_DAMP)
        store = Store()
        stood = {n: placed(p, finished(p, store=store)) for n, p in found.parts.items()}
        told = found.j.joint.contacts(
            found.j, sizes=found.sizes, choice=found.choice, parts=found.parts
        )
        assert {c.between[1] for c in told} == {"front", "left", "right", "back"}
        for contact in told:
            one, other = (stood[name] for name in contact.between)
            touching = contact_area(one, other, patch=contact.patch, store=store)
            assert touching == pytest.approx(patch_area(contact.patch), rel=1e-4), contact


def test_a_slotted_screw_leaves_the_bottom_free_to_move_and_a_nail_does_not() -> None:
    for joint, free in (
        (DrawerBottom(), {Way.FRONT, Way.BACK}),
        (DrawerBottom(held_by="nail"), set()),
    ):
        found = made(joint)
        (fixing,) = found.j.joint.fixings(
            found.j, sizes=found.sizes, choice=found.choice, parts=found.parts
        )
        assert fixing.free == free
        assert fixing.holds == set(Way) - free
        assert fixing.at[1] == 255 - Fraction(11, 2)


# --- seasons


def test_a_bottom_that_shrinks_from_under_the_back_is_said() -> None:
    # 11 - 3 = 8 of 241: 0.0331 and no more
    for shrink, codes in (("0.033", []), ("0.034", ["drawer-bottom.falls-out"])):
        found = made(SIX, strain=Strain(grow=Fraction(0), shrink=Fraction(shrink)))
        assert found.breaches == codes


def test_a_bottom_that_grows_into_the_case_back_is_said() -> None:
    room = Beside(
        what="room",
        owner="case",
        role="bottom",
        axis=1,
        start=exactly(0),
        size=exactly(3),
        depth=exactly(0),
    )
    # 3 of 241: 0.01244
    for grow, codes in (("0.0124", []), ("0.0125", ["drawer-bottom.hits-back"])):
        found = made(SIX, strain=Strain(grow=Fraction(grow), shrink=Fraction(0)), beside=(room,))
        assert found.breaches == codes


def test_a_nail_gives_two_millimetres_either_way() -> None:
    found = made(DrawerBottom(held_by="nail"))
    gaps = {g.name.split(" at ")[0]: g for g in found.j.joint.gaps(found.j, choice=found.choice)}
    nail = gaps["give of the nail"]
    assert [nail.least, nail.at_bench.at(found.sizes), nail.greatest] == [0, 2, 4]
    assert [width.at(found.sizes) for _, width in nail.moving] == [241]
    assert "room in the slot" not in gaps


def test_a_shallow_groove_is_said() -> None:
    for deep, codes in (("3.4", ["drawer-bottom.shallow"]), ("3.5", [])):
        assert (
            made(DrawerBottom(deep=said(deep), ease=said("0.5")), grid=Fraction(1, 10)).breaches
            == codes
        )


def test_a_slot_stated_too_short_is_said() -> None:
    for slot, codes in ((8, ["drawer-bottom.short-slot"]), ("8.5", [])):
        found = made(
            replace(SIX, screw=said(4)),
            strain=DRY_AND_DAMP,
            stated={"bottom in grooves.slot": slot},
        )
        assert found.breaches == codes


def test_growth_uses_the_slot_up_and_shrinking_uncovers() -> None:
    found = made(strain=DRY_AND_DAMP)
    gaps = {g.name.split(" at ")[0]: g for g in found.j.joint.gaps(found.j, choice=found.choice)}
    cover, slot = gaps["cover under the back"], gaps["room in the slot"]
    assert cover.at_bench.at(found.sizes) == 11
    assert [width.at(found.sizes) for _, width in cover.moving] == [-241]
    assert [width.at(found.sizes) for _, width in slot.moving] == [241]
    assert slot.at_bench.at(found.sizes) >= Fraction("0.00636") * 241
    assert gaps["end ease"].moving == ()


# --- choices


def test_groove_is_an_iron_owned() -> None:
    assert made().own("groove") == 6
    fives = replace(SHOP, plough_irons=(Fraction(5), Fraction(9)))
    assert made(shop=fives).own("groove") == 5
    inch = made(shop=default_shop()).choice
    assert inch["groove"] == INCH / 4
    assert inch["set up"] == INCH * Fraction(3, 8)


def test_depth_is_half_of_the_thinnest_part_down_to_a_whole_one() -> None:
    assert made(stated={"right.thickness": 9}).own("depth") == 4
    assert made(DrawerBottom(deep=said(5))).own("depth") == 5


# --- faults, each with its clean twin


@pytest.mark.parametrize(
    ("word", "guilty", "clean", "thick"),
    [
        ("thin-edge", DrawerBottom(bevel=said(11)), DrawerBottom(bevel=said(13)), (9, 9)),
        ("drags", DrawerBottom(set_up=said("3.5")), DrawerBottom(set_up=said(4)), (9, 9)),
        ("low-groove", DrawerBottom(set_up=said("5.5")), DrawerBottom(set_up=said(6)), (9, 9)),
        ("thin-wall", DrawerBottom(deep=said("7.5")), DrawerBottom(deep=said(7)), (9, 9)),
        ("no-iron", DrawerBottom(groove=said(7)), DrawerBottom(groove=said(8)), (9, 9)),
        ("loose", DrawerBottom(), DrawerBottom(), ("5.5", 6)),
        ("sags", DrawerBottom(), DrawerBottom(), (6, 7)),
    ],
)
def test_a_fault_is_said_and_its_twin_is_clean(
    word: str,
    guilty: DrawerBottom,
    clean: DrawerBottom,
    thick: tuple[int | str, int | str],
) -> None:
    code = f"drawer-bottom.{word}"
    bad = made(guilty, stated={"bottom.thickness": thick[0]})
    good = made(clean, stated={"bottom.thickness": thick[1]})
    assert code in bad.codes()
    assert code not in good.codes()


def test_a_wide_drawer_wants_a_muntin() -> None:
    for wide, found in ((614, []), (616, ["drawer-bottom.wide"])):
        # the bottom is 15 shorter than the front: sides of 26, reach of 11
        box = made(stated={"front.length": wide, "bottom.thickness": 12})
        assert box.codes() == found


def test_grain_from_front_to_back_is_refused() -> None:
    found = made()
    assert found.codes() == []
    bottom = found.parts["bottom"]
    turned = replace(bottom.placement, along=Way.BACK, across=Way.RIGHT)
    parts = {**found.parts, "bottom": replace(bottom, placement=turned)}
    (finding,) = found.j.joint.faults(
        found.j, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=parts
    )
    assert finding.code == "drawer-bottom.grain"
    assert finding.weight is Weight.HALT


# --- work


def test_three_grooves_at_one_setting_before_or_after_the_dovetails() -> None:
    found = made()
    for habits, state in (
        (Habits(), Worked.TO_WIDTH),
        (Habits(drawer_groove_after_dovetails=True), Worked.CUT),
    ):
        plough, slot, fit = found.j.joint.work(
            found.j, choice=found.choice, shop=SHOP, habits=habits
        )
        assert plough.parts == ("front", "left", "right")
        assert plough.setting is not None
        assert plough.setting.dimensions == ("bottom in grooves.set up", "bottom in grooves.depth")
        assert plough.state_before is state
        assert [slot.name, fit.name] == ["cut slot", "fit bottom"]
    nailed = made(DrawerBottom(held_by="nail"))
    done = nailed.j.joint.work(nailed.j, choice=nailed.choice, shop=SHOP, habits=Habits())
    assert "cut slot" not in [each.name for each in done]


def test_grooves_are_measured_from_the_lower_edge() -> None:
    found = made(DrawerBottom(set_up=said(11), groove=said(8), deep=said(5)))
    for role in ("front", "left", "right"):
        shape = found.box(role, "groove for the bottom")
        assert shape == Box(across=Span(Fraction(11), Fraction(19)), into=Span(None, Fraction(5)))
