"""Sliding dovetail: a tail along the end of one part, slid into a socket across another."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault, glued_at, leaving, touching, weakest_shear
from scantling.joints._housed import (
    HOUSED_SEATS,
    depth_faults,
    end_faults,
    housed_bench,
    housed_choice,
    housed_relations,
    leaving_ways,
    run,
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
    option,
)
from scantling.joints._short import missing, reached
from scantling.joints._sliding import Tail, tail_cuts, tail_patches
from scantling.parts import INTO, Cut, Extent, Part
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.model import Dimension, Equation, Kind, Relations, Rule, Sizes
from scantling.timber.species import Kind as WoodKind
from scantling.units import INCH, Unit

STEEPEST = Fraction(1, 5)  # [-]
TAPER = Fraction(1, 128)  # [-] of the length, on one flank
LONGEST_STRAIGHT = Fraction(200)  # [mm] tapered beyond, when the joint may choose
LONGEST_BY_HAND = Fraction(250)  # [mm] straight beyond, it seizes
FAT = Fraction(1, 10)  # [mm] by which a tail is tried too fat


@dataclass(frozen=True, kw_only=True)
class SlidingDovetail(Joint):
    """Tail along the end of a part that slides into a socket of its shape; ties two parts.

    It goes in from behind and holds against pulling apart. Long ones are tapered on the near
    flank, widest behind, so that they close only at the last; the far flank stays square to the
    edge. A stopped one does not show in front: the tail is notched round the stop.

    References:
        Manual of Purpose-Made Woodworking Joinery, pp. 23, 35 (slopes); Bookcases, p. 146, and
        a magazine article on tapered sliding dovetails (tapers 1/320 and 1/192, between which
        and common practice 1/128 lies); the rest is common practice.
    """

    title: ClassVar[str] = "sliding dovetail"

    deep: Said | None = option(dimension="entry", says="how far the tail goes in")
    set_in: Said | None = option(dimension="set in", says="tip set in from the faces", reads="gap")
    floor_gap: Said | None = option(dimension="floor gap", says="room under the tail", reads="gap")
    slope: Said | None = field(
        default=None, metadata={"reads": "ratio", "says": "slope of the flanks"}
    )
    taper: Said | None = field(
        default=None, metadata={"reads": "ratio", "says": "taper of one flank"}
    )
    straight: bool = False  # not tapered, however long
    stopped: bool = False
    stop: Said | None = option(dimension="stop", says="how far behind the front it stops")
    front_gap: Said | None = option(dimension="front gap", says="room at the stop", reads="gap")

    @property
    def stops(self) -> bool:
        """Whether it is stopped, or said where."""
        return self.stopped or self.stop is not None or self.front_gap is not None

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The part with the socket, and the one with the tail."""
        return HOUSED_SEATS

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Depth of tail and socket, the tip, stop and notch."""
        del strains  # both parts move alike across their width
        said = {
            "set in": (Kind.TAPE, "tip set in from the faces"),
            "floor gap": (Kind.TAPE, "room under the tail"),
            "depth": (Kind.FOLLOWS, "depth of the socket"),
        }
        found = housed_relations(j, choice=choice, stops=self.stops, says="sliding dovetail")
        return found + Relations(
            dimensions=tuple(
                Dimension(
                    name=j.own(word), kind=kind, says=f"{says}, {j.name}", positive=word == "depth"
                )
                for word, (kind, says) in said.items()
            ),
            equations=(
                Equation(
                    sum=j.size("depth") - j.entry - j.size("floor gap"),
                    because="the socket is deeper than the tail by the room under it",
                ),
            ),
            rules=(
                Rule(
                    sum=j.size("set in"),
                    because="cut by hand the tail keeps its full thickness at the tip",
                    source="common practice",
                ),
                Rule(
                    sum=j.size("floor gap") - choice["floor gap"],
                    because="usual room for glue under a tail",
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
        """3. Slope by the wood of the tail, taper by the length, depth, stop and gaps."""
        del strains
        part = j.seat("enters").part
        soft = part in woods and woods[part].kind is WoodKind.SOFTWOOD
        usual = habits.slope_softwood if soft else habits.slope_hardwood
        found = housed_choice(j, sizes=sizes, shop=shop)
        found["slope"] = self.slope.value if self.slope else usual
        found["taper"] = self._taper(j, sizes=sizes) if sizes is not None else Fraction(0)
        least = INCH / 64 if shop.unit is Unit.INCH else Fraction(1, 2)
        found["floor gap"] = max(shop.finest, least)
        return Choice.of(found)

    def _taper(self, j: Joined, *, sizes: Sizes) -> Fraction:
        if self.straight:
            return Fraction(0)
        if self.taper is not None:
            return self.taper.value
        low, high = run(j, sizes=sizes, stops=self.stops).touching
        return TAPER if high - low > LONGEST_STRAIGHT else Fraction(0)

    def _tail(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Tail:
        return Tail(
            thick=j.thickness("enters").at(sizes),
            entry=sizes[j.own("entry")],
            depth=sizes[j.own("depth")],
            set_in=sizes[j.own("set in")],
            slope=choice["slope"],
            taper=choice["taper"],
            run=run(j, sizes=sizes, stops=self.stops),
            missing=missing(j, sizes=sizes),
        )

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. The socket, both flanks of the tail, and the notch of a stopped one."""
        return tail_cuts(j, self._tail(j, sizes=sizes, choice=choice), sizes=sizes)

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: the tail locks itself."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Along the socket: to the back only where it stops or is tapered."""
        if state is State.LOCKED:
            return ()
        one_way = self.stops or self._taper(j, sizes=sizes) > 0
        return leaving("enters", *leaving_ways(j, parts=parts, stops=one_way, out=False))

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Both flanks and the shoulders beside them; nearly all of it end grain."""
        tail = self._tail(j, sizes=sizes, choice=choice)
        patches = tail_patches(j, tail, sizes=sizes)
        left = reached(j, patches, axis=INTO, deep=tail.entry, sizes=sizes)
        return touching(j, left, sizes=sizes, parts=parts)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Glued near the stop, or in the middle where it runs through; the rest may creep."""
        del choice
        low, high = run(j, sizes=sizes, stops=self.stops).touching
        across = low if self.stops else (low + high) / 2
        at = (j.thickness("enters").at(sizes) / 2, across, sizes[j.own("entry")])
        return glued_at(j, at, sizes=sizes, parts=parts)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room under the tail, and at the stop; the wood does not work on either."""
        del choice
        words = ("floor gap", "front gap") if self.stops else ("floor gap",)
        return tuple(
            Gap(
                name=j.own(word),
                at_bench=j.size(word),
                moving=(),
                least=Fraction(0),
                greatest=None,
                because="so that the tail closes on its flanks and shoulders and on nothing else",
                source="common practice",
            )
            for word in words
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Pull along the entering part: wood crushed under the flanks, or the ears sheared.

        The lesser of compression across the grain over both undercuts and shear along the
        grain of the tail over both ears. [N]
        """
        crush = [woods[p].compression_across for p in j.parts if p in woods]
        shear = weakest_shear(j, woods)
        known = [c for c in crush if c is not None]
        if shear is None or len(known) < len(j.parts):
            return ()
        tail = self._tail(j, sizes=sizes, choice=choice)
        low, high = tail.run.touching
        long, deep = float(high - low), float(tail.entry)
        undercut = min(known) * 2 * float(tail.slope) * deep * long
        ears = shear * 2 * deep * long
        return (
            Estimate(
                what=f"pull along the {j.seat('enters').part}",
                value=min(undercut, ears),
                unit="N",
                basis="crushing under both flanks, or shear of both ears; glue is not counted",
                weakest="wood under the flanks" if undercut < ears else "the ears of the socket",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Socket and tail, in the maker's order; try, shave one flank, stop short of home."""
        a, b = j.seat("receives").part, j.seat("enters").part
        held = shop.first_owned(Tool.ROUTER_PLANE) or Tool.CHISEL
        socket = operation(
            "cut socket",
            a,
            setting=Setting(
                held_by=held,
                to=(SetTo(j.own("depth"), "floor of the socket", Reference.FACE_SIDE),),
            ),
            note="chop the blind end first" if self.stops else "",
        )
        gauge = shop.first_owned(Tool.CUTTING_GAUGE) or Tool.PIN_GAUGE
        tail = operation(
            "cut sliding tail",
            b,
            setting=Setting(
                held_by=gauge, to=(SetTo(j.own("entry"), "length of the tail", Reference.ENDS),)
            ),
            note="with the same guide block; shave one flank only",
            alternatives=(Tool.DOVETAIL_PLANE,),
        )
        dry = (
            "dry it should stop 10 to 20 mm short of home" if choice["taper"] else "slides by hand"
        )
        return (
            operation("make guide", a, note="a block planed to the slope, for socket and tail"),
            operation("mark pair across", a, note="the far line of the mouth, on both sides"),
            *((socket, tail) if habits.socket_first else (tail, socket)),
            operation("fit joint", b, a, note=dry),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Tip, neck and shoulders, mouth and floor at both ends, slope and taper."""
        tail = self._tail(j, sizes=sizes, choice=choice)
        front, back = tail.ends
        found = [
            DrawnSize(word="slope", value=tail.slope, unit="ratio"),
            DrawnSize(word="tip", value=tail.tip(front), reference="at the front"),
            DrawnSize(word="neck", value=tail.neck(front), reference="at the front"),
            DrawnSize(word="near shoulder", value=tail.near(across=front, into=Fraction(0))),
            DrawnSize(word="far shoulder", value=tail.thick - tail.far(Fraction(0))),
            DrawnSize(
                word="floor of the socket", value=tail.floor(front), reference="at the front"
            ),
            DrawnSize(word="depth of the socket", value=tail.depth, dimension=j.own("depth")),
        ]
        if tail.taper:
            found += [
                DrawnSize(word="taper", value=tail.taper, unit="ratio"),
                DrawnSize(word="mouth at the back", value=tail.neck(back)),
                DrawnSize(word="tip at the back", value=tail.tip(back)),
                DrawnSize(word="short of home when 0.1 mm too fat", value=FAT / tail.taper),
            ]
        return tuple(found)

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Depth, wood beside and behind it, slope, and length without taper."""
        del parts
        depth = sizes[j.own("depth")]
        return (
            *depth_faults(j, sizes=sizes, shop=shop, says="socket", depth=depth),
            *end_faults(j, sizes=sizes, shop=shop, says="socket", depth=depth),
            *self._shape_faults(j, self._tail(j, sizes=sizes, choice=choice), shop=shop),
        )

    def _shape_faults(self, j: Joined, tail: Tail, *, shop: Shop) -> tuple[Finding, ...]:
        found = []
        low, high = tail.run.touching
        if not tail.taper and high - low > LONGEST_BY_HAND:
            found.append(
                fault(
                    j,
                    "sliding-dovetail.long-straight",
                    Weight.MIND,
                    says="So long a straight tail seizes half way when glue swells it.",
                    cure="Taper one flank, or glue it at one end only and wax the rest.",
                    figure=high - low,
                    limit=LONGEST_BY_HAND,
                    shop=shop,
                )
            )
        if tail.slope > STEEPEST:
            found.append(
                Finding(
                    code="sliding-dovetail.steep",
                    weight=Weight.MIND,
                    says="So steep a flank leaves short grain that breaks from the tail.",
                    cure="Make the slope 1:6 or less.",
                    place=j.place,
                    figure=f"{tail.slope.numerator}:{tail.slope.denominator}",
                    limit="1:5",
                    source="common practice",
                    parts=j.parts,
                )
            )
        return tuple(found)

    @classmethod
    def bench(cls) -> Bench:
        """Stopped and tapered: side 300 by 283 by 19, shelf 21 thick and 3 behind. [mm]"""
        return housed_bench(
            cls(stopped=True),
            name="shelf in side",
            side=Extent(length=Fraction(300), width=Fraction(283), thickness=Fraction(19)),
            shelf=Extent(length=Fraction(240), width=Fraction(262), thickness=Fraction(21)),
            up=Fraction(80),
            back=Fraction(3),
        )
