"""What joints answer: choices, contacts, moves, fixings, gaps, estimates, figures to draw."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from scantling.exact import Fraction
from scantling.parts import Point, Way
from scantling.sizes.linear import Linear


@dataclass(frozen=True)
class Choice:
    """What a joint chose: tool sizes, counts, ratios. Sorted; lengths in mm."""

    values: tuple[tuple[str, Fraction], ...] = ()

    def __getitem__(self, word: str) -> Fraction:
        return dict(self.values)[word]

    def __contains__(self, word: str) -> bool:
        return any(word == known for known, _ in self.values)

    def count(self, word: str) -> int:
        """A chosen number of tails, boards, holes."""
        return int(self[word])

    @staticmethod
    def of(values: Mapping[str, Fraction | int]) -> Choice:
        """A choice from words and values."""
        return Choice(tuple(sorted((k, Fraction(v)) for k, v in values.items())))


class Glue(StrEnum):
    """What glue finds at a patch."""

    LONG_GRAIN = "long grain along long grain"
    CROSSING = "long grain crossing long grain"
    END_GRAIN = "end grain"
    DRY = "dry"


class Fit(StrEnum):
    """How tight a patch is made."""

    PRESS = "press"  # tapped home
    SLIDE = "slide"  # by hand
    RUN = "run"  # a drawer
    FLOAT = "float"  # room for the seasons
    TOUCH = "touch"  # held by something else


@dataclass(frozen=True, kw_only=True)
class Contact:
    """A plane convex patch where two parts touch; points in the piece, once round. [mm]"""

    between: tuple[str, str]
    joined: str
    zone: str  # "cheek", "shoulder", "floor"
    glue: Glue
    fit: Fit
    patch: tuple[Point, ...]


@dataclass(frozen=True, kw_only=True)
class Press:
    """Two solids that are meant to overlap: a pin in its hole, a screw in wood. [mm3]"""

    between: tuple[str, str]
    volume: Fraction
    because: str


class State(StrEnum):
    """States a joint goes through."""

    OPEN = "open"
    CLOSED = "closed"
    LOCKED = "locked"


class Motion(StrEnum):
    """Kinds of move tried."""

    STRAIGHT = "straight"
    SWING = "swing"
    TILT = "tilt"


@dataclass(frozen=True, kw_only=True)
class Move:
    """A way in which the parts of one role leave the others."""

    role: str
    motion: Motion
    way: tuple[Fraction, Fraction, Fraction]  # direction in the piece; axis of a turn otherwise
    about: Point | None = None  # a point on the axis of a turn [mm]
    unlocked_by: str = ""


@dataclass(frozen=True, kw_only=True)
class Fixing:
    """A point where two parts are held, and the directions left free there."""

    between: tuple[str, str]
    at: Point  # [mm]
    holds: frozenset[Way]
    free: frozenset[Way]
    by: str  # "glue", "screw", "nail", "pin"


@dataclass(frozen=True, kw_only=True)
class Gap:
    """Room left on purpose, and how far it may close or open through the year."""

    name: str
    at_bench: Linear  # [mm]
    moving: tuple[tuple[str, Linear], ...]  # part, width of it that works on this gap [mm]
    least: Fraction  # [mm]
    greatest: Fraction | None  # [mm]
    because: str
    source: str = ""
    either_way: bool = False  # as much room on both sides: whichever way it moves takes from it
    # for gaps that the year works on, in the maker's words
    what: str = ""  # "room beside the panels"
    closed: str = ""  # what happens where less than the least is left: "the panels burst ..."
    cure: str = ""  # what the hand does about it; {short} stands for what is lacking
    shared_by: int = 1  # parts among which the lack is shared


@dataclass(frozen=True, kw_only=True)
class Estimate:
    """What a joint holds; always an estimate."""

    what: str  # "pull along the rail"
    value: float  # [N], [N m] or [N/mm], as `unit` says
    unit: str  # "N", "N m", or "N/mm" for each mm of length
    basis: str
    weakest: str


@dataclass(frozen=True, kw_only=True)
class DrawnSize:
    """A figure on the joint's drawing that no cut shows by itself: tip, base, slope."""

    word: str
    value: Fraction  # [mm], or a ratio where `unit` says so
    unit: str = "mm"
    dimension: str | None = None
    reference: str = ""
