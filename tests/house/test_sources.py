"""A published figure is only worth the source beside it."""

import csv
from pathlib import Path

from tests.house.tree import ROOT, SOURCE


def unsourced(text: str) -> list[str]:
    """Rows of a table that name no source: `line 3`; `no such column` if there is none."""
    rows = csv.DictReader(text.splitlines())
    columns = [name for name in rows.fieldnames or () if name.startswith("source")]
    if not columns:
        return ["no such column"]
    return [
        f"line {rows.line_num}"
        for row in rows
        if not any((row[column] or "").strip() for column in columns)
    ]


def tables() -> list[Path]:
    return sorted(SOURCE.rglob("*.csv"))


def test_every_row_of_every_table_has_its_source() -> None:
    assert SOURCE / "timber" / "species.csv" in tables()
    found = {str(t.relative_to(ROOT)): unsourced(t.read_text()) for t in tables()}
    assert {t: rows for t, rows in found.items() if rows} == {}


def test_a_row_without_source_is_noticed() -> None:
    assert unsourced("name,gravity,source\noak,0.68,FPL-GTR-190\nelm,0.50, \n") == ["line 3"]
    assert unsourced("name,gravity\noak,0.68\n") == ["no such column"]
