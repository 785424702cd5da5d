"""Drawers: boxes that fill openings, with guides beside them and kickers above."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.parts import Way
from scantling.parts.pulled import Pulled
from scantling.piece._drawer_box import Box, BoxSaid, drawer_box
from scantling.piece._fitting import behind_a_drawer, over_a_drawer
from scantling.piece._form import Fitting, Form, Landing, Opening, Sketch, Whole
from scantling.piece._guide import GuideSaid, guide
from scantling.piece._kicker import KickerSaid, kicker, under_the_top
from scantling.piece._running import running
from scantling.piece._section import Gap, JointWanted, Length, Load, Section, Word
from scantling.piece._words import alike, free, habit, inch_or_mm, nothing_there, or_nearest
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Bound, Kind, Level, Relations
from scantling.units import INCH


class DrawerGaps(Section):
    """Gaps round a drawer, as it runs today."""

    side: Gap | None = None
    top: Gap | None = None
    low: Gap | None = None


class DrawersSection(Section):
    """`[drawers]`: the openings they fill, their joints and boards, guides and kickers."""

    fill: Word
    deep: Length | None = None
    front_joint: JointWanted
    back_joint: JointWanted
    bottom_joint: JointWanted
    front: BoxSaid = BoxSaid()
    sides: BoxSaid = BoxSaid()
    back: BoxSaid = BoxSaid()
    bottom: BoxSaid = BoxSaid()
    drop: Length | None = None
    gaps: DrawerGaps = DrawerGaps()
    guides: GuideSaid | None = None
    kickers: KickerSaid | None = None
    load: Load | None = None


@dataclass(frozen=True, kw_only=True)
class _Beside:
    """What stands beside an opening behind the frame: a side, or a partition."""

    part: str
    face: Linear  # its face towards the drawer, from the left
    side: str  # "left", "right"


class Drawers(Form):
    """Drawers: half-blind dovetailed in front, bottoms slid in from behind, sitting in."""

    title: ClassVar[str] = "drawers"
    order: ClassVar[int] = 50
    section: ClassVar[type[Section]] = DrawersSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """One drawer for each opening, and its running gear."""
        del name
        assert isinstance(said, DrawersSection)  # noqa: S101 - the reader gives its section
        openings = [
            o
            for o in so_far.openings.values()
            if o.name == f"{said.fill} opening" or o.name.startswith(f"{said.fill} opening ")
        ]
        if not openings:
            return so_far.lacking("opening", _no_opening(said, so_far))
        sketch = so_far.with_relations(_common(openings, whole)).with_relations(_inside(openings))
        for i, opening in enumerate(openings):
            drawer = f"drawer {i + 1}"
            sketch = _drawer(sketch, drawer, opening, said, whole)
            sketch = sketch.with_pulled(_pulled(sketch, drawer, opening, said))
            sketch = sketch.with_fittings(*_fittings(sketch, drawer, opening, said, whole))
            for neighbour in _neighbours(sketch, opening):
                sketch = _gear(sketch, drawer, opening, neighbour, said, whole)
        return sketch


def _no_opening(said: DrawersSection, sketch: Sketch) -> Finding:
    known = {name.split(" opening")[0] for name in sketch.openings}
    return nothing_there(
        said.at("fill"),
        says=f"no opening is called {str(said.fill)!r}",
        cure=or_nearest(said.fill, known, what="opening"),
    )


def _common(openings: list[Opening], whole: Whole) -> Relations:
    small = inch_or_mm(whole, inch=INCH / 32, mm=1)
    gaps = {
        "side gap": (small, "a close side keeps it straight"),
        "top gap": (inch_or_mm(whole, inch=INCH / 8, mm=3), "room to swell"),
        "low gap": (Fraction(0), "it runs on the rail"),
        "drop": (inch_or_mm(whole, inch=INCH / 4, mm=6), "air over the back"),
    }
    names = [f"drawer {i + 1}" for i in range(len(openings))]
    return Relations(
        dimensions=tuple(
            free(
                f"{n}.{word}",
                says=f"{word} of {n}",
                kind=Kind.FOLLOWS,
                may_be_nothing=True,
                stage=70,
            )
            for n in names
            for word in gaps
        )
        + tuple(free(f"{n}.deep", says=f"depth of {n}", stage=70) for n in names),
        rules=(
            *(
                habit(size_of(f"{n}.{word}"), value, because)
                for n in names
                for word, (value, because) in gaps.items()
            ),
            habit(
                size_of(f"{names[0]}.deep"),
                inch_or_mm(whole, inch=INCH * 16, mm=400),
                "usual for cupboards",
                level=Level.RULE,
            ),
        ),
        alike=(alike(tuple(f"{n}.deep" for n in names), "drawers of one row are alike"),)
        if len(names) > 1
        else (),
    )


def _inside(openings: list[Opening]) -> Relations:
    """No drawer is longer than the case is deep inside, and a little air stays behind it."""
    return Relations(
        bounds=tuple(
            Bound(
                sum=opening.deep - size_of(f"drawer {i + 1}.deep"),
                because="a drawer ends before the back of the case",
                cure="Make the drawers shorter (deep in [drawers]), or the case deeper.",
            )
            for i, opening in enumerate(openings)
        )
    )


def _drawer(
    sketch: Sketch, name: str, opening: Opening, said: DrawersSection, whole: Whole
) -> Sketch:
    side, top, low = (size_of(f"{name}.{w} gap") for w in ("side", "top", "low"))
    box = Box(
        name=name,
        left=opening.left + side,
        below=opening.below + low,
        wide=opening.wide - side * 2,
        tall=opening.tall - top - low,
        deep=size_of(f"{name}.deep"),
        drop=size_of(f"{name}.drop"),
        front_joint=said.front_joint,
        back_joint=said.back_joint,
        bottom_joint=said.bottom_joint,
    )
    sketch = drawer_box(sketch, box, whole=whole)
    return sketch.with_stated(
        (f"{name}.side gap", said.gaps.side),
        (f"{name}.top gap", said.gaps.top),
        (f"{name}.low gap", said.gaps.low),
        (f"{name}.drop", said.drop),
        (f"{name}.deep", said.deep),
        (f"{name}.front.thickness", said.front.thick),
        *((f"{name}.{s} side.thickness", said.sides.thick) for s in ("left", "right")),
        (f"{name}.back.thickness", said.back.thick),
        (f"{name}.bottom.thickness", said.bottom.thick),
    )


def _fittings(
    sketch: Sketch, name: str, opening: Opening, said: DrawersSection, whole: Whole
) -> Iterator[Fitting]:
    place = said.gaps.place or said.place
    for part in ("front", "left side", "right side"):
        yield over_a_drawer(name, part, opening, place=place, whole=whole)
    if "left side" in {part.name for part in sketch.parts}:
        yield behind_a_drawer(name, opening, "left side", place=said.place, whole=whole)


def _neighbours(sketch: Sketch, opening: Opening) -> tuple[_Beside, ...]:
    case = sketch.landings["case"]
    found = []
    for side, part in (("left", opening.left_part), ("right", opening.right_part)):
        behind: Landing | None = sketch.landings.get(f"behind {part}")
        if behind is not None:
            face = behind.sum("right" if side == "left" else "left")
            found.append(_Beside(part=behind.parts[0], face=face, side=side))
        elif part.endswith("stile"):
            found.append(_Beside(part=f"{side} side", face=case.sum(side), side=side))
    return tuple(found)


def _pulled(sketch: Sketch, name: str, opening: Opening, said: DrawersSection) -> Pulled:
    """The drawer as it slides, and the lines that would see to its running."""
    return running(
        sketch,
        name,
        opening,
        fill=said.at("fill"),
        section=said.place,
        guides=said.at("guides") if said.guides is not None else None,
        kickers=said.at("kickers") if said.kickers is not None else None,
    )


def _gear(  # noqa: PLR0917 - one drawer's gear, told whole
    sketch: Sketch,
    name: str,
    opening: Opening,
    beside: _Beside,
    said: DrawersSection,
    whole: Whole,
) -> Sketch:
    edge = opening.left if beside.side == "left" else opening.left + opening.wide
    if said.guides is not None:
        sketch = guide(
            sketch,
            f"{name} {beside.side} guide",
            said=said.guides,
            on=beside.part,
            long=size_of(f"{name}.deep"),
            edge=edge,
            face=beside.face,
            below=opening.below,
            side=beside.side,
            whole=whole,
        )
    if said.kickers is not None and beside.part.endswith("side") and under_the_top(sketch, opening):
        right = beside.side == "right"
        sketch = kicker(
            sketch,
            f"{beside.side} kicker",
            said=said.kickers,
            left=beside.face,
            ways=(Way.BACK, Way.LEFT if right else Way.RIGHT),
            under=opening.below + opening.tall,
            whole=whole,
            usual=inch_or_mm(whole, inch=INCH * Fraction(7, 4), mm=45),
        )
    return sketch
