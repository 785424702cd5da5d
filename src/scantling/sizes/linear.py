"""Sums of named dimensions with exact coefficients.

Forms and joints write their equations with these; unknowns never multiply each other.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from scantling.exact import Fraction


@dataclass(frozen=True)
class Linear:
    """A constant plus coefficients times named dimensions. Terms are sorted by name, none is 0.

    The constant is a length [mm]; coefficients have no dimension.
    """

    terms: tuple[tuple[str, Fraction], ...] = ()
    constant: Fraction = Fraction(0)

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the dimensions that occur."""
        return tuple(name for name, _ in self.terms)

    def at(self, sizes: Mapping[str, Fraction]) -> Fraction:
        """Value when every dimension has the given size. [mm]

        Raises:
            KeyError: A dimension has no size.
        """
        return self.constant + sum((c * sizes[name] for name, c in self.terms), Fraction(0))

    def __add__(self, other: Linear | Fraction | int) -> Linear:
        if not isinstance(other, Linear):
            return Linear(self.terms, self.constant + other)
        return _collected((*self.terms, *other.terms), self.constant + other.constant)

    def __radd__(self, other: Fraction | int) -> Linear:
        return self + other

    def __neg__(self) -> Linear:
        return Linear(tuple((name, -c) for name, c in self.terms), -self.constant)

    def __sub__(self, other: Linear | Fraction | int) -> Linear:
        return self + (-other)

    def __rsub__(self, other: Fraction | int) -> Linear:
        return -self + other

    def __mul__(self, factor: Fraction | int) -> Linear:
        if factor == 0:
            return Linear()
        return Linear(tuple((name, c * factor) for name, c in self.terms), self.constant * factor)

    def __rmul__(self, factor: Fraction | int) -> Linear:
        return self * factor

    def __truediv__(self, divisor: Fraction | int) -> Linear:
        return self * (Fraction(1) / divisor)


ZERO = Linear()


def size_of(name: str) -> Linear:
    """The dimension of that name, as a sum of one term."""
    return Linear(((name, Fraction(1)),))


def exactly(value: Fraction | int) -> Linear:
    """A constant length. [mm]"""
    return Linear((), Fraction(value))


def total(parts: Iterable[Linear]) -> Linear:
    """The sum of several sums."""
    terms: list[tuple[str, Fraction]] = []
    constant = Fraction(0)
    for part in parts:
        terms.extend(part.terms)
        constant += part.constant
    return _collected(terms, constant)


def _collected(terms: Iterable[tuple[str, Fraction]], constant: Fraction) -> Linear:
    found: dict[str, Fraction] = {}
    for name, coefficient in terms:
        found[name] = found.get(name, Fraction(0)) + coefficient
    return Linear(tuple(sorted((n, c) for n, c in found.items() if c)), constant)
