"""Lines of the three views of a part: visible, hidden, broken off, and the centres of holes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.papers._drawing.broken import Run
from scantling.papers._drawing.line_types import Kind, Spot, Stroke
from scantling.papers._drawing.projection import Box3, Eye, Plan, Vec, holes
from scantling.solids.views import Line, LineKind

SMALL = 1.2  # [mm] on paper; a hole smaller than this is drawn as a cross (ISO 15786, from memory)
CROSS = 1.5  # [mm] that centre lines run past a hole; common practice
ZIGZAG = 1.4  # [mm] half the height of the zigzag of a break line
PAST = 2.0  # [mm] that a break line runs past the outline
NEAR = 1e-3  # [mm]

_KINDS = {
    LineKind.OUTLINE: Kind.VISIBLE,
    LineKind.EDGE: Kind.VISIBLE,
    LineKind.HIDDEN: Kind.HIDDEN,
}
_SEEN_ALONG = {Eye.END: 0, Eye.EDGE: 1, Eye.FACE: 2}  # axis that points at the eye
_UPWARDS = {Eye.END: 2, Eye.EDGE: 0, Eye.FACE: 0}


def view_strokes(found: Sequence[Line], eye: Eye, *, plan: Plan) -> Iterator[Stroke]:
    """One view on paper. Holes too small to be drawn are left to their centre lines."""
    small = [box for _, box in holes(plan.part) if _is_small(box, plan)]
    for line in found:
        one, other = (plan.back(eye, spot) for spot in line.points)
        if any(_lies_in(one, other, box, eye) for box in small):
            continue
        for first, last in _kept(one, other, plan.run, is_long=eye is not Eye.END):
            points = plan.spot(eye, first), plan.spot(eye, last)
            yield Stroke(kind=_KINDS[line.kind], points=points)
    if eye is not Eye.END:
        yield from _break_lines(eye, plan)


def _kept(one: Vec, other: Vec, run: Run, *, is_long: bool) -> Iterator[tuple[Vec, Vec]]:
    """What is drawn of a line, with the stretches left out taken from it."""
    low, high = sorted((one, other))
    if not is_long or high[0] - low[0] < NEAR:
        yield low, high
        return
    for first, last in run.kept(low=low[0], high=high[0]):
        yield _between(low, high, first), _between(low, high, last)


def _between(low: Vec, high: Vec, along: float) -> Vec:
    share = (along - low[0]) / (high[0] - low[0])
    return along, low[1] + share * (high[1] - low[1]), low[2] + share * (high[2] - low[2])


def _break_lines(eye: Eye, plan: Plan) -> Iterator[Stroke]:
    _, wide, thick = plan.size
    left, right = (0.0, wide) if eye is Eye.FACE else (plan.edge_at, plan.edge_at + thick)
    middle = (left + right) / 2
    for at in (each for both in plan.run.breaks for each in both):
        points = (
            (left - PAST, at),
            (middle - 0.8, at),
            (middle - 0.3, at + ZIGZAG),
            (middle + 0.3, at - ZIGZAG),
            (middle + 0.8, at),
            (right + PAST, at),
        )
        yield Stroke(kind=Kind.BREAK, points=points)


def _is_small(box: Box3, plan: Plan) -> bool:
    sizes = sorted(high - low for low, high in zip(*box, strict=True))
    # two of the three are its diameter, and a hole shallower than it is wide is drawn anyhow
    return sizes[1] / plan.run.scale < SMALL


def _lies_in(one: Vec, other: Vec, box: Box3, eye: Eye) -> bool:
    axes = [axis for axis in range(3) if axis != _SEEN_ALONG[eye]]
    return all(
        box[0][axis] - NEAR <= point[axis] <= box[1][axis] + NEAR
        for point in (one, other)
        for axis in axes
    )


def centre_lines(plan: Plan) -> Iterator[Stroke]:
    """A cross through every round hole seen from its end, its axis where it is seen from aside."""
    found: dict[Stroke, None] = {}
    for axis, (low, high) in holes(plan.part):
        for eye, seen_along in _SEEN_ALONG.items():
            (a, b), (c, d) = sorted((plan.spot(eye, low), plan.spot(eye, high)))
            bottom, top = min(b, d), max(b, d)
            middle = ((a + c) / 2, (bottom + top) / 2)
            if axis == seen_along:
                found |= dict.fromkeys(_cross(middle, (c - a) / 2 + CROSS))
            elif axis == _UPWARDS[eye]:
                found[_stroke((middle[0], bottom - CROSS), (middle[0], top + CROSS))] = None
            else:
                found[_stroke((a - CROSS, middle[1]), (c + CROSS, middle[1]))] = None
    yield from found


def _cross(middle: Spot, half: float) -> Iterator[Stroke]:
    x, y = middle
    yield _stroke((x - half, y), (x + half, y))
    yield _stroke((x, y - half), (x, y + half))


def _stroke(*points: Spot) -> Stroke:
    return Stroke(kind=Kind.CENTRE, points=tuple((round(x, 3), round(y, 3)) for x, y in points))
