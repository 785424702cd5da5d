"""Lines of the maker that cannot all hold: which to give up, and who is against whom.

As few lines as may be are given up; then each in turn is held against those that stand. What
clashes with it is one irreducible set: the lines, equations and bounds that combine to a
contradiction, none of them idle, since a combination of independent rows is the only one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.sizes.answer import Clash, Conflict
from scantling.sizes.certificate import Asked, Case, broken_bounds, too_small, unproven
from scantling.sizes.columns import Columns, reach_of
from scantling.sizes.echelon import Echelon
from scantling.sizes.knot import knots
from scantling.sizes.ladder import Ladder
from scantling.sizes.linear import Linear
from scantling.sizes.model import Bound, Yields
from scantling.sizes.programme import INFINITE, Programme
from scantling.sizes.rows import Line, Row, Strength, floor_of
from scantling.sizes.shape import Reading, expression, reading, shape_of
from scantling.sizes.stopping import Stop

NOTHING = Fraction(1, 10**6)  # [mm] less than this is the solver's rounding
TIGHT = 1e-7  # a bound whose price is more than this stands in the way


class ClashError(Exception):
    """Equations and physical bounds cannot all hold, whatever lines are given up."""

    def __init__(self, bounds: Iterable[Bound]) -> None:
        super().__init__("equations and physical bounds clash")
        self.bounds = tuple(bounds)


@dataclass(frozen=True, slots=True)
class GivenUp:
    """Rows of lines that the others cannot stand beside, and bounds that were in question."""

    rows: tuple[int, ...]
    bounds: tuple[Bound, ...]
    stopped: bool  # fewer lines might do


def given_up(case: Case, base: Reading, *, stop: Stop) -> GivenUp:
    """Lines to give up so that the rest agree: as few and as weak as `stop` lets be found.

    Raises:
        ClashError: Equations and physical bounds clash by themselves.
    """
    case = replace(case, shape=case.shape.with_lines_yielding())
    asked, found = Asked(), base
    yielded: dict[int, Fraction] = {}
    stopped = False
    reach = reach_of([base.at(v) for v in range(len(case.shape.names))], case.grid)
    more = _of_lines(case, unproven(case, base))
    while more:
        asked |= more
        yielded = {}
        for knot in knots(case, base, asked):
            ladder = Ladder(Columns(case, knot, reach, Programme(stop=stop)))
            if not ladder.climb_lines():
                raise ClashError(limit.bound for limit in knot.limits)
            stopped |= ladder.stopped
            yielded |= ladder.lines_yielded()
        found = reading(case.shape, case.rows, yielded)
        more = _of_lines(case, _broken(case, found)) - asked
    rows = {i for i, by in (*found.open_ends.items(), *yielded.items()) if abs(by) > NOTHING}
    lines = sorted(i for i in rows if _is_line(case.rows[i]))
    return GivenUp(tuple(lines), _bounds(case, asked), stopped)


def _is_line(row: Row) -> bool:
    return Strength.EQUATION < row.strength <= Strength.STATED


def _of_lines(case: Case, asked: Asked) -> Asked:
    return Asked(
        floors=asked.floors,
        bounds=frozenset(i for i in asked.bounds if case.bounds[i].yields is Yields.NEVER),
        rows=frozenset(i for i in asked.rows if _is_line(case.rows[i])),
    )


def _broken(case: Case, found: Reading) -> Asked:
    return Asked(
        floors=frozenset(too_small(case, found)),
        bounds=frozenset(broken_bounds(case, found)),
        rows=frozenset(i for i, by in found.open_ends.items() if abs(by) > NOTHING),
    )


def _bounds(case: Case, asked: Asked) -> tuple[Bound, ...]:
    floors = [
        floor_of(case.dimensions[case.shape.names[v]], above=True) for v in sorted(asked.floors)
    ]
    return (*(b for b in floors if b is not None), *(case.bounds[i] for i in sorted(asked.bounds)))


# --------------------------------------------------------------------------------- who with whom


def conflicts(case: Case, lost: GivenUp) -> list[Conflict]:
    """For each line given up, what it clashes with."""
    facts = [
        i
        for i, row in enumerate(case.rows)
        if row.strength <= Strength.STATED and i not in lost.rows
    ]
    members = [_clashing(case, facts, i, lost.bounds) for i in lost.rows]
    lines = [[member for member in some if _is_line(member[0])] for some in members]
    counts = [len(some) for some in lines]
    found = []
    for i, rows, some in zip(lost.rows, members, lines, strict=True):
        found.append(
            Conflict(
                lines=tuple(_clash(row, would_be) for row, would_be in some),
                because=tuple(_because(row) for row in _reasons(rows)),
                given_up=case.rows[i].terms[0][0],
                smallest=_is_smallest(len(some), counts),
                bounded=any(row.strength is Strength.BOUND for row, _ in rows),
            )
        )
    return found


def _reasons(rows: Sequence[tuple[Row, Fraction | None]]) -> list[Row]:
    """Bounds and equations of a conflict: what is in the way first, floors of single sizes last."""
    reasons = [row for row, _ in rows if not _is_line(row)]
    bounds = [row for row in reasons if row.strength is Strength.BOUND]
    return [
        *(row for row in bounds if len(row.terms) > 1),
        *(row for row in reasons if row.strength is not Strength.BOUND),
        *(row for row in bounds if len(row.terms) == 1),
    ]


def _is_smallest(size: int, counts: Sequence[int]) -> bool:
    # A line that clashes all alone is given up in every answer and found as a set of one.
    return size <= 1 or (size == 2 and 1 not in counts)


def _clash(row: Row, would_be: Fraction | None) -> Clash:
    said = row.source.said if isinstance(row.source, Line) else None
    name, value = row.terms[0][0], -row.constant
    return Clash(name=name, value=value, would_be=would_be, said=said)


def _because(row: Row) -> str:
    return str(getattr(row.source, "because", ""))


def _clashing(
    case: Case, facts: Sequence[int], lost: int, bounds: Sequence[Bound]
) -> list[tuple[Row, Fraction | None]]:
    """Rows that contradict each other, the lost one last, with what a line would have to be."""
    rows = [case.rows[i] for i in facts]
    tight = _in_the_way(case, facts, lost, bounds)
    rows += [Row(Strength.BOUND, b.sum.terms, b.sum.constant, b) for b in tight]
    rows.append(case.rows[lost])
    echelon = Echelon([0] * len(case.shape.names))
    factors = []
    for row in rows:
        terms, factor = case.shape.row(row.terms)
        echelon.offer(terms)
        factors.append(factor)
    last = len(rows) - 1
    if echelon.kept(last):
        return [(rows[last], None)]
    circuit = echelon.combination(last)
    shares = {last: Fraction(1)}
    shares |= {j: -a * factors[j] / factors[last] for j, a in circuit.items()}
    gap = sum((share * rows[j].constant for j, share in shares.items()), Fraction(0))
    return [(rows[j], -rows[j].constant + gap / shares[j]) for j in sorted(shares)]


def _in_the_way(
    case: Case, facts: Sequence[int], lost: int, bounds: Sequence[Bound]
) -> list[Bound]:
    """Bounds that keep the lost line from its value while the others stand."""
    row = case.rows[lost]
    apart = {lost, *facts}
    others = [i for i in range(len(case.rows)) if i not in apart]
    rows = [case.rows[i] for i in facts]
    rows += [
        Row(max(r.strength, Strength.WISHED), r.terms, r.constant, r.source)
        for r in (row, *(case.rows[i] for i in others))
    ]
    shape = shape_of(case.shape.names, rows)
    base = reading(shape, rows)
    target = expression(shape, base, Linear(row.terms, row.constant))
    if not target.terms:
        return []
    programme = Programme()
    columns: dict[int, int] = {}
    limits = [expression(shape, base, bound.sum) for bound in bounds]
    for moves in (target, *limits):
        for i, _ in moves.terms:
            if i not in columns:
                columns[i] = programme.column(lower=-INFINITE, upper=INFINITE)
    away = programme.column(lower=0.0, upper=INFINITE)
    for sign in (1.0, -1.0):
        aim = {columns[i]: sign * float(c) for i, c in target.terms}
        programme.row({**aim, away: 1.0}, lower=-sign * float(target.start), upper=INFINITE)
    for moves in limits:
        programme.row(
            {columns[i]: float(c) for i, c in moves.terms},
            lower=-float(moves.start),
            upper=INFINITE,
        )
    prices = programme.prices({away: 1.0})
    return [b for b, price in zip(bounds, prices[2:], strict=True) if abs(price) > TIGHT]
