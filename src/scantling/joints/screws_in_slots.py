"""Screws in slots: one part screwed to another that moves, some screws fast, the others free."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar, Literal

from scantling.exact import Fraction, from_figures
from scantling.findings import Finding
from scantling.joints._bench import stated
from scantling.joints._frame import leaving
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
    Press,
    Said,
    Seat,
    SeatRole,
    State,
    Strains,
    Woods,
    option,
)
from scantling.joints._loose import pressed, shank
from scantling.joints._screw_faults import screw_faults
from scantling.joints._season import room
from scantling.joints._slot_sizes import SAYS, Moving, moving_widths, row_relations, travel_needed
from scantling.joints._slots import IN_A_ROW, Held, Row, held, places, row_cuts
from scantling.joints._strength import screw_pull
from scantling.joints._touch import Meeting, between, block, contact, meeting
from scantling.parts import ACROSS, ALONG, INTO, Cut, Part, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, operation
from scantling.shop.tools import Shop
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import (
    Relations,
    Sizes,
)
from scantling.units import INCH, Unit

APART = Fraction(250)  # [mm] at most, from screw to screw
NUMBER_8 = INCH * Fraction(164, 1000)  # [mm] shank of a number 8 wood screw
FREE = Fraction(3, 10)  # [mm] of a hole over its screw
LENGTHS_MM = (16, 20, 25, 30, 35, 40, 45, 50, 60)  # as screws are sold
LENGTHS_INCH = ("5/8", "3/4", "1", "5/4", "3/2", "7/4", "2", "5/2")


@dataclass(frozen=True, kw_only=True)
class ScrewsInSlots(Joint):
    """Screws pass through one part into another; some stand in round holes, others in slots.

    They pass along the thickness of the entering part, head at its near face, in a row along its
    length. Of a part held at one screw the others slide along the row; of one held nowhere, or
    all along, they slide across it.

    References:
        A table of screw holes (number 8: shank 0.164 in); room in a slot is common practice.
    """

    title: ClassVar[str] = "screws in slots"

    count: int | None = None  # in this part
    fixed_at: str = "front"  # "first", "middle", "last", "all", "none", or words of a part
    slots: Literal["as held", "along", "across"] = "as held"
    screw: Said | None = option(dimension="screw", says="length of a screw")
    shank: Said | None = option(dimension="shank", says="diameter of a screw")
    travel: Said | None = option(dimension="travel", says="room each way", reads="gap")
    end_distance: Said | None = option(dimension="end distance", says="of the first and last")
    line: Said | None = option(dimension="line", says="of the screws, from the edge")

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. What the screws pass through, and what takes their thread."""
        return (
            SeatRole(role="enters", means="along: its end; across: its edge; into: heads"),
            SeatRole(role="receives", means="not counted from"),
        )

    def _held_in(self, j: Joined) -> Held:
        return held(self.fixed_at, j.seat("enters").part)

    def _runs_along(self, j: Joined) -> bool:
        if self.slots == "as held":
            return self._held_in(j) in IN_A_ROW
        return self.slots == "along"

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Screw, hole, slot, and where the row stands."""
        moving = Moving(held=self._held_in(j), along=self._runs_along(j), strains=strains)
        return row_relations(j, choice=choice, moving=moving)

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
        """3. How many screws, of what length, the hole for them, and the room they have."""
        del habits, woods
        by_inch = shop.sold_in is Unit.INCH
        found = {"shank": NUMBER_8 if by_inch else Fraction(4), "count": Fraction(self.count or 2)}
        found["travel"] = INCH / 16 if by_inch else Fraction(3, 2)
        if sizes is None:
            found["clearance"] = found["shank"] + FREE
            found["screw"] = INCH * Fraction(5, 4) if by_inch else Fraction(30)
            found["end distance"] = INCH * 2 if by_inch else Fraction(50)
            return Choice.of(found)
        thick = sizes[j.own("shank")]
        drills = (size for size in shop.bores if thick < size <= thick + 3 * FREE)
        found["clearance"] = next(drills, thick + FREE)
        found["screw"] = _length(j, sizes=sizes, by_inch=by_inch)
        long = j.length("enters").at(sizes)
        end = min(INCH * 2 if by_inch else Fraction(50), long / 4)
        found["end distance"] = max(end // shop.finest, 1) * shop.finest
        moving = Moving(held=self._held_in(j), along=self._runs_along(j), strains=strains)
        found["travel"] = room(
            found["travel"], needed=travel_needed(j, moving, sizes=sizes), mark=shop.finest
        )
        if self.count is None:
            found["count"] = -(-(long - 2 * found["end distance"]) // APART) + Fraction(1)
        return Choice.of(found)

    def row(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Row:
        """The row of screws at its sizes."""
        return Row(
            places=places(j, sizes=sizes, count=choice.count("count")),
            line=sizes[j.own("line")],
            held=held(self.fixed_at, j.seat("enters").part),
            along=self._runs_along(j),
            clearance=sizes[j.own("clearance")],
            travel=sizes[j.own("travel")],
        )

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Holes and slots; pilot holes are bored at assembly, through them."""
        row = self.row(j, sizes=sizes, choice=choice)
        return {j.seat("enters").part: row_cuts(j, row, sizes=sizes)}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. The screws."""
        row, seat = self.row(j, sizes=sizes, choice=choice), j.seat("enters")
        part = parts[seat.part]
        ways = tuple(seat.way(axis=axis, part=part) for axis in (INTO, ALONG, ACROSS))
        return tuple(
            shank(
                f"{j.name}, screw {i + 1}",
                family="screw",
                head=seat.to_piece((place, row.line, Fraction(0)), sizes=sizes, part=part),
                ways=(ways[0], ways[1], ways[2]),
                length=sizes[j.own("screw")],
                across=sizes[j.own("shank")],
            )
            for i, place in enumerate(row.places)
        )

    def presses(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Press, ...]:
        """5, too. Each thread in its wood, as if no pilot were bored."""
        reach = sizes[j.own("screw")] - j.thickness("enters").at(sizes)
        deep = min(reach, _behind(j, parts))
        if deep <= 0:
            return ()
        return tuple(
            Press(
                between=(screw.name, j.seat("receives").part),
                volume=pressed(across=sizes[j.own("shank")], hole=Fraction(0), length=deep),
                because="the thread bites",
            )
            for screw in self.loose(j, sizes=sizes, choice=choice, parts=parts)
        )

    def _met(self, j: Joined, parts: Mapping[str, Part]) -> Meeting | None:
        return meeting(block(parts[j.seat("enters").part]), block(parts[j.seat("receives").part]))

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Straight apart; once screwed, not before the screws are out."""
        del sizes
        met = self._met(j, parts)
        if met is None:
            return ()
        away = leaving("enters", met.way.opposite)
        if state is State.OPEN:
            return away
        return tuple(
            Move(role=m.role, motion=m.motion, way=m.way, unlocked_by="screws") for m in away
        )

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. The faces between the screws; dry, for they must slide."""
        seat, one = j.seat("enters"), parts[j.seat("enters").part]
        other = parts[j.seat("receives").part]
        row, extent = self.row(j, sizes=sizes, choice=choice), one.extent
        found = []
        for i, (start, stop) in enumerate(row.between(length=extent.length)):
            ends = ((start, Fraction(0), Fraction(0)), (stop, extent.width, extent.thickness))
            low, high = (seat.to_piece(p, sizes=sizes, part=one) for p in ends)
            met = meeting(between(low, high), block(other))
            if met is not None:
                zone = f"face {i + 1}"
                found.append(contact(j, one, other, met, zone=zone, fit=Fit.TOUCH, glue=Glue.DRY))
        return tuple(found)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Each screw; in a slot it leaves the slot's directions free."""
        row, seat = self.row(j, sizes=sizes, choice=choice), j.seat("enters")
        part = parts[seat.part]
        slide = seat.way(axis=ALONG if row.along else ACROSS, part=part)
        thick = part.extent.thickness
        found = []
        for i, place in enumerate(row.places):
            free = frozenset() if row.is_fast(i) else frozenset({slide, slide.opposite})
            found.append(
                Fixing(
                    between=(seat.part, j.seat("receives").part),
                    at=seat.to_piece((place, row.line, thick), sizes=sizes, part=part),
                    holds=frozenset(Way) - free,
                    free=free,
                    by="screw",
                )
            )
        return tuple(found)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room each way in a slot, and what moves on it."""
        del choice
        kind = j.seat("enters").part.rpartition(" ")[2]
        return (
            Gap(
                name=j.own("travel"),
                at_bench=j.size("travel"),
                moving=moving_widths(j, held=self._held_in(j), along=self._runs_along(j)),
                least=Fraction(0),
                greatest=None,
                because="so that the screw never meets the end of its slot",
                source="Wood Handbook, FPL-GTR-190, 2010, eq. 13-2",
                either_way=True,
                what=f"room each way in the slots of the {kind}s",
                closed=f"the screws of the {kind}s meet the ends of their slots",
                cure=f"File the slots longer, or hold the {kind}s nearer their middle.",
            ),
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Pull straight off, by the threads. [N]

        References:
            Wood Handbook, FPL-GTR-190, 2010, ch. 8: withdrawal of wood screws from side grain,
            108.25 G² D L in N and mm; ultimate, to be divided for design.
        """
        part = j.seat("receives").part
        reach = sizes[j.own("screw")] - j.thickness("enters").at(sizes)
        if part not in woods or reach <= 0:
            return ()
        each = screw_pull(
            gravity=woods[part].gravity,
            shank=float(sizes[j.own("shank")]),
            thread=float(reach),
        )
        return (
            Estimate(
                what="pull straight off",
                value=each * choice.count("count"),
                unit="N",
                basis="withdrawal of all threads from side grain, ultimate",
                weakest=f"threads in the {part}",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Slots while the part is loose, pilots through them, fast screws first."""
        del choice, shop, habits
        part, held_at = j.seat("enters").part, self._held_in(j)
        last = "fit guide" if held_at in IN_A_ROW else "fasten top"
        slots = () if held_at == "all" else (operation("cut slot", part),)
        return (
            *slots,
            operation("bore screw hole", part, note="pilots through it into the other part"),
            operation(last, *j.parts, note="fast screws first, the others in mid slot"),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Where each screw stands, the line, hole, slot and screw."""
        row = self.row(j, sizes=sizes, choice=choice)
        corner = j.seat("enters").corner
        words = ("line", "end distance", "clearance", "slot", "screw", "shank")
        return (
            *(
                DrawnSize(
                    word=SAYS[word],
                    value=sizes[j.own(word)],
                    dimension=j.own(word),
                    reference=str(corner.edge) if word == "line" else "",
                )
                for word in words
                if word != "slot" or row.has_slots
            ),
            *(
                DrawnSize(word=f"middle of screw {i + 1}", value=place, reference=str(corner.end))
                for i, place in enumerate(row.places)
            ),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Screws too short, too long, in end grain; slots along the grain that moves."""
        row = self.row(j, sizes=sizes, choice=choice)
        return screw_faults(j, row, sizes=sizes, shop=shop, parts=parts)

    @classmethod
    def bench(cls) -> Bench:
        """A guide 400 by 50 by 25 across the grain of a side 300 by 450 by 19, fast in front."""
        j = Joined(
            name="guide on side",
            joint=cls(count=3),
            seats={
                "enters": (Seat(part="guide"),),
                "receives": (Seat(part="side", along=exactly(120), across=exactly(12)),),
            },
        )
        side = PlannedPart(
            name="side",
            family="side",
            wood="white ash",
            ways=(Way.UP, Way.BACK, Way.LEFT),
            at=(exactly(19), ZERO, ZERO),
        )
        guide = PlannedPart(
            name="guide",
            family="guide",
            wood="yellow-poplar",
            ways=(Way.BACK, Way.UP, Way.LEFT),
            at=(exactly(44), exactly(12), exactly(120)),
        )
        return Bench(
            parts=(side, guide),
            joined=j,
            relations=Relations(),
            stated=(*stated(side, 300, 450, 19), *stated(guide, 400, 50, 25)),
        )


def _length(j: Joined, *, sizes: Sizes, by_inch: bool) -> Fraction:
    """The longest screw sold that goes no deeper than two thirds into the wood. [mm]"""
    thick = (j.thickness("enters").at(sizes), j.thickness("receives").at(sizes))
    sold = [INCH * from_figures(n) for n in LENGTHS_INCH] if by_inch else map(Fraction, LENGTHS_MM)
    lengths = sorted(sold)
    fitting = [length for length in lengths if length <= thick[0] + thick[1] * 2 / 3]
    return fitting[-1] if fitting else lengths[0]


def _behind(j: Joined, parts: Mapping[str, Part]) -> Fraction:
    """Wood of the receiving part in the way of the screws. [mm]"""
    seat, other = j.seat("enters"), parts[j.seat("receives").part]
    axis = seat.way(axis=INTO, part=parts[seat.part]).axis
    return other.extent[[way.axis for way in other.placement.ways].index(axis)]
