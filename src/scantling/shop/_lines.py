"""Where a word or value of a small TOML file stands, for findings that point at it.

The reader of TOML keeps no positions, so they are looked up a second time here. Only what a
shop file is made of is followed: tables, rows of tables, keys, scalars and flat lists. What
stands deeper is answered with the place of the key above it.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from scantling.findings import Place

Step = str | int
Path = tuple[Step, ...]

_HEADER = re.compile(r"\s*(?P<open>\[\[?)\s*(?P<name>[^\[\]#]+?)\s*\]")
_KEY = re.compile(r"""\s*(?P<key>(?:"[^"]*"|'[^']*'|[\w.-]+))\s*=\s*""")
_TOKEN = re.compile(
    r"""
      (?P<string>"(?:[^"\\\n]|\\.)*"|'[^'\n]*')
    | (?P<comment>\#[^\n]*)
    | (?P<open>[\[{])
    | (?P<close>[\]}])
    | (?P<bare>[^\s,\[\]{}"'\#=]+)
    """,
    re.VERBOSE,
)


@dataclass(frozen=True, kw_only=True)
class Places:
    """Keys and values of a file by their path, a row of tables by its index."""

    file: str
    keys: Mapping[Path, Place]
    values: Mapping[Path, Place]

    def key(self, path: Path) -> Place:
        """Place of a key or table header; of the nearest above it that is known."""
        return self._nearest(path, self.keys)

    def value(self, path: Path) -> Place:
        """Place of a value or list member; of the nearest above it that is known."""
        return self._nearest(path, self.values, self.keys)

    def _nearest(self, path: Path, *known: Mapping[Path, Place]) -> Place:
        for stop in range(len(path), 0, -1):
            for each in known:
                if path[:stop] in each:
                    return each[path[:stop]]
        return Place(file=self.file, line=1, column=1)


def places(text: str, *, file: str) -> Places:
    """Look up every key and value of a file that has been read without a fault."""
    keys: dict[Path, Place] = {}
    values: dict[Path, Place] = {}
    table: Path = ()
    at = 0
    rows: dict[str, int] = {}
    while at < len(text):
        end = _line_end(text, at)
        if header := _HEADER.match(text, at, end):
            table = _table(header, rows)
            keys[table] = _place(text, header.start("name"), header.end("name"), file)
        elif key := _KEY.match(text, at, end):
            path = (*table, *_parts(key["key"]))
            keys[path] = _place(text, key.start("key"), key.end("key"), file)
            for member, start, stop in _scalars(text, key.end()):
                values[(*path, *member)] = _place(text, start, stop, file)
                end = max(end, _line_end(text, stop))
        at = end + 1
    return Places(file=file, keys=keys, values=values)


def _table(header: re.Match[str], rows: dict[str, int]) -> Path:
    name = header["name"]
    if header["open"] == "[":
        return _parts(name)
    rows[name] = rows.get(name, -1) + 1
    return (*_parts(name), rows[name])


def _parts(key: str) -> tuple[str, ...]:
    if key[0] in "\"'":
        return (key[1:-1],)
    return tuple(part.strip() for part in key.split("."))


def _scalars(text: str, at: int) -> Iterator[tuple[tuple[int, ...], int, int]]:
    """Scalars of one value with their index in its list, and where they start and stop."""
    depth, index = 0, 0
    stop = _line_end(text, at)
    while found := _TOKEN.search(text, at, len(text) if depth else stop):
        at = found.end()
        if found["open"]:
            depth += 1
        elif found["close"]:
            depth -= 1
        elif not found["comment"] and depth <= 1:
            yield ((index,) if depth else ()), found.start(), found.end()
            index += 1
        if depth <= 0:
            return


def _line_end(text: str, at: int) -> int:
    end = text.find("\n", at)
    return len(text) if end < 0 else end


def _place(text: str, start: int, stop: int, file: str) -> Place:
    begin = text.rfind("\n", 0, start) + 1
    line = text.count("\n", 0, start) + 1
    return Place(file=file, line=line, column=start - begin + 1, width=max(1, stop - start))
