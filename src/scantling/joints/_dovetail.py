"""What dovetails share, through or half-blind: one part with tails, one with pins.

Local coordinates: along the receiving part (pins) from its end, across both alike, into the
receiving part from the face the tails enter. Along the entering part (tails) runs from its tip.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._frame import Range, common, leaving, weakest_shear
from scantling.joints._joint import (
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
    lifted,
)
from scantling.joints._short import reached
from scantling.joints._tail_cuts import sockets, touching_patches, wastes
from scantling.joints._tail_faults import tail_faults
from scantling.joints._tails import Asked, Layout, laid_out
from scantling.parts import ALONG, INTO, Cut, Part, Way
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.model import Derived, Relations, Sizes
from scantling.timber.species import Kind as Botanical
from scantling.timber.species import Species

MOST_DIFFERENCE = Fraction(1)  # [mm] half of it at either edge


SLOPE_SAYS = {"says": "slope of the tails, as 1:8", "reads": "ratio"}
PIN_SAYS = {"says": "a whole pin at its narrow end", "reads": "length"}
HALF_PIN_SAYS = {"says": "a half pin at its narrow end", "reads": "length"}


@dataclass(frozen=True, kw_only=True)
class Dovetailed(Joint):
    """A row of tails between pins."""

    tails: int | None = None
    slope: Said | None = field(default=None, metadata=SLOPE_SAYS)
    pin: Said | None = field(default=None, metadata=PIN_SAYS)
    half_pin: Said | None = field(default=None, metadata=HALF_PIN_SAYS)
    filled: Literal["narrower", "enters", "receives"] = "narrower"  # whose width the tails fill

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The part with the pins, and the one with the tails."""
        return (
            SeatRole(
                role="receives",
                means="along: its end; across: as the mate; into: the face the tails enter",
            ),
            SeatRole(role="enters", means="along: the tips of its tails; across: as the mate"),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. What nobody states, since the layout gives it."""
        del choice, strains
        return Relations(
            derived=(
                Derived(name=j.own("tail"), option="tails"),
                Derived(name=j.own("pin"), option="pin"),
                Derived(name=j.own("half pin"), option="half_pin"),
            )
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
        """3. Slope by the wood of the tails; then their number and the width of the pins."""
        del strains
        slope = (
            self.slope.value
            if self.slope
            else _usual_slope(woods.get(j.seat("enters").part), habits)
        )
        if sizes is None:
            return Choice.of({"slope": slope})
        found = laid_out(self._asked(j, slope, sizes=sizes, shop=shop))
        return Choice.of(
            {
                "slope": slope,
                "tails": found.count,
                "pin": found.pin,
                "half pin": found.half_pin,
            }
        )

    def _asked(self, j: Joined, slope: Fraction, *, sizes: Sizes, shop: Shop) -> Asked:
        start, stop = self.filled_width(j, sizes=sizes)
        low, high = reach_of(j, "receives", sizes=sizes)
        return Asked(
            start=start,
            width=stop - start,
            depth=j.entry.at(sizes),
            slope=slope,
            thickness=j.thickness("receives").at(sizes),
            count=self.tails,
            pin=self.pin.value if self.pin else None,
            half_pin=self.half_pin.value if self.half_pin else None,
            narrow=high - low > stop - start,
            grooves=grooves(j, sizes=sizes),
            chisel=min(shop.chisels, default=None),
            unit=shop.unit,
        )

    def filled_width(self, j: Joined, *, sizes: Sizes) -> Range:
        """From where to where the tails and half pins run. [mm]"""
        one, other = (reach_of(j, role, sizes=sizes) for role in ("receives", "enters"))
        if self.filled != "narrower":
            return one if self.filled == "receives" else other
        return common(one, other) or other

    def layout(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Layout:
        """The tails as chosen, at these sizes."""
        start, stop = self.filled_width(j, sizes=sizes)
        return Layout(
            start=start,
            width=stop - start,
            count=choice.count("tails"),
            pin=choice["pin"],
            half_pin=choice["half pin"],
            depth=j.entry.at(sizes),
            slope=choice["slope"],
        )

    def is_through(self) -> bool:
        """Whether the tips show on the far face of the receiving part."""
        return False

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Sockets between the pins, room for pins between the tails."""
        layout = self.layout(j, sizes=sizes, choice=choice)
        far = reach_of(j, "enters", sizes=sizes)
        return {
            j.seat("receives").part: sockets(j, layout, through=self.is_through(), sizes=sizes),
            j.seat("enters").part: wastes(j, layout, edges=far, sizes=sizes),
        }

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing: wood and glue hold it."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Out past the end of the receiving part, square to the faces of the tails."""
        del sizes
        if state is State.LOCKED:
            return ()
        seat = j.seat("receives")
        return leaving("enters", seat.way(axis=ALONG, part=parts[seat.part]).opposite)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Flanks, floors of the sockets, roots of the pins, blind tips."""
        layout = self.layout(j, sizes=sizes, choice=choice)
        seat = j.seat("receives")
        return tuple(
            Contact(
                between=(seat.part, j.seat("enters").part),
                joined=j.name,
                zone=patch.zone,
                glue=patch.glue,
                fit=patch.fit,
                patch=lifted(seat, patch.points, sizes=sizes, part=parts[seat.part]),
            )
            for patch in reached(
                j,
                touching_patches(j, layout, through=self.is_through(), sizes=sizes),
                axis=INTO,
                deep=layout.depth,
                sizes=sizes,
            )
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Every tail glued in its socket; it wedges too, but for the way it went in."""
        layout = self.layout(j, sizes=sizes, choice=choice)
        a, b = j.seat("receives"), j.seat("enters").part
        depth = j.thickness("enters").at(sizes)
        middles = [(depth / 2, (low + high) / 2, layout.depth / 2) for low, high in layout.tips]
        return tuple(
            Fixing(between=(a.part, b), at=at, holds=frozenset(Way), free=frozenset(), by="glue")
            for at in lifted(a, middles, sizes=sizes, part=parts[a.part])
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. No room, but two widths glued together that may want to move apart."""
        del choice
        narrower = j.width("receives" if self.filled == "receives" else "enters")
        return (
            Gap(
                name=f"difference of widths at {j.name}",
                at_bench=narrower - narrower,
                moving=(
                    (j.seat("receives").part, narrower),
                    (j.seat("enters").part, -narrower),
                ),
                least=-MOST_DIFFERENCE,
                greatest=MOST_DIFFERENCE,
                because="boards of unlike movement, glued across their width, strain the joint",
                source="UNSOURCED",
            ),
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Pull along the tails: glue or undercut, whichever gives last, unless necks do. [N]

        Glue between crossing grain at a third of the weaker wood's shear strength; an undercut
        presses its projected area across the grain; necks are taken at the bending strength.
        The glue must break before the undercut is loaded, so the two are not added.

        References:
            FPL 1522, rule for glue lines with crossing grain. No published value for the pull-out
            of dovetails was found: an estimate of ours.
        """
        shear = weakest_shear(j, woods)
        found = [woods[part].compression_across for part in j.parts if part in woods]
        pressed = [each for each in found if each is not None]
        tail_wood = woods.get(j.seat("enters").part)
        if shear is None or len(pressed) < len(j.parts) or tail_wood is None:
            return ()
        layout = self.layout(j, sizes=sizes, choice=choice)
        thick = j.thickness("enters").at(sizes)
        glue = shear / 3 * float(flank_area(layout, thickness=thick))
        wedge = min(pressed) * float(undercut_area(layout, thickness=thick))
        necks = tail_wood.bending_strength * float(layout.count * layout.tail_base * thick)
        pull, weakest = max((glue, "glue on the flanks"), (wedge, "ears of the tails"))
        if necks < pull:
            pull, weakest = necks, "necks of the tails"
        basis = "max of glue at a third of the shear strength and the undercut pressed across"
        return (
            Estimate(
                what="pull along the tails", value=pull, unit="N", basis=basis, weakest=weakest
            ),
            Estimate(
                what="push back out the way it went in",
                value=glue,
                unit="N",
                basis="glue at a third of the shear strength over all flanks",
                weakest="glue on the flanks",
            ),
        )

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Lines from the planed mates, one part cut, the other marked from it and cut."""
        del choice
        a, b = j.seat("receives").part, j.seat("enters").part
        saw = shop.first_owned(Tool.DOVETAIL_SAW, Tool.CARCASE_SAW, Tool.TENON_SAW)
        tool = saw or Tool.DOVETAIL_SAW
        tails = operation("cut tails", b, tool=tool, alternatives=(Tool.CHISEL,))
        pins = operation(self._pin_word(), a, tool=tool, alternatives=(Tool.CHISEL,))
        if habits.tails_first:
            cutting = (
                operation("set out tails", b),
                tails,
                operation("transfer", a, note="laid on square, edges level, tips to the line"),
                replace(pins, reference=Reference.MATE, mate_first=True),
            )
        else:
            cutting = (
                operation("set out tails", a, note="pins first: the bevel stands on the end"),
                replace(pins, reference=Reference.ENDS, mate_first=False),
                operation("transfer", b, note="the pins stood on it, knifed inside"),
                replace(tails, reference=Reference.MATE, mate_first=True),
            )
        return (*self._baselines(j, a, b), *cutting, operation("fit joint", a, b))

    def _pin_word(self) -> str:
        return "cut pins" if self.is_through() else "cut blind pins"

    def _baselines(self, j: Joined, a: str, b: str) -> tuple[Operation, ...]:
        gauge, ends = Tool.CUTTING_GAUGE, Reference.ENDS
        mate = SetTo(f"{b}.thickness", f"baseline at the thickness of the {b}", ends)
        thick = Setting(held_by=gauge, to=(mate,))
        deep = Setting(held_by=gauge, to=(SetTo(j.own("entry"), "baseline of the tails", ends),))
        both = (b,) if self.is_through() else (b, a)
        note = (
            "round the ends"
            if self.is_through()
            else "round the ends of the one, on the end \
of the other: one setting"
        )
        return (
            operation("gauge baseline", *both, setting=deep, note=note),
            operation("gauge baseline", a, setting=thick, note="on the face the tails enter"),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Widths at tip and base, which add up to the width at either line."""
        layout = self.layout(j, sizes=sizes, choice=choice)
        found = {
            "tail at the tip": layout.tail,
            "tail at the base": layout.tail_base,
            "half pin at the tip": layout.half_pin,
            "half pin at the base": layout.half_pin_base,
        }
        if layout.count > 1:
            found |= {"pin at the tip": layout.pin, "pin at the base": layout.pin_base}
        return (
            *(DrawnSize(word=word, value=value) for word, value in found.items()),
            DrawnSize(word="slope", value=layout.slope, unit="ratio"),
            DrawnSize(word="tails", value=Fraction(layout.count), unit="count"),
            DrawnSize(word="baseline", value=layout.depth, dimension=j.own("entry")),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Room, tools, short grain, slope, and grooves that come out through a pin."""
        del parts
        layout = self.layout(j, sizes=sizes, choice=choice)
        return tail_faults(
            j,
            layout,
            reaches={role: reach_of(j, role, sizes=sizes) for role in ("receives", "enters")},
            grooves=grooves(j, sizes=sizes),
            sizes=sizes,
            shop=shop,
        )


def reach_of(j: Joined, role: str, *, sizes: Sizes) -> Range:
    """From edge to edge of a part, in the coordinates of the joint. [mm]"""
    low = -j.seat(role).across.at(sizes)
    return (low, low + j.width(role).at(sizes))


def grooves(j: Joined, *, sizes: Sizes) -> tuple[Range, ...]:
    """Where grooves come out that a tail has to hide. [mm]"""
    found = {
        (b.start.at(sizes), (b.start + b.size).at(sizes)) for b in j.beside if b.what == "hide"
    }
    return tuple(sorted(found))


def flank_area(layout: Layout, *, thickness: Fraction) -> Fraction:
    """Area of all flanks as a glue line is counted: depth times thickness, two a tail. [mm2]"""
    return 2 * layout.count * layout.depth * thickness


def undercut_area(layout: Layout, *, thickness: Fraction) -> Fraction:
    """What the flanks cover of each other, seen along the pull. [mm2]"""
    return 2 * layout.count * layout.lean * thickness


def _usual_slope(wood: Species | None, habits: Habits) -> Fraction:
    soft = wood is not None and wood.kind is Botanical.SOFTWOOD
    return habits.slope_softwood if soft else habits.slope_hardwood
