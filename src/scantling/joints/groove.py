"""Groove: a channel along the grain, in an edge or a face, that takes another part."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar, Literal

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._bench import stated
from scantling.joints._channel import Stops, reach, span_along, stop_relations, stops_of, ways_out
from scantling.joints._groove_faults import groove_faults
from scantling.joints._groove_holds import groove_holds
from scantling.joints._joint import (
    Bench,
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
    Said,
    Seat,
    SeatRole,
    State,
    Strains,
    Woods,
    option,
)
from scantling.joints._touch import Block, against, between
from scantling.parts import ACROSS, INTO, Box, Corner, Cut, Part, Point, Span, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool, nearest_owned, whole_depth
from scantling.sizes.linear import ZERO, Linear, exactly, size_of
from scantling.sizes.model import (
    Bound,
    Dimension,
    Equation,
    Kind,
    Level,
    Relations,
    Rule,
    Sizes,
)
from scantling.units import INCH, Unit


@dataclass(frozen=True, kw_only=True)
class Groove(Joint):
    """Channel along the grain that takes the thickness of another part, or waits for a tongue.

    In an edge it is counted from that edge, and from the wall nearer the face side; in a face
    from that face, and from the wall nearer the edge. What goes in is as thick as the groove is
    wide; where nothing is named, the width is that of an iron owned.

    References:
        Handwork in Wood, 1910 (a groove about as deep as wide); the rest is common practice.
    """

    title: ClassVar[str] = "groove"

    surface: Literal["edge", "face"] = "edge"
    entry: Said | None = option(
        dimension="entry", says="how far the other part goes in", words=("deep",)
    )
    wide: Said | None = option(dimension="width", says="from wall to wall", words=("width",))
    floor_gap: Said | None = option(dimension="floor gap", says="room at the floor", reads="gap")
    stopped: Stops = "no"
    near_stop: Said | None = option(dimension="near stop", says="wood left at the near end")
    far_stop: Said | None = option(dimension="far stop", says="wood left at the far end")

    @property
    def stops(self) -> tuple[str, ...]:
        """Ends it stops at: "near stop", "far stop"."""
        return stops_of(self.stopped, near=self.near_stop, far=self.far_stop)

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The grooved part, and what goes in, if it is known."""
        return (
            SeatRole(
                role="receives",
                means="along: its end; across and into: the open surface and the nearer wall",
            ),
            SeatRole(role="enters", means="not counted from", least=0),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Width, entry and depth, and what is left at the ends."""
        del strains  # what moves in a groove is the matter of who put it there
        ends = stop_relations(
            j, self.stops, usual=exactly(choice["stop"]), because="usual", level=Level.HABIT
        )
        return self._width(j, choice) + self._depth(j, choice) + ends

    def _width(self, j: Joined, choice: Choice) -> Relations:
        row = j.row("enters")
        name, says = j.own("width"), f"width of {j.name}"
        if row:
            mate = size_of(f"{row[0].part}.thickness")
            because = f"the groove is as wide as the {row[0].part} is thick"
            return Relations(
                dimensions=(Dimension(name=name, kind=Kind.MATE, says=says),),
                equations=(Equation(sum=j.size("width") - mate, because=because),),
            )
        return Relations(
            dimensions=(Dimension(name=name, kind=Kind.TOOL, says=says),),
            rules=(
                Rule(
                    sum=j.size("width") - self._iron(j, choice),
                    because="about a third of the thickness, by an iron that is owned",
                    level=Level.RULE,
                    source="common practice",
                ),
            ),
        )

    def _iron(self, j: Joined, choice: Choice) -> Linear:
        return exactly(choice["iron"]) if "iron" in choice else j.thickness("receives") / 3

    def _depth(self, j: Joined, choice: Choice) -> Relations:
        in_edge = self.surface == "edge"
        third = exactly(choice["third"]) if "third" in choice else j.thickness("receives") / 3
        whole = j.width("receives") if in_edge else j.thickness("receives")
        return Relations(
            dimensions=(
                Dimension(name=j.own("entry"), kind=Kind.TAPE, says=f"entry of {j.name}"),
                Dimension(
                    name=j.own("floor gap"),
                    kind=Kind.TAPE,
                    says=f"room at the floor of {j.name}",
                    positive=False,
                ),
                Dimension(name=j.own("depth"), kind=Kind.FOLLOWS, says=f"depth of {j.name}"),
            ),
            equations=(
                Equation(
                    sum=j.size("depth") - j.entry - j.size("floor gap"),
                    because="a groove is deeper than what goes in by the room at its floor",
                ),
            ),
            bounds=(
                Bound(
                    sum=whole - j.size("depth"),
                    because="a groove does not go through its part",
                    place=j.place,
                ),
            ),
            rules=(
                Rule(
                    sum=j.entry - (j.size("width") if in_edge else third),
                    because="as deep as wide" if in_edge else "a third of the thickness",
                    level=Level.RULE,
                    source="Handwork in Wood, 1910" if in_edge else "common practice",
                ),
                Rule(
                    sum=j.size("floor gap"),
                    because="what goes in reaches the floor",
                    source="common practice",
                ),
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
        """3. An iron from a quarter to a half of the thickness, nearest a third; depth and stop."""
        del habits, woods, strains
        found = {"stop": INCH / 2 if shop.unit is Unit.INCH else Fraction(12)}
        if sizes is not None:
            thick = j.thickness("receives").at(sizes)
            found["third"] = whole_depth(thick / 3, unit=shop.unit) or thick / 3
            iron = nearest_owned(thick / 3, shop.groove_sizes, low=thick / 4, high=thick / 2)
            if iron is not None:
                found["iron"] = iron.size
        return Choice.of(found)

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. One channel."""
        del choice
        a = j.seat("receives")
        wide = Span(Fraction(0), sizes[j.own("width")])
        deep = Span(None, sizes[j.own("depth")])
        in_edge = self.surface == "edge"
        words = ("across size", "into size") if in_edge else ("into size", "across size")
        sized = {words[0]: j.own("depth"), words[1]: j.own("width")}
        cut = a.cut(
            sizes,
            name="groove",
            owner=j.name,
            shape=Box(
                along=span_along(j, self.stops, sizes=sizes),
                across=deep if in_edge else wide,
                into=wide if in_edge else deep,
            ),
            shares=frozenset(b.owner for b in j.beside if b.role == "receives"),
            sized=sized | ({"along start": j.own("near stop")} if a.along == ZERO else {}),
        )
        return {a.part: (cut,)}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Out of the open side, and along where it does not stop."""
        del sizes
        if state is State.LOCKED:
            return ()
        part = parts[j.seat("receives").part]
        mouth = ACROSS if self.surface == "edge" else INTO
        return ways_out(j, self.stops, part=part, mouths=(mouth,))

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Floor, where it is reached, and both walls."""
        del choice
        one = parts[j.seat("receives").part]
        walls = self._walls(j, sizes=sizes, part=one)
        return tuple(
            found
            for seat in j.row("enters")
            for found in against(j, walls, one, parts[seat.part], fit=Fit.SLIDE)
        )

    def _walls(self, j: Joined, *, sizes: Sizes, part: Part) -> tuple[tuple[str, Block], ...]:
        seat = j.seat("receives")
        start, stop = _between_tenons(j, reach(j, self.stops, sizes=sizes, part=part), sizes=sizes)
        wide, deep, none = sizes[j.own("width")], sizes[j.own("depth")], Fraction(0)

        def corner(along: Fraction, place: Fraction, down: Fraction) -> Point:
            two = (down, place) if self.surface == "edge" else (place, down)
            return seat.to_piece((along, *two), sizes=sizes, part=part)

        return (
            ("floor", between(corner(start, none, deep), corner(stop, wide, deep))),
            ("near wall", between(corner(start, none, none), corner(stop, none, deep))),
            ("far wall", between(corner(start, wide, none), corner(stop, wide, deep))),
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. None: who puts something in a groove says whether it is glued."""
        del j, sizes, choice, parts
        return ()

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room at the floor."""
        del choice
        return (
            Gap(
                name=j.own("floor gap"),
                at_bench=j.size("floor gap"),
                moving=(),
                least=Fraction(0),
                greatest=None,
                because="what goes in may stand on the floor, never through it",
            ),
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Push against either wall and onto the floor, for each mm of length. [N/mm]"""
        del choice
        in_edge = self.surface == "edge"
        return groove_holds(j, in_edge=in_edge, sizes=sizes, woods=woods)

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Ploughed at one setting; the ends it stops at are chopped first."""
        del choice, shop, habits
        return (
            operation(
                "plough groove",
                j.seat("receives").part,
                setting=Setting(
                    held_by=Tool.PLOUGH, to=(SetTo(j.own("depth"), "depth of the groove"),)
                ),
                note="chop the stopped ends down to depth first" if self.stops else "",
                alternatives=(Tool.ROUTER_PLANE, Tool.CHISEL),
            ),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Width and depth, and the wood left beside it."""
        del choice
        words = ("width", "depth", *self.stops)
        return (
            *(DrawnSize(word=w, value=sizes[j.own(w)], dimension=j.own(w)) for w in words),
            *(DrawnSize(word=word, value=left) for word, left in self._left(j, sizes=sizes)),
        )

    def _left(self, j: Joined, *, sizes: Sizes) -> tuple[tuple[str, Fraction], ...]:
        """Wood left beside a groove in an edge, behind one in a face. [mm]"""
        thick = j.thickness("receives").at(sizes)
        if self.surface == "face":
            return (("left behind", thick - sizes[j.own("depth")]),)
        before = j.seat("receives").into.at(sizes)
        return (
            ("near wall", before),
            ("far wall", thick - before - sizes[j.own("width")]),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Thin walls, a thin floor, a width that no iron cuts."""
        del choice, parts
        left = self._left(j, sizes=sizes)
        return groove_faults(j, left, in_edge=self.surface == "edge", sizes=sizes, shop=shop)

    @classmethod
    def bench(cls) -> Bench:
        """A kicker 300 by 75 by 38, grooved beneath for the end of a partition 19 thick."""
        j = Joined(
            name="partition in kicker",
            joint=cls(surface="face"),
            seats={
                "receives": (
                    Seat(part="kicker", corner=Corner(face=Surface.BACK_FACE), across=exactly(30)),
                ),
                "enters": (Seat(part="partition", corner=Corner(end=Surface.FAR_END)),),
            },
        )
        kicker = PlannedPart(
            name="kicker",
            family="kicker",
            wood="yellow-poplar",
            ways=(Way.BACK, Way.RIGHT, Way.DOWN),
            at=(ZERO, ZERO, exactly(150)),
        )
        partition = PlannedPart(
            name="partition",
            family="partition",
            wood="white ash",
            ways=(Way.UP, Way.BACK, Way.RIGHT),
            at=(
                exactly(30),
                exactly(20),
                exactly(150) - kicker.thickness + j.entry - size_of("partition.length"),
            ),
        )
        return Bench(
            parts=(kicker, partition),
            joined=j,
            relations=Relations(),
            stated=(*stated(kicker, 300, 75, 38), *stated(partition, 110, 250, 19)),
        )


def _between_tenons(
    j: Joined, ends: tuple[Fraction, Fraction], *, sizes: Sizes
) -> tuple[Fraction, Fraction]:
    """Where the groove has walls: it runs out through tenons at the ends of its part. [mm]"""
    start, stop = ends
    for tenon in j.neighbours("tenon", role="receives"):
        first = tenon.start.at(sizes)
        last = first + tenon.size.at(sizes)
        if first <= start:
            start = max(start, last)
        else:
            stop = min(stop, first)
    return start, stop
