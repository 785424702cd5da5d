"""Lengths exchanged in a file that the maker's editor may change at any moment."""

import stat
import tempfile
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from scantling.web.edits import Edits, NotWrittenError, OutsideEditError, mark

TEXT = """# a box
format = 1
name = "Box"
measure = "inch"

[case]
wide  = 42      # without the top
deep  = '8"'
tall  = "380 mm" # metric
"""
WIDE, DEEP, TALL = ("case", "wide"), ("case", "deep"), ("case", "tall")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "piece.toml"
    found.write_text(TEXT)
    return found


@pytest.fixture
def edits(file: Path) -> Edits:
    return Edits(file)


def now(file: Path) -> str:
    return mark(file.read_bytes())


@pytest.mark.parametrize(
    ("path", "typed", "change"),
    [
        (WIDE, "43", ("42", "43")),
        (WIDE, "43 1/2", ("42", '"43 1/2"')),
        (DEEP, "8 1/2", ("8\"'", "8 1/2\"'")),
        (TALL, "400", ("380 mm", "400 mm")),
    ],
)
def test_one_value_changes_and_every_other_sign_stays(
    edits: Edits, file: Path, path: tuple[str, ...], typed: str, change: tuple[str, str]
) -> None:
    edits.write(path, typed, over=now(file))
    assert file.read_text() == TEXT.replace(*change)


def test_the_mode_of_the_file_stays(edits: Edits, file: Path) -> None:
    file.chmod(0o600)
    edits.write(WIDE, "43", over=now(file))
    assert stat.S_IMODE(file.stat().st_mode) == 0o600


@pytest.mark.parametrize(
    ("typed", "code", "guilty"),
    [
        ("nine", "piece.length", 'wide  = "'),
        ("0", "piece.length-sign", "wide  = "),
        ("-3", "piece.length-sign", "wide  = "),
        ("4200", "piece.length-slip", "wide  = "),
        ("x" * 80, "piece.length", 'wide  = "' + "x" * 60),
        ('43" # "', "piece.length", "wide  = '43\" "),
        ("43\n[top]", "piece.length", r'wide  = "43\n['),
    ],
)
def test_a_wrong_length_is_told_as_the_file_would_be_told_and_nothing_is_written(
    edits: Edits, file: Path, typed: str, code: str, guilty: str
) -> None:
    with pytest.raises(NotWrittenError) as told:
        edits.write(WIDE, typed, over=now(file))
    finding = told.value.finding
    assert finding.code == code
    assert finding.place
    line = told.value.text.splitlines()[finding.place.line - 1]
    assert line[: finding.place.column - 1] == guilty
    assert file.read_text() == TEXT


def test_an_outside_edit_is_not_written_over(edits: Edits, file: Path) -> None:
    seen = now(file)
    theirs = TEXT.replace("# metric", "# measured twice")
    file.write_text(theirs)
    with pytest.raises(OutsideEditError):
        edits.write(WIDE, "43", over=seen)
    assert file.read_text() == theirs
    edits.write(WIDE, "43", over=now(file))  # the maker has chosen
    assert file.read_text() == theirs.replace("42", "43")


