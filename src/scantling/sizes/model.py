"""What forms and joints say about sizes, and what the solver answers.

A relation carries the sentence that explains it; a size carries where it came from.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, fields
from enum import StrEnum

from scantling.errors import UnknownNameError
from scantling.exact import Fraction
from scantling.findings import Place
from scantling.sizes.linear import Linear


class Kind(StrEnum):
    """How the maker sets a dimension out."""

    TAPE = "tape"  # falls on the chosen graduation
    TOOL = "tool"  # set from a chisel, an iron, a bit, a bought thing
    MATE = "mate"  # taken from the real mating part, never printed as a number to measure
    FOLLOWS = "follows"  # never set out by itself


@dataclass(frozen=True, kw_only=True)
class Dimension:
    """A named size. `stage` orders the making: the latest leaves the tape first."""

    name: str  # "left side.length"
    kind: Kind
    says: str = ""  # "length of the left side"; default: the name
    stage: int = 0
    least: Fraction | None = Fraction(0)  # [mm] physical bound, None for none
    positive: bool = True  # a size is more than `least`; a gap may equal it


@dataclass(frozen=True, kw_only=True)
class Equation:
    """`sum` is zero. Always true."""

    sum: Linear
    because: str


class Yields(StrEnum):
    """Which bounds may be broken when nothing else will do."""

    NEVER = "never"  # physical
    SEASON = "season"  # panels, gaps, proportions: broken as little as possible, and said


@dataclass(frozen=True, kw_only=True)
class Bound:
    """`sum` is not negative."""

    sum: Linear
    because: str
    yields: Yields = Yields.NEVER
    code: str = ""  # stable code of the finding when a SEASON bound is broken
    source: str = ""
    cure: str = ""
    place: Place | None = None
    told: bool = True  # no: who wrote it tells of it himself, with his own figures


class Level(StrEnum):
    """How strongly a rule is held."""

    RULE = "rule"  # proportions of forms and joints
    HABIT = "habit"  # weak defaults


@dataclass(frozen=True, kw_only=True)
class Rule:
    """`sum` would be zero if nothing stronger spoke. First named wins among equals."""

    sum: Linear
    because: str
    level: Level = Level.HABIT
    source: str = ""


@dataclass(frozen=True, kw_only=True)
class Alike:
    """Dimensions with the least spread; an odd graduation goes to the sink."""

    names: tuple[str, ...]
    because: str
    sink: str | None = None


@dataclass(frozen=True, kw_only=True)
class Derived:
    """A figure that follows by a function and is no unknown: tails, angles. Nobody states it."""

    name: str
    option: str  # what to set instead, as the piece file calls it


@dataclass(frozen=True, kw_only=True)
class Relations:
    """Everything forms and joints say of sizes; joined with `+`."""

    dimensions: tuple[Dimension, ...] = ()
    equations: tuple[Equation, ...] = ()
    bounds: tuple[Bound, ...] = ()
    rules: tuple[Rule, ...] = ()
    alike: tuple[Alike, ...] = ()
    derived: tuple[Derived, ...] = ()

    @staticmethod
    def joined(several: Iterable[Relations]) -> Relations:
        """All of them, in their order."""
        all_of_them = tuple(several)
        words = [field.name for field in fields(Relations)]
        return Relations(
            **{word: tuple(x for r in all_of_them for x in getattr(r, word)) for word in words}
        )

    def __add__(self, other: Relations) -> Relations:
        return Relations(
            dimensions=self.dimensions + other.dimensions,
            equations=self.equations + other.equations,
            bounds=self.bounds + other.bounds,
            rules=self.rules + other.rules,
            alike=self.alike + other.alike,
            derived=self.derived + other.derived,
        )


@dataclass(frozen=True, kw_only=True)
class Stated:
    """What the maker wrote: `name` is `value`, exactly."""

    name: str
    value: Fraction  # [mm]
    text: str = ""  # as typed
    place: Place | None = None


@dataclass(frozen=True, kw_only=True)
class Measured:
    """A fact: readings of a made thing, at the bench's moisture, least and greatest. [mm]"""

    name: str
    least: Fraction
    greatest: Fraction
    place: Place | None = None

    @property
    def value(self) -> Fraction:
        """The size that sums use: the middle of the readings. [mm]"""
        return (self.least + self.greatest) / 2


class Origin(StrEnum):
    """Where a size came from, strongest first."""

    MEASURED = "measured"
    STATED = "stated"
    FOLLOWS = "follows"
    RULE = "rule"
    HABIT = "habit"


@dataclass(frozen=True, kw_only=True)
class Size:
    """One solved size."""

    name: str
    value: Fraction  # [mm]
    kind: Kind
    origin: Origin
    off_tape: bool = False  # printed "from the work, about ..."
    because: str = ""


@dataclass(frozen=True)
class Sizes(Mapping[str, Fraction]):
    """Solved sizes by name: a mapping of name to value [mm], with the whole story beside it."""

    by_name: Mapping[str, Size] = field(default_factory=dict)

    def __getitem__(self, name: str) -> Fraction:
        return self.size(name).value

    def __iter__(self) -> Iterator[str]:
        return iter(self.by_name)

    def __len__(self) -> int:
        return len(self.by_name)

    def size(self, name: str) -> Size:
        """The size of that name.

        Raises:
            UnknownNameError: No such dimension.
        """
        try:
            return self.by_name[name]
        except KeyError:
            msg = f"no dimension is called {name!r}"
            raise UnknownNameError(msg) from None

    def at(self, linear: Linear) -> Fraction:
        """Value of a sum at these sizes. [mm]"""
        return linear.constant + sum((c * self[n] for n, c in linear.terms), Fraction(0))
