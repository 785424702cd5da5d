"""A whole piece file: what it says, where it says it, and what it leaves to the house."""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from tests.piece.bench import HEAD, HalfBlind, Housing, Tenon, read_here

from scantling.errors import InternalError, UnknownNameError
from scantling.findings import Place, Weight
from scantling.joints._joint import Said
from scantling.piece import Asked, Piece
from scantling.piece._file.section import words_of
from scantling.piece._read import unknown_names
from scantling.piece._section import AsBoardsGive, JointWanted, Length, Section
from scantling.units import INCH, Unit

TEXT = (Path(__file__).parent / "example.toml").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def piece() -> Piece:
    return read_here(TEXT)


def asked(piece: Piece, name: str) -> Any:  # noqa: ANN401 - a section of the tests' own
    return next(each.said for each in piece.sections if each.name == name)


def line_of(signs: str) -> int:
    return TEXT[: TEXT.index(signs)].count("\n") + 1


def test_a_sound_file_has_no_findings(piece: Piece) -> None:
    assert piece.findings == ()
    assert piece.readable
    assert piece.complete


def test_the_head_is_read(piece: Piece) -> None:
    assert piece.name == "Small case"
    assert piece.whole.measure is Unit.INCH
    assert piece.finest == INCH / 32
    assert piece.shop == "../shop.toml"
    assert piece.notes == ("oil it twice", "no knots")


def test_the_rule_is_fine_enough_where_the_file_does_not_say() -> None:
    assert read_here(HEAD + "[case]\nwide = 3\n").finest == INCH / 32
    in_mm = HEAD.replace("inch", "mm") + "[case]\nwide = 3\n"
    assert read_here(in_mm).finest == Fraction(1, 2)


@pytest.mark.parametrize(
    ("text", "finest"),
    [
        ('"1/64"', INCH / 64),
        ('"1/10 in"', INCH / 10),
        ('"0.5 mm"', Fraction(1, 2)),
        ("0.125", INCH / 8),
    ],
)
def test_marks_of_a_rule_are_read(text: str, finest: Fraction) -> None:
    found = read_here(HEAD.replace("[room]", f"finest = {text}\n[room]") + "[case]\nwide = 3\n")
    other = "mm" in text  # a rule that does not read the piece's measure is told of, and taken
    assert [f.code for f in found.findings] == ["piece.other-rule"] * other
    assert found.finest == finest


def test_the_air_of_the_room_is_read(piece: Piece) -> None:
    room = piece.whole.room
    assert (room.dry.humidity, room.dry.temperature) == (40, 18)
    assert room.damp.temperature == pytest.approx(20)  # 68 °F is 20 °C
    assert (room.bench.humidity, room.bench.temperature) == (38, 17)


def test_woods_are_read_with_their_cut(piece: Piece) -> None:
    woods = {name: (wood.species, wood.cut) for name, wood in piece.whole.woods.items()}
    assert woods == {
        "show": ("white ash", "flat"),
        "inside": ("yellow-poplar", "flat"),
        "door stiles": ("white ash", "rift"),
        "drawer sides": ("yellow-poplar", "quarter"),
    }


def test_sections_come_in_the_order_of_the_file(piece: Piece) -> None:
    names = [(each.form, each.name) for each in piece.sections]
    assert names == [
        ("case", "case"),
        ("shelf", "deck"),
        ("shelf", "loose one"),
        ("face frame", "face frame"),
        ("doors", "doors"),
    ]
    deck = next(each for each in piece.sections if each.name == "deck")
    assert isinstance(deck, Asked)
    assert deck.place == Place(file="piece.toml", line=line_of("[shelf.deck]"), column=1, width=12)


def test_lengths_are_exact_and_know_their_place(piece: Piece) -> None:
    case = asked(piece, "case")
    assert case.wide == Said(
        value=42 * INCH,
        text="42",
        place=Place(file="piece.toml", line=line_of("wide  = 42"), column=9, width=2),
    )
    assert case.deep.value == Fraction(73, 4) * INCH
    assert case.tall.value == 37 * INCH
    assert case.sides.thick.value == Fraction(3, 4) * INCH
    assert asked(piece, "face frame").stiles.value == 45


