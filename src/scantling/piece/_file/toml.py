"""The piece file's outer form: lines, headings and the tables they open.

Reads the language TOML 1.0, https://toml.io/en/v1.0.0. Two things it does that a reader of the
language alone need not: every name and value keeps its place, and a fault costs at most its
own line, so that all faults are found. What it reads without a fault, others read alike.
"""

from __future__ import annotations

from contextlib import suppress

from scantling.findings import Finding
from scantling.piece._file import keys, nest
from scantling.piece._file.signs import LineLostError, Signs, TooManyFaultsError
from scantling.piece._file.text import Source, Table
from scantling.piece._file.values import assignment


def document(source: Source) -> tuple[Table, tuple[Finding, ...]]:
    """What stands in a piece file, and what is wrong with its signs.

    Args:
        source: The file, its lines ending in a line feed alone.

    Returns:
        The outermost table, and the faults in the order they were met.
    """
    reading = _Document(source)
    with suppress(TooManyFaultsError):
        reading.read()
    return reading.root, tuple(reading.signs.findings)


class _Document:
    def __init__(self, source: Source) -> None:
        self.signs = Signs(source)
        self.root = Table(source.place(range(0)))
        self.section = self.root
        self.opened: list[Table] = []  # by names with points, since the last heading

    def read(self) -> None:
        signs = self.signs
        while True:
            signs.skip_lines()
            if signs.ended:
                return
            try:
                if signs.sees("["):
                    self._heading()
                else:
                    self._assignment()
                self._line_end()
            except LineLostError:
                signs.skip_line()

    def _line_end(self) -> None:
        signs = self.signs
        signs.skip_comment()
        if not signs.line_ended:
            cure = "give it a line of its own, or put it behind a #"
            raise signs.lost("stray-sign", "nothing may stand behind a heading", cure)

    def _assignment(self) -> None:
        self.opened += assignment(self.signs, self.section)

    def _heading(self) -> None:
        for table in self.opened:
            table.headed = True
        self.opened = []
        # What follows a heading that cannot be read must not fall to the section before it.
        self.section = Table(self.signs.place(self.signs.rest()))
        signs, start = self.signs, self.signs.at
        closing = "]]" if signs.takes("[[") else "]"
        signs.at = start + len(closing)
        path = keys.path(signs, closing="]")
        if not signs.takes(closing):
            self._not_closed(start, closing)
        place = signs.place(range(start, signs.at))
        if closing == "]]":
            self.section = nest.one_more(signs, self.root, path, place)
        else:
            self.section = nest.section(signs, self.root, path, place)

    def _not_closed(self, start: int, closing: str) -> None:
        signs = self.signs
        end = signs.at
        signs.at = start
        says, cure = "this heading is not closed", f"close it with {closing}"
        signs.fault("heading", says, cure, signs.rest())
        signs.at = end
        if not signs.takes("]") and not signs.line_ended and not signs.sees("#"):
            raise LineLostError("heading")
