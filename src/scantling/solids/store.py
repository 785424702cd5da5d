"""What has been worked out once is kept, so that a change costs only what it touches."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from functools import cached_property
from typing import Any, TypeVar

Result = TypeVar("Result")


class Key(tuple[Hashable, ...]):  # noqa: SLOT001 - the hash is kept in its dict
    """Several things as one key, whose hash is reckoned once: exact numbers are slow to hash."""

    @cached_property
    def _kept_hash(self) -> int:
        return super().__hash__()

    def __hash__(self) -> int:
        return self._kept_hash


class Store:
    """Keeps results under keys that hold everything they depend on.

    A key starts with a word for what is kept. `next_round` drops what was not asked for since
    the round before, so that a store that lives as long as a page does not grow with each change.
    """

    def __init__(self) -> None:
        self.made = 0  # how often something had to be worked out
        self._now: dict[Hashable, Any] = {}
        self._before: dict[Hashable, Any] = {}

    def kept(self, key: Hashable, make: Callable[[], Result]) -> Result:
        """The result under that key; made if there is none yet."""
        found: Result
        if key in self._now:
            found = self._now[key]
        elif key in self._before:
            found = self._now[key] = self._before.pop(key)
        else:
            found = self._now[key] = make()
            self.made += 1
        return found

    def next_round(self) -> None:
        """Forget what the last round did not ask for."""
        self._before, self._now = self._now, {}

    def __len__(self) -> int:
        return len(self._now) + len(self._before)
