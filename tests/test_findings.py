"""Findings: what they must carry, their order, and the line under the guilty text."""

import random
from dataclasses import FrozenInstanceError, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from scantling.errors import InternalError, OutOfRangeError
from scantling.findings import LONGEST_LINE, Finding, Place, Weight, in_order, told, underlined

BIND = Finding(
    code="seasons.doors-bind",
    weight=Weight.HALT,
    says="The doors bind in August by 1/32.",
    cure="Plane each meeting stile 1/64.",
    place=Place(file="piece.toml", line=2, column=10, width=7),
    figure="1/32 in",
    limit="0",
    source="Wood Handbook, table 13-5",
    parts=("left door", "right door"),
)


def place(*, line: int = 1, column: int = 1, width: int = 1, file: str = "piece.toml") -> Place:
    return Place(file=file, line=line, column=column, width=width)


# --------------------------------------------------------------------------------- the record


def test_weights_are_written_as_the_papers_write_them() -> None:
    assert [str(weight) for weight in Weight] == ["halt", "mind", "note"]


def test_finding_cannot_be_altered_and_may_stand_in_a_set() -> None:
    assert {BIND, replace(BIND)} == {BIND}
    with pytest.raises(FrozenInstanceError):
        BIND.says = "All is well."  # type: ignore[misc] # the very thing that must fail


@pytest.mark.parametrize(
    "code", ["piece.unknown-word", "sizes.conflict", "joints.half-lap.too-thin", "piece.w2"]
)
def test_code_is_room_and_fault(code: str) -> None:
    assert replace(BIND, code=code).code == code


@pytest.mark.parametrize(
    "code",
    ["", "conflict", "Piece.word", "piece.", ".word", "piece..word", "piece.un_known", "a.b c"],
)
def test_code_of_another_form_is_a_bug(code: str) -> None:
    with pytest.raises(InternalError, match="finding code"):
        replace(BIND, code=code)


@pytest.mark.parametrize("code", ["piece.-word", "piece.word-", "2.word", "piece.word\n"])
def test_code_has_no_loose_ends(code: str) -> None:
    with pytest.raises(InternalError, match="finding code"):
        replace(BIND, code=code)


@pytest.mark.parametrize("weight", Weight)
def test_every_finding_says_something(weight: Weight) -> None:
    with pytest.raises(InternalError, match="says nothing"):
        replace(BIND, weight=weight, says=" \n")


def test_only_a_note_goes_without_a_cure() -> None:
    assert replace(BIND, weight=Weight.NOTE, cure="").cure == ""
    for weight in (Weight.HALT, Weight.MIND):
        with pytest.raises(InternalError, match=f"weighs {weight} but has no cure"):
            replace(BIND, weight=weight, cure=" ")


@pytest.mark.parametrize("name", ["line", "column", "width"])
def test_place_counts_from_one(name: str) -> None:
    counts = {"line": 3, "column": 5, "width": 2} | {name: 0}
    with pytest.raises(OutOfRangeError, match=f"{name} 0 of a place in piece.toml"):
        Place(file="piece.toml", **counts)


def test_place_reads_as_file_line_and_column() -> None:
    assert str(place(line=41, column=9, width=3)) == "piece.toml 41:9"


# ---------------------------------------------------------------------------------- the order


def test_findings_come_by_weight_then_as_they_stand_in_the_files() -> None:
    expected = [
        replace(BIND, weight=Weight.HALT, place=place(file="boards.csv", line=30, column=2)),
        replace(BIND, weight=Weight.HALT, place=place(line=4, column=17)),
        replace(BIND, weight=Weight.HALT, place=place(line=12, column=3)),
        replace(BIND, weight=Weight.HALT, place=place(line=12, column=20), code="a.late"),
        replace(BIND, weight=Weight.HALT, place=place(line=12, column=20), code="b.early"),
        replace(BIND, weight=Weight.HALT, place=None),
        replace(BIND, weight=Weight.MIND, place=place(line=2, column=1)),
        replace(BIND, weight=Weight.NOTE, place=place(line=1, column=1)),
        replace(BIND, weight=Weight.NOTE, place=None),
    ]
    for seed in range(20):
        shuffled = random.Random(seed).sample(expected, k=len(expected))  # noqa: S311 - no secret
        assert in_order(shuffled) == tuple(expected)


def test_same_finding_twice_is_told_once() -> None:
    other = replace(BIND, says="The drawers bind in August by 1/16.")
    assert in_order([other, BIND, replace(BIND), other]) == (other, BIND)


def test_findings_at_one_place_keep_the_order_they_came_in() -> None:
    first, second = replace(BIND, says="z"), replace(BIND, says="a")
    assert in_order(iter([first, second])) == (first, second)


# ------------------------------------------------------------------------- the underlined line


@pytest.mark.parametrize(
    ("line", "guilty", "expected"),
    [
        ("wide = 42", "42", "       ^^"),
        ("wide = ½ of", "of", "         ^^"),
        ("\twide\t= x1", "x1", "\t    \t  ^^"),
        ("木 = 42", "42", "     ^^"),  # one wide sign fills two columns
        ("wide = 木材", "木材", "       ^^^^"),
        ("cafe\u0301 = 42", "42", "       ^^"),  # the accent fills none
        ("\ufeffformat = 2", "2", "         ^"),  # nor does a byte order mark
        ("ｗ = 42", "42", "     ^^"),
        ("a = 'x\ty'", "x\ty", "     ^\t^"),
    ],
)
def test_carets_stand_under_the_guilty_text(line: str, guilty: str, expected: str) -> None:
    at = place(line=2, column=line.index(guilty) + 1, width=len(guilty))
    assert underlined(f"first\n{line}\nlast", at) == f"{line}\n{expected}"


