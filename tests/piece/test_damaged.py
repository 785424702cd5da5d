"""A file damaged in any way gives findings: never a traceback, never a wait."""

import random
import time
from pathlib import Path

import pytest
from tests.piece.bench import HEAD, read_here
from tests.piece.damage import damaged

from scantling.findings import told

TEXT = (Path(__file__).parent / "example.toml").read_text(encoding="utf-8")
LONGEST = 2.0  # [s] for one file


def slowest(count: int, *, seed: int) -> float:
    """Seconds of work the slowest of so many damaged files took to read and tell."""
    rng = random.Random(seed)  # noqa: S311 - damage, no secret
    worst = 0.0
    for _ in range(count):
        text = damaged(TEXT, rng)
        began = time.process_time()
        piece = read_here(text)
        for finding in piece.findings:
            assert finding.place is not None
            told(finding, source_text=text)
        worst = max(worst, time.process_time() - began)
        assert piece.complete or piece.findings
    return worst


def test_three_hundred_damaged_files_are_read() -> None:
    assert slowest(300, seed=1) < LONGEST


@pytest.mark.slow
@pytest.mark.timeout(1800)
def test_twenty_thousand_damaged_files_are_read() -> None:
    assert slowest(20_000, seed=2) < LONGEST


@pytest.mark.timeout(20)
@pytest.mark.parametrize(
    "line",
    ["wide{n} = 1\n", "[cases{n}]\n", "[wood.w{n}]\n", 'w{n} = {{ joint = "hous{n}" }}\n'],
)
@pytest.mark.parametrize("heading", ["[case]\n", "[wood]\n", "[also]\n", "[shelf]\n"])
def test_a_file_full_of_faults_is_read_in_time(heading: str, line: str) -> None:
    lines = "".join(line.format(n=n) for n in range(4000))
    began = time.process_time()
    piece = read_here(HEAD + heading + lines[:90_000])
    assert time.process_time() - began < LONGEST
    assert all(len(told(f, source_text=None)) < 1000 for f in piece.findings)


def test_a_name_without_end_is_told_shortly() -> None:
    piece = read_here(HEAD + "[case]\n" + "w" * 90_000 + " 3\n" + "d" * 900 + " = 3\n")
    assert piece.findings
    assert all(len(told(f, source_text=piece.text)) < 1000 for f in piece.findings)
