"""Doors: framed and panelled, single or in a pair, hung in an opening."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import ClassVar

from scantling.findings import Finding, Weight
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts import Corner, Surface
from scantling.piece._fitting import across_doors, over_and_under_a_door
from scantling.piece._form import Fitting, Form, Opening, Sketch, Whole
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

SIDES = ("left", "right")
GAPS = ("hinge", "top", "bottom")  # of each door
MEETING = "doors.meeting gap"  # of a pair in one opening


class Gaps(Section):
    """Gaps round a door, as it hangs today."""

    hinge: Gap | None = None
    lock: Gap | None = None
    meeting: Gap | None = None
    top: Gap | None = None
    bottom: Gap | None = None


class DoorsSection(Section):
    """`[doors]`: the opening they fill, the frame's joint, the panel, gaps and hinges.

    `pair = true` hangs two in one opening, or one on either side of the mullion between two.
    """

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
    opening: Opening
    left: Linear
    post: str  # frame stile it hangs on
    on_left: bool
    last_gap: str  # on its other side


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
        row = [o for n, o in so_far.openings.items() if _row_of(n) == str(said.fill)]
        if not row:
            return so_far.lacking("opening", _no_opening(said, so_far))
        hung = _hung(row, said)
        if not hung:
            return so_far.lacking("opening", _too_many(said, row))
        sketch = so_far.with_relations(_gaps(hung, whole))
        sketch = sketch.with_stated(
            *(
                (gap, said.gaps.meeting if gap == MEETING else said.gaps.lock)
                for gap in dict.fromkeys(door.last_gap for door in hung)
            ),
            *(
                (f"{door.name}.{word} gap", getattr(said.gaps, word))
                for door in hung
                for word in GAPS
            ),
        )
        for door in hung:
            sketch = _door(sketch, door, said, whole)
        sketch = sketch.with_fittings(*_fittings(sketch, hung, said, whole))
        return sketch.with_findings(*_of_no_use(said.gaps, hung))


def _fittings(
    sketch: Sketch, hung: Sequence[_Hung], said: DoorsSection, whole: Whole
) -> Iterator[Fitting]:
    """What the year does to each opening that doors fill, across and up and down."""
    place = said.gaps.place or said.place
    for opening in dict.fromkeys(door.opening for door in hung):
        doors = [door for door in hung if door.opening is opening]
        yield across_doors(
            opening,
            sketch.landings["case"],
            gaps=(
                *(f"{door.name}.hinge gap" for door in doors),
                *dict.fromkeys(door.last_gap for door in doors),
            ),
            stiles=tuple(f"{door.name}.{side} stile" for door in doors for side in SIDES),
            place=place,
            whole=whole,
        )
    for door in hung:
        yield from over_and_under_a_door(door.name, door.opening, place=place, whole=whole)


def _no_opening(said: DoorsSection, sketch: Sketch) -> Finding:
    known = {_row_of(name) for name in sketch.openings}
    return nothing_there(
        said.at("fill"),
        says=f"no opening is called {str(said.fill)!r}",
        cure=or_nearest(said.fill, known, what="opening"),
    )


def _row_of(opening: str) -> str:
    """What the row of an opening is called."""
    return opening.partition(" opening")[0]


def _too_many(said: DoorsSection, row: Sequence[Opening]) -> Finding:
    return nothing_there(
        said.at("fill"),
        says=f"the row {str(said.fill)!r} has {len(row)} openings, and a door fills one",
        cure="write pair = true, a door on either side of the mullion"
        if len(row) == 2
        else "give the row one opening, or two for a pair",
    )


def _of_no_use(gaps: Gaps, hung: Sequence[_Hung]) -> Iterator[Finding]:
    """A gap that these doors have not, so that its line changes nothing."""
    word = "lock" if hung[0].last_gap == MEETING else "meeting"
    if getattr(gaps, word) is not None:
        yield Finding(
            code="piece.no-such-gap",
            weight=Weight.NOTE,
            says=f"the line {word} is of no use here: doors hung like these have no {word} gap",
            cure="it may stay, for the day they are hung otherwise",
            place=gaps.at(word),
        )


def _hung(row: Sequence[Opening], said: DoorsSection) -> tuple[_Hung, ...]:
    """How they hang; none where the row has openings that no door would fill."""
    first, last = row[0], row[-1]
    if len(row) == 1 and not said.pair:
        return (_on_left(first, name="door", last_gap="doors.lock gap"),)
    if len(row) == 1:
        left = _on_left(first, name="left door", last_gap=MEETING)
        right = left.left + size_of("left door.wide") + size_of(MEETING)
        return left, _on_right(first, left=right, last_gap=MEETING)
    if len(row) > 2 or not said.pair:
        return ()
    left = _on_left(first, name="left door", last_gap="left door.lock gap")
    gap = "right door.lock gap"
    return left, _on_right(last, left=last.left + size_of(gap), last_gap=gap)


def _on_left(opening: Opening, *, name: str, last_gap: str) -> _Hung:
    return _Hung(
        name=name,
        opening=opening,
        left=opening.left + size_of(f"{name}.hinge gap"),
        post=opening.left_part,
        on_left=True,
        last_gap=last_gap,
    )


def _on_right(opening: Opening, *, left: Linear, last_gap: str) -> _Hung:
    return _Hung(
        name="right door",
        opening=opening,
        left=left,
        post=opening.right_part,
        on_left=False,
        last_gap=last_gap,
    )


def _gaps(hung: Sequence[_Hung], whole: Whole) -> Relations:
    small = inch_or_mm(whole, inch=INCH / 16, mm=2)
    says = {
        f"{door.name}.{word} gap": f"{word} gap of the {door.name}"
        for door in hung
        for word in GAPS
    } | {door.last_gap: _said_of(door.last_gap) for door in hung}
    return Relations(
        dimensions=tuple(
            free(n, says=what, kind=Kind.FOLLOWS, may_be_nothing=True, stage=60)
            for n, what in says.items()
        ),
        equations=tuple(
            follows(opening.wide, _across(hung, opening), "doors and gaps fill the opening")
            for opening in dict.fromkeys(door.opening for door in hung)
        ),
        rules=tuple(
            habit(size_of(n), small * (2 if n == MEETING else 1), "a usual gap") for n in says
        ),
        alike=(alike(tuple(f"{d.name}.wide" for d in hung), "the doors are a pair"),)
        if len(hung) > 1
        else (),
    )


def _said_of(last_gap: str) -> str:
    """`meeting gap`, or `lock gap of the left door`."""
    of, _, word = last_gap.partition(".")
    return word if of == "doors" else f"{word} of the {of}"


def _across(hung: Sequence[_Hung], opening: Opening) -> Linear:
    """Doors and gaps of one opening, side by side. [mm]"""
    doors = [door for door in hung if door.opening is opening]
    across = size_of(doors[-1].last_gap)
    for door in doors:
        across = across + size_of(f"{door.name}.wide") + size_of(f"{door.name}.hinge gap")
    return across


def _door(sketch: Sketch, door: _Hung, said: DoorsSection, whole: Whole) -> Sketch:
    opening = door.opening
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
    return sketch.with_joined(_hinge(sketch, door, said))


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


def _hinge(sketch: Sketch, door: _Hung, said: DoorsSection) -> Joined:
    stile = f"{door.name}.{'left' if door.on_left else 'right'} stile"
    gap = size_of(f"{door.name}.hinge gap")
    post = sketch.part(door.post)
    foot = door.opening.below + size_of(f"{door.name}.bottom gap") - post.at[2]
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
