"""Half lap. Worked figures: E6 of a set of joints worked by hand for this project."""

import math
from fractions import Fraction

import pytest
from tests.joints.sawn import SHOP, Sawn, area, said, sawn

from scantling.joints._frame import frame_bench
from scantling.joints._joint import Bench, Glue, State
from scantling.joints.half_lap import MEAN_RADIUS, HalfLap
from scantling.parts import Box, Extent, Span, Way
from scantling.shop.habits import Habits
from scantling.timber.species import species


def size(length: int, width: int, thickness: int) -> Extent:
    return Extent(length=Fraction(length), width=Fraction(width), thickness=Fraction(thickness))


def tee(joint: HalfLap, *, up: int | None = 110, stile: int = 45, rail: int = 60) -> Bench:
    return frame_bench(
        joint,
        name="rail on stile",
        stile=size(300, stile, 20),
        rail=size(240, rail, 22),
        up=None if up is None else Fraction(up),
    )


def test_corner_of_unequal_stock_keeps_ten_and_twelve() -> None:
    # E6: 20 and 22 thick, depth 10 from both face sides, lap 45 by 60
    corner = sawn(HalfLap.bench())
    left = {
        d.word: d.value
        for d in corner.j.joint.drawn(corner.j, sizes=corner.sizes, choice=corner.choice)
    }
    assert left == {"lap depth": 10, "left in stile": 10, "left in rail": 12}
    assert area(corner.contacts("lap")[0]) == 2700
    assert corner.volume("stile") == pytest.approx(300 * 45 * 20 - 60 * 45 * 10)
    assert corner.volume("rail") == pytest.approx((240 + 45) * 60 * 22 - 60 * 45 * 10)
    assert not corner.overlapping


def test_faces_come_flush_and_backs_differ() -> None:
    corner = sawn(HalfLap.bench())
    fronts = {part.placement.at[1] for part in corner.parts.values()}
    assert fronts == {0}
    assert len({part.extent.thickness for part in corner.parts.values()}) == 2


def test_depth_is_half_of_the_thinner_part_whichever_it_is() -> None:
    thick_stile = frame_bench(
        HalfLap(), name="lap", stile=size(300, 45, 26), rail=size(240, 60, 18)
    )
    assert sawn(thick_stile).own("depth") == 9


def test_wood_shows_in_front_of_the_part_that_lies_over() -> None:
    for over, stile_cut in (("receives", (10, None)), ("enters", (None, 10))):
        joint = HalfLap(over="enters") if over == "enters" else HalfLap()
        made = sawn(tee(joint))
        shape = made.parts["stile"].cuts[0].shape
        assert isinstance(shape, Box)
        assert shape.into == Span(*stile_cut)
        assert not made.overlapping


@pytest.mark.parametrize("over", ["receives", "enters"])
@pytest.mark.parametrize(
    ("up", "lap"), [(None, None), (110, None), (110, 30)], ids=["corner", "tee", "stopped"]
)
def test_it_leaves_just_where_it_says(over: str, up: int | None, lap: int | None) -> None:
    stop = None if lap is None else said(lap)
    joint = HalfLap(over="enters", lap=stop) if over == "enters" else HalfLap(lap=stop)
    made = sawn(tee(joint, up=up))
    assert made.leaves("enters") == made.free("rail")
    assert not made.apart
    assert not made.leaves("enters", State.LOCKED)


def test_corner_leaves_by_back_side_and_end() -> None:
    # table of leaving directions: half lap corner +z, +x_B, -x_A
    assert sawn(HalfLap.bench()).leaves("enters") == {Way.BACK, Way.RIGHT, Way.UP}
    assert sawn(tee(HalfLap())).leaves("enters") == {Way.BACK, Way.RIGHT}


def test_stopped_lap_leaves_wood_beyond_it() -> None:
    made = sawn(tee(HalfLap(lap=said(30))))
    assert made.own("entry") == 30
    assert made.sizes["rail.length"] == 240 + 30
    assert made.volume("stile") == pytest.approx(300 * 45 * 20 - 60 * 30 * 10)
    assert area(made.contacts("end")[0]) == 60 * 10  # stile and rail both stand 10 to 20 deep
    assert not made.overlapping


