"""What a page has to be told anew of a document: the sections and rows that are not as they were.

A page says under which mark it was told last. Rows go by their names; one that stays is not sent.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import islice
from secrets import token_hex
from typing import Any

Document = Mapping[str, Any]  # `setting-out.json`, where a file is written
Row = Mapping[str, Any]

BY_NAME = ("parts", "sizes", "joints")  # sections that are rows, each with a name of its own
REMEMBERED = 8  # documents told last; whoever knows none of them is told everything


class Remembered:
    """The documents told last, by the mark they were told under."""

    def __init__(self) -> None:
        self._run = token_hex(4)  # a server begun anew counts anew, and pages outlive it
        self._told: dict[str, Document] = {}

    def mark(self, number: int) -> str:
        """What a page is given to say what it was told."""
        return f"{self._run}.{number}"

    def keep(self, number: int, document: Document) -> None:
        """Remember that one too, and forget the oldest."""
        many = max(0, len(self._told) + 1 - REMEMBERED)
        kept = islice(self._told.items(), many, None)
        self._told = {**dict(kept), self.mark(number): document}

    def under(self, mark: str) -> Document | None:
        """The one told under that mark, if it is still remembered."""
        return self._told.get(mark)


def changes(before: Document, now: Document) -> dict[str, Any]:
    """What makes the one document the other: sections anew, and rows by section."""
    by_name = [s for s in BY_NAME if before.get(s) is not now.get(s) and s in now]
    return {
        "sections": {
            section: value
            for section, value in now.items()
            if section not in BY_NAME and before.get(section) != value
        },
        "rows": {s: _rows(before.get(s, ()), now[s]) for s in by_name},
    }


def _rows(before: Sequence[Row], now: Sequence[Row]) -> dict[str, Any]:
    """Rows that are new or changed; the order of all by name, where that is another."""
    known = {row["name"]: row for row in before}
    names = [row["name"] for row in now]
    return {
        "order": None if names == list(known) else names,
        "changed": [row for row in now if known.get(row["name"]) != row],
    }
