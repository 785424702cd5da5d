"""Word that something changed, from the thread that looks at the file to every open page."""

from __future__ import annotations

import asyncio
import contextlib
import threading
from collections.abc import Iterator


class News:
    """Wakes whoever waits. Told from any thread, waited for in event loops."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._waiting: set[Ear] = set()
        self._over = threading.Event()

    @property
    def is_over(self) -> bool:
        """Whether nothing more will be told."""
        return self._over.is_set()

    def tell(self) -> None:
        """Something changed: wake everyone."""
        with self._lock:
            waiting = tuple(self._waiting)
        for ear in waiting:
            ear.wake()

    def close(self) -> None:
        """Nothing more will be told: wake everyone for the last time."""
        self._over.set()
        self.tell()

    @contextlib.contextmanager
    def listening(self) -> Iterator[Ear]:
        """An ear that misses nothing told from now on. Needs a running event loop."""
        ear = Ear(asyncio.get_running_loop())
        with self._lock:
            self._waiting.add(ear)
        try:
            yield ear
        finally:
            with self._lock:
                self._waiting.discard(ear)


class Ear:
    """One who waits, in one event loop."""

    def __init__(self, loop: asyncio.AbstractEventLoop) -> None:
        self._loop = loop
        self._told = asyncio.Event()

    def wake(self) -> None:
        """From any thread. An event loop that has ended hears nothing."""
        with contextlib.suppress(RuntimeError):
            self._loop.call_soon_threadsafe(self._told.set)

    async def wait(self, *, at_most: float) -> None:
        """Until something is told, or so long. [s]"""
        with contextlib.suppress(TimeoutError):
            await asyncio.wait_for(self._told.wait(), at_most)
        self._told.clear()
