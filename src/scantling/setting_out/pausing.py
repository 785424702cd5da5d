"""Work that lets others in between: a pause is called before each thing that is worked out.

What was worked out before a pause is kept as ever, so whoever raises there loses only the thing
at hand, and the next round finds the rest.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from typing import TypeVar

from scantling.parts import Part
from scantling.setting_out.memory import NO_PARTS, Memory
from scantling.sizes.model import Sizes
from scantling.solids.store import Store

T = TypeVar("T")

Pause = Callable[[], None]


def at_no_time() -> None:
    """The pause of work that lets nobody in between."""


class PausingStore(Store):
    """A store that pauses before it has something made."""

    def __init__(self, store: Store, pause: Pause) -> None:
        super().__init__()
        self._store = store
        self._pause = pause

    def kept(self, key: Hashable, make: Callable[[], T]) -> T:
        """What the store behind it keeps under that key."""

        def made() -> T:
            self._pause()
            return make()

        return self._store.kept(key, made)


class PausingMemory(Memory):
    """A memory that pauses before it has something answered."""

    def __init__(self, memory: Memory, pause: Pause) -> None:
        super().__init__()
        self._memory = memory
        self._pause = pause

    def same(self, key: Hashable, thing: T) -> T:
        """What the memory behind it keeps under that key."""
        return self._memory.same(key, thing)

    def answer(
        self,
        key: Hashable,
        *,
        asked: tuple[object, ...],
        sizes: Sizes,
        ask: Callable[[Sizes, Mapping[str, Part]], T],
        parts: Mapping[str, Part] = NO_PARTS,
    ) -> T:
        """What the memory behind it answers."""

        def asking(sizes: Sizes, parts: Mapping[str, Part]) -> T:
            self._pause()
            return ask(sizes, parts)

        return self._memory.answer(key, asked=asked, sizes=sizes, ask=asking, parts=parts)
