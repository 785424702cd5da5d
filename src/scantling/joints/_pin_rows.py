"""Rows of holes for shelf pins: sizes, places, the pins themselves and a case on the bench."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from scantling.exact import Fraction
from scantling.joints._joint import Choice, DrawnSize, Joined, Motion, Move, Seat, lifted
from scantling.joints._pin_bays import (
    BAY,
    Row,
    Wanted,
    bay_of,
    bay_relations,
    floor,
    floors,
    heights,
    row_in,
)
from scantling.parts import ACROSS, ALONG, INTO, Box, Cut, Part, Point, Span
from scantling.parts.shape import INSIDE_CIRCLE, around
from scantling.shop.operations import Reference, Setting, SetTo
from scantling.shop.tools import Shop, Tool, nearest_owned, whole_depth
from scantling.sizes.linear import Linear, exactly, size_of
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

BEHIND = Fraction(5)  # [mm] of the side left behind a hole
FINEST, THICKEST = Fraction(9, 2), Fraction(8)  # [mm] diameters of pins sold
HOLES = 7
FLAT = Fraction(1, 4)  # [-] height of a pin's flat above its middle, over its diameter

SAYS = {
    "size": "diameter of the pins",
    "bore": "depth of the holes",
    "stand": "how far a pin stands out",
    "rest": "flat of a pin above its middle",
    "lowest": "lowest hole above the bottom of the opening",
    "pitch": "from hole to hole",
    "inset": "rows in from the edges of the shelf",
}
FIRST, FRONT, BACK = "first hole", "front row", "back row"
TAPES = ("lowest", "pitch", "inset")
RULED = ("size", "bore", "rest", "stand")  # bought, or of a tool owned


def hole_word(shelf: str) -> str:
    """What the choice calls the hole on which a shelf lies, counted from 0."""
    return f"hole of {shelf}"


def pin_choice(
    j: Joined, *, holes: int | None, hole: int | None, sizes: Sizes | None, shop: Shop
) -> Choice:
    """Pins of a bit owned, a usual row of holes, and the hole of each shelf.

    Shelves share the height of an opening that is known; else they are spread over their row.

    Args:
        j: Where they lie.
        holes: In each row, as the maker says.
        hole: Of the lowest shelf, counted from 1, as the maker says.
        sizes: As solved last.
        shop: Tools owned.

    References:
        Rows 32 apart and 37 in as in the making of cabinets by machine; 1 in and 1 1/2 in where
        the rule reads inches. Common practice, like the rest.
    """
    by_inch = shop.sold_in is Unit.INCH
    wanted = INCH / 4 if by_inch else Fraction(5)
    bit = nearest_owned(wanted, shop.bores, low=FINEST, high=THICKEST)
    found = {
        "size": bit.size if bit else wanted,
        "bore": INCH * Fraction(3, 8) if by_inch else Fraction(10),
        "stand": INCH * Fraction(3, 8) if by_inch else Fraction(10),
        "lowest": 6 * INCH if by_inch else Fraction(150),
        "pitch": INCH if by_inch else Fraction(32),
        "inset": INCH * Fraction(3, 2) if by_inch else Fraction(37),
    }
    if sizes is not None:
        thin = min(sizes[f"{seat.part}.thickness"] for seat in j.row("receives"))
        deepest = whole_depth(thin - BEHIND, unit=shop.unit)
        if 0 < deepest < found["bore"]:
            found["bore"] = deepest
    tall = [] if sizes is None else heights(j, sizes=sizes)
    if len(floors(j)) > 1:
        found[BAY] = Fraction(bay_of(tall))
    row = _row(j, found, (holes, hole), tall, sizes=sizes, shop=shop)
    shelves = [seat.part for seat in j.row("enters")]
    on = {hole_word(shelf): Fraction(at) for shelf, at in zip(shelves, row.holes, strict=True)}
    return Choice.of({**found, "lowest": row.lowest, "holes": Fraction(row.count), **on})


def _row(
    j: Joined,
    found: Mapping[str, Fraction],
    said: tuple[int | None, int | None],
    tall: Sequence[Fraction | None],
    *,
    sizes: Sizes | None,
    shop: Shop,
) -> Row:
    """Holes of the row, and those on which the shelves lie."""
    holes, hole = said
    clear = tall[bay_of(tall)] if tall else None
    if sizes is None or clear is None:
        return _spread(len(j.row("enters")), found["lowest"], holes, hole)
    states_lowest = getattr(j.joint, "lowest", None) is not None
    wanted = Wanted(
        lowest=sizes[j.own("lowest")] if states_lowest else found["lowest"],
        said=states_lowest,
        pitch=sizes[j.own("pitch")],
        rest=sizes[j.own("rest")],
        count=holes,
        first=hole,
        unit=shop.unit,
    )
    return row_in(clear, [sizes[f"{seat.part}.thickness"] for seat in j.row("enters")], wanted)


def _spread(shelves: int, lowest: Fraction, holes: int | None, hole: int | None) -> Row:
    """Shelves spread evenly over a row that stands where it is said to."""
    count = max(holes or max(HOLES, shelves), 1)
    on = [(2 * i + 1) * count // (2 * shelves) for i in range(shelves)]
    if hole is not None:
        on[0] = min(hole, count) - 1
    return Row(lowest=lowest, count=count, holes=tuple(on))


def pin_relations(j: Joined, *, choice: Choice) -> Relations:
    """Rows, pins, and the height at which each shelf rests."""
    own = Relations(
        dimensions=tuple(
            Dimension(
                name=j.own(word),
                kind=Kind.TAPE if word in TAPES else Kind.TOOL,
                says=f"{says}, {j.name}",
                positive=word not in {"rest", "lowest"},
            )
            for word, says in SAYS.items()
        ),
        bounds=(
            Bound(
                sum=j.size("size") / 2 - j.size("rest"),
                because="a shelf rests no higher than the top of its pins",
                place=j.place,
            ),
        ),
        rules=tuple(
            Rule(
                sum=j.size(word)
                - (j.size("size") * FLAT if word == "rest" else exactly(choice[word])),
                because=f"usual for the {says}",
                level=Level.RULE if word in RULED else Level.HABIT,
                source="common practice",
            )
            for word, says in SAYS.items()
        ),
    )
    own += bay_relations(j, choice) + _strip_relations(j)
    for seat in j.row("enters"):
        own += _rests(j, seat.part, choice)
    return own


def _strip_relations(j: Joined) -> Relations:
    """Where the strip puts its first hole and both rows, from the side's own references."""
    side, first = j.row("receives")[0], j.row("enters")[0]
    edge = side.across - first.across
    width = size_of(f"{first.part}.width")
    sums = {
        FIRST: (centre(j, 0) + side.along, "holes count from the reference end of the side"),
        FRONT: (edge + j.size("inset"), "the front row stands in from the shelf's front"),
        BACK: (edge + width - j.size("inset"), "the back row stands in from the shelf's back"),
    }
    return Relations(
        dimensions=tuple(
            Dimension(name=j.own(word), kind=Kind.FOLLOWS, says=f"{word}, {j.name}", least=None)
            for word in sums
        ),
        equations=tuple(
            Equation(sum=j.size(word) - value, because=because)
            for word, (value, because) in sums.items()
        ),
    )


