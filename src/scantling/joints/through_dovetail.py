"""Through dovetail: tails that show their ends on the far face."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from scantling.exact import Fraction
from scantling.joints._dovetail import Dovetailed
from scantling.joints._joint import Bench, Choice, Joined, Strains
from scantling.joints._tail_bench import corner_bench
from scantling.parts import Extent
from scantling.sizes.model import Dimension, Equation, Kind, Relations


@dataclass(frozen=True, kw_only=True)
class ThroughDovetail(Dovetailed):
    """Tails right through the other part, so that their end grain shows.

    Boxes, chests and the backs of drawers. The tails are on the part that would be pulled off.
    A back narrower than the sides takes tails across its own width only.
    """

    title: ClassVar[str] = "through dovetail"
    full_size: ClassVar[Mapping[str, int]] = MappingProxyType({"enters": 1})

    def is_through(self) -> bool:
        """Always."""
        return True

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Tails as long as the mate is thick, taken from the planed mate."""
        own = Relations(
            dimensions=(
                Dimension(
                    name=j.own("entry"), kind=Kind.MATE, says=f"length of the tails of {j.name}"
                ),
            ),
            equations=(
                Equation(
                    sum=j.size("entry") - j.thickness("receives"),
                    because="the tails come out flush on the far face",
                ),
            ),
        )
        return own + super().relations(j, choice=choice, strains=strains)

    @classmethod
    def bench(cls) -> Bench:
        """The back of a drawer, narrower than its side and set up from its lower edge."""
        return corner_bench(
            cls(),
            name="back at side",
            board=Extent(length=Fraction(410), width=Fraction(117), thickness=Fraction(11)),
            tails=Extent(length=Fraction(250), width=Fraction(138), thickness=Fraction(13)),
            set_off=Fraction(-17),
        )
