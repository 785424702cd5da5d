"""Sizes that a maker is expected to say and did not: told with what was taken, and why."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from scantling.findings import Finding, Weight
from scantling.piece._form import Unsaid
from scantling.sizes.answer import Solved
from scantling.sizes.explain import explain


def told_of(
    unsaid: Iterable[Unsaid], *, solved: Solved, known: Collection[str]
) -> Iterator[Finding]:
    """One for each outside size that was taken for the maker.

    Args:
        unsaid: Sizes that no line of their own section says.
        solved: The sizes found.
        known: Names of sizes that were said elsewhere or measured.
    """
    for each in unsaid:
        if each.size in known or each.size not in solved.sizes:
            continue
        taken, *_ = explain(solved, each.size)
        yield Finding(
            code="sizes.taken",
            weight=Weight.MIND,
            says=f"'{each.word}' is not said; {taken}",
            cure=f"Write {each.word} = ... in this section: the size you want.",
            place=each.place,
        )
