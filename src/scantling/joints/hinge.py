"""Hinge: butt hinges let into a door's stile and the stile it hangs on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._frame import leaving, out_of_mouth
from scantling.joints._hinge import (
    Hung,
    chosen_hinges,
    hinge_bench,
    hinge_faults,
    hinge_relations,
    hung,
)
from scantling.joints._hinge_screws import (
    chosen_screws,
    hinge_holds,
    screw_faults,
    screw_relations,
)
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
    Motion,
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
from scantling.parts import (
    ACROSS,
    ALONG,
    INTO,
    Board,
    Box,
    Cut,
    Extent,
    Made,
    Part,
    Placement,
    Point,
    Round,
    Span,
    Way,
)
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.linear import ZERO
from scantling.sizes.model import Relations, Sizes

METAL = "brass"


@dataclass(frozen=True, kw_only=True)
class Hinge(Joint):
    """Butt hinges in gains in both edges, the whole knuckle standing out in front.

    Both seats count along from the door's lower end, across from the edges that face each other,
    into from the face. The gains together are as deep as the knuckle is thick less the gap, so a
    leaf fills each. Each hinge lies just inside a rail, or so far from the door's end as the
    maker says; a third one stands half way. Gains in the frame are marked from the hung door.
    Own dimensions: `length`, `open width`, `knuckle`, `gap`, `gain width`, `gain depth`,
    `place 1` and on from the lowest, `from end` where the places count from the ends, `screw`
    and `screw length`.

    References:
        Handwork in Wood, 1910, on hinges and their place; common practice for the depth of gains.
    """

    title: ClassVar[str] = "hinge"

    length: Said | None = option(dimension="length", says="length of the hinge", words=("long",))
    open_width: Said | None = option(
        dimension="open width", says="width of the hinge laid open", words=("wide",)
    )
    knuckle: Said | None = option(dimension="knuckle", says="thickness of the knuckle")
    gain_width: Said | None = option(dimension="gain width", says="width of the gains")
    from_end: Said | None = option(
        dimension="from end", says="from the door's end to the hinge", reads="gap"
    )
    count: int | None = None  # None: two, three on a tall door
    screw: Said | None = option(dimension="screw", says="diameter of its screws")
    screw_length: Said | None = option(dimension="screw length", says="length of its screws")
    screws: int | None = None  # to each leaf; None: two, three on a long hinge

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. What the door hangs on, and the door's stile."""
        means = "along: lower end of the door; across: edge that faces the other; into: face side"
        return (SeatRole(role="receives", means=means), SeatRole(role="enters", means=means))

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. The hinge's own sizes, its gains, and where each hinge stands."""
        del strains  # a hinge holds its gap: what moves, moves on the other side of the door
        found = hinge_relations(j, choice=choice, from_end=self.from_end is not None)
        return found + screw_relations(j, choice=choice)

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
        """3. How many, and a usual size for the door's height."""
        del habits, woods, strains
        found = chosen_hinges(j, sizes=sizes, shop=shop, count=self.count)
        screws = chosen_screws(j, sizes=sizes, shop=shop, each=self.screws)
        return Choice.of({**dict(found.values), **screws})

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. A gain for each leaf, made when the door is hung."""
        all_hung = hung(j, sizes=sizes, choice=choice)
        return {
            j.seat(role).part: tuple(_gain(j, role, one, sizes=sizes) for one in all_hung)
            for role in ("receives", "enters")
        }

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Two leaves and a knuckle to each hinge, each solid in its own place."""
        return tuple(
            part
            for one in hung(j, sizes=sizes, choice=choice)
            for part in _metal(j, one, sizes=sizes, parts=parts)
        )

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Unhung, it comes forward or off the edge; hung, it swings about the pins.

        The turn that opens the door is right-handed about `way`.
        """
        if state is State.LOCKED:
            return ()
        seat = j.seat("receives")
        part = parts[seat.part]
        forward, off = seat.way(axis=INTO, part=part).opposite, out_of_mouth(j, parts)
        if state is State.OPEN:
            return leaving("enters", forward, off)
        gap, out = sizes[j.own("gap")], _pin_out(j, sizes)
        pin = (Fraction(0), -gap / 2, -out)
        return (
            Move(
                role="enters",
                motion=Motion.SWING,
                way=_turning(off, forward),
                about=lifted(seat, [pin], sizes=sizes, part=part)[0],
            ),
        )

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Each leaf on the floor of its gain."""
        found = []
        for role in ("receives", "enters"):
            seat = j.seat(role)
            for one in hung(j, sizes=sizes, choice=choice):
                points = rectangle(axis=ACROSS, at=one.depth, first=one.along, second=one.leaf_into)
                found.append(
                    Contact(
                        between=(seat.part, one.leaf(role)),
                        joined=j.name,
                        zone="leaf",
                        glue=Glue.DRY,
                        fit=Fit.PRESS,
                        patch=lifted(seat, points, sizes=sizes, part=parts[seat.part]),
                    )
                )
        return tuple(found)

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Screwed at each leaf, every way."""
        found = []
        for role in ("receives", "enters"):
            seat = j.seat(role)
            for one in hung(j, sizes=sizes, choice=choice):
                (at,) = lifted(seat, [one.middle], sizes=sizes, part=parts[seat.part])
                found.append(
                    Fixing(
                        between=(seat.part, one.leaf(role)),
                        at=at,
                        holds=frozenset(Way),
                        free=frozenset(),
                        by="screw",
                    )
                )
        return tuple(found)

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. The gap beside the knuckle: the hinges hold it through the year."""
        del choice
        return (
            Gap(
                name=j.own("gap"),
                at_bench=j.size("gap"),
                moving=(),
                least=Fraction(0),
                greatest=None,
                because="the hinges hold the stile's edge; it grows to the other side",
                source="common practice",
            ),
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Pull on a leaf, sag of the door, and weight, by the screws in the weaker stile.

        References:
            Wood Handbook, FPL-GTR-190 and -282, ch. 8: screws drawn from and pressed sideways
            into side grain.
        """
        return hinge_holds(j, sizes=sizes, choice=choice, woods=woods)

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Gains in the door first, in the frame from the door, then hung and left on or off."""
        del choice, shop
        door, frame = j.seat("enters").part, j.seat("receives").part
        gauge = Setting(
            held_by=Tool.WHEEL_GAUGE, to=(SetTo(j.own("gain width"), "width of the gains"),)
        )
        steps = (
            operation(
                "cut gain",
                door,
                setting=gauge,
                reference=Reference.FACE_SIDE,
                note="ends knifed from the leaf; depth half of knuckle less gap",
            ),
            operation(
                "cut gain", frame, setting=gauge, note="places from the door, set in its opening"
            ),
            operation("hang door", door, frame, note="one screw to a leaf, a steel one first"),
        )
        if not habits.hinges_before_finish:
            return steps
        return (*steps, operation("take off hardware", door, frame))

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Gauge settings, and both ends of each hinge from the door's lower end."""
        metal = ("length", "open width", "knuckle", "gap")
        words = (*metal, "gain width", "gain depth", "screw", "screw length")
        found = [DrawnSize(word=w, value=sizes[j.own(w)], dimension=j.own(w)) for w in words]
        for one in hung(j, sizes=sizes, choice=choice):
            low, high = one.along
            found += [
                DrawnSize(
                    word=f"hinge {one.number} starts",
                    value=low,
                    dimension=j.own(f"place {one.number}"),
                    reference="lower end of the door",
                ),
                DrawnSize(word=f"hinge {one.number} stops", value=high, reference="the same"),
            ]
        return tuple(found)

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. Gains or screws that come through, too few hinges, hinges over tenons or others."""
        del parts
        found = hinge_faults(j, sizes=sizes, choice=choice, shop=shop)
        return (*found, *screw_faults(j, sizes=sizes, shop=shop))

    @classmethod
    def bench(cls) -> Bench:
        """A door stile 612 long on a frame stile: hinges 50 by 32, knuckle 7, gap 1. [mm]"""
        joint = cls(
            length=Said(value=Fraction(50)),
            open_width=Said(value=Fraction(32)),
            knuckle=Said(value=Fraction(7)),
        )
        return hinge_bench(joint, tall=Fraction(612))


def _gain(j: Joined, role: str, one: Hung, *, sizes: Sizes) -> Cut:
    seat = j.seat(role)
    words = {"along size": "length", "across size": "gain depth"}
    if seat.along == ZERO:
        words["along start"] = f"place {one.number}"
    if seat.into == ZERO:
        words["into size"] = "gain width"
    return seat.cut(
        sizes,
        name=f"gain {one.number}",
        owner=j.name,
        shape=Box(along=Span(*one.along), across=Span(None, one.depth), into=Span(None, one.width)),
        made=Made.AFTER_GLUE,
        sized={word: j.own(name) for word, name in words.items()},
    )


def _pin_out(j: Joined, sizes: Sizes) -> Fraction:
    """How far the pin stands before the face. [mm]"""
    return sizes[j.own("open width")] / 2 - sizes[j.own("gain width")]


def _metal(j: Joined, one: Hung, *, sizes: Sizes, parts: Mapping[str, Part]) -> Iterator[Part]:
    long = one.along[1] - one.along[0]
    leaf = Extent(length=long, width=one.leaf_into[1] - one.leaf_into[0], thickness=one.depth)
    for role in ("receives", "enters"):
        seat = j.seat(role)
        wood = parts[seat.part]
        corner = (one.along[0], Fraction(0), one.leaf_into[0])
        yield _piece(
            one.leaf(role), leaf, seat, wood, axes=(ALONG, INTO, ACROSS), at=corner, sizes=sizes
        )
    seat, thick = j.seat("receives"), sizes[j.own("knuckle")]
    corner = (
        one.along[0],
        -sizes[j.own("gap")] / 2 - thick / 2,
        -_pin_out(j, sizes) - thick / 2,
    )
    yield _piece(
        one.knuckle,
        Extent(length=long, width=thick, thickness=thick),
        seat,
        parts[seat.part],
        axes=(ALONG, ACROSS, INTO),
        at=corner,
        sizes=sizes,
    )


def _piece(
    name: str,
    extent: Extent,
    seat: Seat,
    wood: Part,
    *,
    axes: tuple[int, int, int],
    at: Point,
    sizes: Sizes,
) -> Part:
    """A piece of metal in the coordinates of a seat; `axes` are its length, width, thickness."""
    is_knuckle = name.endswith("knuckle")
    ways = [seat.way(axis=axis, part=wood) for axis in axes]
    return Part(
        name=name,
        family="hinge knuckle" if is_knuckle else "hinge leaf",
        extent=extent,
        wood=METAL,
        cut_of_wood="",
        placement=Placement(
            along=ways[0],
            across=ways[1],
            into=ways[2],
            at=lifted(seat, [at], sizes=sizes, part=wood)[0],
        ),
        hardware=True,
        moves_with="" if is_knuckle else wood.moves_with,
        blank=Round() if is_knuckle else Board(),
    )


def _turning(away: Way, forward: Way) -> tuple[Fraction, Fraction, Fraction]:
    """Axis about which a right-handed turn carries `away` into `forward`."""
    (a, b, c), (d, e, f) = _vector(away), _vector(forward)
    return (Fraction(b * f - c * e), Fraction(c * d - a * f), Fraction(a * e - b * d))


def _vector(way: Way) -> tuple[int, int, int]:
    found = [way.sign if axis == way.axis else 0 for axis in range(3)]
    return (found[0], found[1], found[2])
