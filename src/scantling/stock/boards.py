"""A surveyed board, what spoils it, and how thick the pieces are that it gives.

Positions count along from end a, which is the near end, and across from edge a.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from scantling.exact import Fraction
from scantling.findings import Place
from scantling.timber.movement import Cut
from scantling.units import FOOT, INCH

NOMINAL = tuple(Fraction(n, 4) for n in (3, 4, 5, 6, 8, 10, 12, 16))  # [in] as boards are sold
_RANK = {Cut.FLAT: 0, Cut.RIFT: 1, Cut.QUARTER: 2}


class Harm(StrEnum):
    """What a defect does to the parts that would lie over it."""

    SPOILS = "spoils"  # no part may lie there: checks, wane, pith, loose knots, pitch
    KNOT = "knot"  # sound: kept out of what shows, and away from ends and edges
    LOOK = "look"  # colour and figure, noted and left to the eye


@dataclass(frozen=True, kw_only=True)
class Defect:
    """One thing the survey notes, with the rectangle it takes up. [mm]"""

    says: str
    harm: Harm
    start: Fraction  # along from end a
    stop: Fraction
    near: Fraction  # across from edge a
    far: Fraction


@dataclass(frozen=True, kw_only=True)
class Board:
    """One board of the rack, rough or dressed. [mm]"""

    name: str
    wood: str  # name of the species in the table
    cut: Cut
    grade: str
    thickness: Fraction
    width_a: Fraction  # at end a
    width_b: Fraction
    length: Fraction
    cup: Fraction = Fraction(0)  # over the width
    bow: Fraction = Fraction(0)  # over the length, flatwise
    crook: Fraction = Fraction(0)  # over the length, edgewise
    twist: Fraction = Fraction(0)  # how far one end winds out of the plane of the other
    moisture: Fraction | None = None  # [%]
    defects: tuple[Defect, ...] = ()
    dressed: bool = False  # bought planed
    paid: Fraction | None = None  # in the maker's money
    place: Place | None = None

    @property
    def narrowest(self) -> Fraction:
        """Width of its narrower end. [mm]"""
        return min(self.width_a, self.width_b)

    @property
    def widest(self) -> Fraction:
        """Width of its wider end. [mm]"""
        return max(self.width_a, self.width_b)

    def width_at(self, along: Fraction) -> Fraction:
        """Width so far from end a; it tapers evenly. [mm]"""
        return self.width_a + (self.width_b - self.width_a) * along / self.length

    @property
    def nominal(self) -> Fraction:
        """Thickness it is sold by, the nearest of the trade's. [in]"""
        return min(NOMINAL, key=lambda sold: abs(sold - self.thickness / INCH))

    @property
    def board_feet(self) -> Fraction:
        """Measure it is paid by: thickness as sold, 1 in at the least, by its mean width. [bd ft]

        References:
            I. S. Griffith, "Essentials of Woodworking", 1908: a board foot is 1 by 12 by 12 in;
            stock under an inch is counted as an inch.
        """
        mean = (self.width_a + self.width_b) / 2
        return max(self.nominal, Fraction(1)) * mean * self.length / (FOOT * FOOT)

    def serves(self, cut: str) -> bool:
        """Whether its rings stand as a part asks; flat is asked where any will do."""
        return _RANK[self.cut] >= _RANK[Cut(cut)]

    def out_of_flat(self, *, length: Fraction, width: Fraction) -> Fraction:
        """The most that making a piece of it flat and parallel takes off. [mm]

        The face of the board is taken as z = A x² + B y² + C x y. Over a piece the three terms
        rise by the bow, the cup and half the wind of that piece; their sum is never less than
        what the thinnest pair of parallel planes round it is apart.

        Args:
            length: Of the piece as it is flattened, along. [mm]
            width: Of the piece, across. [mm]
        """
        along, across = length / self.length, width / self.widest
        return self.bow * along**2 + self.cup * across**2 + self.twist * along * across / 2
