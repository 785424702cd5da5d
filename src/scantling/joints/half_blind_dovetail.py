"""Half-blind dovetail: tails that stop short of the show face."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._dovetail import Dovetailed
from scantling.joints._frame import fault
from scantling.joints._joint import (
    Bench,
    Choice,
    DrawnSize,
    Joined,
    Said,
    Strains,
    Woods,
    option,
)
from scantling.joints._tail_bench import corner_bench
from scantling.joints._tail_faults import code
from scantling.parts import Extent, Part
from scantling.shop.habits import Habits
from scantling.shop.tools import Shop, whole_depth
from scantling.sizes.linear import Linear, exactly
from scantling.sizes.model import Dimension, Equation, Kind, Level, Relations, Rule, Sizes

THINNEST_LAP = Fraction(3)  # [mm]
LEAST_SHARE, MOST_SHARE = Fraction(1, 4), Fraction(1, 3)  # [-] lap over thickness


@dataclass(frozen=True, kw_only=True)
class HalfBlindDovetail(Dovetailed):
    """Tails in sockets that stop short of the show face, whose wood laps over their ends.

    Drawer fronts, plain case sides, and rails let into the end of a side, there mostly with one
    tail. One gauge setting marks how far the tails go in, on both parts.

    References:
        Thickness of the lap from two manuals of lapped dovetails: a quarter to a third.
    """

    title: ClassVar[str] = "half-blind dovetail"
    full_size: ClassVar[Mapping[str, int]] = MappingProxyType({"enters": 1})

    lap: Said | None = option(dimension="lap", says="wood left in front of the tails")

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Tails and lap make up the thickness."""
        usual: Linear = j.thickness("receives") * LEAST_SHARE
        if "lap" in choice:
            usual = exactly(choice["lap"])
        own = Relations(
            dimensions=(
                Dimension(
                    name=j.own("lap"), kind=Kind.TOOL, says=f"lap in front of the tails of {j.name}"
                ),
                Dimension(
                    name=j.own("entry"), kind=Kind.TOOL, says=f"length of the tails of {j.name}"
                ),
            ),
            equations=(
                Equation(
                    sum=j.size("entry") + j.size("lap") - j.thickness("receives"),
                    because="tails and lap make up the thickness",
                ),
            ),
            rules=(
                Rule(
                    sum=j.size("lap") - usual,
                    because="a quarter of the thickness is left, up to the next whole depth",
                    level=Level.RULE,
                    source="manuals of lapped dovetails: a quarter to a third",
                ),
            ),
        )
        return own + super().relations(j, choice=choice, strains=strains)

    def choose(
        self,
        j: Joined,
        *,
        sizes: Sizes | None,
        shop: Shop,
        habits: Habits,
        woods: Woods,
        strains: Strains,
    ) -> Choice:
        """3. Slope, number of tails, pins; the lap, so that the gauge is set to a whole depth."""
        found = super().choose(
            j, sizes=sizes, shop=shop, habits=habits, woods=woods, strains=strains
        )
        if sizes is None:
            return found
        thick = j.thickness("receives").at(sizes)
        deep = whole_depth(thick * (1 - LEAST_SHARE), unit=shop.unit)
        if deep < thick * (1 - MOST_SHARE):
            deep = thick * (1 - LEAST_SHARE)  # no whole depth lies between
        return Choice.of({**dict(found.values), "lap": thick - deep})

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Tails and pins, and the lap."""
        lap = DrawnSize(word="lap", value=sizes[j.own("lap")], dimension=j.own("lap"))
        return (*super().drawn(j, sizes=sizes, choice=choice), lap)

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. A lap too thin to chop behind, and what any dovetail may have."""
        found = super().faults(j, sizes=sizes, choice=choice, shop=shop, parts=parts)
        lap = sizes[j.own("lap")]
        limit = max(THINNEST_LAP, j.thickness("receives").at(sizes) * LEAST_SHARE)
        if lap >= limit:
            return found
        thin = fault(
            j,
            code(j, "thin-lap"),
            Weight.MIND,
            says=f"{j.name}: the lap breaks out when the socket is chopped or the joint fitted",
            cure="a thicker lap, or a thicker part; clamp a block on the face while chopping",
            figure=lap,
            limit=limit,
            shop=shop,
            source="manuals of lapped dovetails: a quarter to a third",
        )
        return (thin, *found)

    @classmethod
    def bench(cls) -> Bench:
        """A drawer's front, wider than its side on both edges, and that side."""
        return corner_bench(
            cls(),
            name="front at side",
            board=Extent(length=Fraction(410), width=Fraction(150), thickness=Fraction(20)),
            tails=Extent(length=Fraction(250), width=Fraction(138), thickness=Fraction(12)),
            set_off=Fraction(5),
        )
