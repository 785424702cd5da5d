"""Sizes and places of butt hinges on a door, and what can be wrong with them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import Range, fault
from scantling.joints._joint import Bench, Beside, Choice, Joined, Joint, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.tools import Shop
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
    Stated,
)
from scantling.units import INCH, Unit, rounded

TALL = Fraction(900)  # [mm] a door above this wants a third hinge
LEAST_BEHIND = Fraction(3)  # [mm] wood behind a leaf
BEFORE_FACE = Fraction(1, 2)  # [mm] pin before the face
LENGTH_SHARE = 10  # a hinge is about a tenth of the door

# usual sizes of a shop that reads inches, and of one that reads millimetres [mm]
_USUAL = {
    "open width": (INCH * 11 / 8, Fraction(32)),
    "knuckle": (INCH / 4, Fraction(7)),
    "gap": (INCH / 16, Fraction(1)),
    "length": (INCH * 2, Fraction(50)),
}


@dataclass(frozen=True, kw_only=True)
class Hung:
    """One hinge in place, in the coordinates of both seats. [mm]"""

    name: str
    number: int
    along: Range
    width: Fraction  # of the gain, from the face
    depth: Fraction  # of the gain, from the edge
    leaf_into: Range  # the leaf behind the knuckle

    def leaf(self, role: str) -> str:
        """Name of the leaf in that seat."""
        return f"{self.name}.{'frame' if role == 'receives' else 'door'} leaf {self.number}"

    @property
    def middle(self) -> tuple[Fraction, Fraction, Fraction]:
        """Of a leaf, on the floor of its gain. [mm]"""
        return (
            (self.along[0] + self.along[1]) / 2,
            self.depth,
            (self.leaf_into[0] + self.leaf_into[1]) / 2,
        )

    @property
    def knuckle(self) -> str:
        """Name of the knuckle."""
        return f"{self.name}.hinge {self.number} knuckle"


def count_of(choice: Choice) -> int:
    """How many hinges."""
    return choice.count("count") if "count" in choice else 2


def hung(j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[Hung, ...]:
    """Every hinge from the lowest."""
    width, depth = sizes[j.own("gain width")], sizes[j.own("gain depth")]
    pin_out = sizes[j.own("open width")] / 2 - width
    behind = sizes[j.own("knuckle")] / 2 - pin_out
    found = []
    for number in range(1, count_of(choice) + 1):
        place = sizes[j.own(f"place {number}")]
        found.append(
            Hung(
                name=j.name,
                number=number,
                along=(place, place + sizes[j.own("length")]),
                width=width,
                depth=depth,
                leaf_into=(behind, width),
            )
        )
    return tuple(found)


def chosen_hinges(j: Joined, *, sizes: Sizes | None, shop: Shop, count: int | None) -> Choice:
    """Two hinges, three on a tall door; about a tenth of its height, by the half inch or 10 mm."""
    by_inch = shop.unit is Unit.INCH
    found = {word: both[0] if by_inch else both[1] for word, both in _USUAL.items()}
    found["count"] = Fraction(count or 2)
    if sizes is None:
        return Choice.of(found)
    tall = j.length("enters").at(sizes)
    if count is None and tall > TALL:
        found["count"] = Fraction(3)
    step = INCH / 2 if by_inch else Fraction(10)
    found["length"] = max(found["length"], rounded(tall / LENGTH_SHARE, to=step))
    return Choice.of(found)


def hinge_relations(j: Joined, *, choice: Choice, from_end: bool) -> Relations:
    """Everything said of the hinges' sizes and places."""
    return _bought(j, choice) + _gains(j) + _places(j, choice, from_end=from_end)


def _bought(j: Joined, choice: Choice) -> Relations:
    words = ("length", "open width", "knuckle")
    gap = j.size("gap")
    told = j.neighbours("top rail", role="enters") + j.neighbours("bottom rail", role="enters")
    given = Relations(rules=(_rule(gap - choice["gap"], "a usual gap", level=Level.HABIT),))
    if told:
        because = "the hinge leaves the gap that the door was made for"
        given = Relations(equations=(Equation(sum=gap - told[0].depth, because=because),))
    return given + Relations(
        dimensions=(
            *(_dimension(j, word, Kind.TOOL, f"{word} of the hinge") for word in words),
            _dimension(j, "gap", Kind.FOLLOWS, "gap beside the knuckle", may_be_nothing=True),
        ),
        rules=tuple(_rule(j.size(word) - choice[word], "a usual hinge") for word in words),
    )


