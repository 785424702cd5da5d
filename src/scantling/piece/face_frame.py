"""Face frame: stiles, rails and mullions before the case, with the openings they leave."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._arch import arch_below
from scantling.piece._form import Form, Landing, Opening, Sketch, Whole
from scantling.piece._lying import lying_on
from scantling.piece._section import Count, JointWanted, Length, Section, Word
from scantling.piece._words import alike, follows, free, habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, size_of, total
from scantling.sizes.model import Level, Relations
from scantling.units import INCH

STILES = ("left stile", "right stile")
STAGE = 20  # made and flushed before anything is fitted to it


class Row(Section):
    """One row of the front as it stands: a rail, an opening, or the feet."""

    rail: Word | None = None
    opening: Word | None = None
    foot: Length | None = None
    tall: Length | None = None
    across: Count = 1
    mullion: Length | None = None
    arch: Length | None = None


class FaceFrameSection(Section):
    """`[face_frame]`: the joint, the stiles, and the rows from the top down."""

    joint: JointWanted
    mullion_joint: JointWanted | None = None
    stiles: Length | None = None
    thick: Length | None = None
    proud: Length | None = None
    rows: tuple[Row, ...]


@dataclass(frozen=True, kw_only=True)
class _Level:
    """A row with its height above the floor."""

    row: Row
    tall: Linear
    below: Linear

    @property
    def top(self) -> Linear:
        return self.below + self.tall


class FaceFrame(Form):
    """Face frame: two stiles the full height, rails and mullions between them, flush in front."""

    title: ClassVar[str] = "face frame"
    order: ClassVar[int] = 20
    section: ClassVar[type[Section]] = FaceFrameSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """Stiles, rails, mullions and openings, and where the frame lies on the case."""
        del name
        assert isinstance(said, FaceFrameSection)  # noqa: S101 - the reader gives its section
        levels = _levels(said.rows)
        sketch = _stiles(so_far, said, levels, whole)
        rails = [level for level in levels if level.row.rail]
        for level in rails:
            sketch = _rail(sketch, level, said, whole, at_top=level is levels[0])
        for above, level, below in zip(levels, levels[1:], levels[2:], strict=False):
            if level.row.opening:
                sketch = _openings(sketch, (above, level, below), said, whole)
        return _on_the_case(sketch, rails)


def _levels(rows: Sequence[Row]) -> list[_Level]:
    found: list[_Level] = []
    below: Linear = ZERO
    for row in reversed(rows):
        tall = _tall(row)
        found.append(_Level(row=row, tall=tall, below=below))
        below = below + tall
    return found[::-1]


def _tall(row: Row) -> Linear:
    if row.rail:
        return size_of(f"{row.rail}.width")
    if row.opening:
        return size_of(f"{_opening_name(row, 0)}.tall")
    return size_of("face frame.foot")


def _opening_name(row: Row, index: int) -> str:
    return f"{row.opening} opening" if row.across == 1 else f"{row.opening} opening {index + 1}"


def _stiles(sketch: Sketch, said: FaceFrameSection, levels: list[_Level], whole: Whole) -> Sketch:
    for name, across, wide in (
        (STILES[0], Way.LEFT, size_of("left stile.width") - size_of("face frame.proud")),
        (
            STILES[1],
            Way.RIGHT,
            size_of("case.wide") + size_of("face frame.proud") - size_of("right stile.width"),
        ),
    ):
        wood = whole.wood(part=name, family="stile", role="show")
        stile = PlannedPart(
            name=name,
            family="frame stile",
            wood=wood.species,
            cut_of_wood=wood.cut,
            ways=(Way.UP, across, Way.BACK),  # face edge: the inner one
            at=(wide, ZERO, ZERO),
            show=frozenset({Surface.FACE_SIDE}),
            stage=STAGE,
        )
        sketch = sketch.with_parts(stile)
        sketch = sketch.with_stated((f"{name}.width", said.stiles), (f"{name}.thickness", said.thick))
    foot = next((level.row.foot for level in levels if level.row.foot), None)
    sketch = sketch.with_stated(("face frame.foot", foot), ("face frame.proud", said.proud))
    return sketch.with_relations(_stile_relations(levels, whole))


def _stile_relations(levels: list[_Level], whole: Whole) -> Relations:
    proud = size_of("face frame.proud")
    wide = inch_or_mm(whole, inch=INCH * Fraction(7, 4), mm=45)
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    standing = total(level.tall for level in levels)
    rules = [
        habit(size_of("left stile.width"), wide, "usual for stiles", level=Level.RULE),
        habit(size_of("left stile.thickness"), thick, "usual for face frames", level=Level.RULE),
        habit(proud, 0, "the frame is planed flush with the case"),
        habit(size_of("face frame.foot"), 0, "the lowest row reaches the floor"),
    ]
    return Relations(
        dimensions=(
            free("face frame.foot", says="height of the feet", may_be_nothing=True),
            free("face frame.proud", says="what the frame stands over the case", may_be_nothing=True),
            free("face frame.wide", says="width of the face frame"),
        ),
        equations=(
            follows(size_of("case.front"), size_of("left stile.thickness"), "the frame stands in front"),
            follows(
                size_of("face frame.wide"),
                size_of("case.wide") + proud * 2,
                "the frame is as wide as the case and what it stands over",
            ),
            *(
                follows(size_of(f"{name}.length"), standing, "the rows add up to the stile")
                for name in STILES
            ),
            follows(standing, size_of("case.tall"), "the frame is as tall as the case"),
        ),
        rules=tuple(rules),
        alike=(
            alike(tuple(f"{n}.width" for n in STILES), "the stiles are a pair"),
            alike(tuple(f"{n}.thickness" for n in STILES), "the frame is of one thickness"),
        ),
    )


def _rail(
    sketch: Sketch, level: _Level, said: FaceFrameSection, whole: Whole, *, at_top: bool
) -> Sketch:
    name = str(level.row.rail)
    wood = whole.wood(part=name, family="rail", role="show")
    across = Way.UP if at_top else Way.DOWN  # face edge: towards the opening it is fitted to
    left = size_of("left stile.width") - size_of("face frame.proud")
    rail = PlannedPart(
        name=name,
        family="frame rail",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.RIGHT, across, Way.BACK),
        at=(
            left - size_of(f"{name} in left stile.entry"),
            ZERO,
            level.below if at_top else level.top,
        ),
        show=frozenset({Surface.FACE_SIDE}),
        stage=STAGE,
        place=None,
    )
    sketch = sketch.with_parts(rail).with_stated(
        (f"{name}.width", level.row.tall), (f"{name}.thickness", said.thick)
    )
    joined = tuple(_rail_joint(level, name, stile, said, at_top=at_top) for stile in STILES)
    clear = size_of("face frame.wide") - size_of("left stile.width") - size_of("right stile.width")
    wide = inch_or_mm(whole, inch=INCH * Fraction(3, 2), mm=38)
    relations = Relations(
        equations=(
            follows(
                size_of(f"{name}.length"),
                clear + joined[0].entry + joined[1].entry,
                f"the {name} reaches into both stiles",
            ),
        ),
        rules=(habit(size_of(f"{name}.width"), wide, "usual for rails", level=Level.RULE),),
        alike=(alike(("left stile.thickness", f"{name}.thickness"), "the frame is of one thickness"),),
    )
    sketch = sketch.with_joined(*joined).with_relations(relations)
    sketch = sketch.with_landing(
        Landing(name=name, parts=(name,), sums={"top": level.top, "below": level.below})
    )
    if level.row.arch is not None:
        start = joined[0].entry
        stop = size_of(f"{name}.length") - joined[1].entry
        sketch = arch_below(sketch, name, rise=level.row.arch, start=start, stop=stop)
    return sketch


def _rail_joint(
    level: _Level, name: str, stile: str, said: FaceFrameSection, *, at_top: bool
) -> Joined:
    """The rail's end in a stile; both count from the corner, so that a haunch lies there."""
    end = Surface.REFERENCE_END if stile == "left stile" else Surface.FAR_END
    edge = Surface.BACK_EDGE  # counts down from the top edge, or up from the lower one
    receives = Seat(part=stile, along=level.below)
    if at_top:
        receives = Seat(part=stile, corner=Corner(end=Surface.FAR_END))
    corner = (
        Beside(what="corner", owner="", role="receives", axis=0, start=ZERO, size=ZERO, depth=ZERO),
    )
    return Joined(
        name=f"{name} in {stile}",
        joint=said.joint.joint,
        place=said.joint.place,
        seats={
            "receives": (receives,),
            "enters": (Seat(part=name, corner=Corner(end=end, edge=edge)),),
        },
        beside=corner if at_top else (),
    )


