"""Parts to prove in tests, each with figures all unequal."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.parts import (
    Bore,
    Box,
    Corner,
    Cut,
    Drawn,
    Extent,
    Part,
    Placement,
    Point,
    Profile,
    Shape,
    Span,
    Surface,
    Taper,
    Way,
)
from scantling.proofs._proof import Case
from scantling.solids.store import Store

F = Fraction
FAR_END = Corner(end=Surface.FAR_END)
BACK_EDGE = Corner(edge=Surface.BACK_EDGE)
UP = Placement(along=Way.UP, across=Way.BACK, into=Way.LEFT, at=(F(19), F(20), F(100)))


def cut(name: str, owner: str, shape: Shape, corner: Corner | None = None) -> Cut:
    return Cut(name=name, owner=owner, shape=shape, corner=corner or Corner())


def part(name: str, size: tuple[int | F, int | F, int | F], *cuts: Cut) -> Part:
    return Part(
        name=name,
        family=name,
        extent=Extent(length=F(size[0]), width=F(size[1]), thickness=F(size[2])),
        wood="cherry",
        cut_of_wood="flat",
        placement=UP,
        cuts=cuts,
    )


def at(found: Part, *place: int | F) -> Part:
    """The part with its origin elsewhere."""
    wide, deep, tall = (F(value) for value in place)
    return replace(found, placement=replace(found.placement, at=(wide, deep, tall)))


def case(*parts: Part) -> Case:
    return Case(parts=parts, store=Store())


@dataclass(frozen=True, kw_only=True)
class Misdrawn(Case):
    """A case whose drawings have one figure wrong."""

    wrong: tuple[int, int]  # cut, measure
    by: Fraction  # [mm]

    def drawn(self, part: Part) -> tuple[Drawn, ...]:
        found = list(super().drawn(part))
        which, row = self.wrong
        measures = list(found[which].measures)
        measures[row] = replace(measures[row], value=measures[row].value + self.by)
        found[which] = replace(found[which], measures=tuple(measures))
        return tuple(found)


def size_of(found: Part) -> Point:
    return (found.extent.length, found.extent.width, found.extent.thickness)


def stopped_housing() -> Part:
    """E2 of the joint sheet: side 283 wide, bottom 21 thick, 6 deep, stopped 14 from the front."""
    shape = Box(along=Span(F(79), F(100)), across=Span(F(14), None), into=Span(None, F(6)))
    return part("side", (800, 283, 19), cut("housing", "bottom in side", shape))


def notched_bottom() -> Part:
    """E2 again: its mate, notched 12 by 6 at each end (stop 14, 3 set back, 1 to spare)."""
    notch = Box(along=Span(None, F(6)), across=Span(None, F(12)))
    return part(
        "bottom",
        (777, 280, 21),
        cut("notch", "bottom in left side", notch),
        cut("notch", "bottom in right side", notch, FAR_END),
    )


def pin_board(*, width: int, thick: int, deep: int, mate: int, slope: F) -> Part:
    """Sockets for four tails 57/2 wide at the tip; half pins 6, pins as they come."""
    lean = deep * slope
    tip, half = F(57, 2), F(6)
    pin = (width - 2 * half - 4 * tip) / 3
    cuts = []
    for i in range(4):
        a = half + i * (tip + pin)
        b = a + tip
        points = ((a + lean, F(0)), (b - lean, F(0)), (b, F(deep)), (a, F(deep)))
        open_sides = frozenset({0, 2} if deep == thick else {0})
        shape = Profile(axis=0, points=points, open_sides=open_sides, span=Span(None, F(mate)))
        cuts.append(cut(f"socket {i}", "dovetail", shape))
    return part("front", (410, width, thick), *cuts)


def tail_board(*, width: int, thick: int, deep: int, slope: F) -> Part:
    """Its mate: three whole pins and two half pins sawn out of its end."""
    lean = deep * slope
    tip, half = F(57, 2), F(6)
    pin = (width - 2 * half - 4 * tip) / 3
    zero, stop = F(0), F(deep)
    cuts = []
    for i in range(3):
        a = half + tip + i * (tip + pin)
        points = ((zero, a), (zero, a + pin), (stop, a + pin + lean), (stop, a - lean))
        shape = Profile(axis=2, points=points, open_sides=frozenset({0}))
        cuts.append(cut(f"pin {i}", "dovetail", shape))
    points = ((zero, zero), (zero, half), (stop, half + lean), (stop, zero))
    shape = Profile(axis=2, points=points, open_sides=frozenset({0, 3}))
    cuts.append(cut("half pin", "dovetail", shape))
    cuts.append(cut("other half pin", "dovetail", shape, BACK_EDGE))
    return part("drawer side", (250, width, thick), *cuts)


def haunched_stile() -> Part:
    """E8: stile 612 by 55 by 22, groove 8 by 8 at 7, mortises 38 deep for tenons 36 long."""
    mortise = Span(F(7), F(15))
    return part(
        "stile",
        (612, 55, 22),
        cut("groove", "panel", Box(across=Span(None, F(8)), into=mortise)),
        cut(
            "top mortise",
            "top rail",
            Box(along=Span(F(18), F(54)), across=Span(None, F(38)), into=mortise),
            FAR_END,
        ),
        cut(
            "bottom mortise",
            "bottom rail",
            Box(along=Span(F(24), F(70)), across=Span(None, F(38)), into=mortise),
        ),
    )


def haunched_rail() -> Part:
    """E8: its top rail, 327 between the shoulders, haunch 18 wide and as long as the groove."""
    cuts = [cut("groove", "panel", Box(across=Span(None, F(8)), into=Span(F(7), F(15))))]
    for name, corner in (("left", Corner()), ("right", FAR_END)):
        end = Span(None, F(36))
        cuts += [
            cut("front cheek", name, Box(along=end, into=Span(None, F(7))), corner),
            cut("back cheek", name, Box(along=end, into=Span(F(15), None)), corner),
            cut(
                "haunch",
                name,
                Box(along=Span(None, F(28)), across=Span(F(44), None)),
                corner,
            ),
        ]
    return part("top rail", (399, 62, 22), *cuts)


def tapered_socket() -> Part:
    """A sliding dovetail socket 1 in 6, tapered along its way, stopped 15 from the front."""

    def mouth(low: F, high: F) -> tuple[tuple[F, F], ...]:
        return ((low + 1, F(0)), (high - 1, F(0)), (high, F(6)), (low, F(6)))

    return part(
        "side",
        (700, 280, 20),
        cut(
            "socket",
            "shelf",
            Taper(
                axis=1,
                first=mouth(F(100), F(117)),
                last=mouth(F(100) - F(265, 192), F(117)),
                start=F(15),
                stop=F(280),
                open_sides=frozenset({0}),
                open_stop=True,
            ),
        ),
    )


def pinned_side() -> Part:
    """Holes for shelf pins, one of them in the back half, and a rabbet along the back edge."""
    rabbet = Box(across=Span(None, F(9)), into=Span(None, F(11)))
    first = Bore(axis=2, centre=(F(200), F(37)), radius=F(5, 2), span=Span(None, F(10)))
    other = Bore(axis=2, centre=(F(232), F(41)), radius=F(3), span=Span(None, F(12)))
    return part(
        "side",
        (800, 283, 22),
        cut("rabbet", "back", rabbet, BACK_EDGE),
        cut("front hole", "pins", first),
        cut("back hole", "pins", other, BACK_EDGE),
    )
