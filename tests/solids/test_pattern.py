"""Exact stands and boxes."""

from fractions import Fraction

import pytest

from scantling.solids.pattern import Bounds, Turn, bounds, turned_bounds

F = Fraction
MIRRORED = Turn(axes=(2, 1, 0), signs=(1, 1, 1), at=(F(19), F(20), F(100)))


def test_a_box_is_turned_with_its_solid() -> None:
    box = Bounds(low=(F(0), F(0), F(-2)), high=(F(800), F(283), F(19)))
    turn = Turn(axes=(2, 1, 0), signs=(1, 1, -1), at=(F(19), F(20), F(100)))
    found = turned_bounds(box, turn)
    assert found.low == (F(0), F(20), F(100))
    assert found.high == (F(21), F(303), F(900))


def test_exchanging_two_axes_mirrors_and_turning_one_round_mirrors_back() -> None:
    assert MIRRORED.is_mirrored
    assert not Turn(axes=(2, 1, 0), signs=(1, 1, -1), at=MIRRORED.at).is_mirrored
    assert not Turn().is_mirrored
    assert not Turn(axes=(1, 2, 0)).is_mirrored


@pytest.mark.parametrize(("gap", "meets"), [(F(-1, 10**12), True), (F(0), False), (F(1), False)])
def test_boxes_that_only_touch_do_not_meet(gap: F, *, meets: bool) -> None:
    one = bounds(((F(0), F(0), F(0)), (F(30), F(20), F(10))))
    other = bounds(((F(30) + gap, F(5), F(2)), (F(40), F(6), F(3))))
    assert one.meets(other) is meets
    assert other.meets(one) is meets
