"""Face frame to carcase: members of a frame glued flat on the front edges of a case."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._bench import stated
from scantling.joints._frame import fault, leaving
from scantling.joints._joint import (
    Bench,
    Choice,
    Contact,
    DrawnSize,
    Estimate,
    Fit,
    Fixing,
    Gap,
    Glue,
    Joined,
    Joint,
    Move,
    Seat,
    SeatRole,
    State,
    Strains,
    Woods,
)
from scantling.joints._touch import Meeting, block, contact, glue_across, meeting
from scantling.parts import Cut, Part, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, operation
from scantling.shop.tools import Shop
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import Relations, Sizes

WIDEST_GLUED = Fraction(75)  # [mm] across the grain
BEHIND = Fraction(20)  # [mm] thickness of the frame on the bench


@dataclass(frozen=True, kw_only=True)
class FaceFrameToCarcase(Joint):
    """Members of a frame lie flat on the front edges of a case and are glued there.

    Nothing is cut: where a member lies on an edge follows from where both stand. Glue holds
    where grain runs along grain, less where it crosses, and not at all on ends.
    """

    title: ClassVar[str] = "face frame to carcase"

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. Members of the frame, and the parts of the case behind them."""
        return (
            SeatRole(role="frame", means="not counted from", most=None),
            SeatRole(role="case", means="not counted from", most=None),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. None of its own: the form says how far a frame stands over the case."""
        del j, choice, strains
        return Relations()

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
        """3. Nothing to choose."""
        del j, sizes, shop, habits, woods, strains
        return Choice()

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. None."""
        del j, sizes, choice
        return {}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing."""
        del j, sizes, choice, parts
        return ()

    def _meetings(
        self, j: Joined, parts: Mapping[str, Part]
    ) -> Iterator[tuple[Part, Part, Meeting]]:
        """Every member on every part of the case that it lies on."""
        for frame in j.row("frame"):
            for case in j.row("case"):
                one, other = parts[frame.part], parts[case.part]
                found = meeting(block(one), block(other))
                if found is not None:
                    yield one, other, found

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Straight away from the case."""
        del sizes
        if state is State.LOCKED:
            return ()
        ways = {found.way.opposite: None for _, _, found in self._meetings(j, parts)}
        return leaving("frame", *ways)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Where each member lies on each edge."""
        del sizes, choice
        return tuple(
            contact(j, one, other, found, zone=f"{one.name} on {other.name}", fit=Fit.TOUCH)
            for one, other, found in self._meetings(j, parts)
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Glued every way, in the middle of each meeting that is no end grain."""
        del sizes, choice
        return tuple(
            Fixing(
                between=(one.name, other.name),
                at=found.middle,
                holds=frozenset(Way),
                free=frozenset(),
                by="glue",
            )
            for one, other, found in self._meetings(j, parts)
            if glue_across(found.axis, one, other) is not Glue.END_GRAIN
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. None: it is closed."""
        del j, choice
        return ()

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Shear along each member, by the weaker wood over the width that is glued. [N/mm]

        Counted for each millimetre of a member's length on an edge as thick as the case part.
        """
        del choice
        found = []
        for frame in j.row("frame"):
            for case in j.row("case"):
                known = [woods[s.part].shear for s in (frame, case) if s.part in woods]
                shear = [s for s in known if s is not None]
                if len(shear) == 2:
                    thick = sizes[f"{case.part}.thickness"]
                    found.append(
                        Estimate(
                            what=f"{frame.part} along the {case.part}",
                            value=min(shear) * float(thick),
                            unit="N/mm",
                            basis="shear along the grain of the weaker wood, long grain only",
                            weakest="the glue line or the wood beside it",
                        )
                    )
        return tuple(found)

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Laid on dry, marked, glued with clamps and cauls, planed flush."""
        del choice, shop, habits
        frame = tuple(seat.part for seat in j.row("frame"))
        case = tuple(seat.part for seat in j.row("case"))
        return (
            operation("dry assemble", *frame, *case, note="lay the frame on and mark its place"),
            operation("glue frame to case", *frame, *case, note="cauls under all clamps"),
            operation("flush", *frame, note="what stands over the case"),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Width of each member, and of each edge it may lie on."""
        del choice
        words = {f"{s.part}.width": f"width of the {s.part}" for s in j.row("frame")}
        words |= {f"{s.part}.thickness": f"edge of the {s.part}" for s in j.row("case")}
        return tuple(
            DrawnSize(word=word, value=sizes[name], dimension=name) for name, word in words.items()
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Members that lie on nothing, on end grain, or too wide across the grain."""
        del sizes, choice
        met = tuple(self._meetings(j, parts))
        lying = {one.name for one, _, _ in met}
        found = [
            Finding(
                code="face-frame-to-carcase.apart",
                weight=Weight.HALT,
                says=f"The {seat.part} lies on nothing of the case behind it.",
                cure="Make it wider, or bring the case part behind it.",
                place=j.place,
                parts=(seat.part, *(s.part for s in j.row("case"))),
            )
            for seat in j.row("frame")
            if seat.part not in lying
        ]
        for one, other, meets in met:
            found += _by_grain(j, one, other, meets, shop=shop)
        return tuple(found)

    @classmethod
    def bench(cls) -> Bench:
        """A stile 45 wide and a rail 60 wide, on a side 19 and a bottom 22 thick."""
        j = Joined(
            name="frame on case",
            joint=cls(),
            seats={
                "frame": (Seat(part="stile"), Seat(part="rail")),
                "case": (Seat(part="side"), Seat(part="bottom")),
            },
        )
        stile, rail, side, bottom = (
            PlannedPart(name=name, family=name, wood=wood, ways=ways)
            for name, wood, ways in (
                ("stile", "white ash", (Way.UP, Way.RIGHT, Way.BACK)),
                ("rail", "white ash", (Way.RIGHT, Way.UP, Way.BACK)),
                ("side", "white ash", (Way.UP, Way.BACK, Way.RIGHT)),
                ("bottom", "yellow-poplar", (Way.RIGHT, Way.BACK, Way.UP)),
            )
        )
        behind = exactly(BEHIND)
        return Bench(
            parts=(
                stile,
                replace(rail, at=(stile.width, ZERO, exactly(30))),
                replace(side, at=(ZERO, behind, ZERO)),
                replace(bottom, at=(side.thickness, behind, exactly(40))),
            ),
            joined=j,
            relations=Relations(),
            stated=(
                *stated(stile, 300, 45, BEHIND),
                *stated(rail, 200, 60, BEHIND),
                *stated(side, 280, 150, 19),
                *stated(bottom, 210, 140, 22),
            ),
        )


def _by_grain(
    j: Joined, one: Part, other: Part, meets: Meeting, *, shop: Shop
) -> tuple[Finding, ...]:
    glue = glue_across(meets.axis, one, other)
    if glue is Glue.END_GRAIN:
        return (
            Finding(
                code="face-frame-to-carcase.end-grain",
                weight=Weight.NOTE,
                says=f"The {one.name} meets the {other.name} on end grain: glue holds little.",
                cure="Let another edge carry it, or let a tongue in.",
                place=j.place,
                source="common practice",
                parts=(one.name, other.name),
            ),
        )
    spans = [max(p[a] for p in meets.patch) - min(p[a] for p in meets.patch) for a in range(3)]
    if glue is not Glue.CROSSING or max(spans) <= WIDEST_GLUED:
        return ()
    return (
        fault(
            j,
            "face-frame-to-carcase.wide-glue",
            Weight.MIND,
            says=f"The {one.name} is glued far across the grain of the {other.name}.",
            cure="Glue the middle only, and leave the rest dry.",
            figure=max(spans),
            limit=WIDEST_GLUED,
            shop=shop,
        ),
    )
