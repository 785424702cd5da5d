"""Volumes of parts against Open CASCADE, a kernel that shares no code with ours."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from importlib import import_module

import pytest
from tests.house.tree import ROOT
from tests.joints.on_the_bench import SHOP, built
from tests.proofs.test_rebuilt import EVERY

import scantling.joints
from scantling import read, set_out
from scantling.joints._joint import Joint
from scantling.parts import Box, Cut, Extent, Part, Point, Span
from scantling.parts.cut import OVER
from scantling.parts.solid import finished
from scantling.roster import members
from scantling.shop.habits import Habits
from scantling.solids.store import Store

F = Fraction
CLOSE = 1e-6  # [-] of the volume
ROSTER: dict[str, type[Joint]] = dict(members(scantling.joints, base=Joint))

pytestmark = [pytest.mark.slow, pytest.mark.timeout(1200)]


Volume = Callable[[Part], float]


@pytest.fixture(scope="module")
def theirs() -> Volume:
    # imported here, as the other kernel is installed for slow tests only
    found: Volume = import_module("tests.solids.second_kernel").volume
    return found


def ours(part: Part) -> float:
    return finished(part, store=Store()).volume


@pytest.mark.parametrize("made", EVERY)
def test_parts_with_every_kind_of_cut_agree(made: Callable[[], Part], theirs: Volume) -> None:
    assert ours(made()) == pytest.approx(theirs(made()), rel=CLOSE)


@pytest.mark.parametrize("title", ROSTER)
def test_every_joint_on_the_bench_agrees(title: str, theirs: Volume) -> None:
    for part in built(ROSTER[title].bench()).parts.values():
        assert ours(part) == pytest.approx(theirs(part), rel=CLOSE), part.name


def test_every_part_of_the_cupboard_agrees(theirs: Volume) -> None:
    text = (ROOT / "pieces" / "glaze_cupboard" / "piece.toml").read_text()
    cupboard = set_out(read(text), shop=SHOP, habits=Habits())
    assert len(cupboard.parts) > 50
    for part in cupboard.parts:
        assert ours(part) == pytest.approx(theirs(part), rel=CLOSE), part.name


@pytest.mark.parametrize("made", EVERY)
def test_a_planted_shaving_is_caught(made: Callable[[], Part], theirs: Volume) -> None:
    shaving = Box(along=Span(F(40), F(75)), across=Span(None, F(1, 50)))
    part = made()
    wrong = replace(part, cuts=(*part.cuts, replace(part.cuts[0], shape=shaving)))
    assert ours(wrong) != pytest.approx(theirs(part), rel=CLOSE)


@pytest.mark.parametrize("made", EVERY)
def test_a_planted_wrong_cutter_is_caught(
    made: Callable[[], Part], theirs: Volume, monkeypatch: pytest.MonkeyPatch
) -> None:
    part = made()
    right = theirs(part)
    corners = Cut.corners

    def short(cut: Cut, *, extent: Extent, over: Point = OVER) -> tuple[Point, ...]:
        # what a sign lost in the last corner of a cutter would do
        found = corners(cut, extent=extent, over=over)
        return (*found[:-1], found[0])

    monkeypatch.setattr(Cut, "corners", short)
    assert ours(part) != pytest.approx(right, rel=CLOSE)
