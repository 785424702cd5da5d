"""Reads the fields of one table of the shop file, and notes whatever is wrong with them.

A field that cannot be read counts as not written: its finding says what to mend, and the
rest of the file is read on.
"""

import difflib
import re
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeVar

from scantling.errors import LengthError
from scantling.exact import Fraction, from_figures
from scantling.findings import Finding, Place, Weight
from scantling.shop._lines import Path, Places
from scantling.units import Unit, length, written_with_unit

POUND = 0.45359237  # [kg] exact, NIST SP 811
_SLOPE = re.compile(r"\s*1\s*:\s*(\d{1,2}(?:\.\d{1,2})?)\s*")
_MASS = re.compile(r"\s*(\d{1,5}(?:\.\d{1,3})?)\s*(lb|kg)\s*")
_WARMTH = re.compile(r"\s*(-?\d{1,3}(?:\.\d{1,2})?)\s*°?\s*([CF])\s*")
_MOST = 9999  # of anything that is counted in a workshop

Word = TypeVar("Word", bound=StrEnum)
Got = TypeVar("Got")


def says_its_unit(text: str) -> bool:
    """Whether a length says its unit itself."""
    return any(sign.isalpha() or sign in "\"'\u2032\u2033" for sign in text)


ALSO_CALLED = {"cramps": "clamps"}  # headings that a maker in the UK calls otherwise


def plain(name: str) -> str:
    """A name with its spaces, hyphens and capitals levelled."""
    return name.strip().casefold().replace(" ", "_").replace("-", "_")


@dataclass(kw_only=True)
class Desk:
    """What all tables of one file share: where things stand, and what is wrong so far."""

    places: Places
    unit: Unit = Unit.INCH
    blanked: bool = False  # lines were left out that could not be read
    findings: list[Finding] = field(default_factory=list)
    strays: list[Finding] = field(default_factory=list)  # figures that make no sense in `unit`

    def fault(self, code: str, place: Place, says: str, cure: str) -> None:
        """Note what keeps the file from being read as it was meant."""
        self.findings.append(
            Finding(code=f"shop.{code}", weight=Weight.HALT, says=says, cure=cure, place=place)
        )

    def stray(self, place: Place, value: object, found: Fraction, *, far: str) -> None:
        """Note a figure out of reason: `far` says whether it is too small or too large."""
        self.fault(
            "out-of-range",
            place,
            f"{value} is {written_with_unit(found, unit=self.unit)}, {far}",
            f"a length without a unit is read in {self.unit}: write the unit, or mend it",
        )
        if isinstance(value, int) or not says_its_unit(str(value)):
            self.strays.append(self.findings[-1])

    def note(self, code: str, says: str) -> None:
        """Note what is worth knowing about the file."""
        self.findings.append(Finding(code=f"shop.{code}", weight=Weight.NOTE, says=says, cure=""))


