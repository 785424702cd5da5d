"""What joints share in which the whole end of one part is let into the face of another.

Local coordinates: along the receiving part runs with into the entering one, across runs with
across from the front edge of the entering part, into the receiving part runs against along the
entering one, whose end stands at `entry`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import LEAST_LIP, Patch, fault
from scantling.joints._joint import (
    Bench,
    Choice,
    Glue,
    Joined,
    Joint,
    Seat,
    SeatRole,
    rectangle,
)
from scantling.parts import ACROSS, INTO, Corner, Extent, Part, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.tools import Shop, whole_depth
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
from scantling.units import INCH, Unit

LEAST_LEFT = Fraction(5)  # [mm] wood behind a socket
LEAST_END = Fraction(10)  # [mm] wood along the grain beside a socket
DEEPEST = Fraction(1, 2)  # [-] of the thickness
SHALLOWEST = Fraction(1, 4)  # [-] of the thickness
CLEAR = Fraction(240)  # [mm] of the entering part outside, on the bench

Range = tuple[Fraction, Fraction]

HOUSED_SEATS = (
    SeatRole(
        role="receives",
        means="along: near face of the other; across: its front edge; into: the face it enters",
    ),
    SeatRole(role="enters", means="along: its end; across: its front edge; into: its near face"),
)


def setting(wanted: Fraction, *, step: Fraction, least: Fraction) -> Fraction:
    """A size no smaller than `least`, else the one wanted, on whole steps of the rule. [mm]"""
    return max(wanted, -(-least // step) * step)


def housed_choice(j: Joined, *, sizes: Sizes | None, shop: Shop) -> dict[str, Fraction]:
    """Depth a third of the thickness, a stop at least half the mate's, and the gap before it.

    Depth and gap are taken as common practice has them; half an inch or 12 mm is a usual stop.
    """
    by_inch = shop.unit is Unit.INCH
    stop = INCH / 2 if by_inch else Fraction(12)
    found = {"stop": stop, "front gap": max(shop.finest, INCH / 32 if by_inch else Fraction(1))}
    if sizes is not None:
        third = j.thickness("receives").at(sizes) / 3
        half = j.thickness("enters").at(sizes) / 2
        found["entry"] = whole_depth(third, unit=shop.unit) or third
        found["stop"] = setting(stop, step=shop.finest, least=half)
    return found


def housed_relations(j: Joined, *, choice: Choice, stops: bool, says: str) -> Relations:
    """How far it goes in, and where a stopped one stops."""
    third = choice["entry"] if "entry" in choice else j.thickness("receives") / 3
    found = Relations(
        dimensions=(
            Dimension(name=j.own("entry"), kind=Kind.TAPE, says=f"depth of the {says} of {j.name}"),
        ),
        bounds=(
            Bound(
                sum=j.thickness("receives") - j.entry - LEAST_LIP,
                because=f"a {says} leaves wood behind it",
                place=j.place,
            ),
        ),
        rules=(
            Rule(
                sum=j.entry - third,
                because=f"a {says} takes a third of the thickness",
                level=Level.RULE,
                source="common practice",
            ),
        ),
    )
    return found + _stop_relations(j, choice) if stops else found


def _stop_relations(j: Joined, choice: Choice) -> Relations:
    said = {"stop": "where the socket stops behind the front", "front gap": "room at the stop"}
    return Relations(
        dimensions=(
            *(
                Dimension(
                    name=j.own(word),
                    kind=Kind.TAPE,
                    says=f"{says}, {j.name}",
                    positive=word == "stop",
                )
                for word, says in said.items()
            ),
            Dimension(
                name=j.own("notch"),
                kind=Kind.FOLLOWS,
                says=f"notch at the front of {j.name}",
                least=None,  # none is cut where the part stands behind the stop
            ),
        ),
        equations=(
            Equation(
                sum=j.size("notch") - j.size("stop") - j.size("front gap") + set_back(j),
                because="the notch clears the stop by the room left there",
            ),
        ),
        bounds=(
            Bound(
                sum=j.width("receives") - j.size("stop"),
                because="a socket stops within the width of its part",
                place=j.place,
            ),
        ),
        rules=tuple(
            Rule(
                sum=j.size(word) - choice[word],
                because=f"usual for the {word}",
                source="common practice",
            )
            for word in said
        ),
    )


def set_back(j: Joined) -> Linear:
    """How far the front edge of the entering part stands behind that of the receiving one. [mm]"""
    return j.seat("receives").across


@dataclass(frozen=True, kw_only=True)
class Run:
    """How a socket runs across its part, in the coordinates of the seats. [mm]"""

    front: Fraction | None  # where it stops; None if it runs out in front
    notch: Fraction | None  # what is cut from the front of the entering part
    edge: Fraction  # front edge of the receiving part
    far: Fraction  # back edge of the receiving part
    deep: Fraction  # where the entering part ends in it

    @property
    def touching(self) -> Range:
        """From where to where both parts stand in the socket. [mm]"""
        starts = (Fraction(0), self.edge, self.front or self.edge, self.notch or self.edge)
        return (max(starts), self.deep)


def run(j: Joined, *, sizes: Sizes, stops: bool) -> Run:
    """Where the socket starts and ends. It runs out behind, through a rabbet if there is one."""
    back = set_back(j).at(sizes)
    width = j.width("enters").at(sizes)
    far = j.width("receives").at(sizes) - back
    notch = sizes[j.own("notch")] if stops else Fraction(0)
    return Run(
        front=sizes[j.own("stop")] - back if stops else None,
        notch=notch if notch > 0 else None,
        edge=-back,
        far=far,
        deep=min(width, far),
    )


def shared_with(j: Joined) -> frozenset[str]:
    """Joints that may claim the same wood of the receiving part."""
    return frozenset(b.owner for b in j.beside if b.role == "receives")


def stop_patches(j: Joined, found: Run, *, sizes: Sizes) -> tuple[Patch, ...]:
    """The shoulder in front of a stopped socket, where the end is cut back."""
    if found.notch is None or found.front is None:
        return ()
    thick = (Fraction(0), j.thickness("enters").at(sizes))
    over = (max(Fraction(0), found.edge), found.front)
    if over[1] <= over[0]:
        return ()
    points = rectangle(axis=INTO, at=Fraction(0), first=thick, second=over)
    return (Patch(zone="notch shoulder", glue=Glue.END_GRAIN, points=points),)


def leaving_ways(
    j: Joined, *, parts: Mapping[str, Part], stops: bool, out: bool
) -> tuple[Way, ...]:
    """The ways the entering part leaves: backwards, forwards if nothing stops it, straight out."""
    seat = j.seat("receives")
    part = parts[seat.part]
    back = seat.way(axis=ACROSS, part=part)
    ways = (back,) if stops else (back, back.opposite)
    return (seat.way(axis=INTO, part=part).opposite, *ways) if out else ways


def depth_faults(
    j: Joined, *, sizes: Sizes, shop: Shop, says: str, depth: Fraction
) -> tuple[Finding, ...]:
    """A socket too deep, too shallow, or with too little wood behind it."""
    thick, part = j.thickness("receives").at(sizes), j.seat("receives").part
    most, least = thick * DEEPEST, thick * SHALLOWEST
    shallower = f"Make the {says} shallower, or the {part} thicker."
    rows = (
        (
            depth > most,
            "deep",
            Weight.MIND,
            f"The {says} takes more than half the thickness of the {part}.",
            shallower,
            (depth, most),
        ),
        (
            depth < least,
            "shallow",
            Weight.NOTE,
            f"The {says} takes less than a quarter of the thickness of the {part}.",
            f"Make the {says} deeper.",
            (depth, least),
        ),
        (
            thick - depth < LEAST_LEFT,
            "thin-floor",
            Weight.MIND,
            f"Little wood is left behind the {says} in the {part}.",
            shallower,
            (thick - depth, LEAST_LEFT),
        ),
    )
    return tuple(
        fault(
            j,
            f"{coded(j)}.{word}",
            weight,
            says=says_so,
            cure=cure,
            figure=figure,
            limit=limit,
            shop=shop,
        )
        for found, word, weight, says_so, cure, (figure, limit) in rows
        if found
    )


def coded(j: Joined) -> str:
    """The joint's title as codes of findings start."""
    return j.joint.title.replace(" ", "-")


