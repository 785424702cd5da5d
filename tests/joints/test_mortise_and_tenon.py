"""Mortise and tenon. E7, E8 and E24 are worked by hand in a set made for this project."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.sawn import SHOP, Sawn, area, mm, said, sawn

from scantling.joints._frame import frame_bench
from scantling.joints._joint import Bench, Beside, Glue, State
from scantling.joints.mortise_and_tenon import MortiseAndTenon
from scantling.parts import Box, Cut, Extent, Span, Way
from scantling.shop.habits import Habits
from scantling.shop.operations import State as Stage
from scantling.sizes.linear import exactly
from scantling.timber.species import species
from scantling.units import INCH, Unit, length

INCH_SHOP = replace(
    SHOP,
    unit=Unit.INCH,
    finest=INCH / 32,
    mortise_chisels=(INCH / 4, INCH * 5 / 16, INCH * 3 / 8),
)


def inch(text: str) -> Fraction:
    return length(text, unit=Unit.INCH)


def size(length: int | str, width: int | str, thickness: int | str) -> Extent:
    return Extent(length=Fraction(length), width=Fraction(width), thickness=Fraction(thickness))


def tee(joint: MortiseAndTenon, *, stile: Extent, rail: Extent, up: int | None = 110) -> Bench:
    return frame_bench(
        joint,
        name="rail in stile",
        stile=stile,
        rail=rail,
        up=None if up is None else Fraction(up),
    )


def groove(role: str, *, start: Fraction, wide: Fraction, deep: Fraction) -> Beside:
    return Beside(
        what="groove",
        owner="panel in frame",
        role=role,
        axis=2,
        start=exactly(start),
        size=exactly(wide),
        depth=exactly(deep),
    )


def grooved(
    bench: Bench, *, start: Fraction, wide: Fraction, deep: Fraction
) -> tuple[Bench, Mapping[str, tuple[Cut, ...]]]:
    """The bench with a panel groove in both inner edges, and the cuts its owner makes."""
    told = tuple(groove(r, start=start, wide=wide, deep=deep) for r in ("receives", "enters"))
    shape = Box(across=Span(None, deep), into=Span(start, start + wide))
    cut = Cut(name="groove", owner="panel in frame", shape=shape)
    joined = replace(bench.joined, beside=told)
    return replace(bench, joined=joined), {"stile": (cut,), "rail": (cut,)}


def door_corner(joint: MortiseAndTenon, *, rail: int, cut_grooves: bool = True) -> Sawn:
    """E8: stile 55, T 22, groove 8 by 8 at 7; the rail is 62 or 78 wide, 240 clear."""
    bench = tee(joint, stile=size(300, 55, 22), rail=size(240, rail, 22), up=None)
    told, cuts = grooved(bench, start=Fraction(7), wide=Fraction(8), deep=Fraction(8))
    return sawn(told, neighbours=cuts if cut_grooves else None)


@pytest.mark.parametrize(
    ("stock", "chisel"), [("20", 6), ("21", 6), ("22", 8), ("25", 8), ("381/20", 6)]
)
def test_tenon_is_as_thick_as_the_chisel_nearest_a_third(stock: str, chisel: int) -> None:
    # E7: chisels 5 6 8 10 12; a tie goes to the smaller
    made = sawn(
        tee(MortiseAndTenon(), stile=size(300, 55, stock), rail=size(240, 62, stock)),
        grid=Fraction(1, 40),
    )
    assert made.own("thickness") == chisel
    assert made.own("set in") == (Fraction(stock) - chisel) / 2


def test_top_rail_of_a_door_by_hand() -> None:
    # E8: haunch 18, tenon 36 by 36 by 8, mortise 558 to 594 on a stile of 612, so 18 to 54
    made = door_corner(MortiseAndTenon(), rail=62)
    found = {w: made.own(w) for w in ("tenon", "width", "thickness", "haunch", "haunch length")}
    assert found == {"tenon": 36, "width": 36, "thickness": 8, "haunch": 18, "haunch length": 8}
    assert made.box("stile", "mortise") == Box(
        along=Span(*mm(18, 54)), across=Span(None, Fraction(38)), into=Span(*mm(7, 15))
    )
    assert made.sizes["rail.length"] == 240 + 36
    assert not made.overlapping


def test_wood_left_beside_a_grooved_corner_by_hand() -> None:
    made = door_corner(MortiseAndTenon(), rail=62)
    tongue = 36 * 36 * 8 + 18 * 8 * 8
    assert made.volume("rail") == pytest.approx(240 * (62 * 22 - 8 * 8) + tongue)
    mortise_below_groove = 36 * (38 - 8) * 8
    assert made.volume("stile") == pytest.approx(300 * (55 * 22 - 8 * 8) - mortise_below_groove)


def test_bottom_rail_of_a_door_by_hand() -> None:
    # E8: a third of 78 - 8 is 23 1/3; 24 is taken, the tenon is 46, the mortise 24 to 70
    made = door_corner(MortiseAndTenon(haunch=said(24)), rail=78)
    assert made.own("width") == 46
    assert made.box("stile", "mortise").along == Span(*mm(24, 70))
    assert made.codes() == ["mortise-and-tenon.broad"]  # 46 is over 5 times 8: a note
    assert "mortise-and-tenon.broad" not in door_corner(MortiseAndTenon(), rail=62).codes()


def test_only_room_for_glue_is_left_below_the_tenon() -> None:
    # E8: void 2 by 36 by 8 in the top corner
    made = door_corner(MortiseAndTenon(), rail=62)
    assert made.own("floor gap") == 2
    assert (made.own("mortise depth") - made.own("entry")) * made.own("width") * made.own(
        "thickness"
    ) == 576


def test_without_its_groove_a_haunch_has_no_room() -> None:
    # the form tells of a groove that its owner then does not cut
    made = door_corner(MortiseAndTenon(), rail=62, cut_grooves=False)
    assert made.overlapping


def test_cuts_beside_a_groove_share_its_wood() -> None:
    made = door_corner(MortiseAndTenon(), rail=62)
    for part in ("stile", "rail"):
        ours = [c for c in made.parts[part].cuts if c.owner == made.j.name]
        assert ours
        assert all(c.shares == {"panel in frame"} for c in ours)


def test_haunch_is_dry_and_cheeks_count_by_hand() -> None:
    made = door_corner(MortiseAndTenon(), rail=62)
    contacts = made.j.joint.contacts(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    glued = [area(c.patch) for c in contacts if c.glue is Glue.CROSSING]
    assert glued == [36 * 36, 36 * 36]
    haunch = [c for c in contacts if c.zone == "haunch"]
    assert [area(c.patch) for c in haunch] == [18 * 8] * 3  # cheeks, and its end on the floor
    assert {c.glue for c in haunch} == {Glue.DRY}


def test_shoulders_close_all_round() -> None:
    made = sawn(tee(MortiseAndTenon(), stile=size(300, 55, 22), rail=size(240, 62, 22)))
    # end of the rail less the foot of the tenon: 62 by 22 less 56 by 8
    assert sum(area(p) for p in made.contacts("shoulder")) == 62 * 22 - 56 * 8
    beside = door_corner(MortiseAndTenon(), rail=62)
    assert sum(area(p) for p in beside.contacts("shoulder")) == 62 * (22 - 8)


def test_haunch_at_a_corner_has_a_socket_open_to_the_end() -> None:
    made = sawn(MortiseAndTenon.bench())
    names = [c.name for c in made.parts["stile"].cuts]
    assert names == ["mortise", "haunch socket"]
    assert not made.overlapping
    assert made.own("haunch length") == made.own("thickness") == 6
    assert made.box("stile", "haunch socket").along == Span(None, made.own("haunch"))
    assert not made.apart
    socket = made.own("haunch") * (6 + Fraction(1, 2)) * 6
    mortise = made.own("width") * 38 * 6
    assert made.volume("stile") == pytest.approx(float(300 * 55 * 22 - socket - mortise))


def test_corner_is_haunched_unless_told_not_to() -> None:
    plain = frame_bench(
        MortiseAndTenon(haunched=False),
        name="rail in stile",
        stile=size(300, 55, 22),
        rail=size(240, 62, 22),
    )
    made = sawn(plain)
    assert [c.name for c in made.parts["stile"].cuts] == ["mortise"]
    assert made.codes() == ["mortise-and-tenon.short-end", "mortise-and-tenon.broad"]
    assert "mortise-and-tenon.short-end" not in sawn(MortiseAndTenon.bench()).codes()


def test_haunch_may_stand_at_the_far_edge() -> None:
    joint = MortiseAndTenon(haunched=True, haunch_at="far", haunch=said(20))
    made = sawn(tee(joint, stile=size(300, 55, 22), rail=size(240, 62, 22)))
    assert made.box("stile", "mortise").along == Span(*mm(113, 152))
    assert not made.overlapping
    assert not made.apart


@pytest.mark.parametrize("up", [None, 110])
def test_it_leaves_only_straight_out(up: int | None) -> None:
    made = sawn(tee(MortiseAndTenon(), stile=size(300, 55, 22), rail=size(240, 62, 20), up=up))
    assert made.leaves("enters") == made.free("rail") == {Way.RIGHT}
    assert made.leaves("enters", State.LOCKED) == set()


def test_rail_set_back_keeps_its_tenon_in_its_own_middle() -> None:
    made = sawn(
        frame_bench(
            MortiseAndTenon(),
            name="rail in stile",
            stile=size(300, 55, 22),
            rail=size(240, 62, 18),
            set_back=Fraction(1),
        )
    )
    # rail 18 thick, 1 behind the stile's face, chisel 6: 1 + 6
    assert made.own("set in") == 7
    assert made.box("rail", "front cheek") == Box(
        along=Span(None, Fraction(36)), into=Span(None, Fraction(6))
    )
    assert not made.overlapping
    assert not made.apart


def test_haunch_is_as_long_as_a_deep_groove_and_as_thick_as_it_is_wide() -> None:
    bench = tee(MortiseAndTenon(), stile=size(300, 55, 22), rail=size(240, 62, 22), up=None)
    told, cuts = grooved(bench, start=Fraction(7), wide=Fraction(8), deep=Fraction(10))
    made = sawn(told, neighbours=cuts)
    found = {word: made.own(word) for word in ("thickness", "haunch length", "far edge shoulder")}
    assert found == {"thickness": 8, "haunch length": 10, "far edge shoulder": 10}
    assert not made.overlapping
    assert not made.apart


def test_muntin_between_two_grooves_gives_up_both_edges() -> None:
    bench = tee(MortiseAndTenon(), stile=size(300, 55, 22), rail=size(240, 50, 22))
    deep, start, wide = Fraction(9), Fraction(7), Fraction(8)
    told = tuple(
        groove(r, start=start, wide=wide, deep=deep) for r in ("receives", *["enters"] * 2)
    )
    one = Box(across=Span(None, deep), into=Span(start, start + wide))
    two = Box(across=Span(Fraction(41), None), into=Span(start, start + wide))
    cuts = {
        "stile": (Cut(name="groove", owner="panel in frame", shape=one),),
        "rail": tuple(Cut(name="groove", owner="panel in frame", shape=s) for s in (one, two)),
    }
    made = sawn(replace(bench, joined=replace(bench.joined, beside=told)), neighbours=cuts)
    assert made.own("width") == 50 - 2 * 9
    assert not made.overlapping
    assert not made.apart


def demo(joint: MortiseAndTenon, stile: str, rail: str, clear: str, *, thick: str = "3/4") -> Sawn:
    wide, deep = rail.split(" by ")
    bench = tee(
        joint,
        stile=Extent(length=inch("20"), width=inch(stile), thickness=inch(thick)),
        rail=Extent(length=inch(clear), width=inch(wide), thickness=inch(deep)),
    )
    return sawn(bench, shop=INCH_SHOP, grid=INCH / 32)


def test_rail_of_a_face_frame_in_inches() -> None:
    # the cupboard's frame: tenon 1/4 by 1 1/4, rail 38 1/2 clear; one end here
    joint = MortiseAndTenon(tenon=said(inch("1 1/4")))
    made = demo(joint, "1 3/4", "1 1/2 by 3/4", "38 1/2")
    assert made.own("thickness") == inch("1/4")
    assert made.sizes["rail.length"] == inch("39 3/4")
    assert not made.overlapping
    assert made.codes(INCH_SHOP) == []


def test_mullion_stub_in_inches() -> None:
    made = demo(MortiseAndTenon(tenon=said(inch("1/2"))), "1 1/2", "1 1/2 by 3/4", "5")
    assert made.sizes["rail.length"] == inch("5 1/2")


def test_kicker_with_a_rear_gap_in_inches() -> None:
    # the cupboard's kicker: 11 11/16 clear; this end adds 1/2 - 1/8
    joint = MortiseAndTenon(tenon=said(inch("1/2")), shoulder_gap=said(inch("1/8")))
    made = demo(joint, "2 1/2", "1 3/4 by 1 1/2", "11 11/16")
    assert made.sizes["rail.length"] == inch("11 11/16") + inch("3/8")
    assert made.own("mortise depth") == inch("9/16")  # room for the gap to close
    assert made.own("thickness") == inch("1/4")  # a third of the rail, which is the thinner
    assert not made.overlapping
    assert not made.apart
    assert made.contacts("shoulder") == []


def test_tenon_with_a_shoulder_gap_is_dry_and_free_to_draw() -> None:
    joint = MortiseAndTenon(tenon=said(24), shoulder_gap=said(3))
    made = sawn(tee(joint, stile=size(300, 55, 22), rail=size(240, 62, 22)))
    what = {"sizes": made.sizes, "choice": made.choice, "parts": made.parts}
    (fixing,) = joint.fixings(made.j, **what)  # type: ignore[arg-type] # a mixed mapping
    assert fixing.free == {Way.LEFT, Way.RIGHT}
    glue = {c.glue for c in joint.contacts(made.j, **what) if c.zone == "cheek"}  # type: ignore[arg-type] # the same
    assert glue == {Glue.DRY}
    assert [g.name for g in joint.gaps(made.j, choice=made.choice)] == [
        "rail in stile.floor gap",
        "rail in stile.shoulder gap",
    ]


def test_glued_tenon_is_fast_in_its_middle() -> None:
    made = sawn(tee(MortiseAndTenon(), stile=size(300, 55, 22), rail=size(240, 62, 22)))
    (fixing,) = made.j.joint.fixings(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    # half of 36 deep, half way up the rail, half way through
    assert fixing.at == mm(55 - 18, 11, 110 + 31)
    assert (fixing.by, fixing.free) == ("glue", frozenset())


def bending(shear: float) -> float:
    """E24's joint: tenon 38 wide, 32 long, its middle 31.75 from the pressed edge. [N m]"""
    joint = MortiseAndTenon(
        tenon=said(32), near_edge_shoulder=said("51/4"), far_edge_shoulder=said("51/4")
    )
    made = sawn(
        tee(joint, stile=size(300, 55, 22), rail=size(240, "127/2", 22)), grid=Fraction(1, 4)
    )
    oak = replace(species("white oak"), shear=shear)
    found = joint.holds(
        made.j, sizes=made.sizes, choice=made.choice, woods={"stile": oak, "rail": oak}
    )
    return found[0].value


