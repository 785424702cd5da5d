"""Rabbet: a step along an edge, in which a back, a bottom or a neighbour lies."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._bench import stated
from scantling.joints._channel import Stops, reach, span_along, stop_relations, stops_of, ways_out
from scantling.joints._frame import LEAST_LIP, fault
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
from scantling.parts import (
    ACROSS,
    ALONG,
    INTO,
    Box,
    Corner,
    Cut,
    Part,
    Span,
    Surface,
    Way,
)
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO, size_of
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

LEAST_LEFT = Fraction(5)  # [mm] of the thickness, beside the rabbet
DEEPEST = Fraction(2, 3)  # [-] of the thickness
WIDE_TO_DEEP = Fraction(3, 2)  # [-] where nothing lies in it to say how wide


@dataclass(frozen=True, kw_only=True)
class Rabbet(Joint):
    """Step along an edge, its width across the face and its depth into the thickness.

    It is counted from the edge and the face that it takes away. What lies in it is let in from
    that face; its thickness runs with the rabbet's width. It may stop short of either end,
    where an open end would show.

    References:
        A maker's newsletter on backs (half the thickness deep); the rest is common practice.
    """

    title: ClassVar[str] = "rabbet"

    wide: Said | None = option(dimension="width", says="across the face", words=("width",))
    deep: Said | None = option(dimension="depth", says="into the thickness", words=("depth",))
    stopped: Stops = "no"
    near_stop: Said | None = option(dimension="near stop", says="wood left at the near end")
    far_stop: Said | None = option(dimension="far stop", says="wood left at the far end")

    @property
    def stops(self) -> tuple[str, ...]:
        """Ends it stops at: "near stop", "far stop"."""
        return stops_of(self.stopped, near=self.near_stop, far=self.far_stop)

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The part with the rabbet, and what lies in it, if anything that is known."""
        return (
            SeatRole(role="receives", means="along: its end; across: the edge; into: the face"),
            SeatRole(role="enters", means="not counted from", least=0, most=None),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Width, depth, and what is left at the ends."""
        del strains
        found = Relations(
            dimensions=(
                Dimension(name=j.own("width"), kind=Kind.TAPE, says=f"width of {j.name}"),
                Dimension(name=j.own("depth"), kind=Kind.TAPE, says=f"depth of {j.name}"),
                Dimension(name=j.own("entry"), kind=Kind.FOLLOWS, says=f"entry of {j.name}"),
            ),
            equations=(
                Equation(
                    sum=j.entry - j.size("depth"),
                    because="what lies in a rabbet may reach to its floor",
                ),
            ),
            bounds=(
                Bound(
                    sum=j.thickness("receives") - j.size("depth") - LEAST_LIP,
                    because="a rabbet leaves a lip of wood that does not break off",
                    place=j.place,
                ),
                Bound(
                    sum=j.width("receives") - j.size("width"),
                    because="a rabbet is narrower than its part",
                    place=j.place,
                ),
            ),
            rules=(
                Rule(
                    sum=j.size("depth") - j.thickness("receives") / 2,
                    because="half the thickness deep",
                    level=Level.RULE,
                    source="a maker's newsletter on backs",
                ),
                self._width_rule(j, choice),
            ),
        )
        return found + stop_relations(
            j,
            self.stops,
            usual=j.thickness("receives") - j.size("depth"),
            because="it stops where the rabbet of a corner as thick would meet it",
            level=Level.RULE,
        )

    def _width_rule(self, j: Joined, choice: Choice) -> Rule:
        row = j.row("enters")
        if not row:
            return Rule(
                sum=j.size("width") - j.size("depth") * WIDE_TO_DEEP,
                because="half as wide again as it is deep",
                level=Level.RULE,
                source="common practice",
            )
        return Rule(
            sum=j.size("width") - size_of(f"{row[0].part}.thickness") - choice["ease"],
            because=f"a little wider than the {row[0].part} is thick",
            level=Level.RULE,
            source="a maker's newsletter on backs",
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
        """3. How much wider it is than what lies in it: at most 1/16 in or 1.5 mm."""
        del j, sizes, woods, strains, habits
        usual = INCH / 16 if shop.unit is Unit.INCH else Fraction(3, 2)
        return Choice.of({"ease": max(usual // shop.finest * shop.finest, shop.finest)})

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. One step along the edge."""
        del choice
        a = j.seat("receives")
        words = {"into size": j.own("depth")}
        if a.across == ZERO:
            words |= {"across size": j.own("width")}
        cut = a.cut(
            sizes,
            name="rabbet",
            owner=j.name,
            shape=Box(
                along=span_along(j, self.stops, sizes=sizes),
                across=Span(None, sizes[j.own("width")]),
                into=Span(None, sizes[j.own("depth")]),
            ),
            shares=frozenset(b.owner for b in j.beside if b.role == "receives"),
            sized=words | ({"along start": j.own("near stop")} if a.along == ZERO else {}),
        )
        return {a.part: (cut,)}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: nails or glue are joints of their own."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Out over the edge, out of the face, and along where it does not stop."""
        del sizes
        if state is State.LOCKED:
            return ()
        part = parts[j.seat("receives").part]
        return ways_out(j, self.stops, part=part, mouths=(ACROSS, INTO))

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. What lies in it meets its floor, its shoulder, or both."""
        del choice
        one = parts[j.seat("receives").part]
        walls = self._walls(j, sizes=sizes, part=one)
        return tuple(
            found
            for seat in j.row("enters")
            for found in against(j, walls, one, parts[seat.part], fit=Fit.TOUCH)
        )

    def _walls(self, j: Joined, *, sizes: Sizes, part: Part) -> tuple[tuple[str, Block], ...]:
        seat = j.seat("receives")
        start, stop = reach(j, self.stops, sizes=sizes, part=part)
        wide, deep, none = sizes[j.own("width")], sizes[j.own("depth")], Fraction(0)

        def wall(across: Fraction, into: Fraction) -> Block:
            ends = ((start, across, into), (stop, wide, deep))
            low, high = (seat.to_piece(p, sizes=sizes, part=part) for p in ends)
            return between(low, high)

        return (("floor", wall(none, deep)), ("shoulder", wall(wide, none)))

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. None of its own: a row of boards tells of its gaps itself."""
        del j, choice
        return ()

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. None: what lies in a rabbet is held by nails or glue."""
        del j, sizes, choice, parts
        return ()

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Nothing by itself."""
        del j, sizes, choice, woods
        return ()

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Planed at one setting of fence and depth; chopped at the ends it stops at."""
        del choice, habits
        part = j.seat("receives").part
        held = shop.first_owned(Tool.FILLISTER, Tool.SHOULDER_PLANE, Tool.CHISEL) or Tool.FILLISTER
        setting = Setting(
            held_by=held,
            to=(
                SetTo(j.own("width"), "width of the rabbet, in from its edge"),
                SetTo(j.own("depth"), "depth of the rabbet, in from its face"),
            ),
        )
        if self.stops:
            return (
                operation(
                    "cut stopped rabbet",
                    part,
                    setting=setting,
                    note="chop the stopped ends 30 to 50 mm long down to depth first",
                ),
            )
        return (operation("cut rabbet", part, tool=held, setting=setting),)

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Width, depth, what is left of the thickness, and the stops."""
        del choice
        words = {"width": "edge", "depth": "face"} | dict.fromkeys(self.stops, "end")
        left = j.thickness("receives").at(sizes) - sizes[j.own("depth")]
        return (
            *(
                DrawnSize(
                    word=word, value=sizes[j.own(word)], dimension=j.own(word), reference=surface
                )
                for word, surface in words.items()
            ),
            DrawnSize(word=f"left in the {j.seat('receives').part}", value=left),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Too deep, too little left, or an open end that shows."""
        del choice
        deep, thick = sizes[j.own("depth")], j.thickness("receives").at(sizes)
        part = j.seat("receives").part
        found = []
        if deep > thick * DEEPEST or thick - deep < LEAST_LEFT:
            least = max(LEAST_LEFT, thick * (1 - DEEPEST))
            found.append(
                fault(
                    j,
                    "rabbet.thin",
                    Weight.MIND,
                    says=f"Little of the {part} is left beside the rabbet.",
                    cure="Make the rabbet shallower, or the part thicker.",
                    figure=thick - deep,
                    limit=least,
                    shop=shop,
                )
            )
        return (*found, *self._shows(j, parts[part]))

    def _shows(self, j: Joined, part: Part) -> tuple[Finding, ...]:
        corner = j.seat("receives").corner
        ends = {"near stop": corner.end, "far stop": corner.opposite(ALONG)}
        return tuple(
            Finding(
                code="rabbet.shows",
                weight=Weight.MIND,
                says=f"The rabbet runs out at the {end} of the {part.name}, which is seen.",
                cure="Let it stop before that end.",
                place=j.place,
                source="common practice",
                parts=j.parts,
            )
            for word, end in ends.items()
            if word not in self.stops and end in part.show
        )

    @classmethod
    def bench(cls) -> Bench:
        """A side 300 by 280 by 19, a back 12 thick let in from behind, 1 short of the floor."""
        j = Joined(
            name="back in side",
            joint=cls(),
            seats={
                "receives": (Seat(part="side", corner=Corner(edge=Surface.BACK_EDGE)),),
                "enters": (Seat(part="back"),),
            },
        )
        side = PlannedPart(
            name="side",
            family="side",
            wood="white ash",
            ways=(Way.UP, Way.BACK, Way.LEFT),
            at=(j.thickness("receives"), ZERO, ZERO),
        )
        back = PlannedPart(
            name="back",
            family="back",
            wood="yellow-poplar",
            ways=(Way.UP, Way.RIGHT, Way.BACK),
            at=(side.thickness - j.entry + 1, side.width - j.size("width"), ZERO),
        )
        return Bench(
            parts=(side, back),
            joined=j,
            relations=Relations(),
            stated=(*stated(side, 300, 280, 19), *stated(back, 260, 150, 12)),
        )
