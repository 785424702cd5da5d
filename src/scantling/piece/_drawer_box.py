"""The box of a drawer: front, two sides, back and bottom."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Sketch, Whole
from scantling.piece._made import (
    alike_unmade,
    far_end,
    first_unmade,
    over,
    planed_to,
    reaching,
)
from scantling.piece._section import JointWanted, Section, Thick
from scantling.piece._words import follows, habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Level, Relations
from scantling.units import INCH


class BoxSaid(Section):
    """What may be said of one board of a drawer."""

    thick: Thick | None = None


@dataclass(frozen=True, kw_only=True)
class Box:
    """One drawer: where it stands and how it is joined."""

    name: str
    left: Linear
    below: Linear
    wide: Linear
    tall: Linear
    deep: Linear
    drop: Linear
    front_joint: JointWanted
    back_joint: JointWanted
    bottom_joint: JointWanted

    def own(self, part: str) -> str:
        """Name of one of its parts."""
        return f"{self.name}.{part}"

    @property
    def held(self) -> str:
        """Name of the joint that holds the bottom."""
        return f"{self.name}.bottom in grooves"

    def groove(self, word: str) -> Linear:
        """One of the dimensions of the bottom's grooves."""
        return size_of(f"{self.held}.{word}")


def drawer_box(sketch: Sketch, box: Box, *, whole: Whole) -> Sketch:
    """Five boards, their joints, and the sizes that tie them. Face sides look inside."""
    sketch = _boards(sketch, box, whole)
    sketch = sketch.with_relations(_relations(box, whole))
    corners = (*_front_corners(box, whole), *_back_corners(box, whole))
    return sketch.with_joined(*corners, _bottom_joint(box))


def _boards(sketch: Sketch, box: Box, whole: Whole) -> Sketch:
    left = size_of(box.own("left side.thickness"))
    right = size_of(box.own("right side.thickness"))
    front = size_of(box.own("front.thickness"))
    laps = {side: _lap(box, side) for side in ("left", "right")}
    back_face = box.deep - size_of(box.own("back.thickness"))
    over_groove = box.below + box.groove("set up") + box.groove("groove")
    bottom_left = left - box.groove("depth") + box.groove("end ease")
    boards = {
        "front": ("show", (Way.RIGHT, Way.UP, Way.FRONT), (box.left, front, box.below)),
        "left side": (
            "inside",
            (Way.BACK, Way.UP, Way.LEFT),
            (box.left + left, laps["left"], box.below),
        ),
        "right side": (
            "inside",
            (Way.BACK, Way.UP, Way.RIGHT),
            (box.left + box.wide - right, laps["right"], box.below),
        ),
        "back": ("inside", (Way.RIGHT, Way.UP, Way.BACK), (box.left, back_face, over_groove)),
        "bottom": (
            "inside",
            (Way.RIGHT, Way.BACK, Way.DOWN),  # face side up, face edge in front
            (box.left + bottom_left, front - box.groove("depth"), over_groove),
        ),
    }
    for word, (role, ways, at) in boards.items():
        family = f"drawer {word.split()[-1]}"
        wood = whole.wood(part=box.own(word), family=family, role=role)
        sketch = sketch.with_parts(
            PlannedPart(
                name=box.own(word),
                family=family,
                wood=wood.species,
                cut_of_wood=wood.cut,
                ways=ways,
                at=at,
                show=frozenset({Surface.BACK_FACE}) if word == "front" else frozenset(),
                moves_with=box.name,
                stage=70,
            )
        )
    return sketch


def _lap(box: Box, side: str) -> Linear:
    """Wood of the front before the tails of one side. [mm]"""
    return size_of(box.own("front.thickness")) - size_of(box.own(f"front at {side} side.entry"))


