"""When a search has looked long enough."""

from __future__ import annotations

from collections.abc import Callable
from math import inf
from typing import Protocol

NO_END = 2**31 - 1  # more nodes than any search looks at


class Stop(Protocol):
    """Tells a search when to end with the best it has."""

    def left(self) -> int:
        """Work that may still be done [nodes looked at]; 0 when the search must end."""
        ...

    def seconds(self) -> float:
        """Time that one step of the search may take. [s]"""
        ...

    def spent(self, work: int) -> None:
        """Take note of work done. [nodes looked at]"""
        ...


class CountedWork:
    """So many nodes and no more: the same question stops at the same place on every machine."""

    def __init__(self, *, most: int) -> None:
        self.most = most  # [nodes looked at]
        self.done = 0  # [nodes looked at]

    def left(self) -> int:
        """Work that may still be done. [nodes looked at]"""
        return max(self.most - self.done, 0)

    def seconds(self) -> float:
        """No clock is looked at. [s]"""
        return inf

    def spent(self, work: int) -> None:
        """Take note of work done. [nodes looked at]"""
        self.done += work


class TimedWork(CountedWork):
    """Counted work, ended by a clock where single nodes take for ever.

    For the command line and the page only: figures of usual size end long before the clock.
    """

    def __init__(self, *, most: int, until: float, clock: Callable[[], float]) -> None:
        super().__init__(most=most)
        self.until = until  # [s]
        self.clock = clock  # [s]

    def left(self) -> int:
        """Work that may still be done; none when the time is over. [nodes looked at]"""
        return super().left() if self.seconds() > 0 else 0

    def seconds(self) -> float:
        """Time left. [s]"""
        return self.until - self.clock()


class NoStop:
    """Look until it is proven."""

    def left(self) -> int:
        """More than any search needs. [nodes looked at]"""
        return NO_END

    def seconds(self) -> float:
        """As many as it takes. [s]"""
        return inf

    def spent(self, work: int) -> None:
        """Nothing is counted."""
