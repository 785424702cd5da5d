"""Keeps entries: what is acknowledged is on the disk, and nothing kept is ever rewritten.

A line is added to the end, the file is synced, and its folder too when the file is new. Only then
is it acknowledged. Who was not answered sends the same entry again, under the same id: it is kept
once. A last line that was cut off is copied aside before it is cut away.
"""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Protocol

from scantling.errors import ScantlingError
from scantling.record.entry import Entry
from scantling.record.line import line_of
from scantling.record.reading import ASIDE, FILE, read


class NotKeptError(ScantlingError):
    """An entry could not be kept, or nobody knows: send it again."""


class Disk(Protocol):
    """What is asked of a disk; each name is a file of one folder.

    Any of these may raise OSError.
    """

    def content(self, name: str) -> bytes:
        """What a file holds; nothing where there is none."""

    def add(self, name: str, content: bytes) -> None:
        """Add to the end of a file, which is made if need be; all of it, but not yet safely."""

    def cut(self, name: str, size: int) -> None:
        """Cut a file off after so many bytes."""

    def sync(self, name: str) -> None:
        """Come back when all that a file holds is safe."""

    def sync_names(self) -> None:
        """Come back when it is safe which files there are."""

    def alone(self) -> AbstractContextManager[None]:
        """Nobody else keeps an entry until the end of the block."""


def keep(entry: Entry, *, disk: Disk) -> Entry:
    """The entry as it stands in the record, once it safely does.

    Args:
        entry: What to keep. Where its id is kept already, nothing is added.
        disk: The folder of the piece.

    Raises:
        NotKeptError: It may stand there or not; or the record is damaged and nothing is added.
    """
    try:
        with disk.alone():
            return _kept(entry, disk)
    except OSError as error:
        raise NotKeptError(f"the record could not be written: {error}") from error


def _kept(entry: Entry, disk: Disk) -> Entry:
    content = disk.content(FILE)
    record = read(content)
    if record.is_damaged:
        raise NotKeptError(record.findings[-1].says)
    known = next((e for e in record.entries if e.id == entry.id), None)
    if known is not None:
        _made_safe(disk)
        return known
    if record.torn:
        disk.add(ASIDE, record.torn + b"\n")
        disk.sync(ASIDE)
        disk.sync_names()
        disk.cut(FILE, record.sound)
    last = max((e.number for e in record.entries), default=0)
    numbered = replace(entry, number=last + 1)
    # an editor may have taken the end of the last line away
    begun = record.sound and not content[: record.sound].endswith(b"\n")
    disk.add(FILE, (b"\n" if begun else b"") + line_of(numbered))
    _made_safe(disk)
    return numbered


def _made_safe(disk: Disk) -> None:
    disk.sync(FILE)
    disk.sync_names()


class Folder:
    """A folder on a real disk."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def content(self, name: str) -> bytes:
        """See `Disk`."""
        try:
            return (self.path / name).read_bytes()
        except FileNotFoundError:
            return b""

    def add(self, name: str, content: bytes) -> None:
        """See `Disk`."""
        with self._opened(name, os.O_WRONLY | os.O_APPEND | os.O_CREAT) as file:
            left = memoryview(content)
            while left:
                left = left[os.write(file, left) :]

    def cut(self, name: str, size: int) -> None:
        """See `Disk`."""
        with self._opened(name, os.O_WRONLY) as file:
            os.ftruncate(file, size)

    def sync(self, name: str) -> None:
        """See `Disk`."""
        with self._opened(name, os.O_RDONLY) as file:
            os.fsync(file)

    def sync_names(self) -> None:
        """See `Disk`."""
        with self._opened(".", os.O_RDONLY) as folder:
            os.fsync(folder)

    @contextmanager
    def alone(self) -> Iterator[None]:
        """See `Disk`."""
        with self._opened(".", os.O_RDONLY) as folder:
            fcntl.flock(folder, fcntl.LOCK_EX)
            yield  # the lock goes with the file

    @contextmanager
    def _opened(self, name: str, how: int) -> Iterator[int]:
        file = os.open(self.path / name, how | os.O_CLOEXEC, 0o644)
        try:
            yield file
        finally:
            os.close(file)
