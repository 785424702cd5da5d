"""Edge joint: strips glued edge to edge into one panel."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._bench import stated
from scantling.joints._frame import fault, leaving, weakest_shear
from scantling.joints._joint import (
    Bench,
    Beside,
    Choice,
    Contact,
    DrawnSize,
    Estimate,
    Fit,
    Fixing,
    Gap,
    Joined,
    Joint,
    Move,
    Seat,
    SeatRole,
    State,
    Strains,
    Woods,
)
from scantling.joints._touch import Meeting, block, contact, meeting
from scantling.parts import ACROSS, ALONG, Cut, Part, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO, exactly, size_of, total
from scantling.sizes.model import Alike, Bound, Equation, Relations, Sizes, Yields

NARROWEST = Fraction(50)  # [mm] a strip worth gluing
CLAMP_APART = Fraction(250)  # [mm]


@dataclass(frozen=True, kw_only=True)
class EdgeJoint(Joint):
    """Strips glued edge to edge, grain along grain, into one panel that moves as one board.

    The strips are given from the face edge on. Their widths belong to the boards that are
    found; only their sum and their least width stand here.

    References:
        Wood Handbook, FPL-GTR-190, 2010, ch. 10: such a joint comes near the wood itself;
        clamp spacing and least width are common practice.
    """

    title: ClassVar[str] = "edge joint"

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. Two strips or more, from the face edge on."""
        return (SeatRole(role="strips", means="across: its own face edge", least=2, most=None),)

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. The strips make up the panel that the form tells of, and none is too narrow."""
        del choice, strains  # the panel moves as one
        names = tuple(f"{seat.part}.width" for seat in j.row("strips"))
        return Relations(
            equations=tuple(
                Equation(
                    sum=total(size_of(name) for name in names) - panel.size,
                    because="the strips make up the panel",
                )
                for panel in j.neighbours("panel", role="strips")
            ),
            bounds=tuple(
                Bound(
                    sum=size_of(name) - NARROWEST,
                    because="a strip is wide enough to be worth its glue line",
                    yields=Yields.SEASON,
                    code="edge-joint.narrow-strip",
                    source="common practice",
                    cure="Use fewer strips.",
                    place=j.place,
                )
                for name in names
            ),
            alike=(Alike(names=names, because="strips are alike until the boards are found"),),
        )

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
        """3. Clamps: one near each end, no more than 250 mm apart."""
        del habits, shop, woods, strains
        if sizes is None:
            return Choice.of({"clamps": 2})
        long = max(sizes[f"{seat.part}.length"] for seat in j.row("strips"))
        return Choice.of({"clamps": int(-(-long // CLAMP_APART)) + 1})

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. None: edges are planed, nothing is cut away."""
        del j, sizes, choice
        return {}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: tongues and dowels add no strength here."""
        del j, sizes, choice, parts
        return ()

    def _edges(self, j: Joined, parts: Mapping[str, Part]) -> Iterator[tuple[Part, Part, Meeting]]:
        for one, other in pairwise(parts[seat.part] for seat in j.row("strips")):
            found = meeting(block(one), block(other))
            if found is not None:
                yield one, other, found

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Until glued, away from the strip before, and along it."""
        del sizes
        if state is not State.OPEN:
            return ()
        last = j.row("strips")[-1]
        ways = [last.way(axis=axis, part=parts[last.part]) for axis in (ACROSS, ALONG)]
        return leaving("strips", *ways, ways[1].opposite)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Each edge on the next."""
        del sizes, choice
        return tuple(
            contact(j, one, other, found, zone=f"edge {i + 1}", fit=Fit.TOUCH)
            for i, (one, other, found) in enumerate(self._edges(j, parts))
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Glued every way at each edge."""
        del sizes, choice
        return tuple(
            Fixing(
                between=(one.name, other.name),
                at=found.middle,
                holds=frozenset(Way),
                free=frozenset(),
                by="glue",
            )
            for one, other, found in self._edges(j, parts)
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. None."""
        del j, choice
        return ()

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Shear along one edge, by the weaker wood. [N]"""
        del choice
        shear = weakest_shear(j, woods)
        if shear is None:
            return ()
        row = [seat.part for seat in j.row("strips")]
        thin = min(sizes[f"{part}.thickness"] for part in row)
        short = min(sizes[f"{part}.length"] for part in row)
        return (
            Estimate(
                what="shear along one edge",
                value=shear * float(thin * short),
                unit="N",
                basis="shear strength along the grain over the thinner edge",
                weakest="the weaker wood beside the glue",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Ordered, edges planed in pairs, glued the same sitting, rested, flattened."""
        del shop, habits
        row = tuple(seat.part for seat in j.row("strips"))
        pairs = (
            operation("mate edges", one, other, note="folded face to face, both edges at once")
            for one, other in pairwise(row)
        )
        return (
            operation("order strips", *row),
            *pairs,
            operation(
                "glue panel", *row, note=f"{choice.count('clamps')} clamps, from both sides in turn"
            ),
            operation("rest panel", *row, tool=Tool.MOISTURE_METER),
            operation("flatten panel", *row),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Where the joint lines fall: no pin or screw may go into one."""
        del choice
        widths = [sizes[f"{seat.part}.width"] for seat in j.row("strips")]
        return tuple(
            DrawnSize(word=f"line {i + 1}", value=at, reference="face edge of the panel")
            for i, at in enumerate(list(accumulate(widths))[:-1])
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Fewer clamps of that reach than the panel wants."""
        del parts
        wide = sum((sizes[f"{seat.part}.width"] for seat in j.row("strips")), Fraction(0))
        wanted = choice.count("clamps")
        owned = shop.clamps_reaching(wide)
        if owned >= wanted:
            return ()
        told = fault(
            j,
            "edge-joint.clamps",
            Weight.MIND,
            says=f"{wanted} clamps are wanted over this width, {owned} reach so far.",
            cure="Glue it in two stages, or borrow clamps.",
            figure=wide,
            limit=CLAMP_APART,
            shop=shop,
        )
        return (replace(told, figure=f"{owned}", limit=f"{wanted}"),)

    @classmethod
    def bench(cls) -> Bench:
        """Three strips 400 long and 19 thick, one of them 90 wide, in a panel of 310."""
        names = ("top.strip a", "top.strip b", "top.strip c")
        strips: list[PlannedPart] = []
        across = ZERO
        for name in names:
            strip = PlannedPart(
                name=name,
                family="strip",
                wood="white ash",
                ways=(Way.RIGHT, Way.BACK, Way.DOWN),
                at=(ZERO, across, exactly(19)),
            )
            strips.append(strip)
            across += strip.width
        j = Joined(
            name="strips of the top",
            joint=cls(),
            seats={"strips": tuple(Seat(part=name) for name in names)},
            beside=(
                Beside(
                    what="panel",
                    owner="top",
                    role="strips",
                    axis=ACROSS,
                    start=ZERO,
                    size=exactly(310),
                    depth=ZERO,
                ),
            ),
        )
        first, *others = strips
        return Bench(
            parts=tuple(strips),
            joined=j,
            relations=Relations(),
            stated=(
                *stated(first, 400, 90, 19),
                *(each for strip in others for each in stated(strip, 400, None, 19)),
            ),
        )
