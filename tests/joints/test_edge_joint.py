"""Edge joint: strips make up their panel, clamps, joint lines, and limits."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import SHOP, built, woods

from scantling.joints._joint import Glue, State
from scantling.joints.edge_joint import EdgeJoint
from scantling.shop.habits import Habits
from scantling.sizes.linear import exactly
from scantling.solids.contact import patch_area

STRIPS = ("top.strip a", "top.strip b", "top.strip c")


def test_strips_make_up_the_panel_and_share_what_is_left() -> None:
    found = built(EdgeJoint.bench())  # 310 less a lip of 90
    assert [found.sizes[f"{strip}.width"] for strip in STRIPS] == [90, 110, 110]


def test_a_measured_strip_leaves_the_rest_to_the_others() -> None:
    found = built(EdgeJoint.bench(), measured={"top.strip c.width": Fraction("104.3")})
    assert found.sizes["top.strip b.width"] == 310 - 90 - Fraction("104.3")


def test_joint_lines_are_counted_from_the_face_edge() -> None:
    found = built(EdgeJoint.bench())
    j = found.bench.joined
    lines = j.joint.drawn(j, sizes=found.sizes, choice=found.choice)
    assert [(line.word, int(line.value)) for line in lines] == [("line 1", 90), ("line 2", 200)]


def test_each_edge_is_long_grain_over_its_whole_length() -> None:
    found = built(EdgeJoint.bench(), stated={"top.strip b.length": Fraction(380)})
    assert [c.zone for c in found.contacts] == ["edge 1", "edge 2"]
    for contact in found.contacts:
        assert contact.glue is Glue.LONG_GRAIN
        assert patch_area(contact.patch) == pytest.approx(380 * 19)


def test_strips_set_apart_do_not_touch() -> None:
    bench = EdgeJoint.bench()
    one, two, three = bench.parts
    apart = replace(three, at=(three.at[0], three.at[1] + 1, three.at[2]))
    found = built(replace(bench, parts=(one, two, apart)))
    assert [c.between for c in found.contacts] == [STRIPS[:2]]


def test_it_holds_as_much_as_the_weaker_wood() -> None:
    bench = EdgeJoint.bench()
    one, two, three = bench.parts
    mixed = replace(bench, parts=(one, replace(two, wood="yellow-poplar"), three))
    values = []
    for each in (bench, mixed):
        found = built(each)
        j = found.bench.joined
        (estimate,) = j.joint.holds(j, sizes=found.sizes, choice=found.choice, woods=woods(each))
        values.append(estimate.value / (400 * 19))
    # Wood Handbook table 5-3b: shear of white ash 13.2, of yellow-poplar 8.2 MPa
    assert values == pytest.approx([13.2, 8.2], rel=0.01)


def test_glued_it_leaves_no_way() -> None:
    found = built(EdgeJoint.bench())
    j = found.bench.joined
    ways = {
        state: len(j.joint.moves(j, state=state, sizes=found.sizes, parts=found.parts))
        for state in State
    }
    assert ways == {State.OPEN: 3, State.CLOSED: 0, State.LOCKED: 0}


def test_edges_are_planed_in_pairs_and_the_panel_rests() -> None:
    found = built(EdgeJoint.bench())
    j = found.bench.joined
    done = j.joint.work(j, choice=found.choice, shop=SHOP, habits=Habits())
    assert [each.name for each in done] == [
        "order strips",
        "mate edges",
        "mate edges",
        "glue panel",
        "rest panel",
        "flatten panel",
    ]
    assert [each.parts for each in done if each.name == "mate edges"] == [STRIPS[:2], STRIPS[1:]]


@pytest.mark.parametrize(("length", "clamps"), [(400, 3), (500, 3), (501, 4), (1100, 6)])
def test_clamps_stand_no_more_than_250_apart(length: int, clamps: int) -> None:
    found = built(EdgeJoint.bench(), stated={f"{s}.length": Fraction(length) for s in STRIPS})
    assert found.choice.count("clamps") == clamps


def test_too_few_clamps_are_told() -> None:
    # 16 bar clamps of the shop reach over 610 mm and more, counted from its list
    told = []
    for length in (3000, 3760):
        bench = EdgeJoint.bench()
        found = built(bench, stated={f"{s}.length": Fraction(length) for s in STRIPS})
        j = found.bench.joined
        codes = j.joint.faults(
            j, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
        )
        told.append([code.code for code in codes])
        owned = SHOP.clamps_reaching(Fraction(310))
        assert (found.choice.count("clamps") > owned) is bool(told[-1])
    assert [] in told


@pytest.mark.parametrize(("lip", "narrow"), [("49", True), ("50", False)])
def test_a_strip_under_50_is_told(lip: str, *, narrow: bool) -> None:
    found = built(EdgeJoint.bench(), stated={"top.strip a.width": Fraction(lip)})
    assert ("edge-joint.narrow-strip" in found.breaches) is narrow


def test_the_panel_is_as_wide_as_the_form_says() -> None:
    bench = EdgeJoint.bench()
    (panel,) = bench.joined.beside
    wider = replace(bench.joined, beside=(replace(panel, size=exactly(400)),))
    found = built(replace(bench, joined=wider))
    assert sum(found.sizes[f"{strip}.width"] for strip in STRIPS) == 400
