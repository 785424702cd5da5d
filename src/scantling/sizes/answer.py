"""What the solver answers: sizes, what clashes, what was broken, and why each size is so."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.sizes.certificate import Asked
from scantling.sizes.closing import Closed
from scantling.sizes.knot import Knot
from scantling.sizes.model import Bound, Dimension, Measured, Sizes, Stated
from scantling.sizes.rows import Row
from scantling.sizes.shape import Shape


@dataclass(frozen=True, kw_only=True)
class Clash:
    """One line of a conflict and what it would have to be if the others stand."""

    name: str
    value: Fraction  # [mm]
    would_be: Fraction | None  # [mm] None: no value of this one alone would do
    said: Stated | Measured | None = None  # None: the planned size of a part already cut


@dataclass(frozen=True, kw_only=True)
class Conflict:
    """Lines that cannot all hold, none of them idle: without any one the rest agree."""

    lines: tuple[Clash, ...]  # the one the sizes do without comes last
    because: tuple[str, ...]  # the equations and bounds between them
    given_up: str  # name of the line the sizes do without
    smallest: bool  # proven that no conflict of fewer lines exists
    bounded: bool = False  # a bound is in the way: beyond `would_be` there is room


@dataclass(frozen=True, kw_only=True)
class Breach:
    """A season or proportion bound that could not be kept."""

    bound: Bound
    short: Fraction  # [mm] by how much


@dataclass(frozen=True, kw_only=True)
class Trail:
    """The rows an answer stands on, and work worth keeping for the next question."""

    rows: tuple[Row, ...] = ()  # all, strongest first
    instead: tuple[Row, ...] = ()  # marks, bounds and pairs that took the place of rows
    yielded: frozenset[int] = frozenset()  # rows that gave way
    shape: Shape | None = None
    searched: Mapping[Knot, Closed] = field(default_factory=dict)
    asked: Asked = field(default=Asked())
    dimensions: tuple[Dimension, ...] = ()
    grid: Fraction = Fraction(1)  # [mm]
    solves: int = 0  # how often the solver ran for this answer


@dataclass(frozen=True, kw_only=True)
class Solved:
    """Sizes with everything that had to be said about them."""

    sizes: Sizes
    conflicts: tuple[Conflict, ...] = ()
    breaches: tuple[Breach, ...] = ()
    findings: tuple[Finding, ...] = ()
    trail: Trail = field(default=Trail(), compare=False, repr=False)
