"""Room that the seasons need, as a habit of the shop."""

from __future__ import annotations

from scantling.exact import Fraction


def room(usual: Fraction, *, needed: Fraction, mark: Fraction) -> Fraction:
    """The usual room, or where the year needs more, the next mark of the rule above it. [mm]

    Chosen so that the season's bound holds from the start; the bound itself stays.

    Args:
        usual: Room left where nothing moves much. [mm]
        needed: Least room at these sizes, in the worse season. [mm]
        mark: Graduation of the rule. [mm]
    """
    return max(usual, -(-needed // mark) * mark)