def _gains(j: Joined) -> Relations:
    width, depth = j.size("gain width"), j.size("gain depth")
    return Relations(
        dimensions=(
            _dimension(j, "gain width", Kind.MATE, "width of the gain, from the leaf"),
            _dimension(j, "gain depth", Kind.FOLLOWS, "depth of each gain"),
        ),
        equations=(
            Equation(
                sum=2 * depth - j.size("knuckle") + j.size("gap"),
                because="both gains and the gap take the knuckle",
            ),
        ),
        bounds=(
            Bound(
                sum=j.size("open width") / 2 - width,
                because="the pin stands before the face",
                place=j.place,
            ),
            Bound(
                sum=2 * width - j.size("open width") / 2 - j.size("knuckle") / 2,
                because="most of a leaf lies behind its knuckle",
                place=j.place,
            ),
        ),
        rules=(
            _rule(
                width - j.size("open width") / 2 + BEFORE_FACE,
                "the pin stands just before the face",
            ),
        ),
    )


def _places(j: Joined, choice: Choice, *, from_end: bool) -> Relations:
    count = count_of(choice)
    places = [j.size(f"place {number}") for number in range(1, count + 1)]
    found = Relations(
        dimensions=tuple(
            _dimension(j, f"place {n}", Kind.TAPE, f"hinge {n} from the door's end")
            for n in range(1, count + 1)
        )
    )
    low, high, more = _ends(j, from_end=from_end)
    rules = [_rule(places[0] - low, "as the lower hinge is placed")]
    if count > 1:
        rules.append(_rule(places[-1] - high, "as the upper hinge is placed"))
    for i, place in enumerate(places[1:-1], start=1):
        share = Fraction(i, count - 1)
        because = "the others stand evenly between"
        rules.append(_rule(place - places[0] * (1 - share) - places[-1] * share, because))
    return found + more + Relations(rules=tuple(rules))


def _ends(j: Joined, *, from_end: bool) -> tuple[Linear, Linear, Relations]:
    """Where the lowest and the highest hinge start, and what that takes. [mm]"""
    tall, long = j.length("enters"), j.size("length")
    top, bottom = (j.neighbours(f"{w} rail", role="enters") for w in ("top", "bottom"))
    if top and bottom and not from_end:
        return bottom[0].start + bottom[0].size, top[0].start - long, Relations()
    off = j.size("from end")
    more = Relations(
        dimensions=(
            _dimension(j, "from end", Kind.TAPE, "hinge from the end", may_be_nothing=True),
        ),
        rules=(_rule(off - long, "a hinge's length from the end", level=Level.HABIT),),
    )
    return off, tall - off - long, more


def _dimension(
    j: Joined, word: str, kind: Kind, says: str, *, may_be_nothing: bool = False
) -> Dimension:
    return Dimension(
        name=j.own(word), kind=kind, says=f"{says}, {j.name}", positive=not may_be_nothing
    )


def _rule(found: Linear, because: str, *, level: Level = Level.RULE) -> Rule:
    return Rule(sum=found, because=because, level=level, source="common practice")


def hinge_faults(j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop) -> tuple[Finding, ...]:
    """Faults of the hinges of one door."""
    return (
        *_thin(j, sizes=sizes, shop=shop),
        *_number(j, sizes=sizes, choice=choice, shop=shop),
        *_over_tenons(j, sizes=sizes, choice=choice, shop=shop),
    )


def _thin(j: Joined, *, sizes: Sizes, shop: Shop) -> Iterator[Finding]:
    for role in ("receives", "enters"):
        seat = j.seat(role)
        thick = j.thickness(role).at(sizes) - seat.into.at(sizes)
        behind = thick - sizes[j.own("gain width")]
        if behind < LEAST_BEHIND:
            yield fault(
                j,
                "hinge.leaf-too-wide",
                Weight.MIND,
                says=f"The gain leaves little wood behind the leaf in the {seat.part}.",
                cure="Take a narrower hinge.",
                figure=behind,
                limit=LEAST_BEHIND,
                shop=shop,
            )


