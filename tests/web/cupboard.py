"""A small wall cupboard for tests of the page: nineteen parts, drawn by hand, not worked out.

So the page is tested whatever the rooms below it do. Its shapes are true parts with true cuts;
only what a solver or a joint would say of them is written down here.
"""

from __future__ import annotations

from fractions import Fraction

from scantling.parts import (
    Bore,
    Box,
    Corner,
    Cut,
    Extent,
    Part,
    Placement,
    Round,
    Span,
    Surface,
    Way,
)
from scantling.parts.part import BOARD
from scantling.parts.solid import finished, turn
from scantling.solids.gltf import Material, Shown, glb
from scantling.solids.mesh import mesh
from scantling.solids.store import Store

INCH = Fraction(127, 5)
RIGHT, LEFT, BACK, FRONT, UP, DOWN = Way.RIGHT, Way.LEFT, Way.BACK, Way.FRONT, Way.UP, Way.DOWN
FROM_BACK = Corner(face=Surface.BACK_FACE)
ROOM = "housing"


def inch(text: str) -> Fraction:
    """`1 1/2` in millimetres."""
    return sum((Fraction(word) for word in text.split()), Fraction(0)) * INCH


def span(start: str | None, stop: str | None) -> Span:
    return Span(None if start is None else inch(start), None if stop is None else inch(stop))


def part(
    name: str,
    family: str,
    size: str,
    ways: tuple[Way, Way, Way],
    at: str,
    *cuts: Cut,
    wood: str = "white ash",
    moves_with: str = "",
    bought: bool = False,
) -> Part:
    """A part from `long, wide, thick` and where its corner stands: `wide, deep, tall`."""
    long, wide, thick = (inch(text) for text in size.split(","))
    x, y, z = (inch(text) for text in at.split(","))
    extent = Extent(length=long, width=wide, thickness=thick)
    placement = Placement(along=ways[0], across=ways[1], into=ways[2], at=(x, y, z))
    return Part(
        name=name,
        family=family,
        extent=extent,
        wood=wood,
        cut_of_wood="" if bought else "flat",
        placement=placement,
        cuts=cuts,
        show=frozenset({Surface.FACE_SIDE}),
        hardware=bought,
        moves_with=moves_with,
        blank=Round() if bought and wide == thick else BOARD,
    )


def housing(owner: str, start: str, stop: str) -> Cut:
    box = Box(along=span(start, stop), into=span(None, "1/4"))
    return Cut(name="housing", owner=owner, shape=box, corner=FROM_BACK)


RABBET = Cut(
    name="back rabbet",
    owner="back",
    shape=Box(across=span(None, "1/4"), into=span(None, "3/8")),
    corner=Corner(edge=Surface.BACK_EDGE, face=Surface.BACK_FACE),
)


def _hole(number: int, up: str) -> Cut:
    bore = Bore(
        axis=2,
        centre=(inch(up), inch("1 1/4")),
        radius=inch("1/8"),
        span=span(None, "3/8"),
    )
    return Cut(name=f"hole {number}", owner="shelf", shape=bore, corner=FROM_BACK)


def tenon(owner: str, end: Surface, long: str) -> tuple[Cut, ...]:
    """A cheek from each face; the tongue left is 1/4 thick in 3/4."""
    return tuple(
        Cut(
            name=f"{name} cheek",
            owner=owner,
            shape=Box(along=span(None, long), into=span(None, "1/4")),
            corner=Corner(end=end, face=face),
        )
        for name, face in (("front", Surface.FACE_SIDE), ("back", Surface.BACK_FACE))
    )


def mortise(owner: str, start: str, stop: str, deep: str) -> Cut:
    box = Box(along=span(start, stop), across=span(None, deep), into=span("1/4", "1/2"))
    return Cut(name="mortise", owner=owner, shape=box, corner=Corner(edge=Surface.BACK_EDGE))


def _side(hand: str, into: Way, x: str) -> Part:
    cuts = (
        housing(f"bottom in {hand} side", "1 1/4", "2"),
        housing(f"top in {hand} side", "23 1/4", "24"),
        RABBET,
        *(_hole(number, up) for number, up in enumerate(("11", "12", "13"), 1) if hand == "right"),
    )
    return part(f"{hand} side", "side", "24,7 1/4,3/4", (UP, BACK, into), f"{x},3/4,0", *cuts)


