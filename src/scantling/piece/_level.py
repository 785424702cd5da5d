"""Level boards between the two sides: bottom, fixed shelf, deck."""

from __future__ import annotations

from fractions import Fraction

from scantling.joints._joint import Joined, Seat
from scantling.parts import Corner, Surface
from scantling.piece._form import Landing, Sketch, Whole
from scantling.piece._section import JointWanted
from scantling.piece._words import follows, free, habit, inch_or_mm
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Level, Relations
from scantling.units import INCH


def between_sides(
    sketch: Sketch, part: str, wanted: JointWanted, whole: Whole, *, up: Linear
) -> Sketch:
    """Both ends of a level board joined into the sides, and its own sizes.

    Args:
        sketch: With the board already planned, face side up.
        part: The board.
        wanted: The joint the maker asked for.
        whole: The piece.
        up: Height of the board's upper face above the floor. [mm]
    """
    case = sketch.landings["case"]
    joined = []
    for where, end in (("left", Surface.REFERENCE_END), ("right", Surface.FAR_END)):
        side = f"{where} side"
        joined.append(
            Joined(
                name=f"{part} in {side}",
                joint=wanted.joint,
                place=wanted.place,
                seats={
                    "receives": (Seat(part=side, along=up - size_of(f"{part}.thickness")),),
                    "enters": (Seat(part=part, corner=Corner(end=end, face=Surface.BACK_FACE)),),
                },
            )
        )
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    short = size_of(f"{part}.short behind")
    length = case.sum("wide") + joined[0].entry + joined[1].entry
    relations = Relations(
        dimensions=(
            free(f"{part}.short behind", says=f"room behind the {part}", may_be_nothing=True),
        ),
        equations=(
            follows(size_of(f"{part}.length"), length, f"the {part} reaches into both sides"),
            follows(
                size_of(f"{part}.width") + short,
                case.sum("deep"),
                f"the {part} is as deep as the inside",
            ),
        ),
        rules=(
            habit(size_of(f"{part}.thickness"), thick, "usual for shelves", level=Level.RULE),
            habit(short, 0, "it reaches the back"),
        ),
    )
    level = Landing(name=f"level {part}", parts=tuple(j.name for j in joined))
    return sketch.with_joined(*joined).with_relations(relations).with_landing(level)