def _openings(
    sketch: Sketch, rows: tuple[_Level, _Level, _Level], said: FaceFrameSection, whole: Whole
) -> Sketch:
    """The openings of one row, side by side, and the mullions between them."""
    above, level, below = rows
    row = level.row
    names = [_opening_name(row, i) for i in range(row.across)]
    mullions = [
        "mullion" if row.across == 2 else f"mullion {i + 1}"  # noqa: PLR2004 - one stands between two
        for i in range(row.across - 1)
    ]
    sketch = sketch.with_stated((f"{names[0]}.tall", row.tall))
    left = size_of("left stile.width") - size_of("face frame.proud")
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
            )
        )
        left = left + size_of(f"{name}.wide")
        if i < len(mullions):
            sketch = _mullion(sketch, mullions[i], rows, left, said, whole)
            left = left + size_of(f"{mullions[i]}.width")
            left_part = mullions[i]
    return sketch.with_relations(_row_relations(names, mullions))


def _row_relations(names: list[str], mullions: list[str]) -> Relations:
    across = total(
        [size_of(f"{n}.wide") for n in names]
        + [size_of(f"{m}.width") for m in mullions]
        + [size_of(f"{s}.width") for s in STILES]
    )
    equal = alike(tuple(f"{n}.wide" for n in names), "openings of one row are equal", sink=f"{names[-1]}.wide")
    return Relations(
        equations=(follows(size_of("face frame.wide"), across, "the row fills the frame"),),
        alike=(equal,) if len(names) > 1 else (),
    )


