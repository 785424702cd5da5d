"""A file is put in place of another whole, or not at all."""

import os
import stat
from pathlib import Path

import pytest

from scantling.web.replace import replaced


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "piece.toml"
    found.write_bytes(b"old")
    found.chmod(0o640)
    return found


def test_content_is_new_and_mode_is_old(file: Path) -> None:
    replaced(file, b"new")
    assert file.read_bytes() == b"new"
    assert stat.S_IMODE(file.stat().st_mode) == 0o640
    assert [each.name for each in file.parent.iterdir()] == ["piece.toml"]


def test_a_link_stays_a_link(file: Path, tmp_path: Path) -> None:
    (tmp_path / "bench").mkdir()
    link = tmp_path / "bench" / "piece.toml"
    link.symlink_to(file)
    replaced(link, b"new")
    assert link.is_symlink()
    assert file.read_bytes() == b"new"


def test_a_failed_sync_leaves_the_old_content(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", fails)
    with pytest.raises(OSError, match="No space"):
        replaced(file, b"new")
    assert file.read_bytes() == b"old"
    assert [each.name for each in file.parent.iterdir()] == ["piece.toml"]


def test_content_is_synced_before_its_name_and_the_folder_after(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[tuple[str, bytes]] = []
    sync = os.fsync

    def noted(handle: int) -> None:
        kind = "folder" if stat.S_ISDIR(os.fstat(handle).st_mode) else "file"
        seen.append((kind, file.read_bytes()))
        sync(handle)

    monkeypatch.setattr(os, "fsync", noted)
    replaced(file, b"new")
    assert seen == [("file", b"old"), ("folder", b"new")]


def test_a_file_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        replaced(tmp_path / "none.toml", b"new")
    assert list(tmp_path.iterdir()) == []
