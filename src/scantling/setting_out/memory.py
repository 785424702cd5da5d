"""Answers kept while nothing they were read from has changed.

A joint is asked many questions, and most edits leave most answers as they were. While a joint
answers, the sizes and parts it looks at are written down; asked again, it is not troubled if
every one of them is the same. Keeping an answer changes when work is done, never what it is.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from scantling.errors import UnknownNameError
from scantling.parts import Part
from scantling.sizes.model import Size, Sizes

T = TypeVar("T")

NO_PARTS: Mapping[str, Part] = {}
NO_SIZES = Sizes()


class Watched(Sizes):
    """Sizes that remember which of them were looked at, by name; None where there was none."""

    def __init__(self, sizes: Sizes) -> None:
        super().__init__(sizes.by_name)
        object.__setattr__(self, "seen", {})
        object.__setattr__(self, "all_seen", [])

    seen: dict[str, Size | None]
    all_seen: list[tuple[str, ...]]  # which there were, where all were looked through

    def __iter__(self) -> Iterator[str]:
        """All of them; which there are is looked at, too."""
        self.all_seen.append(tuple(self.by_name))
        return iter(self.by_name)

    def __len__(self) -> int:
        """How many; an answer that counts them depends on which there are."""
        return sum(1 for _ in self)

    def size(self, name: str) -> Size:
        """The size of that name, looked at."""
        try:
            found = super().size(name)
        except UnknownNameError:
            self.seen[name] = None
            raise
        self.seen[name] = found
        return found


class WatchedParts(Mapping[str, Part]):
    """Parts that remember which of them were looked at."""

    def __init__(self, parts: Mapping[str, Part]) -> None:
        self._parts = parts
        self.seen: dict[str, Part | None] = {}
        self.all_seen: list[tuple[str, ...]] = []

    def __getitem__(self, name: str) -> Part:
        self.seen[name] = self._parts.get(name)
        return self._parts[name]

    def __iter__(self) -> Iterator[str]:
        self.all_seen.append(tuple(self._parts))
        return iter(self._parts)

    def __len__(self) -> int:
        return sum(1 for _ in self)


@dataclass(frozen=True, kw_only=True)
class _Kept:
    asked: tuple[object, ...]
    sizes: Mapping[str, Size | None]
    parts: Mapping[str, Part | None]
    all_sizes: Sequence[tuple[str, ...]]
    all_parts: Sequence[tuple[str, ...]]
    result: Any


class Memory:
    """What was answered last, by question."""

    def __init__(self) -> None:
        self._answers: dict[Hashable, _Kept] = {}
        self._things: dict[Hashable, object] = {}

    def same(self, key: Hashable, thing: T) -> T:
        """The thing kept under that key if it is equal, else this one, kept from now on.

        Things passed through here may be compared by identity.
        """
        known = self._things.get(key)
        if known is thing or known == thing:
            return known
        self._things[key] = thing
        return thing

    def made(self, key: Hashable, *, of: tuple[object, ...], make: Callable[[], T]) -> T:
        """What is made of those things alone, made anew only where one of them is another."""
        return self.answer(key, asked=of, sizes=NO_SIZES, ask=lambda _, __: make())

    def answer(
        self,
        key: Hashable,
        *,
        asked: tuple[object, ...],
        sizes: Sizes,
        ask: Callable[[Sizes, Mapping[str, Part]], T],
        parts: Mapping[str, Part] = NO_PARTS,
    ) -> T:
        """The answer to a question, worked out only where something it looked at has changed.

        Args:
            key: Names the question.
            asked: What else it depends on; compared by identity.
            sizes: Sizes it may look at.
            ask: Works it out.
            parts: Parts it may look at; compared by identity.
        """
        kept = self._answers.get(key)
        if kept is not None and _still_holds(kept, asked, sizes, parts):
            return kept.result  # type: ignore[no-any-return]  # of the kind that `ask` gave
        watched, looked = Watched(sizes), WatchedParts(parts)
        result = ask(watched, looked)
        self._answers[key] = _Kept(
            asked=asked,
            sizes=watched.seen,
            parts=looked.seen,
            all_sizes=tuple(watched.all_seen),
            all_parts=tuple(looked.all_seen),
            result=result,
        )
        return result


def _still_holds(
    kept: _Kept, asked: tuple[object, ...], sizes: Sizes, parts: Mapping[str, Part]
) -> bool:
    # asked for thousands of times: plain loops, and what is one object is not compared further
    for a, b in zip(kept.asked, asked, strict=True):
        if a is not b:
            return False
    by_name = sizes.by_name
    for name, size in kept.sizes.items():
        found = by_name.get(name)
        if found is not size and found != size:
            return False
    for name, part in kept.parts.items():
        if parts.get(name) is not part:
            return False
    if any(names != tuple(by_name) for names in kept.all_sizes):
        return False
    return all(names == tuple(parts) for names in kept.all_parts)
