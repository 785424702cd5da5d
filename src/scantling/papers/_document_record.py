"""What `setting-out.json` tells of the build record: entries, parts cut, what changed by them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field
from typing_extensions import TypedDict

from scantling.papers._changes import reads_now
from scantling.papers._document_length import Length, closed
from scantling.papers._paper import Rule, rule_of
from scantling.papers._year import length_of
from scantling.record.entry import Correction, Done, Entry, Note, Reading, Said
from scantling.setting_out import SettingOut
from scantling.setting_out.recorded import Changed

KINDS = {Reading: "measured", Done: "done", Note: "note", Correction: "correction"}


@closed
class Kept(TypedDict):
    """One entry of the record."""

    number: int
    at: Annotated[str, Field(description="By the sender's clock, ISO 8601.")]
    kind: Literal["measured", "done", "note", "correction"]
    says: str
    of: Annotated[str, Field(description="Size or part that it is of; empty for words alone.")]
    holds: Annotated[bool, Field(description="Whether no later entry corrects it.")]


@closed
class Change(TypedDict):
    """A size that is no more what it was to be."""

    name: str
    was: Length
    now: Length
    because: str
    measured: bool


@closed
class RecordTold(TypedDict):
    """What was measured and done so far, and what it has changed."""

    entries: list[Kept]
    cut: Annotated[list[str], Field(description="Parts that stay as they were cut.")]
    changed: list[Change]


def record_told(setting_out: SettingOut) -> RecordTold:
    """The record of a piece, the latest entry last."""
    rule = rule_of(setting_out)
    entries = setting_out.record.entries
    numbers = {entry.id: entry.number for entry in entries}
    corrected = {e.said.of for e in entries if isinstance(e.said, Correction)}
    return {
        "entries": [_entry(e, numbers, holds=e.id not in corrected) for e in entries],
        "cut": sorted(setting_out.facts.cut),
        "changed": [_change(each, rule) for each in setting_out.changed],
    }


def _entry(entry: Entry, numbers: dict[str, int], *, holds: bool) -> Kept:
    kind: Literal["measured", "done", "note", "correction"] = KINDS[type(entry.said)]  # type: ignore[assignment] # one of these four
    return {
        "number": entry.number,
        "at": entry.at,
        "kind": kind,
        "says": _says(entry.said, numbers),
        "of": _of(entry.said),
        "holds": holds,
    }


def _says(said: Said, numbers: dict[str, int]) -> str:
    if isinstance(said, Reading):
        return f"{_spoken(said.name)} reads {', '.join(said.texts)}"
    if isinstance(said, Done):
        return said.what
    if isinstance(said, Note):
        return said.text
    of = f"entry {numbers.get(said.of, 0)}"
    return (
        f"{of} is taken back" if said.instead is None else f"{of}: {_says(said.instead, numbers)}"
    )


def _of(said: Said) -> str:
    if isinstance(said, Reading):
        return said.name
    return said.part if isinstance(said, Done) else ""


def _spoken(name: str) -> str:
    return name.replace(".", " ")


def _change(changed: Changed, rule: Rule) -> Change:
    value = length_of(changed.value, rule)
    return {
        "name": changed.name,
        "was": length_of(changed.was, rule),
        "now": {**value, "as_written": reads_now(changed, rule)},
        "because": changed.because,
        "measured": changed.is_fact,
    }
