"""After a measurement what is left to make follows it; what is made stays; the rest stays planned.

Hand figures are of the demo: a case 42 in wide of sides 3/4 in thick, housings 1/4 in deep.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from scantling.findings import Finding
from scantling.piece import Piece, read
from scantling.record.entry import Correction, Done, Entry, Note, Reading, Record, Said
from scantling.record.line import line_of
from scantling.record.reading import read as read_record
from scantling.setting_out import SettingOut, set_out
from scantling.setting_out.saying import correction, done, measured
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop

IN = Fraction("25.4")
DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"


@cache
def piece() -> Piece:
    return read(DEMO.read_text(encoding="utf-8"), file="piece.toml")


def record(*said: Said | Finding) -> Record:
    assert not any(isinstance(each, Finding) for each in said), said
    entries = [
        Entry(id=f"e{n}", at="2026-11-25T10:00:00Z", said=each, number=n)
        for n, each in enumerate(said, start=1)
        if not isinstance(each, Finding)
    ]
    return read_record(b"".join(line_of(entry) for entry in entries))


def worked(*said: Said | Finding, before: SettingOut | None = None) -> SettingOut:
    return set_out(
        piece(), shop=default_shop(), habits=Habits(), record=record(*said), before=before
    )


@cache
def planned() -> SettingOut:
    return worked()


def thin_side() -> Reading | Finding:
    return measured(planned(), size="left side thickness", readings=["0.71"])


@cache
def with_thin_side() -> SettingOut:
    return worked(thin_side())


def test_what_is_left_follows_a_measured_side() -> None:
    now = with_thin_side()
    changed = {change.name: (change.was / IN, change.value / IN) for change in now.changed}
    assert changed["left side.thickness"] == (Fraction(3, 4), Fraction("0.71"))
    assert changed["case.inside wide"] == (Fraction("40.5"), 42 - Fraction("0.71") - Fraction(3, 4))
    assert changed["deck.length"] == (Fraction(41), Fraction("40.54") + Fraction(1, 2))
    assert changed["bottom.length"] == changed["deck.length"]
    assert not now.halts


def test_each_change_says_why_and_which_are_facts() -> None:
    changes = with_thin_side().changed
    assert all(change.because for change in changes)
    assert [change.name for change in changes if change.is_fact] == ["left side.thickness"]


def test_what_has_nothing_to_do_with_it_stays() -> None:
    now, plan = with_thin_side(), planned()
    moved = {change.name for change in now.changed}
    assert {n for n in plan.sizes if plan.sizes[n] != now.sizes[n]} == moved
    assert not any(name.startswith(("right side.", "top.", "left door.")) for name in moved)


def test_the_plan_is_the_same_whether_made_before_or_only_now() -> None:
    now = worked(thin_side(), before=planned())
    assert now.changed == with_thin_side().changed
    assert now.plan is not None
    assert dict(now.plan.sizes) == dict(planned().sizes)


def test_nothing_recorded_changes_nothing() -> None:
    assert planned().changed == ()
    assert planned().plan is None


def test_a_part_that_is_cut_keeps_its_sizes_and_what_it_meets_gives_way() -> None:
    cut = done(planned(), part="deck")
    now = worked(thin_side(), cut)
    assert now.sizes["deck.length"] == 41 * IN
    assert "deck.length" not in {change.name for change in now.changed}
    assert now.facts.cut.keys() == {"deck"}


def test_a_contradiction_is_named_with_its_excess() -> None:
    # the bottom is cut for sides of 3/4 in and cannot reach as deep into both any more
    now = worked(thin_side(), done(planned(), part="bottom"))
    (conflict,) = [f for f in now.findings if f.code == "sizes.conflict"]
    assert "0.21 in" in conflict.says  # 42 - 0.71 - 3/4 + 1/4 + 0.21 = 41
    assert now.halts


def test_taken_back_it_is_as_planned() -> None:
    said = thin_side()
    back = correction(record(said), number=1)
    assert isinstance(back, Correction)
    now = worked(said, back)
    assert dict(now.sizes) == dict(planned().sizes)
    assert now.changed == ()


def test_a_cut_part_the_piece_has_no_more_is_told() -> None:
    now = worked(Done(what="shelf 9 cut", part="shelf 9", sizes={"shelf 9.length": Fraction(300)}))
    assert [f.parts for f in now.findings if f.code == "record.cut-part-gone"] == [("shelf 9",)]


# ------------------------------------------------------------------------------------ saying


@pytest.mark.parametrize(
    ("said", "value"),
    [("0.71", "0.71"), ("23/32 in", "0.71875"), ("18 mm", "18/25.4"), ('11/16"', "0.6875")],
)
def test_a_reading_is_kept_as_it_was_typed_with_its_unit(said: str, value: str) -> None:
    found = measured(planned(), size="left side thickness", readings=[said])
    assert isinstance(found, Reading)
    top, _, bottom = value.partition("/")
    assert found.values == (Fraction(top) / Fraction(bottom or 1) * IN,)
    (entry,) = record(found).entries
    assert entry.said == found


def test_a_figure_in_another_measure_is_asked_about_once() -> None:
    asked = measured(planned(), size="left side thickness", readings=["18"])
    assert isinstance(asked, Finding)
    assert (asked.code, asked.figure, "the unit" in asked.cure) == (
        "record.far-off",
        "24 times",
        True,
    )
    sure = measured(planned(), size="left side thickness", readings=["18"], sure=True)
    assert isinstance(sure, Reading)


@pytest.mark.parametrize(
    ("size", "readings", "code"),
    [
        ("left sid thickness", ["0.71"], "record.no-such-size"),
        ("left side thickness", ["0,71,3"], "record.no-length"),
        ("left side thickness", [], "record.no-reading"),
    ],
)
def test_what_cannot_be_kept_says_why(size: str, readings: list[str], code: str) -> None:
    found = measured(planned(), size=size, readings=readings)
    assert isinstance(found, Finding)
    assert found.code == code
    assert found.cure


def test_an_unknown_part_is_met_with_the_nearest() -> None:
    found = done(planned(), part="botom")
    assert isinstance(found, Finding)
    assert (found.code, found.cure) == ("record.no-such-part", "Perhaps bottom.")


@pytest.mark.parametrize("number", [0, 2, 3])
def test_only_what_was_kept_can_be_corrected(number: int) -> None:
    kept = record(Note(text="a"), Correction(of="e1"))
    found = correction(kept, number=number)
    assert isinstance(found, Finding)
    assert found.code == "record.no-such-entry"
