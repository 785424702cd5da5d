"""Face frame: stiles, rails and mullions before the case, with the openings they leave."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, replace
from typing import Any, ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._joint import Beside, Joined, Joint, Said, Seat
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._arch import arch_below
from scantling.piece._form import Form, Landing, Sketch, Whole
from scantling.piece._front import FRAME_KINDS, STAGE, TAPED, openings
from scantling.piece._lying import lying_on
from scantling.piece._made import (
    alike_unmade,
    ending_on,
    entering,
    far_end,
    first_unmade,
    lacking,
    lacks,
)
from scantling.piece._rows import (
    STILES,
    Row,
    Storey,
    Thickness,
    faults_of,
    members_of,
    sharing,
    shoulder_gaps,
    storeys,
)
from scantling.piece._section import JointWanted, Length, Section, Thick
from scantling.piece._words import follows, free, habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, size_of, total
from scantling.sizes.model import Equation, Level, Relations
from scantling.units import INCH

TENON = "tenon"  # the option of a joint that has one
PROUD = "face frame.proud"
LENGTHS = tuple(f"{stile}.length" for stile in STILES)


class FaceFrameSection(Section):
    """`[face_frame]`: the joint, the stiles, and the rows from the top down.

    `tenon` is for the rails and `stub` for the mullions. A joint without tenons has no use for
    them, so that the joint can be changed and all other lines left standing.
    """

    joint: JointWanted
    tenon: Length | None = None
    stub: Length | None = None
    mullion_joint: JointWanted | None = None
    stiles: Length | None = None
    thick: Thick | None = None
    proud: Length | None = None
    rows: tuple[Row, ...]


class FaceFrame(Form):
    """Face frame: two stiles the full height, rails and mullions between them, flush in front."""

    title: ClassVar[str] = "face frame"
    order: ClassVar[int] = 20
    offers: ClassVar[tuple[str, ...]] = ("rail", "mullion", "opening")
    section: ClassVar[type[Section]] = FaceFrameSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """Stiles, rails, mullions and openings, and where the frame lies on the case."""
        del name
        assert isinstance(said, FaceFrameSection)  # noqa: S101 - the reader gives its section
        faults = faults_of(said.rows, place=said.at("rows"))
        if faults:
            return so_far.with_findings(*faults)
        levels = storeys(said.rows, whole)
        frame = Thickness(members=members_of(levels), whole=whole)
        sketch = _stiles(so_far, said, levels, frame).with_findings(*_of_no_use(said))
        rails = [level for level in levels if level.row.rail]
        for level in rails:
            sketch = _rail(sketch, level, said, frame, at_top=level is levels[0])
        for above, level, below in zip(levels, levels[1:], levels[2:], strict=False):
            if level.row.opening:
                sketch = openings(sketch, (above, level, below), _within(said), frame)
        relations = frame.relations() + sharing(levels)
        return _on_the_case(sketch.with_relations(relations), rails)


def _at_corners(said: FaceFrameSection) -> Joint:
    """The joint of rails and stiles."""
    return _with_tenon(said.joint.joint, said.tenon)


def _within(said: FaceFrameSection) -> Joint:
    """The joint of mullions; lengths stated for the corners are not meant for narrower rails."""
    if said.mullion_joint is not None:
        return _with_tenon(said.mullion_joint.joint, said.stub)
    return _with_tenon(type(said.joint.joint)(place=said.joint.place), said.stub)


def _with_tenon(joint: Joint, tenon: Said | None) -> Joint:
    said: dict[str, Any] = {TENON: tenon}
    return joint if tenon is None or _idle(joint) else replace(joint, **said)


def _idle(joint: Joint) -> str:
    """Why a line about tenons is of no use to a joint; nothing where it is."""
    if _has_no_tenon(joint):
        return f"a {joint.title} has no tenon"
    return "" if getattr(joint, TENON) is None else "the joint's own table says it"


def _has_no_tenon(joint: Joint) -> bool:
    return all(known.name != TENON for known in fields(joint))


def _of_no_use(said: FaceFrameSection) -> Iterator[Finding]:
    """Lines about tenons that change nothing."""
    within = said.mullion_joint.joint if said.mullion_joint else type(said.joint.joint)()
    for word, joint in ((TENON, said.joint.joint), ("stub", within)):
        why = _idle(joint)
        if getattr(said, word) is not None and why:
            yield Finding(
                code="piece.no-tenon",
                weight=Weight.NOTE,
                says=f"the line {word} is of no use here: {why}",
                cure="it may stay, for the day the joint is changed",
                place=said.at(word),
            )


def _stiles(
    sketch: Sketch, said: FaceFrameSection, levels: list[Storey], frame: Thickness
) -> Sketch:
    whole, proud = frame.whole, _proud(said)
    for name, across, wide in (
        (STILES[0], Way.LEFT, size_of("left stile.width") - proud),
        (
            STILES[1],
            Way.RIGHT,
            size_of("case.wide") + proud - size_of("right stile.width"),
        ),
    ):
        wood = whole.wood(part=name, family="stile", role="show")
        stile = PlannedPart(
            name=name,
            family="frame stile",
            wood=wood.species,
            cut_of_wood=wood.cut,
            ways=(Way.UP, across, Way.BACK),  # face edge: the inner one
            at=(wide, frame.back_of(name), _foot_of(name, whole)),
            show=frozenset({Surface.FACE_SIDE}),
            kinds=FRAME_KINDS if name != STILES[0] else TAPED,
            stage=STAGE,
        )
        sketch = sketch.with_parts(stile)
        sketch = sketch.with_stated(
            (f"{name}.width", said.stiles), (f"{name}.thickness", said.thick)
        )
    foot = next((level.row.foot for level in levels if level.row.foot), None)
    sketch = sketch.with_stated(("face frame.foot", foot), (PROUD, said.proud))
    return sketch.with_relations(_stile_relations(levels, proud, frame))


def _proud(said: FaceFrameSection) -> Linear:
    """What the frame stands over the case at either side; planed flush unless said. [mm]"""
    return size_of(PROUD) if said.proud is not None else ZERO


def _foot_of(stile: str, whole: Whole) -> Linear:
    """How high the lower end of a stile stands: on the floor, unless it was made short. [mm]"""
    return lacking(f"{stile}.length", LENGTHS, whole)


def _stile_relations(levels: list[Storey], proud: Linear, frame: Thickness) -> Relations:
    whole, widths = frame.whole, [f"{stile}.width" for stile in STILES]
    dimensions = [free("face frame.foot", says="height of the feet", may_be_nothing=True)]
    if proud != ZERO:
        dimensions.append(free(PROUD, says="what the frame stands over the case"))
    wide = inch_or_mm(whole, inch=INCH * Fraction(7, 4), mm=45)
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    standing = total(level.tall for level in levels)
    rules = [
        habit(size_of(first_unmade(widths, whole)), wide, "usual for stiles", level=Level.RULE),
        habit(size_of(frame.first), thick, "usual for face frames", level=Level.RULE),
        habit(size_of("face frame.foot"), 0, "the lowest row reaches the floor"),
    ]
    return Relations(
        dimensions=(
            *dimensions,
            free("face frame.wide", says="width of the face frame"),
        ),
        equations=(
            follows(
                size_of("face frame.wide"),
                size_of("case.wide") + proud * 2,
                "the frame is as wide as the case and what it stands over",
            ),
            follows(standing, size_of("case.tall"), "the frame is as tall as the case"),
        ),
        rules=tuple(rules),
        alike=alike_unmade(widths, "the stiles are a pair", whole=whole),
    ) + ending_on(standing, LENGTHS, "the rows add up to the stile", whole=whole)


def _rail(
    sketch: Sketch, level: Storey, said: FaceFrameSection, frame: Thickness, *, at_top: bool
) -> Sketch:
    name, whole = str(level.row.rail), frame.whole
    wood = whole.wood(part=name, family="rail", role="show")
    across = Way.UP if at_top else Way.DOWN  # face edge: towards the opening it is fitted to
    left = size_of("left stile.width") - _proud(said)
    rail = PlannedPart(
        name=name,
        family="frame rail",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.RIGHT, across, Way.BACK),
        at=(
            left - size_of(f"{name} in left stile.entry"),
            frame.back_of(name),
            level.below if at_top else level.top,
        ),
        show=frozenset({Surface.FACE_SIDE}),
        kinds=FRAME_KINDS,
        stage=STAGE,
    )
    sketch = sketch.with_parts(rail).with_stated(
        (f"{name}.width", level.row.tall), (f"{name}.thickness", said.thick)
    )
    joined = tuple(_rail_joint(level, stile, said, frame, at_top=at_top) for stile in STILES)
    clear = size_of("face frame.wide") - size_of("left stile.width") - size_of("right stile.width")
    wide = inch_or_mm(whole, inch=INCH * Fraction(3, 2), mm=38)
    relations = entering(
        clear + joined[0].entry + joined[1].entry,
        name,
        joined[1].entry,
        f"the {name} reaches into both stiles",
        whole=whole,
        shoulders=shoulder_gaps(joined),
    )
    relations += Relations(
        rules=(habit(size_of(f"{name}.width"), wide, "usual for rails", level=Level.RULE),),
    )
    if level.lack != ZERO:
        relations += lacks(f"{name}.width", "the lowest rail is flush with the bottom", whole=whole)
    sketch = sketch.with_joined(*joined).with_relations(relations)
    sketch = sketch.with_landing(
        Landing(name=name, parts=(name,), sums={"top": level.top, "below": level.below})
    )
    if level.row.arch is not None:
        start = _shoulder(joined[0])
        end = size_of(f"{name}.length") - far_end(f"{name}.length", whole)
        stop = end - _shoulder(joined[1])
        sketch = arch_below(sketch, name, rise=level.row.arch, start=start, stop=stop)
    return sketch


def _shoulder(joined: Joined) -> Linear:
    """From a rail's end to the shoulder of its tenon, or to the mate it laps. [mm]"""
    return joined.entry if _has_no_tenon(joined.joint) else joined.size(TENON)


