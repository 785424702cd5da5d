"""Small patterns to cut in tests."""

from fractions import Fraction

from scantling.parts.shape import ROUND_CIRCLE, around
from scantling.solids._nook import nook
from scantling.solids.kernel import NOISE, Placed, Solid, cut, depth_filled, room_filled
from scantling.solids.pattern import Convex, Pattern, Turn

F = Fraction
Number = int | Fraction


def convex(*spans: tuple[Number, Number]) -> Convex:
    """A box from the spans along its three axes."""
    x, y, z = spans
    return Convex(corners=tuple((F(a), F(b), F(c)) for a in x for b in y for c in z))


def hole(*, centre: tuple[Number, Number], radius: Number, deep: tuple[Number, Number]) -> Convex:
    """A round hole along the third axis."""
    ring = around(ROUND_CIRCLE, centre=(F(centre[0]), F(centre[1])), radius=F(radius))
    return Convex(corners=tuple((x, y, F(z)) for z in deep for x, y in ring), round_about=2)


def board(*away: Convex, size: tuple[Number, Number, Number] = (120, 45, 20)) -> Solid:
    """A board with its corner in the origin, less some convex bodies."""
    length, width, thickness = size
    return cut(Pattern(block=convex((0, length), (0, width), (0, thickness)), away=away))


def stood(name: str, solid: Solid, *at: Number) -> Placed:
    """The solid with its origin there, not turned."""
    x, y, z = (F(value) for value in at)
    return Placed(name=name, solid=solid, turn=Turn(at=(x, y, z)))


def shared(one: Solid, other: Solid, *, turn: Turn) -> tuple[float, float]:
    """Volume that two solids both claim, and how deep it reaches. [mm3, mm]"""
    room = nook(one.wood, other.wood, turn=turn, least=NOISE)
    return (0.0, 0.0) if room is None else (room_filled(room), depth_filled(room))
