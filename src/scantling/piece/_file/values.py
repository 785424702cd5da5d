"""Values of the piece file: quoted text, rows in brackets, tables in braces.

What is wrong with one value is noted and read past, so that the next fault is found too.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from scantling.piece._file import keys, nest
from scantling.piece._file.bare import bare
from scantling.piece._file.quoted import quoted
from scantling.piece._file.signs import LineLostError, Signs
from scantling.piece._file.text import Key, Node, Row, Sort, Table, Written, shown

DEEPEST = 20  # brackets within brackets; a piece needs three
_REST = re.compile(r"[^#\n]*")
_REST_WITHIN = re.compile(r"[^#\n,\]}]*")
_ENTRY = re.compile(r"[^#\n,}]*")
_STATEMENT = re.compile(r"""[ \t]*(?:[A-Za-z0-9_-]+|"[^"\n]*"|'[^'\n]*')[ \t]*=""")
_SECTION = re.compile(
    r"[ \t]*\[\[?[ \t]*(?!(?:true|false|inf|nan)\b)[A-Za-z_][^\[\]\n,]*\]\]?"
    r"[ \t]*(?:#[^\n]*)?(?:\n|\Z)"
)


def value(signs: Signs) -> Node:
    """The value under the finger, with whatever is wrong behind it noted.

    Raises:
        LineLostError: The rest of the line cannot be made out.
    """
    if signs.sees("["):
        node: Node = _deeper(signs, _row)
    elif signs.sees("{"):
        node = _deeper(signs, _table)
    elif signs.sees('"') or signs.sees("'"):
        node = quoted(signs, lines=True)
    else:
        return bare(signs)
    _nothing_behind(signs, node)
    return node


def assignment(signs: Signs, table: Table) -> list[Table]:
    """A name, an equals sign and a value, put into a table.

    Returns:
        The tables that a name with points led through.

    Raises:
        LineLostError: The rest of the line cannot be made out.
    """
    path = keys.path(signs, closing="=")
    if not signs.takes("="):
        raise signs.lost("no-equals", *_no_equals(signs, path[-1]))
    signs.skip_blank()
    try:
        node = value(signs)
    except LineLostError:
        # Said, if not well: nobody should report it missing.
        nest.put(signs, table, path, _faulty(signs))
        raise
    return nest.put(signs, table, path, node)


def _no_equals(signs: Signs, key: Key) -> tuple[str, str]:
    if signs.sees(":"):
        return "a colon stands where an equals sign belongs", f"write {shown(key)[1:-1]} = ..."
    return f"an equals sign is missing behind {shown(key)}", f"write {shown(key)[1:-1]} = ..."


def _faulty(signs: Signs) -> Written:
    """What stands for a value that could not be read."""
    span = range(signs.at, signs.at)
    return Written(sort=Sort.FAULTY, text="", source=signs.source, span=span, spots=())


def _deeper(signs: Signs, read: Callable[[Signs], Row | Table]) -> Node:
    if len(signs.within) >= DEEPEST:
        raise signs.lost("too-deep", "too many brackets stand within brackets", "use fewer")
    signs.within.append(signs.text[signs.at])
    try:
        node = read(signs)
        node.stop = signs.at
        return node
    finally:
        signs.within.pop()


def _nothing_behind(signs: Signs, node: Node) -> None:
    """Note what stands between a value and the sign that should follow it.

    A missing comma is left to the bracket around.
    """
    end = signs.at
    found = signs.match(_REST_WITHIN if signs.within else _REST)
    rest = found[0].strip(" \t") if found else ""
    if not rest:
        return
    start = signs.text.index(rest, end)
    if signs.within and rest[0] in "[{\"'" and start > end:
        return
    span = range(start, start + len(rest))
    if isinstance(node, Written) and '"' in rest:
        says = "an inch mark closes the quotes too early, or something stands behind them"
        cure = 'write in for inches: "1 1/2 in", or use single quotes: \'1 1/2"\''
        signs.fault("inch-mark", says, cure, span)
    else:
        cure = "take it out, or put it behind a #"
        signs.fault("stray-sign", "nothing may stand behind a value", cure, span)
    signs.at = span.stop


def _comma_missing(signs: Signs, at: int) -> None:
    signs.fault("comma", "a comma is missing here", "part values by commas", range(at, at))


def _comma_too_many(signs: Signs) -> None:
    says, cure = "a comma stands here with nothing before it", "take the comma out"
    signs.fault("comma", says, cure, range(signs.at, signs.at + 1))
    signs.at += 1


