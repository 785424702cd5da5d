"""An entry as a line of text, with a checksum over all that stands in it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping
from typing import Any

from scantling.errors import LengthError, ScantlingError
from scantling.exact import Fraction, from_figures
from scantling.record.entry import Correction, Done, Entry, Note, Reading, Said
from scantling.units import Unit, length

FORMAT = 1
DIGITS = 16  # of a checksum: 64 bits tell any slip of a disk


class DamagedError(ScantlingError):
    """A line is not what was written. Only for the room itself."""


class NewerError(ScantlingError):
    """A line is of a format this house does not know. Only for the room itself."""


def line_of(entry: Entry) -> bytes:
    """The entry as a line, its end included."""
    told = {
        "format": FORMAT,
        "number": entry.number,
        "id": entry.id,
        "at": entry.at,
        **_told(entry.said),
    }
    return _json({**told, "check": _check(told)}) + b"\n"


def entry_of(line: bytes) -> Entry:
    """The entry that stands in a line.

    Raises:
        DamagedError: The line is no entry, or not the one that was written.
        NewerError: Its format is newer than this house.
    """
    try:
        told = json.loads(line)
    except ValueError:
        raise DamagedError("it cannot be read") from None
    if not isinstance(told, dict) or told.pop("check", None) != _check(told):
        raise DamagedError("its checksum does not agree")
    if told.get("format") != FORMAT or told.get("kind") not in _READERS:
        raise NewerError(f"format {told.get('format')}, kind {told.get('kind')}")
    try:
        said = _READERS[told["kind"]](told)
        return Entry(number=told["number"], id=told["id"], at=told["at"], said=said)
    except (KeyError, TypeError, ValueError, LengthError):
        raise DamagedError("something is missing in it") from None


def _json(told: Mapping[str, Any]) -> bytes:
    return json.dumps(told, sort_keys=True, ensure_ascii=False, separators=(",", ":")).encode()


def _check(told: Mapping[str, Any]) -> str:
    return hashlib.sha256(_json(told)).hexdigest()[:DIGITS]


def _told(said: Said) -> dict[str, Any]:
    if isinstance(said, Reading):
        return {"kind": "measured", "name": said.name, "readings": list(said.texts)}
    if isinstance(said, Done):
        sizes = {name: str(value) for name, value in said.sizes.items()}
        return {"kind": "done", "what": said.what, "part": said.part, "sizes_mm": sizes}
    if isinstance(said, Note):
        return {"kind": "note", "text": said.text}
    instead = None if said.instead is None else _told(said.instead)
    return {"kind": "correction", "of": said.of, "instead": instead}


def _reading(told: Mapping[str, Any]) -> Reading:
    texts = tuple(map(str, told["readings"]))
    values = tuple(length(text, unit=Unit.MM) for text in texts)
    return Reading(name=told["name"], texts=texts, values=values)


def _done(told: Mapping[str, Any]) -> Done:
    sizes: dict[str, Fraction] = {n: from_figures(text) for n, text in told["sizes_mm"].items()}
    return Done(what=told["what"], part=told["part"], sizes=sizes)


def _note(told: Mapping[str, Any]) -> Note:
    return Note(text=told["text"])


def _correction(told: Mapping[str, Any]) -> Correction:
    inner = told["instead"]
    found = None if inner is None else _READERS[inner["kind"]](inner)
    if isinstance(found, Correction):
        raise DamagedError("a correction corrects a correction")
    return Correction(of=told["of"], instead=found)


_READERS: Mapping[str, Callable[[Mapping[str, Any]], Said]] = {
    "measured": _reading,
    "done": _done,
    "note": _note,
    "correction": _correction,
}
