"""Parts that a glue-up would catch, by their solids."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scantling.exact import Fraction
from scantling.parts import Part
from scantling.parts.frame import Point, Way
from scantling.parts.solid import as_cut, placed
from scantling.solids.kernel import Placed
from scantling.solids.pairs import overlaps
from scantling.solids.store import Key, Store


def captured(
    parts: Sequence[Part], *, held: Mapping[str, tuple[str, ...]], store: Store
) -> dict[str, tuple[str, ...]]:
    """Parts that cannot leave those that hold them straight in any of six ways.

    A part is moved on by steps of its own size along the way, so nothing as thick as a shaving
    is stepped over; a way out that turns or bends is not tried.

    Args:
        parts: Made parts.
        held: By part, the members of one glue-up that hold it dry.
        store: Solids already worked out.

    Returns:
        By captured part, what holds it.
    """
    by_name = {part.name: part for part in parts}
    found = {}
    for name, members in held.items():
        part, row = by_name[name], [by_name[m] for m in members]
        key = Key(("captured", *((p.outline, p.horns, p.placement) for p in (part, *row))))
        if store.kept(key, lambda a=part, b=row: _is_captured(a, b, store)):  # type: ignore[misc] # mypy can't infer defaults of a lambda
            found[name] = members
    return found


def _is_captured(part: Part, members: Sequence[Part], store: Store) -> bool:
    stood = placed(part, as_cut(part, store=store))
    round_it = [(placed(each, as_cut(each, store=store)), _box(each)) for each in members]
    return not any(_leaves(stood, _box(part), round_it, way) for way in Way)


Box = tuple[Point, Point]


def _leaves(part: Placed, box: Box, round_it: Sequence[tuple[Placed, Box]], way: Way) -> bool:
    found = Store()  # where a part passes by is asked once and never again
    for shift in _shifts(box, round_it, way):
        by = tuple(way.sign * shift if axis == way.axis else Fraction(0) for axis in range(3))
        moved = part.moved((by[0], by[1], by[2]))
        if any(overlaps((moved, other), store=found) for other, _ in round_it):
            return False
    return True


def _shifts(box: Box, round_it: Sequence[tuple[Placed, Box]], way: Way) -> Iterator[Fraction]:
    """How far to move, step by step, until everything is behind. [mm]"""
    low, high = box[0][way.axis], box[1][way.axis]
    step = (high - low) / 2
    if way.sign > 0:
        clear = max(other[1][way.axis] for _, other in round_it) - low
    else:
        clear = high - min(other[0][way.axis] for _, other in round_it)
    shift = step
    while shift < clear:
        yield shift
        shift += step


def _box(part: Part) -> Box:
    extent = part.extent
    far = part.placement.to_piece((extent.length, extent.width, extent.thickness))
    near = part.placement.to_piece((Fraction(0), Fraction(0), Fraction(0)))
    low, high = zip(*((min(a, b), max(a, b)) for a, b in zip(near, far, strict=True)), strict=True)
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])