def _wrong_bracket(signs: Signs, right: str) -> None:
    says = "brackets [ ] and braces { } are mixed up"
    signs.fault("bracket", says, f"write {right} here", range(signs.at, signs.at + 1))
    signs.at += 1


def _never_closed(signs: Signs, start: int, right: str) -> None:
    what = "bracket" if right == "]" else "brace"
    says = f"this {what} is never closed"
    signs.fault("bracket-open", says, f"close it with {right}", range(start, start + 1))


def _row(signs: Signs) -> Row:
    start = signs.at
    signs.at += 1
    row = Row(signs.place(range(start, start + 1)))
    while True:
        signs.skip_lines()
        if signs.takes("]"):
            return row
        if _left_open(signs, start, _STATEMENT, _SECTION):
            _never_closed(signs, start, "]")
            return row
        if signs.sees(","):
            _comma_too_many(signs)
            continue
        try:
            row.append(value(signs))
        except LineLostError as lost:
            if lost.code == "too-deep":
                raise
            signs.skip_line()
            continue
        if _row_ends(signs):
            return row


def _row_ends(signs: Signs) -> bool:
    """Whether a wrong bracket ends the row behind a value; takes the comma that should be there."""
    end = signs.at
    signs.skip_lines()
    if signs.takes(",") or signs.sees("]"):
        return False
    if signs.sees("}"):
        _wrong_bracket(signs, "]")
        return True
    if not (signs.ended or _starts(signs, end, _STATEMENT, _SECTION)):
        _comma_missing(signs, end)
    return False


def _left_open(signs: Signs, start: int, *patterns: re.Pattern[str]) -> bool:
    """Whether the file ends, or something new starts, before a bracket is closed.

    The finger then stands at the end of the last line that may belong to the bracket.
    """
    if signs.ended:
        return True
    if not _starts(signs, start, *patterns):
        return False
    signs.at = signs.text.rindex("\n", 0, signs.at)
    return True


def _starts(signs: Signs, since: int, *patterns: re.Pattern[str]) -> bool:
    """Whether the line under the finger comes after `since` and starts something new."""
    line = signs.text.rfind("\n", 0, signs.at) + 1
    return line > since and any(pattern.match(signs.text, line) for pattern in patterns)


def _table(signs: Signs) -> Table:
    start = signs.at
    signs.at += 1
    table = Table(signs.place(range(start, start + 1)))
    on_lines = False
    comma: int | None = None  # where the last one stands, nothing behind it yet
    while True:
        on_lines |= _passes_line_end(signs)
        if signs.takes("}"):
            break
        if _left_open(signs, start, _SECTION):
            _never_closed(signs, start, "}")
            return table
        if signs.sees(","):
            _comma_too_many(signs)
            continue
        if signs.sees("]"):
            _wrong_bracket(signs, "}")
            break
        _entry(signs, table)
        comma = None
        if _breaks_off(signs):
            _never_closed(signs, start, "}")
            return table
        on_lines |= _passes_line_end(signs)
        comma = signs.at if signs.takes(",") else None
        if comma is None and not (signs.sees("}") or signs.sees("]")):
            _comma_missing(signs, signs.at)
    if comma is not None and not on_lines:
        says = "a comma stands before the closing brace"
        signs.fault("comma", says, "take the comma out", range(comma, comma + 1))
    if on_lines:
        cure = "put it on one line, or give it a heading of its own"
        says = "a table in braces must stand on one line"
        signs.fault("brace-lines", says, cure, range(start, start + 1))
    return table


def _entry(signs: Signs, table: Table) -> None:
    """One name and value of a table in braces; what cannot be made out is passed over."""
    start = signs.at
    try:
        assignment(signs, table)
    except LineLostError as lost:
        if lost.code in {"quotes-open", "too-deep"}:
            raise
        found = _ENTRY.match(signs.text, max(signs.at, start + 1))
        signs.at = found.end() if found else signs.at


def _passes_line_end(signs: Signs) -> bool:
    before = signs.at
    signs.skip_lines()
    return "\n" in signs.text[before : signs.at]


def _breaks_off(signs: Signs) -> bool:
    """Whether the line ends behind a value and the next goes on with neither comma nor brace."""
    signs.skip_comment()
    end = signs.at
    signs.skip_lines()
    if signs.at > end and not (signs.sees(",") or signs.sees("}")):
        signs.at = end
        return True
    signs.at = end
    return signs.ended
