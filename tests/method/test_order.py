"""A legal order: rules derived, habits kept, gauges set seldom, lists before the glue."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.method.orders import DEMO, asked, ordered, place

from scantling.exact import Fraction
from scantling.method.carry_out import carry_out
from scantling.method.gauges import gauge_card, key_of, lettered
from scantling.method.job import Before, Step
from scantling.method.order import Order, order_of_work
from scantling.method.ordering import CycleError, in_order
from scantling.shop.habits import Habits, Sizing
from scantling.shop.operations import Reference, Setting, SetTo, operation
from scantling.shop.tools import Gauges, Tool

LEVEL = Fraction(19, 2)


def test_the_order_keeps_every_pair_and_counts_its_steps() -> None:
    order = ordered()
    assert all(pair.first < pair.then for pair in order.pairs)
    assert [step.number for step in order.steps] == list(range(1, len(order.steps) + 1))


def test_the_same_job_gives_the_same_order() -> None:
    assert order_of_work(asked()) == ordered()


def test_rules_that_contradict_each_other_are_named_in_a_ring() -> None:
    steps = [
        Step(operation=operation(name, "rail"), of="rail") for name in ("true face", "shoot edge")
    ]
    ring = [
        Before(first=0, then=1, because="an edge wants its face"),
        Before(first=1, then=0, because="a face wants its edge"),
    ]
    with pytest.raises(CycleError, match=r"true face: rail waits: a face wants its edge"):
        in_order(steps, ring, sizes={})


def _after(order: Order, later: tuple[str, ...], earlier: tuple[str, ...]) -> bool:
    return place(order.steps, *later) > place(order.steps, *earlier)


STILE = "left door.left stile"
HABITS = {
    "groove after mortise": (
        Habits(groove_after_mortise=True),
        ("plough groove", STILE),
        ("chop mortise", STILE),
    ),
    "drawer groove after dovetails": (
        Habits(drawer_groove_after_dovetails=True),
        ("plough groove", "drawer 1.left side"),
        ("cut tails", "drawer 1.left side"),
    ),
    "pin holes after glue": (
        Habits(pin_holes_before_glue=False),
        ("glue case", "deck"),
        ("dry assemble", "deck"),
    ),
    "length before width": (
        Habits(sizing=(Sizing.LENGTH, Sizing.THICKNESS, Sizing.WIDTH)),
        ("plane to width", "mullion"),
        ("cut to length", "mullion"),
    ),
}


@pytest.mark.parametrize("habit", HABITS)
def test_a_habit_turns_the_order_round_and_it_can_still_be_carried_out(habit: str) -> None:
    habits, later, earlier = HABITS[habit]
    job = replace(asked(), habits=habits)
    order = order_of_work(job)
    assert _after(order, later, earlier)
    assert carry_out(job, order.steps) == ()


def test_without_a_habit_the_groove_guides_the_chisel() -> None:
    assert _after(ordered(), ("chop mortise", STILE), ("plough groove", STILE))


def test_panels_are_caught_by_their_frames_and_drawer_bottoms_slide_in_later() -> None:
    caught = {part for each in ordered().glue_ups for part in each.captured}
    assert caught == {"left door.panel", "right door.panel"}
    assert _after(ordered(), ("fit bottom", "drawer 1.bottom"), ("glue drawer", "drawer 1.front"))


def test_case_frame_drawers_and_doors_are_glued_apart_and_frame_to_case_last() -> None:
    words = [(each.word, each.opens, len(each.members)) for each in ordered().glue_ups]
    assert words == [
        ("glue case", "", 10),
        ("glue frame", "", 6),
        ("glue drawer", "drawer 1", 4),
        ("glue drawer", "drawer 2", 4),
        ("glue frame", "left door", 4),
        ("glue frame", "right door", 4),
    ]
    assert [len(tie.joints) for tie in ordered().ties] == [6]
    glued = [step for step in ordered().steps if step.name == "glue frame to case"]
    assert [len(step.answers) for step in glued] == [6]  # one glue-up, not six


def test_the_list_before_the_glue_says_why() -> None:
    case = next(each for each in ordered().before_glue if each.glue.name == "glue case")
    told = {step.told: because for step, because in case.lines}
    assert (
        told["bore pin holes: left side, right side"] == "there is no room for a brace afterwards"
    )
    assert not any(name.startswith("fit guide") for name in told)
    door = next(each for each in ordered().before_glue if each.name == "left door")
    assert door.lies_dry == ("left door.panel",)
    reasons = {step.told: because for step, because in door.lines}
    assert reasons["prefinish: left door.panel"] == "the part lies caught inside afterwards"


def test_a_night_of_glue_lies_between_gluing_and_levelling() -> None:
    order = ordered()
    glue, flush = place(order.steps, "glue case"), place(order.steps, "flush", "deck")
    assert order.nights[flush] >= order.nights[glue] + 1
    rest, flat = (place(order.steps, name, "top") for name in ("rest panel", "flatten panel"))
    assert order.nights[flat] >= order.nights[rest] + 7


@pytest.mark.parametrize("folder", [DEMO, "pieces/bookcase"])
def test_every_setting_is_held_when_it_is_used_and_no_gauge_holds_two(folder: str) -> None:
    order, shop = ordered(folder), asked(folder).shop
    for step in order.steps:
        if step.operation.setting is not None:
            letter = step.operation.setting.letter
            holding = [h for h in order.gauges if h.first <= step.number <= h.last]
            assert letter in {each.letter for each in holding}
    for one, other in product(order.gauges, repeat=2):
        if one is not other and (one.tool, one.which) == (other.tool, other.which):
            assert one.last < other.first or other.last < one.first
    assert all(each.which <= shop.holding(each.tool) for each in order.gauges)


def test_settings_of_the_demo_are_hardly_ever_made_twice() -> None:
    order = ordered()
    assert len(order.gauges) - order.settings <= 1


def _used(letters: str) -> list[Step]:
    found = []
    for number, letter in enumerate(letters, start=1):
        setting = Setting(to=(SetTo(letter, "line"),), held_by=Tool.CUTTING_GAUGE, letter=letter)
        made = operation("gauge baseline", "rail", setting=setting)
        found.append(Step(operation=made, of="corner", number=number))
    return found


def _fewest(letters: str, many: int) -> int:
    """Fewest settings by trying every choice of what to let go."""
    states = {frozenset[str](): 0}
    for letter in letters:
        following: dict[frozenset[str], int] = {}
        for held, count in states.items():
            if letter in held:
                ways = [(held, count)]
            elif len(held) < many:
                ways = [(held | {letter}, count + 1)]
            else:
                ways = [(held - {gone} | {letter}, count + 1) for gone in held]
            for now, made in ways:
                following[now] = min(made, following.get(now, made))
        states = following
    return min(states.values())


@given(letters=st.text("ABCDE", min_size=1, max_size=14), many=st.integers(1, 3))
def test_no_choice_of_gauges_sets_them_less_often(letters: str, many: int) -> None:
    shop = replace(asked().shop, gauges=Gauges(cutting=many))
    held = gauge_card(_used(letters), shop=shop, sizes={})
    assert len(held) == _fewest(letters, many)


def test_equal_figures_from_different_surfaces_are_different_settings() -> None:
    sizes = {"front": LEVEL, "back": LEVEL, "other": LEVEL}
    to = [
        SetTo("front", "wall", Reference.FACE_SIDE),
        SetTo("back", "wall", Reference.FACE_EDGE),
        SetTo("other", "floor", Reference.FACE_SIDE),
    ]
    made = [
        operation("gauge joint", "rail", setting=Setting(to=(each,), held_by=Tool.MORTISE_GAUGE))
        for each in to
    ]
    keys = [key_of(each, sizes) for each in made]
    assert keys[0] != keys[1]
    assert keys[0] == keys[2]
    steps = lettered([Step(operation=each, of="corner") for each in made], sizes)
    assert [s.operation.setting.letter for s in steps if s.operation.setting] == ["A", "B", "A"]


def test_a_gauge_nobody_owns_is_told_once_with_its_cure() -> None:
    shop = replace(asked().shop, gauges=replace(asked().shop.gauges, mortise=0))
    told = order_of_work(replace(asked(), shop=shop)).findings
    assert [each.code for each in told] == ["method.no-gauge"]
    assert "no mortise gauge stands in the shop" in told[0].says
    assert "borrow" in told[0].cure
    assert ordered().findings == ()
