"""The test of truth on the demo: any full set of its sizes, stated instead, is the same piece."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.sizes.truth import differences, full_sets

from scantling.piece import read
from scantling.piece._drafting import draft
from scantling.setting_out.bench import Bench
from scantling.setting_out.chain import NO_BOARDS, settled_sizes
from scantling.setting_out.memory import Memory
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.sizes.answer import Solved
from scantling.sizes.model import Relations

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"
SEED = 20261125


@pytest.fixture(scope="module")
def bench() -> Bench:
    """The demo, drafted."""
    piece = read(DEMO.read_text(encoding="utf-8"))
    return Bench.of(
        draft(piece), piece, default_shop(), Habits(), attainable=NO_BOARDS, memory=Memory()
    )


@pytest.fixture(scope="module")
def demo(bench: Bench) -> tuple[Relations, Solved]:
    """Relations of the demo under its settled choices, and its sizes."""
    settled = settled_sizes(bench, (), None)
    assert settled.solved.conflicts == ()
    return bench.relations(settled.choice), settled.solved


@pytest.mark.parametrize("count", [8, pytest.param(500, marks=pytest.mark.slow)])
def test_any_full_set_stated_instead_gives_the_same_piece(
    demo: tuple[Relations, Solved], count: int
) -> None:
    relations, solved = demo
    named: set[str] = set()
    for stated in full_sets(relations, solved, seed=SEED, count=count):
        assert differences(relations, solved, stated) == []
        named |= {line.name for line in stated}
    if count > 100:
        assert named == set(solved.sizes)


@pytest.mark.parametrize("every", [20, pytest.param(1, marks=pytest.mark.slow)])
def test_a_dropped_equation_is_caught(demo: tuple[Relations, Solved], every: int) -> None:
    relations, solved = demo
    missed = []
    for i in range(0, len(relations.equations), every):
        kept = relations.equations[:i] + relations.equations[i + 1 :]
        planted = replace(relations, equations=kept)
        stated = next(iter(full_sets(relations, solved, seed=SEED + i, count=1)))
        if not differences(planted, solved, stated):
            missed.append(relations.equations[i].because)
    assert missed == []
