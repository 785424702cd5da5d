"""Sizes from relations and from what the maker says."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from scantling.errors import InternalError, OutOfRangeError
from scantling.exact import Fraction
from scantling.findings import Finding, in_order
from scantling.sizes.answer import Breach, Conflict, Solved, Trail
from scantling.sizes.certificate import Case, broken_bounds, hopeless, off_tape, too_small
from scantling.sizes.conflict import ClashError, conflicts, given_up
from scantling.sizes.hearing import heard
from scantling.sizes.model import (
    Bound,
    Measured,
    Origin,
    Relations,
    Size,
    Sizes,
    Stated,
    Yields,
)
from scantling.sizes.reasons import because_of, origin_of
from scantling.sizes.rows import (
    Kept,
    Line,
    Row,
    Strength,
    check_names,
    lines_of,
    rows_of,
)
from scantling.sizes.search import FactsClashError, Searched, searched_out
from scantling.sizes.shape import Reading, Shape, reading, shape_of
from scantling.sizes.stopping import NoStop, Stop
from scantling.sizes.words import Words
from scantling.units import Unit


def solve(
    relations: Relations,
    *,
    stated: Iterable[Stated] = (),
    measured: Iterable[Measured] = (),
    grid: Fraction,
    kept: Kept | None = None,
    before: Solved | None = None,
    stop: Stop | None = None,
    figures: Unit | None = None,
) -> Solved:
    """Sizes of every dimension.

    Args:
        relations: What forms and joints say.
        stated: What the maker wrote.
        measured: Facts of the build record, at the bench's moisture.
        grid: Graduation that tape sizes fall on. [mm]
        kept: Plan of a piece whose cutting has begun.
        before: An earlier answer; work of its that still applies is not done again.
        stop: When to leave off looking for better sizes. None: not before they are proven.
        figures: Unit that findings are told in. None: that of the graduation.

    Returns:
        Sizes that meet every equation exactly, and what had to be said about them. Where
        lines of the maker clash, sizes do without the fewest of them. Where `stop` came first,
        they hold all the same, and a finding says that better ones may be left.

    Raises:
        OutOfRangeError: The graduation is not above 0.
        InternalError: Nothing settles some dimension, or two dimensions share a name.
        UnknownNameError: A relation names no dimension.
    """
    if grid <= 0:
        raise OutOfRangeError(f"graduation {grid} mm is not above 0 mm")
    listened = heard(relations, stated, measured)
    lines = lines_of(relations, listened.stated, listened.measured, kept)
    question = _Question(relations, lines, grid, kept, before, stop or NoStop())
    found = question.answered()
    words = Words(dimensions={d.name: d for d in relations.dimensions}, grid=grid, shown=figures)
    finer = bool(found.off) and not question.conflicts and question.has_answer_on(grid / 2)
    return found.told(words, finer_would_do=finer, also=listened.findings)


@dataclass(slots=True)
class _Question:
    """Relations and lines, less what turned out to contradict itself."""

    relations: Relations
    lines: Sequence[Line]
    grid: Fraction
    kept: Kept | None
    before: Solved | None
    stop: Stop
    stopped: bool = False  # whether `stop` came before all was proven
    lost: set[int] = field(default_factory=set)  # lines given up
    conflicts: list[Conflict] = field(default_factory=list)
    impossible: list[Bound] = field(default_factory=list)
    contradictions: list[tuple[tuple[str, ...], Fraction]] = field(default_factory=list)

    def answered(self) -> Answered:
        """The answer, once what clashes has been set aside."""
        while True:
            rows = rows_of(self.relations, self.lines, self.kept, given_up=frozenset(self.lost))
            shape = _shape(self.relations, rows, self.before)
            dimensions = {d.name: d for d in self.relations.dimensions}
            case = Case(dimensions, rows, shape, self.relations.bounds, self.grid)
            base = reading(shape, rows)
            if self._equations_clash(case, base):
                continue
            if not hopeless(case, base):
                searched = self._searched(case, base)
                if searched is not None:
                    return Answered(self, case, searched)
            self._give_up(case, base)

    def _searched(self, case: Case, base: Reading) -> Searched | None:
        trail = Trail() if self.before is None else self.before.trail
        if trail.shape is not case.shape:
            trail = Trail()
        try:
            found = searched_out(case, base, trail.searched, begin=trail.asked, stop=self.stop)
        except FactsClashError:
            return None
        self.stopped |= found.stopped
        return found

    def _equations_clash(self, case: Case, base: Reading) -> bool:
        """Set aside equations that others contradict; forms made them of clashing options."""
        ends = [i for i in base.open_ends if case.rows[i].strength is Strength.EQUATION]
        for i in ends:
            circuit = sorted([i, *case.shape.echelon.combination(i)])
            said = tuple(because_of(case.rows[j]) for j in circuit)
            self.contradictions.append((said, base.open_ends[i]))
        # Equations are the first rows, in their own order.
        kept = [e for n, e in enumerate(self.relations.equations) if n not in ends]
        self.relations = replace(self.relations, equations=tuple(kept))
        return bool(ends)

    def _give_up(self, case: Case, base: Reading) -> None:
        try:
            lost = given_up(case, base, stop=self.stop)
        except ClashError as clash:
            return self._set_aside(clash.bounds)
        self.stopped |= lost.stopped
        if not lost.rows:
            return self._set_aside(lost.bounds)
        self.conflicts += conflicts(case, lost)
        # Lines that still stand are the next rows after the equations.
        standing = [n for n in range(len(self.lines)) if n not in self.lost]
        first = len(self.relations.equations)
        self.lost |= {standing[i - first] for i in lost.rows}
        return None

    def _set_aside(self, bounds: Sequence[Bound]) -> None:
        if not bounds:
            raise InternalError("sizes clash, and nothing can be named for it")
        self.impossible += bounds
        floors = {b.sum.names[0] for b in bounds if b not in self.relations.bounds}
        self.relations = replace(
            self.relations,
            bounds=tuple(b for b in self.relations.bounds if b not in bounds),
            dimensions=tuple(
                replace(d, least=None) if d.name in floors else d for d in self.relations.dimensions
            ),
        )

    def has_answer_on(self, grid: Fraction) -> bool:
        """Whether every size falls on a finer graduation, where nothing measured hinders."""
        if self.stopped or any(line.strength is not Strength.STATED for line in self.lines):
            return False
        finer = _Question(self.relations, self.lines, grid, self.kept, self.before, self.stop)
        return not finer.answered().off and not finer.stopped


@dataclass(frozen=True, slots=True)
class Answered:
    """A question with its final sizes."""

    question: _Question
    case: Case
    searched: Searched

    @property
    def off(self) -> list[int]:
        """Unknowns that miss the tape though nobody measured them."""
        made = {line.name for line in self.question.lines if line.strength is not Strength.STATED}
        return [
            v
            for v in off_tape(self.case, self.searched.found)
            if self.case.shape.names[v] not in made
        ]

    def told(self, words: Words, *, finer_would_do: bool, also: Sequence[Finding]) -> Solved:
        """Sizes with their findings."""
        off = self.off
        sizes = self._sizes(frozenset(off))
        breaches = self._breaches()
        question = self.question
        findings = [
            *also,
            *(words.never_closes(said, gap) for said, gap in question.contradictions),
            *words.conflicts(question.conflicts),
            *self._impossible(words),
            *words.breaches([breach for breach in breaches if breach.bound.told]),
        ]
        names = [self.case.shape.names[v] for v in off]
        findings += [words.stopped()] if question.stopped else []
        findings += words.off_tape([sizes.size(n) for n in names], finer_would_do=finer_would_do)
        return Solved(
            sizes=sizes,
            conflicts=tuple(question.conflicts),
            breaches=tuple(breaches),
            findings=in_order(findings),
            trail=self._trail(),
        )

    def _impossible(self, words: Words) -> list[Finding]:
        found, at = self.searched.found, self.case.shape.at
        values = [(bound, found.sum(bound.sum, at)) for bound in self.question.impossible]
        return [words.impossible(bound, value) for bound, value in values if value < 0]

    def _breaches(self) -> list[Breach]:
        found, at = self.searched.found, self.case.shape.at
        broken = [self.case.bounds[i] for i in broken_bounds(self.case, found)]
        if any(b.yields is Yields.NEVER for b in broken) or too_small(self.case, found):
            raise InternalError("the sizes found break a physical bound")
        return [Breach(bound=b, short=-found.sum(b.sum, at)) for b in broken]

    def _sizes(self, off: frozenset[int]) -> Sizes:
        shape, found, rows = self.case.shape, self.searched.found, self.case.rows
        yielded = self.searched.yielded
        said = {line.name: line for line in self.question.lines}
        sizes = {}
        for v, name in enumerate(shape.names):
            row = rows[shape.reasons[v]]
            value = found.at(v)
            line = said.get(name)
            if line is not None and line.value == value:
                origin = origin_of(Row(line.strength, (), value, line))
                because = because_of(Row(line.strength, (), value, line))
            elif shape.reasons[v] in yielded:
                origin, because = Origin.FOLLOWS, f"gave way: {because_of(row)}"
            else:
                origin, because = origin_of(row), because_of(row)
            sizes[name] = Size(
                name=name,
                value=value,
                kind=self.case.dimensions[name].kind,
                origin=origin,
                off_tape=v in off,
                because=because,
            )
        return Sizes(sizes)

    def _trail(self) -> Trail:
        instead = tuple(row for part in self.searched.knots.values() for row in part.instead)
        return Trail(
            rows=tuple(self.case.rows),
            instead=instead,
            yielded=frozenset(self.searched.yielded),
            shape=self.case.shape,
            searched=self.searched.looked_at,
            asked=self.searched.asked,
            dimensions=self.question.relations.dimensions,
            grid=self.case.grid,
            solves=self.searched.solves,
        )


def _shape(relations: Relations, rows: Sequence[Row], before: Solved | None) -> Shape:
    names = tuple(dict.fromkeys(d.name for d in relations.dimensions))
    if (
        before is not None
        and before.trail.shape is not None
        and before.trail.shape.fits(names, rows)
    ):
        return before.trail.shape
    check_names(relations)
    return shape_of(names, rows)
