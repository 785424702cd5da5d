"""Pages written from the code are the approved ones, and say what there is."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from tests.house.tree import ROOT

import written_docs

Approved = Callable[[Path, bytes], None]


def test_the_glossary_is_the_approved_one(approved: Approved) -> None:
    approved(ROOT / "docs" / "glossary.md", written_docs.glossary().encode())


def test_the_findings_are_the_approved_ones(approved: Approved) -> None:
    approved(ROOT / "docs" / "findings.md", written_docs.findings().encode())


def test_codes_of_every_room_are_found() -> None:
    found = set(written_docs.codes())
    assert {"piece.unknown-word", "sizes.conflict", "proofs.parts-overlap"} <= found
    assert {"half-lap.thin", "shop.not-owned", "record.line-damaged"} <= found


def test_every_code_is_named_by_a_test() -> None:
    assert written_docs.untested() == ()
