"""Rows of a list with commas, each cell with its place, and what is wrong with its columns.

A cell may stand in double quotes, and then hold commas; a line that begins with # is the maker's
own remark. A unit may stand behind the name of a column: `length_in`, `cup_mm`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from scantling.errors import LengthError
from scantling.exact import Fraction, from_figures
from scantling.findings import Finding, Place, Weight
from scantling.roster import nearest, plain_name
from scantling.units import Unit, length

LONGEST = 200_000  # [characters] of a list; more is no rack
_CELL = re.compile(r'\s*(?:"(?P<quoted>(?:[^"]|"")*)"|(?P<bare>(?!")[^,]*?))\s*(?:,|$)')
_UNIT = re.compile(r"[ _](in|inch|mm)$")
_BEHIND = re.compile(r"[ _](in|inch|mm|usd|pct|ft)$")  # what may stand behind a name
_NUMBER = re.compile(r"[0-9]{1,7}(?:\.[0-9]{1,4})?|\.[0-9]{1,4}")


@dataclass(frozen=True, kw_only=True)
class Cell:
    """What stands in one column of a row."""

    text: str
    place: Place
    unit: Unit  # of a length that names none


@dataclass(kw_only=True)
class Desk:
    """The list being read: what its faults are called, and those found so far."""

    file: str
    unit: Unit
    findings: list[Finding] = field(default_factory=list)

    def fault(self, code: str, place: Place, says: str, cure: str) -> None:
        """Note what keeps a cell from being read as it was meant."""
        self.findings.append(
            Finding(code=f"stock.{code}", weight=Weight.HALT, says=says, cure=cure, place=place)
        )

    def note(self, code: str, place: Place, says: str) -> None:
        """Note how something was read that could be meant otherwise."""
        self.findings.append(
            Finding(code=f"stock.{code}", weight=Weight.NOTE, says=says, cure="", place=place)
        )

    def length(self, cell: Cell, *, least: Fraction, most: Fraction) -> Fraction | None:
        """A length within limits, in any notation of the house. [mm]"""
        try:
            found = length(cell.text, unit=cell.unit)
        except LengthError as wrong:
            place = _narrowed(cell.place, wrong.start, wrong.stop)
            self.fault("not-a-length", place, wrong.says, wrong.cure)
            return None
        if least <= found <= most:
            return found
        says = f"{cell.text} is {float(found):g} mm, outside {float(least):g} to {float(most):g} mm"
        cure = f"A length without a unit is read in {cell.unit} here: write the unit, or mend it."
        self.fault("out-of-range", cell.place, says, cure)
        return None

    def number(self, cell: Cell, *, most: int) -> Fraction | None:
        """A plain number: money, or moisture."""
        if _NUMBER.fullmatch(cell.text) and (found := from_figures(cell.text)) <= most:
            return found
        says = f"{cell.text} is no number from 0 to {most}"
        self.fault("not-a-number", cell.place, says, "Write it like 8.2, without a sign.")
        return None


Row = Mapping[str, Cell]


def rows(
    text: str, *, desk: Desk, columns: Sequence[str], needed: Sequence[str]
) -> Iterator[tuple[Row, Place]]:
    """Rows that can be read, each with the place of its first cell.

    Args:
        text: The whole list, its first line the names of the columns.
        desk: Where faults go.
        columns: Names there may be.
        needed: Those without which nothing can be read.
    """
    if len(text) > LONGEST:
        place = Place(file=desk.file, line=1, column=1)
        says = f"the list has more than {LONGEST} characters"
        desk.fault("not-readable", place, says, "One rack is a page or two.")
        return
    lines = [
        (number, line.removesuffix("\r"))
        for number, line in enumerate(text.removeprefix("\ufeff").split("\n"), start=1)
        if line.strip() and not line.lstrip().startswith("#")
    ]
    if not lines:
        place = Place(file=desk.file, line=1, column=1)
        desk.fault("not-readable", place, "the list is empty", f"Begin with {', '.join(needed)}.")
        return
    head = _head(lines[0], desk=desk, columns=columns, needed=needed)
    if head is None:
        return
    for number, line in lines[1:]:
        found = tuple(_cells(line, number, desk))
        if len(found) > len(head):
            place = found[len(head)].place
            says = f"this row has {len(found)} cells, and there are {len(head)} columns"
            desk.fault("too-many-cells", place, says, 'Put what holds a comma in quotes: "a, b".')
            continue
        yield (
            {
                name: replace(cell, unit=unit or desk.unit)
                for (name, unit), cell in zip(head, found, strict=False)
                if name and cell.text
            },
            found[0].place,
        )


def _head(
    first: tuple[int, str], *, desk: Desk, columns: Sequence[str], needed: Sequence[str]
) -> list[tuple[str, Unit | None]] | None:
    """Names of the columns with the unit each states; None where one that is needed lacks."""
    number, line = first
    names: list[tuple[str, Unit | None]] = []
    known = {plain_name(column): column for column in columns}
    for cell in _cells(line, number, desk):
        said = plain_name(cell.text)
        name = known.get(said) or known.get(_BEHIND.sub("", said), "")
        unit = Unit(found[1]) if (found := _UNIT.search(said)) else None
        if not name:
            meant = nearest(_BEHIND.sub("", said), known)
            cure = f"Perhaps {meant}." if meant else f"Known here: {', '.join(columns)}."
            desk.fault("unknown-column", cell.place, f"{cell.text!r} is no column known here", cure)
        elif any(name == each for each, _ in names):
            desk.fault("said-twice", cell.place, f"{name} stands twice", "Keep one of the two.")
        names.append((name, unit))
    lacking = [name for name in needed if not any(name == each for each, _ in names)]
    if lacking:
        place = Place(file=desk.file, line=number, column=1, width=max(1, len(line)))
        says = f"the list has no column {' and none '.join(lacking)}"
        desk.fault("missing-column", place, says, f"The first line names them: {','.join(needed)}.")
        return None
    return names


def _cells(line: str, number: int, desk: Desk) -> Iterator[Cell]:
    at = 0
    while at <= len(line):
        found = _CELL.match(line, at)
        if found is None:  # a quote that is never closed, or text behind one
            text = line[at:]
            place = Place(file=desk.file, line=number, column=at + 1, width=max(1, len(text)))
            says, cure = "a quote is not closed here", "Close it, or leave both quotes away."
            desk.fault("not-readable", place, says, cure)
            return
        group = "quoted" if found["quoted"] is not None else "bare"
        start, stop = found.span(group)
        place = Place(file=desk.file, line=number, column=start + 1, width=max(1, stop - start))
        yield Cell(text=found[group].replace('""', '"').strip(), place=place, unit=desk.unit)
        if not line[at : found.end()].endswith(","):
            return
        at = found.end()


def _narrowed(place: Place, start: int, stop: int) -> Place:
    return replace(place, column=place.column + start, width=max(1, stop - start))
