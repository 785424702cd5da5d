"""What stands in the build record, one entry after the other, never changed afterwards."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from scantling.exact import Fraction
from scantling.findings import Finding, Place


@dataclass(frozen=True, kw_only=True)
class Reading:
    """A made thing was measured."""

    name: str  # of the size
    texts: tuple[str, ...]  # as the maker read them, each with its unit
    values: tuple[Fraction, ...]  # the same [mm]


@dataclass(frozen=True, kw_only=True)
class Done:
    """Something was done. What was cut is a fact from then on."""

    what: str  # the step, in the words of the order of work
    part: str = ""  # that was cut by it, if one was
    sizes: Mapping[str, Fraction] = field(default_factory=dict)  # it was cut to [mm]


@dataclass(frozen=True, kw_only=True)
class Note:
    """Words for later."""

    text: str


@dataclass(frozen=True, kw_only=True)
class Correction:
    """An earlier entry was wrong: it holds no more, and what stands here holds in its place."""

    of: str  # id of the earlier entry
    instead: Reading | Done | Note | None = None  # None: it is only taken back


Said = Reading | Done | Note | Correction


@dataclass(frozen=True, kw_only=True)
class Entry:
    """One line of the record."""

    id: str  # made by the sender, so that a message sent twice counts once
    at: str  # when, by the sender's clock: ISO 8601
    said: Said
    number: int = 0  # running, from 1; 0 before it is kept
    place: Place | None = None  # where it stands, once it does


@dataclass(frozen=True, kw_only=True)
class Record:
    """The record as read."""

    entries: tuple[Entry, ...] = ()  # in the order they were kept, each id once
    findings: tuple[Finding, ...] = ()
    sound: int = 0  # bytes up to which all lines are whole [count]
    torn: bytes = b""  # what follows them: a last line that was cut off
    is_damaged: bool = False  # a line in the middle is no more what was written


NOTHING_RECORDED = Record()