@pytest.mark.parametrize(("shear", "hand", "tested"), [(12.27, 315.81, 353), (13.79, 354.94, 358)])
def test_bending_by_hand_and_against_tests(shear: float, hand: float, tested: float) -> None:
    # E24; test means of red and white oak joints from a published series, as the strength
    # sheet of the project quotes them: the model lies below and within 11 %
    assert bending(shear) == pytest.approx(hand, abs=0.01)
    assert 0.89 * tested < bending(shear) < tested


def test_one_mortise_gauge_serves_both_parts() -> None:
    made = sawn(MortiseAndTenon.bench())
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    (gauged,) = [s for s in steps if s.setting is not None]
    assert set(gauged.parts) == {"stile", "rail"}
    assert gauged.setting is not None
    assert gauged.setting.dimensions == (made.j.own("set in"), made.j.own("thickness"))
    assert steps[-1].state_after is Stage.FITTED


@pytest.mark.parametrize("first", [True, False])
def test_mortise_or_tenon_first_is_the_maker_s_habit(first: bool) -> None:  # noqa: FBT001 - a case
    made = sawn(MortiseAndTenon.bench())
    habits = replace(Habits(), mortise_first=first)
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=habits)
    names = [s.name for s in steps if s.name in {"chop mortise", "saw tenon"}]
    assert names == (["chop mortise", "saw tenon"] if first else ["saw tenon", "chop mortise"])


def test_mortise_is_drawn_by_both_its_ends() -> None:
    made = door_corner(MortiseAndTenon(), rail=62)
    drawn = made.j.joint.drawn(made.j, sizes=made.sizes, choice=made.choice)
    assert {d.word: d.value for d in drawn} == {
        "tenon": 36,
        "width": 36,
        "chisel": 8,
        "haunch": 18,
        "haunch length": 8,
        "mortise starts": 18,
        "mortise stops": 54,
    }


def test_groove_open_at_the_end_is_said() -> None:
    open_one = door_corner(MortiseAndTenon(haunched=False), rail=62)
    assert "mortise-and-tenon.open-groove" in open_one.codes()
    assert "mortise-and-tenon.open-groove" not in door_corner(MortiseAndTenon(), rail=62).codes()
