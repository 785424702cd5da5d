"""Which solids are in the same place."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.solids.shapes import board, convex, stood

from scantling.solids.kernel import Placed
from scantling.solids.pairs import Overlap, near_pairs, overlaps
from scantling.solids.pattern import Turn, turned_bounds
from scantling.solids.store import Store

F = Fraction
GROOVED = board(convex((-1, 121), (13, 27), (8, 21)))
SHELF = board(size=(120, 14, 60))


def test_a_shelf_in_its_groove_touches_on_three_sides_and_overlaps_nowhere() -> None:
    placed = [stood("side", GROOVED, 7, 11, 3), stood("shelf", SHELF, 7, 24, 11)]
    assert len(near_pairs(placed)) == 1
    assert overlaps(placed, store=Store()) == []


def test_a_shelf_too_deep_is_found_with_how_deep() -> None:
    deep = F(1, 50)
    placed = [stood("side", GROOVED, 7, 11, 3), stood("shelf", SHELF, 7, 24, 11 - deep)]
    (found,) = overlaps(placed, store=Store())
    assert found.between == ("side", "shelf")
    assert found.volume == pytest.approx(0.02 * 120 * 14)
    assert found.depth == pytest.approx(0.02)


def test_a_millionth_too_deep_is_still_found() -> None:
    placed = [stood("a", board(), 0, 0, 0), stood("b", board(), 0, 0, 20 - F(1, 10**6))]
    (found,) = overlaps(placed, store=Store())
    assert found.volume == pytest.approx(1e-6 * 120 * 45, rel=1e-3)


def test_contact_at_awkward_places_is_no_overlap() -> None:
    # thirds and sevenths have no exact floating point
    third, seventh = F(1000, 3), F(2000, 7)
    one = board(size=(third, seventh, F(100, 11)))
    placed = [
        stood("a", one, F(1, 13), F(1, 17), F(1, 19)),
        stood("b", one, F(1, 13) + third, F(1, 17), F(1, 19)),
        stood("c", one, F(1, 13), F(1, 17) + seventh, F(1, 19)),
        stood("d", one, F(1, 13), F(1, 17), F(1, 19) + F(100, 11)),
    ]
    assert overlaps(placed, store=Store()) == []


def test_boards_that_stand_apart_are_never_compared() -> None:
    store = Store()
    overlaps([stood("a", board(), 0, 0, 0), stood("b", board(), 121, 0, 0)], store=store)
    assert store.made == 0


def test_a_pair_that_moves_together_is_not_compared_again() -> None:
    store = Store()
    solid, other = board(), board(size=(30, 20, 10))
    first = overlaps([stood("a", solid, 0, 0, 0), stood("b", other, 5, 6, 7)], store=store)
    again = overlaps([stood("a", solid, 9, 9, 9), stood("b", other, 14, 15, 16)], store=store)
    assert first == again
    made = store.made
    overlaps([stood("a", solid, 11, 9, 9), stood("b", other, 16, 15, 16)], store=store)
    assert store.made == made
    overlaps([stood("a", solid, 9, 9, 9), stood("b", other, 14, 15, 17)], store=store)
    assert store.made > made


def in_a_tight_hole(far: F) -> Overlap:
    """A pin in a hole too small for it by 1/2, counted from the far end, beside a groove."""
    hole = convex((far - 20 - F(17, 2), far - 20 - F(1, 2)), (F(21, 2), 18), (5, 21))
    groove = convex((-1, far + 1), (3, 5), (12, 21))
    plank, pin = board(hole, groove, size=(far, 45, 20)), board(size=(8, 8, 30))
    placed = [stood("plank", plank, 0, 0, 0), stood("pin", pin, far - 29, 10, 10)]
    (found,) = overlaps(placed, store=Store())
    return found


def test_a_longer_board_meets_its_pin_as_the_shorter_one_did() -> None:
    lap = in_a_tight_hole(F(120))
    assert lap == in_a_tight_hole(F(1201, 9))
    # 8 by 8 less what falls into the hole: 7 1/2 along by 7 1/2 across, 10 deep
    assert lap.volume == pytest.approx((8 * 8 - 7.5 * 7.5) * 10)


def test_a_board_that_grows_into_its_neighbour_is_found_after_the_edit() -> None:
    store = Store()
    for far, laps in ((F(120), 0), (F(120) + F(1, 10**5), 1), (F(119), 0)):
        both = [stood("a", board(size=(far, 45, 20)), 0, 0, 0), stood("b", board(), 120, 0, 0)]
        store.next_round()
        assert len(overlaps(both, store=store)) == laps


@given(
    places=st.lists(
        st.tuples(*[st.fractions(min_value=-60, max_value=60, max_denominator=8)] * 3),
        min_size=2,
        max_size=7,
    )
)
def test_the_coarse_search_misses_no_pair(places: list[tuple[F, F, F]]) -> None:
    sizes = [(30 + 7 * i, 20 + 3 * i, 10 + i) for i in range(len(places))]
    placed = [
        stood(f"{i}", board(size=size), *at)
        for i, (size, at) in enumerate(zip(sizes, places, strict=True))
    ]
    wanted = {
        (f"{i}", f"{k}")
        for k in range(len(places))
        for i in range(k)
        if all(
            places[i][a] < places[k][a] + sizes[k][a] and places[k][a] < places[i][a] + sizes[i][a]
            for a in range(3)
        )
    }
    assert {(one.name, other.name) for one, other in near_pairs(placed)} == wanted


turns = st.builds(
    lambda axes, signs, at: Turn(axes=(axes[0], axes[1], axes[2]), signs=signs, at=at),
    st.permutations((0, 1, 2)),
    st.tuples(*[st.sampled_from((1, -1))] * 3),
    st.tuples(*[st.integers(-9, 9).map(lambda n: F(n * 40, 3))] * 3),
)


@given(stands=st.lists(turns, min_size=2, max_size=6))
def test_the_coarse_search_misses_no_pair_however_they_are_turned(stands: list[Turn]) -> None:
    # thirds of an inch-like grid: many of them touch exactly, along one axis or more
    solid = board(size=(F(120), F(80), F(40, 3)))
    placed = [Placed(name=f"{i}", solid=solid, turn=turn) for i, turn in enumerate(stands)]
    boxes = [turned_bounds(solid.wood.extent, turn) for turn in stands]
    wanted = [
        (f"{i}", f"{k}")
        for i in range(len(boxes))
        for k in range(i + 1, len(boxes))
        if boxes[i].meets(boxes[k])
    ]
    assert [(one.name, other.name) for one, other in near_pairs(placed)] == wanted
