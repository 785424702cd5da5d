"""The piece file as written words, each with the place it stands at.

Nothing is converted here: a number is the signs the maker typed, so that `0.1` stays one
tenth. Whoever needs a length or a count reads the signs, and can point at the guilty ones.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cached_property
from itertools import accumulate
from typing import Self

from scantling.findings import Finding, Place, Weight
from scantling.roster import plain_name

LONGEST_SHOWN = 60  # [characters] of the maker's words in a sentence


@dataclass(frozen=True)
class Source:
    """A text file and the name it is called by in findings."""

    text: str
    file: str = "piece.toml"

    @cached_property
    def _starts(self) -> list[int]:
        lengths = (len(line) + 1 for line in self.text.split("\n"))
        return list(accumulate(lengths, initial=0))[:-1]

    def place(self, span: range) -> Place:
        """Where a stretch of the text stands; cut short at the end of its line.

        Args:
            span: Offsets of its characters, counted from 0; an empty one is a point.
        """
        line = bisect_right(self._starts, span.start)
        begin = self._starts[line - 1]
        after = self._starts[line] - 1 if line < len(self._starts) else len(self.text)
        width = max(1, min(span.stop, after) - span.start)
        return Place(file=self.file, line=line, column=span.start - begin + 1, width=width)


class Sort(StrEnum):
    """What kind of value the signs make."""

    TEXT = "text in quotes"
    WHOLE = "a whole number"
    DECIMAL = "a decimal number"
    TRUTH = "true or false"
    DATE = "a date or a time"
    FAULTY = "a value with a fault"  # already reported; readers pass over it in silence


@dataclass(frozen=True, kw_only=True)
class Written:
    """One value as the maker wrote it."""

    sort: Sort
    text: str  # without its quotes, escapes read; numbers as typed
    source: Source = field(repr=False)
    span: range  # the whole value in the file, with its quotes
    spots: Sequence[int] = field(repr=False)  # where each sign of `text` stands in the file

    @property
    def place(self) -> Place:
        """Where the value stands, without its quotes."""
        return self.part(range(len(self.text)))

    def part(self, signs: range) -> Place:
        """Where some of the signs of `text` stand; just behind them, if it has no such.

        Args:
            signs: Which, counted from 0.
        """
        if not self.spots:
            return self.source.place(self.span)
        some = signs.start < len(self.spots)
        begin = self.spots[signs.start] if some else self.spots[-1] + 1
        last = self.spots[min(signs.stop, len(self.spots)) - 1]
        return self.source.place(range(begin, max(begin, last + 1)))

    def cut(self, signs: range) -> Written:
        """Some of the signs as a value of their own."""
        some = slice(signs.start, signs.stop)
        return replace(self, text=self.text[some], spots=self.spots[some])


class Key(str):
    """A word before an equals sign or between brackets, with its place."""

    __slots__ = ("place",)
    place: Place

    def __new__(cls, text: str, place: Place) -> Self:
        """The word and where it stands."""
        made = super().__new__(cls, text)
        made.place = place
        return made


class Table(dict[Key, "Node"]):
    """Words and their values, in the order of the file."""

    def __init__(self, place: Place, entries: Iterable[tuple[Key, Node]] = ()) -> None:
        super().__init__()
        self.place = place  # heading, or opening brace
        self.stop: int | None = None  # offset behind its closing brace
        self.sealed = False  # written in braces: nothing can be added further down
        self.headed = False  # has its own heading
        self.doubled = False  # has two headings; that was said, so what they both say is not
        self.further: tuple[str, ...] = ()  # words known where it stands, for the nearest one
        self._spellings: dict[str, Key] = {}
        for key, node in entries:
            self.add(key, node)

    def add(self, key: Key, node: Node) -> None:
        """One more word and its value."""
        self[key] = node
        self._spellings.setdefault(plain_name(key), key)

    def spelling(self, word: str) -> Key | None:
        """How the file spells a word, space, hyphen, underscore and capitals being equal."""
        return self._spellings.get(plain_name(word))

    def said(self, word: str) -> Node | None:
        """The value of a word in any of its spellings."""
        key = self.spelling(word)
        return None if key is None else self[key]


class Row(list["Node"]):
    """Values between square brackets, or the tables under one doubled heading."""

    def __init__(self, place: Place, items: Iterable[Node] = ()) -> None:
        super().__init__(items)
        self.place = place  # opening bracket
        self.stop: int | None = None  # offset behind its closing bracket
        self.sealed = False  # written in brackets, not by doubled headings


Node = Written | Table | Row


@dataclass(frozen=True, kw_only=True)
class Beside:
    """A value, and the words beside it that its section does not know: options of a joint."""

    node: Node | None
    others: Table


def halt(code: str, says: str, cure: str, place: Place | None) -> Finding:
    """A fault of the piece file: it cannot be read as written."""
    return Finding(code=f"piece.{code}", weight=Weight.HALT, says=says, cure=cure, place=place)


def shown(word: str) -> str:
    """A word of the maker in quotes, short enough for a sentence."""
    return repr(str(word) if len(word) <= LONGEST_SHOWN else f"{word[: LONGEST_SHOWN - 1]}…")


def sort_of(node: object) -> str:
    """What a maker would call the value."""
    if isinstance(node, Written):
        return str(node.sort)
    if isinstance(node, Mapping):
        return "a table"
    return "a row in brackets" if isinstance(node, list) else repr(node)
