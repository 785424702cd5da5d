"""A finger that moves over the signs of a piece file and notes what is wrong under it."""

from __future__ import annotations

import re

from scantling.findings import Finding, Place
from scantling.piece._file.text import Source, halt

MOST_FAULTS = 50  # of the signs themselves; whoever has more has another kind of file
_BLANK = re.compile(r"[ \t]*")
_COMMENT = re.compile(r"#[^\n]*")
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")


class LineLostError(Exception):
    """The rest of a line cannot be made out; reading goes on behind it.

    Args:
        code: Code of the fault, without its room.
    """

    def __init__(self, code: str) -> None:
        super().__init__(code)
        self.code = code


class TooManyFaultsError(Exception):
    """Enough is wrong to stop reading."""


class Signs:
    """The text of a file, where the finger is, and the faults found so far."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self.text = source.text
        self.at = 0
        self.within: list[str] = []  # brackets and braces that are open
        self.findings: list[Finding] = []

    def sees(self, signs: str) -> bool:
        """Whether these signs are next."""
        return self.text.startswith(signs, self.at)

    def takes(self, signs: str) -> bool:
        """Whether these signs are next; moves behind them."""
        if not self.sees(signs):
            return False
        self.at += len(signs)
        return True

    def match(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """What the pattern makes of the next signs; does not move."""
        return pattern.match(self.text, self.at)

    @property
    def ended(self) -> bool:
        """Whether no sign is left."""
        return self.at >= len(self.text)

    @property
    def line_ended(self) -> bool:
        """Whether no sign is left on the line."""
        return self.ended or self.sees("\n")

    def skip_blank(self) -> None:
        """Move over spaces and tabs."""
        found = self.match(_BLANK)
        self.at = found.end() if found else self.at

    def skip_comment(self) -> None:
        """Move over spaces and a comment, up to the end of the line."""
        self.skip_blank()
        if found := self.match(_COMMENT):
            self.look_for_control(found.span())
            self.at = found.end()

    def skip_lines(self) -> None:
        """Move over spaces, comments and line ends."""
        self.skip_comment()
        while self.takes("\n"):
            self.skip_comment()

    def skip_line(self) -> None:
        """Move behind the end of the line."""
        end = self.text.find("\n", self.at)
        self.at = len(self.text) if end < 0 else end + 1

    def look_for_control(self, span: tuple[int, int]) -> None:
        """Note signs that no text editor shows."""
        if found := _CONTROL.search(self.text, *span):
            code = f"U+{ord(found[0]):04X}"
            says = f"an invisible sign ({code}) stands here"
            self.fault("stray-sign", says, "take it out", range(*found.span()))

    def place(self, span: range) -> Place:
        """Where a stretch of the text stands."""
        return self.source.place(span)

    def rest(self) -> range:
        """From the finger to the last sign of the line that is neither blank nor comment."""
        end = self.text.find("\n", self.at)
        end = len(self.text) if end < 0 else end
        said = self.text[self.at : end].partition("#")[0].rstrip() or self.text[self.at : end]
        return range(self.at, self.at + len(said.rstrip()))

    def fault(self, code: str, says: str, cure: str, span: range) -> None:
        """Note what is wrong with some signs.

        Raises:
            TooManyFaultsError: It was one too many.
        """
        self.note(code, says, cure, self.place(span))

    def note(self, code: str, says: str, cure: str, place: Place) -> None:
        """Note what is wrong at a place.

        Raises:
            TooManyFaultsError: It was one too many.
        """
        if len(self.findings) < MOST_FAULTS:
            self.findings.append(halt(code, says, cure, place))
            return
        says = f"more than {MOST_FAULTS} faults: the file is not read from here on"
        self.findings.append(halt("too-many", says, "mend those above first", place))
        raise TooManyFaultsError

    def lost(self, code: str, says: str, cure: str, span: range | None = None) -> LineLostError:
        """Note what is wrong, and give the line up; to be raised."""
        self.fault(code, says, cure, self.rest() if span is None else span)
        return LineLostError(code)
