"""Values of the piece file exchanged from the page, taken back and put again.

The maker's own editor is an equal: whatever it wrote since the page last saw the file is never
written over. Every act names the text it was made over by its mark; if the file holds another
text by then, nothing is written and the act is told so.
"""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from scantling.errors import LengthError, ScantlingError
from scantling.findings import Finding, Weight
from scantling.piece import read
from scantling.piece._file.like import like
from scantling.piece._file.rewrite import rewritten
from scantling.piece._file.spots import Spot, spots
from scantling.units import Unit
from scantling.web.replace import replaced

MOST = 200  # edits that can be taken back


class OutsideEditError(ScantlingError):
    """The file holds another text than the one an act was made over."""


class NotWrittenError(ScantlingError):
    """Nothing was written, for the reason found.

    Args:
        finding: What is wrong with what was to be written.
        text: The file as it would have been, which the finding points into.
    """

    def __init__(self, finding: Finding, *, text: str = "") -> None:
        super().__init__(finding.says)
        self.finding = finding
        self.text = text


@dataclass(frozen=True, kw_only=True)
class Edit:
    """One exchange of a value."""

    says: str  # `case wide: 42, now 43`
    before: bytes
    after: bytes


def mark(content: bytes) -> str:
    """Differs whenever the content does."""
    return hashlib.sha256(content).hexdigest()[:32]


class Edits:
    """What the page did to one file, in order."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._done: list[Edit] = []
        self._undone: list[Edit] = []
        self._lock = threading.Lock()

    def last(self, content: bytes) -> Edit | None:
        """The edit that can be taken back while the file holds `content`."""
        return self._done[-1] if self._done and self._done[-1].after == content else None

    def next(self, content: bytes) -> Edit | None:
        """The edit that can be put again while the file holds `content`."""
        return self._undone[-1] if self._undone and self._undone[-1].before == content else None

    def write(self, path: Sequence[str | int], value: str, *, over: str) -> None:
        """Exchange one length for what the maker typed, in the dress it had.

        Args:
            path: Words down to the value.
            value: As typed.
            over: Mark of the text the maker had before him.

        Raises:
            NotWrittenError: It is no length that could stand there, or the file is closed to us.
            OutsideEditError: The file holds another text by now.
        """
        with self._lock:
            content = self._held(over)
            text, spot = _found(content, path, file=self.path.name)
            new = _exchanged(text, spot, value, file=self.path.name).encode()
            if new == content:
                return
            self._put(new, over=over)
            now = _at(spots(new.decode()), path)
            says = f"{' '.join(spot.label)}: {spot.text}, now {now.text if now else value}"
            self._done = [*self._done[1 - MOST :], Edit(says=says, before=content, after=new)]
            self._undone.clear()

    def take_back(self) -> None:
        """Put the text of before the last edit in place.

        Raises:
            NotWrittenError: The file is closed to us.
            OutsideEditError: The file does not hold what the last edit wrote, or there is none.
        """
        with self._lock:
            edit = self.last(self._content())
            if edit is None:
                raise OutsideEditError(f"{self.path.name} is not as the page last wrote it")
            self._put(edit.before, over=mark(edit.after))
            self._undone.append(self._done.pop())

    def put_again(self) -> None:
        """Put the last edit that was taken back in place again.

        Raises:
            NotWrittenError: The file is closed to us.
            OutsideEditError: The file does not hold what taking back left, or there is none.
        """
        with self._lock:
            edit = self.next(self._content())
            if edit is None:
                raise OutsideEditError(f"{self.path.name} is not as the page last wrote it")
            self._put(edit.after, over=mark(edit.before))
            self._done.append(self._undone.pop())

    def _content(self) -> bytes:
        try:
            return self.path.read_bytes()
        except OSError as error:
            raise NotWrittenError(_closed(self.path, error)) from error

    def _held(self, over: str) -> bytes:
        content = self._content()
        if mark(content) != over:
            raise OutsideEditError(f"{self.path.name} has been changed outside this page")
        return content

    def _put(self, content: bytes, *, over: str) -> None:
        """Write, having looked once more: the text may have been worked over for a while."""
        self._held(over)
        try:
            replaced(self.path, content)
        except OSError as error:
            raise NotWrittenError(_closed(self.path, error)) from error


def _at(found: Sequence[Spot], path: Sequence[str | int]) -> Spot | None:
    return next((spot for spot in found if spot.path == tuple(path)), None)


def _found(content: bytes, path: Sequence[str | int], *, file: str) -> tuple[str, Spot]:
    try:
        text = content.decode()
    except UnicodeDecodeError:
        raise NotWrittenError(
            _halt("page.unreadable", f"{file} is no text.", "Save it as UTF-8.")
        ) from None
    spot = _at(spots(text, file=file), path)
    if spot is None:
        says = f"{file} no longer says anything of {' '.join(map(str, path))}."
        raise NotWrittenError(_halt("page.not-said", says, "Write it into the file."))
    return text, spot


def _exchanged(text: str, spot: Spot, value: str, *, file: str) -> str:
    """The text with the value exchanged, if the reader of the file has nothing against it."""
    unit = read(text, file=file).whole.measure
    new = rewritten(text, spot.path, _dressed(spot.text, value, unit=unit))
    stands = _at(spots(new, file=file), spot.path)
    for finding in read(new, file=file).findings:
        if finding.weight is Weight.HALT and stands and _points_into(finding, stands):
            raise NotWrittenError(finding, text=new)
    return new


def _dressed(old: str, value: str, *, unit: Unit) -> str:
    try:
        return like(old, value, unit=unit)
    except LengthError:  # a count or a word may stand there; if not, the reader of the file says so
        return value.strip()


def _points_into(finding: Finding, spot: Spot) -> bool:
    place = finding.place
    if place is None or place.line != spot.place.line:
        return False
    return spot.place.column <= place.column <= spot.place.column + spot.place.width


def _halt(code: str, says: str, cure: str) -> Finding:
    return Finding(code=code, weight=Weight.HALT, says=says, cure=cure)


def _closed(path: Path, error: OSError) -> Finding:
    says = f"{path.name} cannot be written: {error.strerror}."
    return _halt("page.closed", says, "Look whether the file or its folder may be written to.")
