"""The build record as text: what is whole is read, what is not is told at its line."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.record.asking import doubtful, size_meant
from scantling.record.entry import Correction, Done, Entry, Note, Reading, Said
from scantling.record.facts import facts
from scantling.record.line import DamagedError, entry_of, line_of
from scantling.record.reading import read

SIDE = Reading(name="left side.thickness", texts=("0.71 in",), values=(Fraction("18.034"),))
AT = "2026-11-25T10:00:00Z"


def entry(said: Said, number: int = 1, name: str = "") -> Entry:
    return Entry(id=name or f"bench-{number}", at=AT, said=said, number=number)


def record(*said: Said) -> bytes:
    return b"".join(line_of(entry(each, n)) for n, each in enumerate(said, start=1))


TEXTS = st.text(max_size=30)
READINGS = st.builds(
    lambda name, sixtyfourths: Reading(
        name=name,
        texts=tuple(f"{n / 64} in" for n in sixtyfourths),
        values=tuple(Fraction(n, 64) * Fraction("25.4") for n in sixtyfourths),
    ),
    TEXTS,
    st.lists(st.integers(1, 4000), min_size=1, max_size=3),
)
DONE = st.builds(
    lambda what, part, sizes: Done(what=what, part=part, sizes=sizes),
    TEXTS,
    TEXTS,
    st.dictionaries(TEXTS, st.fractions(min_value=0, max_value=3000), max_size=3),
)
PLAIN = READINGS | DONE | st.builds(lambda text: Note(text=text), TEXTS)
ANY = PLAIN | st.builds(
    lambda of, instead: Correction(of=of, instead=instead), TEXTS, st.none() | PLAIN
)


@given(said=ANY, name=TEXTS, at=TEXTS, number=st.integers(1, 10**6))
def test_what_is_written_is_read_again(said: Said, name: str, at: str, number: int) -> None:
    written = Entry(id=name, at=at, said=said, number=number)
    assert entry_of(line_of(written)) == written


def test_a_line_is_plain_json_of_a_known_format() -> None:
    line = line_of(entry(SIDE))
    told = json.loads(line)
    assert line.count(b"\n") == 1
    assert (told["format"], told["kind"], told["readings"]) == (1, "measured", ["0.71 in"])


@given(at=st.integers(0, 10**6), bit=st.integers(0, 7))
def test_a_changed_bit_anywhere_is_noticed(at: int, bit: int) -> None:
    line = bytearray(line_of(entry(SIDE)).rstrip(b"\n"))
    line[at % len(line)] ^= 1 << bit
    with pytest.raises(DamagedError):
        entry_of(bytes(line))


@given(kept=st.integers(0, 10**6))
def test_a_last_line_that_was_cut_off_is_set_aside_and_said(kept: int) -> None:
    whole, last = record(SIDE, Note(text="knot loose")), line_of(entry(SIDE, 3))
    torn = last[: 1 + kept % (len(last) - 2)]
    found = read(whole + torn)
    assert [e.number for e in found.entries] == [1, 2]
    assert [f.code for f in found.findings] == ["record.last-line-torn"]
    assert (found.sound, found.torn, found.is_damaged) == (len(whole), torn, False)
    assert found.findings[0].place is not None
    assert found.findings[0].place.line == 3


def test_a_last_line_whose_end_an_editor_took_away_counts() -> None:
    found = read(record(SIDE, SIDE).rstrip(b"\n"))
    assert (len(found.entries), found.findings) == (2, ())


def test_a_damaged_line_in_the_middle_stops_and_is_named() -> None:
    lines = record(SIDE, Note(text="one"), Note(text="two")).splitlines(keepends=True)
    found = read(lines[0] + lines[1].replace(b"one", b"won") + lines[2])
    assert [e.number for e in found.entries] == [1]
    assert found.is_damaged
    (finding,) = found.findings
    assert (finding.code, finding.weight) == ("record.line-damaged", "halt")
    assert finding.place is not None
    assert finding.place.line == 2


def test_a_line_of_a_newer_house_stops_and_is_named() -> None:
    told = json.loads(record(SIDE)) | {"format": 2}
    del told["check"]
    from scantling.record.line import _check, _json  # noqa: PLC0415 - as the newer one would

    found = read(_json({**told, "check": _check(told)}) + b"\n")
    assert [f.code for f in found.findings] == ["record.newer-format"]
    assert found.is_damaged


def test_a_message_that_came_twice_counts_once() -> None:
    found = read(line_of(entry(SIDE, 1, "a")) + line_of(entry(SIDE, 1, "a")))
    assert (len(found.entries), found.findings) == (1, ())


def test_two_entries_of_one_name_are_told() -> None:
    other = line_of(entry(Note(text="x"), 2, "a"))
    found = read(line_of(entry(SIDE, 1, "a")) + other)
    assert [f.code for f in found.findings] == ["record.name-used-twice"]
    assert [e.said for e in found.entries] == [SIDE]


def test_a_line_taken_out_is_told() -> None:
    lines = record(SIDE, Note(text="one"), Note(text="two")).splitlines(keepends=True)
    found = read(lines[0] + lines[2])
    assert [(f.code, f.figure, f.limit) for f in found.findings] == [
        ("record.number-missing", "3", "2")
    ]


# ------------------------------------------------------------------------------------- facts


def test_readings_of_one_size_give_least_and_greatest() -> None:
    thin = replace(
        SIDE, texts=("0.70 in", "0.705 in"), values=(Fraction("17.78"), Fraction("17.907"))
    )
    (fact,) = facts(read(record(SIDE, thin))).measured
    assert (fact.name, fact.least, fact.greatest) == (
        "left side.thickness",
        Fraction("17.78"),
        Fraction("18.034"),
    )
    assert fact.place is not None
    assert fact.place.line == 2


def test_a_correction_takes_the_place_of_what_it_corrects() -> None:
    right = replace(SIDE, texts=("0.73 in",), values=(Fraction("18.542"),))
    found = facts(read(record(SIDE, Correction(of="bench-1", instead=right))))
    assert [f.value for f in found.measured] == [Fraction("18.542")]


def test_what_is_taken_back_is_gone_and_may_come_again() -> None:
    gone = Correction(of="bench-1")
    assert facts(read(record(SIDE, gone))).measured == ()
    again = facts(read(record(SIDE, gone, Correction(of="bench-1", instead=SIDE))))
    assert len(again.measured) == 1


def test_a_correction_of_nothing_is_told() -> None:
    found = facts(read(record(SIDE, Correction(of="bench-7"))))
    assert [f.code for f in found.findings] == ["record.corrects-nothing"]
    assert len(found.measured) == 1


def test_a_part_that_was_cut_keeps_the_sizes_it_was_cut_to() -> None:
    cut = Done(what="left side cut", part="left side", sizes={"left side.length": Fraction(889)})
    found = facts(read(record(cut)))
    assert found.cut == {"left side": {"left side.length": Fraction(889)}}
    assert found.done == {"left side cut"}


# ------------------------------------------------------------------------------------ asking

NAMES = ["left side.thickness", "left side.length", "rear sub-top rail.width", "case.wide"]


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("left side thickness", "left side.thickness"),
        ("Left side.thickness", "left side.thickness"),
        ("rear sub top rail width", "rear sub-top rail.width"),
        ("rear sub-top rail.width", "rear sub-top rail.width"),
        ("left_side length", "left side.length"),
    ],
)
def test_a_size_is_found_as_a_maker_says_it(said: str, meant: str) -> None:
    assert size_meant(said, NAMES) == meant


def test_an_unknown_size_is_met_with_the_nearest() -> None:
    found = size_meant("left side thicknes", NAMES)
    assert not isinstance(found, str)
    assert (found.code, found.cure) == ("record.no-such-size", "Perhaps left side.thickness.")


@pytest.mark.parametrize(
    ("read_as", "asks"),
    [("18", True), ("0.71", False), ("0.0279", True), ("7.1", True), ("0.68", False), ("0", True)],
)
def test_a_figure_in_another_measure_is_asked_about(read_as: str, *, asks: bool) -> None:
    inches = Fraction(read_as)
    reading = Reading(
        name="left side.thickness", texts=(f"{read_as} in",), values=(inches * Fraction("25.4"),)
    )
    found = doubtful(reading, planned=Fraction("18.034"))
    assert (found is not None) == asks
