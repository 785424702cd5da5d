"""Names as a maker says them: without points, numbered ones together, and never a lone "more"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

MOST = 3  # names that are said before the rest is counted
_NUMBERED = re.compile(r"(?P<stem>.*\D) (?P<number>\d+)$")


def spoken(text: str, names: Iterable[str]) -> str:
    """Text with names as they are said: `left door.top rail` is the left door top rail."""
    for name in sorted(names, key=len, reverse=True):
        text = text.replace(name, plainly(name))
    return text


def plainly(name: str) -> str:
    """One name as it is said."""
    return name.replace(".", " ")


def by_family(text: str, families: Mapping[str, str]) -> str:
    """`left in left side` as `left in side`: what is true of either side is said once."""
    for name in sorted(families, key=len, reverse=True):
        text = text.replace(name, families[name])
    return text


def listed(names: Iterable[str], *, most: int = MOST) -> str:
    """Names in one line: `left side and right side`, `back boards 1 to 5`, `a, b, c and 2 more`.

    Args:
        names: As the piece has them.
        most: So many are said; one more than that is said too, being no longer than its count.
    """
    said = _together([plainly(name) for name in dict.fromkeys(names)])
    if len(said) > most + 1:
        return f"{', '.join(said[:most])} and {len(said) - most} more"
    return joined(said)


def joined(words: Sequence[str]) -> str:
    """`a, b and c`."""
    *before, last = words or ("",)
    return f"{', '.join(before)} and {last}" if before else last


def counted(count: int, word: str) -> str:
    """`1 tail`, `2 tails`; the word is given for several."""
    return f"{count} {word.removesuffix('s') if count == 1 else word}"


def _together(names: Sequence[str]) -> list[str]:
    """Names that differ by their number alone as one: `back boards 2 to 4`."""
    runs: list[tuple[str, list[int]]] = []
    for name in names:
        found = _NUMBERED.fullmatch(name)
        stem, number = (found["stem"], [int(found["number"])]) if found else (name, [])
        if number and runs and runs[-1][0] == stem and runs[-1][1]:
            runs[-1][1].extend(number)
        else:
            runs.append((stem, number))
    return [_run(stem, sorted(numbers)) for stem, numbers in runs]


def _run(stem: str, numbers: list[int]) -> str:
    if not numbers:
        return stem
    if len(numbers) == 1:
        return f"{stem} {numbers[0]}"
    many = f"{stem.removesuffix('shelf')}shelves" if stem.endswith("shelf") else f"{stem}s"
    if len(numbers) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
        return f"{many} {numbers[0]} to {numbers[-1]}"
    return f"{many} {joined([str(number) for number in numbers])}"
