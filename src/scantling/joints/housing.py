"""Housing: the whole thickness of one part let into a square channel across another."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault, glued_at, leaving, touching
from scantling.joints._housed import (
    HOUSED_SEATS,
    depth_faults,
    end_faults,
    end_grain,
    housed_bench,
    housed_choice,
    housed_relations,
    leaving_ways,
    run,
    shared_with,
    stop_patches,
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
from scantling.joints._short import reached
from scantling.parts import ALONG, INTO, Box, Cut, Extent, Part, Span
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO
from scantling.sizes.model import Relations, Sizes

LEAST_BETWEEN = Fraction(6)  # [mm] between housings in line on both faces


@dataclass(frozen=True, kw_only=True)
class Housing(Joint):
    """Square channel across one part that takes the whole thickness of another; carries weight.

    The channel is as wide as the entering part is thick and is marked from it. It may stop
    behind the front edge: the entering part is then notched round the stop. It holds little
    against pulling apart, since glue finds only end grain.

    References:
        Handwork in Wood, 1910, on the housed joint; proportions are common practice.
    """

    title: ClassVar[str] = "housing"

    deep: Said | None = option(dimension="entry", says="depth of the housing")
    stopped: bool = False
    stop: Said | None = option(dimension="stop", says="how far behind the front it stops")
    front_gap: Said | None = option(dimension="front gap", says="room at the stop", reads="gap")

    @property
    def stops(self) -> bool:
        """Whether it is stopped, or said where."""
        return self.stopped or self.stop is not None or self.front_gap is not None

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The part with the channel, and the one whose end is let in."""
        return HOUSED_SEATS

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Depth, stop and notch."""
        del strains  # both parts move alike across their width
        return housed_relations(j, choice=choice, stops=self.stops, says="housing")

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
        """3. Depth, stop and the room before it, as the rule can show them."""
        del habits, woods, strains
        return Choice.of(housed_choice(j, sizes=sizes, shop=shop))

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. The channel, and the notch of a stopped one."""
        del choice
        a, b = j.seat("receives"), j.seat("enters")
        depth = sizes[j.own("entry")]
        found = run(j, sizes=sizes, stops=self.stops)
        channel = a.cut(
            sizes,
            name="housing",
            owner=j.name,
            shape=Box(
                along=Span(Fraction(0), j.thickness("enters").at(sizes)),
                across=Span(found.front, None),
                into=Span(None, depth),
            ),
            shares=shared_with(j),
            sized={
                "along size": f"{b.part}.thickness",
                "into size": j.own("entry"),
                "across start": j.own("stop"),
            },
        )
        if found.notch is None:
            return {a.part: (channel,)}
        notch = b.cut(
            sizes,
            name="notch",
            owner=j.name,
            shape=Box(along=Span(None, depth), across=Span(None, found.notch)),
            sized={"across size": j.own("notch")}
            | ({"along size": j.own("entry")} if b.along == ZERO else {}),
        )
        return {a.part: (channel,), b.part: (notch,)}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Straight out, to the back, and to the front if nothing stops it."""
        del sizes
        if state is State.LOCKED:
            return ()
        return leaving("enters", *leaving_ways(j, parts=parts, stops=self.stops, out=True))

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Floor and both walls, and the shoulder before a stop; all of it end grain."""
        del choice
        found = run(j, sizes=sizes, stops=self.stops)
        across, depth = found.touching, sizes[j.own("entry")]
        thick = j.thickness("enters").at(sizes)
        deep = (Fraction(0), depth)
        patches = (
            end_grain("floor", axis=INTO, at=depth, first=(Fraction(0), thick), second=across),
            end_grain("near wall", axis=ALONG, at=Fraction(0), first=across, second=deep),
            end_grain("far wall", axis=ALONG, at=thick, first=across, second=deep),
            *stop_patches(j, found, sizes=sizes),
        )
        left = reached(j, patches, axis=INTO, deep=depth, sizes=sizes)
        return touching(j, left, sizes=sizes, parts=parts)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Held by its walls and the glue in them, in the middle of its floor."""
        del choice
        low, high = run(j, sizes=sizes, stops=self.stops).touching
        middle = (j.thickness("enters").at(sizes) / 2, (low + high) / 2, sizes[j.own("entry")])
        return glued_at(j, middle, sizes=sizes, parts=parts)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room at the stop; both parts move alike across their width, so nothing works on it."""
        del choice
        if not self.stops:
            return ()
        return (
            Gap(
                name=j.own("front gap"),
                at_bench=j.size("front gap"),
                moving=(),
                least=Fraction(0),
                greatest=None,
                because="so that the notch never holds the part off its place",
                source="common practice",
            ),
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Weight on the entering part, borne by the lower wall. [N]

        Compression across the grain of the entering part, at the proportional limit, over the
        wall; nothing is counted against pulling apart.
        """
        del choice
        part = j.seat("enters").part
        crush = woods[part].compression_across if part in woods else None
        if crush is None:
            return ()
        low, high = run(j, sizes=sizes, stops=self.stops).touching
        return (
            Estimate(
                what=f"weight on this end of the {part}",
                value=crush * float((high - low) * sizes[j.own("entry")]),
                unit="N",
                basis="compression across the grain at the proportional limit, over the lower wall",
                weakest=f"the lower face of the {part}, crushed on the wall",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. One wall from the stick, the other from the mate, all floors at one setting."""
        del choice, habits
        a, b = j.seat("receives").part, j.seat("enters").part
        held = shop.first_owned(Tool.ROUTER_PLANE) or Tool.CHISEL
        floor = SetTo(j.own("entry"), "floor of the housing", Reference.FACE_SIDE)
        depth = Setting(held_by=held, to=(floor,))
        found = [
            operation("mark pair across", a, note="the wall below, on both sides at once"),
            operation("transfer", a, note="the wall above, from the planed mate"),
            operation("cut housing", a, setting=depth, note=self._note()),
        ]
        if self.stops:
            found.append(operation("saw tenon", b, note="the notch in front; the rest stays whole"))
        found.append(operation("fit joint", b, a))
        return tuple(found)

    def _note(self) -> str:
        return "bore and chop the blind end first, to give the saw room" if self.stops else ""

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Depth, the mate's thickness, the wood left, and where it stops."""
        del choice
        depth, a, b = sizes[j.own("entry")], j.seat("receives").part, j.seat("enters").part
        found = [
            DrawnSize(
                word="depth", value=depth, dimension=j.own("entry"), reference=f"face of the {a}"
            ),
            DrawnSize(
                word="width",
                value=j.thickness("enters").at(sizes),
                dimension=f"{b}.thickness",
                reference="from the mate",
            ),
            DrawnSize(word=f"left in the {a}", value=j.thickness("receives").at(sizes) - depth),
        ]
        if self.stops:
            found.append(
                DrawnSize(
                    word="stop",
                    value=sizes[j.own("stop")],
                    dimension=j.own("stop"),
                    reference=f"front edge of the {a}",
                )
            )
        return tuple(found)

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Depth, wood behind and beside it, and housings back to back."""
        del choice, parts
        depth = sizes[j.own("entry")]
        return (
            *depth_faults(j, sizes=sizes, shop=shop, says="housing", depth=depth),
            *end_faults(j, sizes=sizes, shop=shop, says="housing", depth=depth),
            *self._back_to_back(j, sizes=sizes, shop=shop),
        )

    def _back_to_back(self, j: Joined, *, sizes: Sizes, shop: Shop) -> tuple[Finding, ...]:
        part, thick = j.seat("receives").part, j.thickness("receives").at(sizes)
        least = max(LEAST_BETWEEN, thick / 3)
        found = []
        for other in j.neighbours("housing", role="receives"):
            left = thick - sizes[j.own("entry")] - other.depth.at(sizes)
            start = other.start.at(sizes)
            stop = start + other.size.at(sizes)
            in_line = start < j.thickness("enters").at(sizes) and stop > 0
            if in_line and left < least:
                found.append(
                    fault(
                        j,
                        "housing.back-to-back",
                        Weight.HALT,
                        says=f"Housings on both faces of the {part} leave little between them.",
                        cure="Make both shallower, or move one of them up or down.",
                        figure=left,
                        limit=least,
                        shop=shop,
                    )
                )
        return tuple(found)

    @classmethod
    def bench(cls) -> Bench:
        """A stopped one: side 300 by 283 by 19, shelf 21 thick and 3 behind. [mm]"""
        return housed_bench(
            cls(stopped=True),
            name="shelf in side",
            side=Extent(length=Fraction(300), width=Fraction(283), thickness=Fraction(19)),
            shelf=Extent(length=Fraction(240), width=Fraction(262), thickness=Fraction(21)),
            up=Fraction(80),
            back=Fraction(3),
        )
