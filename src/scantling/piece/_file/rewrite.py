"""Writes one value into a piece file and leaves every other sign as the maker set it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from scantling.errors import UnknownNameError
from scantling.piece._file.text import Node, Row, Sort, Source, Table, Written
from scantling.piece._file.toml import document
from scantling.roster import plain_name

Value = str | int | bool
_NUMBER = re.compile(r"[+-]?(?:0|[1-9][0-9]{0,8})(?:\.[0-9]{1,9})?")
_WORD = re.compile(r"[A-Za-z0-9_-]+")
_CONTROL = re.compile(r"[\x00-\x08\x0a-\x1f\x7f]")
_ESCAPED = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t"}


def rewritten(text: str, path: Sequence[str | int], value: Value) -> str:
    """The text with one value changed, or added behind what its section says.

    Comments, order, spacing, line ends and the spelling of names stay. A number that stood
    without quotes stays so where the new value allows.

    Args:
        text: The whole file; there may be faults in it.
        path: Words down to the value, in any spelling; values of a row are counted from 0.
        value: A word or length as the maker would write it, a count, or true or false.

    Raises:
        UnknownNameError: The path leads through a value, beyond the end of a row, or to a
            whole table or row.
    """
    plain = text.replace("\r\n", "\n").removeprefix("\ufeff")
    root, _ = document(Source(plain))
    node, rest = _followed(root, path)
    if not rest and isinstance(node, Written) and node.span:
        new = _in_file(value, like=node)
        changed = plain[: node.span.start] + new + plain[node.span.stop :]
    elif rest and isinstance(node, Table):
        changed = _added(plain, node, rest, value, at_root=node is root)
    else:
        raise UnknownNameError(f"{_shown(path)} cannot be set")
    return _exchanged(text, plain, changed)


def _exchanged(text: str, plain: str, changed: str) -> str:
    """The text with what differs between `plain` and `changed` exchanged, and nothing else.

    Files with both kinds of line end are met with; each line keeps its own.
    """
    start = _shared(plain, changed)
    left = min(len(plain), len(changed)) - start
    behind = _shared(plain[::-1][:left], changed[::-1][:left])
    new = changed[start : len(changed) - behind]
    ends = _offsets(text)
    written = new.replace("\n", "\r\n") if "\r\n" in text else new
    return text[: ends[start]] + written + text[ends[len(plain) - behind] :]


def _shared(one: str, other: str) -> int:
    """How many signs two texts begin alike with."""
    pairs = zip(one, other, strict=False)
    return next((at for at, (a, b) in enumerate(pairs) if a != b), min(len(one), len(other)))


def _offsets(text: str) -> list[int]:
    """Where each sign stands of the text as it is read, a line end of two signs at its first."""
    first = 1 if text.startswith("\ufeff") else 0
    kept = [at for at in range(first, len(text)) if text[max(first, at - 1) : at + 1] != "\r\n"]
    return [*kept, len(text)]


def _shown(path: Sequence[str | int]) -> str:
    return ".".join(map(str, path))


def _followed(root: Table, path: Sequence[str | int]) -> tuple[Node, Sequence[str | int]]:
    """The last value or table on the path, and the words that lead on from it."""
    node: Node = root
    for at, word in enumerate(path):
        if isinstance(node, Table) and isinstance(word, str):
            inner = node.said(word)
            if inner is None:
                return node, path[at:]
            node = inner
        elif isinstance(node, Row) and isinstance(word, int) and 0 <= word < len(node):
            node = node[word]
        else:
            raise UnknownNameError(f"{_shown(path)} leads nowhere at {word!r}")
    return node, ()


def _in_file(value: Value, *, like: Written | None = None) -> str:
    """A value as it stands in a file, quoted as the one it replaces."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int):
        return str(value)
    if like is not None and like.sort is not Sort.TEXT and _NUMBER.fullmatch(value):
        return value
    single = like is not None and like.sort is Sort.TEXT and _opening(like) == "'"
    if (
        (single or '"' in value or "\\" in value)
        and "'" not in value
        and not _CONTROL.search(value)
    ):
        return f"'{value}'"
    return f'"{"".join(map(_escaped, value))}"'


def _opening(written: Written) -> str:
    return written.source.text[written.span.start]


def _escaped(sign: str) -> str:
    if sign in _ESCAPED:
        return _ESCAPED[sign]
    return f"\\u{ord(sign):04x}" if _CONTROL.match(sign) else sign


def _added(
    text: str, table: Table, rest: Sequence[str | int], value: Value, *, at_root: bool
) -> str:
    *above, last = rest
    if any(not isinstance(word, str) for word in rest):
        raise UnknownNameError(f"{_shown(rest)} is no row of the file")
    line = f"{_name(str(last))} = {_in_file(value)}"
    if table.sealed and not above:
        return _within_braces(text, table, line)
    if above and at_root:
        heading = ".".join(_name(str(word)) for word in above)
        return f"{text.rstrip()}\n\n[{heading}]\n{line}\n"
    if above or not (table.headed or at_root):
        raise UnknownNameError(f"{_shown(rest)} has no section to stand in")
    return _below(text, table, line)


def _name(word: str) -> str:
    plain = plain_name(word)
    bare = plain.replace(" ", "_")
    return bare if _WORD.fullmatch(bare) else f'"{"".join(map(_escaped, plain))}"'


def _end(node: Node) -> int:
    """Offset behind the last sign that a value, or what a section says itself, takes."""
    if isinstance(node, Written):
        return node.span.stop
    if node.stop is not None:
        return node.stop
    inner = node.values() if isinstance(node, Table) else ()
    return max((_end(each) for each in inner if not _has_heading(each)), default=0)


def _has_heading(node: Node) -> bool:
    return (isinstance(node, Table) and node.headed) or (isinstance(node, Row) and not node.sealed)


def _within_braces(text: str, table: Table, line: str) -> str:
    last = max(map(_end, table.values()), default=0)
    if last:
        return f"{text[:last]}, {line}{text[last:]}"
    close = (table.stop or 1) - 1
    opened = text.rindex("{", 0, close)
    return f"{text[:opened]}{{ {line} }}{text[close + 1 :]}"


def _below(text: str, table: Table, line: str) -> str:
    """The line put below the last one of a section, as far in as that one."""
    last = _end(table)
    if last == 0 and not table.headed:
        return f"{line}\n{text}"
    at = last or _heading_end(text, table)
    start = text.rfind("\n", 0, at) + 1
    found = re.compile(r"[ \t]*").match(text, start)
    indent = found[0] if found and last else ""
    end = text.find("\n", at)
    if end < 0:
        return f"{text}\n{indent}{line}\n"
    return f"{text[:end]}\n{indent}{line}{text[end:]}"


def _heading_end(text: str, table: Table) -> int:
    lines = text.split("\n")
    return sum(len(each) + 1 for each in lines[: table.place.line - 1])
