"""What is wrong, or worth knowing, about the maker's piece: place, weight, words and cure.

A finding is data. It is collected with all the others and never raised, so that a maker sees
every fault of his file at once, each under the text that caused it.
"""

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from scantling.errors import InternalError, OutOfRangeError

LONGEST_LINE = 120  # [characters] more would wrap and part the carets from their text
_CODE = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+")
_TURNS_TEXT = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


class Weight(StrEnum):
    """How much a finding weighs, heaviest first."""

    HALT = "halt"  # do not cut before it is settled
    MIND = "mind"  # it can be built, but look at this
    NOTE = "note"  # worth knowing


@dataclass(frozen=True, kw_only=True, order=True)
class Place:
    """A stretch of text in one of the maker's files.

    Raises:
        OutOfRangeError: Line, column or width below 1.
    """

    file: str
    line: int  # counted from 1
    column: int  # [characters] counted from 1, a tab is one
    width: int = 1  # [characters] of the guilty text

    def __post_init__(self) -> None:
        for name in ("line", "column", "width"):
            value = getattr(self, name)
            if value < 1:
                raise OutOfRangeError(f"{name} {value} of a place in {self.file} is below 1")

    def __str__(self) -> str:
        return f"{self.file} {self.line}:{self.column}"


@dataclass(frozen=True, kw_only=True)
class Finding:
    """One thing a maker should know about his piece.

    Raises:
        InternalError: The code is not of the form `room.what-is-wrong`, nothing is said, or
            a halt or mind comes without a cure.
    """

    code: str  # stable; kept in data and manual, such as "piece.unknown-word"
    weight: Weight
    says: str  # the wood first, then month and amount
    cure: str  # what the hand does about it; only a note may lack one
    place: Place | None = None
    figure: str = ""  # the amount alone, with its unit
    limit: str = ""  # what the figure was held against, with its unit
    source: str = ""  # document, table, page
    parts: tuple[str, ...] = ()  # parts it concerns, by name

    def __post_init__(self) -> None:
        if not _CODE.fullmatch(self.code):
            raise InternalError(f"finding code {self.code!r} is not like piece.unknown-word")
        if not self.says.strip():
            raise InternalError(f"finding {self.code} says nothing")
        if self.weight is not Weight.NOTE and not self.cure.strip():
            raise InternalError(f"finding {self.code} weighs {self.weight} but has no cure")


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings by weight, file, line, column and code, each once.

    Within one weight those without a place come last. What ties keeps the order it came in.
    """
    return tuple(sorted(dict.fromkeys(findings), key=_rank))


def in_sentences(finding: Finding) -> Finding:
    """The finding with words and cure as whole sentences, however a room wrote them."""
    says, cure = _sentence(finding.says), _sentence(finding.cure)
    if (says, cure) == (finding.says, finding.cure):
        return finding
    return replace(finding, says=says, cure=cure)


def _sentence(text: str) -> str:
    if not text.strip():
        return text
    begun = text[0].upper() + text[1:]
    return begun if begun.endswith((".", "?", "!", ":")) else f"{begun}."


def _rank(finding: Finding) -> tuple[int, bool, str, int, int, str]:
    weight = tuple(Weight).index(finding.weight)
    place = finding.place
    if place is None:
        return weight, True, "", 0, 0, finding.code
    return weight, False, place.file, place.line, place.column, finding.code


def underlined(text: str, place: Place) -> str:
    """The line of a file with carets under its guilty text.

    Columns are counted in characters. The carets are set by the width a terminal gives each
    character; tabs are kept as tabs so that they fall alike in both lines. A place behind the
    end of its line or file, where something is missing, gets one caret behind the last
    character. Signs that would steer the terminal are shown as a replacement character, and
    of a very long line only the stretch around the place is shown.

    Args:
        text: The whole file.
        place: Where the guilty text stands; cut short at the end of its line.

    Returns:
        Two lines without a line end behind them.
    """
    lines = text.split("\n")
    line = _shown(lines[min(place.line, len(lines)) - 1].removesuffix("\r"))
    begin = min(place.column - 1, len(line)) if place.line <= len(lines) else len(line)
    left, right = _window(begin, length=len(line))
    before = ("…" if left else "") + line[left:begin]
    guilty = line[begin : min(begin + place.width, right)]
    after = line[begin + len(guilty) : right] + ("…" if right < len(line) else "")
    carets = "".join("\t" if sign == "\t" else "^" * _columns(sign) for sign in guilty)
    pad = "".join("\t" if sign == "\t" else " " * _columns(sign) for sign in before)
    return f"{before}{guilty}{after}\n{pad}{carets.rstrip() if '^' in carets else '^'}"


def _window(begin: int, *, length: int) -> tuple[int, int]:
    if length <= LONGEST_LINE:
        return 0, length
    left = max(0, min(begin - LONGEST_LINE // 2, length - LONGEST_LINE))
    return left, left + LONGEST_LINE


def _columns(sign: str) -> int:
    """Columns a terminal gives to one character."""
    if unicodedata.category(sign) in {"Mn", "Me", "Cf"} and sign != "\u00ad":
        return 0
    return 2 if unicodedata.east_asian_width(sign) in {"W", "F"} else 1


def _shown(text: str) -> str:
    return "".join("\ufffd" if _steers(sign) else sign for sign in text)


def _steers(sign: str) -> bool:
    return sign in _TURNS_TEXT or (
        sign != "\t" and unicodedata.category(sign) in {"Cc", "Zl", "Zp", "Cs"}
    )


def told(finding: Finding, *, source_text: str | None) -> str:
    """A finding as plain text for a terminal: words, cure, amounts, place, guilty line, source.

    Args:
        finding: What to tell.
        source_text: The file that `finding.place` points into; None shows the place alone.

    Returns:
        Lines without a line end behind the last.
    """
    lines = [_shown(finding.says)]
    if finding.cure:
        lines.append(_shown(finding.cure))
    if finding.figure and finding.figure not in finding.says:
        held = f"; the limit is {finding.limit}" if finding.limit else ""
        lines.append(f"  It is {_shown(finding.figure)}{_shown(held)}.")
    if finding.place is not None:
        lines.append(f"  {_shown(str(finding.place))}")
        if source_text is not None:
            lines += [f"    {line}" for line in underlined(source_text, finding.place).split("\n")]
    if finding.source:
        lines.append(f"  {_shown(finding.source)}")
    return "\n".join(lines)
