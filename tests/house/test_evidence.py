"""`docs/evidence.md` is true: its tests are there, and it hides no figure without a source."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable
from pathlib import Path

from tests.house.tree import ROOT, SOURCE

EVIDENCE = ROOT / "docs" / "evidence.md"
MARKS = {"From memory": "from memory", "Without a source": "UNSOURCED"}


def named(text: str) -> list[tuple[str, str]]:
    """File and function of each test that a page names."""
    return re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", text)


def missing(tests: Iterable[tuple[str, str]], *, root: Path = ROOT) -> list[str]:
    """Tests of that name which are not in that file."""
    return [f"{file}::{name}" for file, name in tests if name not in _functions(root / file)]


def _functions(file: Path) -> set[str]:
    if not file.is_file():
        return set()
    tree = ast.parse(file.read_text(encoding="utf-8"))
    return {node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)}


def rows(text: str, *, heading: str = "") -> list[list[str]]:
    """Cells of the tables below a heading, or of all; heads left out."""
    part = text.partition(f"## {heading}\n")[2].partition("\n## ")[0] if heading else text
    lines = [line.strip("|").split("|") for line in part.splitlines() if line.startswith("|")]
    cells = [[cell.strip() for cell in line] for line in lines]
    return [row for i, row in enumerate(cells) if not _is_head(cells, i)]


def _is_head(cells: list[list[str]], i: int) -> bool:
    rule = [set(row[0]) == {"-"} for row in cells]
    return rule[i] or (i + 1 < len(rule) and rule[i + 1])


def marked(mark: str) -> set[str]:
    """Files of the house in which a figure bears that mark."""
    files = (*SOURCE.rglob("*.py"), *SOURCE.rglob("*.csv"))
    return {str(f.relative_to(SOURCE)) for f in files if mark in f.read_text(encoding="utf-8")}


def test_every_test_it_names_is_there() -> None:
    found = named(EVIDENCE.read_text())
    assert len(found) > 30
    assert missing(found) == []


def test_each_line_has_a_source_a_figure_and_a_test() -> None:
    text = EVIDENCE.read_text()
    for heading in re.findall(r"^## (.+)$", text, flags=re.MULTILINE):
        for row in rows(text, heading=heading):
            assert all(row), row
            assert len(row) == 2 if heading in MARKS else len(named(row[-1])) == 1, row


def test_it_names_every_published_test_file() -> None:
    text = EVIDENCE.read_text()
    published = (ROOT / "tests" / "published").glob("test_*.py")
    assert [f.name for f in published if f"tests/published/{f.name}::" not in text] == []


def test_figures_from_memory_and_without_a_source_are_listed() -> None:
    text = EVIDENCE.read_text()
    for heading, mark in MARKS.items():
        listed = {row[0].strip("`") for row in rows(text, heading=heading)}
        assert listed == marked(mark), heading


def test_a_test_that_is_gone_is_noticed() -> None:
    text = "`tests/house/test_evidence.py::test_gone` `tests/house/gone.py::test_x`"
    assert missing(named(text)) == [
        "tests/house/test_evidence.py::test_gone",
        "tests/house/gone.py::test_x",
    ]


def test_a_line_without_its_source_is_noticed() -> None:
    assert rows("| a | b |\n|---|---|\n|  | x |\n") == [["", "x"]]
