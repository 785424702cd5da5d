"""Text in quotes: what it says, and where each of its signs stands."""

from __future__ import annotations

import re

from scantling.piece._file.signs import Signs
from scantling.piece._file.text import Sort, Written

_PLAIN = re.compile(r'[^"\\\n]+')  # between double quotes
_PLAIN_LINES = re.compile(r'[^"\\]+')
_LITERAL = re.compile(r"[^'\n]*")
_UNICODE = re.compile(r"u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}")
_LINE_END = re.compile(r"[ \t]*\n[ \t\n]*")
_ESCAPES = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r", '"': '"', "\\": "\\"}
_CLOSE = "close the quotes on the same line"
_ESCAPE_CURE = "write \\\\ for a backslash, or use single quotes: 'C:\\...'"


def quoted(signs: Signs, *, lines: bool) -> Written:
    """The text in quotes under the finger.

    Args:
        signs: The file, its finger on the opening quotes.
        lines: Whether tripled quotes may hold several lines.

    Raises:
        LineLostError: The quotes are never closed.
    """
    start = signs.at
    mark = signs.text[start]
    tripled = lines and signs.sees(3 * mark)
    signs.at += 3 if tripled else 1
    if tripled:
        signs.takes("\n")
    said = _Said(signs, mark=3 * mark if tripled else mark)
    if mark == "'":
        _literal(signs, said, start)
    else:
        _basic(signs, said, start)
    return Written(
        sort=Sort.TEXT,
        text="".join(said.text),
        source=signs.source,
        span=range(start, signs.at),
        spots=tuple(said.spots),
    )


class _Said:
    """The signs between quotes so far."""

    def __init__(self, signs: Signs, *, mark: str) -> None:
        self.signs = signs
        self.mark = mark
        self.text: list[str] = []
        self.spots: list[int] = []

    def add(self, stop: int) -> None:
        """Take the signs up to `stop` as they stand."""
        self.signs.look_for_control((self.signs.at, stop))
        self.text += self.signs.text[self.signs.at : stop]
        self.spots += range(self.signs.at, stop)
        self.signs.at = stop

    def escape(self, sign: str, width: int) -> None:
        """Take an escape of that many signs as one sign."""
        self.text.append(sign)
        self.spots.append(self.signs.at)
        self.signs.at += width

    def closes(self) -> bool:
        """Whether the closing quotes are next; moves behind them."""
        # Up to two quotes just before three closing ones belong to the text.
        for _ in range(2 if len(self.mark) == 3 else 0):
            if self.signs.sees(self.mark + self.mark[0]):
                self.add(self.signs.at + 1)
        return self.signs.takes(self.mark)


def _literal(signs: Signs, said: _Said, start: int) -> None:
    while not said.closes():
        _unclosed(signs, said, start)
        found = signs.match(_LITERAL)
        said.add(max(found.end() if found else 0, signs.at + 1))


def _basic(signs: Signs, said: _Said, start: int) -> None:
    plain = _PLAIN_LINES if len(said.mark) == 3 else _PLAIN
    while not said.closes():
        _unclosed(signs, said, start)
        if found := signs.match(plain):
            said.add(found.end())
        elif signs.sees("\\"):
            _escape(signs, said)
        else:
            said.add(signs.at + 1)


def _unclosed(signs: Signs, said: _Said, start: int) -> None:
    if len(said.mark) == 3 and signs.ended:
        signs.at = start
        raise signs.lost("quotes-open", "these quotes are never closed", "close them with three")
    if len(said.mark) == 1 and signs.line_ended:
        signs.at = start
        raise signs.lost("quotes-open", "these quotes are never closed", _CLOSE)


def _escape(signs: Signs, said: _Said) -> None:
    after = signs.text[signs.at + 1 : signs.at + 2]
    if after in _ESCAPES:
        said.escape(_ESCAPES[after], 2)
        return
    signs.at += 1
    ends = signs.match(_LINE_END) if len(said.mark) == 3 else None
    code = signs.match(_UNICODE)
    signs.at -= 1
    if ends:
        signs.at = ends.end()
    elif code and _is_sign(int(code[0][1:], 16)):
        said.escape(chr(int(code[0][1:], 16)), 1 + len(code[0]))
    else:
        span = range(signs.at, signs.at + 2)
        signs.fault("escape", "a backslash has a meaning of its own here", _ESCAPE_CURE, span)
        said.add(signs.at + 1)


def _is_sign(code: int) -> bool:
    return code <= 0x10FFFF and not 0xD800 <= code <= 0xDFFF
