"""A file that outgrows 400 lines is about two things."""

from pathlib import Path

from tests.house.tree import ROOT, tracked

MOST = 400
BY_HAND = {".py", ".ts", ".svelte", ".css", ".typ"}


def too_long(files: list[Path]) -> list[str]:
    lengths = {f: len(f.read_text().splitlines()) for f in files if f.suffix in BY_HAND}
    return [f"{f.name}: {n} lines" for f, n in lengths.items() if n > MOST]


def test_no_file_written_by_hand_is_longer_than_400_lines() -> None:
    page = ROOT / "src/scantling/web/page"  # built, not written
    assert too_long([f for f in tracked() if page not in f.parents]) == []


def test_line_401_is_noticed(tmp_path: Path) -> None:
    long, fits = tmp_path / "long.py", tmp_path / "fits.py"
    long.write_text("pass\n" * 401)
    fits.write_text("pass\n" * 400)
    assert too_long([long, fits]) == ["long.py: 401 lines"]
