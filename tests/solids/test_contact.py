"""How much of a patch truly touches."""

from collections.abc import Sequence
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.solids.shapes import board, convex, stood

from scantling.errors import OutOfRangeError
from scantling.solids.contact import contact_area, patch_area
from scantling.solids.kernel import Placed, cut
from scantling.solids.pattern import Convex, Pattern, Point, Turn
from scantling.solids.store import Store

F = Fraction
NOTCHED = board(convex((30, 40), (-1, 25), (15, 21)))  # in its upper face


def patch(*points: tuple[float | F, float | F, float | F]) -> tuple[Point, ...]:
    return tuple((F(x), F(y), F(z)) for x, y, z in points)


TOP = patch((0, 0, 20), (120, 0, 20), (120, 45, 20), (0, 45, 20))


def test_a_patch_over_a_notch_and_past_an_edge_counts_only_where_both_touch() -> None:
    lower, upper = stood("a", NOTCHED, 0, 0, 0), stood("b", board(), 20, 10, 20)
    # 100 by 35 of the patch is under the upper board; the notch takes 10 by 15 of that
    wanted = 100 * 35 - 10 * 15
    for one, other in ((lower, upper), (upper, lower)):
        for points in (TOP, TOP[::-1]):
            found = contact_area(one, other, patch=points, store=Store())
            assert found == pytest.approx(wanted, rel=1e-8)


def test_boards_a_hair_apart_do_not_touch() -> None:
    hair = F(1, 500)
    lower, upper = stood("a", board(), 0, 0, 0), stood("b", board(), 0, 0, 20 + hair)
    assert contact_area(lower, upper, patch=TOP, store=Store()) == 0


def test_two_boards_on_the_same_side_of_a_patch_do_not_touch() -> None:
    lower, beside = stood("a", board(), 0, 0, 0), stood("b", board(), 120, 0, 0)
    both = patch((100, 0, 20), (140, 0, 20), (140, 45, 20), (100, 45, 20))
    assert contact_area(lower, beside, patch=both, store=Store()) == 0


def test_a_sloping_flank_touches_over_its_slope() -> None:
    # a wedge of 3 in 4 laid on its mate: the slope is 5 for every 4 along
    slope = ((0, 0), (40, 30))
    low, high = (
        Convex(corners=patch(*((x, y, z) for y in (0, 7) for x, z in (*slope, corner))))
        for corner in ((40, 0), (0, 30))
    )
    one = Placed(name="a", solid=cut(Pattern(block=low)), turn=Turn())
    other = Placed(name="b", solid=cut(Pattern(block=high)), turn=Turn())
    flank = patch((0, 0, 0), (40, 0, 30), (40, 7, 30), (0, 7, 0))
    assert patch_area(flank) == pytest.approx(50 * 7)
    # the thin ends of the wedges cost a sliver
    assert contact_area(one, other, patch=flank, store=Store()) == pytest.approx(50 * 7, rel=1e-4)


@given(
    at=st.tuples(*[st.integers(min_value=-130, max_value=130)] * 2),
    size=st.tuples(*[st.integers(min_value=1, max_value=120)] * 2),
)
def test_contact_of_two_boards_is_the_rectangle_they_share(
    at: tuple[int, int], size: tuple[int, int]
) -> None:
    upper = stood("b", board(size=(*size, 9)), *at, 20)
    lower = stood("a", board(), 0, 0, 0)
    spans = [
        max(0, min(a + s, full) - max(a, 0)) for a, s, full in zip(at, size, (120, 45), strict=True)
    ]
    found = contact_area(lower, upper, patch=TOP, store=Store())
    assert found == pytest.approx(spans[0] * spans[1], abs=1e-6)


@pytest.mark.parametrize(
    ("points", "says"),
    [
        (TOP[:2], "2 corners"),
        ((*TOP[:3], (F(0), F(45), F(21))), "out of its plane"),
    ],
)
def test_what_is_no_patch_is_refused(points: Sequence[Point], says: str) -> None:
    with pytest.raises(OutOfRangeError, match=says):
        patch_area(points)


@pytest.mark.parametrize(
    "points",
    [
        patch((0, 0, 20), (1, 2, 23), (2, 4, 26)),
        patch((9, 5, 20), (60, 5, 20), (60, 5, 20), (9, 5, 20)),
        patch((9, 5, 20), (9, 5, 20), (9, 5, 20), (9, 5, 20)),
        # a hair of a millionth of its length is floating point, no face
        patch((9, 5, 20), (60, 5, 20), (60, 5 + F(1, 10**8), 20), (9, 5 + F(1, 10**8), 20)),
    ],
)
def test_a_patch_in_one_line_has_no_area_and_nothing_touches_it(points: Sequence[Point]) -> None:
    lower, upper = stood("a", board(), 0, 0, 0), stood("b", board(), 0, 0, 20)
    assert patch_area(points) == 0
    assert contact_area(lower, upper, patch=points, store=Store()) == 0


def test_the_answer_is_kept_until_something_moves() -> None:
    store = Store()
    solid = board()
    for lift in (0, 5):
        lower, upper = stood("a", solid, 0, 0, lift), stood("b", solid, 0, 0, 20 + lift)
        moved = tuple((x, y, z + lift) for x, y, z in TOP)
        assert contact_area(lower, upper, patch=moved, store=store) == pytest.approx(5400)
    assert store.made == 1
