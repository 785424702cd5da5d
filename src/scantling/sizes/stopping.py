"""When a search has looked long enough."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

NO_END = 2**31 - 1  # more nodes than any search looks at


class Stop(Protocol):
    """Tells a search when to end with the best it has."""

    def left(self) -> int:
        """Work that may still be done [nodes looked at]; 0 when the search must end."""
        ...

    def spent(self, work: int) -> None:
        """Take note of work done. [nodes looked at]"""
        ...


@dataclass(slots=True)
class CountedWork:
    """So many nodes and no more: the same question stops at the same place on every machine."""

    most: int  # [nodes looked at]
    done: int = 0  # [nodes looked at]

    def left(self) -> int:
        """Work that may still be done. [nodes looked at]"""
        return max(self.most - self.done, 0)

    def spent(self, work: int) -> None:
        """Take note of work done. [nodes looked at]"""
        self.done += work


class NoStop:
    """Look until it is proven."""

    def left(self) -> int:
        """More than any search needs. [nodes looked at]"""
        return NO_END

    def spent(self, work: int) -> None:
        """Nothing is counted."""
