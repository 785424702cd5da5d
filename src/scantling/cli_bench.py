"""What is said at the bench by command line: measured, done, a note, a correction."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated
from uuid import uuid4

from cyclopts import App, Parameter

if TYPE_CHECKING:
    from scantling.findings import Finding
    from scantling.record.entry import Record, Said
    from scantling.setting_out import SettingOut

CLEAN, HALTED = 0, 1


@dataclass(frozen=True, kw_only=True)
class Desk:
    """How a command comes to its piece and is heard."""

    worked: Callable[[Path], SettingOut]
    file_of: Callable[[Path], Path]  # of a piece named by its file or its folder
    say: Callable[[str], None]


def add_to(app: App, desk: Desk) -> None:
    """Add these commands to a program."""

    @app.command
    def measured(
        piece: Path,
        size: str,
        *readings: str,
        sure: Annotated[bool, Parameter(help="It is so, odd as it looks.", negative=())] = False,
    ) -> int:
        """Keep what was read off a made part; what is not cut yet follows it."""
        from scantling.setting_out.saying import measured as heard

        before = desk.worked(piece)
        return _kept(desk, piece, heard(before, size=size, readings=readings, sure=sure))

    @app.command
    def done(piece: Path, part: str) -> int:
        """Keep that a part is cut: it stays as it is from now on."""
        from scantling.setting_out.saying import done as heard

        return _kept(desk, piece, heard(desk.worked(piece), part=part))

    @app.command
    def note(piece: Path, text: str) -> int:
        """Keep words for later."""
        from scantling.record.entry import Note

        return _kept(desk, piece, Note(text=text))

    @app.command
    def correct(piece: Path, entry: int, *readings: str) -> int:
        """Take an entry of the record back, or give other readings in its place."""
        return _kept(desk, piece, _correction(desk, piece, entry, readings))


def _correction(desk: Desk, piece: Path, number: int, readings: Sequence[str]) -> Said | Finding:
    from scantling.findings import Finding
    from scantling.record.entry import Reading
    from scantling.setting_out.saying import correction, measured

    record = record_of(desk.file_of(piece).parent)
    wrong = next((entry.said for entry in record.entries if entry.number == number), None)
    instead = None
    if readings and isinstance(wrong, Reading):
        found = measured(desk.worked(piece), size=wrong.name, readings=readings)
        if isinstance(found, Finding):
            return found
        instead = found
    return correction(record, number=number, instead=instead)


def record_of(folder: Path) -> Record:
    """The record that lies beside a piece; an empty one where there is none."""
    from scantling.record.keeping import Folder
    from scantling.record.reading import FILE, read

    return read(Folder(folder).content(FILE))


def _kept(desk: Desk, piece: Path, said: Said | Finding) -> int:
    """Keep it and tell what follows; 1 where it could not be kept, or halts the work."""
    from scantling.findings import Finding, Weight, told
    from scantling.record.entry import Entry
    from scantling.record.keeping import Folder, NotKeptError, keep

    if isinstance(said, Finding):
        desk.say(told(said, source_text=None))
        return HALTED
    entry = Entry(id=uuid4().hex, at=datetime.now(UTC).isoformat(timespec="seconds"), said=said)
    try:
        kept = keep(entry, disk=Folder(desk.file_of(piece).parent))
    except NotKeptError as fault:
        desk.say(f"It was not kept: {fault}")
        return HALTED
    desk.say(f"Entry {kept.number} is kept.")
    after = desk.worked(piece)
    for line in changed(after):
        desk.say(line)
    for finding in after.findings:
        if finding.weight is Weight.HALT:
            desk.say(f"{finding.weight}: {told(finding, source_text=None)}")
    return HALTED if after.halts else CLEAN


def changed(piece: SettingOut) -> Sequence[str]:
    """What is no more as it was planned, a line each: was, is, because."""
    from scantling.papers._changes import reads_now
    from scantling.papers._paper import rule_of

    rule = rule_of(piece)
    unit = rule.unit.sign
    return [
        f"{each.name}: was {rule.reads(each.was)} {unit}, is {reads_now(each, rule)} {unit},"
        f" because {each.because}"
        for each in piece.changed
    ]