def test_a_decimal_never_passes_through_a_float(piece: Piece) -> None:
    deck = asked(piece, "deck")
    assert deck.joint.joint.deep.value == INCH / 10
    assert Fraction(0.1) != Fraction(1, 10)  # what a float would have made of it


def test_a_joint_is_made_with_its_options(piece: Piece) -> None:
    bottom = asked(piece, "case").bottom
    assert isinstance(bottom, JointWanted)
    joint = bottom.joint
    assert isinstance(joint, Housing)
    assert joint.stopped is True
    assert joint.deep is not None
    assert joint.deep.value == INCH / 4
    assert joint.place == Place(
        file="piece.toml", line=line_of("bottom = {"), column=21, width=len("housing")
    )


def test_what_a_form_lets_stand_beside_a_joint_is_found_there(piece: Piece) -> None:
    case = asked(piece, "case")
    top_face = case.bottom.said("top_face")
    assert top_face is not None
    assert top_face.value == 4 * INCH
    assert case.rails_under_top.count("count") == 2
    assert case.rails_under_top.said("wide").text == "2 1/2"
    with pytest.raises(UnknownNameError, match="no 'colour'"):
        case.bottom.said("colour")


def test_a_joint_that_is_not_named_is_the_usual_one(piece: Piece) -> None:
    joint = asked(piece, "case").rails_under_top.joint
    assert isinstance(joint, HalfBlind)
    assert joint.tails == 1
    assert joint.slope is not None
    assert joint.slope.value == Fraction(1, 6)


def test_a_joint_that_is_not_said_at_all_is_the_usual_one(piece: Piece) -> None:
    assert "meeting" not in TEXT[TEXT.index("[doors]") : TEXT.index("gaps")]
    assert asked(piece, "doors").meeting.joint.title == "housing"


def test_options_may_stand_beside_the_joint_in_its_section(piece: Piece) -> None:
    frame = asked(piece, "face frame")
    assert isinstance(frame.joint.joint, Tenon)
    assert frame.joint.joint.tenon == Said(
        value=Fraction(5, 4) * INCH,
        text='1 1/4"',
        place=Place(file="piece.toml", line=line_of("tenon  ="), column=11, width=6),
    )


def test_rows_keep_their_order_and_place(piece: Piece) -> None:
    rows = asked(piece, "face frame").rows
    assert [row.rail or row.opening or row.foot.text for row in rows] == ["top rail", "doors", "1"]
    assert rows[1].at("opening").line == line_of("{ opening")
    assert rows[1].place == Place(file="piece.toml", line=line_of("{ opening"), column=3)
    assert rows[1].at("tall") == rows[1].place


def test_what_is_not_said_is_left_to_the_house(piece: Piece) -> None:
    assert asked(piece, "deck").count is None
    assert asked(piece, "face frame").rows[1].tall is None


def test_counts_words_loads_and_pairs_are_read(piece: Piece) -> None:
    loose, doors = asked(piece, "loose one"), asked(piece, "doors")
    assert loose.count == 2
    assert loose.count.place.line == line_of("count = 2\n")
    assert isinstance(loose.thick, AsBoardsGive)
    load = asked(piece, "deck").load
    assert (load.amount, load.unit) == (50, "lb/ft2")
    assert doors.fill == "doors"
    assert doors.pair is True
    assert doors.gaps.hinge.value == 0
    assert (doors.hinge.first.value, doors.hinge.second.value) == (
        Fraction(5, 2) * INCH,
        Fraction(11, 8) * INCH,
    )
    assert doors.hinge.second.place.column == 18


def test_sizes_said_by_name_are_read(piece: Piece) -> None:
    assert [(s.name, s.value) for s in piece.also] == [
        ("left side.width", Fraction(69, 4) * INCH),
        ("mid rail.length", 41 * INCH),
    ]
    ((name, place),) = piece.as_boards_give
    assert name == "left side.thickness"
    assert place.line == line_of('"left side.thickness"')