def end_faults(
    j: Joined, *, sizes: Sizes, shop: Shop, says: str, depth: Fraction
) -> tuple[Finding, ...]:
    """Short grain between a socket and the end of its part."""
    seat = j.seat("receives")
    before = seat.along.at(sizes)
    behind = j.length("receives").at(sizes) - before - j.thickness("enters").at(sizes)
    left = min(before, behind)
    least = max(LEAST_END, 2 * depth)
    if left >= least:
        return ()
    return (
        fault(
            j,
            f"{coded(j)}.short-grain",
            Weight.MIND,
            says=f"The wood of the {seat.part} beyond the {says} is short and may break out.",
            cure="Move the joint in from the end, leave a horn till it is glued, or dovetail it.",
            figure=left,
            limit=least,
            shop=shop,
        ),
    )


def housed_bench(
    joint: Joint, *, name: str, side: Extent, shelf: Extent, up: Fraction, back: Fraction
) -> Bench:
    """A side, and a shelf that enters it from the right, as a form would join them.

    Args:
        joint: With the maker's options.
        name: What this place is called.
        side: Size of the receiving part. [mm]
        shelf: Width and thickness of the entering part, and its length outside. [mm]
        up: From the foot of the side to the lower face of the shelf. [mm]
        back: How far the shelf's front stands behind the side's. [mm]
    """
    j = Joined(
        name=name,
        joint=joint,
        seats={
            "receives": (Seat(part="side", along=exactly(up), across=exactly(back)),),
            "enters": (Seat(part="shelf", corner=Corner(face=Surface.BACK_FACE)),),
        },
    )
    parts = (
        _planned("side", (Way.UP, Way.BACK, Way.LEFT), (j.thickness("receives"), ZERO, ZERO)),
        _planned(
            "shelf",
            (Way.RIGHT, Way.BACK, Way.DOWN),
            (
                j.thickness("receives") - j.entry,
                exactly(back),
                exactly(up) + j.thickness("enters"),
            ),
        ),
    )
    outside = Equation(
        sum=j.length("enters") - size_of("outside") - j.entry,
        because="the shelf reaches into the side",
    )
    return Bench(
        parts=parts,
        joined=j,
        relations=Relations(
            dimensions=(Dimension(name="outside", kind=Kind.TAPE, says="shelf outside the side"),),
            equations=(outside,),
        ),
        stated=_stated(side, shelf),
    )


def _planned(
    name: str, ways: tuple[Way, Way, Way], at: tuple[Linear, Linear, Linear]
) -> PlannedPart:
    wood = {"side": "white ash", "shelf": "yellow-poplar"}[name]
    return PlannedPart(name=name, family=name, wood=wood, ways=ways, at=at)


def _stated(side: Extent, shelf: Extent) -> tuple[Stated, ...]:
    values = {
        "side.length": side.length,
        "side.width": side.width,
        "side.thickness": side.thickness,
        "outside": shelf.length,
        "shelf.width": shelf.width,
        "shelf.thickness": shelf.thickness,
    }
    return tuple(Stated(name=name, value=value) for name, value in values.items())


def end_grain(zone: str, *, axis: int, at: Fraction, first: Range, second: Range) -> Patch:
    """A patch square to an axis that glue does not hold."""
    points = rectangle(axis=axis, at=at, first=first, second=second)
    return Patch(zone=zone, glue=Glue.END_GRAIN, points=points)
