"""What the pages of the packet say, before it is set."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from tests.papers.cupboard import FINDINGS, FRONT_UPRIGHT, cupboard, part

from scantling.findings import Finding, Weight
from scantling.joints._joint import DrawnSize, Estimate
from scantling.papers import Sheet
from scantling.papers._cover import cover, found_in_words
from scantling.papers._joint_pages import joints
from scantling.papers._names import spoken
from scantling.papers._pages import cutting_list, findings, hardware, sentence
from scantling.papers._paper import load_reads
from scantling.setting_out import SettingOut
from scantling.units import Unit

Rows = Any  # pages are JSON


def found(*said: Finding) -> list[Rows]:
    groups: Rows = findings(cupboard(findings=said))
    return [row for group in groups for row in group["found"]]


def test_lines_stand_under_their_wood_and_thickness() -> None:
    groups: Rows = cutting_list(cupboard())
    heads = [(group["wood"], group["thick"]) for group in groups]
    assert heads[0] == ("white ash", "3/4")
    assert len(set(heads)) == len(heads)
    marks = [line["mark"] for group in groups for line in group["lines"]]
    assert sorted(marks) == list(range(1, 14))
    for group in groups:
        assert [line["mark"] for line in group["lines"]] == sorted(
            line["mark"] for line in group["lines"]
        )


def test_area_is_that_of_the_rough_faces() -> None:
    whole = cupboard()
    top = next(line for line in whole.lines if line.family == "top")
    groups: Rows = cutting_list(replace(whole, lines=(top,)))
    # rough 23 1/2 by 10 1/2 in: 246.75 of the 144 square inches in a square foot
    assert groups[0]["area"] == "1.7 square feet"
    metric = replace(cupboard(measure=Unit.MM), lines=(top,))
    groups = cutting_list(metric)
    # the same top in millimetres, rough 596.9 by 266.7: 159 193 mm2
    assert groups[0]["area"] == "0.16 square metres"


def test_sizes_come_apart_at_the_fraction() -> None:
    groups: Rows = cutting_list(cupboard())
    line = groups[0]["lines"][0]
    assert line["long"] == {"about": False, "measured": False, "whole": "26", "rest": ""}
    assert line["wide"] == {"about": False, "measured": False, "whole": "8", "rest": "3/4"}
    assert line["thick"] == {"about": False, "measured": False, "whole": "", "rest": "3/4"}


def test_nothing_is_sawn_short() -> None:
    whole = cupboard()
    line = whole.lines[0]
    just_over = (line.rough[0] + Fraction(1, 100), line.rough[1], line.rough[2])
    groups: Rows = cutting_list(replace(whole, lines=(replace(line, rough=just_over),)))
    assert groups[0]["lines"][0]["rough"] == ["27 1/64", "9", "7/8"]


def test_bought_things_are_counted_with_their_size() -> None:
    assert hardware(cupboard()) == [
        {"what": "shelf pin", "of": "brass", "large": "1/2 × 1/4", "how_many": 2}
    ]


def _with_rows(rows: list[tuple[str, int]]) -> SettingOut:
    """The cupboard with one joint between both sides that draws these figures."""
    whole = cupboard()
    lap = whole.joints[0]
    seats = {
        role: (replace(lap.joined.seat(role), part=name),)
        for role, name in (("receives", "left side"), ("enters", "right side"))
    }
    drawn = tuple(DrawnSize(word=word, value=Fraction(value), unit="count") for word, value in rows)
    joined = replace(lap.joined, name="sides", seats=seats)
    return replace(whole, joints=(replace(lap, joined=joined, drawn=drawn),))


def _figures(whole: SettingOut) -> list[tuple[str, str]]:
    kinds: Rows = joints(whole)
    return [(row["word"], row["reads"]) for row in kinds[0]["groups"][0]["figures"]]


def test_what_is_true_of_like_parts_is_said_once() -> None:
    same = _with_rows([("holes in left side", 9), ("holes in right side", 9)])
    assert _figures(same) == [("holes in side", "9")]


def test_what_differs_between_like_parts_keeps_their_names() -> None:
    other = _with_rows([("holes in left side", 9), ("holes in right side", 7)])
    assert _figures(other) == [("holes in left side", "9"), ("holes in right side", "7")]


def _held(*loads: tuple[str, float]) -> list[Rows]:
    """What the page tells of joints alike but for what they hold."""
    whole = cupboard()
    lap = whole.joints[0]
    alike = tuple(
        replace(
            lap,
            joined=replace(lap.joined, name=f"rail {i}"),
            holds=(Estimate(what=what, value=load, unit="N", basis="", weakest=f"wood {i}"),),
        )
        for i, (what, load) in enumerate(loads)
    )
    kinds: Rows = joints(replace(whole, joints=alike))
    (group,) = kinds[0]["groups"]
    held: list[Rows] = group["holds"]
    return held


def test_of_joints_alike_the_weakest_speaks() -> None:
    assert _held(("pull", 5000), ("pull", 3600), ("pull", 4000), ("push", 900)) == [
        {"what": "pull", "reads": "160 lb", "weakest": "wood 1"},
        {"what": "push", "reads": "40 lb", "weakest": "wood 3"},
    ]


@pytest.mark.parametrize(
    ("value", "unit", "inches", "metric"),
    [
        (4448.222, "N", "1000 lb", "4400 N"),
        (135.5818, "N m", "100 lb ft", "140 N m"),
        (17.51268, "N/mm", "100 lb per inch", "18 N/mm"),
        (0.0, "N", "nothing", "nothing"),
    ],
)
def test_a_load_reads_to_two_figures(value: float, unit: str, inches: str, metric: str) -> None:
    # 1000 lbf, 100 lbf ft and 100 lbf/in: NIST SP 811 (2008), appendix B.8
    load = Estimate(what="", value=value, unit=unit, basis="", weakest="")
    assert load_reads(load, unit=Unit.INCH) == inches
    assert load_reads(load, unit=Unit.MM) == metric


def test_findings_of_like_parts_are_told_once_with_all_of_them() -> None:
    one = Finding(
        code="nail.split", weight=Weight.MIND, says="the nail may split left side",
        cure="drill first", figure="3/8 in", parts=("left side",),
    )  # fmt: skip
    two = replace(one, says="the nail may split right side", parts=("right side",))
    (row,) = found(one, two)
    assert row["says"] == "The nail may split left side."
    assert row["cure"] == "Drill first."
    assert (row["times"], row["parts"]) == (2, ["left side and right side"])
    assert len(found(one, replace(two, figure="1/2 in"))) == 2
    assert len(found(one, replace(two, cure="use screws"))) == 2


def test_the_heaviest_stand_first() -> None:
    groups: Rows = findings(cupboard(findings=FINDINGS[::-1]))
    assert [group["weight"] for group in groups] == ["Halt", "Mind", "Note"]


def test_names_of_parts_are_said_as_makers_say_them() -> None:
    says = spoken("left door.top rail, see piece.toml", ["left door.top rail"])
    assert says == "left door top rail, see piece.toml"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("one more", "One more."),
        ("Done.", "Done."),
        ("  a?", "A?"),
        ("", ""),
        ("1/2 in", "1/2 in."),
    ],
)
def test_a_sentence_begins_large_and_ends_with_a_point(text: str, said: str) -> None:
    assert sentence(text) == said


def test_counts_are_said_in_words() -> None:
    halt, mind, note = FINDINGS
    assert list(found_in_words([])) == ["Nothing was found that speaks against it."]
    assert list(found_in_words([halt, halt, note])) == [
        "Two findings halt the work until they are settled.",
        "One finding is a note worth knowing.",
    ]
    assert list(found_in_words([mind] * 11)) == ["11 findings are to mind."]


def _stick(whole: SettingOut, row: str = "top face") -> list[tuple[float, str]]:
    page: Rows = cover(whole, sheet=Sheet.A4)
    marks = page["drawing"]["stick"]
    return [(mark["at"], mark["reads"]) for mark in marks if mark["row"] == row]


def test_the_story_stick_holds_the_fixed_heights_of_the_front() -> None:
    whole = cupboard()
    assert [text for _, text in _stick(whole) if text] == ["2", "26 7/8"]
    assert [text for _, text in _stick(whole, "underside") if text] == ["24 1/2", "26"]
    loose = tuple(replace(p, moves_with="front") for p in whole.parts)
    assert [text for _, text in _stick(replace(whole, parts=loose)) if text] == ["26 7/8"]
    assert _stick(replace(whole, parts=loose), "underside") == []


def test_marks_of_the_stick_are_to_scale() -> None:
    page: Rows = cover(cupboard(), sheet=Sheet.A4)
    top = _stick(cupboard())[-1][0]
    assert top * page["drawing"]["scale"] == pytest.approx(26.875 * 25.4, abs=0.1)


def test_the_stick_stands_where_the_feet_do() -> None:
    # the top reaches 3/4 in before the frame, and depth is drawn at half its size and 45 degrees
    page: Rows = cover(cupboard(), sheet=Sheet.A4)
    before = 0.75 * 25.4 / 2 / 2**0.5
    drawn = page["drawing"]
    assert drawn["floor"] - drawn["front"][1] == pytest.approx(before / drawn["scale"], abs=0.011)


def test_figures_on_the_stick_never_touch() -> None:
    rails = tuple(
        part(f"rail {i}", FRONT_UPRIGHT, wide=("0", "9"), deep=("0", "1"),
             tall=(f"{i}", f"{i}.5"))
        for i in range(50)
    )  # fmt: skip
    marks = _stick(replace(cupboard(), parts=rails))
    written = [at for at, text in marks if text]
    assert len(marks) > len(written) > 10
    assert min(b - a for a, b in pairwise(written)) >= 4.2


def test_notes_of_the_piece_stand_on_the_cover() -> None:
    whole = cupboard()
    noted = replace(whole, piece=replace(whole.piece, notes=("back boards follow: 33 11/16",)))
    page: Rows = cover(noted, sheet=Sheet.A4)
    assert page["notes"] == ["back boards follow: 33 11/16"]


def test_parts_and_hardware_are_never_one_sum() -> None:
    whole = cupboard()
    bought = sum(each.hardware for each in whole.parts)
    assert bought > 1
    assert whole.counted == f"{len(whole.parts) - bought} parts, {bought} pieces of hardware"
    page: Rows = cover(whole, sheet=Sheet.A4)
    assert whole.counted in str(page)
    one = replace(whole, parts=(whole.made[0], whole.hardware[0]))
    assert one.counted == "1 part, 1 piece of hardware"
    assert replace(whole, parts=whole.made[:2]).counted == "2 parts"
