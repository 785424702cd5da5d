"""Openings of one row of a front, side by side, and the mullions between them."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.exact import Fraction
from scantling.joints._joint import Joined, Joint, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Opening, Sketch
from scantling.piece._made import entering, far_end
from scantling.piece._rows import (
    STILES,
    Storey,
    Thickness,
    opening_name,
    shoulder_gaps,
)
from scantling.piece._words import alike, follows, free, habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, size_of, total
from scantling.sizes.model import Kind, Level, Relations
from scantling.units import INCH

TAPED = (Kind.TAPE, Kind.TAPE, Kind.TAPE)
FRAME_KINDS = (Kind.TAPE, Kind.TAPE, Kind.MATE)  # thickness from the first stile
STAGE = 20  # the frame is made and flushed before anything is fitted to it


def openings(
    sketch: Sketch, rows: tuple[Storey, Storey, Storey], joint: Joint, frame: Thickness
) -> Sketch:
    """The openings of one row, side by side, and the mullions between them."""
    above, level, below = rows
    row = level.row
    names = [opening_name(row, i) for i in range(row.across)]
    mullions = level.mullions
    sketch = sketch.with_stated((f"{names[0]}.tall", row.tall))
    left = sketch.part(STILES[0]).at[0]  # its inner edge
    left_part = STILES[0]
    for i, name in enumerate(names):
        right_part = mullions[i] if i < len(mullions) else STILES[1]
        sketch = sketch.with_relations(
            Relations(
                dimensions=(
                    free(f"{name}.wide", says=f"width of the {name}", stage=STAGE),
                    free(f"{name}.tall", says=f"height of the {name}", stage=STAGE),
                ),
                equations=(
                    *(
                        ()
                        if i == 0
                        else (follows(size_of(f"{name}.tall"), level.tall, "openings of one row"),)
                    ),
                ),
            )
        ).with_opening(
            Opening(
                name=name,
                wide=size_of(f"{name}.wide"),
                tall=level.tall,
                deep=size_of("case.front") + size_of("case.inside deep"),
                left=left,
                below=level.below,
                left_part=left_part,
                right_part=right_part,
                above_part=str(above.row.rail),
                below_part=str(below.row.rail),
                place=row.place,
            )
        )
        left = left + size_of(f"{name}.wide")
        if i < len(mullions):
            sketch = _mullion(sketch, mullions[i], rows, left, joint, frame)
            left = left + size_of(f"{mullions[i]}.width")
            left_part = mullions[i]
    return sketch.with_relations(_row_relations(names, mullions))


def _row_relations(names: list[str], mullions: Sequence[str]) -> Relations:
    across = total(
        [size_of(f"{n}.wide") for n in names]
        + [size_of(f"{m}.width") for m in mullions]
        + [size_of(f"{s}.width") for s in STILES]
    )
    equal = alike(
        tuple(f"{n}.wide" for n in names), "openings of one row are equal", sink=f"{names[-1]}.wide"
    )
    return Relations(
        equations=(follows(size_of("face frame.wide"), across, "the row fills the frame"),),
        alike=(equal,) if len(names) > 1 else (),
    )


def _mullion(  # noqa: PLR0917 - one mullion, told whole
    sketch: Sketch,
    name: str,
    rows: tuple[Storey, Storey, Storey],
    left: Linear,
    joint: Joint,
    frame: Thickness,
) -> Sketch:
    above, level, below = rows
    whole = frame.whole
    wood = whole.wood(part=name, family="mullion", role="show")
    lower, upper = str(below.row.rail), str(above.row.rail)
    mullion = PlannedPart(
        name=name,
        family="mullion",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.UP, Way.RIGHT, Way.BACK),
        at=(left, frame.back_of(name), level.below - size_of(f"{name} in {lower}.entry")),
        show=frozenset({Surface.FACE_SIDE}),
        kinds=FRAME_KINDS,
        stage=STAGE,
    )
    sketch = sketch.with_parts(mullion).with_stated((f"{name}.width", level.row.mullion))
    joined = tuple(
        Joined(
            name=f"{name} in {rail}",
            joint=joint,
            place=joint.place,
            seats={
                "receives": (
                    Seat(
                        part=rail,
                        corner=Corner(edge=edge),
                        along=left - sketch.part(rail).at[0],
                        into=-frame.back_of(rail),
                    ),
                ),
                "enters": (
                    Seat(
                        part=name,
                        corner=Corner(end=end),
                        along=ZERO if rail == lower else far_end(f"{name}.length", whole),
                        into=-frame.back_of(name),
                    ),
                ),
            },
        )
        for rail, end, edge in (
            (lower, Surface.REFERENCE_END, _edge_towards(sketch.part(lower), Way.UP)),
            (upper, Surface.FAR_END, _edge_towards(sketch.part(upper), Way.DOWN)),
        )
    )
    wide = inch_or_mm(whole, inch=INCH * Fraction(3, 2), mm=38)
    relations = entering(
        level.tall + joined[0].entry + joined[1].entry,
        name,
        joined[1].entry,
        "the mullion reaches into both rails",
        whole=whole,
        shoulders=shoulder_gaps(joined),
    )
    relations += Relations(
        rules=(habit(size_of(f"{name}.width"), wide, "usual for mullions", level=Level.RULE),),
    )
    return sketch.with_joined(*joined).with_relations(relations)


def _edge_towards(part: PlannedPart, way: Way) -> Surface:
    """The edge of a level part that looks that way."""
    return Surface.BACK_EDGE if part.ways[1] is way else Surface.FACE_EDGE
