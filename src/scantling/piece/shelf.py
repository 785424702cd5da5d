"""Shelves: fixed between the sides, or loose on pins."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Annotated, ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._bays import bays, ceilings, floor_of_case, sharing
from scantling.piece._form import Form, Landing, Sketch, Whole
from scantling.piece._level import SIDES, between_sides, foot_of
from scantling.piece._lying import lying_on
from scantling.piece._made import alike_unmade
from scantling.piece._section import (
    Count,
    JointWanted,
    Length,
    Load,
    Section,
    Thick,
    Word,
    spelt,
)
from scantling.piece._words import (
    follows,
    free,
    habit,
    inch_or_mm,
    nothing_there,
    or_nearest,
    unsaid,
)
from scantling.roster import plain_name
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Kind, Level, Relations
from scantling.units import INCH

GAPS = {"end gap": Kind.FOLLOWS, "nose": Kind.TAPE, "tail gap": Kind.FOLLOWS}


class ShelfSection(Section):
    """`[shelf.<name>]`: a fixed shelf names a joint of the trade, a loose one lies `on` pins.

    `in` names the opening of a loose one: a row of the front, or "above lower shelf" for the room
    over a fixed one. The lowest hole is counted from there, and shelves share its height. Without
    it a row whose lowest hole is said is counted from the bottom; another lies in the tallest.
    """

    joint: JointWanted | None = None
    flush_with: Word | None = None
    top_face: Length | None = None
    on: JointWanted | None = None
    within: Annotated[Word | None, spelt("in")] = None
    count: Count = Count(1)
    thick: Thick | None = None
    nose: Length | None = None
    tail_gap: Length | None = None
    end_gap: Length | None = None
    load: Load | None = None


class Shelf(Form):
    """Shelf: a level board between the sides, fixed in them or loose on pins."""

    title: ClassVar[str] = "shelf"
    order: ClassVar[int] = 30
    many: ClassVar[bool] = True
    offers: ClassVar[tuple[str, ...]] = ("shelf",)
    section: ClassVar[type[Section]] = ShelfSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """A fixed shelf, or a set of loose ones."""
        assert isinstance(said, ShelfSection)  # noqa: S101 - the reader gives its section
        if said.joint is not None:
            return _fixed(so_far, name, said, said.joint, whole)
        if said.on is not None:
            return _loose(so_far, name, said, said.on, whole)
        return so_far.with_findings(
            nothing_there(
                said.place,
                says=f"the shelf {name} is held by nothing",
                cure='write joint = "housing" for a fixed one, on = "shelf pins" for a loose one',
            )
        )

    @classmethod
    def turn(cls, said: object) -> int:
        """Fixed shelves first: loose ones lie between them."""
        return int(isinstance(said, ShelfSection) and said.joint is None)

    @classmethod
    def together(cls, said: Mapping[str, object], *, so_far: Sketch, whole: Whole) -> Sketch:
        """Fixed shelves that nobody places stand at equal distances."""
        del whole
        known = {part.name for part in so_far.parts}
        fixed = [
            (name, shelf)
            for name, shelf in said.items()
            if isinstance(shelf, ShelfSection) and shelf.joint is not None and name in known
        ]
        if all(shelf.top_face or shelf.flush_with for _, shelf in fixed):
            return so_far
        rails = [part.name for part in reversed(so_far.parts) if part.family == "frame rail"]
        heights = [(name, _height(shelf, rails)) for name, shelf in fixed]
        return so_far.with_relations(sharing(so_far, heights))


def _height(said: ShelfSection, rails: Sequence[str]) -> Fraction | None:
    """What orders a shelf among the others: its height, or the place of its rail from below."""
    if said.top_face is not None:
        return said.top_face.value
    return Fraction(rails.index(said.flush_with)) if said.flush_with in rails else None


def _fixed(
    sketch: Sketch, name: str, said: ShelfSection, wanted: JointWanted, whole: Whole
) -> Sketch:
    case = sketch.landings["case"]
    wood = whole.wood(part=name, family="shelf", role="inside")
    up = size_of(f"{name}.top face")
    board = PlannedPart(
        name=name,
        family="fixed shelf",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.RIGHT, Way.BACK, Way.DOWN),
        at=(
            case.sum("left") - size_of(f"{name} in left side.entry"),
            case.sum("front"),
            up,
        ),
        show=frozenset({Surface.FACE_SIDE}),
    )
    sketch = sketch.with_parts(board)
    sketch = sketch.with_stated(
        (f"{name}.top face", said.top_face), (f"{name}.thickness", said.thick)
    )
    sketch = sketch.with_relations(
        Relations(
            dimensions=(free(f"{name}.top face", says=f"height of the top face of the {name}"),)
        )
    )
    sketch = sketch.with_unsaid(unsaid(up, size_of("case.tall") / 2))
    if said.flush_with is not None and said.flush_with not in sketch.landings:
        sketch = sketch.lacking("rail", _no_rail(said, sketch))
    elif said.flush_with is not None:
        rail = sketch.landings[said.flush_with]
        flush = follows(up, rail.sum("top"), f"the {name} is flush with the {said.flush_with}")
        sketch = sketch.with_relations(Relations(equations=(flush,)))
        sketch = sketch.with_joined(lying_on(str(said.flush_with), name)).with_landing(
            Landing(name=f"behind {said.flush_with}", parts=(name,), sums={"top": up})
        )
    return between_sides(sketch, name, wanted, whole, up=up, thick=said.thick)


def _no_rail(said: ShelfSection, sketch: Sketch) -> Finding:
    rails = [part.name for part in sketch.parts if part.family == "frame rail"]
    return nothing_there(
        said.at("flush_with"),
        says=f"no rail is called {str(said.flush_with)!r}",
        cure=or_nearest(str(said.flush_with), rails, what="rail"),
    )


def _loose(
    sketch: Sketch, name: str, said: ShelfSection, wanted: JointWanted, whole: Whole
) -> Sketch:
    """Shelves on one set of pin rows; the joint says on which holes each lies."""
    known = {plain_name(bay.word) for bay in bays(sketch)}
    if said.within is not None and plain_name(said.within) not in known:
        return sketch.lacking("opening", _no_opening(said, sketch))
    stem = name.removesuffix("shelves").removesuffix("shelf").strip()
    shelves = [f"{stem} shelf {i + 1}".strip() for i in range(said.count)]
    together = f"{stem} shelves".strip()
    for shelf in shelves:
        sketch = _loose_shelf(sketch, shelf, together, said, whole)
    row = Joined(
        name=together,
        joint=wanted.joint,
        place=wanted.place,
        seats={
            "receives": tuple(Seat(part=side, along=-foot_of(side, whole)) for side in SIDES),
            # counted from the front of the sides, which the shelf stands behind
            "enters": tuple(
                Seat(part=shelf, across=-size_of(f"{shelf}.nose")) for shelf in shelves
            ),
        },
        beside=_openings(sketch, said, wanted),
    )
    sizes = ("length", "width", "thickness")
    relations = Relations(
        alike=tuple(
            group
            for word in sizes
            for group in alike_unmade(
                [f"{shelf}.{word}" for shelf in shelves],
                "the loose shelves are alike",
                whole=whole,
            )
        )
    )
    return sketch.with_joined(row).with_relations(relations)


def _openings(sketch: Sketch, said: ShelfSection, wanted: JointWanted) -> tuple[Beside, ...]:
    """Where the openings begin in which the shelves may lie, and what ends them."""
    if said.within is None and getattr(wanted.joint, "lowest", None) is not None:
        at_bottom = "level bottom" in sketch.landings
        return (_edge("floor", "", floor_of_case(sketch)),) if at_bottom else ()
    known = bays(sketch)
    if said.within is not None:
        known = [bay for bay in known if plain_name(bay.word) == plain_name(said.within)]
    return (
        *(_edge("floor", bay.word, bay.start) for bay in known),
        *(_edge("ceiling", "", above) for above in ceilings(sketch)),
    )


def _edge(what: str, owner: str, start: Linear) -> Beside:
    return Beside(
        what=what, owner=owner, role="receives", axis=0, start=start, size=ZERO, depth=ZERO
    )


def _no_opening(said: ShelfSection, sketch: Sketch) -> Finding:
    return nothing_there(
        said.at("within"),
        says=f"no opening is called {str(said.within)!r}",
        cure=or_nearest(str(said.within), [bay.word for bay in bays(sketch)], what="opening"),
    )


def _loose_shelf(sketch: Sketch, shelf: str, row: str, said: ShelfSection, whole: Whole) -> Sketch:
    case = sketch.landings["case"]
    wood = whole.wood(part=shelf, family="shelf", role="inside")
    end_gap, nose, tail = (size_of(f"{shelf}.{w}") for w in ("end gap", "nose", "tail gap"))
    board = PlannedPart(
        name=shelf,
        family="loose shelf",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.RIGHT, Way.BACK, Way.DOWN),
        at=(
            case.sum("left") + end_gap,
            case.sum("front") + nose,
            size_of(f"{row}.{shelf} rests") + size_of(f"{shelf}.thickness"),
        ),
        show=frozenset({Surface.FACE_SIDE}),
    )
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    relations = Relations(
        dimensions=tuple(
            free(f"{shelf}.{word}", says=f"{word} of the {shelf}", kind=kind, may_be_nothing=True)
            for word, kind in GAPS.items()
        ),
        equations=(
            follows(
                size_of(f"{shelf}.length"),
                case.sum("wide") - end_gap * 2,
                "a loose shelf is short by a gap at each end",
            ),
            follows(
                size_of(f"{shelf}.width"),
                case.sum("deep") - nose - tail,
                "a loose shelf lies between its nose and the gap behind it",
            ),
        ),
        rules=(
            habit(size_of(f"{shelf}.thickness"), thick, "usual for shelves", level=Level.RULE),
            habit(end_gap, inch_or_mm(whole, inch=INCH / 16, mm=2), "so that it goes in"),
            habit(tail, inch_or_mm(whole, inch=INCH / 8, mm=3), "room behind"),
            habit(nose, 0, "flush with the front of the sides"),
        ),
    )
    sketch = sketch.with_parts(board).with_relations(relations)
    return sketch.with_stated(
        (f"{shelf}.thickness", said.thick),
        (f"{shelf}.nose", said.nose),
        (f"{shelf}.tail gap", said.tail_gap),
        (f"{shelf}.end gap", said.end_gap),
    )
