"""The cutting list: which parts share a line, how large they are sawn first, what is noted."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.proofs.work import part

from scantling.parts import GluedUp, Part, Strip
from scantling.setting_out.answer import Line
from scantling.setting_out.lines import lines
from scantling.shop.habits import Habits

# Figures all different, so that none can stand in for another. [mm]
HABITS = Habits(rough_length=Fraction(25), rough_width=Fraction(6), rough_thickness=Fraction(3))


def stile(name: str = "left stile", *, horns: tuple[int, int] = (0, 0), cut: str = "flat") -> Part:
    """A stile 700 by 57 by 22. [mm]"""
    made = replace(part(name, (700, 57, 22)), family="door stile", cut_of_wood=cut)
    return replace(made, horns=(Fraction(horns[0]), Fraction(horns[1])))


def listed(*parts: Part) -> tuple[Line, ...]:
    return lines(parts, HABITS)


def named(found: tuple[Line, ...]) -> list[list[str]]:
    return [[each.name for each in line.parts] for line in found]


def test_a_stile_is_sawn_long_enough_for_its_horns() -> None:
    (line,) = listed(stile(horns=(20, 14)))
    # 700 + 20 + 14 + 25; 57 + 6; 22 + 3
    assert line.rough == (Fraction(759), Fraction(63), Fraction(25))


@pytest.mark.parametrize(
    ("horns", "note"),
    [
        ((0, 0), ""),
        ((20, 0), "horn at one end"),
        ((0, 14), "horn at one end"),
        ((20, 14), "horns at both ends"),
    ],
)
def test_the_line_says_at_how_many_ends_a_horn_stands(horns: tuple[int, int], note: str) -> None:
    (line,) = listed(stile(horns=horns))
    assert line.note == note


def test_like_parts_of_one_family_wood_and_size_share_a_line() -> None:
    rail = part("rail", (400, 63, 22))
    found = listed(stile("left stile"), rail, stile("right stile"))
    assert named(found) == [["left stile", "right stile"], ["rail"]]
    assert [line.mark for line in found] == [1, 2]


@pytest.mark.parametrize(
    "other",
    [
        stile("other", cut="rift"),
        replace(stile("other"), wood="white ash"),
        replace(stile("other"), family="frame stile"),
        replace(stile("other"), extent=part("", (700, 57, 21)).extent),
        stile("other", horns=(20, 14)),
    ],
    ids=["sawn otherwise", "of another wood", "of another family", "thinner", "with horns"],
)
def test_what_differs_in_one_thing_has_a_line_of_its_own(other: Part) -> None:
    assert named(listed(stile("first"), other)) == [["first"], ["other"]]


def test_how_a_part_is_sawn_and_glued_up_is_noted() -> None:
    strips = tuple(Strip(name=f"strip {letter}", wood="cherry") for letter in "abc")
    glued = replace(stile(cut="quarter", horns=(20, 14)), blank=GluedUp(strips=strips))
    (line,) = listed(glued)
    assert line.note == "quarter-sawn, glued up from 3 strips, horns at both ends"


def test_what_is_bought_is_not_sawn() -> None:
    assert listed(replace(part("hinge", (60, 34, 6)), hardware=True)) == ()
