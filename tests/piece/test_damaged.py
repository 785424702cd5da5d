"""A file damaged in any way gives findings: never a traceback, never a wait."""

import random
import time
from pathlib import Path

import pytest
from tests.piece.bench import read_here
from tests.piece.damage import damaged

from scantling.findings import told

TEXT = (Path(__file__).parent / "example.toml").read_text(encoding="utf-8")
LONGEST = 2.0  # [s] for one file


def slowest(count: int, *, seed: int) -> float:
    """Seconds the slowest of so many damaged files took to read and tell."""
    rng = random.Random(seed)  # noqa: S311 - damage, no secret
    worst = 0.0
    for _ in range(count):
        text = damaged(TEXT, rng)
        began = time.perf_counter()
        piece = read_here(text)
        for finding in piece.findings:
            assert finding.place is not None
            told(finding, source_text=text)
        worst = max(worst, time.perf_counter() - began)
        assert piece.complete or piece.findings
    return worst


def test_three_hundred_damaged_files_are_read() -> None:
    assert slowest(300, seed=1) < LONGEST


@pytest.mark.slow
@pytest.mark.timeout(1800)
def test_twenty_thousand_damaged_files_are_read() -> None:
    assert slowest(20_000, seed=2) < LONGEST
