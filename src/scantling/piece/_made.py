"""Parts made already: a fact may fall short of the line it was meant for.

Nothing is made short on purpose, so a part that is still wood on the bench is made to its line.
Of several parts made for one line the largest gives the line, and each other lacks something;
where they are joined at that line, the smallest gives it, and each other is planed down to it.
"""

from __future__ import annotations

from collections.abc import Sequence

from scantling.piece._form import Whole
from scantling.piece._words import follows, free, habit
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Kind, Relations


def lacking(name: str, names: Sequence[str], whole: Whole) -> Linear:
    """What a part lacks to the line that its own kind end on; nothing unless it is made. [mm]

    Args:
        name: The size, one of `names`.
        names: Sizes meant for one line.
        whole: The piece, with what was measured.
    """
    made = [whole.measured[each] for each in names if each in whole.measured]
    own = whole.measured.get(name)
    return size_of(_lack(name)) if own is not None and own < max(made) else ZERO


def ending_on(line: Linear, names: Sequence[str], because: str, *, whole: Whole) -> Relations:
    """Sizes that are all one line, but for what is made already and falls short of another.

    Args:
        line: What they are meant to be. [mm]
        names: Their names.
        because: The sentence that explains it.
        whole: The piece, with what was measured.
    """
    lacks = {name: lacking(name, names, whole) for name in names}
    return Relations(
        dimensions=tuple(
            free(_lack(name), says=_says(name), kind=Kind.FOLLOWS, may_be_nothing=True)
            for name, lack in lacks.items()
            if lack != ZERO
        ),
        equations=tuple(
            follows(size_of(name) + lack, line, because) for name, lack in lacks.items()
        ),
    )


def over(name: str, names: Sequence[str], whole: Whole) -> Linear:
    """What a part stands over the line of its own kind, to be planed off; nothing if unmade. [mm]

    Args:
        name: The size, one of `names`.
        names: Sizes meant for one line.
        whole: The piece, with what was measured.
    """
    made = [whole.measured[each] for each in names if each in whole.measured]
    own = whole.measured.get(name)
    return size_of(_over(name)) if own is not None and own > min(made) else ZERO


def planed_to(line: Linear, names: Sequence[str], because: str, *, whole: Whole) -> Relations:
    """Sizes that are all one line, but for what is made already and stands over another.

    For parts that are joined at that line: the shortest of them gives it.

    Args:
        line: What they are meant to be. [mm]
        names: Their names.
        because: The sentence that explains it.
        whole: The piece, with what was measured.
    """
    overs = {name: over(name, names, whole) for name in names}
    return Relations(
        dimensions=tuple(
            free(_over(name), says=_says_over(name), kind=Kind.FOLLOWS, may_be_nothing=True)
            for name, stands in overs.items()
            if stands != ZERO
        ),
        equations=tuple(
            follows(size_of(name) - stands, line, because) for name, stands in overs.items()
        ),
    )


def lack_of(name: str, whole: Whole) -> Linear:
    """What a part lacks to a line that others give; nothing unless it is made. [mm]"""
    return size_of(_lack(name)) if name in whole.measured else ZERO


def reaching(line: Linear, name: str, because: str, *, whole: Whole) -> Relations:
    """A size that others give; a made part that falls short of it moves none of them.

    Args:
        line: What it is meant to be. [mm]
        name: Its name.
        because: The sentence that explains it.
        whole: The piece, with what was measured.
    """
    lack = lack_of(name, whole)
    found = Relations(equations=(follows(size_of(name) + lack, line, because),))
    if lack == ZERO:
        return found
    room = free(_lack(name), says=_says(name), kind=Kind.FOLLOWS, may_be_nothing=True)
    return found + Relations(dimensions=(room,), rules=(habit(lack, 0, because),))


def _lack(name: str) -> str:
    part, _, word = name.rpartition(".")
    return f"{part}.short in {word}"


def _over(name: str) -> str:
    part, _, word = name.rpartition(".")
    return f"{part}.over in {word}"


def _says_over(name: str) -> str:
    part, _, word = name.rpartition(".")
    return f"what the {part} has too much in {word}"


def _says(name: str) -> str:
    part, _, word = name.rpartition(".")
    return f"what the {part} lacks in {word}"
