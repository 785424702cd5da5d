"""Shiplap: a row of boards that lap over each other by half their thickness, free to move."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._bench import stated
from scantling.joints._frame import leaving
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
    Glue,
    Joined,
    Joint,
    Move,
    Said,
    Seat,
    SeatRole,
    State,
    Strains,
    Woods,
    option,
)
from scantling.joints._lap_faults import lap_faults
from scantling.joints._lap_sizes import EASE, HOLD, gap_needed, lap_relations
from scantling.joints._season import room
from scantling.joints._touch import Block, Meeting, between, contact, meeting
from scantling.parts import ACROSS, ALONG, INTO, Box, Corner, Cut, Part, Point, Span, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO, Linear, exactly
from scantling.sizes.model import Alike, Relations, Sizes
from scantling.units import INCH, Unit

PLANES = (Tool.FILLISTER, Tool.SHOULDER_PLANE)


@dataclass(frozen=True, kw_only=True)
class Shiplap(Joint):
    """Row of boards in which each laps over the edge of the next, with a gap to move in.

    The boards are given in order. In front each keeps its wood to the far edge, behind it keeps
    it to the near edge, so that the next lies behind it; the first and the last have one lap.
    Each is held at mid width by a joint of its own, so half of a board works on either gap.

    References:
        A magazine of 2021 on shiplap (laps of 1/2 in for boards to 4 in, 3/4 in to 8 in);
        gaps, cover and the rest are common practice.
    """

    title: ClassVar[str] = "shiplap"

    gap: Said | None = option(dimension="gap", says="from board to board", reads="gap")
    lap: Said | None = option(dimension="lap", says="width of a lap")
    edge_gap: Said | None = option(dimension="edge gap", says="beside the row", reads="gap")
    deep: Said | None = option(dimension="depth", says="of the front lap, from the face side")

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. Two boards or more, in order; each is counted from its near edge and face side."""
        means = "along: its end; across: the edge towards the board before; into: face side"
        return (SeatRole(role="boards", means=means, least=2, most=None),)

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Gap, lap, depth; the row fills its opening, and holds at both ends of the year."""
        return lap_relations(j, choice=choice, strains=strains)

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
        """3. Lap and gap by the rule of the shop; the thinnest board, whose half is the depth."""
        del habits, woods
        by_inch = shop.unit is Unit.INCH
        thin, gap = 0, INCH / 16 if by_inch else Fraction(3, 2)
        if sizes is not None:
            thick = [sizes[f"{seat.part}.thickness"] for seat in j.row("boards")]
            thin = thick.index(min(thick))
            gap = room(gap, needed=gap_needed(j, strains, sizes=sizes), mark=shop.finest)
        return Choice.of(
            {
                "lap": INCH * 3 / 8 if by_inch else Fraction(9),
                "gap": gap,
                "thinnest": thin,
            }
        )

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Behind at the far edge of all but the last, in front at the near edge of the rest."""
        del choice
        row = j.row("boards")
        found: dict[str, tuple[Cut, ...]] = {seat.part: () for seat in row}
        depth = sizes[j.own("depth")]
        for seat, following in pairwise(row):
            behind, before = Span(depth, None), Span(None, depth)
            found[seat.part] += (self._lap(j, _from_far_edge(seat), "lap", behind, sizes=sizes),)
            found[following.part] += (self._lap(j, following, "under lap", before, sizes=sizes),)
        return found

    def _lap(self, j: Joined, seat: Seat, name: str, into: Span, *, sizes: Sizes) -> Cut:
        word = "into size" if into.start is None else "into start"
        return seat.cut(
            sizes,
            name=name,
            owner=j.name,
            shape=Box(across=Span(None, sizes[j.own("lap")]), into=into),
            sized={"across size": j.own("lap"), word: j.own("depth")},
        )

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: the nails are a joint of their own."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Each board leaves those before it: backwards, onwards, and along."""
        del sizes
        if state is State.LOCKED:
            return ()
        last = j.row("boards")[-1]
        part = parts[last.part]
        along = last.way(axis=ALONG, part=part)
        ways = [last.way(axis=axis, part=part) for axis in (INTO, ACROSS)]
        return leaving("boards", *ways, along, along.opposite)

    def _laps(
        self, j: Joined, *, sizes: Sizes, parts: Mapping[str, Part]
    ) -> Iterator[tuple[Part, Part, Meeting]]:
        """Front tongue of each board on the back tongue of the next."""
        lap, depth, none = sizes[j.own("lap")], sizes[j.own("depth")], Fraction(0)
        for seat, following in pairwise(j.row("boards")):
            one, other = parts[seat.part], parts[following.part]
            wide = one.extent.width

            def tongue(at: Seat, part: Part, low: Point, high: Point) -> Block:
                ends = (at.to_piece(point, sizes=sizes, part=part) for point in (low, high))
                return between(*ends)

            front = tongue(seat, one, (none, wide - lap, none), (one.extent.length, wide, depth))
            thick = other.extent.thickness
            back = tongue(following, other, (none, none, depth), (other.extent.length, lap, thick))
            met = meeting(front, back)
            if met is not None:
                yield one, other, met

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Lap on lap, less the gap; dry, for it must slide."""
        del choice
        return tuple(
            contact(j, one, other, met, zone=f"lap {i + 1}", fit=Fit.FLOAT, glue=Glue.DRY)
            for i, (one, other, met) in enumerate(self._laps(j, sizes=sizes, parts=parts))
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. The board before keeps the next from coming forward, and nothing else."""
        del choice
        seats = {seat.part: seat for seat in j.row("boards")}
        found = []
        for one, other, met in self._laps(j, sizes=sizes, parts=parts):
            forward = seats[other.name].way(axis=INTO, part=other).opposite
            found.append(
                Fixing(
                    between=(one.name, other.name),
                    at=met.middle,
                    holds=frozenset({forward}),
                    free=frozenset(Way) - {forward},
                    by="lap",
                )
            )
        return tuple(found)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Between boards, beside the row, and the cover that a wide gap must leave."""
        del choice
        row = [seat.part for seat in j.row("boards")]
        halves = {part: _half(part) for part in row}
        edges = tuple(
            Gap(
                name=f"{j.own('edge gap')} at {part}",
                at_bench=j.size("edge gap"),
                moving=((part, halves[part]),),
                least=EASE / 2,
                greatest=None,
                because="so that the row never pushes the case apart",
                source="common practice",
                what="room beside the row of boards",
                closed="the row of boards pushes the sides apart",
                cure="Plane the outermost boards narrower.",
            )
            for part in (row[0], row[-1])
        )
        found = []
        for one, other in pairwise(row):
            pair = ((one, halves[one]), (other, halves[other]))
            found.append(
                Gap(
                    name=f"{j.own('gap')} between {one} and {other}",
                    at_bench=j.size("gap"),
                    moving=pair,
                    least=EASE,
                    greatest=None,
                    because="so that the boards never jam",
                    source="common practice",
                    what="gap between boards",
                    closed="the boards jam",
                    cure="Leave wider gaps.",
                )
            )
            found.append(
                Gap(
                    name=f"{j.own('cover')} of {one} over {other}",
                    at_bench=j.size("lap") - j.size("gap"),
                    moving=tuple((part, -width) for part, width in pair),
                    least=HOLD,
                    greatest=None,
                    because="so that no light shows in a dry month",
                    source="common practice",
                    what="cover of the laps",
                    closed="light shows between the boards",
                    cure="Make the laps wider.",
                )
            )
        return (*found, *edges)

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Nothing against racking. [N]"""
        del j, sizes, choice, woods
        return (
            Estimate(
                what="racking of the case",
                value=0.0,
                unit="N",
                basis="boards slide along their laps, and turn about one nail at each bearer",
                weakest="the laps",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Fence and depth held for all front laps, then for all back ones."""
        del choice, habits
        row = [seat.part for seat in j.row("boards")]
        held = shop.first_owned(*PLANES) or PLANES[0]
        wide = SetTo(j.own("lap"), "width of the lap, in from its edge")
        deep = SetTo(j.own("depth"), "depth of the lap", Reference.FACE_SIDE)
        setting = Setting(held_by=held, to=(wide, deep))
        fence = Setting(held_by=held, to=(wide,))
        return (
            operation(
                "cut rabbet",
                *row[1:],
                tool=held,
                setting=setting,
                note="at the near edge, from the face side; all boards at one setting",
                alternatives=PLANES,
            ),
            operation(
                "cut rabbet",
                *row[:-1],
                tool=held,
                setting=fence,
                note="at the far edge, from behind, down to a line gauged from the face side; "
                "the depth stop stays only where that is half the thickness",
                alternatives=PLANES,
            ),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Lap, gap and depth, what is left behind, the cover, and the pitch for the stick."""
        del choice
        words = ("lap", "gap", "edge gap", "depth")
        row, lap, gap = j.row("boards"), sizes[j.own("lap")], sizes[j.own("gap")]
        return (
            *(DrawnSize(word=w, value=sizes[j.own(w)], dimension=j.own(w)) for w in words),
            DrawnSize(word="cover", value=lap - gap),
            *(
                DrawnSize(
                    word=f"pitch from {one.part}",
                    value=sizes[f"{one.part}.width"] - lap + gap,
                    reference="near edge to near edge",
                )
                for one, _ in pairwise(row)
            ),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Thin laps, odd laps, a narrow board, no plane for it."""
        del choice, parts
        return lap_faults(j, sizes=sizes, shop=shop)

    @classmethod
    def bench(cls) -> Bench:
        """Three boards 300 long, 12 and 13 thick, in an opening of 400; the first 150 wide."""
        names = ("board 1", "board 2", "board 3")
        j = Joined(
            name="back boards",
            joint=cls(),
            seats={"boards": tuple(Seat(part=name) for name in names)},
            beside=(
                Beside(
                    what="opening",
                    owner="case",
                    role="boards",
                    axis=ACROSS,
                    start=ZERO,
                    size=exactly(400),
                    depth=ZERO,
                ),
            ),
        )
        boards: list[PlannedPart] = []
        start = j.size("edge gap")
        for name in names:
            board = PlannedPart(
                name=name,
                family="back board",
                wood="yellow-poplar",
                ways=(Way.UP, Way.RIGHT, Way.BACK),
                at=(start, ZERO, ZERO),
            )
            boards.append(board)
            start += board.width - j.size("lap") + j.size("gap")
        sizes = {"board 1": (300, 150, 12), "board 2": (300, None, 13), "board 3": (290, None, 12)}
        widths = ("board 2.width", "board 3.width")
        return Bench(
            parts=tuple(boards),
            joined=j,
            relations=Relations(alike=(Alike(names=widths, because="the rest are alike"),)),
            stated=tuple(s for b in boards for s in stated(b, *sizes[b.name])),
        )


def _from_far_edge(seat: Seat) -> Seat:
    corner = seat.corner
    turned = Corner(end=corner.end, edge=corner.opposite(ACROSS), face=corner.face)
    return replace(seat, corner=turned, across=ZERO)


def _half(part: str) -> Linear:
    return Linear(((f"{part}.width", Fraction(1, 2)),))
