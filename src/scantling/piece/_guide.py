"""Guides: strips that keep a drawer straight, as thick as the frame stands inside the case."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Joined, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Sketch, Whole
from scantling.piece._made import lack_of, reaching
from scantling.piece._section import JointWanted, Length, Section
from scantling.piece._words import habit, inch_or_mm
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Bound, Kind, Level, Relations
from scantling.units import INCH


class GuideSaid(Section):
    """What may be said of guides."""

    long: Length | None = None
    tall: Length | None = None
    held_by: JointWanted


def guide(
    sketch: Sketch,
    name: str,
    *,
    said: GuideSaid,
    on: str,
    long: Linear,
    edge: Linear,
    face: Linear,
    below: Linear,
    side: str,
    whole: Whole,
) -> Sketch:
    """A guide on a side or a partition, level with the edge of the opening.

    Args:
        sketch: With the part it is screwed to.
        name: Name of the guide.
        said: What the maker wrote of guides.
        on: Part it is screwed to.
        long: Length of the drawer. [mm]
        edge: Edge of the opening, from the left. [mm]
        face: Face of that part, from the left. [mm]
        below: Height of what the drawer runs on. [mm]
        side: "left" or "right" of the drawer.
        whole: The piece.
    """
    wood = whole.wood(part=name, family="guide", role="inside")
    into = Way.LEFT if side == "left" else Way.RIGHT
    lack = lack_of(f"{name}.thickness", whole)
    part = PlannedPart(
        name=name,
        family="guide",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.BACK, Way.UP, into),  # face side: towards the drawer
        at=(edge - lack if side == "left" else edge + lack, size_of("case.front"), below),
        kinds=(Kind.TAPE, Kind.TAPE, Kind.MATE),  # planed till it is level with the frame
        stage=40,
    )
    thick = edge - face if side == "left" else face - edge
    relations = reaching(
        thick,
        f"{name}.thickness",
        "a guide is as thick as the frame stands inside",
        whole=whole,
    ) + Relations(
        bounds=(
            Bound(
                sum=size_of("case.inside deep") - part.length,
                because="a guide ends before the back of the case",
                cure="Make the guides shorter, or the case deeper.",
            ),
        ),
        rules=(
            habit(part.length, long, "as the drawer", level=Level.RULE),
            habit(part.width, inch_or_mm(whole, inch=INCH * 2, mm=50), "usual", level=Level.RULE),
        ),
    )
    sketch = sketch.with_parts(part).with_relations(relations)
    sketch = sketch.with_stated((f"{name}.length", said.long), (f"{name}.width", said.tall))
    joined = _screwed(sketch, part, said, on)
    if on not in sketch.landings["case"].parts:
        sketch = sketch.with_relations(_past_each_other(joined, part, side=side))
    return sketch.with_joined(joined)


def _past_each_other(joined: Joined, part: PlannedPart, *, side: str) -> Relations:
    """Screws from both faces of a partition, one row above the other, so that no tips meet."""
    line = part.width * (Fraction(1, 4) if side == "left" else Fraction(3, 4))
    because = "the screws from the other face pass by"
    return Relations(rules=(habit(joined.size("line"), line, because, level=Level.RULE),))


def _screwed(sketch: Sketch, part: PlannedPart, said: GuideSaid, on: str) -> Joined:
    """Both count from the guide's front end and lower edge; screws go into the wood behind."""
    post = sketch.part(on)
    up = part.at[2] - (post.at[2])
    across = part.at[1] - post.at[1]
    inside = _face_towards(post, part)
    return Joined(
        name=f"{part.name} on {on}",
        joint=said.held_by.joint,
        place=said.held_by.place,
        seats={
            # upright grain: the guide lies across it
            "receives": (Seat(part=on, corner=Corner(face=inside), along=up, across=across),),
            "enters": (Seat(part=part.name),),
        },
    )


def _face_towards(post: PlannedPart, part: PlannedPart) -> Surface:
    """Face of an upright board that looks at the drawer beside a guide."""
    return Surface.FACE_SIDE if post.ways[2] is part.ways[2] else Surface.BACK_FACE
