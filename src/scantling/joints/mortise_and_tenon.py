"""Mortise and tenon: a tongue on one part's end, stopped in a mortise in the other's edge."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._frame import (
    frame_bench,
    glued_at,
    is_at_end,
    leaving,
    out_of_mouth,
    touching,
    weakest_shear,
)
from scantling.joints._joint import (
    Bench,
    Choice,
    Contact,
    DrawnSize,
    Estimate,
    Fixing,
    Gap,
    Joined,
    Joint,
    Move,
    Said,
    SeatRole,
    State,
    Strains,
    Woods,
    lifted,
    option,
)
from scantling.joints._short import reached
from scantling.joints._tenon import Edge, Tenon, mortise_cuts, tenon, tenon_cuts, tenon_patches
from scantling.joints._tenon_faults import tenon_faults
from scantling.joints._tenon_sizes import chosen, tenon_relations
from scantling.parts import ACROSS, Cut, Extent, Part
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.model import Relations, Sizes


@dataclass(frozen=True, kw_only=True)
class MortiseAndTenon(Joint):
    """A tongue on one part's end, glued into a mortise of its own size in another's edge.

    Stopped. It may carry a haunch, which at the very end of a part it does unless told not to;
    beside a panel groove the haunch fills the groove, the tenon is as thick as the groove is
    wide and gives up the groove's depth on the grooved edge. A shoulder gap leaves the shoulder
    off its mate, so that the other part may move; such a tenon is not glued.
    Own dimensions: `entry`, `tenon`, `thickness`, `set in`, `width`, `mortise depth`,
    `floor gap`, `shoulder gap`, `near edge shoulder`, `far edge shoulder`, and with a haunch
    `haunch` and `haunch length`.

    References:
        Handwork in Wood, 1910, and Woodwork Joints, 1920, on the haunched tenon beside a groove.
    """

    title: ClassVar[str] = "mortise and tenon"
    full_size: ClassVar[Mapping[str, int]] = MappingProxyType({"enters": 2, "receives": 1})

    tenon: Said | None = option(dimension="tenon", says="length of the tenon", words=("stub",))
    thickness: Said | None = option(
        dimension="thickness", says="thickness of the tenon", words=("thick",)
    )
    set_in: Said | None = option(
        dimension="set in", says="tenon behind the face side of the mortised part", reads="gap"
    )
    shoulder_gap: Said | None = option(
        dimension="shoulder gap", says="shoulder off its mate", reads="gap"
    )
    near_edge_shoulder: Said | None = option(
        dimension="near edge shoulder", says="shoulder on the near or outer edge", reads="gap"
    )
    far_edge_shoulder: Said | None = option(
        dimension="far edge shoulder", says="shoulder on the far or inner edge", reads="gap"
    )
    floor_gap: Said | None = option(dimension="floor gap", says="room below the tenon", reads="gap")
    haunch: Said | None = option(dimension="haunch", says="width of the haunch")
    haunched: bool | None = None  # None: where the joint lies at the very end of a part
    haunch_at: Edge = "near"

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The mortised part and the tenoned one."""
        return (
            SeatRole(
                role="receives",
                means="along: near edge of the other; across: mouth edge; into: face side",
            ),
            SeatRole(role="enters", means="along: its end; across: its near edge; into: face side"),
        )

    def haunch_edge(self, j: Joined) -> Edge | None:
        """At which edge a haunch stands; None without one."""
        at_corner = is_at_end(j) or bool(j.neighbours("corner", role="receives"))
        wanted = at_corner if self.haunched is None else self.haunched
        return self.haunch_at if wanted else None

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Length, thickness, place and width of the tenon, haunch and gaps."""
        del strains  # a stopped tenon moves with its own part; a gap is the form's to size
        return tenon_relations(j, choice=choice, haunch_at=self.haunch_edge(j))

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
        """3. A mortise chisel owned, the thinner part, shoulders and gap by the shop's measure."""
        del habits, woods, strains
        return chosen(j, sizes=sizes, shop=shop)

    def _laid_out(self, j: Joined, sizes: Sizes) -> Tenon:
        return tenon(j, sizes=sizes, haunch_at=self.haunch_edge(j))

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Mortise and haunch socket in one, the waste round the tenon in the other."""
        del choice
        found = self._laid_out(j, sizes)
        return {
            j.seat("receives").part: mortise_cuts(j, found, sizes=sizes),
            j.seat("enters").part: tenon_cuts(j, found, sizes=sizes),
        }

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: no peg, no wedge."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Straight out of the mortise, until it is glued."""
        del sizes
        return () if state is State.LOCKED else leaving("enters", out_of_mouth(j, parts))

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Cheeks, the mortise's ends, haunch, shoulders."""
        del choice
        found = self._laid_out(j, sizes)
        patches = tenon_patches(j, found, sizes=sizes, parts=parts)
        left = reached(j, patches, axis=ACROSS, deep=found.reach, sizes=sizes)
        return touching(j, left, sizes=sizes, parts=parts)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Glued in the middle of the tenon; with a shoulder gap held dry, free to draw."""
        del choice
        found = self._laid_out(j, sizes)
        middle = (found.middle, found.reach / 2, (found.into[0] + found.into[1]) / 2)
        if found.opened == 0:
            return glued_at(j, middle, sizes=sizes, parts=parts)
        seat = j.seat("receives")
        out = out_of_mouth(j, parts)
        free = frozenset({out, out.opposite})
        (at,) = lifted(seat, [middle], sizes=sizes, part=parts[seat.part])
        between = (seat.part, j.seat("enters").part)
        return (
            Fixing(
                between=between, at=at, holds=frozenset(type(out)) - free, free=free, by="tenon"
            ),
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room for glue below the tenon, and the shoulder gap if one is left."""
        del choice
        floor = Gap(
            name=j.own("floor gap"),
            at_bench=j.size("floor gap"),
            moving=(),
            least=Fraction(0),
            greatest=None,
            because="glue and shavings gather below the tenon",
            source="common practice",
        )
        if self.shoulder_gap is None:
            return (floor,)
        shoulder = Gap(
            name=j.own("shoulder gap"),
            at_bench=j.size("shoulder gap"),
            moving=(),
            least=Fraction(0),
            greatest=None,
            because="the mates may come nearer before the shoulder stops them",
            source="common practice",
        )
        return (floor, shoulder)

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Bending in the plane of the frame, and a straight pull, by the glued cheeks.

        A third of the weaker wood's shear strength on both cheeks; in bending at the distance
        from the middle of the tenon to the edge that presses, the nearer edge taken. [N m, N]
        It meets two published test means within 11 % and is no more than an estimate.

        References:
            FPL 1522, a third of the shear strength where grain crosses in a glue line.
        """
        del choice
        shear = weakest_shear(j, woods)
        found = self._laid_out(j, sizes)
        if shear is None or found.opened:
            return ()
        pull = shear / 3 * float(found.cheek_area)
        lever = min(found.middle, found.whole[1] - found.middle)
        basis = "a third of the shear strength over both cheeks"
        return (
            Estimate(
                what="bending in the plane of the frame",
                value=pull * float(lever) / 1000,
                unit="N m",
                basis=f"{basis}, turning about the pressed edge",
                weakest="glue between crossing grain",
            ),
            Estimate(
                what="pull along the tenon",
                value=pull,
                unit="N",
                basis=basis,
                weakest="glue between crossing grain",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Shoulders knifed, one mortise-gauge setting for both parts, mortise and tenon."""
        del choice, shop
        a, b = j.seat("receives").part, j.seat("enters").part
        gauge = Setting(
            held_by=Tool.MORTISE_GAUGE,
            to=(
                SetTo(j.own("set in"), "near cheek of the tenon", Reference.FACE_SIDE),
                SetTo(j.own("thickness"), "from pin to pin, as wide as the chisel"),
            ),
        )
        mortise = operation("chop mortise", a, note="horn on; depth marked on the chisel")
        saw = operation("saw tenon", b, note="on the waste side of the line")
        first, second = (mortise, saw) if habits.mortise_first else (saw, mortise)
        return (
            operation("knife shoulders", b),
            operation(
                "gauge joint", a, b, setting=gauge, note="pins set to the chisel, both face sides"
            ),
            first,
            second,
            operation("fit joint", b, a, note="by hand pressure; shoulders close all round"),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. The tenon's own three sizes, the haunch, and the mortise's two ends."""
        del choice
        found = self._laid_out(j, sizes)
        start = j.seat("receives").along.at(sizes)
        words = {"tenon": "tenon", "width": "width", "chisel": "thickness"}
        if found.haunch is not None:
            words |= {"haunch": "haunch", "haunch length": "haunch length"}
        return (
            *(
                DrawnSize(word=word, value=sizes[j.own(name)], dimension=j.own(name))
                for word, name in words.items()
            ),
            DrawnSize(word="mortise starts", value=start + found.along[0], reference="end"),
            DrawnSize(word="mortise stops", value=start + found.along[1], reference="end"),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Thin walls, no chisel, short end wood, tenons too wide."""
        del choice
        return tenon_faults(j, self._laid_out(j, sizes), sizes=sizes, shop=shop, parts=parts)

    @classmethod
    def bench(cls) -> Bench:
        """A haunched corner: stile 55 by 22, rail 62 by 20 set back 1. [mm]"""
        return frame_bench(
            cls(),
            name="rail in stile",
            stile=Extent(length=Fraction(300), width=Fraction(55), thickness=Fraction(22)),
            rail=Extent(length=Fraction(240), width=Fraction(62), thickness=Fraction(20)),
            set_back=Fraction(1),
        )
