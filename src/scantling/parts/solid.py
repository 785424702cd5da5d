"""Solids of parts: finished, or as cut with horns still on."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction
from scantling.parts.cut import EVEN, OVER, Cut, Made
from scantling.parts.frame import ALONG, Extent, Placement, Point
from scantling.parts.part import Part
from scantling.parts.shape import INSIDE_CIRCLE, Bore, Profile, Shape, around
from scantling.solids.kernel import Bulk, Placed, Solid, common, cut
from scantling.solids.pattern import Convex, Pattern, Turn
from scantling.solids.store import Store

NO_WOOD = Bulk(volume=0.0, moments=(0.0, 0.0, 0.0))
CURVED = 12  # corners; a profile of more stands for a curve, whose flats no hand feels
NO_HORNS = (Fraction(0), Fraction(0))


def finished(part: Part, *, store: Store) -> Solid:
    """The part with all its cuts made and no horns, in its own frame."""
    key = ("finished", part.outline)
    return _kept(key, part, part.cuts, horns=NO_HORNS, store=store)


def as_cut(part: Part, *, store: Store) -> Solid:
    """The part as it goes to glue-up: horns on, cuts made after glue not yet made."""
    cuts = tuple(c for c in part.cuts if c.made is Made.BEFORE_GLUE)
    outlines = tuple(c.outline for c in cuts)
    key = ("as cut", part.extent, outlines, part.horns, part.is_round)
    return _kept(key, part, cuts, horns=part.horns, store=store)


def placed(part: Part, solid: Solid) -> Placed:
    """A solid of the part where the part stands in the piece."""
    return Placed(name=part.name, solid=solid, turn=turn(part.placement))


def turn(placement: Placement) -> Turn:
    """The placement in terms of the kernel."""
    along, across, into = placement.ways
    return Turn(
        axes=(along.axis, across.axis, into.axis),
        signs=(along.sign, across.sign, into.sign),
        at=placement.at,
    )


def taken(part: Part, *, store: Store) -> tuple[Bulk, ...]:
    """What each cut would take of the whole block, one after the other."""
    return store.kept(("taken", part.outline), lambda: tuple(_taken(part)))


def _taken(part: Part) -> Iterator[Bulk]:
    whole = block(part)
    for each in part.cuts:
        cutter = _cutter(each, extent=part.extent, over=OVER)
        yield NO_WOOD if cutter is None else common(cutter, whole)


def claim(cut: Cut, *, extent: Extent) -> Convex | None:
    """The wood a cut takes, ending where it leaves the part; None if it has no shape at all.

    A cut has none when it stops before it starts or its outline is not convex.
    """
    return _cutter(cut, extent=extent, over=EVEN)


def block(part: Part, *, horns: tuple[Fraction, Fraction] = NO_HORNS) -> Convex:
    """The blank planed to size. [mm]

    Raises:
        OutOfRangeError: A round blank whose width is not its thickness.
    """
    extent = part.extent
    ends = (-horns[0], extent.length + horns[1])
    if not part.is_round:
        section: tuple[tuple[Fraction, Fraction], ...] = tuple(
            (y, z) for y in (Fraction(0), extent.width) for z in (Fraction(0), extent.thickness)
        )
        return Convex(corners=_prism(ends, section))
    if extent.width != extent.thickness:
        msg = f"{part.name} is round but {float(extent.width):g} by {float(extent.thickness):g} mm"
        raise OutOfRangeError(msg)
    radius = extent.width / 2
    section = around(INSIDE_CIRCLE, centre=(radius, radius), radius=radius)
    return Convex(corners=_prism(ends, section), round_about=ALONG)


def _prism(
    ends: tuple[Fraction, Fraction], section: Sequence[tuple[Fraction, Fraction]]
) -> tuple[Point, ...]:
    return tuple((x, y, z) for x in ends for y, z in section)


def _kept(
    key: Hashable,
    part: Part,
    cuts: tuple[Cut, ...],
    *,
    horns: tuple[Fraction, Fraction],
    store: Store,
) -> Solid:
    return store.kept(key, lambda: cut(_pattern(part, cuts, horns)))


def _pattern(part: Part, cuts: tuple[Cut, ...], horns: tuple[Fraction, Fraction]) -> Pattern:
    over = (OVER[0] + max(horns), OVER[1], OVER[2])
    found = [_cutter(c, extent=part.extent, over=over) for c in cuts]
    return Pattern(block=block(part, horns=horns), away=tuple(f for f in found if f is not None))


def _cutter(cut: Cut, *, extent: Extent, over: Point) -> Convex | None:
    try:
        corners = cut.corners(extent=extent, over=over)
    except OutOfRangeError:
        return None  # takes nothing here; a proof of its own reports it
    if any(_level(corners, axis) for axis in range(3)):
        return None  # flat: the same proof reports it
    return Convex(corners=corners, round_about=_round_about(cut.shape))


def _round_about(shape: Shape) -> int | None:
    """Axis of a round surface: of a hole, or of a curve that a polygon stands for."""
    if isinstance(shape, Bore) or (isinstance(shape, Profile) and len(shape.points) > CURVED):
        return shape.axis
    return None


def _level(corners: Sequence[Point], axis: int) -> bool:
    # from the far end, as the last corner most often differs from the first
    return all(corner[axis] == corners[0][axis] for corner in reversed(corners))


def near(part: Part, *, low: Point, high: Point, store: Store) -> Solid | None:
    """What of a finished part lies in a box in its own frame; None if it does not reach there.

    Args:
        part: The part.
        low: Lowest corner of the box. [mm]
        high: Highest corner. [mm]
        store: Keeps the solid.
    """
    extent = part.extent
    first = [max(Fraction(0), low[axis]) for axis in range(3)]
    last = [min(extent[axis], high[axis]) for axis in range(3)]
    if any(a >= b for a, b in zip(first, last, strict=True)):
        return None
    corners = _prism(
        (first[0], last[0]), [(y, z) for y in (first[1], last[1]) for z in (first[2], last[2])]
    )
    whole = _pattern(part, part.cuts, NO_HORNS)
    key = ("near", part.outline, corners)
    return store.kept(key, lambda: cut(Pattern(block=Convex(corners=corners), away=whole.away)))
