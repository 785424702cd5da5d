"""Where each value of a piece file stands, so that one may be shown and exchanged by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.findings import Place
from scantling.piece._file.text import Node, Row, Sort, Source, Table, Written
from scantling.piece._file.toml import document

Steps = tuple[str | int, ...]  # words down to a value; items of a row counted from 0


@dataclass(frozen=True, kw_only=True)
class Spot:
    """One value of the file, and how it is reached."""

    path: Steps
    label: tuple[str, ...]  # the same for a reader: an item of a row goes by its first word
    text: str  # as the maker wrote it, without quotes
    place: Place  # of that text
    key: Place | None  # of the word before it; None in a row of values


def spots(text: str, *, file: str = "piece.toml") -> tuple[Spot, ...]:
    """Every value of a file that can be read, in its order; there may be faults in the rest.

    Args:
        text: The whole file.
        file: Its name, for the places.
    """
    plain = text.replace("\r\n", "\n").removeprefix("\ufeff")
    root, _ = document(Source(plain, file))
    return tuple(_within(root, (), (), None))


def _within(node: Node, path: Steps, label: tuple[str, ...], key: Place | None) -> Iterator[Spot]:
    if isinstance(node, Table):
        for word, inner in node.items():
            yield from _within(inner, (*path, str(word)), (*label, str(word)), word.place)
    elif isinstance(node, Row):
        for at, inner in enumerate(node):
            yield from _within(inner, (*path, at), (*label[:-1], *_called(inner, at)), None)
    elif node.sort is not Sort.FAULTY:
        yield Spot(path=path, label=label, text=node.text, place=node.place, key=key)


def _called(item: Node, at: int) -> tuple[str, ...]:
    """`top rail` of `{ rail = "top rail", tall = 2 }`, or its number, counted from 1.

    Nothing where one word says all: `{ foot = 1 }`.
    """
    if isinstance(item, Table) and len(item) == 1:
        return ()
    first = next(iter(item.values()), None) if isinstance(item, Table) else None
    named = isinstance(first, Written) and first.sort is Sort.TEXT
    return (first.text if isinstance(first, Written) and named else str(at + 1),)
