"""The tutorial is run: each command as it stands, each shown output against what is said."""

from __future__ import annotations

import re
import shlex
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

TUTORIAL = Path(__file__).parents[1] / "docs" / "first_piece.md"
BLOCK = re.compile(r"^```(sh|text|diff)\n(.*?)^```$", re.DOTALL | re.MULTILINE)
COMMAND = Path(sys.executable).with_name("scantling")
PIECE = Path("my_bookcase") / "piece.toml"


@dataclass(frozen=True)
class Step:
    """A command with what it is said to print, or a change of the file."""

    kind: str
    text: str
    shown: str = ""


def steps(tutorial: str) -> Iterator[Step]:
    found = BLOCK.findall(tutorial)
    for (kind, text), (after, shown) in zip(found, [*found[1:], ("", "")], strict=True):
        if kind != "text":
            yield Step(kind, text.rstrip("\n"), shown if after == "text" else "")


def is_as_shown(said: str, shown: str) -> bool:
    """Whether a text is the shown one; three dots stand for whatever is left out."""
    pieces = (re.escape(piece) for piece in shown.strip("\n").split("..."))
    return re.fullmatch(".*".join(pieces), said.strip("\n"), re.DOTALL) is not None


def changed(text: str, diff: str) -> str:
    """The file with each line that is taken out replaced by the one that follows it."""
    lines = diff.split("\n")
    for old, new in zip(lines[::2], lines[1::2], strict=True):
        assert (old[0], new[0]) == ("-", "+")
        assert text.count(f"{old[1:]}\n") == 1, old
        text = text.replace(f"{old[1:]}\n", f"{new[1:]}\n")
    return text


def said_by(command: str, folder: Path) -> str:
    """What a command prints; of one that serves a page, its first line with an address."""
    words = shlex.split(command)
    assert words[0] == "scantling"
    if words[1] != "look":
        done = subprocess.run(
            [COMMAND, *words[1:]], cwd=folder, capture_output=True, text=True, check=False
        )
        assert done.stderr == ""
        return done.stdout
    with subprocess.Popen(
        [COMMAND, *words[1:], "--quiet"], cwd=folder, stdout=subprocess.PIPE, text=True
    ) as serving:
        try:
            assert serving.stdout is not None
            return next(line for line in serving.stdout if "http" in line)
        finally:
            serving.terminate()


def test_every_command_says_what_is_shown(tmp_path: Path) -> None:
    for step in steps(TUTORIAL.read_text(encoding="utf-8")):
        if step.kind == "diff":
            path = tmp_path / PIECE
            path.write_text(changed(path.read_text("utf-8"), step.text), encoding="utf-8")
        else:
            said = said_by(step.text, tmp_path)
            assert is_as_shown(said, step.shown), f"{step.text}\n{said}"
    pages = tmp_path / "my_bookcase" / "papers" / "packet.pdf"
    assert pages.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("said", "shown", "fits"),
    [
        ("one\ntwo\nthree\n", "one\n...\nthree", True),
        ("one\ntwo\n", "one\n", False),
        ("It is 48 in\n", "It is 49 in\n", False),
        ("It is 48 in\n", "...48...", True),
    ],
)
def test_another_figure_is_noticed(said: str, shown: str, fits: bool) -> None:  # noqa: FBT001 - as it stands
    assert is_as_shown(said, shown) is fits
