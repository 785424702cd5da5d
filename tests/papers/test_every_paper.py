"""What holds for every paper of the roster."""

import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from tests.house.tree import ROOT
from tests.papers.cupboard import FINDINGS, cupboard

import scantling
from scantling import PAPERS
from scantling.papers import Sheet
from scantling.papers._typeset import shown
from scantling.units import Unit

RENDER = """
import hashlib
from scantling import PAPERS
from scantling.papers import Sheet
from tests.papers.cupboard import cupboard
for paper in PAPERS.values():
    for sheet in Sheet:
        for name, made in paper.render(cupboard(), sheet=sheet).items():
            print(name, hashlib.sha256(made).hexdigest())
"""
HOSTILE = [
    '#panic("x") $ x $ *b* `c` @d <e> // f /* g',
    "\\u{1F5A8} \\ # [ ] { } \" ' & ~ ---",
    "</w:t><script>alert(1)</script>",
    "\u202eflesh\x00\x1b[31m\n\r\t",
    "木材 🪵 ﷽",
    "x" * 400,
    " ",
]


def test_the_roster_is_what_a_maker_can_ask_for() -> None:
    assert list(PAPERS) == ["cutting list", "model", "packet", "setting-out", "templates"]


def test_a_paper_answers_to_any_spelling_of_its_name() -> None:
    assert PAPERS["Cutting-List"] is PAPERS["cutting list"]


@pytest.mark.parametrize("title", list(PAPERS))
@pytest.mark.parametrize("sheet", list(Sheet))
def test_it_makes_files_under_plain_names(title: str, sheet: Sheet) -> None:
    made = PAPERS[title].render(cupboard(), sheet=sheet)
    assert made
    for name, content in made.items():
        assert name == os.path.basename(name).lower()  # noqa: PTH119 - a name, not a path
        assert content


def test_two_processes_make_the_same_bytes() -> None:
    package = Path(scantling.__file__).parents[1]
    found = [
        subprocess.run(
            [sys.executable, "-c", RENDER],
            cwd=ROOT,
            env={
                **os.environ,
                "PYTHONHASHSEED": seed,
                "PYTHONPATH": f"{package}{os.pathsep}{ROOT}",
                "TZ": zone,
            },
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed, zone in (("1", "UTC"), ("77", "Asia/Tokyo"))
    ]
    assert found[0].count("packet.pdf") == 2
    assert found[0] == found[1]


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("title", list(PAPERS))
def test_no_text_of_the_maker_breaks_it(title: str, text: str) -> None:
    said = replace(FINDINGS[0], says=f"{text}.", cure=f"{text}.", source=text)
    whole = cupboard(name=text, renamed={"side": text}, note=text, findings=(said,))
    assert PAPERS[title].render(whole, sheet=Sheet.A4)


def test_signs_that_steer_or_turn_text_never_reach_the_paper() -> None:
    assert shown("\u202eflesh\x1b[31m") == "\ufffdflesh\ufffd[31m"
    assert shown("two\r\nlines\tmore") == "two  lines more"
    assert shown("Türblatt 木材") == "Türblatt 木材"


def test_a_long_word_may_break_and_keeps_its_letters() -> None:
    found = shown(f"short {'w' * 40}")
    assert found.replace("\u200b", "") == f"short {'w' * 40}"
    assert max(len(piece) for piece in found.replace(" ", "\u200b").split("\u200b")) <= 24


@pytest.mark.parametrize("title", list(PAPERS))
def test_a_piece_that_could_not_be_worked_has_its_papers(title: str) -> None:
    empty = replace(cupboard(measure=Unit.MM), parts=(), joints=(), lines=())
    assert PAPERS[title].render(empty, sheet=Sheet.LETTER)
