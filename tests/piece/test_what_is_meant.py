"""What a newcomer writes that is not there is answered by what makes it."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from scantling.findings import Finding
from scantling.piece import read

PIECES = Path(__file__).parents[2] / "pieces"
METRIC = (PIECES / "metric" / "bookcase" / "piece.toml").read_text("utf-8")
INCHES = (PIECES / "glaze_cupboard" / "piece.toml").read_text("utf-8")


def told(text: str, code: str) -> Finding:
    (found,) = [each for each in read(text).findings if each.code == code]
    return found


@pytest.mark.parametrize(
    ("heading", "answer"),
    [("plinth", "[face_frame]"), ("loose_shelves", "[shelf.loose]"), ("Carcass", "[case]")],
)
def test_a_thing_without_a_section_is_told_with_what_makes_it(heading: str, answer: str) -> None:
    found = told(f"{METRIC}\n[{heading}]\ntall = 80\n", "piece.unknown-section")
    assert answer in found.cure


def test_a_word_beside_a_joint_is_told_of_the_section_and_of_its_joint() -> None:
    found = told(METRIC.replace("stiles = 45", "styles = 45"), "piece.unknown-option")
    assert "no word of this section" in found.says
    assert "its joint, mortise and tenon" in found.says
    assert "stiles" in found.cure


@pytest.mark.parametrize(
    ("text", "measure", "rule", "usual"),
    [(METRIC, "mm", '"1/32 in"', "0.5 mm"), (INCHES, "inch", '"0.5 mm"', "1/32 in")],
)
def test_a_rule_of_the_other_measure_is_one_note_at_its_line(
    text: str, measure: str, rule: str, usual: str
) -> None:
    lines = [line for line in text.split("\n") if not line.startswith("finest")]
    at = next(i for i, line in enumerate(lines) if line.startswith("measure"))
    lines.insert(at + 1, f"finest = {rule}")
    found = told("\n".join(lines), "piece.other-rule")
    assert found.place is not None
    assert found.place.line == at + 2
    assert measure in found.says
    assert usual in found.cure


def test_a_rule_that_nobody_names_is_of_the_piece_s_measure() -> None:
    assert read(METRIC).finest == Fraction(1, 2)
    assert not [f for f in read(METRIC).findings if f.code == "piece.other-rule"]


@pytest.mark.parametrize("said", ["oak", "European oak"])
def test_a_european_oak_is_told_to_be_in_no_table_and_what_is_nearest(said: str) -> None:
    found = told(METRIC.replace('show = "white oak"', f'show = "{said}"'), "piece.unknown-wood")
    assert "in no table" in found.cure
    assert 'nearest is "white oak"' in found.cure
