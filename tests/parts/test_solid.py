"""Solids of parts, against figures worked by hand."""

import math
from dataclasses import replace
from fractions import Fraction

import pytest

from scantling.errors import OutOfRangeError
from scantling.parts import Bore, Box, Cut, Extent, Made, Part, Placement, Round, Span, Way
from scantling.parts.solid import as_cut, block, claim, finished, placed
from scantling.solids.pairs import Overlap, overlaps
from scantling.solids.store import Store

F = Fraction
STANDING = Placement(along=Way.UP, across=Way.BACK, into=Way.LEFT, at=(F(19), F(20), F(100)))
GROOVE = Cut(
    name="groove",
    owner="panel in stile",
    shape=Box(across=Span(None, F(8)), into=Span(F(7), F(15))),
)
MORTISE = Cut(
    name="mortise",
    owner="rail in stile",
    shape=Box(along=Span(F(24), F(70)), across=Span(None, F(38)), into=Span(F(7), F(15))),
)
GAIN = Cut(
    name="gain",
    owner="hinge",
    shape=Box(along=Span(F(78), F(128)), across=Span(F(39), None), into=Span(None, F(3))),
    made=Made.AFTER_GLUE,
)
STILE = Part(
    name="left stile",
    family="stile",
    extent=Extent(length=F(612), width=F(55), thickness=F(22)),
    wood="cherry",
    cut_of_wood="quarter",
    placement=STANDING,
    cuts=(GROOVE, MORTISE, GAIN),
    horns=(F(20), F(30)),
)


def test_a_finished_stile_is_what_its_cuts_leave() -> None:
    # blank less groove, less mortise beyond the groove, less the hinge's gain
    wood = 612 * 55 * 22 - 612 * 8 * 8 - 46 * 30 * 8 - 50 * 16 * 3
    solid = finished(STILE, store=Store())
    assert solid.volume == pytest.approx(wood, rel=1e-14)
    assert solid.pieces == 1
    assert solid.box == ((0, 0, 0), (612, 55, 22))


def test_as_cut_the_horns_are_on_the_groove_runs_through_them_and_the_gain_is_not_cut() -> None:
    wood = 662 * 55 * 22 - 662 * 8 * 8 - 46 * 30 * 8
    solid = as_cut(STILE, store=Store())
    assert solid.volume == pytest.approx(wood, rel=1e-14)
    assert solid.pieces == 1
    assert solid.box == ((-20, 0, 0), (642, 55, 22))


def test_the_solid_stands_where_the_part_does() -> None:
    stood = placed(STILE, finished(STILE, store=Store()))
    assert stood.name == "left stile"
    assert stood.turn.of((F(612), F(55), F(22))) == (F(-3), F(75), F(712))


def test_only_a_changed_part_is_cut_again() -> None:
    store = Store()
    other = replace(STILE, name="right stile", placement=replace(STANDING, into=Way.RIGHT))
    solid = finished(STILE, store=store)
    assert finished(other, store=store) is solid
    renamed = tuple(replace(each, owner=f"right {each.owner}") for each in STILE.cuts)
    assert finished(replace(other, cuts=renamed), store=store) is solid
    assert store.made == 1
    longer = replace(STILE, extent=Extent(length=F(613), width=F(55), thickness=F(22)))
    assert finished(longer, store=store) is not solid
    assert finished(replace(STILE, blank=Round(), extent=_square()), store=store) is not solid
    assert store.made == 3


def _square() -> Extent:
    return Extent(length=F(612), width=F(55), thickness=F(55))


def test_a_cut_without_a_shape_takes_nothing() -> None:
    lost = replace(GAIN, shape=Box(into=Span(None, F(-1))))
    assert claim(lost, extent=STILE.extent) is None
    part = replace(STILE, cuts=(GROOVE, lost))
    assert finished(part, store=Store()).volume == pytest.approx(612 * (55 * 22 - 64))


def pin(diameter: F) -> Part:
    return Part(
        name="pin",
        family="pin",
        extent=Extent(length=F(20), width=diameter, thickness=diameter),
        wood="brass",
        cut_of_wood="flat",
        placement=replace(STANDING, at=(F(0), F(0), F(0))),
        blank=Round(),
        hardware=True,
    )


def overlap_in_a_hole_of_5(diameter: F) -> list[Overlap]:
    """A pin stuck 11 deep into a 5 mm hole of the stile, 9 of it outside."""
    store = Store()
    shape = Bore(axis=2, centre=(F(232), F(37)), radius=F(5, 2), span=Span(None, F(11)))
    side = replace(STILE, cuts=(Cut(name="hole", owner="pins", shape=shape),))
    half = diameter / 2
    at = side.placement.to_piece((F(232) - half, F(37) - half, F(11)))
    stood = replace(
        pin(diameter), placement=Placement(along=Way.RIGHT, across=Way.BACK, into=Way.UP, at=at)
    )
    both = [placed(part, finished(part, store=store)) for part in (side, stood)]
    return overlaps(both, store=store)


def test_a_pin_in_a_hole_of_its_size_touches_and_does_not_overlap() -> None:
    assert overlap_in_a_hole_of_5(F(5)) == []


def test_a_thick_pin_presses_into_its_hole() -> None:
    (press,) = overlap_in_a_hole_of_5(F(51, 10))
    # ring between the circles, 11 deep: both are drawn as polygons, so only nearly
    ring = math.pi * (2.55**2 - 2.5**2) * 11
    assert 0 < press.volume < ring
    assert press.between == ("left stile", "pin")


def test_an_oval_round_blank_is_refused() -> None:
    part = replace(pin(F(5)), extent=Extent(length=F(20), width=F(5), thickness=F(6)))
    with pytest.raises(OutOfRangeError, match="round but 5 by 6 mm"):
        block(part)
