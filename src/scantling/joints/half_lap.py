"""Half lap: two parts flush, each giving up half its thickness where they cross."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar, Literal

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import (
    LEAST_LIP,
    Patch,
    Range,
    common,
    fault,
    frame_bench,
    glued_at,
    is_at_end,
    leaving,
    out_of_mouth,
    surfaces,
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
    Glue,
    Joined,
    Joint,
    Move,
    Said,
    SeatRole,
    State,
    Strains,
    Woods,
    option,
    rectangle,
)
from scantling.parts import ACROSS, ALONG, INTO, Box, Cut, Extent, Part, Span
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO
from scantling.sizes.model import Bound, Dimension, Equation, Kind, Level, Relations, Rule, Sizes

LEAST_LEFT = Fraction(5)  # [mm] wood kept in a half
WIDEST_GLUED = Fraction(75)  # [mm] across the grain
MEAN_RADIUS = 0.38  # of a square lap, from its middle, over its side


@dataclass(frozen=True, kw_only=True)
class HalfLap(Joint):
    """Two parts flush on their face sides, each halved where they cross; corner or tee.

    The entering part comes over the receiving part's edge (across 0) as far as the far edge, or
    as far as the maker says: then the lap is stopped. Depth is counted from the face side for
    both, so that one gauge setting serves both halves and the faces come flush even if it is off.

    References:
        Handwork in Wood, 1910, on the halved joint; the rest is common practice.
    """

    title: ClassVar[str] = "half lap"

    lap: Said | None = option(dimension="entry", says="how far a stopped lap reaches")
    deep: Said | None = option(dimension="depth", says="depth of the lap from the face side")
    over: Literal["receives", "enters"] = "receives"  # whose wood shows in front

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The part lapped over, and the one whose end is lapped."""
        return (
            SeatRole(
                role="receives",
                means="along: near edge of the other; across: edge it comes over; into: face side",
            ),
            SeatRole(role="enters", means="along: its end; across: its near edge; into: face side"),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Lap and depth."""
        del strains  # both widths are glued: nothing to leave open
        past = j.width("receives") - j.entry
        if self.lap is None:
            kind = Kind.MATE
            reach = Relations(
                equations=(Equation(sum=past, because="the lap is as long as the mate is wide"),)
            )
        else:
            kind = Kind.TAPE
            inside = Bound(sum=past, because="a lap ends within its mate", place=j.place)
            reach = Relations(bounds=(inside,))
        entry = Dimension(name=j.own("entry"), kind=kind, says=f"lap of {j.name}")
        return Relations(dimensions=(entry,)) + reach + self._depth(j, choice)

    def _depth(self, j: Joined, choice: Choice) -> Relations:
        thinner = ("receives", "enters")[choice.count("thinner") if "thinner" in choice else 0]
        return Relations(
            dimensions=(
                Dimension(
                    name=j.own("depth"), kind=Kind.TAPE, says=f"depth of the lap of {j.name}"
                ),
            ),
            bounds=tuple(
                Bound(
                    sum=j.thickness(role) - j.size("depth") - LEAST_LIP,
                    because="a lap leaves a lip of wood that does not break off",
                    place=j.place,
                )
                for role in ("receives", "enters")
            ),
            rules=(
                Rule(
                    sum=2 * j.size("depth") - j.thickness(thinner),
                    because="half the thickness of the thinner part",
                    level=Level.RULE,
                    source="Handwork in Wood, 1910",
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
        """3. Which of the two is thinner: 0 the receiving part, 1 the entering one."""
        del habits, shop, woods, strains
        if sizes is None:
            return Choice.of({"thinner": 0})
        return Choice.of(
            {"thinner": int(j.thickness("enters").at(sizes) < j.thickness("receives").at(sizes))}
        )

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. The back half of one, the front half of the other."""
        del choice
        depth = sizes[j.own("depth")]
        front, back = Span(None, depth), Span(depth, None)
        taken, given = (back, front) if self.over == "receives" else (front, back)
        b = j.seat("enters").part
        reach = sizes[j.own("entry")]
        stopped = reach < j.width("receives").at(sizes)
        notch = Box(
            along=Span(None if is_at_end(j) else Fraction(0), j.width("enters").at(sizes)),
            across=Span(None, reach) if stopped else Span(),
            into=taken,
        )
        words = {"along size": f"{b}.width"} | ({"across size": j.own("entry")} if stopped else {})
        tongue = Box(along=Span(None, reach), into=given)
        return {
            j.seat("receives").part: (self._cut(j, "receives", notch, words, sizes=sizes),),
            b: (self._cut(j, "enters", tongue, {"along size": j.own("entry")}, sizes=sizes),),
        }

    def _cut(
        self, j: Joined, role: str, shape: Box, words: Mapping[str, str], *, sizes: Sizes
    ) -> Cut:
        seat = j.seat(role)
        # a set-back part is not gauged from the joint's own face
        flush = {"into size" if shape.into.start is None else "into start": j.own("depth")}
        return seat.cut(
            sizes,
            name="lap",
            owner=j.name,
            shape=shape,
            sized=dict(words) | (flush if seat.into == ZERO else {}),
        )

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: glue alone holds it."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Off the face it lies on, out over the edge, and out past the end at a corner."""
        del sizes
        if state is State.LOCKED:
            return ()
        a = j.seat("receives")
        part = parts[a.part]
        backward = a.way(axis=INTO, part=part)
        ways = [
            backward if self.over == "receives" else backward.opposite,
            out_of_mouth(j, parts),
        ]
        if is_at_end(j):
            ways.append(a.way(axis=ALONG, part=part).opposite)
        return leaving("enters", *ways)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. The lap itself, and the shoulders on end grain."""
        del choice
        depth = sizes[j.own("depth")]
        along = (Fraction(0), j.width("enters").at(sizes))
        across = (Fraction(0), sizes[j.own("entry")])
        kept, taken = self._kept_and_taken(j, sizes=sizes, parts=parts)
        flat = rectangle(axis=INTO, at=depth, first=along, second=across)
        found = [Patch(zone="lap", glue=Glue.CROSSING, points=flat)]
        if kept:
            found.append(_on_end_grain("shoulder", ACROSS, across[0], along, kept))
        if taken:
            walls = along[1:] if is_at_end(j) else along
            found += [_on_end_grain("wall", ALONG, wall, across, taken) for wall in walls]
            if across[1] < j.width("receives").at(sizes):
                found.append(_on_end_grain("end", ACROSS, across[1], along, taken))
        return touching(j, found, sizes=sizes, parts=parts)

    def _kept_and_taken(
        self, j: Joined, *, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Range | None, Range | None]:
        """Thickness in which only the receiving part stands there, and only the entering one."""
        depth = sizes[j.own("depth")]
        both = common(*surfaces(j, sizes=sizes, parts=parts))
        if both is None:
            return None, None
        front, back = common(both, (both[0], depth)), common(both, (depth, both[1]))
        return (front, back) if self.over == "receives" else (back, front)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Glued in the middle of the lap, every way."""
        del choice
        middle = (
            j.width("enters").at(sizes) / 2,
            sizes[j.own("entry")] / 2,
            sizes[j.own("depth")],
        )
        return glued_at(j, middle, sizes=sizes, parts=parts)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. None: it is closed all round."""
        del j, choice
        return ()

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Twist in the plane of the lap, by the glue. [N m]

        A third of the weaker wood's shear strength, over the lap, at the mean distance of its
        points from the middle, which is 0.3826 of the side of a square.

        References:
            FPL 1522, rule for glue lines with crossing grain; the model is an estimate of ours.
        """
        del choice
        shear = weakest_shear(j, woods)
        if shear is None:
            return ()
        area = float(j.width("enters").at(sizes) * sizes[j.own("entry")])
        moment = shear / 3 * area * MEAN_RADIUS * area**0.5 / 1000
        return (
            Estimate(
                what="twist in the plane of the lap",
                value=moment,
                unit="N m",
                basis="a third of the shear strength over the lap, at its mean radius",
                weakest="glue between crossing grain",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Shoulders from the mate, one gauge setting for both halves, then the laps."""
        del choice, habits
        a, b = j.seat("receives").part, j.seat("enters").part
        gauge = shop.first_owned(Tool.WHEEL_GAUGE, Tool.PIN_GAUGE, Tool.CUTTING_GAUGE)
        held = gauge or Tool.PIN_GAUGE
        depth = Setting(
            held_by=held, to=(SetTo(j.own("depth"), "floor of the lap", Reference.FACE_SIDE),)
        )
        return (
            operation("transfer", a, note="width of the lap from the mate, laid on"),
            operation("transfer", b, note="shoulder from the mate, laid on"),
            operation(
                "gauge joint",
                a,
                b,
                tool=held,
                setting=depth,
                note="one setting for both, from both face sides; the gauge is not let go between",
            ),
            operation("cut lap", a, note="the back" if self.over == "receives" else "the front"),
            operation("cut lap", b, note="the front" if self.over == "receives" else "the back"),
            operation("fit joint", b, a, note="face sides flush, shoulders closed"),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. What is left in each half."""
        del choice
        depth = sizes[j.own("depth")]
        left = self._left(j, sizes=sizes)
        return (
            DrawnSize(
                word="lap depth", value=depth, dimension=j.own("depth"), reference="face side"
            ),
            *(DrawnSize(word=f"left in {part}", value=value) for part, value in left.items()),
        )

    def _left(self, j: Joined, *, sizes: Sizes) -> dict[str, Fraction]:
        """Thickness kept in each half. [mm]"""
        depth = sizes[j.own("depth")]
        found = {}
        for role in ("receives", "enters"):
            seat = j.seat(role)
            front = depth + seat.into.at(sizes)
            thick = j.thickness(role).at(sizes)
            found[seat.part] = front if role == self.over else thick - front
        return found

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Halves too thin, laps too short, laps too wide to glue across the grain."""
        del choice, parts
        lap, wide = sizes[j.own("entry")], j.width("receives").at(sizes)
        found = [
            fault(
                j,
                "half-lap.thin",
                Weight.MIND,
                says=f"The half left in the {part} is thin and may break before it is glued.",
                cure="Use thicker stock, or cut the other half deeper.",
                figure=left,
                limit=LEAST_LEFT,
                shop=shop,
            )
            for part, left in self._left(j, sizes=sizes).items()
            if left < LEAST_LEFT
        ]
        if lap < wide / 2:
            found.append(self._short(j, lap=lap, least=wide / 2, shop=shop))
        across = min(lap, j.width("enters").at(sizes))
        if across > WIDEST_GLUED:
            found.append(self._wide(j, across=across, shop=shop))
        return tuple(found)

    def _short(self, j: Joined, *, lap: Fraction, least: Fraction, shop: Shop) -> Finding:
        return fault(
            j,
            "half-lap.short",
            Weight.MIND,
            says="The stopped lap reaches less than half way over its mate.",
            cure="Let it reach the middle, or go right through.",
            figure=lap,
            limit=least,
            shop=shop,
        )

    def _wide(self, j: Joined, *, across: Fraction, shop: Shop) -> Finding:
        return fault(
            j,
            "half-lap.wide-glue",
            Weight.MIND,
            says="The lap is wide for grain glued across grain and may let go at its edges.",
            cure="Make one of the parts narrower, or join them with divided tenons.",
            figure=across,
            limit=WIDEST_GLUED,
            shop=shop,
        )

    @classmethod
    def bench(cls) -> Bench:
        """A corner: stile 45 by 20, rail 60 by 22. [mm]"""
        return frame_bench(
            cls(),
            name="rail on stile",
            stile=Extent(length=Fraction(300), width=Fraction(45), thickness=Fraction(20)),
            rail=Extent(length=Fraction(240), width=Fraction(60), thickness=Fraction(22)),
        )


def _on_end_grain(zone: str, axis: int, at: Fraction, first: Range, into: Range) -> Patch:
    points = rectangle(axis=axis, at=at, first=first, second=into)
    return Patch(zone=zone, glue=Glue.END_GRAIN, points=points)
