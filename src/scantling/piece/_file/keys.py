"""Words before an equals sign and between the brackets of a heading."""

from __future__ import annotations

import re

from scantling.piece._file.quoted import quoted
from scantling.piece._file.signs import Signs
from scantling.piece._file.text import Key, shown

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_LOOSE = re.compile(r"""[^\s.=\[\]{},#"'“”][^.=\[\]{},#"'“”\n:]*""")  # what was meant as a name
_NAME_CURE = "put quotes round the name, or write it with underscores"


def path(signs: Signs, *, closing: str) -> list[Key]:
    """The words under the finger, parted by points; the finger stops before `closing`.

    A bare name with a space or a letter beyond a-z is noted and taken as it was meant.

    Args:
        signs: The file.
        closing: The sign that should follow.

    Raises:
        LineLostError: There is no name here.
    """
    found = [_part(signs, closing)]
    while signs.takes("."):
        found.append(_part(signs, closing))
    return found


def _part(signs: Signs, closing: str) -> Key:
    signs.skip_blank()
    start = signs.at
    if signs.sees('"') or signs.sees("'"):
        said = quoted(signs, lines=False)
        signs.skip_blank()
        return Key(said.text, said.place)
    bare = signs.match(_BARE)
    loose = signs.match(_LOOSE)
    if loose and loose[0].rstrip() != (bare[0] if bare else ""):
        text = loose[0].rstrip()
        after = signs.text[loose.end() : loose.end() + 1]
        if after in {".", closing} and after:
            span = range(start, start + len(text))
            signs.fault("bare-name", f"{shown(text)} stands without quotes", _NAME_CURE, span)
            signs.at = loose.end()
            return Key(text, signs.place(span))
    if bare is None:
        cure = "write [case], say" if closing == "]" else "write name = value, or a # before it"
        here = range(signs.at, signs.at + 1)
        raise signs.lost("no-name", "a name is missing here", cure, here)
    signs.at = bare.end()
    signs.skip_blank()
    return Key(bare[0], signs.place(range(start, bare.end())))
