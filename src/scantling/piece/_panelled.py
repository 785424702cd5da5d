"""A frame and its panel: two stiles, two rails, a panel that is free to move."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Sketch, Whole
from scantling.piece._made import (
    alike_unmade,
    entering,
    far_end,
    first_unmade,
    over,
    planed_to,
    unmade,
)
from scantling.piece._section import JointWanted, Section, Thick
from scantling.piece._words import follows, free, habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, exactly, size_of
from scantling.sizes.model import Kind, Level, Relations
from scantling.units import INCH

STILES = ("left stile", "right stile")
MEMBERS = (*STILES, "top rail", "bottom rail")


class PanelSaid(Section):
    """What may be said of a panel: the joint that holds it, and how thick it is."""

    joint: JointWanted
    thick: Thick | None = None


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """One framed panel: its name, where it stands, and how it is joined."""

    name: str
    family: str
    left: Linear
    below: Linear
    front: Linear
    joint: JointWanted
    panel: PanelSaid

    def own(self, part: str) -> str:
        """Name of one of its parts."""
        return f"{self.name}.{part}"

    @property
    def held(self) -> str:
        """Name of the joint that holds the panel."""
        return f"{self.name}.panel in frame"

    def names(self, word: str, members: Sequence[str]) -> list[str]:
        """Names of one size of several of its parts."""
        return [self.own(f"{member}.{word}") for member in members]

    def is_made_tall(self, whole: Whole) -> bool:
        """Whether a stile is made already, which makes it as tall as it is."""
        lengths = self.names("length", STILES)
        return len(unmade(lengths, whole)) < len(lengths)


def panelled(sketch: Sketch, leaf: Leaf, *, whole: Whole) -> Sketch:
    """The frame with its panel, and the sizes that tie them. Face sides look to the front."""
    sketch = _members(sketch, leaf, whole)
    sketch = sketch.with_relations(_relations(leaf, whole))
    sketch = sketch.with_joined(*_corners(leaf, whole), _panel_joint(leaf))
    return sketch.with_stated((leaf.own("panel.thickness"), leaf.panel.thick))


def _members(sketch: Sketch, leaf: Leaf, whole: Whole) -> Sketch:
    wide, tall = size_of(leaf.own("wide")), size_of(leaf.own("tall"))
    left = {s: size_of(leaf.own(f"{s} stile.width")) for s in ("left", "right")}
    rails = {r: size_of(leaf.own(f"{r} rail.width")) for r in ("top", "bottom")}
    horn = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    into_left = size_of(leaf.own("top rail in left stile.entry"))
    into_left_below = size_of(leaf.own("bottom rail in left stile.entry"))
    held = leaf.held
    places = {
        "left stile": ((Way.UP, Way.LEFT), leaf.left + left["left"], leaf.below),
        "right stile": ((Way.UP, Way.RIGHT), leaf.left + wide - left["right"], leaf.below),
        "top rail": (
            (Way.RIGHT, Way.UP),
            leaf.left + left["left"] - into_left,
            leaf.below + tall - rails["top"],
        ),
        "bottom rail": (
            (Way.RIGHT, Way.DOWN),
            leaf.left + left["left"] - into_left_below,
            leaf.below + rails["bottom"],
        ),
        "panel": (
            (Way.UP, Way.RIGHT),
            leaf.left + left["left"] - size_of(f"{held}.depth") + size_of(f"{held}.side gap"),
            leaf.below + rails["bottom"] - size_of(f"{held}.depth") + size_of(f"{held}.end ease"),
        ),
    }
    for word, (ways, at_wide, at_tall) in places.items():
        family = f"{leaf.family} {word.split()[-1] if 'stile' in word else word}"
        wood = whole.wood(part=leaf.own(word), family=family, role="show")
        set_back = size_of(f"{held}.set back") if word == "panel" else ZERO
        sketch = sketch.with_parts(
            PlannedPart(
                name=leaf.own(word),
                family=family,
                wood=wood.species,
                cut_of_wood=wood.cut,
                ways=(*ways, Way.BACK),
                at=(at_wide, leaf.front + set_back, at_tall),
                horns=(exactly(horn), exactly(horn)) if "stile" in word else (ZERO, ZERO),
                show=frozenset({Surface.FACE_SIDE, Surface.BACK_FACE}),
                moves_with=leaf.name,
                stage=60,
            )
        )
    return sketch


def _relations(leaf: Leaf, whole: Whole) -> Relations:
    wide, tall = size_of(leaf.own("wide")), size_of(leaf.own("tall"))
    stiles = [size_of(leaf.own(f"{s} stile.width")) for s in ("left", "right")]
    rails = [size_of(leaf.own(f"{r} rail.width")) for r in ("top", "bottom")]
    sight_wide, sight_tall = size_of(leaf.own("sight wide")), size_of(leaf.own("sight tall"))
    stile, member = (
        size_of(first_unmade(leaf.names(word, some), whole))
        for word, some in (("width", STILES), ("thickness", MEMBERS))
    )
    usual = inch_or_mm(whole, inch=INCH * Fraction(9, 4), mm=57)
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    more = planed_to(tall, leaf.names("length", STILES), "stiles run through", whole=whole)
    equations = [
        follows(wide, stiles[0] + stiles[1] + sight_wide, "stiles and sight make the width"),
        follows(tall, rails[0] + rails[1] + sight_tall, "rails and sight make the height"),
    ]
    for rail in ("top rail", "bottom rail"):
        entries = [size_of(leaf.own(f"{rail} in {s} stile.entry")) for s in ("left", "right")]
        more += entering(
            sight_wide + entries[0] + entries[1],
            leaf.own(rail),
            entries[1],
            "a rail reaches into both stiles",
            whole=whole,
            shoulders=[
                size_of(leaf.own(f"{rail} in {s} stile.shoulder gap")) for s in ("left", "right")
            ],
        )
    return more + Relations(
        dimensions=tuple(
            free(leaf.own(w), says=f"{w} of the {leaf.name}", kind=_kind(w), stage=60)
            for w in ("wide", "tall", "sight wide", "sight tall")
        ),
        equations=tuple(equations),
        rules=(
            habit(stile, usual, "usual for door stiles", level=Level.RULE),
            habit(rails[0], stile, "the top rail as the stile", level=Level.RULE),
            habit(
                rails[1],
                stile * Fraction(4, 3),
                "a bottom rail a third wider",
                level=Level.RULE,
            ),
            habit(member, thick, "usual", level=Level.RULE),
            habit(
                size_of(leaf.own("panel.thickness")),
                member * Fraction(2, 3),
                "two thirds of the frame",
                level=Level.RULE,
            ),
        ),
        alike=(
            *alike_unmade(leaf.names("width", STILES), "a pair", whole=whole),
            *alike_unmade(leaf.names("thickness", MEMBERS), "one thickness", whole=whole),
        ),
    )


def _kind(word: str) -> Kind:
    """The outside is set out; what is seen of the panel is left."""
    return Kind.FOLLOWS if word.startswith("sight") else Kind.TAPE


def _groove(leaf: Leaf, role: str) -> Beside:
    held = leaf.held
    return Beside(
        what="groove",
        owner=held,
        role=role,
        axis=2,
        start=size_of(f"{held}.set in"),
        size=size_of(f"{held}.groove"),
        depth=size_of(f"{held}.depth"),
    )


def _corners(leaf: Leaf, whole: Whole) -> tuple[Joined, ...]:
    """Rails in stiles; all count from the outer corner, where the haunch lies."""
    found = []
    lengths = leaf.names("length", STILES)
    for rail, stile_end in (("top rail", Surface.FAR_END), ("bottom rail", Surface.REFERENCE_END)):
        for side, rail_end in (("left", Surface.REFERENCE_END), ("right", Surface.FAR_END)):
            corner = Beside(
                what="corner", owner="", role="receives", axis=0, start=ZERO, size=ZERO, depth=ZERO
            )
            found.append(
                Joined(
                    name=leaf.own(f"{rail} in {side} stile"),
                    joint=leaf.joint.joint,
                    place=leaf.joint.place,
                    seats={
                        "receives": (
                            Seat(
                                part=leaf.own(f"{side} stile"),
                                corner=Corner(end=stile_end),
                                along=over(leaf.own(f"{side} stile.length"), lengths, whole)
                                if stile_end is Surface.FAR_END
                                else ZERO,
                            ),
                        ),
                        "enters": (
                            Seat(
                                part=leaf.own(rail),
                                corner=Corner(end=rail_end, edge=Surface.BACK_EDGE),
                                along=ZERO
                                if side == "left"
                                else far_end(leaf.own(f"{rail}.length"), whole),
                            ),
                        ),
                    },
                    beside=(corner, _groove(leaf, "receives"), _groove(leaf, "enters")),
                )
            )
    return tuple(found)


def _panel_joint(leaf: Leaf) -> Joined:
    sights = tuple(
        Beside(
            what="sight",
            owner="",
            role="panel",
            axis=axis,
            start=ZERO,
            size=size_of(leaf.own(word)),
            depth=ZERO,
        )
        for axis, word in ((0, "sight tall"), (1, "sight wide"))
    )
    return Joined(
        name=leaf.held,
        joint=leaf.panel.joint.joint,
        place=leaf.panel.joint.place,
        seats={
            "panel": (Seat(part=leaf.own("panel")),),
            "left": (Seat(part=leaf.own("left stile")),),
            "right": (Seat(part=leaf.own("right stile")),),
            "below": (Seat(part=leaf.own("bottom rail")),),
            "above": (Seat(part=leaf.own("top rail")),),
        },
        beside=sights,
    )
