"""What is said at the bench by command line is kept, and what follows is told."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from scantling import cli
from scantling.record.reading import read

ROOT = Path(__file__).parents[1]
CLEAN, HALTED = 0, 1


@pytest.fixture
def bookcase(tmp_path: Path) -> Path:
    text = (ROOT / "pieces" / "bookcase" / "piece.toml").read_text(encoding="utf-8")
    (tmp_path / "piece.toml").write_text(text.replace('"../shop.toml"', '"shop.toml"'))
    (tmp_path / "shop.toml").write_bytes((ROOT / "pieces" / "shop.toml").read_bytes())
    return tmp_path


def said(*words: str | Path) -> int:
    """The exit code of one command."""
    found = cli.app(
        [str(word) for word in words],
        exit_on_error=False,
        print_error=False,
        result_action="return_value",
    )
    assert isinstance(found, int)
    return found


def test_a_measured_side_is_kept_and_what_follows_is_told(
    bookcase: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert said("measured", bookcase, "left side thickness", "0.71 in") == CLEAN
    out = capsys.readouterr().out
    assert "Entry 1 is kept." in out
    assert "left side.thickness: was 3/4 in, is 0.71 in, because as measured" in out
    assert "bottom.length: was" in out
    (line,) = (bookcase / "record.jsonl").read_text().splitlines()
    told = json.loads(line)
    assert (told["name"], told["readings"]) == ("left side.thickness", ["0.71 in"])
    # and everything worked later knows of it
    assert said("prove", bookcase) == CLEAN
    assert said("papers", bookcase, "--into", bookcase / "papers") == CLEAN
    figures = json.loads((bookcase / "papers" / "setting-out.json").read_text())
    assert any(f["origin"] == "measured" for f in figures["sizes"])


def test_a_figure_in_another_measure_is_asked_about_and_not_kept(
    bookcase: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert said("measured", bookcase, "left side thickness", "18") == HALTED
    assert "24 times more than planned" in capsys.readouterr().out
    assert not (bookcase / "record.jsonl").exists()


def test_what_is_cut_done_noted_and_corrected_stands_in_the_record(bookcase: Path) -> None:
    assert said("done", bookcase, "bottom") == CLEAN
    assert said("note", bookcase, "knot in the left side") == CLEAN
    assert said("measured", bookcase, "right side thickness", "0.74", "0.745") == HALTED
    assert said("correct", bookcase, "3", "0.75") == CLEAN
    assert said("correct", bookcase, "1") == CLEAN
    found = read((bookcase / "record.jsonl").read_bytes())
    assert found.findings == ()
    kinds = [type(entry.said).__name__ for entry in found.entries]
    assert kinds == ["Done", "Note", "Reading", "Correction", "Correction"]


def test_an_entry_there_is_not_cannot_be_corrected(
    bookcase: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert said("correct", bookcase, "7") == HALTED
    assert "no entry 7" in capsys.readouterr().out


def test_nothing_is_added_to_a_damaged_record(
    bookcase: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for text in ("one", "two", "three"):
        said("note", bookcase, text)
    record = bookcase / "record.jsonl"
    record.write_bytes(spoilt := record.read_bytes().replace(b"two", b"six"))
    assert said("note", bookcase, "four") == HALTED
    assert "It was not kept" in capsys.readouterr().out
    assert record.read_bytes() == spoilt
    assert said("prove", bookcase) == HALTED
