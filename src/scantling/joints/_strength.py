"""Strength of nails, screws, ledges and boards: equations only, each with its source.

All are means of tests on clear, dry wood, loaded once. None is a load to design for.
"""

from __future__ import annotations

import math

from scantling.timber.species import Kind, Species

NAIL_PULL = 54.12  # [N/mm2] over specific gravity to the power of 2.5
SCREW_PULL = 108.25  # [N/mm2] over specific gravity squared
THREAD_SHARE = 2 / 3  # [-] of a wood screw's length that is threaded
FULL_DEPTH = 7  # [-] diameters in the wood at which a screw holds sideways in full
LEAST_DEPTH = 4  # [-] diameters below which it is not counted at all
ROLLING = 0.18  # [-] of the shear along the grain: least of the 18 to 28 % seen across it

# lateral coefficient K of table 8-4: from that specific gravity upwards [N/mm2]
_SIDEWAYS = {
    Kind.HARDWOOD: ((0.57, 44.13), (0.48, 31.99), (0.33, 23.17)),
    Kind.SOFTWOOD: ((0.48, 36.40), (0.43, 29.79), (0.29, 23.17)),
}


def nail_pull(*, gravity: float, shank: float, deep: float) -> float:
    """Force that draws a plain nail out of side grain, ultimate. [N]

    Args:
        gravity: Specific gravity of the wood, dry mass and volume at 12 %. [-]
        shank: Diameter of the nail. [mm]
        deep: How far it goes into that wood. [mm]

    References:
        Wood Handbook, FPL-GTR-190 and -282, ch. 8: 54.12 G^(5/2) D L, in inches and pounds
        7850 G^(5/2) D L. Nine values of a published table are met (tests/published).
    """
    return NAIL_PULL * math.pow(gravity, 2.5) * shank * deep


def screw_pull(*, gravity: float, shank: float, thread: float) -> float:
    """Force that draws a wood screw out of side grain, ultimate. [N]

    Args:
        gravity: Specific gravity of the wood, dry mass and volume at 12 %. [-]
        shank: Diameter of the screw. [mm]
        thread: Length of thread in that wood. [mm]

    References:
        Wood Handbook, FPL-GTR-190 and -282, ch. 8: 108.25 G^2 D L, in inches and pounds
        15 700 G^2 D L.
    """
    return SCREW_PULL * gravity**2 * shank * thread


def thread_in_wood(*, length: float, outside: float) -> float:
    """Thread of a wood screw that lies in the wood that takes it. [mm]

    Args:
        length: Of the screw. [mm]
        outside: How much of it lies in what it fastens. [mm]

    References:
        Two thirds of a wood screw are threaded: Wood Handbook ch. 8, from memory.
    """
    return max(min(THREAD_SHARE * length, length - outside), 0.0)


def screw_push(wood: Species, *, shank: float, deep: float) -> float | None:
    """Force sideways on a screw in side grain at which the joint starts to give. [N]

    The proportional limit, not the ultimate load. Less than seven diameters in the wood count
    in proportion, less than four not at all. None for wood lighter than the table's.

    Args:
        wood: What takes the screw.
        shank: Diameter of the screw. [mm]
        deep: How far it goes into that wood. [mm]

    References:
        Wood Handbook, FPL-GTR-190 and -282, ch. 8: K D^2, K of table 8-4. The equation was
        seen; the coefficients and the rule for short screws are from memory, in both units.
    """
    found = [k for least, k in _SIDEWAYS[wood.kind] if wood.gravity >= least]
    if not found:
        return None
    share = min(deep / (FULL_DEPTH * shank), 1.0)
    return found[0] * shank**2 * share if deep >= LEAST_DEPTH * shank else 0.0


def ledge(wood: Species, *, tall: float) -> float | None:
    """Load that shears off a ledge beside a groove, for each mm of its length. [N/mm]

    The groove runs along the grain, so the ledge parts across it, where wood holds least.
    Mean stress over the root; what the load's lever adds is not counted.

    Args:
        wood: Of the ledge.
        tall: Thickness of the ledge at its root. [mm]

    References:
        Wood Handbook, FPL-GTR-190, ch. 5: shear across the grain (rolling) 18 to 28 % of that
        along it, limited tests; from memory. The least is taken.
    """
    return None if wood.shear is None else ROLLING * wood.shear * tall


def strip_bending(wood: Species, *, span: float, wide: float, thick: float) -> float:
    """Load spread evenly over a board on two ledges that breaks it. [N]

    Args:
        wood: Of the board, its grain along the span.
        span: Between the ledges. [mm]
        wide: Of the board. [mm]
        thick: Of the board. [mm]

    References:
        Beam on two supports, load W evenly spread: moment W L / 8, stress 6 M / (b t^2).
    """
    return 4 * wood.bending_strength * wide * thick**2 / (3 * span)


def strip_shear(wood: Species, *, wide: float, thick: float) -> float | None:
    """Load spread evenly over a board on two ledges that splits it at its ends. [N]

    Args:
        wood: Of the board, its grain along the span.
        wide: Of the board. [mm]
        thick: Of its ends, where they leave the ledges. [mm]

    References:
        Beam of rectangular section: greatest shear 3 V / (2 b t), V half of the load.
    """
    return None if wood.shear is None else 4 * wood.shear * wide * thick / 3
