"""Whose turn it is at the bench: one at a time, and whoever waits for an answer goes first.

Proofs take many times as long as an answer to the page. They hold the bench only while nobody is
waiting, and give way whenever they pause.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager


class OvertakenError(Exception):
    """What was being worked has been overtaken by a newer text; nobody wants it any more."""


class Turns:
    """Turns at the bench, taken from any thread."""

    def __init__(self) -> None:
        self._changed = threading.Condition()
        self._held = False
        self._waiting = 0  # who are being attended to, whether or not they hold the bench

    @contextmanager
    def attended(self) -> Iterator[None]:
        """Somebody waits for an answer until the end of the block: what can wait waits."""
        with self._changed:
            self._waiting += 1
        try:
            yield
        finally:
            with self._changed:
                self._waiting -= 1
                self._changed.notify_all()

    @contextmanager
    def first(self) -> Iterator[None]:
        """The bench, for somebody who waits for an answer."""
        with self.attended():
            self._take(most_waiting=None)
            try:
                yield
            finally:
                self._leave()

    @contextmanager
    def last(self) -> Iterator[None]:
        """The bench, once nobody waits; `give_way` has to be called often while it is held."""
        self._take(most_waiting=0)
        try:
            yield
        finally:
            self._leave()

    def give_way(self) -> None:
        """Whoever holds the bench with `last` lets those go first who wait."""
        if self._waiting == 0:  # read without the lock: asked for thousands of times
            return
        self._leave()
        self._take(most_waiting=0)

    def _take(self, *, most_waiting: int | None) -> None:
        with self._changed:
            self._changed.wait_for(
                lambda: not self._held and (most_waiting is None or self._waiting <= most_waiting)
            )
            self._held = True

    def _leave(self) -> None:
        with self._changed:
            self._held = False
            self._changed.notify_all()
