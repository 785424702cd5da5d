"""The cupboard with a half-lapped face frame: one word differs, and what follows from it.

Hand figures: a lapped rail is as long as the frame is wide (42), a lapped mullion runs over both
rails (5 + 1 1/2 + 1 1/2), and either half is half of 3/4 thick.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.setting_out import SettingOut
from scantling.units import Unit, length

PIECES = Path(__file__).parents[2] / "pieces"
RAILS = {"top rail": "42 | 1 1/2 | 3/4", "mid rail": "42 | 1 1/2 | 3/4"}
LAPPED = {**RAILS, "bottom rail": "42 | 3 | 3/4", "mullion": "8 | 1 1/2 | 3/4"}


def lines(folder: str) -> list[str]:
    text = (PIECES / folder / "piece.toml").read_text(encoding="utf-8")
    said = (line.partition("#")[0].split() for line in text.splitlines())
    return [" ".join(words) for words in said if words and words[0] != "name"]


def test_only_the_joint_of_the_frame_differs() -> None:
    before, after = lines("glaze_cupboard"), lines("glaze_cupboard_lapped")
    assert [pair for pair in zip(before, after, strict=True) if pair[0] != pair[1]] == [
        ('joint = "mortise and tenon"', 'joint = "half lap"')
    ]


@pytest.mark.parametrize("name", LAPPED)
def test_lapped_part_is_as_worked_by_hand(glaze_cupboard_lapped: SettingOut, name: str) -> None:
    by_hand = tuple(length(text, unit=Unit.INCH) for text in LAPPED[name].split(" | "))
    extent = glaze_cupboard_lapped.part(name).extent
    assert (extent.length, extent.width, extent.thickness) == by_hand


def test_all_other_parts_are_those_of_the_tenoned_frame(
    glaze_cupboard: SettingOut, glaze_cupboard_lapped: SettingOut
) -> None:
    tenoned = {p.name: p.extent for p in glaze_cupboard.parts}
    lapped = {p.name: p.extent for p in glaze_cupboard_lapped.parts}
    assert {name for name in tenoned if tenoned[name] != lapped[name]} == set(LAPPED)


@pytest.mark.parametrize("joint", ["top rail in left stile", "mullion in mid rail"])
def test_both_halves_are_half_the_frame(glaze_cupboard_lapped: SettingOut, joint: str) -> None:
    assert glaze_cupboard_lapped.sizes[f"{joint}.depth"] == length("3/8", unit=Unit.INCH)


def test_nothing_stops_the_work(glaze_cupboard_lapped: SettingOut) -> None:
    assert [f for f in glaze_cupboard_lapped.findings if f.weight == "halt"] == []


def test_lines_about_tenons_are_said_to_be_idle(glaze_cupboard_lapped: SettingOut) -> None:
    text = glaze_cupboard_lapped.piece.text.splitlines()
    idle = [f.place for f in glaze_cupboard_lapped.findings if f.code == "piece.no-tenon"]
    assert [text[p.line - 1].split()[0] for p in idle if p is not None] == ["tenon", "stub"]


def test_a_tenoned_frame_has_a_use_for_them(glaze_cupboard: SettingOut) -> None:
    assert "piece.no-tenon" not in {f.code for f in glaze_cupboard.findings}
