"""The test of truth on the demo: any full set of its sizes, stated instead, is the same piece."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.pieces.measured import relations
from tests.sizes.truth import differences, full_sets

from scantling.setting_out import SettingOut
from scantling.sizes.answer import Solved
from scantling.sizes.model import Relations

SEED = 20261125


@pytest.fixture(scope="module")
def demo(glaze_cupboard: SettingOut) -> tuple[Relations, Solved]:
    """Relations of the demo under its settled choices, and its sizes."""
    settled = glaze_cupboard.settled
    assert settled is not None
    assert settled.solved.conflicts == ()
    return relations((), glaze_cupboard), settled.solved


@pytest.mark.parametrize("count", [8, pytest.param(500, marks=pytest.mark.slow)])
def test_any_full_set_stated_instead_gives_the_same_piece(
    demo: tuple[Relations, Solved], count: int
) -> None:
    said, solved = demo
    named: set[str] = set()
    for stated in full_sets(said, solved, seed=SEED, count=count):
        assert differences(said, solved, stated) == []
        named |= {line.name for line in stated}
    if count > 100:
        assert named == set(solved.sizes)


@pytest.mark.parametrize("every", [20, pytest.param(1, marks=pytest.mark.slow)])
def test_a_dropped_equation_is_caught(demo: tuple[Relations, Solved], every: int) -> None:
    said, solved = demo
    missed = []
    for i in range(0, len(said.equations), every):
        kept = said.equations[:i] + said.equations[i + 1 :]
        planted = replace(said, equations=kept)
        stated = next(iter(full_sets(said, solved, seed=SEED + i, count=1)))
        if not differences(planted, solved, stated):
            missed.append(said.equations[i].because)
    assert missed == []