def test_an_edit_that_comes_while_we_read_is_not_written_over(
    edits: Edits, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    theirs = TEXT.replace("# metric", "# measured twice")

    def slow(old: str, new: str, *, unit: object) -> str:
        del old, unit
        file.write_text(theirs)
        return new

    monkeypatch.setattr("scantling.web.edits.like", slow)
    with pytest.raises(OutsideEditError):
        edits.write(WIDE, "43", over=now(file))
    assert file.read_text() == theirs


def test_edits_are_taken_back_and_put_again_byte_for_byte(edits: Edits, file: Path) -> None:
    text = TEXT.replace("\n", "\r\n").encode("utf-8-sig")
    file.write_bytes(text)
    edits.write(WIDE, "43", over=now(file))
    first = file.read_bytes()
    edits.write(DEEP, "9", over=now(file))
    second = file.read_bytes()
    edits.take_back()
    assert file.read_bytes() == first
    edits.take_back()
    assert file.read_bytes() == text
    edits.put_again()
    edits.put_again()
    assert file.read_bytes() == second


def test_what_is_taken_back_is_said(edits: Edits, file: Path) -> None:
    edits.write(TALL, "400", over=now(file))
    last = edits.last(file.read_bytes())
    assert last
    assert last.says == "case tall: 380 mm, now 400 mm"
    edits.take_back()
    assert edits.last(file.read_bytes()) is None
    again = edits.next(file.read_bytes())
    assert again == last


def test_a_new_edit_forgets_what_was_taken_back(edits: Edits, file: Path) -> None:
    edits.write(WIDE, "43", over=now(file))
    edits.take_back()
    edits.write(WIDE, "44", over=now(file))
    with pytest.raises(OutsideEditError):
        edits.put_again()


def test_nothing_is_taken_back_over_an_outside_edit(edits: Edits, file: Path) -> None:
    edits.write(WIDE, "43", over=now(file))
    theirs = file.read_text() + "# signed\n"
    file.write_text(theirs)
    assert edits.last(file.read_bytes()) is None
    with pytest.raises(OutsideEditError):
        edits.take_back()
    assert file.read_text() == theirs


def test_the_same_value_is_no_edit(edits: Edits, file: Path) -> None:
    before = file.stat().st_ino
    edits.write(WIDE, " 42 ", over=now(file))
    assert file.stat().st_ino == before
    assert edits.last(file.read_bytes()) is None


def test_a_value_that_is_gone_is_said(edits: Edits, file: Path) -> None:
    file.write_text("format = 1\n[case]\n")
    with pytest.raises(NotWrittenError, match="no longer says anything of case wide") as told:
        edits.write(WIDE, "43", over=now(file))
    assert told.value.finding.code == "page.not-said"


def test_a_file_that_is_no_text_is_left_alone(edits: Edits, file: Path) -> None:
    file.write_bytes(TEXT.encode() + b"\xff")
    with pytest.raises(NotWrittenError) as told:
        edits.write(WIDE, "43", over=now(file))
    assert told.value.finding.code == "page.unreadable"
    assert file.read_bytes() == TEXT.encode() + b"\xff"


def test_a_file_that_cannot_be_written_is_said(
    edits: Edits, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def closed(path: Path, content: bytes) -> None:
        del path, content
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("scantling.web.edits.replaced", closed)
    with pytest.raises(NotWrittenError, match="cannot be written: Permission denied") as told:
        edits.write(WIDE, "43", over=now(file))
    assert told.value.finding.code == "page.closed"
    assert edits.last(file.read_bytes()) is None


def test_a_broken_line_elsewhere_does_not_hinder(edits: Edits, file: Path) -> None:
    broken = TEXT + "deep = = 3\n[top\n"
    file.write_text(broken)
    edits.write(WIDE, "43", over=now(file))
    assert file.read_text() == broken.replace("42", "43")


class TwoEditors(RuleBasedStateMachine):
    """The page and an editor at one file: nothing the editor wrote is ever lost."""

    @initialize()
    def begin(self) -> None:
        self.folder = tempfile.TemporaryDirectory()
        self.file = Path(self.folder.name) / "piece.toml"
        self.file.write_text(TEXT)
        self.edits = Edits(self.file)
        self.seen = now(self.file)
        self.notes = 0

    @rule(value=st.integers(3, 99))
    def page_writes(self, value: int) -> None:
        outside = now(self.file) != self.seen
        try:
            self.edits.write(WIDE, str(value), over=self.seen)
        except OutsideEditError:
            assert outside
        else:
            assert not outside
            self.seen = now(self.file)

    @rule()
    def editor_adds_a_note(self) -> None:
        self.notes += 1
        self.file.write_text(f"{self.file.read_text()}# note {self.notes}\n")

    @rule()
    def page_looks(self) -> None:
        self.seen = now(self.file)

    @rule()
    def page_takes_back(self) -> None:
        before = self.file.read_bytes()
        try:
            self.edits.take_back()
        except OutsideEditError:
            assert self.file.read_bytes() == before
        self.seen = now(self.file)

    @rule()
    def page_puts_again(self) -> None:
        before = self.file.read_bytes()
        try:
            self.edits.put_again()
        except OutsideEditError:
            assert self.file.read_bytes() == before
        self.seen = now(self.file)

    @invariant()
    def every_note_is_there(self) -> None:
        if hasattr(self, "file"):
            text = self.file.read_text()
            assert all(f"# note {n}\n" in text for n in range(1, self.notes + 1))
            assert text.count("\n") == TEXT.count("\n") + self.notes

    def teardown(self) -> None:
        if hasattr(self, "folder"):
            self.folder.cleanup()


TestTwoEditors = TwoEditors.TestCase
TestTwoEditors.settings = settings(max_examples=15, stateful_step_count=12, deadline=None)
