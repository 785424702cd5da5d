"""Doors: framed and panelled, single or in a pair, hung in an opening."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from scantling.findings import Finding
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import Corner, Surface
from scantling.piece._form import Form, Opening, Sketch, Whole
from scantling.piece._panelled import Leaf, PanelSaid, panelled
from scantling.piece._section import Gap, JointWanted, Length, Section, Thick, Truth, Word
from scantling.piece._words import (
    alike,
    follows,
    free,
    habit,
    inch_or_mm,
    nothing_there,
    or_nearest,
)
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Kind, Relations
from scantling.units import INCH

GAPS = ("hinge", "top", "bottom")  # of each door
LAST_GAP = {True: "doors.meeting gap", False: "doors.lock gap"}  # of a pair, of one


class Gaps(Section):
    """Gaps round a door, as it hangs today."""

    hinge: Gap | None = None
    lock: Gap | None = None
    meeting: Gap | None = None
    top: Gap | None = None
    bottom: Gap | None = None


class DoorsSection(Section):
    """`[doors]`: the opening they fill, the frame's joint, the panel, gaps and hinges."""

    fill: Word
    pair: Truth = False
    joint: JointWanted
    stiles: Length | None = None
    top_rail: Length | None = None
    bottom_rail: Length | None = None
    thick: Thick | None = None
    panel: PanelSaid
    gaps: Gaps = Gaps()
    hinge: JointWanted


@dataclass(frozen=True, kw_only=True)
class _Hung:
    """One door: where it hangs and what meets it on the other side."""

    name: str
    left: Linear
    post: str  # frame stile it hangs on
    on_left: bool


class Doors(Form):
    """Doors: frame and panel, sitting in the opening, flush in front."""

    title: ClassVar[str] = "doors"
    order: ClassVar[int] = 60
    section: ClassVar[type[Section]] = DoorsSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """The doors, their gaps, and their hinges."""
        del name
        assert isinstance(said, DoorsSection)  # noqa: S101 - the reader gives its section
        opening = so_far.openings.get(f"{said.fill} opening")
        if opening is None:
            return so_far.lacking("opening", _no_opening(said, so_far))
        hung = _pair(opening) if said.pair else _single(opening)
        sketch = so_far.with_relations(_gaps(opening, hung, whole))
        sketch = sketch.with_stated(
            (LAST_GAP[said.pair], said.gaps.meeting if said.pair else said.gaps.lock),
            *(
                (f"{door.name}.{word} gap", getattr(said.gaps, word))
                for door in hung
                for word in GAPS
            ),
        )
        for door in hung:
            sketch = _door(sketch, door, opening, said, whole)
        return sketch


def _no_opening(said: DoorsSection, sketch: Sketch) -> Finding:
    known = {name.removesuffix(" opening") for name in sketch.openings}
    return nothing_there(
        said.at("fill"),
        says=f"no opening is called {str(said.fill)!r}",
        cure=or_nearest(said.fill, known, what="opening"),
    )


def _pair(opening: Opening) -> tuple[_Hung, ...]:
    left = opening.left + size_of("left door.hinge gap")
    right = left + size_of("left door.wide") + size_of("doors.meeting gap")
    return (
        _Hung(name="left door", left=left, post=opening.left_part, on_left=True),
        _Hung(name="right door", left=right, post=opening.right_part, on_left=False),
    )


def _single(opening: Opening) -> tuple[_Hung, ...]:
    left = opening.left + size_of("door.hinge gap")
    return (_Hung(name="door", left=left, post=opening.left_part, on_left=True),)


def _gaps(opening: Opening, hung: tuple[_Hung, ...], whole: Whole) -> Relations:
    small = inch_or_mm(whole, inch=INCH / 16, mm=2)
    last = LAST_GAP[len(hung) > 1]
    says = {
        f"{door.name}.{word} gap": f"{word} gap of the {door.name}"
        for door in hung
        for word in GAPS
    } | {last: last.replace("doors.", "")}
    across = size_of(last)
    for door in hung:
        across = across + size_of(f"{door.name}.wide") + size_of(f"{door.name}.hinge gap")
    return Relations(
        dimensions=tuple(
            free(n, says=what, kind=Kind.FOLLOWS, may_be_nothing=True, stage=60)
            for n, what in says.items()
        ),
        equations=(follows(opening.wide, across, "doors and gaps fill the opening"),),
        rules=tuple(
            habit(size_of(n), small * (2 if n == last and len(hung) > 1 else 1), "a usual gap")
            for n in says
        ),
        alike=(alike(tuple(f"{d.name}.wide" for d in hung), "the doors are a pair"),)
        if len(hung) > 1
        else (),
    )


def _door(
    sketch: Sketch, door: _Hung, opening: Opening, said: DoorsSection, whole: Whole
) -> Sketch:
    leaf = Leaf(
        name=door.name,
        family="door",
        left=door.left,
        below=opening.below + size_of(f"{door.name}.bottom gap"),
        front=ZERO,
        joint=said.joint,
        panel=said.panel,
    )
    sketch = panelled(sketch, leaf, whole=whole)
    sketch = sketch.with_relations(_tall(leaf, opening, whole))
    sketch = sketch.with_stated(
        *((f"{door.name}.{s} stile.width", said.stiles) for s in ("left", "right")),
        (f"{door.name}.top rail.width", said.top_rail),
        (f"{door.name}.bottom rail.width", said.bottom_rail),
        (f"{door.name}.left stile.thickness", said.thick),
    )
    return sketch.with_joined(_hinge(sketch, door, opening, said))


def _tall(leaf: Leaf, opening: Opening, whole: Whole) -> Relations:
    """A door and its gaps. A door whose stiles are made short leaves more room above it."""
    because = "a door and its gaps fill the opening's height"
    filled = size_of(leaf.own("tall"))
    for word in ("top gap", "bottom gap", *(["short of it"] if leaf.is_made_tall(whole) else [])):
        filled = filled + size_of(leaf.own(word))
    found = Relations(equations=(follows(opening.tall, filled, because),))
    if not leaf.is_made_tall(whole):
        return found
    name = leaf.own("short of it")
    more = free(name, says=f"room over the {leaf.name} beyond its gap", kind=Kind.FOLLOWS)
    return found + Relations(
        dimensions=(replace(more, least=None),), rules=(habit(size_of(name), 0, because),)
    )


def _hinge(sketch: Sketch, door: _Hung, opening: Opening, said: DoorsSection) -> Joined:
    stile = f"{door.name}.{'left' if door.on_left else 'right'} stile"
    gap = size_of(f"{door.name}.hinge gap")
    post = sketch.part(door.post)
    foot = opening.below + size_of(f"{door.name}.bottom gap") - post.at[2]
    rails = tuple(
        Beside(
            what=f"{where} rail",
            owner="",
            role="enters",
            axis=0,
            start=size_of(f"{door.name}.tall") - size_of(f"{door.name}.top rail.width")
            if where == "top"
            else size_of(f"{door.name}.bottom rail.width") * 0,
            size=size_of(f"{door.name}.{where} rail.width"),
            depth=gap,
        )
        for where in ("top", "bottom")
    )
    return Joined(
        name=f"{door.name} on {door.post}",
        joint=said.hinge.joint,
        place=said.hinge.place,
        seats={
            "receives": (Seat(part=door.post, along=foot, into=-post.at[1]),),
            # the outer edge of a door stile is its back edge: the face edge takes the panel
            "enters": (Seat(part=stile, corner=Corner(edge=Surface.BACK_EDGE)),),
        },
        beside=rails,
    )
