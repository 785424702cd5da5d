"""Level boards between the two sides: bottom, fixed shelf, deck."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Joined, Seat
from scantling.parts import Corner, Surface
from scantling.piece._form import Landing, Sketch, Whole
from scantling.piece._made import entering, far_end, lacking, reaching
from scantling.piece._section import AsBoardsGive, JointWanted, Said
from scantling.piece._words import habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, exactly, size_of
from scantling.sizes.model import Bound, Level, Relations, Yields
from scantling.units import INCH

SIDES = ("left side", "right side")
LEAST_BETWEEN = Fraction(6)  # [mm] of the sides from socket to socket: common practice
SUB_TOP_RAILS = ("front sub-top rail", "rear sub-top rail")
LENGTHS = tuple(f"{side}.length" for side in SIDES)
WIDTHS = tuple(f"{side}.width" for side in SIDES)


def foot_of(side: str, whole: Whole) -> Linear:
    """How high the lower end of a side stands: on the floor, unless it was made short. [mm]"""
    return lacking(f"{side}.length", LENGTHS, whole)


def _within(room: Linear, because: str) -> Bound:
    return Bound(sum=room, because=because, yields=Yields.NEVER)


def said_or_usual(name: str, said: Said | AsBoardsGive | None, usual: Fraction) -> Linear:
    """A size as the maker said it, else what it will most likely be.

    For bounds that a habit should not give way to: a shelf that lies too low is no thin shelf.
    """
    return size_of(name) if isinstance(said, Said) else exactly(usual)


def _above(sketch: Sketch, part: str, underside: Linear) -> Bound:
    """A board lies clear of the bottom, and the bottom of the floor."""
    if "level bottom" in sketch.landings:
        room, what = underside - size_of("bottom.top face"), "bottom"
    else:
        room, what = underside, "floor"
    return _within(room - LEAST_BETWEEN, f"the {part} lies above the {what}, wood between them")


def _below(sketch: Sketch, part: str, up: Linear) -> Bound:
    """A board lies clear of what ties the sides at the top."""
    rail = next((rail for rail in SUB_TOP_RAILS if rail in sketch.landings), None)
    end = sketch.landings[rail].sum("under") if rail else size_of("case.tall")
    what = rail or "upper end of the sides"
    return _within(end - up - LEAST_BETWEEN, f"the {part} lies below the {what}, wood between them")


def between_sides(
    sketch: Sketch,
    part: str,
    wanted: JointWanted,
    whole: Whole,
    *,
    up: Linear,
    thick: Said | AsBoardsGive | None,
) -> Sketch:
    """Both ends of a level board joined into the sides, and its own sizes.

    Args:
        sketch: With the board already planned, face side up.
        part: The board.
        wanted: The joint the maker asked for.
        whole: The piece.
        up: Height of the board's upper face above the floor. [mm]
        thick: What the maker says of its thickness.
    """
    case = sketch.landings["case"]
    length, joined = f"{part}.length", []
    for where, end in (("left", Surface.REFERENCE_END), ("right", Surface.FAR_END)):
        side = f"{where} side"
        joined.append(
            Joined(
                name=f"{part} in {side}",
                joint=wanted.joint,
                place=wanted.place,
                seats={
                    "receives": (
                        Seat(
                            part=side,
                            along=up - size_of(f"{part}.thickness") - foot_of(side, whole),
                        ),
                    ),
                    "enters": (
                        Seat(
                            part=part,
                            corner=Corner(end=end, face=Surface.BACK_FACE),
                            along=ZERO if where == "left" else far_end(length, whole),
                        ),
                    ),
                },
            )
        )
    usual = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    underside = up - said_or_usual(f"{part}.thickness", thick, usual)
    relations = entering(
        case.sum("wide") + joined[0].entry + joined[1].entry,
        part,
        joined[1].entry,
        f"the {part} reaches into both sides",
        whole=whole,
    ) + Relations(
        rules=(habit(size_of(f"{part}.thickness"), usual, "usual for shelves", level=Level.RULE),),
        bounds=(
            _above(sketch, part, underside),
            _below(sketch, part, up),
        ),
    )
    relations += reaching(
        case.sum("deep"),
        f"{part}.width",
        f"the {part} is as deep as the inside",
        whole=whole,
    )
    level = Landing(name=f"level {part}", parts=tuple(j.name for j in joined))
    return sketch.with_joined(*joined).with_relations(relations).with_landing(level)
