"""Kickers: rails above a drawer's sides that keep it from tipping."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Joined, Seat
from scantling.joints.mortise_and_tenon import MortiseAndTenon
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._fitting import kicker_shoulder, kicker_stub
from scantling.piece._form import Opening, Sketch, Whole
from scantling.piece._made import entering, far_end, reaching
from scantling.piece._section import Gap, Length, Section
from scantling.piece._words import habit
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Level, Relations

RAILS = ("front sub-top rail", "rear sub-top rail")


class KickerSaid(Section):
    """What may be said of a kicker."""

    wide: Length | None = None
    stub: Length | None = None
    rear_gap: Gap | None = None


def under_the_top(sketch: Sketch, opening: Opening) -> bool:
    """Whether kickers can hang over an opening: its upper rail is glued to the front one."""
    lying = {RAILS[0], opening.above_part}
    return any(lying == set(joined.parts) for joined in sketch.joined)


def kicker(
    sketch: Sketch,
    name: str,
    *,
    said: KickerSaid,
    left: Linear,
    ways: tuple[Way, Way],
    under: Linear,
    whole: Whole,
    usual: Fraction,
) -> Sketch:
    """A kicker between the sub-top rails, its underside level with the top of the opening.

    Args:
        sketch: With both sub-top rails planned.
        name: Name of the kicker.
        said: What the maker wrote of it.
        left: Where its face edge stands, from the left. [mm]
        ways: Directions of its length and width.
        under: Height of its underside. [mm]
        whole: The piece.
        usual: Width unless stated. [mm]
    """
    if any(rail not in sketch.landings for rail in RAILS):
        return sketch
    wood = whole.wood(part=name, family="kicker", role="inside")
    front, rear = (sketch.landings[rail].sum("start") for rail in RAILS)
    front_edge = front + size_of(f"{RAILS[0]}.width")
    part = PlannedPart(
        name=name,
        family="kicker",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(*ways, Way.DOWN),
        at=(left, front_edge - size_of(f"{name} in {RAILS[0]}.entry"), size_of("case.tall")),
    )
    joined = tuple(
        _stub(sketch, part, rail, said, end=end, whole=whole)
        for rail, end in zip(RAILS, (Surface.REFERENCE_END, Surface.FAR_END), strict=True)
    )
    relations = entering(
        rear - front_edge + joined[0].entry + joined[1].entry,
        name,
        joined[1].entry,
        f"the {name} is stubbed into both rails",
        whole=whole,
        shoulders=(joined[0].size("shoulder gap"),),
    )
    relations += Relations(
        rules=(habit(part.width, usual, "usual for kickers", level=Level.RULE),),
    ) + reaching(
        size_of("case.tall") - under,
        f"{name}.thickness",
        f"the underside of the {name} is level with the opening",
        whole=whole,
    )
    sketch = sketch.with_parts(part).with_joined(*joined).with_relations(relations)
    between, behind = rear - front_edge, joined[1]
    side, gap = "left side", behind.size("shoulder gap")
    sketch = sketch.with_fittings(
        kicker_stub(
            name, left=behind.entry, between=between, side=side, place=said.place, whole=whole
        ),
        kicker_shoulder(name, gap=gap, between=between, side=side, place=said.at("rear_gap")),
    )
    return sketch.with_stated((f"{name}.width", said.wide))


def _stub(
    sketch: Sketch, part: PlannedPart, rail: str, said: KickerSaid, *, end: Surface, whole: Whole
) -> Joined:
    rear = rail == RAILS[1]
    along = far_end(f"{part.name}.length", whole) if rear else ZERO
    joint = MortiseAndTenon(tenon=said.stub, shoulder_gap=said.rear_gap if rear else None)
    runs_right = part.ways[1] is Way.RIGHT
    near = part.at[0] if runs_right else part.at[0] - part.width
    edge = Surface.FACE_EDGE if runs_right else Surface.BACK_EDGE
    return Joined(
        name=f"{part.name} in {rail}",
        joint=joint,
        place=said.place,
        seats={
            "receives": (Seat(part=rail, along=near - sketch.part(rail).at[0]),),
            "enters": (Seat(part=part.name, corner=Corner(end=end, edge=edge), along=along),),
        },
    )