class Table:
    """One table of the file. A field asked for is a known one; `rest` faults the others."""

    def __init__(self, fields: Mapping[str, object], *, path: Path, desk: Desk) -> None:
        self.path = path
        self.desk = desk
        self._known: list[str] = []
        self._fields: dict[str, object] = {}
        self._spelt: dict[str, str] = {}
        for key, value in fields.items():
            self._take(key, value)

    def _take(self, key: str, value: object) -> None:
        word = ALSO_CALLED.get(plain(key), plain(key))
        if word in self._spelt:
            says = f"'{key}' is written twice, here and as {self._spelt[word]}"
            place = self.desk.places.key((*self.path, key))
            self.desk.fault("said-twice", place, says, "keep one of the two")
            return
        self._spelt[word] = key
        self._fields[word] = value

    def place(self, key: str) -> Place:
        """Where a key stands."""
        return self.desk.places.key((*self.path, self._spelt.get(plain(key), key)))

    def has(self, key: str) -> bool:
        """Whether a field is written."""
        return key in self._fields

    def table(self, key: str) -> "Table":
        """A table within; an empty one if it is not written or is no table."""
        value = self._value(key)
        path = (*self.path, self._spelt.get(key, key))
        if value is not None and not isinstance(value, Mapping):
            cure = f"write [{key}] on a line of its own and its words below"
            self.desk.fault("no-table", self.place(key), f"{key} is a heading", cure)
        return Table(value if isinstance(value, Mapping) else {}, path=path, desk=self.desk)

    def rows(self, key: str) -> list["Table"]:
        """Rows of tables; none if not written."""
        value = self._value(key)
        path = (*self.path, self._spelt.get(key, key))
        rows = value if isinstance(value, list) else []
        if value is not None and not (rows == value and all(isinstance(r, Mapping) for r in rows)):
            cure = f"write [[{key}]] above each"
            self.desk.fault("no-table", self.place(key), f"{key} are headings, one for each", cure)
            return []
        return [Table(row, path=(*path, at), desk=self.desk) for at, row in enumerate(rows)]

    def text(self, key: str) -> str | None:
        """Words in quotes."""
        return self._read(key, self._as_text)

    def length(self, key: str, *, least: Fraction, most: Fraction) -> Fraction | None:
        """A length within limits. [mm]"""
        return self._read(key, lambda value, at: self._as_length(value, at, least, most))

    def lengths(self, key: str, *, least: Fraction, most: Fraction) -> tuple[Fraction, ...]:
        """A list of lengths within limits, smallest first. [mm]"""
        read = self._list(key, lambda value, at: self._as_length(value, at, least, most))
        return tuple(sorted(set(read)))

    def count(self, key: str, *, least: int = 0) -> int | None:
        """A whole number."""
        return self._read(key, lambda value, at: self._as_count(value, at, least))

    def yes(self, key: str) -> bool | None:
        """True or false."""
        return self._read(key, self._as_yes)

    def word(self, key: str, words: Collection[Word]) -> Word | None:
        """One word of a vocabulary."""
        return self._read(key, lambda value, at: self._as_word(value, at, words))

    def words(self, key: str, words: Collection[Word]) -> tuple[Word, ...]:
        """A list of words of a vocabulary, each once, in the order written."""
        read = self._list(key, lambda value, at: self._as_word(value, at, words))
        return tuple(dict.fromkeys(read))

    def slope(self, key: str) -> Fraction | None:
        """A slope such as 1:6, as rise per unit."""
        return self._read(key, self._as_slope)

    def mass(self, key: str) -> float | None:
        """A mass such as 50 lb or 23 kg. [kg]"""
        return self._read(key, self._as_mass)

    def warmth(self, key: str) -> float | None:
        """A temperature such as 10 C or 50 F. [°C]"""
        return self._read(key, self._as_warmth)

    def rest(self) -> None:
        """Fault every field nobody asked for."""
        for key, spelt in self._spelt.items():
            if key not in self._known:
                near = difflib.get_close_matches(key, self._known, n=1, cutoff=0.5)
                cure = f"perhaps {near[0]}" if near else f"known here: {', '.join(self._known)}"
                says = f"'{spelt}' is no word of {self._heading}"
                self.desk.fault("unknown-word", self.place(key), says, cure)

    def missing(self, key: str) -> None:
        """Fault a field that had to be written, unless it may stand in a line left out."""
        if not self.has(key) and not self.desk.blanked:
            place = self.desk.places.key(self.path)
            self.desk.fault("not-said", place, f"{self._heading} lacks {key}", f"write {key} = ...")

    @property
    def _heading(self) -> str:
        if not self.path:
            return "the shop file"
        names = ".".join(step for step in self.path if isinstance(step, str))
        return f"[{names}]" if isinstance(self.path[-1], str) else f"[[{names}]]"

    def _value(self, key: str) -> object | None:
        self._known.append(key)
        return self._fields.get(key)

    def _read(self, key: str, read: Callable[[object, Place], Got | None]) -> Got | None:
        value = self._value(key)
        at = self.desk.places.value((*self.path, self._spelt.get(key, key)))
        return None if value is None else read(value, at)

    def _list(self, key: str, read: Callable[[object, Place], Got | None]) -> Iterable[Got]:
        value = self._value(key)
        path = (*self.path, self._spelt.get(key, key))
        # One value alone is a list of one: makers leave the brackets out.
        members = value if isinstance(value, list) else [] if value is None else [value]
        lone = not isinstance(value, list)
        for index, member in enumerate(members):
            at = self.desk.places.value(path if lone else (*path, index))
            got = read(member, at)
            if got is not None:
                yield got

    def _as_text(self, value: object, at: Place) -> str | None:
        if isinstance(value, str) and value.strip():
            return value.strip()
        self.desk.fault("not-text", at, "words are wanted here", 'put quotes round them: "bar"')
        return None

    def _as_length(
        self, value: object, at: Place, least: Fraction, most: Fraction
    ) -> Fraction | None:
        if isinstance(value, bool) or not isinstance(value, int | str):
            self.desk.fault("not-a-length", at, "this is no length", 'write it like "3/4"')
            return None
        try:
            found = length(str(value), unit=self.desk.unit)
        except LengthError as wrong:
            self.desk.fault("not-a-length", _within(at, value, wrong), wrong.says, wrong.cure)
            return None
        if least <= found <= most:
            return found
        limit = least if found < least else most
        than = "less" if found < least else "more"
        unit = self.desk.unit
        self.desk.stray(at, value, found, far=f"{than} than {written_with_unit(limit, unit=unit)}")
        return None

    def _as_count(self, value: object, at: Place, least: int) -> int | None:
        if isinstance(value, int) and not isinstance(value, bool) and least <= value <= _MOST:
            return value
        says = "a whole number is wanted here"
        self.desk.fault("not-a-count", at, says, f"write one from {least} to {_MOST}, no quotes")
        return None

    def _as_yes(self, value: object, at: Place) -> bool | None:
        if isinstance(value, bool):
            return value
        self.desk.fault("not-true-or-false", at, "true or false is wanted here", "no quotes")
        return None

    def _as_word(self, value: object, at: Place, words: Collection[Word]) -> Word | None:
        known = {plain(each): each for each in words}
        said = plain(value) if isinstance(value, str) else ""
        if said in known:
            return known[said]
        near = difflib.get_close_matches(said, known, n=1, cutoff=0.5)
        cure = f"perhaps {known[near[0]]}" if near else f"known here: {', '.join(sorted(words))}"
        self.desk.fault("unknown-name", at, f"{value} is not known here", cure)
        return None

    def _as_slope(self, value: object, at: Place) -> Fraction | None:
        found = _SLOPE.fullmatch(value) if isinstance(value, str) else None
        slope = 1 / from_figures(found[1]) if found and from_figures(found[1]) else None
        # Steeper breaks the corners off, flatter holds nothing; common practice.
        if slope is not None and Fraction(1, 12) <= slope <= Fraction(1, 4):
            return slope
        self.desk.fault("not-a-slope", at, "this is no slope of a dovetail", 'write "1:6"')
        return None

    def _as_mass(self, value: object, at: Place) -> float | None:
        found = _MASS.fullmatch(value) if isinstance(value, str) else None
        if found:
            return float(found[1]) * (POUND if found[2] == "lb" else 1)
        self.desk.fault("not-a-weight", at, "this is no weight", 'write "50 lb" or "23 kg"')
        return None

    def _as_warmth(self, value: object, at: Place) -> float | None:
        found = _WARMTH.fullmatch(value) if isinstance(value, str) else None
        if found:
            read = float(found[1])
            return read if found[2] == "C" else (read - 32) / 1.8
        self.desk.fault("not-a-temperature", at, "this is no temperature", 'write "10 C"')
        return None


def _within(at: Place, value: object, wrong: LengthError) -> Place:
    """Narrow the place of a quoted length to its guilty characters."""
    # Quotes stand round a text; where the widths differ (escapes) the whole is underlined.
    if not isinstance(value, str) or at.width != len(value) + 2:
        return at
    width = max(1, wrong.stop - wrong.start)
    return Place(file=at.file, line=at.line, column=at.column + 1 + wrong.start, width=width)