def _stile(hand: str, across: Way, x: str) -> Part:
    low, high = f"bottom rail in {hand} stile", f"top rail in {hand} stile"
    cuts = (mortise(low, "1/4", "1 3/4", "1"), mortise(high, "22 3/4", "23 3/4", "1"))
    return part(f"{hand} stile", "stile", "24,1 1/2,3/4", (UP, across, BACK), f"{x},0,0", *cuts)


def _rail(name: str, wide: str, tall: str) -> Part:
    ends = (
        *tenon(f"{name} in left stile", Surface.REFERENCE_END, "1"),
        *tenon(f"{name} in right stile", Surface.FAR_END, "1"),
    )
    at = f"1/2,0,{tall}"
    return part(name, name, f"15,{wide},3/4", (RIGHT, UP, BACK), at, *ends)


def _door_stile(hand: str, across: Way, x: str) -> Part:
    low, high = f"door bottom rail in {hand} stile", f"door top rail in {hand} stile"
    groove = Cut(
        name="groove",
        owner="door panel",
        shape=Box(across=span(None, "3/8"), into=span("1/4", "1/2")),
        corner=Corner(edge=Surface.BACK_EDGE),
    )
    cuts = (groove, mortise(low, "1/4", "1 3/4", "1"), mortise(high, "18 1/2", "19 3/4", "1"))
    ways = (UP, across, BACK)
    at = f"{x},0,2 1/16"
    name = f"door.{hand} stile"
    return part(name, "door stile", "20 1/4,2,3/4", ways, at, *cuts, moves_with="door")


def _door_rail(name: str, tall: str) -> Part:
    own = f"door {name} rail"
    ends = (
        *tenon(f"{own} in left stile", Surface.REFERENCE_END, "1"),
        *tenon(f"{own} in right stile", Surface.FAR_END, "1"),
    )
    ways = (RIGHT, UP, BACK)
    at = f"2 9/16,0,{tall}"
    return part(
        f"door.{name} rail", "door rail", "10 7/8,2,3/4", ways, at, *ends, moves_with="door"
    )


def _pin(name: str, x: str, y: str) -> Part:
    ways = (RIGHT if x == "1/2" else LEFT, BACK, UP)
    return part(
        name, "shelf pin", "3/4,1/4,1/4", ways, f"{x},{y},11 3/4", wood="brass", bought=True
    )


def parts() -> tuple[Part, ...]:
    """Made parts, then what is bought."""
    poplar = "yellow-poplar"
    flat = (RIGHT, BACK, DOWN)
    return (
        _side("left", RIGHT, "0"),
        _side("right", LEFT, "16"),
        part("bottom", "bottom", "15,7,3/4", flat, "1/2,3/4,2", wood=poplar),
        part("top", "top", "15,7,3/4", flat, "1/2,3/4,24", wood=poplar),
        part("shelf", "shelf", "14 3/8,6 3/4,3/4", flat, "13/16,7/8,12 3/4", wood=poplar),
        part("back", "back", "24,15 1/4,1/4", (UP, RIGHT, FRONT), "3/8,8,0", wood=poplar),
        _stile("left", RIGHT, "0"),
        _stile("right", LEFT, "16"),
        _rail("bottom rail", "2", "0"),
        _rail("top rail", "1 1/2", "22 1/2"),
        _door_stile("left", RIGHT, "1 9/16"),
        _door_stile("right", LEFT, "14 7/16"),
        _door_rail("bottom", "2 1/16"),
        _door_rail("top", "20 5/16"),
        part(
            "door.panel",
            "door panel",
            "17,9 5/8,1/4",
            (UP, RIGHT, BACK),
            "3 3/16,1/4,3 11/16",
            moves_with="door",
        ),
        _pin("pin 1", "1/2", "2"),
        _pin("pin 2", "1/2", "6"),
        _pin("pin 3", "15 1/2", "2"),
        _pin("pin 4", "15 1/2", "6"),
    )


MATERIALS = (
    Material(name="white ash", colour=(0.72, 0.6, 0.45)),
    Material(name="yellow-poplar", colour=(0.62, 0.6, 0.4)),
    Material(name="brass", colour=(0.6, 0.45, 0.15), metal=1.0, rough=0.4),
)


def model(made: tuple[Part, ...]) -> bytes:
    """The cupboard in space."""
    store = Store()
    shown = [
        Shown(
            name=each.name,
            mesh=mesh(finished(each, store=store)),
            turn=turn(each.placement),
            material=each.wood,
        )
        for each in made
    ]
    return glb(shown, materials=MATERIALS)
