"""Cautions that a piece calls for, and only those."""

from dataclasses import replace

import pytest
from tests.papers.cupboard import LYING, UPRIGHT, cupboard, part

from scantling.papers._cautions import cautions, weight, weight_reads
from scantling.setting_out import SettingOut
from scantling.units import Unit


def titles(whole: SettingOut) -> list[str]:
    return [caution.title for caution in cautions(whole)]


def told(whole: SettingOut, title: str) -> str:
    (found,) = (c.says for c in cautions(whole) if c.title == title)
    return found


def test_edges_dust_and_rags_are_in_every_packet() -> None:
    stool = replace(cupboard(), parts=(), joints=(), lines=())
    assert titles(stool) == ["Edges", "Dust", "Finish rags", "How far to trust these figures"]


def test_a_tall_case_may_tip_and_a_low_one_is_not_said_to() -> None:
    low = part("board", LYING, wide=("0", "20"), deep=("0", "8"), tall=("0", "23"))
    tall = part("board", UPRIGHT, wide=("0", "20"), deep=("0", "8"), tall=("0", "24"))
    assert "Tipping" not in titles(replace(cupboard(), parts=(low,)))
    assert "Tipping" in titles(replace(cupboard(), parts=(tall,)))


def test_doors_and_drawers_are_told_of_only_where_something_opens() -> None:
    whole = cupboard()
    shut = replace(whole, parts=tuple(replace(p, moves_with="") for p in whole.parts))
    assert "hanging on a door" in told(whole, "Tipping")
    assert "hanging on a door" not in told(shut, "Tipping")


def test_cedar_is_told_of_where_there_is_cedar() -> None:
    board = part("lining", LYING, wide=("0", "9"), deep=("0", "8"), tall=("0", "1"),
                 wood="western red cedar")  # fmt: skip
    assert "Cedar dust" in told(replace(cupboard(), parts=(board,)), "Dust")
    assert "Cedar" not in told(cupboard(), "Dust")


def test_weight_is_volume_times_density() -> None:
    # Wood Handbook, FPL-GTR-190, table 5-3b: white ash, specific gravity 0.60 at 12 %;
    # ch. 4: density = 1000 G (1 + M / 100). One cubic foot at the bench's 7.5 %: 40.3 lb.
    block = part("block", LYING, wide=("0", "12"), deep=("0", "12"), tall=("0", "12"))
    found = weight(replace(cupboard(), parts=(block,)))
    assert found is not None
    assert found == pytest.approx(0.3048**3 * 600 * 1.075, rel=0.002)
    assert weight_reads(found, unit=Unit.INCH) == "40 lb"
    assert weight_reads(found, unit=Unit.MM) == "18 kg"


def test_hardware_weighs_nothing_and_an_unknown_wood_gives_no_figure() -> None:
    whole = cupboard()
    bare = replace(whole, parts=whole.made)
    assert weight(whole) == weight(bare)
    strange = replace(whole.made[0], wood="moonwood")
    assert weight(replace(whole, parts=(*whole.made, strange))) is None
    assert "Lifting" not in titles(replace(whole, parts=(strange,)))


# NIOSH 94-110: 23 kg (51 lb) is the load constant, the most at a perfect lift
@pytest.mark.parametrize(("tall", "too_much"), [("15", False), ("16", True)])
def test_more_than_one_may_lift_is_said(tall: str, *, too_much: bool) -> None:
    block = part("block", LYING, wide=("0", "12"), deep=("0", "12"), tall=("0", tall))
    says = told(replace(cupboard(), parts=(block,)), "Lifting")
    assert ("more than one should lift alone: 51 lb" in says) == too_much
    assert "an estimate" in says


def test_doors_drawers_and_panels_are_told_of_only_where_there_are_any() -> None:
    plain = part("board", LYING, wide=("0", "20"), deep=("0", "8"), tall=("0", "23"))
    shelved = replace(cupboard(), parts=(replace(plain, family="loose shelf"),))
    doored = replace(cupboard(), parts=(replace(plain, family="door panel"),))
    assert "Take loose shelves out first." in told(shelved, "Lifting")
    assert "Take doors out first." in told(doored, "Lifting")
    assert "panels finished" not in told(shelved, "Finish rags")
    assert "panels finished before the glue" in told(doored, "Finish rags")