def strip(j: Joined) -> Setting:
    """What the boring strip is marked with, each figure from the surface it is laid to."""
    return Setting(
        held_by=Tool.STORY_STICK,
        to=(
            SetTo(j.own(FIRST), "middle of the first hole", Reference.TRUE_END),
            SetTo(j.own("pitch"), "from hole to hole"),
            SetTo(j.own(FRONT), "front row", Reference.FACE_EDGE),
            SetTo(j.own(BACK), "back row", Reference.FACE_EDGE),
        ),
    )


def stop(j: Joined) -> Setting:
    """What the stop on the bit is set to."""
    deep = SetTo(j.own("bore"), "depth of the holes", Reference.FACE_SIDE)
    return Setting(held_by=Tool.DEPTH_STOP, to=(deep,))


def _counted_from(j: Joined) -> str:
    """What the lowest hole is counted from, in words."""
    known = floors(j)
    if not known:
        return str(Reference.TRUE_END)
    # no opening is named where the form counts from the bottom of the case
    whole_case = len(known) == 1 and not known[0].owner
    return "top face of the bottom" if whole_case else "bottom of the opening"


def pin_figures(j: Joined, *, sizes: Sizes, last: int) -> tuple[DrawnSize, ...]:
    """Pins, holes and rows, with what each is counted from."""
    end, edge = str(Reference.TRUE_END), str(Reference.FACE_EDGE)
    counted = {
        "lowest": _counted_from(j),
        "inset": "from the edges of the shelf",
        "pitch": "from hole to hole",
        FIRST: end,
        FRONT: edge,
        BACK: edge,
    }
    words = ("size", "bore", *counted)
    far = sizes[j.own(FIRST)] + last * sizes[j.own("pitch")]
    return (
        *(
            DrawnSize(
                word=word,
                value=sizes[j.own(word)],
                dimension=j.own(word),
                reference=counted.get(word, ""),
            )
            for word in words
        ),
        DrawnSize(word="last hole", value=far, reference=end),
    )


def _rests(j: Joined, shelf: str, choice: Choice) -> Relations:
    name = j.own(f"{shelf} rests")
    hole = centre(j, choice.count(hole_word(shelf)))
    return Relations(
        dimensions=(
            Dimension(name=name, kind=Kind.FOLLOWS, says=f"height of the underside of the {shelf}"),
        ),
        equations=(
            Equation(
                sum=size_of(name) - hole - j.size("rest"),
                because=f"the {shelf} rests on the pins in its holes",
            ),
        ),
    )


