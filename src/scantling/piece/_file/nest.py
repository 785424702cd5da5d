"""Tables within tables: where a value goes, and whether its place is taken."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.findings import Place
from scantling.piece._file.signs import Signs
from scantling.piece._file.text import Key, Node, Row, Table, Written, shown


def put(signs: Signs, table: Table, path: Sequence[Key], node: Node) -> list[Table]:
    """Put a value under a path of words, and note when the place is taken.

    Returns:
        The tables on the way, from the outermost.
    """
    passed: list[Table] = []
    for key in path[:-1]:
        inner = child(table, key)
        if inner is None or inner.sealed or inner.headed:
            taken(signs, key, table)
            return passed
        passed.append(inner)
        table = inner
    if table.spelling(path[-1]) is not None:
        if not table.doubled:
            taken(signs, path[-1], table)
    else:
        seal(node)
        table.add(path[-1], node)
    return passed


def child(table: Table, key: Key) -> Table | None:
    """The table under a word, made where there is none; None where something else is."""
    spelling = table.spelling(key)
    if spelling is None:
        made = Table(key.place)
        table.add(key, made)
        return made
    found = table[spelling]
    return found if isinstance(found, Table) else None


def seal(node: Node) -> None:
    """Let nothing be added to a value in brackets or braces, nor to what it holds."""
    if isinstance(node, Written):
        return
    node.sealed = True
    for inner in node.values() if isinstance(node, Table) else node:
        seal(inner)


def taken(signs: Signs, key: Key, table: Table) -> None:
    """Note that a name has a value already."""
    place = key.place
    other = table.spelling(key)
    line = "" if other is None else f" in line {other.place.line}"
    if other is not None and str(other) != str(key):
        says = f"{shown(key)} is the same name as {shown(other)}{line}"
        cure = "space, hyphen, underscore and capitals are equal: change one of the names"
        signs.note("same-name", says, cure, place)
    else:
        says = f"{shown(key)} is said already{line}"
        signs.note("said-twice", says, "keep one of the two", place)


def section(signs: Signs, root: Table, path: Sequence[Key], place: Place) -> Table:
    """The table under a heading; one that leads nowhere where its place is taken."""
    table = root
    for key in path[:-1]:
        inner = _through(table, key)
        if inner is None:
            taken(signs, key, table)
            return Table(place)
        table = inner
    found = child(table, path[-1])
    if found is None or found.sealed:
        taken(signs, path[-1], table)
        return Table(place)
    if found.headed:
        taken(signs, path[-1], table)
        found.doubled = True
    found.headed = True
    found.place = place
    return found


def one_more(signs: Signs, root: Table, path: Sequence[Key], place: Place) -> Table:
    """A new table under a doubled heading, behind those it has."""
    made = Table(place)
    made.headed = True
    table = root
    for key in path[:-1]:
        inner = _through(table, key)
        if inner is None:
            taken(signs, key, table)
            return made
        table = inner
    spelling = table.spelling(path[-1])
    if spelling is None:
        table.add(path[-1], Row(place, [made]))
        return made
    row = table[spelling]
    if isinstance(row, Row) and not row.sealed:
        row.append(made)
    else:
        taken(signs, path[-1], table)
    return made


def _through(table: Table, key: Key) -> Table | None:
    """The table under a word of a longer heading: of several the last."""
    spelling = table.spelling(key)
    found = None if spelling is None else table[spelling]
    if isinstance(found, Row) and not found.sealed:
        last = found[-1]
        return last if isinstance(last, Table) else None
    inner = child(table, key)
    return None if inner is None or inner.sealed else inner
