"""One nail at mid width: boards of a row, each held at its middle and free to either side."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import ClassVar

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
from scantling.joints._nail_faults import behind, least_nail, nail_faults, off
from scantling.joints._strength import nail_pull
from scantling.joints._touch import between, block, contact, meeting
from scantling.parts import ACROSS, ALONG, INTO, Bore, Cut, Part, Span, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, operation
from scantling.shop.tools import Shop
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import Bound, Dimension, Kind, Relations, Rule, Sizes
from scantling.units import INCH, Unit

PILOT = Fraction(9, 10)  # [-] of the nail, largest hole bored for it
DRAWN_OVER = Fraction(51, 100)  # [-] half a hole, drawn a little larger than its circle
LENGTHS_MM = (20, 25, 30, 35, 40, 50, 60)  # as nails are sold
LENGTHS_INCH = ("3/4", "1", "5/4", "3/2", "2", "5/2")


SAYS = {
    "nail": "length of the nails",
    "shank": "thickness of the nails",
    "pilot": "holes bored for the nails",
}


@dataclass(frozen=True, kw_only=True)
class OneNailAtMidWidth(Joint):
    """Each board of a row is held to a bearer by one nail in the middle of its width.

    So every board swells and shrinks to both sides of its nail and none splits. The nail goes in
    from behind, through a pilot hole in the board, and is counted in the seat of the board,
    whose origin lies where it leaves the board's face.

    References:
        Wood Handbook, FPL-GTR-190, 2010, ch. 8 (withdrawal); a nail stands no nearer the edge
        than half, no nearer the end than the whole thickness: the same; the rest common practice.
    """

    title: ClassVar[str] = "one nail at mid width"

    nail: Said | None = option(dimension="nail", says="length of a nail")
    shank: Said | None = option(dimension="shank", says="thickness of a nail")

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The boards, each counted from its nail, and the bearer behind their faces."""
        return (
            SeatRole(role="enters", means="from where the nail leaves the face", most=None),
            SeatRole(role="receives", means="not counted from"),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. The nail and its pilot; nothing moves at a nail."""
        del strains
        return Relations(
            dimensions=tuple(
                Dimension(name=j.own(word), kind=Kind.TOOL, says=f"{text}, {j.name}")
                for word, text in SAYS.items()
            ),
            bounds=(
                Bound(
                    sum=j.size("shank") * PILOT - j.size("pilot"),
                    because="a nail is thicker than the hole bored for it",
                    place=j.place,
                ),
            ),
            rules=tuple(
                Rule(sum=j.size(word) - choice[word], because="usual", source="common practice")
                for word in SAYS
            ),
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
        """3. A nail two and a half times the board, and the largest drill that leaves it a hold."""
        del habits, woods, strains
        by_inch = shop.sold_in is Unit.INCH
        usual = INCH * 5 / 64 if by_inch else Fraction(2)
        thin = sizes[j.own("shank")] if sizes is not None else usual
        drills = [size for size in shop.bores if size <= thin * PILOT]
        found = {"shank": usual, "pilot": drills[-1] if drills else thin * PILOT}
        sold = (
            [INCH * from_figures(n) for n in LENGTHS_INCH] if by_inch else map(Fraction, LENGTHS_MM)
        )
        lengths = tuple(sold)
        least = least_nail(j, sizes=sizes) if sizes is not None else lengths[0]
        found["nail"] = next((length for length in lengths if length >= least), lengths[-1])
        return Choice.of(found)

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. A pilot hole through each board."""
        del choice
        bore = Bore(
            axis=INTO,
            centre=(Fraction(0), Fraction(0)),
            radius=sizes[j.own("pilot")] / 2,
            span=Span(),
        )
        sized = {"diameter": j.own("pilot")}
        return {
            seat.part: (seat.cut(sizes, name="pilot", owner=j.name, shape=bore, sized=sized),)
            for seat in j.row("enters")
        }

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. The nails, their heads flush with the boards' backs."""
        del choice
        found = []
        for i, seat in enumerate(j.row("enters")):
            part = parts[seat.part]
            head = (Fraction(0), Fraction(0), part.extent.thickness)
            up, over, out = (seat.way(axis=axis, part=part) for axis in (ALONG, ACROSS, INTO))
            found.append(
                shank(
                    f"{j.name}, nail {i + 1}",
                    family="nail",
                    head=seat.to_piece(head, sizes=sizes, part=part),
                    ways=(out.opposite, up, over),
                    length=sizes[j.own("nail")],
                    across=sizes[j.own("shank")],
                )
            )
        return tuple(found)

    def presses(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Press, ...]:
        """5, too. Each nail in its board, and in the bearer."""
        found = []
        bearer = j.seat("receives").part
        nails = self.loose(j, sizes=sizes, choice=choice, parts=parts)
        thick, hole = sizes[j.own("shank")], sizes[j.own("pilot")]
        for nail, seat in zip(nails, j.row("enters"), strict=True):
            board = parts[seat.part].extent.thickness
            two = (parts[seat.part], parts[bearer])
            reach = min(nail.extent.length - board - off(seat, *two), behind(seat, *two))
            for part, bored, deep in ((seat.part, hole, board), (bearer, Fraction(0), reach)):
                if deep > 0:
                    found.append(
                        Press(
                            between=(nail.name, part),
                            volume=pressed(across=thick, hole=bored, length=deep),
                            because="the nail is driven",
                        )
                    )
        return tuple(found)

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Straight off the bearer; once nailed, not before the nails are drawn."""
        del sizes
        first = j.row("enters")[0]
        away = leaving("enters", first.way(axis=INTO, part=parts[first.part]))
        if state is State.OPEN:
            return away
        return tuple(replace(move, unlocked_by="nails") for move in away)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Each board on the bearer, over the middle half that no lap reaches; dry."""
        del choice
        other = parts[j.seat("receives").part]
        half = sizes[j.own("pilot")] * DRAWN_OVER
        found = []
        for seat in j.row("enters"):
            part = parts[seat.part]
            quarter = part.extent.width / 4
            foot = -seat.along.at(sizes)
            for side, (start, stop) in enumerate(((-quarter, -half), (half, quarter))):
                ends = ((foot, start), (foot + part.extent.length, stop))
                low, high = (
                    seat.to_piece((x, y, z), sizes=sizes, part=part)
                    for (x, y), z in zip(ends, (Fraction(0), part.extent.thickness), strict=True)
                )
                met = meeting(between(low, high), block(other))
                if met is not None:
                    zone = f"{part.name}, side {side + 1}"
                    found.append(
                        contact(j, part, other, met, zone=zone, fit=Fit.TOUCH, glue=Glue.DRY)
                    )
        return tuple(found)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Each board at its nail, every way."""
        del choice
        none = (Fraction(0), Fraction(0), Fraction(0))
        return tuple(
            Fixing(
                between=(seat.part, j.seat("receives").part),
                at=seat.to_piece(none, sizes=sizes, part=parts[seat.part]),
                holds=frozenset(Way),
                free=frozenset(),
                by="nail",
            )
            for seat in j.row("enters")
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. None: the row tells of the gaps between its boards."""
        del j, choice
        return ()

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Pull on one board, straight off. [N]

        References:
            Wood Handbook, FPL-GTR-190, 2010, ch. 8: withdrawal of nails from side grain,
            54.12 G^2.5 D L in N and mm; ultimate, to be divided for design.
        """
        del choice
        bearer = j.seat("receives").part
        if bearer not in woods:
            return ()
        thick = max(sizes[f"{seat.part}.thickness"] for seat in j.row("enters"))
        reach = max(sizes[j.own("nail")] - thick, Fraction(0))
        return (
            Estimate(
                what="pull on one board, straight off",
                value=nail_pull(
                    gravity=woods[bearer].gravity,
                    shank=float(sizes[j.own("shank")]),
                    deep=float(reach),
                ),
                unit="N",
                basis="withdrawal of a nail from side grain, ultimate",
                weakest=f"the nail's hold in the {bearer}",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Pilot in each board, then one board after the other."""
        del choice, shop, habits
        boards = tuple(seat.part for seat in j.row("enters"))
        bearer = j.seat("receives").part
        pilots = operation("bore screw hole", *boards, note="pilots for the nails, at mid width")
        return (pilots, *(operation("fit back board", board, bearer) for board in boards))

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. The nail, its pilot, and where it stands in each board."""
        del choice
        return (
            *(
                DrawnSize(word=says, value=sizes[j.own(word)], dimension=j.own(word))
                for word, says in SAYS.items()
            ),
            *(
                DrawnSize(word=f"{seat.part}, {word}", value=value, reference=surface)
                for seat in j.row("enters")
                for word, value, surface in (
                    ("along", seat.along.at(sizes), seat.corner.end),
                    ("across", seat.across.at(sizes), seat.corner.edge),
                )
            ),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Nails off the middle, near an end, too short, or through the bearer."""
        del choice
        return nail_faults(j, sizes=sizes, shop=shop, parts=parts)

    @classmethod
    def bench(cls) -> Bench:
        """Two boards 100 and 120 wide, 12 and 13 thick, on the back edge of a rail."""
        widths = {"board 1": 100, "board 2": 120}
        thick = {"board 1": 12, "board 2": 13}
        starts = {"board 1": 0, "board 2": 102}
        boards = tuple(
            PlannedPart(
                name=name,
                family="back board",
                wood="yellow-poplar",
                ways=(Way.UP, Way.RIGHT, Way.BACK),
                at=(exactly(starts[name]), exactly(60), ZERO),
            )
            for name in widths
        )
        rail = PlannedPart(
            name="rail",
            family="rail",
            wood="white ash",
            ways=(Way.RIGHT, Way.BACK, Way.UP),
            at=(ZERO, ZERO, exactly(150)),
        )
        j = Joined(
            name="boards on rail",
            joint=cls(),
            seats={
                "enters": tuple(
                    Seat(part=b.name, along=exactly(150) + rail.thickness / 2, across=b.width / 2)
                    for b in boards
                ),
                "receives": (Seat(part="rail"),),
            },
        )
        return Bench(
            parts=(*boards, rail),
            joined=j,
            relations=Relations(),
            stated=(
                *stated(rail, 230, 60, 19),
                *(s for b in boards for s in stated(b, 250, widths[b.name], thick[b.name])),
            ),
        )