def _mullion(
    sketch: Sketch,
    name: str,
    rows: tuple[_Level, _Level, _Level],
    left: Linear,
    said: FaceFrameSection,
    whole: Whole,
) -> Sketch:
    above, level, below = rows
    wood = whole.wood(part=name, family="mullion", role="show")
    lower, upper = str(below.row.rail), str(above.row.rail)
    mullion = PlannedPart(
        name=name,
        family="mullion",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.UP, Way.RIGHT, Way.BACK),
        at=(left, ZERO, level.below - size_of(f"{name} in {lower}.entry")),
        show=frozenset({Surface.FACE_SIDE}),
        stage=STAGE,
    )
    sketch = sketch.with_parts(mullion).with_stated((f"{name}.width", level.row.mullion))
    # lengths stated for the corners are not meant for the narrower rails
    plain = type(said.joint.joint)(place=said.joint.place)
    joint = said.mullion_joint.joint if said.mullion_joint else plain
    joined = tuple(
        Joined(
            name=f"{name} in {rail}",
            joint=joint,
            place=said.joint.place,
            seats={
                "receives": (
                    Seat(
                        part=rail,
                        corner=Corner(edge=edge),
                        along=left - sketch.part(rail).at[0],
                    ),
                ),
                "enters": (Seat(part=name, corner=Corner(end=end)),),
            },
        )
        for rail, end, edge in (
            (lower, Surface.REFERENCE_END, _edge_towards(sketch.part(lower), Way.UP)),
            (upper, Surface.FAR_END, _edge_towards(sketch.part(upper), Way.DOWN)),
        )
    )
    wide = inch_or_mm(whole, inch=INCH * Fraction(3, 2), mm=38)
    relations = Relations(
        equations=(
            follows(
                size_of(f"{name}.length"),
                level.tall + joined[0].entry + joined[1].entry,
                "the mullion reaches into both rails",
            ),
        ),
        rules=(habit(size_of(f"{name}.width"), wide, "usual for mullions", level=Level.RULE),),
        alike=(alike(("left stile.thickness", f"{name}.thickness"), "the frame is of one thickness"),),
    )
    return sketch.with_joined(*joined).with_relations(relations)


def _edge_towards(part: PlannedPart, way: Way) -> Surface:
    """The edge of a level part that looks that way."""
    return Surface.BACK_EDGE if part.ways[1] is way else Surface.FACE_EDGE


def _on_the_case(sketch: Sketch, rails: list[_Level]) -> Sketch:
    """Which member lies on which front edge. Rails are flush with what stands behind them."""
    known = {part.name for part in sketch.parts}
    pairs = [("left stile", "left side"), ("right stile", "right side")]
    if rails and "front sub-top rail" in known:
        pairs.append((str(rails[0].row.rail), "front sub-top rail"))
    equations = ()
    if len(rails) > 1 and "bottom" in known:
        pairs.append((str(rails[-1].row.rail), "bottom"))
        equations = (
            follows(
                rails[-1].top, size_of("bottom.top face"), "the lowest rail is flush with the bottom"
            ),
        )
    sketch = sketch.with_relations(Relations(equations=equations))
    return sketch.with_joined(*(lying_on(member, case) for member, case in pairs))
