"""Drawer bottom: slid into grooves from behind, under the back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import ClassVar, Literal

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._drawer_bench import drawer_bench
from scantling.joints._drawer_faults import drawer_faults
from scantling.joints._drawer_groove import CLEAR, bevels, bottom_of, patches, slot, slot_ends
from scantling.joints._drawer_holds import bottom_holds
from scantling.joints._drawer_sizes import choice_of, relations_of, slot_needed
from scantling.joints._frame import leaving
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
    Press,
    Said,
    SeatRole,
    State,
    Strains,
    Woods,
    lifted,
    option,
)
from scantling.joints._rod import rod, rod_area
from scantling.joints._season import room
from scantling.parts import ACROSS, Box, Cut, Part, Span, Way
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Setting, SetTo, operation
from scantling.shop.operations import State as Worked
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import Relations, Sizes

GROOVED = ("front", "left", "right")
LEAST_COVER = Fraction(3)  # [mm] of the back's thickness that the bottom still lies under
NAIL_GIVES = Fraction(2)  # [mm] of movement either way that a thin nail bends with


@dataclass(frozen=True, kw_only=True)
class DrawerBottom(Joint):
    """A solid bottom in grooves of front and sides, slid in under the back, grain side to side.

    Its upper face lies at the upper walls of the grooves; where it is thicker than they are wide,
    three edges are bevelled below. Held at the back only by one screw in a slot, or one nail, so
    that all its growth goes out behind. The form gives its length and width.

    References:
        Handwork in Wood, 1910, for the grain and the groove; the rest is common practice.
    """

    title: ClassVar[str] = "drawer bottom"

    set_up: Said | None = option(
        dimension="set up", says="groove above the lower edge", words=("groove_up",)
    )
    groove: Said | None = option(dimension="groove", says="width of the grooves")
    deep: Said | None = option(dimension="depth", says="depth of the grooves")
    ease: Said | None = option(
        dimension="end ease", says="room in the groove at either end", reads="gap"
    )
    bevel: Said | None = option(dimension="bevel", says="how far in the edges are bevelled")
    screw: Said | None = option(dimension="screw", says="diameter of the screw or nail behind")
    held_by: Literal["slot screw", "nail"] = "slot screw"
    stopped: bool = False  # the front's groove, before its ends

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The bottom, and the four parts round it."""
        lower = "across: lower edge; into: inside face"
        return (
            SeatRole(role="bottom", means="along: left end; across: front edge; into: upper face"),
            SeatRole(role="front", means=f"along: its end at the left; {lower}"),
            SeatRole(role="left", means=lower),
            SeatRole(role="right", means=lower),
            SeatRole(role="back", means=lower),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. The groove, the ease, the bevel, the slot and what the seasons ask of them."""
        screwed = self.held_by == "slot screw"
        return relations_of(j, choice=choice, strains=strains, screwed=screwed)

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
        """3. An iron owned for the groove, a whole depth, a screw that bites."""
        del habits, woods
        found = choice_of(j, sizes=sizes, shop=shop)
        if sizes is None:
            return found
        needed, _ = slot_needed(j, strains)
        slot = room(Fraction(0), needed=needed.at(sizes), mark=shop.finest)
        return Choice.of({**dict(found.values), "slot": slot})

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Three grooves, three bevels, a slot."""
        del choice
        found = bottom_of(j, sizes=sizes)
        made = {j.seat(role).part: (self._groove(j, role, sizes=sizes),) for role in GROOVED}
        held = (slot(j, found, sizes=sizes),) if self.held_by == "slot screw" else ()
        return made | {j.seat("bottom").part: (*bevels(j, found, sizes=sizes), *held)}

    def _groove(self, j: Joined, role: str, *, sizes: Sizes) -> Cut:
        seat = j.seat(role)
        up, wide, deep = (sizes[j.own(word)] for word in ("set up", "groove", "depth"))
        along = Span()
        if role == "front" and self.stopped:
            # as far as the floors of the sides' grooves
            left, right = (j.thickness(side).at(sizes) - deep for side in ("left", "right"))
            along = Span(left, j.length("front").at(sizes) - right)
        words = {"across size": j.own("groove")}
        words |= {"across start": j.own("set up")} if seat.across == ZERO else {}
        words |= {"into size": j.own("depth")} if seat.into == ZERO else {}
        return seat.cut(
            sizes,
            name="groove for the bottom",
            owner=j.name,
            shape=Box(along=along, across=Span(up, up + wide), into=Span(None, deep)),
            shares=frozenset(b.owner for b in j.beside if b.owner),
            sized=words,
        )

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. The screw or nail, driven up into the back."""
        del choice
        found = bottom_of(j, sizes=sizes)
        seat = j.seat("bottom")
        word = "screw" if self.held_by == "slot screw" else "nail"
        return (
            rod(
                seat,
                name=f"{j.name} {word}",
                family=word,
                stuff="steel",
                at=found.screw_at,
                deepest=found.thickness,
                length=sizes[j.own("screw length")],
                diameter=sizes[j.own("screw")],
                sizes=sizes,
                part=parts[seat.part],
            ),
        )

    def presses(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Press, ...]:
        """5, too. It bites into the back, and a nail into the bottom as well."""
        (held,) = self.loose(j, sizes=sizes, choice=choice, parts=parts)
        thick = j.thickness("bottom").at(sizes)
        area = rod_area(sizes[j.own("screw")])
        depths = {j.seat("back").part: held.extent.length - thick}
        if self.held_by == "nail":
            depths[j.seat("bottom").part] = thick
        return tuple(
            Press(between=(held.name, part), volume=area * deep, because="driven into the wood")
            for part, deep in depths.items()
        )

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. To the rear, once the screw is out."""
        del sizes
        if state is State.LOCKED:
            return ()
        seat = j.seat("bottom")
        (move,) = leaving("bottom", seat.way(axis=ACROSS, part=parts[seat.part]))
        return (move if state is State.OPEN else replace(move, unlocked_by=self.held_by),)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Upper walls of the grooves, the floor in front, the lower edge of the back."""
        del choice
        found = bottom_of(j, sizes=sizes)
        screwed = self.held_by == "slot screw"
        starts = slot_ends(j, found, sizes=sizes)[0] if screwed else None
        wide = sizes[j.own("screw")] + (CLEAR if screwed else 0)
        seat = j.seat("bottom")
        return tuple(
            Contact(
                between=(seat.part, j.seat(role).part),
                joined=j.name,
                zone=patch.zone,
                glue=patch.glue,
                fit=patch.fit,
                patch=lifted(seat, patch.points, sizes=sizes, part=parts[seat.part]),
            )
            for role, patch in patches(found, slot_width=wide, slot_from=starts)
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. At the screw, free to move towards front and rear; a nail holds it there too."""
        del choice
        found = bottom_of(j, sizes=sizes)
        seat = j.seat("bottom")
        part = parts[seat.part]
        (at,) = lifted(seat, [(*found.screw_at, Fraction(0))], sizes=sizes, part=part)
        rearward = seat.way(axis=ACROSS, part=part)
        free = frozenset({rearward, rearward.opposite})
        if self.held_by == "nail":
            free = frozenset()
        return (
            Fixing(
                between=(seat.part, j.seat("back").part),
                at=at,
                holds=frozenset(Way) - free,
                free=free,
                by=self.held_by,
            ),
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. How much of the back it lies under, room in the slot, ease at the ends."""
        del choice
        bottom, width = j.seat("bottom").part, j.width("bottom")
        cover = Gap(
            name=f"cover under the back at {j.name}",
            at_bench=j.thickness("back"),
            moving=((bottom, -width),),  # what grows covers more
            least=LEAST_COVER,
            greatest=None,
            because="a bottom that shrinks from under the back leaves a slit, then drops",
            source="common practice",
            what="cover of drawer bottoms under their backs",
            closed="the drawer bottoms slip from under their backs",
            cure="Take quarter-sawn wood for the bottoms, or thicker backs.",
        )
        ease = Gap(
            name=f"end ease at {j.name}",
            at_bench=j.size("end ease"),
            moving=(),
            least=Fraction(0),
            greatest=None,
            because="along the grain nothing moves; the ease is for getting it in",
            source="common practice",
        )
        if self.held_by != "slot screw":
            nail = Gap(
                name=f"give of the nail at {j.name}",
                at_bench=exactly(NAIL_GIVES),
                moving=((bottom, width),),
                least=Fraction(0),
                greatest=2 * NAIL_GIVES,
                because="a thin nail bends with a little movement only; a screw in a slot lets go",
                source="UNSOURCED",
            )
            return (cover, ease, nail)
        ahead = Gap(
            name=f"room in the slot at {j.name}",
            at_bench=j.size("slot") - j.size("screw") - j.size("slot behind"),
            moving=((bottom, width),),
            least=Fraction(0),
            greatest=None,
            because="the bottom grows past its screw towards the rear",
            source="common practice",
            what="room in the slots of drawer bottoms",
            closed="the drawer bottoms meet the ends of their slots",
            cure="File the slots longer.",
        )
        return (cover, ease, ahead)

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Load spread over the bottom: the board, its ends, or the ledges of the sides. [N]"""
        del choice
        return bottom_holds(j, bottom_of(j, sizes=sizes), sizes=sizes, woods=woods)

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Three grooves at one setting; the bottom when the drawer is glued and square."""
        del choice, shop
        up = SetTo(j.own("set up"), "near wall of the groove, from the lower edge")
        deep = SetTo(j.own("depth"), "depth of the groove, from the inside")
        held = Setting(held_by=Tool.PLOUGH, to=(up, deep))
        grooved = [j.seat(role).part for role in GROOVED]
        plough = operation(
            "plough groove", *grooved, setting=held, note="all from the lower edge, inside"
        )
        if habits.drawer_groove_after_dovetails:
            plough = replace(plough, state_before=Worked.CUT)
        bottom = j.seat("bottom").part
        fit = operation("fit bottom", bottom, note="planed to go in from behind, no glue")
        if self.held_by == "slot screw":
            return (plough, operation("cut slot", bottom), fit)
        return (plough, fit)

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Thickness left at the edges, the grooves, and the slot."""
        del choice
        found = bottom_of(j, sizes=sizes)
        words = ["set up", "groove", "depth", "end ease"]
        if found.is_bevelled:
            words.append("bevel")
        if self.held_by == "slot screw":
            words.append("slot")
        return (
            *(DrawnSize(word=w, value=sizes[j.own(w)], dimension=j.own(w)) for w in words),
            DrawnSize(word="edge in front", value=found.edge(found.depth), reference="upper face"),
            DrawnSize(
                word="edge at the ends", value=found.edge(found.reach), reference="upper face"
            ),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Too thin or too thick, grain the wrong way, weak lips, no iron, too wide a bottom."""
        del choice
        return drawer_faults(j, bottom_of(j, sizes=sizes), sizes=sizes, shop=shop, parts=parts)

    @classmethod
    def bench(cls) -> Bench:
        """A drawer with butted corners, its sides unlike."""
        return drawer_bench(cls(), name="bottom in grooves")
