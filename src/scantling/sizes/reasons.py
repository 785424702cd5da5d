"""From which row each size follows: sizes are worked out as a maker would, one from another."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence

from scantling.sizes.model import Origin
from scantling.sizes.rows import Row, Strength

_ORIGINS = {
    Strength.MEASURED: Origin.MEASURED,
    Strength.CUT: Origin.MEASURED,
    Strength.STATED: Origin.STATED,
    Strength.ALIKE: Origin.RULE,
    Strength.RULE: Origin.RULE,
    Strength.HABIT: Origin.HABIT,
}


def reasons(names: Sequence[str], rows: Sequence[Row]) -> dict[str, int]:
    """Row that gives each size once the others in it are known.

    Rows that only agree together (two unknowns in two equations) count for the first unknown
    of theirs that is still open, equations first.
    """
    touching: dict[str, list[int]] = {name: [] for name in names}
    missing = []
    for i, row in enumerate(rows):
        missing.append(len(row.terms))
        for name, _ in row.terms:
            touching[name].append(i)
    found: dict[str, int] = {}
    queue = deque(i for i, count in enumerate(missing) if count == 1)
    later = deque(range(len(rows)))
    while queue or later:
        i = queue.popleft() if queue else later.popleft()
        open_ = [name for name, _ in rows[i].terms if name not in found]
        if not open_:
            continue
        found[open_[0]] = i
        for j in touching[open_[0]]:
            missing[j] -= 1
            if missing[j] == 1:
                queue.append(j)
    return found


def origin_of(row: Row) -> Origin:
    """Where a size comes from that this row gives."""
    return _ORIGINS.get(row.strength, Origin.FOLLOWS)


_SAID = {
    Strength.MEASURED: "as measured",
    Strength.CUT: "as it was cut",
    Strength.STATED: "as stated",
    Strength.WISHED: "as near to what was stated as may be",
    Strength.KEPT: "as planned before cutting began",
    Strength.TAPE: "it falls on a mark of the rule",
}


def because_of(row: Row) -> str:
    """The sentence of a row."""
    said = _SAID.get(row.strength)
    return str(getattr(row.source, "because", "")) if said is None else said
