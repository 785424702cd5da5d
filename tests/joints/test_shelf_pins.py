"""Shelf pins. Worked figures: E18 of a set of joints worked by hand for this project."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from math import cos, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.joints.sawn import SHOP, Sawn, claimed_twice, moved, said, sawn

from scantling.joints._joint import Beside, Motion, State
from scantling.joints._pin_bench import pins_bench
from scantling.joints._pin_faults import tilted_height
from scantling.joints.shelf_pins import ShelfPins
from scantling.parts import Bore, Round, Span, Surface, Way
from scantling.parts.solid import finished, placed
from scantling.shop.habits import Habits
from scantling.shop.operations import State as Worked
from scantling.shop.read import default_shop
from scantling.shop.tools import Shop
from scantling.sizes.linear import exactly
from scantling.solids.contact import contact_area, patch_area
from scantling.solids.store import Store
from scantling.timber.species import species
from scantling.units import INCH

E18 = ShelfPins(
    size=said(6), lowest=said(110), pitch=said(32), holes=7, inset=said(45), bore=said(11)
)
NAME = "loose shelves"


def made(
    joint: ShelfPins = E18,
    *,
    stated: Mapping[str, int | str] | None = None,
    beside: tuple[Beside, ...] = (),
    shop: Shop = SHOP,
) -> Sawn:
    return sawn(pins_bench(joint, name=NAME, beside=beside), shop=shop, stated=stated or {})


def figures(found: Sawn) -> Mapping[str, Fraction]:
    drawn = found.j.joint.drawn(found.j, sizes=found.sizes, choice=found.choice)
    return {d.word: d.value for d in drawn}


def told(what: str, *, role: str, start: int = 0, size: int | str = 0, depth: int = 0) -> Beside:
    return Beside(
        what=what,
        owner="the frame",
        role=role,
        axis=0,
        start=exactly(start),
        size=exactly(Fraction(size)),
        depth=exactly(depth),
    )


# --- rows


def test_row_and_shelf_of_the_worked_case() -> None:
    found = made()
    assert found.sizes["lower shelf.length"] == 762
    drawn = figures(found)
    assert drawn["first hole"] == 200  # 90 to the floor, 110 above it
    assert drawn["last hole"] == 392


def test_rows_stand_in_from_the_edges_of_the_shelf_not_of_the_side() -> None:
    drawn = figures(made())
    assert drawn["front row"] == 6 + 45  # the shelf starts 6 behind the sides' edges
    assert drawn["back row"] == 6 + 260 - 45


def test_both_sides_are_bored_alike_from_the_floor_and_the_front() -> None:
    found = made()
    left, right = (found.parts[f"{side} side"].cuts for side in ("left", "right"))
    assert [cut.shape for cut in left] == [cut.shape for cut in right]
    assert len(left) == 2 * 7
    middles = set()
    for cut in left:
        assert isinstance(cut.shape, Bore)
        assert cut.shape.span == Span(None, Fraction(11))
        assert cut.shape.radius == 3
        middles.add(cut.shape.centre)
    rows = (Fraction(51), Fraction(221))
    assert middles == {(Fraction(200 + 32 * i), row) for i in range(7) for row in rows}


def test_a_floor_further_up_lifts_the_whole_row() -> None:
    bench = pins_bench(E18, name=NAME)
    low = figures(sawn(bench))
    (floor,) = bench.joined.beside
    higher = replace(bench.joined, beside=(replace(floor, start=exactly(97)),))
    lifted = sawn(replace(bench, joined=higher))
    assert figures(lifted)["first hole"] - low["first hole"] == 7
    for shelf in ("lower shelf", "upper shelf"):
        assert lifted.own(f"{shelf} rests") - sawn(bench).own(f"{shelf} rests") == 7


# --- shelves


def test_shelves_are_spread_over_the_row_and_rest_on_their_flats() -> None:
    found = made()
    drawn = figures(found)
    assert [drawn["hole of lower shelf"], drawn["hole of upper shelf"]] == [2, 6]
    # middles 232 and 360, flats a quarter of 6 above
    assert found.own("lower shelf rests") == Fraction("233.5")
    assert found.own("upper shelf rests") == Fraction("361.5")
    for shelf in ("lower shelf", "upper shelf"):
        part = found.parts[shelf]
        underside = part.placement.at[2] - part.extent.thickness
        assert underside == found.own(f"{shelf} rests")
        store = Store()
        low, _ = placed(part, finished(part, store=store)).solid.box
        assert low == (0, 0, 0)


def test_plain_pegs_carry_at_their_top() -> None:
    plain = made(replace(E18, rest=said(3)))
    assert plain.own("lower shelf rests") == 235
    assert all(not pin.cuts for pin in plain.loose)
    assert plain.contacts("flat") == []  # a line only
    assert len(plain.contacts("floor")) == 8
    assert plain.overlapping == []


def test_one_shelf_lies_in_the_middle_and_a_full_row_takes_every_hole() -> None:
    bench = pins_bench(replace(E18, holes=2), name=NAME)
    assert [v for w, v in sawn(bench).choice.values if w.startswith("hole of")] == [0, 1]
    alone = {**bench.joined.seats, "enters": bench.joined.seats["enters"][:1]}
    one = replace(bench.joined, joint=E18, seats=alone)
    choice = E18.choose(one, sizes=None, shop=SHOP, habits=Habits(), woods={}, strains={})
    assert choice["hole of lower shelf"] == 3


# --- pins


def test_eight_pins_fill_their_holes_and_stand_out() -> None:
    found = made()
    assert len(found.loose) == 8
    assert len({pin.name for pin in found.loose}) == 8
    for pin in found.loose:
        assert pin.hardware
        assert isinstance(pin.blank, Round)
        assert pin.extent.length == 11 + 10
        side = found.parts["left side" if pin.name.endswith("left side") else "right side"]
        inside = side.placement.at[0]
        towards = -1 if pin.name.endswith("left side") else 1
        assert pin.placement.at[0] == inside + 11 * towards
        assert pin.placement.along is (Way.LEFT if towards > 0 else Way.RIGHT)
    assert found.overlapping == []


def test_a_pin_turned_to_the_other_side_still_fits() -> None:
    bench = pins_bench(E18, name=NAME)
    # sides counted from their far ends and back edges, as a form might
    flipped = []
    for seat in bench.joined.row("receives"):
        end = replace(seat.corner, end=Surface.FAR_END, edge=Surface.BACK_EDGE)
        flipped.append(replace(seat, corner=end))
    seats = {**bench.joined.seats, "receives": tuple(flipped)}
    found = sawn(replace(bench, joined=replace(bench.joined, seats=seats)))
    sides = [found.parts["left side"], found.parts["right side"]]
    assert claimed_twice([*sides, *found.loose]) == []


def test_patches_touch() -> None:
    found = made()
    store = Store()
    stood = {n: placed(p, finished(p, store=store)) for n, p in found.everything.items()}
    contacts = found.j.joint.contacts(
        found.j, sizes=found.sizes, choice=found.choice, parts=found.parts
    )
    assert [c.zone for c in contacts].count("flat") == 8
    for contact in contacts:
        one, other = (stood[name] for name in contact.between)
        touching = contact_area(one, other, patch=contact.patch, store=store)
        assert touching == pytest.approx(patch_area(contact.patch), rel=1e-3), contact


def test_flat_under_the_shelf_is_a_chord_of_the_pin() -> None:
    # radius 3, height 1.5: chord 2 * 2.598, less the polygon's share; 9 of 10 lie under the shelf
    found = made()
    areas = [patch_area(patch) for patch in found.contacts("flat")]
    chord = 2 * (3**2 - 1.5**2) ** 0.5
    assert areas == pytest.approx([chord * 9] * 8, rel=0.01)
    assert max(areas) <= chord * 9


def test_shelf_is_held_from_below_and_pins_by_their_holes() -> None:
    found = made()
    fixings = found.j.joint.fixings(
        found.j, sizes=found.sizes, choice=found.choice, parts=found.parts
    )
    under = [f for f in fixings if f.by == "pin"]
    assert len(under) == 8
    assert all(f.holds == {Way.DOWN} for f in under)
    assert {f.at[2] for f in under} == {Fraction("233.5"), Fraction("361.5")}
    # midway between the shelf's end, 1 off the side, and the pin's, 10 off it
    assert {f.at[0] for f in under} == {19 + Fraction("5.5"), 19 + 764 - Fraction("5.5")}
    holes = {f.between[0]: f for f in fixings if f.by == "hole"}
    assert holes["front pin of lower shelf in left side"].free == {Way.RIGHT}
    assert holes["back pin of lower shelf in right side"].free == {Way.LEFT}


# --- ways in and out


def test_a_shelf_comes_up_and_forward() -> None:
    found = made()
    assert found.leaves("enters") == {Way.UP, Way.FRONT}
    assert found.leaves("enters") == found.leaves("enters", State.LOCKED)
    shelf = found.everything["lower shelf"]
    rest = [p for n, p in found.everything.items() if n != "lower shelf"]
    for way in Way:
        shifted = moved(shelf, {way.axis: way.sign * Fraction(1, 2)})
        hit = claimed_twice([*rest, shifted])
        assert bool(hit) == (way is Way.DOWN), way  # the ends have 1 mm of room


def test_a_shelf_tilts_about_the_lower_edge_of_either_end() -> None:
    found = made()
    moves = found.j.joint.moves(found.j, state=State.OPEN, sizes=found.sizes, parts=found.parts)
    tilts = [m for m in moves if m.motion is Motion.TILT]
    assert all(list(m.way) == [0, 1, 0] for m in tilts)
    # ends of the shelves stand 1 off the sides, which are 19 and 21 thick and 764 apart
    assert [list(m.about or ()) for m in tilts] == [
        [end, 6, Fraction(up)] for up in ("233.5", "361.5") for end in (20, 782)
    ]


@given(
    length=st.integers(300, 1200),
    thickness=st.integers(12, 40),
    less=st.integers(1, 200),
)
def test_tilted_as_told_a_board_just_passes(length: int, thickness: int, less: int) -> None:
    opening = length - less
    rise = float(
        tilted_height(
            length=Fraction(length), thickness=Fraction(thickness), opening=Fraction(opening)
        )
    )
    # the flattest of all angles, tried one after the other, at which it is narrow enough
    spans = (
        (length * cos(radians(a / 50)) + thickness * sin(radians(a / 50)), a / 50)
        for a in range(50 * 90)
    )
    angle = next(a for span, a in spans if span <= opening)
    tried = length * sin(radians(angle)) + thickness * cos(radians(angle))
    assert tried == pytest.approx(rise, abs=length * radians(1 / 50) * 1.1)
    assert rise <= tried + 1e-5


def test_a_board_no_longer_than_the_opening_goes_in_flat() -> None:
    for length, needed in ((700, 20), (701, None)):
        rise = tilted_height(length=Fraction(length), thickness=Fraction(20), opening=Fraction(700))
        assert (rise == needed) == (needed is not None)


# --- seasons


def test_side_that_grows_and_shelf_that_shrinks_part_the_back_pins_from_the_edge() -> None:
    found = made()
    lower, upper = found.j.joint.gaps(found.j, choice=found.choice)
    assert lower.at_bench.at(found.sizes) == 45 - 3
    assert upper.at_bench.at(found.sizes) == 45 - 3 - 4  # 4 narrower, on the same rows
    widths = {part: width.at(found.sizes) for part, width in upper.moving}
    assert widths == {"left side": 260 - 90, "upper shelf": -256}


# --- choices


def test_pins_are_of_a_bit_owned() -> None:
    free = ShelfPins()
    assert made(free).own("size") == 6  # the only bit within reach; 5 would be usual
    fives = replace(SHOP, bits=(Fraction(5), Fraction(6)))
    assert made(free, shop=fives).own("size") == 5
    inch = made(free, shop=default_shop()).choice
    assert inch["size"] == INCH / 4
    assert inch["pitch"] == INCH


def test_holes_are_less_deep_in_a_thin_side() -> None:
    free = replace(E18, bore=None)
    assert made(free).own("bore") == 10
    thin = made(free, stated={"right side.thickness": "13.5"})
    assert thin.own("bore") == 8  # five less, down to a whole one


# --- faults, each with its clean twin


@pytest.mark.parametrize(
    ("word", "guilty", "clean"),
    [
        ("shallow", replace(E18, bore=said("8.5")), replace(E18, bore=said(9))),
        ("comes-through", replace(E18, bore=said("16.5")), replace(E18, bore=said(16))),
        ("off-the-side", replace(E18, holes=14), replace(E18, holes=13)),
        ("near-edge", replace(E18, inset=said("15.5")), replace(E18, inset=said(16))),
        ("near-edge", replace(E18, inset=said("124.5")), replace(E18, inset=said(124))),
        ("shelves-meet", replace(E18, pitch=said(5)), replace(E18, pitch=said(6))),
        ("drops", replace(E18, stand=said("5.5")), replace(E18, stand=said(6))),
        ("few-holes", replace(E18, holes=1), replace(E18, holes=2)),
        ("no-bit", replace(E18, size=said(7)), replace(E18, size=said(3))),
    ],
)
def test_a_fault_is_said_and_its_twin_is_clean(
    word: str, guilty: ShelfPins, clean: ShelfPins
) -> None:
    assert f"shelf-pins.{word}" in made(guilty).codes()
    assert f"shelf-pins.{word}" not in made(clean).codes()


def test_the_worked_case_is_clean() -> None:
    assert made().codes() == []


def test_a_hole_in_a_housing_is_refused() -> None:
    # holes of 6 at 232 and 264: free from 235 to 261
    for start, size, codes in (
        (235, 26, []),
        (234, 26, ["shelf-pins.in-a-joint"]),
        (236, 26, ["shelf-pins.in-a-joint"]),
    ):
        socket = told("housing", role="receives", start=start, size=size)
        assert made(beside=(socket,)).codes() == codes


def test_a_shelf_that_finds_no_way_past_the_frame_is_refused() -> None:
    # 762 long, 22 thick, through 700: about 21.7 to 25.6 degrees
    needed = tilted_height(length=Fraction(762), thickness=Fraction(22), opening=Fraction(700))
    for tall, codes in ((int(needed), ["shelf-pins.no-way-in"] * 2), (int(needed) + 1, [])):
        passage = told("passage", role="enters", size=700, depth=tall)
        found = made(beside=(passage,), stated={"upper shelf.thickness": 22})
        assert found.codes() == codes


def test_the_demo_shelf_goes_in_tilted() -> None:
    # 40 3/8 by 1 through 38 1/2: 19.0 degrees, 14.1 in of height; the door opening has 25
    rise = tilted_height(
        length=INCH * Fraction(323, 8), thickness=INCH, opening=INCH * Fraction(77, 2)
    )
    assert float(rise / INCH) == pytest.approx(14.1, abs=0.05)


# --- work, strength


def test_both_sides_are_bored_at_one_setting_when_the_maker_likes() -> None:
    found = made()
    for habits, state in (
        (Habits(), Worked.MARKED),
        (Habits(pin_holes_before_glue=False), Worked.FLUSHED),
    ):
        done = found.j.joint.work(found.j, choice=found.choice, shop=SHOP, habits=habits)
        mark, bore, *fit = done
        assert bore.name == "bore pin holes"
        assert mark.parts == bore.parts == ("left side", "right side")
        assert bore.minutes_assumed == 28  # 4 rows of 7, a minute each
        assert bore.state_before is state
        held = [e.setting.dimensions[0].rpartition(".")[2] for e in (mark, bore) if e.setting]
        assert held == ["first hole", "bore"]
        assert [each.parts for each in fit] == [("lower shelf",), ("upper shelf",)]


def test_load_is_what_two_pins_press() -> None:
    found = made()
    woods = {
        "left side": species("white ash"),
        "right side": species("white ash"),
        "lower shelf": species("yellow-poplar"),
        "upper shelf": species("white ash"),
    }
    lower, upper = found.j.joint.holds(found.j, sizes=found.sizes, choice=found.choice, woods=woods)
    poplar, ash = (species(w).compression_across for w in ("yellow-poplar", "white ash"))
    assert poplar is not None
    assert ash is not None
    chord = 2 * (3**2 - 1.5**2) ** 0.5
    assert lower.value == pytest.approx(2 * poplar * chord * 10, rel=0.01)
    assert upper.value == pytest.approx(2 * ash * chord * 10, rel=0.01)
    assert lower.weakest == "shelf over its pins"
    shallow = made(replace(E18, bore=said(5), rest=said(0)))
    (first, _) = shallow.j.joint.holds(
        shallow.j,
        sizes=shallow.sizes,
        choice=shallow.choice,
        woods={**woods, "lower shelf": woods["left side"]},
    )
    assert first.weakest == "holes"
    assert first.value == pytest.approx(2 * ash * 6 * 5)
