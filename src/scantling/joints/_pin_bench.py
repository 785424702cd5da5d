"""Two sides and two shelves on pins, on the bench."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Bench, Beside, Joined, Joint, Seat
from scantling.parts import Way
from scantling.parts.planned import PlannedPart
from scantling.sizes.linear import ZERO, Linear, exactly, size_of
from scantling.sizes.model import Dimension, Equation, Kind, Relations, Stated


def pins_bench(joint: Joint, *, name: str, beside: tuple[Beside, ...] = ()) -> Bench:
    """Two sides 764 apart and two unlike shelves, a floor 90 above the sides' feet."""
    nose, end = Fraction(6), Fraction(1)
    found = (
        Beside(
            what="floor",
            owner="bottom",
            role="receives",
            axis=0,
            start=exactly(90),
            size=ZERO,
            depth=ZERO,
        ),
        *beside,
    )
    shelves = ("lower shelf", "upper shelf")
    j = Joined(
        name=name,
        joint=joint,
        seats={
            "receives": (Seat(part="left side"), Seat(part="right side")),
            "enters": tuple(Seat(part=shelf, across=exactly(-nose)) for shelf in shelves),
        },
        beside=found,
    )
    left = size_of("left side.thickness")
    parts = [
        _planned("left side", "white ash", (Way.UP, Way.BACK, Way.LEFT), (left, ZERO, ZERO)),
        _planned(
            "right side",
            "white ash",
            (Way.UP, Way.BACK, Way.RIGHT),
            (left + size_of("clear"), ZERO, ZERO),
        ),
    ]
    for shelf in shelves:
        up = j.size(f"{shelf} rests") + size_of(f"{shelf}.thickness")
        at = (left + end, exactly(nose), up)
        parts.append(_planned(shelf, "yellow-poplar", (Way.RIGHT, Way.BACK, Way.DOWN), at))
    relations = Relations(
        dimensions=(Dimension(name="clear", kind=Kind.TAPE, says="between the sides"),),
        equations=tuple(
            Equation(
                sum=size_of(f"{shelf}.length") - size_of("clear") + 2 * end,
                because="a shelf is short by a gap at each end",
            )
            for shelf in shelves
        ),
    )
    for part in parts:
        relations += part.relations()
    return Bench(
        parts=tuple(parts),
        joined=j,
        relations=relations,
        stated=(
            *(Stated(name=n, value=Fraction(v)) for n, v in STATED.items()),
            *joint.stated(j),
        ),
    )


STATED = {
    "left side.length": 620,
    "left side.width": 283,
    "left side.thickness": 19,
    "right side.length": 620,
    "right side.width": 283,
    "right side.thickness": 21,
    "clear": 764,
    "lower shelf.width": 260,
    "lower shelf.thickness": 22,
    "upper shelf.width": 256,
    "upper shelf.thickness": 18,
}


def _planned(
    name: str, wood: str, ways: tuple[Way, Way, Way], at: tuple[Linear, Linear, Linear]
) -> PlannedPart:
    return PlannedPart(name=name, family=name.rsplit(maxsplit=1)[-1], wood=wood, ways=ways, at=at)
