"""Carcase: two sides, a bottom, and rails or a board that tie them at the top."""

from __future__ import annotations

from typing import Annotated, ClassVar

from scantling.exact import Fraction
from scantling.joints._joint import Joined, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Form, Landing, Sketch, Unsaid, Whole
from scantling.piece._level import (
    LEAST_BETWEEN,
    LENGTHS,
    SIDES,
    SUB_TOP_RAILS,
    WIDTHS,
    between_sides,
    said_or_usual,
)
from scantling.piece._made import alike_unmade, ending_on, entering, far_end, first_unmade
from scantling.piece._section import JointWanted, Outside, Section, Thick, also
from scantling.piece._words import follows, free, habit, inch_or_mm, unsaid
from scantling.sizes.linear import ZERO, size_of
from scantling.sizes.model import Bound, Kind, Level, Relations
from scantling.units import INCH


class Sides(Section):
    """What may be said of the sides."""

    thick: Thick | None = None


class CaseSection(Section):
    """`[case]`: outside sizes without a top's overhang, and how the boards are joined."""

    wide: Outside | None = None
    deep: Outside | None = None
    tall: Outside | None = None
    sides: Sides = Sides()
    bottom: Annotated[JointWanted | None, also("top_face", thick=Thick)] = None
    rails_under_top: Annotated[JointWanted | None, also("wide", thick=Thick)] = None


class Carcase(Form):
    """Carcase: two upright sides, a bottom housed between them, rails dovetailed in above."""

    title: ClassVar[str] = "case"
    order: ClassVar[int] = 10
    needs: ClassVar[tuple[str, ...]] = ()
    offers: ClassVar[tuple[str, ...]] = ("case", "rails under the top")
    section: ClassVar[type[Section]] = CaseSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """Sides, bottom and rails, and the inside they leave."""
        del name
        assert isinstance(said, CaseSection)  # noqa: S101 - the reader gives this form its section
        sketch = _outside(so_far, said, whole)
        sketch = _sides(sketch, said, whole)
        if said.bottom is not None:
            sketch = _bottom(sketch, said.bottom, whole)
        if said.rails_under_top is not None:
            for where in ("front", "rear"):
                sketch = _rail_under_top(sketch, said.rails_under_top, whole, where=where)
            sketch = _rails_apart(sketch, said.rails_under_top, whole)
        return sketch


def _outside(sketch: Sketch, said: CaseSection, whole: Whole) -> Sketch:
    words = {
        "case.wide": "width of the case",
        "case.deep": "depth of the case, with what stands in front of it",
        "case.tall": "height of the case without its top",
        "case.inside wide": "width between the sides",
        "case.inside deep": "depth inside, to the back",
        "case.front": "thickness of what stands in front of the sides",
        "left side.back set": "how far the back is let into the left side",
        "right side.back set": "how far the back is let into the right side",
    }
    gaps = ("case.front", "left side.back set", "right side.back set")
    dimensions = tuple(
        free(name, says=says, may_be_nothing=name in gaps, kind=_kind(name))
        for name, says in words.items()
    )
    behind = size_of("case.deep") - size_of("case.front")
    relations = Relations(
        dimensions=dimensions,
        equations=(
            follows(
                size_of("case.wide"),
                size_of("case.inside wide")
                + size_of("left side.thickness")
                + size_of("right side.thickness"),
                "the case is as wide as its inside and both sides",
            ),
            *(
                follows(
                    size_of("case.inside deep"),
                    behind - size_of(f"{side}.back set"),
                    "the inside is as deep as the side less what the back takes",
                )
                for side in SIDES
            ),
        ),
        rules=(
            habit(size_of("case.front"), 0, "nothing stands in front of the sides"),
            habit(size_of("left side.back set"), 0, "the back takes nothing of the inside"),
            habit(size_of("right side.back set"), 0, "the back takes nothing of the inside"),
        ),
    )
    relations += ending_on(
        behind,
        WIDTHS,
        "the case is as deep as a side and what stands in front of it",
        whole=whole,
        stands_over=True,
    )
    landing = Landing(
        name="case",
        parts=SIDES,
        sums={
            "left": size_of("left side.thickness"),
            "right": size_of("case.wide") - size_of("right side.thickness"),
            "front": size_of("case.front"),
            "wide": size_of("case.inside wide"),
            "deep": size_of("case.inside deep"),
        },
    )
    sketch = (
        sketch.with_relations(relations)
        .with_landing(landing)
        .with_unsaid(
            *(
                unsaid(size_of(f"case.{word}"), inch_or_mm(whole, inch=INCH * inch, mm=mm))
                for word, inch, mm in (("wide", 36, 900), ("deep", 15, 380), ("tall", 36, 900))
            )
        )
    )
    outside = {"wide": said.wide, "deep": said.deep, "tall": said.tall}
    return sketch.with_stated(
        *((f"case.{word}", size) for word, size in outside.items())
    ).with_not_said(
        *(
            Unsaid(size=f"case.{word}", word=word, place=said.place)
            for word, size in outside.items()
            if size is None
        )
    )


def _kind(name: str) -> Kind:
    """Only the outside is set out; the inside is what the boards leave."""
    return Kind.TAPE if name in {"case.wide", "case.deep", "case.tall"} else Kind.FOLLOWS


