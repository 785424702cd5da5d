"""When one search is another with other names: its answer is then the other's, place by place.

A piece has many parts that are alike in pairs and rows (left and right door, ten drawers). What
must be searched for one of them is searched for once.
"""

from __future__ import annotations

from collections.abc import Hashable

from scantling.sizes.certificate import Case
from scantling.sizes.knot import Knot
from scantling.sizes.model import Alike
from scantling.sizes.rows import Strength, members, part_of
from scantling.sizes.shape import Expression


def likeness(case: Case, knot: Knot) -> Hashable:
    """All that a search looks at, with rows and names told by their place in it.

    Two knots of one case with the same likeness have the same programme, column by column.
    """
    rows = sorted({*knot.rows, *(wish.row for wish in knot.wishes)})
    place = {row: n for n, row in enumerate(rows)}
    at = {case.shape.names[v]: n for n, mark in enumerate(knot.marks) for v in mark.unknowns}

    def moved(moves: Expression) -> Hashable:
        return moves.start, tuple((place[i], share) for i, share in moves.terms)

    return (
        tuple(place[i] for i in knot.rows),
        tuple((case.rows[i].strength, isinstance(case.rows[i].source, Alike)) for i in rows),
        _parts(case, rows),
        tuple((moved(mark.moves), mark.stage, len(mark.unknowns)) for mark in knot.marks),
        tuple((moved(limit.moves), limit.bound.yields) for limit in knot.limits),
        tuple((place[wish.row], moved(wish.moves)) for wish in knot.wishes),
        tuple(
            (tuple(map(moved, apart)), tuple(at.get(name) for name in members(group)))
            for group, apart in knot.groups
        ),
    )


def _parts(case: Case, rows: list[int]) -> Hashable:
    """Which planned sizes belong to one part."""
    parts: dict[str, int] = {}
    planned = (case.rows[i] for i in rows if case.rows[i].strength is Strength.KEPT)
    return tuple(parts.setdefault(part_of(row.terms[0][0]), len(parts)) for row in planned)