def centre(j: Joined, hole: int) -> Linear:
    """Middle of a hole along the sides, counted from 0. [mm]"""
    return floor(j) + j.size("lowest") + hole * j.size("pitch")


@dataclass(frozen=True, kw_only=True)
class Rows:
    """Where the two rows stand across the sides, front and back. [mm]"""

    front: Fraction
    back: Fraction

    def named(self) -> dict[str, Fraction]:
        """By name."""
        return {"front": self.front, "back": self.back}


def rows_of(j: Joined, *, sizes: Sizes) -> Rows:
    """Rows that suit the first shelf; its own edges are what the inset is counted from."""
    first = j.row("enters")[0]
    low, high = edges(first, sizes=sizes)
    inset = sizes[j.own("inset")]
    return Rows(front=low + inset, back=high - inset)


def edges(shelf: Seat, *, sizes: Sizes) -> tuple[Fraction, Fraction]:
    """Front and back edge of a shelf, across the sides. [mm]"""
    low = -shelf.across.at(sizes)
    return (low, low + sizes[f"{shelf.part}.width"])


def flat_of(j: Joined, *, sizes: Sizes) -> tuple[Cut, ...]:
    """What is taken off the upper side of a pin where it stands out; nothing off a plain peg."""
    radius, rest = sizes[j.own("size")] / 2, sizes[j.own("rest")]
    if rest == radius:
        return ()
    shape = Box(along=Span(sizes[j.own("bore")], None), across=Span(radius + rest, None))
    return (Cut(name="flat", owner=j.name, shape=shape),)


def half_flat(j: Joined, *, sizes: Sizes) -> Fraction:
    """Half the width of a pin's flat, of the polygon that stands for its section. [mm]"""
    radius, rest = sizes[j.own("size")] / 2, sizes[j.own("rest")]
    ring = [(u * radius, v * radius) for u, v in INSIDE_CIRCLE]
    for (u, v), (c, d) in zip(ring, [*ring[1:], ring[0]], strict=True):
        if d > v and min(u, c) <= rest <= max(u, c) and u != c and v >= 0:
            return v + (d - v) * (rest - u) / (c - u)
    return Fraction(0)


def end_gap(shelf: Part, side: Part, seat: Seat, *, sizes: Sizes) -> Fraction:
    """Room between a shelf's end and the face of the side it points at. [mm]"""
    into = seat.way(axis=INTO, part=side)
    face = seat.to_piece((Fraction(0), Fraction(0), Fraction(0)), sizes=sizes, part=side)
    extent = shelf.extent
    ends = [
        shelf.placement.to_piece(p)[into.axis]
        for p in ((Fraction(0),) * 3, (extent[ALONG], extent[ACROSS], extent[INTO]))
    ]
    return min(into.sign * (face[into.axis] - end) for end in ends)


@dataclass(frozen=True, kw_only=True)
class Pin:
    """A pin in its place: along and across the side it sits in. [mm]"""

    name: str
    seat: Seat
    shelf: Seat
    at: tuple[Fraction, Fraction]


def pins_of(j: Joined, *, sizes: Sizes, choice: Choice) -> Iterator[Pin]:
    """Four pins to each shelf: at either side, front and back."""
    rows = rows_of(j, sizes=sizes).named()
    for shelf, seat, row in product(j.row("enters"), j.row("receives"), rows):
        yield Pin(
            name=f"{row} pin of {shelf.part} in {seat.part}",
            seat=seat,
            shelf=shelf,
            at=(centre(j, choice.count(hole_word(shelf.part))).at(sizes), rows[row]),
        )


def floor_patch(j: Joined, pin: Pin, *, sizes: Sizes) -> tuple[Point, ...]:
    """The inner end of a pin, on the floor of its hole."""
    radius, bore = sizes[j.own("size")] / 2, sizes[j.own("bore")]
    ring = around(INSIDE_CIRCLE, centre=pin.at, radius=radius)
    return tuple((u, v, bore) for u, v in ring)


def tilt(j: Joined, shelf: Seat, seat: Seat, *, sizes: Sizes, parts: Mapping[str, Part]) -> Move:
    """About the lower edge of the end at that side: the other end comes up."""
    side = parts[seat.part]
    gap = end_gap(parts[shelf.part], side, seat, sizes=sizes)
    low, _ = edges(shelf, sizes=sizes)
    # heights are counted along the sides
    corner = (sizes[j.own(f"{shelf.part} rests")], low, -gap)
    (about,) = lifted(seat, [corner], sizes=sizes, part=side)
    axis = seat.way(axis=ACROSS, part=side).axis
    way = (Fraction(axis == 0), Fraction(axis == 1), Fraction(axis == 2))
    return Move(role="enters", motion=Motion.TILT, way=way, about=about)
