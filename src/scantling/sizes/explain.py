"""Why a size is what it is, told back to what was stated."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.sizes.answer import Solved
from scantling.sizes.model import Origin, Size
from scantling.sizes.rows import Row
from scantling.sizes.words import Words

_BY_ITSELF = {Origin.MEASURED: "as measured", Origin.STATED: "as stated"}


def explain(solved: Solved, name: str) -> tuple[str, ...]:
    """The chain of sentences a size follows from, each size named once.

    The size itself comes first; what a sentence rests on comes after it, down to measured and
    stated sizes and to rules and habits that stand alone.

    Raises:
        UnknownNameError: No such dimension.
    """
    solved.sizes.size(name)
    words = Words(dimensions={d.name: d for d in solved.trail.dimensions}, grid=solved.trail.grid)
    told: dict[str, str] = {}
    waiting = [name]
    while waiting:
        one = waiting.pop()
        if one in told:
            continue
        size = solved.sizes.size(one)
        rows = [] if size.origin in _BY_ITSELF else list(_rows(solved, one))
        told[one] = _sentence(words, size, rows)
        others = [n for row in rows for n, _ in row.terms if n != one]
        waiting += reversed(others)
    return tuple(told.values())


def _sentence(words: Words, size: Size, rows: list[Row]) -> str:
    about = "about " if size.off_tape else ""
    why = _BY_ITSELF.get(size.origin, size.because)
    others = [n for row in rows for n, _ in row.terms if n != size.name]
    of = f", from {words.listed([words.name(n) for n in dict.fromkeys(others)])}" if others else ""
    return f"{words.name(size.name)} is {about}{words.length(size.value)}: {why}{of}."


def _rows(solved: Solved, name: str) -> Iterator[Row]:
    """The row that gives a size; where it gave way, what took its place."""
    trail = solved.trail
    if trail.shape is None:
        return
    given = trail.shape.reasons[trail.shape.at[name]]
    if given not in trail.yielded:
        yield trail.rows[given]
        return
    yield from (row for row in trail.instead if any(n == name for n, _ in row.terms))
