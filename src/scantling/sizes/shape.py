"""A set of rows worked out for elimination, to be kept while only constants change."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import chain
from math import lcm

from scantling.errors import InternalError
from scantling.exact import Fraction
from scantling.sizes.echelon import Echelon, whole
from scantling.sizes.linear import Linear
from scantling.sizes.reasons import reasons
from scantling.sizes.rows import Row, Strength, Terms

Weights = tuple[tuple[int, Fraction], ...]


@dataclass(frozen=True, slots=True, eq=False)
class Shape:
    """Rows without their constants, eliminated."""

    names: tuple[str, ...]
    at: Mapping[str, int]
    strengths: tuple[Strength, ...]
    terms: tuple[Terms, ...]
    factors: tuple[int, ...]  # what each row was multiplied by to be whole
    echelon: Echelon
    firm: Strength  # rows up to this strength are facts
    facts: int  # kept rows that are facts
    fixed: frozenset[int]  # unknowns that these settle
    reasons: tuple[int, ...]  # row that gives each unknown once the others in it are known
    _rests_on: dict[Terms, Weights] = field(default_factory=dict)  # worked out once
    _places: dict[Terms, list[int]] = field(default_factory=dict)  # the same

    def fits(self, names: Sequence[str], rows: Sequence[Row]) -> bool:
        """Whether the rows differ from this shape in constants alone."""
        return (
            len(rows) == len(self.terms)
            and self.names == names
            and all(
                row.strength == strength and row.terms == terms
                for row, strength, terms in zip(rows, self.strengths, self.terms, strict=True)
            )
        )

    def places(self, terms: Terms) -> Sequence[int]:
        """Rows with just these terms, by number."""
        if not self._places:
            for i, known in enumerate(self.terms):
                self._places.setdefault(known, []).append(i)
        return self._places.get(terms, ())

    def kept_under(self, strength: Strength) -> int:
        """How many kept rows are stronger than the given strength."""
        first = next((i for i, s in enumerate(self.strengths) if s >= strength), None)
        return len(self.echelon.rows) if first is None else self.echelon.kept_before(first)

    def row(self, terms: Iterable[tuple[str, Fraction]]) -> tuple[dict[int, int], int]:
        """Terms by unknown with whole coefficients, and the factor."""
        return whole([(self.at[name], c) for name, c in terms])

    def rests_on(self, terms: Terms) -> Weights:
        """The kept soft rows that move a sum, and by how much each counts."""
        known = self._rests_on.get(terms)
        if known is None:
            row, factor = self.row(terms)
            combined = self.echelon.combined(row) or {}
            known = self._rests_on[terms] = tuple(
                sorted(
                    (i, a * self.factors[i] / factor)
                    for i, a in combined.items()
                    if self.strengths[i] > self.firm
                )
            )
        return known

    def with_lines_yielding(self) -> Shape:
        """The same rows, but what the maker says may yield like all that is weaker."""
        firm = Strength.EQUATION
        facts = self.kept_under(Strength.MEASURED)
        fixed = frozenset(self.echelon.fixed(facts))
        return replace(self, firm=firm, facts=facts, fixed=fixed, _rests_on={})

    def constant_under(self, terms: Terms, kept: int) -> bool:
        """Whether the first so many kept rows alone settle a sum."""
        return not self.echelon.reduced(self.row(terms)[0], upto=kept)[2]


def shape_of(names: tuple[str, ...], rows: Sequence[Row]) -> Shape:
    """The shape of rows that are given strongest first.

    Raises:
        InternalError: Something is left free when all rows are used; the message names it.
    """
    at = {name: i for i, name in enumerate(names)}
    weights = [0] * len(names)
    for name, _ in chain.from_iterable(row.terms for row in rows):
        weights[at[name]] += 1
    echelon, factors, facts = Echelon(weights), [], 0
    for row in rows:
        unknowns, factor = whole([(at[name], c) for name, c in row.terms])
        factors.append(factor)
        echelon.offer(unknowns)
        if row.strength <= Strength.STATED:
            facts = len(echelon.rows)
    _refuse_loose(names, echelon)
    return Shape(
        names,
        at,
        tuple(row.strength for row in rows),
        tuple(row.terms for row in rows),
        tuple(factors),
        echelon,
        Strength.STATED,
        facts,
        frozenset(echelon.fixed(facts)),
        _reasons(names, rows, echelon),
    )


def _refuse_loose(names: Sequence[str], echelon: Echelon) -> None:
    loose = echelon.unsettled(len(names))
    if loose:
        said = ", ".join(names[v] for v in loose)
        raise InternalError(f"nothing settles {said}: some form or joint owes a habit")


def _reasons(names: Sequence[str], rows: Sequence[Row], echelon: Echelon) -> tuple[int, ...]:
    kept = [i for i in range(len(rows)) if echelon.kept(i)]
    by_name = reasons(names, [rows[i] for i in kept])
    return tuple(kept[by_name[name]] for name in names)


@dataclass(frozen=True, slots=True)
class Reading:
    """Sizes as whole numbers over one scale, with the rows that do not close."""

    values: list[int]
    scale: int  # size [mm] = value / scale
    open_ends: Mapping[int, Fraction]  # row -> its sum [mm], where it is not zero

    def at(self, unknown: int) -> Fraction:
        """Size of an unknown. [mm]"""
        return Fraction(self.values[unknown], self.scale)

    def sum(self, linear: Linear, at: Mapping[str, int]) -> Fraction:
        """Value of a sum. [mm]"""
        values, scale = self.values, self.scale
        found = linear.constant
        for name, c in linear.terms:
            found += c * Fraction(values[at[name]], scale)
        return found

    def is_negative(self, linear: Linear, at: Mapping[str, int]) -> bool:
        """Whether a sum is below zero; exact, and quick where coefficients are whole."""
        values, found = self.values, 0
        for name, c in linear.terms:
            if c.denominator != 1:
                return self.sum(linear, at) < 0
            found += c.numerator * values[at[name]]
        constant = linear.constant
        return found * constant.denominator + constant.numerator * self.scale < 0


def reading(
    shape: Shape, rows: Sequence[Row], yielded: Mapping[int, Fraction] | None = None
) -> Reading:
    """Sizes from the constants of the rows.

    Args:
        shape: The shape of the rows.
        rows: Rows with their constants.
        yielded: Kept rows whose sum is to be something else than zero. [mm]
    """
    constants = [row.constant for row in rows]
    for i, by in (yielded or {}).items():
        constants[i] -= by
    common = lcm(*{constant.denominator for constant in constants})
    given = [
        constant.numerator * (common // constant.denominator) * factor
        for constant, factor in zip(constants, shape.factors, strict=True)
    ]
    values, grown, open_ends = shape.echelon.values(given)
    scale = common * grown
    ends = {}
    for i in open_ends:
        row = rows[i]
        ends[i] = row.constant + sum(
            (c * Fraction(values[shape.at[name]], scale) for name, c in row.terms), Fraction(0)
        )
    return Reading(values, scale, ends)


@dataclass(frozen=True, slots=True)
class Expression:
    """A sum as it moves when soft rows yield: its start and what each row adds to it."""

    start: Fraction  # [mm]
    terms: Weights  # kept soft row -> by how much it counts

    def __hash__(self) -> int:
        # Enough to tell most apart; hashing every fraction would take longer than solving.
        return (self.start.numerator * 31 + self.start.denominator) * 31 + len(self.terms)


def expression(shape: Shape, base: Reading, linear: Linear) -> Expression:
    """How a sum moves with the rows that may yield."""
    return Expression(base.sum(linear, shape.at), shape.rests_on(linear.terms))
