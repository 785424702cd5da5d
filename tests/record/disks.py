"""A disk that loses what was not made safe, and the real one."""

from __future__ import annotations

import random
from collections.abc import Iterator
from contextlib import contextmanager


class LossyDisk:
    """Keeps what was synced; of the rest, after a loss of power, whatever chance leaves.

    Bytes that were added and not synced may be there, be cut off or be zeroes; a file whose name
    was not made safe may be gone; a cut that was not synced may not have happened.
    """

    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.now: dict[str, bytes] = {}
        self.safe: dict[str, bytes] = {}  # content as last synced
        self.names: set[str] = set()  # that outlive a loss of power
        self.fails_after = -1  # acts until one fails; below 0: none does

    def _may_fail(self) -> None:
        if self.fails_after == 0:
            self.fails_after = -1
            raise OSError(28, "no space left")
        self.fails_after -= self.fails_after > 0

    def content(self, name: str) -> bytes:
        return self.now.get(name, b"")

    def add(self, name: str, content: bytes) -> None:
        before = self.now.get(name, b"")
        try:
            self._may_fail()
        except OSError:
            self.now[name] = before + content[: self.chance.randrange(len(content) + 1)]
            raise
        self.now[name] = before + content

    def cut(self, name: str, size: int) -> None:
        self._may_fail()
        self.now[name] = self.now[name][:size]

    def sync(self, name: str) -> None:
        self._may_fail()
        self.safe[name] = self.now[name]

    def sync_names(self) -> None:
        self._may_fail()
        self.names = set(self.now)

    @contextmanager
    def alone(self) -> Iterator[None]:
        yield

    def lose_power(self) -> None:
        self.fails_after = -1
        left = {}
        for name in self.now:
            if name in self.names or self.chance.random() < 0.5:
                left[name] = self._left(self.safe.get(name, b""), self.now[name])
        self.now = left
        self.safe = dict(left)  # what is found after the start lies on the disk
        self.names = set(left)

    def _left(self, safe: bytes, now: bytes) -> bytes:
        if not now.startswith(safe):  # cut and not synced: either may be found
            return self.chance.choice([safe, now])
        added = bytearray(now[len(safe) :])
        kept = self.chance.randrange(len(added) + 1)
        if self.chance.random() < 0.3:
            start = self.chance.randrange(kept + 1)
            added[start:kept] = bytes(kept - start)
        return safe + bytes(added[:kept])


class WithoutFileSync(LossyDisk):
    """Lies about files."""

    def sync(self, name: str) -> None:  # noqa: ARG002 - the name is the disk's
        self._may_fail()


class WithoutFolderSync(LossyDisk):
    """Lies about names."""

    def sync_names(self) -> None:
        self._may_fail()