def test_lengths_without_a_unit_are_in_the_measure_of_the_file() -> None:
    found = read_here(HEAD.replace("inch", "mm") + "[case]\nwide = 42\ndeep = '1 in'\n")
    case = asked(found, "case")
    assert (case.wide.value, case.deep.value) == (42, INCH)


@pytest.mark.parametrize("spelt", ["face_frame", '"face frame"', "face-frame", '"Face Frame"'])
def test_space_hyphen_underscore_and_capitals_are_equal(spelt: str) -> None:
    found = read_here(TEXT.replace("face_frame", spelt))
    assert found.findings == ()
    assert asked(found, "face frame").stiles.value == 45


def test_a_file_with_faults_still_says_the_rest() -> None:
    found = read_here(TEXT.replace("wide  = 42", "wide  = 42 x"))
    assert not found.complete
    assert found.readable
    assert [each.name for each in found.sections][:2] == ["deck", "loose one"]


@pytest.mark.parametrize("text", ["", "\n\n", "hello", "\0\0PK", "{}", "# only a comment"])
def test_another_kind_of_file_is_no_piece(text: str) -> None:
    found = read_here(text)
    assert not found.readable
    assert [each.code for each in found.findings] == ["piece.not-a-piece"]


def test_a_file_too_long_for_a_piece_is_no_piece() -> None:
    found = read_here(HEAD + "#" * 200_000)
    assert [each.code for each in found.findings] == ["piece.not-a-piece"]


def test_a_newer_file_is_not_guessed_at() -> None:
    found = read_here(TEXT.replace("format  = 1", "format  = 2"))
    assert not found.readable
    assert [each.code for each in found.findings] == ["piece.newer-format"]


def test_a_byte_order_mark_and_carriage_returns_change_nothing(piece: Piece) -> None:
    other = read_here("\ufeff" + TEXT.replace("\n", "\r\n"))
    assert other.findings == ()
    assert other.sections == piece.sections


def test_findings_name_the_file_they_were_given() -> None:
    (finding,) = read_here("x", file="pieces/box/piece.toml").findings
    assert finding.place is not None
    assert finding.place.file == "pieces/box/piece.toml"


def test_faults_come_in_the_order_of_the_file() -> None:
    text = HEAD + "[case]\nwide = 3/4\ndepp = 1\nsides = { thick = 0, x = 1 }\n[dors]\n"
    places = [each.place for each in read_here(text).findings]
    assert places == sorted(places, key=str)
    assert len(places) == 5


def test_one_word_for_two_fields_is_the_fault_of_the_form() -> None:
    class Muddled(Section):
        top_face: Length | None = None
        TOP_FACE: Length | None = None

    with pytest.raises(InternalError, match="top face"):
        words_of(Muddled)


def test_a_size_or_part_that_the_piece_has_not_is_found(piece: Piece) -> None:
    sizes = {"left side.thickness", "left side.width", "mid rail.length"}
    parts = {"door stile", "drawer side", "mid rail"}
    assert unknown_names(piece, sizes=sizes, parts=parts) == ()
    other, one = unknown_names(
        piece, sizes=sizes - {"left side.width"}, parts=parts - {"door stile"}
    )
    assert (one.code, one.weight) == ("piece.unknown-part", "mind")
    # drawer sides are near, but what is said of doors that are gone is no misspelling
    assert one.cure == "It may stay for the day there is one."
    misspelt = parts - {"door stile"} | {"door style"}
    (one,) = unknown_names(piece, sizes=sizes, parts=misspelt)
    assert one.cure == 'Perhaps "door styles" is meant.'
    assert (one.weight, other.weight) == (Weight.MIND, Weight.HALT)
    assert (other.code, other.cure) == ("piece.unknown-size", 'Perhaps "left side.thickness".')
    assert other.place is not None
    assert other.place.line == line_of('"Left-side.width"')