def test_two_faults_in_one_line_are_each_underlined() -> None:
    line = "sides = { thick = 3/4, wide = ½½ }"
    first = underlined(line, place(column=line.index("3/4") + 1, width=3))
    second = underlined(line, place(column=line.index("½½") + 1, width=2))
    assert first.split("\n")[1] == " " * 18 + "^^^"
    assert second.split("\n")[1] == " " * 30 + "^^"


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_lines_are_counted_as_the_file_format_counts_them(end: str) -> None:
    # TOML 1.0.0, "Spec": a new line is LF or CRLF. A line separator inside a string is none.
    text = end.join(["a = 'x\u2028y\x0by'", "b = 2", "c = 3"])
    assert underlined(text, place(line=2, column=5)) == "b = 2\n    ^"


def test_place_behind_the_end_gets_one_caret_behind_the_last_character() -> None:
    assert underlined("a = \nb = 2", place(line=1, column=5, width=3)) == "a = \n    ^"
    assert underlined("a = [", place(line=1, column=40)) == "a = [\n     ^"
    assert underlined("a = [\nb", place(line=9, column=1)) == "b\n ^"
    assert underlined("", place()) == "\n^"


def test_guilty_text_is_cut_at_the_end_of_its_line() -> None:
    assert underlined("a = '''x\ny'''", place(column=5, width=9)) == "a = '''x\n    ^^^^"


def test_guilty_text_without_a_width_still_gets_a_caret() -> None:
    assert underlined("a\u200b = 1", place(column=2)) == "a\u200b = 1\n ^"
    assert underlined("a\t= 1", place(column=2)) == "a\t= 1\n ^"


def test_signs_that_steer_a_terminal_are_shown_harmless() -> None:
    line = "a = '\x1b[2J\u202eabc'"
    shown, carets = underlined(line, place(column=line.index("abc") + 1, width=3)).split("\n")
    assert shown == "a = '\ufffd[2J\ufffdabc'"
    assert carets == " " * 10 + "^^^"


@given(
    before=st.text("ab ½木é\u0301=\ufeffｗ한", max_size=40),
    guilty=st.text("xy½木", min_size=1, max_size=9),
    after=st.text("ab ½木", max_size=9),
)
def test_carets_begin_and_end_where_a_second_width_table_puts_them(
    before: str, guilty: str, after: str
) -> None:
    at = place(column=len(before) + 1, width=len(guilty))
    line, carets = underlined(before + guilty + after, at).split("\n")
    assert line == before + guilty + after
    assert carets == " " * cell_len(before) + "^" * cell_len(guilty)


@given(length=st.integers(LONGEST_LINE + 1, 3000), share=st.floats(0, 1))
def test_of_a_very_long_line_the_part_around_the_fault_is_shown(length: int, share: float) -> None:
    begin = int(share * (length - 3))
    text = "".join(chr(ord("a") + at % 26) for at in range(length))
    text = text[:begin] + "XYZ" + text[begin + 3 :]
    line, carets = underlined(text, place(column=begin + 1, width=3)).split("\n")
    assert line[carets.index("^") :].startswith("XYZ")
    assert carets.lstrip() == "^^^"
    assert len(line.strip("…")) == LONGEST_LINE
    assert line.strip("…") in text
    assert line.startswith("…") or text.startswith(line.strip("…"))
    assert line.endswith("…") or text.endswith(line.strip("…"))


@given(
    text=st.text(max_size=60),
    line=st.integers(1, 5),
    column=st.integers(1, 50),
    width=st.integers(1, 50),
)
def test_any_place_in_any_text_gives_two_lines_and_a_caret(
    text: str, line: int, column: int, width: int
) -> None:
    shown, carets = underlined(text, place(line=line, column=column, width=width)).split("\n")
    assert "^" in carets
    assert set(carets) <= {" ", "\t", "^"}
    assert shown.isprintable() or not set(shown).intersection("\x1b\r\x07")


# --------------------------------------------------------------------------------- the telling


def test_finding_is_told_words_first_and_source_last() -> None:
    text = 'name = "x"\nstiles = "2 1/4"\n'
    assert told(BIND, source_text=text) == (
        "The doors bind in August by 1/32.\n"
        "Plane each meeting stile 1/64.\n"
        "  It is 1/32 in; the limit is 0.\n"
        "  piece.toml 2:10\n"
        '    stiles = "2 1/4"\n'
        "             ^^^^^^^\n"
        "  Wood Handbook, table 13-5"
    )


def test_finding_without_file_text_tells_its_place_alone() -> None:
    assert told(BIND, source_text=None).split("\n")[2:] == [
        "  It is 1/32 in; the limit is 0.",
        "  piece.toml 2:10",
        "  Wood Handbook, table 13-5",
    ]


def test_note_without_cure_place_or_source_is_one_line() -> None:
    note = Finding(code="stock.spare", weight=Weight.NOTE, says="One board is spare.", cure="")
    assert told(note, source_text="anything") == "One board is spare."


def test_telling_shows_no_sign_that_steers_a_terminal() -> None:
    sly = replace(BIND, says="\x1b]0;no\x07 wide", place=place(file="a\x1b[2J"))
    assert "\x1b" not in told(sly, source_text="\x1b[31m")
