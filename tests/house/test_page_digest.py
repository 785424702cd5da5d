"""A page that was not built from its sources is noticed without building it."""

from pathlib import Path

import pytest
from tests.house.tree import ROOT

import page_digest


@pytest.fixture
def clone(tmp_path: Path) -> Path:
    (tmp_path / "frontend" / "src").mkdir(parents=True)
    (tmp_path / "frontend" / "src" / "stick.ts").write_text("export const marks = 11;\n")
    page = tmp_path / "src" / "scantling" / "web" / "page"
    page.mkdir(parents=True)
    (page / "digest.txt").write_text(page_digest.digest(tmp_path / "frontend") + "\n")
    return tmp_path


def test_the_page_was_built_from_its_sources() -> None:
    assert (ROOT / "frontend").is_dir()
    assert page_digest.fault(ROOT) == ""


def test_a_page_built_from_its_sources_passes(clone: Path) -> None:
    assert page_digest.fault(clone) == ""


def test_what_a_package_manager_put_there_does_not_count(clone: Path) -> None:
    (clone / "frontend" / "node_modules" / "left").mkdir(parents=True)
    (clone / "frontend" / "node_modules" / "left" / "pad.js").write_text("x")
    assert page_digest.fault(clone) == ""


def test_a_changed_source_is_noticed(clone: Path) -> None:
    (clone / "frontend" / "src" / "stick.ts").write_text("export const marks = 12;\n")
    assert "has changed" in page_digest.fault(clone)


def test_a_renamed_source_is_noticed(clone: Path) -> None:
    stick = clone / "frontend" / "src" / "stick.ts"
    stick.rename(stick.with_name("rod.ts"))
    assert "has changed" in page_digest.fault(clone)


def test_a_missing_digest_is_noticed(clone: Path) -> None:
    (clone / "src" / "scantling" / "web" / "page" / "digest.txt").unlink()
    assert "is missing" in page_digest.fault(clone)
