"""The demo with lines lost and figures mixed up: findings, never a traceback, never for ever."""

from __future__ import annotations

import random
from itertools import count, islice
from pathlib import Path

import pytest
from tests.pieces.changed import changed
from tests.pieces.edited import STORE

from scantling.piece import read
from scantling.setting_out import set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.sizes.stopping import CountedWork

PIECES = Path(__file__).parents[2] / "pieces"
TEXTS = [
    (PIECES / folder / "piece.toml").read_text(encoding="utf-8")
    for folder in ("glaze_cupboard", "glaze_cupboard_lapped")
]
SHOP, HABITS = default_shop(), Habits()


def readable(seed: int) -> str:
    """A changed text that can still be read."""
    chance = random.Random(seed)  # noqa: S311 - the same texts each time
    return next(
        text
        for text in (changed(chance.choice(TEXTS), chance) for _ in count())
        if text not in TEXTS and read(text).complete
    )


LATER = [pytest.param(seed, marks=pytest.mark.slow) for seed in range(8, 158)]


@pytest.mark.parametrize("seed", [*range(8), *LATER])
def test_whatever_is_changed_is_told_in_findings(seed: int) -> None:
    stop = CountedWork(most=200)
    found = set_out(read(readable(seed)), shop=SHOP, habits=HABITS, stop=stop, store=STORE)
    assert found.halts or found.parts
    assert all(f.weight == "note" or f.cure for f in found.findings)
    assert all(f.says.strip() for f in found.findings)


def test_the_texts_are_changed_and_not_alike() -> None:
    texts = list(islice((readable(seed) for seed in count()), 8))
    assert len({*texts, *TEXTS}) == 10
