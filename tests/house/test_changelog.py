"""News fragments: one file per change a maker can see."""

from pathlib import Path

import pytest
from tests.house.tree import ROOT

import changelog


def test_every_fragment_has_a_kind_and_one_sentence_at_least() -> None:
    found = changelog.fragments(ROOT / "changes")
    assert [f.name for files in found.values() for f in files if len(f.read_text()) < 20] == []


def test_a_fragment_of_no_kind_is_noticed(tmp_path: Path) -> None:
    (tmp_path / "half-lap.nice.md").write_text("Half laps are nicer.\n")
    with pytest.raises(ValueError, match=r"half-lap\.nice\.md"):
        changelog.fragments(tmp_path)


def test_news_stands_above_what_is_older_and_under_its_kind() -> None:
    before = "# Changes\n\n## 1.0 - 2026-01-02\n\n### Added\n\n- Housings.\n"
    news = {"added": ["Half laps.\n", "Rabbets.\n"], "mended": [], "removed": ["Nails.\n"]}
    assert changelog.gathered(before, news, heading="1.1 - 2026-03-04") == (
        "# Changes\n\n## 1.1 - 2026-03-04\n\n### Added\n\n- Half laps.\n- Rabbets.\n\n"
        "### Removed\n\n- Nails.\n\n## 1.0 - 2026-01-02\n\n### Added\n\n- Housings.\n"
    )
