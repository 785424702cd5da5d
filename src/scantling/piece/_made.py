"""Parts made already: a fact may fall short of the line it was meant for.

Nothing is made short on purpose, so a part that is still wood on the bench is made to its line,
and a made one lacks something, or stands over till it is planed. Where all parts of one line are
made, the largest gives it; where they are joined at that line, the smallest does.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from scantling.piece._form import Whole
from scantling.piece._words import alike, follows, free, habit
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Alike, Bound, Dimension, Kind, Level, Relations


def unmade(names: Sequence[str], whole: Whole) -> list[str]:
    """Those of several sizes that nobody has measured yet."""
    return [name for name in names if name not in whole.measured]


def first_unmade(names: Sequence[str], whole: Whole) -> str:
    """The size that speaks for the plan: the first that nobody has measured, or the first."""
    return next(iter(unmade(names, whole)), names[0])


def alike_unmade(names: Sequence[str], because: str, *, whole: Whole) -> tuple[Alike, ...]:
    """Sizes kept equal where they can still be made so; what is made is as it is."""
    still = tuple(unmade(names, whole))
    return (alike(still, because),) if len(still) > 1 else ()


def lacking(name: str, names: Sequence[str], whole: Whole) -> Linear:
    """What a part lacks to the line that its own kind end on; nothing unless it is made. [mm]

    Args:
        name: The size, one of `names`.
        names: Sizes meant for one line.
        whole: The piece, with what was measured.
    """
    own = whole.measured.get(name)
    if own is None:
        return ZERO
    largest = own == max(whole.measured[each] for each in names if each in whole.measured)
    return ZERO if largest and not unmade(names, whole) else size_of(_lack(name))


def ending_on(
    line: Linear,
    names: Sequence[str],
    because: str,
    *,
    whole: Whole,
    stands_over: bool = False,
) -> Relations:
    """Sizes that are all one line, but for what is made already and falls short of it.

    What is still to be made is made to the line; where all are made, the largest gives it.

    Args:
        line: What they are meant to be. [mm]
        names: Their names.
        because: The sentence that explains it.
        whole: The piece, with what was measured.
        stands_over: Whether a made part may as well have too much, till it is planed.
    """
    lacks = {name: lacking(name, names, whole) for name in names}
    short = [name for name, lack in lacks.items() if lack != ZERO]
    return Relations(
        dimensions=tuple(_room(name, is_signed=stands_over) for name in short),
        equations=tuple(
            follows(size_of(name) + lack, line, because) for name, lack in lacks.items()
        ),
        rules=tuple(habit(lacks[name], 0, because) for name in short),
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


def far_end(name: str, whole: Whole) -> Linear:
    """Where a joint counts from at the far end of a part made too short: beyond its wood. [mm]

    All shoulders keep their places then, and only the last bit of the joint is missing.
    """
    return ZERO - lack_of(name, whole)


def reaching(line: Linear, name: str, because: str, *, whole: Whole) -> Relations:
    """A size that others give; a made part that falls short of it moves none of them.

    Args:
        line: What it is meant to be. [mm]
        name: Its name.
        because: The sentence that explains it.
        whole: The piece, with what was measured.
    """
    found = follows(size_of(name) + lack_of(name, whole), line, because)
    return Relations(equations=(found,)) + lacks(name, because, whole=whole)


def lacks(name: str, because: str, *, whole: Whole) -> Relations:
    """What a made part lacks somewhere: nothing, if it can be helped."""
    lack = lack_of(name, whole)
    if lack == ZERO:
        return Relations()
    return Relations(dimensions=(_room(name, is_signed=True),), rules=(habit(lack, 0, because),))


def entering(
    line: Linear,
    part: str,
    last: Linear,
    because: str,
    *,
    whole: Whole,
    shoulders: Sequence[Linear] = (),
) -> Relations:
    """The length of a part that is let in at both ends; one made short lacks it at the far end.

    Args:
        line: What it is meant to be. [mm]
        part: The part.
        last: How far the far end enters its mate. [mm]
        because: The sentence that explains it.
        whole: The piece, with what was measured.
        shoulders: Gaps at the shoulders, which a short part leaves closed. [mm]
    """
    name = f"{part}.length"
    found = reaching(line, name, because, whole=whole)
    lack = lack_of(name, whole)
    if lack == ZERO:
        return found
    holds = f"half of the joint at the far end of the {part} is left"
    closed = "a part made short keeps its shoulders tight"
    return found + Relations(
        bounds=(Bound(sum=last / 2 - lack, because=holds),),
        rules=tuple(habit(gap, 0, closed, level=Level.RULE) for gap in shoulders),
    )


def _room(name: str, *, is_signed: bool) -> Dimension:
    room = free(_lack(name), says=_says(name), kind=Kind.FOLLOWS, may_be_nothing=True)
    return replace(room, least=None) if is_signed else room


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