def _relations(box: Box, whole: Whole) -> Relations:
    own = box.own
    front, back, bottom = (size_of(own(f"{w}.thickness")) for w in ("front", "back", "bottom"))
    sides = [own("left side"), own("right side")]
    equations = [
        follows(size_of(own("front.width")), box.tall, "the front fills the opening less its gaps"),
        follows(
            size_of(own("back.width")),
            box.tall - box.groove("set up") - box.groove("groove") - box.drop,
            "the back stands on the bottom and stays below the sides",
        ),
        follows(
            size_of(own("bottom.length")),
            box.wide
            - size_of(f"{sides[0]}.thickness")
            - size_of(f"{sides[1]}.thickness")
            + box.groove("depth") * 2
            - box.groove("end ease") * 2,
            "the bottom reaches into both grooves with ease",
        ),
        follows(
            size_of(own("bottom.width")),
            box.deep - front + box.groove("depth"),
            "the bottom runs from the front's groove to the back",
        ),
    ]
    thin = inch_or_mm(whole, inch=INCH / 2, mm=12)
    thicks = [f"{side}.thickness" for side in sides]
    side_thick = size_of(first_unmade(thicks, whole))
    line = planed_to(
        box.wide, _lengths(box), "front and back are as long as the box is wide", whole=whole
    )
    for word, side in zip(("left", "right"), sides, strict=True):
        stops = box.deep - _lap(box, word)
        because = "a side stops at the front's lap"
        line += reaching(stops, f"{side}.length", because, whole=whole)
        line += reaching(
            size_of(own("front.width")), f"{side}.width", "sides as the front", whole=whole
        )
    return line + Relations(
        equations=tuple(equations),
        rules=(
            habit(
                front,
                inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20),
                "usual",
                level=Level.RULE,
            ),
            habit(side_thick, thin, "usual", level=Level.RULE),
            habit(back, side_thick, "as the sides", level=Level.RULE),
            habit(
                bottom,
                inch_or_mm(whole, inch=INCH * Fraction(3, 8), mm=9),
                "usual",
                level=Level.RULE,
            ),
        ),
        alike=alike_unmade(thicks, "the sides are a pair", whole=whole),
    )


def _lengths(box: Box) -> list[str]:
    return [box.own("front.length"), box.own("back.length")]


def _right_end(box: Box, word: str, whole: Whole) -> Linear:
    """Where the right side's outer face stands, counted from the end of the front or back. [mm]"""
    return over(box.own(f"{word}.length"), _lengths(box), whole)


def _front_corners(box: Box, whole: Whole) -> tuple[Joined, ...]:
    """Tails on the sides, pins on the front; both count up from the lower edge."""
    return tuple(
        Joined(
            name=box.own(f"front at {side} side"),
            joint=box.front_joint.joint,
            place=box.front_joint.place,
            seats={
                "receives": (
                    Seat(
                        part=box.own("front"),
                        corner=Corner(end=end),
                        along=ZERO if side == "left" else _right_end(box, "front", whole),
                    ),
                ),
                "enters": (Seat(part=box.own(f"{side} side")),),
            },
            beside=tuple(_hidden_groove(box, role) for role in ("enters", "receives")),
        )
        for side, end in (("left", Surface.REFERENCE_END), ("right", Surface.FAR_END))
    )


def _hidden_groove(box: Box, role: str) -> Beside:
    return Beside(
        what="hide",
        owner=box.held,
        role=role,
        axis=1,
        start=box.groove("set up"),
        size=box.groove("groove"),
        depth=box.groove("depth"),
    )


def _back_corners(box: Box, whole: Whole) -> tuple[Joined, ...]:
    """The back is narrower: its tails fill its own width, set up above the groove."""
    set_up = box.groove("set up") + box.groove("groove")
    return tuple(
        Joined(
            name=box.own(f"back at {side} side"),
            joint=box.back_joint.joint,
            place=box.back_joint.place,
            seats={
                "receives": (
                    Seat(
                        part=box.own("back"),
                        corner=Corner(end=end),
                        along=ZERO if side == "left" else _right_end(box, "back", whole),
                    ),
                ),
                "enters": (
                    Seat(
                        part=box.own(f"{side} side"),
                        corner=Corner(end=Surface.FAR_END),
                        along=far_end(box.own(f"{side} side.length"), whole),
                        across=set_up,
                    ),
                ),
            },
        )
        for side, end in (("left", Surface.REFERENCE_END), ("right", Surface.FAR_END))
    )


def _bottom_joint(box: Box) -> Joined:
    return Joined(
        name=box.held,
        joint=box.bottom_joint.joint,
        place=box.bottom_joint.place,
        seats={
            "bottom": (Seat(part=box.own("bottom")),),
            "front": (Seat(part=box.own("front")),),
            "left": (Seat(part=box.own("left side")),),
            "right": (Seat(part=box.own("right side")),),
            "back": (Seat(part=box.own("back")),),
        },
    )
