"""Wrong files, each with the expected findings under the guilty line.

A line `#^ halt piece.unknown-word 1+5: ...` says of the last line above that is no such
comment: from column 1 five signs are guilty. Nothing else may be found in the file.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.piece.bench import read_here

from scantling.findings import Finding, underlined

WRONG = sorted((Path(__file__).parent / "wrong").glob("*.toml"))
EXPECTED = re.compile(r"#\^ (halt|mind|note) (piece\.[a-z-]+) (\d+)\+(\d+): (.+)")


def expected(text: str) -> Iterator[tuple[int, int, int, str, str, str]]:
    line = 0
    for number, content in enumerate(text.split("\n"), 1):
        if found := EXPECTED.fullmatch(content):
            weight, code, column, width, says = found.groups()
            yield line, int(column), int(width), code, weight, says
        else:
            assert not content.startswith("#^"), f"line {number} is no expectation"
            line = number


def told(finding: Finding) -> tuple[int, int, int, str, str, str]:
    place = finding.place
    assert place is not None
    code, weight = finding.code, str(finding.weight)
    return place.line, place.column, place.width, code, weight, finding.says


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_every_fault_is_found_where_it_stands(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    piece = read_here(text)
    assert sorted(map(told, piece.findings)) == sorted(expected(text))
    assert not piece.complete


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_every_fault_comes_with_a_cure_and_a_caret(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    for finding in read_here(text).findings:
        assert finding.place is not None
        assert finding.cure
        assert "^" in underlined(text, finding.place)


def test_there_are_many_files_of_many_kinds() -> None:
    kinds = {code for path in WRONG for *_, code, _, _ in expected(path.read_text())}
    assert len(WRONG) >= 40
    assert len(kinds) >= 15


def test_a_fault_on_another_column_is_noticed() -> None:
    text = "[case]\n#^ halt piece.not-a-piece 2+1: whatever"
    assert [told(f)[:2] for f in read_here("[x]").findings] != [e[:2] for e in expected(text)]
