"""Exact cells: cut by planes and added up."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from scantling.proofs._cells import Plane, amount, apart, block, within, without

F = Fraction
ORIGIN = (F(0), F(0), F(0))
BLOCK = block(ORIGIN, (F(12), F(7), F(5)))


def plane(a: int, b: int, c: int, distance: int | F) -> Plane:
    return Plane(normal=(F(a), F(b), F(c)), distance=F(distance))


planes = st.builds(
    plane,
    *[st.integers(min_value=-6, max_value=6)] * 3,
    st.fractions(min_value=-30, max_value=60, max_denominator=16),
).filter(lambda found: any(found.normal))


def test_a_block() -> None:
    found = amount([BLOCK])
    assert found.volume == 12 * 7 * 5
    assert found.moments == (420 * F(6), 420 * F(7, 2), 420 * F(5, 2))


def test_a_corner_sawn_off() -> None:
    # through 3, 4 and 5 along the three edges: a sixth of the box of those sides; the middle of
    # a tetrahedron lies a quarter of the way along each
    corner = within(BLOCK, [plane(20, 15, 12, 60)])
    assert corner is not None
    found = amount([corner])
    assert found.volume == 10
    assert found.moments == (F(15, 2), F(10), F(25, 2))


def test_a_wedge_through_four_corners() -> None:
    # a plane through two opposite edges halves the block
    half = within(BLOCK, [plane(7, -12, 0, 0)])
    assert half is not None
    assert amount([half]).volume == 210
    assert len(half.faces) == 5


def test_a_plane_that_only_touches_takes_nothing_or_all() -> None:
    assert within(BLOCK, [plane(1, 0, 0, 12)]) is BLOCK
    assert within(BLOCK, [plane(-1, 0, 0, -12)]) is None
    assert within(BLOCK, [plane(1, 1, 1, 24)]) is BLOCK
    assert within(BLOCK, [plane(1, 1, 1, 0)]) is None


def test_what_does_not_reach_a_cell_leaves_it_whole() -> None:
    away = [plane(1, 0, 0, 30), plane(-1, 0, 0, -20)]
    assert without(BLOCK, away) == (BLOCK,)


def test_cells_side_by_side_are_apart() -> None:
    beside = block((F(12), F(0), F(0)), (F(13), F(7), F(5)))
    assert apart(BLOCK, beside)
    assert not apart(BLOCK, block((F(23, 2), F(3), F(-9)), (F(13), F(4), F(1, 100))))


@given(cuts=st.lists(planes, min_size=1, max_size=6))
def test_inside_and_outside_add_up_exactly(cuts: list[Plane]) -> None:
    inside = within(BLOCK, cuts)
    found = amount([*without(BLOCK, cuts), *([] if inside is None else [inside])])
    assert found == amount([BLOCK])


@given(cuts=st.lists(planes, min_size=2, max_size=5))
def test_the_order_of_planes_makes_no_difference(cuts: list[Plane]) -> None:
    one, other = within(BLOCK, cuts), within(BLOCK, cuts[::-1])
    assert (one is None) == (other is None)
    if one is not None and other is not None:
        assert amount([one]) == amount([other])


@given(cuts=st.lists(planes, min_size=1, max_size=6))
def test_a_cell_is_closed(cuts: list[Plane]) -> None:
    # every edge of a closed body belongs to two faces (Euler: corners - edges + faces = 2)
    cell = within(BLOCK, cuts)
    if cell is None:
        return
    sides = [
        tuple(sorted(side))
        for face in cell.faces
        for side in zip(face, (*face[1:], face[0]), strict=True)
    ]
    assert all(sides.count(side) == 2 for side in sides)
    assert len(cell.corners) - len(sides) // 2 + len(cell.faces) == 2