def _rail_joint(
    level: Storey, stile: str, said: FaceFrameSection, frame: Thickness, *, at_top: bool
) -> Joined:
    """The rail's end in a stile; both count from the corner, so that a haunch lies there."""
    name, back = str(level.row.rail), -frame.back_of(stile)
    end = Surface.REFERENCE_END if stile == "left stile" else Surface.FAR_END
    edge = Surface.BACK_EDGE  # counts down from the top edge, or up from the lower one
    below = level.below + level.lack - _foot_of(stile, frame.whole)
    receives = Seat(part=stile, along=below, into=back)
    if at_top:
        receives = Seat(part=stile, corner=Corner(end=Surface.FAR_END), into=back)
    corner = (
        Beside(what="corner", owner="", role="receives", axis=0, start=ZERO, size=ZERO, depth=ZERO),
    )
    return Joined(
        name=f"{name} in {stile}",
        joint=_at_corners(said),
        place=said.joint.place,
        seats={
            "receives": (receives,),
            "enters": (
                Seat(
                    part=name,
                    corner=Corner(end=end, edge=edge),
                    along=ZERO if stile == STILES[0] else far_end(f"{name}.length", frame.whole),
                    into=-frame.back_of(name),
                ),
            ),
        },
        beside=corner if at_top else (),
    )


def _on_the_case(sketch: Sketch, rails: list[Storey]) -> Sketch:
    """Which member lies on which front edge. Rails are flush with what stands behind them."""
    known = {part.name for part in sketch.parts}
    pairs = [("left stile", "left side"), ("right stile", "right side")]
    if rails and "front sub-top rail" in known:
        pairs.append((str(rails[0].row.rail), "front sub-top rail"))
    equations: tuple[Equation, ...] = ()
    if len(rails) > 1 and "bottom" in known:
        pairs.append((str(rails[-1].row.rail), "bottom"))
        equations = (
            follows(
                rails[-1].top,
                size_of("bottom.top face"),
                "the lowest rail is flush with the bottom",
            ),
        )
    sketch = sketch.with_relations(Relations(equations=equations))
    return sketch.with_joined(*(lying_on(member, case) for member, case in pairs))
