"""Shelf pins: loose shelves on pins in rows of holes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import product
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
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
    Said,
    Seat,
    SeatRole,
    State,
    Strains,
    Woods,
    lifted,
    option,
    rectangle,
)
from scantling.joints._pin_bench import pins_bench
from scantling.joints._pin_faults import pin_faults
from scantling.joints._pin_rows import (
    centre,
    end_gap,
    flat_of,
    floor_patch,
    half_flat,
    hole_word,
    pin_choice,
    pin_figures,
    pin_relations,
    pins_of,
    rows_of,
    stop,
    strip,
    tilt,
)
from scantling.joints._rod import rod
from scantling.parts import ACROSS, ALONG, INTO, Bore, Cut, Part, Span, Way
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, operation
from scantling.shop.operations import State as Worked
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Relations, Sizes

LEAST_PAST = Fraction(3)  # [mm] of a shelf past its pins, whatever the season


@dataclass(frozen=True, kw_only=True)
class ShelfPins(Joint):
    """Loose shelves on pins: two rows of holes in either side, four pins to a shelf.

    Along the sides is counted from the piece's floor; the lowest hole from the floor of the
    opening, which the form tells of. Across the sides and across the shelves start from the same
    place. Pins are drawn as rods of one diameter with a flat on which the shelf rests; a plain
    peg has none.

    References:
        Common practice, of hand work and of cabinets made by machine.
    """

    title: ClassVar[str] = "shelf pins"

    size: Said | None = option(dimension="size", says="diameter of the pins")
    lowest: Said | None = option(
        dimension="lowest",
        says="middle of the lowest hole above the floor of the opening",
        reads="gap",
    )
    pitch: Said | None = option(dimension="pitch", says="from hole to hole")
    holes: int | None = None  # in each row
    hole: int | None = None  # of the lowest shelf, counted from below; None: by its share
    inset: Said | None = option(
        dimension="inset", says="from front and back edge of the shelf to the rows"
    )
    bore: Said | None = option(dimension="bore", says="depth of the holes")
    stand: Said | None = option(dimension="stand", says="how far a pin stands out")
    rest: Said | None = option(dimension="rest", says="flat of a pin above its middle", reads="gap")

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. Two sides, a row of shelves from the lowest up; pins are loose."""
        return (
            SeatRole(
                role="receives",
                means="along: floor of the piece; across: front edge; into: inside face",
                least=2,
                most=2,
            ),
            SeatRole(
                role="enters", means="across: as the sides; from the lowest up", least=1, most=None
            ),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Rows, pins, and where each shelf rests."""
        del strains  # along the sides and along the shelves nothing moves
        return pin_relations(j, choice=choice)

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
        """3. A bit owned, a depth the side allows, and the hole on which each shelf lies."""
        del habits, woods, strains
        return pin_choice(j, holes=self.holes, hole=self.hole, sizes=sizes, shop=shop)

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Every hole of both rows, in both sides alike."""
        rows = rows_of(j, sizes=sizes).named()
        middles = [centre(j, hole).at(sizes) for hole in range(choice.count("holes"))]
        return {
            seat.part: tuple(
                self._hole(j, seat, f"{row} hole {i + 1}", (middle, rows[row]), sizes=sizes)
                for row, (i, middle) in product(rows, enumerate(middles))
            )
            for seat in j.row("receives")
        }

    def _hole(
        self,
        j: Joined,
        seat: Seat,
        name: str,
        at: tuple[Fraction, Fraction],
        *,
        sizes: Sizes,
    ) -> Cut:
        words = {"diameter": j.own("size")}
        if seat.into == ZERO:
            words["into size"] = j.own("bore")
        if name.startswith("front") and seat.across == j.row("enters")[0].across == ZERO:
            words["centre across"] = j.own("inset")
        return seat.cut(
            sizes,
            name=name,
            owner=j.name,
            shape=Bore(
                axis=INTO,
                centre=at,
                radius=sizes[j.own("size")] / 2,
                span=Span(None, sizes[j.own("bore")]),
            ),
            sized=words,
        )

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Four pins to a shelf, pushed to the floor of their holes."""
        return tuple(
            rod(
                pin.seat,
                name=pin.name,
                family="shelf pin",
                stuff="brass",
                at=pin.at,
                deepest=sizes[j.own("bore")],
                length=sizes[j.own("bore")] + sizes[j.own("stand")],
                diameter=sizes[j.own("size")],
                sizes=sizes,
                part=parts[pin.seat.part],
                cuts=flat_of(j, sizes=sizes),
            )
            for pin in pins_of(j, sizes=sizes, choice=choice)
        )

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Up and forward, whatever the state; tilted about either end to pass a frame."""
        del state
        side = j.row("receives")[0]
        up = side.way(axis=ALONG, part=parts[side.part])
        front = side.way(axis=ACROSS, part=parts[side.part]).opposite
        tilts = [
            tilt(j, shelf, seat, sizes=sizes, parts=parts)
            for shelf, seat in product(j.row("enters"), j.row("receives"))
        ]
        return (*leaving("enters", up, front), *tilts)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Flats under the shelves, ends of the pins on the floors of their holes."""
        found = []
        for pin in pins_of(j, sizes=sizes, choice=choice):
            side = parts[pin.seat.part]
            places = {"floor": floor_patch(j, pin, sizes=sizes)}
            gap = end_gap(parts[pin.shelf.part], side, pin.seat, sizes=sizes)
            half = half_flat(j, sizes=sizes)
            if half > 0 and gap < sizes[j.own("stand")]:
                places["flat"] = rectangle(
                    axis=ALONG,
                    at=pin.at[0] + sizes[j.own("rest")],
                    first=(pin.at[1] - half, pin.at[1] + half),
                    second=(-sizes[j.own("stand")], -gap),
                )
            mates = {"floor": pin.seat.part, "flat": pin.shelf.part}
            found += [
                Contact(
                    between=(pin.name, mates[zone]),
                    joined=j.name,
                    zone=zone,
                    glue=Glue.DRY,
                    fit=Fit.TOUCH,
                    patch=lifted(pin.seat, points, sizes=sizes, part=side),
                )
                for zone, points in places.items()
            ]
        return tuple(found)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. A pin is held by its hole but for the way out; a shelf only from below."""
        found = []
        for pin in pins_of(j, sizes=sizes, choice=choice):
            side = parts[pin.seat.part]
            out = pin.seat.way(axis=INTO, part=side).opposite
            down = pin.seat.way(axis=ALONG, part=side).opposite
            gap = end_gap(parts[pin.shelf.part], side, pin.seat, sizes=sizes)
            bears = (sizes[j.own("stand")] + gap) / 2
            points = (
                (*pin.at, Fraction(0)),
                (pin.at[0] + sizes[j.own("rest")], pin.at[1], -bears),
            )
            mouth, top = lifted(pin.seat, points, sizes=sizes, part=side)
            every = frozenset(Way)
            found += [
                Fixing(
                    between=(pin.name, pin.seat.part),
                    at=mouth,
                    holds=every - {out},
                    free=frozenset({out}),
                    by="hole",
                ),
                Fixing(
                    between=(pin.shelf.part, pin.name),
                    at=top,
                    holds=frozenset({down}),
                    free=every - {down},
                    by="pin",
                ),
            ]
        return tuple(found)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Wood of each shelf behind its back pins, if its front stays where it was."""
        del choice
        first, *_ = j.row("enters")
        side = j.row("receives")[0].part
        between = _width(first) - 2 * j.size("inset")
        return tuple(
            Gap(
                name=f"{shelf.part} past its pins",
                at_bench=first.across
                - shelf.across
                + _width(shelf)
                - _width(first)
                + j.size("inset")
                - j.size("size") / 2,
                # rows spread as the side grows, the shelf covers more as it grows itself
                moving=((side, between), (shelf.part, -_width(shelf))),
                least=LEAST_PAST,
                greatest=None,
                because="a shelf that shrinks off its back pins tips",
                source="common practice",
                what="what of loose shelves lies past their back pins",
                closed="the loose shelves tip off their back pins",
                cure="Make the shelves wider, or bore the back row further in.",
            )
            for shelf in j.row("enters")
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Load on a shelf, half of it on each of two pins. [N]

        A pin presses its flat into the shelf and its body into the foot of its hole; strength
        across the grain is taken for both, though the side, whose grain stands upright, bears
        more.

        References:
            Common practice for a shelf that rocks on two of its four pins; an estimate.
        """
        del choice
        sides = [
            woods[seat.part].compression_across for seat in j.row("receives") if seat.part in woods
        ]
        known = [each for each in sides if each is not None]
        size = sizes[j.own("size")]
        flat = 2 * half_flat(j, sizes=sizes) or size
        found = []
        for shelf in j.row("enters"):
            wood = woods.get(shelf.part)
            if wood is None or wood.compression_across is None or len(known) < 2:
                continue
            on_shelf = wood.compression_across * float(flat * sizes[j.own("stand")])
            in_side = min(known) * float(size * sizes[j.own("bore")])
            least, weakest = min((on_shelf, "shelf over its pins"), (in_side, "holes"))
            found.append(
                Estimate(
                    what=f"load on the {shelf.part}",
                    value=2 * least,
                    unit="N",
                    basis="strength across the grain under pins, half the load on each of two",
                    weakest=weakest,
                )
            )
        return tuple(found)

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Both sides bored from one strip, before the glue where that is the habit."""
        sides = [seat.part for seat in j.row("receives")]
        shelves = [seat.part for seat in j.row("enters")]
        tool = shop.first_owned(Tool.BRACE, Tool.HAND_DRILL) or Tool.BRACE
        bore = operation(
            "bore pin holes",
            *sides,
            tool=tool,
            setting=stop(j),
            amount=float(4 * choice.count("holes")),
            alternatives=(Tool.HAND_DRILL, Tool.BRACE),
            note="one strip, marked bottom and front, turned over for the other side",
        )
        if not habits.pin_holes_before_glue:
            bore = replace(
                bore,
                state_before=Worked.FLUSHED,
                state_after=Worked.FLUSHED,
                note=f"{bore.note}; try first whether the drill goes in",
            )
        return (
            operation("mark pair", *sides, setting=strip(j)),
            bore,
            *(operation("fit shelf", shelf) for shelf in shelves),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. The strip: first and last hole, rows, pins, and the hole of each shelf."""
        last = choice.count("holes") - 1
        return (
            *pin_figures(j, sizes=sizes, last=last),
            DrawnSize(word="holes", value=Fraction(last + 1), unit="count"),
            *(
                DrawnSize(word=hole_word(s.part), value=choice[hole_word(s.part)] + 1, unit="count")
                for s in j.row("enters")
            ),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Holes through, off the side or in a joint; shelves that meet, drop or stay out."""
        return pin_faults(j, sizes=sizes, choice=choice, shop=shop, parts=parts)

    @classmethod
    def bench(cls) -> Bench:
        """Two sides of unlike thickness, two shelves of unlike size, a floor below."""
        return pins_bench(cls(), name="loose shelves")


def _width(shelf: Seat) -> Linear:
    return size_of(f"{shelf.part}.width")
