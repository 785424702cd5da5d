"""A size is told back to what was stated."""

from __future__ import annotations

import pytest
from tests.sizes.cupboards import GRID, front, reads, says, stated

from scantling.errors import UnknownNameError
from scantling.sizes.explain import explain
from scantling.sizes.solving import solve


def test_the_chain_of_a_door_ends_at_what_was_stated() -> None:
    solved = solve(front(), stated=stated(case__wide="42", case__tall="37"), grid=GRID)

    chain = explain(solved, "door 1 left.wide")

    assert chain[0].startswith("door 1 left.wide is 19 1/8 in: ")
    assert "case.wide is 42 in: as stated." in chain
    assert "frame left stile.width is 1 3/4 in: frame stiles." in chain
    assert not any(line.startswith("case.tall") for line in chain)
    assert len(set(chain)) == len(chain)


def test_a_measured_size_needs_no_reason() -> None:
    fact = reads("left side.thickness", "734/1000")

    solved = solve(front(), measured=[fact], grid=GRID)

    assert explain(solved, "left side.thickness") == (
        "left side.thickness is 0.734 in: as measured.",
    )


def test_what_gave_way_says_so_and_off_the_tape_is_about() -> None:
    sides = [reads("left side.thickness", "734/1000"), reads("right side.thickness", "741/1000")]
    solved = solve(
        front(),
        stated=[says("case.wide", "42"), says("case.tall", "37")],
        measured=sides,
        grid=GRID,
    )

    chain = explain(solved, "left guide.thickness")

    assert chain[0].startswith("left guide.thickness is about 1.016 in: F8")


def test_every_size_of_the_front_has_a_reason() -> None:
    solved = solve(front(2), stated=stated(case__wide="84 3/32", case__tall="37"), grid=GRID)

    assert all(explain(solved, name)[0].startswith(f"{name} is ") for name in solved.sizes)
    assert all(solved.sizes.size(name).because for name in solved.sizes)


def test_an_unknown_size_cannot_be_explained() -> None:
    solved = solve(front(), grid=GRID)

    with pytest.raises(UnknownNameError, match=r"lid\.width"):
        explain(solved, "lid.width")