def _sides(sketch: Sketch, said: CaseSection, whole: Whole) -> Sketch:
    for name, into, wide in (
        ("left side", Way.LEFT, size_of("left side.thickness")),
        ("right side", Way.RIGHT, size_of("case.wide") - size_of("right side.thickness")),
    ):
        wood = whole.wood(part=name, family="side", role="show")
        side = PlannedPart(
            name=name,
            family="side",
            wood=wood.species,
            cut_of_wood=wood.cut,
            ways=(Way.UP, Way.BACK, into),
            at=(wide, size_of("case.front"), size_of("case.tall") - size_of(f"{name}.length")),
            show=frozenset({Surface.BACK_FACE}),
        )
        sketch = sketch.with_parts(side).with_stated((f"{name}.thickness", said.sides.thick))
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    both = [f"{side}.thickness" for side in SIDES]
    relations = ending_on(
        size_of("case.tall"), LENGTHS, "the sides run to the floor", whole=whole
    ) + Relations(
        rules=(
            habit(
                size_of(first_unmade(both, whole)),
                thick,
                "usual for sides up to 15 in deep",
                level=Level.RULE,
            ),
        ),
        alike=alike_unmade(both, "the sides are a pair", whole=whole),
    )
    return sketch.with_relations(relations)


def _bottom(sketch: Sketch, wanted: JointWanted, whole: Whole) -> Sketch:
    case = sketch.landings["case"]
    wood = whole.wood(part="bottom", family="bottom", role="inside")
    top_face = size_of("bottom.top face")
    bottom = PlannedPart(
        name="bottom",
        family="bottom",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.RIGHT, Way.BACK, Way.DOWN),
        at=(
            case.sum("left") - size_of("bottom in left side.entry"),
            case.sum("front"),
            top_face,
        ),
        show=frozenset({Surface.FACE_SIDE}),
    )
    sketch = sketch.with_parts(bottom)
    sketch = sketch.with_relations(
        Relations(
            dimensions=(free("bottom.top face", says="height of the bottom's top face"),),
        )
    )
    sketch = sketch.with_unsaid(unsaid(top_face, inch_or_mm(whole, inch=INCH * 4, mm=100)))
    sketch = sketch.with_stated(
        ("bottom.top face", wanted.said("top_face")),
        ("bottom.thickness", wanted.thickness("thick")),
    )
    return between_sides(
        sketch, "bottom", wanted, whole, up=top_face, thick=wanted.thickness("thick")
    )


def _rail_width(whole: Whole) -> Fraction:
    """Usual width of a rail under the top. [mm]"""
    return inch_or_mm(whole, inch=INCH * Fraction(5, 2), mm=65)


def _rails_apart(sketch: Sketch, wanted: JointWanted, whole: Whole) -> Sketch:
    """Both rails find room between front and back."""
    said = wanted.said("wide")
    # one line says the width of both
    wide = said_or_usual(f"{SUB_TOP_RAILS[0]}.width", said, _rail_width(whole))
    room = size_of("case.inside deep") - 2 * wide - LEAST_BETWEEN
    because = "the rails under the top lie apart, wood of the sides between them"
    bound = Bound(sum=room, because=because, place=wanted.place)
    return sketch.with_relations(Relations(bounds=(bound,)))


def _rail_under_top(sketch: Sketch, wanted: JointWanted, whole: Whole, *, where: str) -> Sketch:
    name = f"{where} sub-top rail"
    case = sketch.landings["case"]
    wood = whole.wood(part=name, family="sub-top rail", role="inside")
    left = f"{name} in left side"
    width = size_of(f"{name}.width")
    start = case.sum("front") if where == "front" else case.sum("front") + case.sum("deep") - width
    inner = Way.FRONT if where == "front" else Way.BACK
    rail = PlannedPart(
        name=name,
        family="sub-top rail",
        wood=wood.species,
        cut_of_wood=wood.cut,
        # the face edge looks into the case: kickers are mortised there
        ways=(Way.RIGHT, inner, Way.DOWN),
        at=(
            case.sum("left") - size_of(f"{left}.entry"),
            start + width if where == "front" else start,
            size_of("case.tall"),
        ),
    )
    sketch = sketch.with_parts(rail)
    edge = Surface.BACK_EDGE if where == "front" else Surface.FACE_EDGE
    joined = tuple(
        Joined(
            name=f"{name} in {side} side",
            joint=wanted.joint,
            place=wanted.place,
            seats={
                "receives": (
                    Seat(
                        part=f"{side} side",
                        corner=Corner(end=Surface.FAR_END),
                        across=start - case.sum("front"),
                    ),
                ),
                "enters": (
                    Seat(
                        part=name,
                        corner=Corner(end=end, edge=edge),
                        along=ZERO if side == "left" else far_end(f"{name}.length", whole),
                    ),
                ),
            },
        )
        for side, end in (("left", Surface.REFERENCE_END), ("right", Surface.FAR_END))
    )
    said = wanted.thickness("thick")
    wide = _rail_width(whole)
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    relations = entering(
        case.sum("wide") + joined[0].entry + joined[1].entry,
        name,
        joined[1].entry,
        f"the {name} is dovetailed into both sides",
        whole=whole,
    ) + Relations(
        rules=(
            habit(width, wide, "usual for rails under a top", level=Level.RULE),
            habit(size_of(f"{name}.thickness"), thick, "as the sides", level=Level.RULE),
        ),
    )
    sketch = sketch.with_joined(*joined).with_relations(relations)
    under = size_of("case.tall") - said_or_usual(f"{name}.thickness", said, thick)
    sums = {"start": start, "under": under}
    sketch = sketch.with_landing(Landing(name=name, parts=(name,), sums=sums))
    return sketch.with_stated((f"{name}.width", wanted.said("wide")), (f"{name}.thickness", said))
