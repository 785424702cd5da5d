"""Part: one piece of wood with its name, size, grain, references, blank and cuts."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from scantling.exact import Fraction
from scantling.parts.cut import Cut
from scantling.parts.frame import Extent, Placement, Surface
from scantling.solids.store import Key


@dataclass(frozen=True, kw_only=True)
class Board:
    """Blank sawn from one board."""


@dataclass(frozen=True, kw_only=True)
class Strip:
    """One strip of a glued panel. `width` None: free, fixed by the boards that are found."""

    name: str  # "strip a"
    wood: str
    width: Fraction | None = None  # [mm]
    ring_side_up: bool = True


@dataclass(frozen=True, kw_only=True)
class GluedUp:
    """Blank glued from strips, from the face edge on."""

    strips: tuple[Strip, ...]


@dataclass(frozen=True, kw_only=True)
class Round:
    """Blank turned or bought round; width and thickness are both its diameter."""


Blank = Board | GluedUp | Round
BOARD = Board()


@dataclass(frozen=True, kw_only=True)
class Part:
    """One piece of the work. Sizes are finished sizes at the bench's moisture."""

    name: str  # "left side", "left door.top rail"
    family: str  # "side": like parts share a line of the cutting list
    extent: Extent
    wood: str  # trade name of the species
    cut_of_wood: str  # "flat", "rift", "quarter"
    placement: Placement
    blank: Blank = BOARD
    cuts: tuple[Cut, ...] = ()
    horns: tuple[Fraction, Fraction] = (Fraction(0), Fraction(0))  # at reference and far end [mm]
    show: frozenset[Surface] = frozenset()  # surfaces seen in use
    hardware: bool = False  # bought, not made; solid all the same
    moves_with: str = ""  # assembly that opens or slides as one: "left door"

    @property
    def is_round(self) -> bool:
        """Whether its blank is round."""
        return isinstance(self.blank, Round)

    @cached_property
    def outline(self) -> Key:
        """What its solid depends on: size, cuts, and whether it is round. No name, no place."""
        return Key((self.extent, *(cut.outline for cut in self.cuts), self.is_round))
