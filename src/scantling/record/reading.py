"""Reads the record: whole lines are facts, a torn last one is set aside, a damaged one stops it."""

from __future__ import annotations

from scantling.findings import Finding, Place, Weight
from scantling.record.entry import Entry, Record
from scantling.record.line import DamagedError, NewerError, entry_of

FILE = "record.jsonl"
ASIDE = "record-torn.txt"  # beside it: lines that were cut off, for whoever wants to look


def read(content: bytes, *, file: str = FILE) -> Record:
    """Everything that was kept.

    Args:
        content: The file as it lies there; nothing where there is none.
        file: Its name, for findings.
    """
    entries: dict[str, Entry] = {}
    findings: list[Finding] = []
    sound, lines = 0, content.splitlines(keepends=True)
    for i, line in enumerate(lines, start=1):
        place = Place(file=file, line=i, column=1, width=max(len(line.rstrip()), 1))
        try:
            entry = entry_of(line)
        except NewerError:
            return _stopped(entries, [*findings, _newer(place)], sound)
        except DamagedError as damage:
            if i < len(lines):
                return _stopped(entries, [*findings, _damaged(place, str(damage))], sound)
            findings.append(_torn(place))
            return Record(
                entries=tuple(entries.values()),
                findings=tuple(findings),
                sound=sound,
                torn=content[sound:],
            )
        sound += len(line)
        findings += _out_of_line(entry, entries, place)
        # a message that came twice is the same message: the first counts
        entries.setdefault(entry.id, _placed(entry, place))
    return Record(entries=tuple(entries.values()), findings=tuple(findings), sound=sound)


def _placed(entry: Entry, place: Place) -> Entry:
    return Entry(id=entry.id, at=entry.at, said=entry.said, number=entry.number, place=place)


def _stopped(entries: dict[str, Entry], findings: list[Finding], sound: int) -> Record:
    return Record(
        entries=tuple(entries.values()), findings=tuple(findings), sound=sound, is_damaged=True
    )


def _out_of_line(entry: Entry, earlier: dict[str, Entry], place: Place) -> list[Finding]:
    """What is odd about an entry that is whole: another of its name, or a number left out."""
    before = earlier.get(entry.id)
    if before is not None and (before.said, before.at) != (entry.said, entry.at):
        return [
            Finding(
                code="record.name-used-twice",
                weight=Weight.MIND,
                says=f"Two entries of the record have one name, {entry.id}; the first counts.",
                cure="If the second is true, say it again.",
                place=place,
            )
        ]
    due = 1 + max((known.number for known in earlier.values()), default=0)
    if before is None and entry.number != due:
        return [
            Finding(
                code="record.number-missing",
                weight=Weight.MIND,
                says=f"Entry {due} of the record is missing; entry {entry.number} follows.",
                cure="Look whether a line was taken out, and say again what stood there.",
                place=place,
                figure=str(entry.number),
                limit=str(due),
            )
        ]
    return []


def _torn(place: Place) -> Finding:
    return Finding(
        code="record.last-line-torn",
        weight=Weight.MIND,
        says="The last line of the record was cut off while it was written and does not count.",
        cure=f"Say it again; the next entry moves the rest of it to {ASIDE}.",
        place=place,
    )


def _damaged(place: Place, why: str) -> Finding:
    return Finding(
        code="record.line-damaged",
        weight=Weight.HALT,
        says=f"Line {place.line} of the record is not what was written: {why}. What follows it"
        " does not count.",
        cure="Put the file back from a copy, or mend that line as it was; nothing is written to"
        " the record before.",
        place=place,
    )


def _newer(place: Place) -> Finding:
    return Finding(
        code="record.newer-format",
        weight=Weight.HALT,
        says=f"Line {place.line} of the record was written by a newer scantling.",
        cure="Go on with that one; nothing is written to the record before.",
        place=place,
    )