def _number(j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop) -> Iterator[Finding]:
    tall, count = j.length("enters").at(sizes), count_of(choice)
    if count < 3 and tall > TALL:
        yield fault(
            j,
            "hinge.too-few",
            Weight.MIND,
            says=f"The {j.seat('enters').part} is tall for {count} hinges and may sag or bow.",
            cure="Hang it on three.",
            figure=tall,
            limit=TALL,
            shop=shop,
        )
    places = hung(j, sizes=sizes, choice=choice)
    for one, other in pairwise(places):
        if other.along[0] < one.along[1]:
            yield fault(
                j,
                "hinge.crowded",
                Weight.HALT,
                says=f"Two hinges on the {j.seat('receives').part} lie over each other.",
                cure="Take shorter hinges or fewer.",
                figure=other.along[0],
                limit=one.along[1],
                shop=shop,
            )


def _over_tenons(j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop) -> Iterator[Finding]:
    for where in ("top", "bottom"):
        for rail in j.neighbours(f"{where} rail", role="enters"):
            low = rail.start.at(sizes)
            high = low + rail.size.at(sizes)
            for one in hung(j, sizes=sizes, choice=choice):
                over = min(high, one.along[1]) - max(low, one.along[0])
                if over > 0:
                    yield fault(
                        j,
                        "hinge.over-tenon",
                        Weight.MIND,
                        says=f"A hinge on the {j.seat('receives').part} lies over the door's"
                        f" {where} rail; screws may meet its tenon.",
                        cure="Move it inside the rail, or pilot it clear of the tenon.",
                        figure=over,
                        limit=Fraction(0),
                        shop=shop,
                    )


def hinge_bench(joint: Joint, *, tall: Fraction, gap: Fraction = Fraction(1)) -> Bench:
    """A door stile with rails of 62 and 78 beside the frame stile it hangs on. [mm]

    Args:
        joint: With the maker's options.
        tall: The door. [mm]
        gap: Between the stiles. [mm]
    """
    foot = exactly(14)
    room, rails = (
        size_of("hinge gap"),
        {"top": size_of("top rail"), "bottom": size_of("bottom rail")},
    )
    beside = tuple(
        Beside(
            what=f"{where} rail",
            owner="",
            role="enters",
            axis=0,
            start=size_of("door stile.length") - wide if where == "top" else ZERO,
            size=wide,
            depth=room,
        )
        for where, wide in rails.items()
    )
    outer = Corner(edge=Surface.BACK_EDGE)
    j = Joined(
        name="door on stile",
        joint=joint,
        seats={
            "receives": (Seat(part="stile", along=foot),),
            "enters": (Seat(part="door stile", corner=outer),),
        },
        beside=beside,
    )
    ways = (Way.UP, Way.LEFT, Way.BACK)
    far = size_of("stile.width") + room + size_of("door stile.width")
    places = {
        "stile": (size_of("stile.width"), ZERO, ZERO),
        "door stile": (far, ZERO, foot),
    }
    parts = tuple(
        PlannedPart(name=name, family=name, wood="white ash", ways=ways, at=at)
        for name, at in places.items()
    )
    stated = {
        "stile.length": tall + 40,
        "stile.width": Fraction(45),
        "stile.thickness": Fraction(20),
        "door stile.length": tall,
        "door stile.width": Fraction(55),
        "door stile.thickness": Fraction(22),
        "hinge gap": gap,
        "top rail": Fraction(62),
        "bottom rail": Fraction(78),
    }
    words = ("hinge gap", "top rail", "bottom rail")
    found = Relations(dimensions=tuple(Dimension(name=word, kind=Kind.TAPE) for word in words))
    for part in parts:
        found += part.relations()
    return Bench(
        parts=parts,
        joined=j,
        relations=found,
        stated=(
            *(Stated(name=name, value=value) for name, value in stated.items()),
            *joint.stated(j),
        ),
    )
