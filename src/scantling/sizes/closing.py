"""From the solver's answer to exact amounts.

The answer tells which marks of the rule, which rows and which bounds the sizes stand on. These
are taken as equations and solved in rationals, so that no digit of the solver remains.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from math import lcm

from scantling.errors import InternalError
from scantling.exact import Fraction
from scantling.sizes.columns import HALF, Answer, Columns, value
from scantling.sizes.echelon import Echelon, whole
from scantling.sizes.linear import size_of
from scantling.sizes.model import Alike
from scantling.sizes.rows import Row, Strength, members
from scantling.sizes.shape import Expression


@dataclass(frozen=True, slots=True)
class Closed:
    """By how much each soft row of a knot yields, and the rows that took their places."""

    yielded: dict[int, Fraction]  # kept soft row -> its sum [mm], where it is not zero
    instead: tuple[Row, ...]


Stand = tuple[Expression, Row]
FINE = 1000  # parts of a graduation


def closed(columns: Columns, answer: Answer, *, stopped: bool = False) -> Closed:
    """Exact amounts where the answer stands.

    An answer of a search that was told to end may stand beside every mark, row and bound: there
    the solver's figure is taken, rounded.

    Raises:
        InternalError: What the answer stands on leaves an amount open.
    """
    place = {i: n for n, i in enumerate(columns.knot.rows)}
    echelon = Echelon([0] * len(place))
    given: list[Fraction] = []
    instead = []
    for moves, row in _stood_on(columns, answer):
        amounts, factor = whole([(place[i], c) for i, c in moves.terms])
        if echelon.reduced(amounts)[2]:
            echelon.offer(amounts)
            given.append(moves.start * factor)
            instead.append(row)
    for n in echelon.unsettled(len(place)) if stopped else ():
        if n in echelon.unsettled(len(place)):
            column = columns.yields[columns.knot.rows[n]]
            echelon.offer({n: 1})
            given.append(-_rounded(answer[column]) * columns.case.grid)
    loose = echelon.unsettled(len(place))
    if loose:
        said = ", ".join(columns.case.shape.names[columns.knot.rows[n]] for n in loose)
        raise InternalError(f"the solver's answer leaves {said} open")
    common = lcm(*(g.denominator for g in given))
    amounts_of, scale, _ = echelon.values([int(g * common) for g in given])
    yielded = {i: Fraction(amounts_of[n], scale * common) for i, n in place.items()}
    return Closed(
        {i: amount for i, amount in yielded.items() if amount},
        tuple(row for row in instead if not columns.case.has(row)),
    )


def _rounded(amount: float) -> Fraction:
    return Fraction(round(amount * FINE), FINE)


def _stood_on(columns: Columns, answer: Answer) -> Iterator[Stand]:
    """What holds in the answer: soft rows, equal pairs, marks of the rule, bounds come up to."""
    case = columns.case
    soft: list[tuple[int, Expression]] = [
        (i, Expression(Fraction(0), ((i, Fraction(1)),))) for i in columns.knot.rows
    ]
    soft += [(wish.row, wish.moves) for wish in columns.knot.wishes]
    for i, moves in sorted(soft, key=lambda s: s[0]):
        if columns.holds(moves, answer):
            yield moves, case.rows[i]
    for group, others in columns.knot.groups:
        yield from _equal_pairs(columns, answer, group, others)
    for mark, off in columns.off:
        if answer[off] < HALF:
            yield _at_the_mark(columns, answer, mark.moves, mark.unknowns[0])
    for limit in columns.knot.limits:
        if columns.holds(limit.moves, answer):
            yield (
                limit.moves,
                Row(Strength.BOUND, limit.bound.sum.terms, limit.bound.sum.constant, limit.bound),
            )


def _equal_pairs(
    columns: Columns, answer: Answer, group: Alike, others: tuple[Expression, ...]
) -> Iterator[Stand]:
    names = members(group)
    apart = dict(zip(names, (Expression(Fraction(0), ()), *others), strict=True))
    for a, b in combinations(names, 2):
        moves = _difference(apart[b], apart[a])
        if columns.holds(moves, answer):
            equal = size_of(b) - size_of(a)
            yield moves, Row(Strength.ALIKE, equal.terms, equal.constant, group)


def _difference(one: Expression, other: Expression) -> Expression:
    terms = dict(one.terms)
    for i, c in other.terms:
        terms[i] = terms.get(i, Fraction(0)) - c
    return Expression(one.start - other.start, tuple(sorted((i, c) for i, c in terms.items() if c)))


def _at_the_mark(columns: Columns, answer: Answer, moves: Expression, unknown: int) -> Stand:
    """The first of sizes that fall on the tape together, at its mark."""
    case = columns.case
    mark = round(value(columns.sum(moves), answer))
    name = case.shape.names[unknown]
    start = moves.start - mark * case.grid
    return (
        Expression(start, moves.terms),
        Row(Strength.TAPE, ((name, Fraction(1)),), -mark * case.grid, case.dimensions[name]),
    )
