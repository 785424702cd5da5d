"""How far a width of wood moves when its moisture changes.

Along the grain it is taken as not moving at all. Across it the movement is proportional
to the change of moisture within the range furniture sees; the steeper law of green wood
drying is here too, for the ends outside that range.
"""

from dataclasses import dataclass
from enum import StrEnum

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction, from_figures
from scantling.timber.room import Room
from scantling.timber.species import Species

LINEAR = (6.0, 14.0)  # [%] moisture content between which eq. 13-2 is stated to hold


class Cut(StrEnum):
    """How the rings stand to the width of a board."""

    FLAT = "flat"
    RIFT = "rift"
    QUARTER = "quarter"


@dataclass(frozen=True, kw_only=True)
class Strain:
    """Change of a width over that width, from the moisture at the bench.

    Signed: in a room that never gets drier than the bench `shrink` is below 0, for there
    even the driest spell finds the part wider than it was made. Exact decimals of six
    places, fit to stand in an inequality of the size solver.
    """

    grow: Fraction  # to the dampest spell
    shrink: Fraction  # to the driest spell

    @property
    def swing(self) -> Fraction:
        """From the driest to the dampest spell, over the width at the bench."""
        return self.grow + self.shrink

    @property
    def widest(self) -> Fraction:
        """Most the width ever exceeds the one cut, the day at the bench counted."""
        return max(self.grow, Fraction(0))

    @property
    def narrowest(self) -> Fraction:
        """Most the width ever falls short of the one cut, the day at the bench counted."""
        return max(self.shrink, Fraction(0))


def coefficient(species: Species, cut: Cut) -> Fraction:
    """Change of a board's width over that width, per 1 % of moisture content.

    A flat-sawn board moves by the tangential figure, a quarter-sawn one by the radial. For
    rift the mean of the two is taken: it lies between; common practice, no table gives it.

    References:
        Wood Handbook, FPL-GTR-190, 2010, table 13-5.
    """
    if cut is Cut.FLAT:
        return species.tangential
    if cut is Cut.QUARTER:
        return species.radial
    return (species.radial + species.tangential) / 2


def across_thickness(species: Species, cut: Cut) -> Fraction:
    """Change of a board's thickness over that thickness, per 1 % of moisture content.

    The rings that lie along the width of a flat-sawn board stand across its thickness, so
    the two figures change places.

    References:
        Wood Handbook, FPL-GTR-190, 2010, table 13-5.
    """
    other = {Cut.FLAT: Cut.QUARTER, Cut.QUARTER: Cut.FLAT, Cut.RIFT: Cut.RIFT}
    return coefficient(species, other[cut])


def movement(
    size: Fraction | float,
    *,
    coefficient: Fraction | float,
    from_moisture: float,
    to_moisture: float,
) -> float:
    """Change of a size across the grain, in proportion to the change of moisture.

    Holds while both moisture contents lie within `LINEAR`; outside it the result is still
    given, and whoever prints it notes that it is past its range (`within_linear`).

    Args:
        size: Size across the grain at the first moisture content. [mm]
        coefficient: Change over size per 1 % of moisture content. [-]
        from_moisture: Moisture content at the start. [%]
        to_moisture: Moisture content at the end. [%]

    Returns:
        Growth; below 0 where the wood shrinks. [mm]

    Raises:
        OutOfRangeError: A moisture content below 0.

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-2, p. 13-18.
    """
    _not_negative(from_moisture)
    _not_negative(to_moisture)
    return float(size) * float(coefficient) * (to_moisture - from_moisture)


def movement_from_shrinkage(
    size: Fraction | float,
    *,
    shrinkage: Fraction | float,
    from_moisture: float,
    to_moisture: float,
    start: Fraction | float = 30,
) -> float:
    """Change of a size across the grain, from the total shrinkage green to oven-dry.

    For moisture contents outside `LINEAR`.

    Args:
        size: Size across the grain at the first moisture content. [mm]
        shrinkage: Green to oven-dry, radial or tangential. [% of green size]
        from_moisture: Moisture content at the start. [%]
        to_moisture: Moisture content at the end. [%]
        start: Moisture content below which this wood shrinks. [%]

    Returns:
        Growth; below 0 where the wood shrinks. [mm]

    Raises:
        OutOfRangeError: A moisture content below 0 or above `start`; a shrinkage of 0 or less.

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-3, printed with 30 for `start`.
    """
    for moisture in (from_moisture, to_moisture):
        _not_negative(moisture)
        if moisture > start:
            raise OutOfRangeError(f"moisture {moisture:g} % lies above {float(start):g} %")
    if shrinkage <= 0:
        raise OutOfRangeError(f"shrinkage {float(shrinkage):g} % must be above 0 %")
    per_point = float(start) * 100 / float(shrinkage) - float(start) + from_moisture
    return float(size) * (to_moisture - from_moisture) / per_point


def coefficient_from_shrinkage(
    *, shrinkage: Fraction | float, start: Fraction | float = 30
) -> float:
    """Coefficient that follows from the total shrinkage, on the size at 10 %.

    Args:
        shrinkage: Green to oven-dry, radial or tangential. [% of green size]
        start: Moisture content below which this wood shrinks. [%]

    Returns:
        Change over size per 1 % of moisture content. [-]

    Raises:
        OutOfRangeError: A shrinkage of 0 or less.

    References:
        Wood Handbook, FPL-GTR-190, 2010, footnote of table 13-5.
    """
    if shrinkage <= 0:
        raise OutOfRangeError(f"shrinkage {float(shrinkage):g} % must be above 0 %")
    return float(shrinkage / (100 * start - shrinkage * (start - 10)))


def strain(species: Species, cut: Cut, room: Room) -> Strain:
    """Movement of a board's width in a room, per unit of the width cut at the bench.

    Proportional law of `movement`, each end rounded to six decimal places (one thousandth
    of a millimetre on a metre), so that the size solver can carry it exactly.

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-2.
    """
    per_point = coefficient(species, cut)
    return Strain(grow=_decimal(per_point, room.gain), shrink=_decimal(per_point, room.loss))


def within_linear(moisture: float) -> bool:
    """Whether the proportional law is stated to hold at a moisture content. [%]"""
    low, high = LINEAR
    return low <= moisture <= high


def _decimal(per_point: Fraction, points: float) -> Fraction:
    # By way of text: the nearest binary fraction of a decimal would not be that decimal.
    return from_figures(f"{float(per_point) * points:.6f}")


def _not_negative(moisture: float) -> None:
    if moisture < 0:
        raise OutOfRangeError(f"moisture {moisture:g} % lies below 0 %")