def test_patches_add_up_to_the_surface_of_the_notch() -> None:
    made = sawn(tee(HalfLap(lap=said(30))))
    found = {zone: [area(p) for p in made.contacts(zone)] for zone in ("lap", "wall", "shoulder")}
    assert found == {"lap": [60 * 30], "wall": [30 * 10, 30 * 10], "shoulder": [60 * 10]}


def test_only_the_lap_itself_is_glue_that_holds() -> None:
    made = sawn(tee(HalfLap()))
    contacts = made.j.joint.contacts(made.j, sizes=made.sizes, choice=made.choice, parts=made.parts)
    assert {c.zone for c in contacts if c.glue is Glue.CROSSING} == {"lap"}
    assert {c.glue for c in contacts if c.zone != "lap"} == {Glue.END_GRAIN}


def test_part_set_back_still_meets_on_one_plane() -> None:
    made = sawn(
        frame_bench(
            HalfLap(),
            name="lap",
            stile=size(300, 45, 24),
            rail=size(240, 60, 20),
            up=Fraction(90),
            set_back=Fraction(2),
        )
    )
    assert not made.overlapping
    (lap,) = made.contacts("lap")
    assert {p[1] for p in lap} == {10}  # behind the stile's face, so 8 into the rail
    # both stand 2 to 22 behind the stile's face: 8 before the lap, 12 behind it
    assert [area(p) for p in made.contacts("shoulder")] == [60 * 8]
    assert [area(p) for p in made.contacts("wall")] == [45 * 12] * 2
    assert not made.apart
    drawn = made.j.joint.drawn(made.j, sizes=made.sizes, choice=made.choice)
    assert {d.word: d.value for d in drawn if "left" in d.word} == {
        "left in stile": 10,
        "left in rail": 12,
    }
    assert made.volume("rail") == pytest.approx(285 * 60 * 20 - 45 * 60 * 8)


def test_mean_radius_is_that_of_a_square() -> None:
    # mean distance from the middle of a unit square: (sqrt 2 + ln(1 + sqrt 2)) / 6 = 0.38260
    assert pytest.approx((math.sqrt(2) + math.log(1 + math.sqrt(2))) / 6, abs=0.005) == MEAN_RADIUS


def held(made: Sawn) -> float:
    woods = {"stile": species("white ash"), "rail": species("yellow-poplar")}
    (found,) = made.j.joint.holds(made.j, sizes=made.sizes, choice=made.choice, woods=woods)
    return found.value


def test_twist_is_held_by_a_third_of_the_weaker_shear() -> None:
    # by hand for a 60 by 60 lap in yellow-poplar, shear 8.2 MPa (species table):
    # 8.2 / 3 * 3600 * 0.38 * 60 / 1000 = 224.4 N m
    assert held(sawn(tee(HalfLap(), stile=60))) == pytest.approx(224.4, abs=0.3)


def test_one_gauge_setting_serves_both_halves() -> None:
    made = sawn(HalfLap.bench())
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    (gauged,) = [s for s in steps if s.setting is not None]
    assert set(gauged.parts) == {"stile", "rail"}
    assert gauged.setting is not None
    assert gauged.setting.dimensions == (made.j.own("depth"),)


def test_shoulders_come_from_the_mate() -> None:
    made = sawn(HalfLap.bench())
    steps = made.j.joint.work(made.j, choice=made.choice, shop=SHOP, habits=Habits())
    assert [s.parts for s in steps if s.name == "transfer" and s.mate_first] == [
        ("stile",),
        ("rail",),
    ]


def test_half_too_thin_is_said() -> None:
    assert "half-lap.thin" in sawn(tee(HalfLap(deep=said("9/2")))).codes()
    assert "half-lap.thin" not in sawn(tee(HalfLap(deep=said(5)))).codes()


def test_lap_too_short_is_said() -> None:
    assert sawn(tee(HalfLap(lap=said(22)))).codes() == ["half-lap.short"]
    assert sawn(tee(HalfLap(lap=said("45/2")))).codes() == []


def test_lap_too_wide_to_glue_across_is_said() -> None:
    assert sawn(tee(HalfLap(), stile=76, rail=80)).codes() == ["half-lap.wide-glue"]
    assert sawn(tee(HalfLap(), stile=75, rail=80)).codes() == []
