"""Top: a glued panel over the case, bevelled beneath, held so that it can move."""

from __future__ import annotations

from typing import ClassVar

from scantling.exact import Fraction
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import (
    ACROSS,
    ALONG,
    Corner,
    Cut,
    Profile,
    Surface,
    Way,
)
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Form, Sketch, Whole
from scantling.piece._made import reaching
from scantling.piece._section import Gap, JointWanted, Length, Section, Thick, Word
from scantling.piece._words import follows, free, habit, inch_or_mm
from scantling.sizes.linear import ZERO, size_of
from scantling.sizes.model import Level, Relations, Sizes
from scantling.units import INCH


class UnderBevel(Section):
    """A bevel under the edge: how high, how far in, on which sides."""

    rise: Length
    run: Length
    sides: tuple[Word, ...] = (Word("front"), Word("left"), Word("right"))


class TopSection(Section):
    """`[top]`: outside sizes or overhangs, the bevel, and what holds it."""

    thick: Thick | None = None
    wide: Length | None = None
    deep: Length | None = None
    over_front: Gap | None = None
    over_back: Gap | None = None
    over_left: Gap | None = None
    over_right: Gap | None = None
    under_bevel: UnderBevel | None = None
    held_by: JointWanted


class Top(Form):
    """Top: solid boards glued edge to edge, screwed from below through slots."""

    title: ClassVar[str] = "top"
    order: ClassVar[int] = 90
    section: ClassVar[type[Section]] = TopSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """The top, its overhangs, its bevel and its screws."""
        del name
        assert isinstance(said, TopSection)  # noqa: S101 - the reader gives its section
        sketch = _panel(so_far, whole).with_relations(_relations(whole))
        sketch = sketch.with_stated(
            ("top.thickness", said.thick),
            ("top.length", said.wide),
            ("top.width", said.deep),
            *(
                (f"top.over {s}", getattr(said, f"over_{s}"))
                for s in ("front", "back", "left", "right")
            ),
        )
        if said.under_bevel is not None:
            sketch = _bevel(sketch, said.under_bevel)
        return sketch.with_joined(*_screws(sketch, said))


def _panel(sketch: Sketch, whole: Whole) -> Sketch:
    wood = whole.wood(part="top", family="top", role="show")
    return sketch.with_parts(
        PlannedPart(
            name="top",
            family="top",
            wood=wood.species,
            cut_of_wood=wood.cut,
            ways=(Way.RIGHT, Way.BACK, Way.DOWN),  # face side up, face edge in front
            at=(
                -size_of("top.over left"),
                -size_of("top.over front"),
                size_of("case.tall") + size_of("top.thickness"),
            ),
            show=frozenset({Surface.FACE_SIDE, Surface.FACE_EDGE}),
            stage=90,
        )
    )


def _relations(whole: Whole) -> Relations:
    over = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    words = ("front", "back", "left", "right")
    # a top made too narrow lacks it at the wall
    deep = reaching(
        size_of("case.deep") + size_of("top.over front") + size_of("top.over back"),
        "top.width",
        "the top stands over in front and behind",
        whole=whole,
    )
    return deep + Relations(
        dimensions=tuple(
            free(f"top.over {w}", says=f"what the top stands over at the {w}", may_be_nothing=True)
            for w in words
        ),
        equations=(
            follows(
                size_of("top.length"),
                size_of("case.wide") + size_of("top.over left") + size_of("top.over right"),
                "the top stands over both sides",
            ),
        ),
        rules=(
            habit(
                size_of("top.over left"),
                size_of("top.over right"),
                "as much on either side",
                level=Level.RULE,
            ),
            habit(size_of("top.over back"), 0, "the back goes to the wall"),
            habit(size_of("top.over right"), over, "usual", level=Level.RULE),
            habit(size_of("top.over front"), over, "usual", level=Level.RULE),
            habit(
                size_of("top.thickness"),
                inch_or_mm(whole, inch=INCH * Fraction(7, 8), mm=22),
                "usual for tops",
                level=Level.RULE,
            ),
        ),
    )


def _bevel(sketch: Sketch, said: UnderBevel) -> Sketch:
    names = ("top.bevel rise", "top.bevel run")

    def cuts(sizes: Sizes) -> tuple[Cut, ...]:
        return tuple(
            _bevel_cut(side, rise=sizes[names[0]], run=sizes[names[1]]) for side in said.sides
        )

    relations = Relations(dimensions=tuple(free(n, says=n) for n in names))
    sketch = sketch.with_relations(relations).with_shaping("top", cuts)
    return sketch.with_stated((names[0], said.rise), (names[1], said.run))


def _bevel_cut(side: str, *, rise: Fraction, run: Fraction) -> Cut:
    """A triangle off the under side along one edge; its two square sides lie in the surfaces."""
    zero = Fraction(0)
    corner, axis = {
        "front": (Corner(face=Surface.BACK_FACE), ALONG),
        "back": (Corner(edge=Surface.BACK_EDGE, face=Surface.BACK_FACE), ALONG),
        "left": (Corner(face=Surface.BACK_FACE), ACROSS),
        "right": (Corner(end=Surface.FAR_END, face=Surface.BACK_FACE), ACROSS),
    }[side]
    triangle = ((zero, zero), (run, zero), (zero, rise))
    return Cut(
        name=f"bevel under the {side} edge",
        owner="bevel of the top",
        shape=Profile(axis=axis, points=triangle, open_sides=frozenset({0, 2})),
        corner=corner,
    )


def _screws(sketch: Sketch, said: TopSection) -> tuple[Joined, ...]:
    """Screws up through the rails. The front line is fast, so that the front margin stays."""
    known = {p.name for p in sketch.parts}
    found = []
    for rail in ("front sub-top rail", "rear sub-top rail"):
        if rail not in known:
            continue
        part = sketch.part(rail)
        front = part.ways[1] is Way.FRONT
        found.append(
            Joined(
                name=f"top on {rail}",
                joint=said.held_by.joint,
                place=said.held_by.place,
                seats={
                    # both count from the left end, backwards, and up from the underside
                    "enters": (
                        Seat(
                            part=rail,
                            corner=Corner(
                                edge=Surface.BACK_EDGE if front else Surface.FACE_EDGE,
                                face=Surface.BACK_FACE,
                            ),
                        ),
                    ),
                    "receives": (
                        Seat(
                            part="top",
                            corner=Corner(face=Surface.BACK_FACE),
                            along=part.at[0] - sketch.part("top").at[0],
                            across=(part.at[1] - part.width if front else part.at[1])
                            - sketch.part("top").at[1],
                        ),
                    ),
                },
                beside=_moving(sketch),
            )
        )
    return tuple(found)


def _moving(sketch: Sketch) -> tuple[Beside, ...]:
    """The top grows backwards over a rail that the side carries the same way.

    Of both the whole width is counted, which is a little more than lies between the two rails.
    """
    widths = {"receives": "top"}
    if any(part.name == "left side" for part in sketch.parts):
        widths["enters"] = "left side"
    return tuple(
        Beside(
            what="moves",
            owner=part,
            role=role,
            axis=ACROSS,
            start=ZERO,
            size=size_of(f"{part}.width"),
            depth=ZERO,
        )
        for role, part in widths.items()
    )
