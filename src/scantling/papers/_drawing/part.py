"""A part in three views with hidden lines, all that is set out on it, and the bench's marks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.papers._drawing.broken import Run, broken
from scantling.papers._drawing.figures import distances
from scantling.papers._drawing.line_types import SCALES, Angle, Drawing, Spot, Stroke, Text
from scantling.papers._drawing.marks import bench_marks
from scantling.papers._drawing.placing import APART, Chain, Mark, Side, chain, drawn_chain
from scantling.papers._drawing.projection import Eye, Plan, seen
from scantling.papers._drawing.strokes import centre_lines, view_strokes
from scantling.papers._paper import Rule, rule_of
from scantling.parts import ACROSS, ALONG, INTO, Part
from scantling.setting_out import SettingOut
from scantling.solids.views import Line

ROOM: Spot = (100.0, 190.0)  # [mm] on paper, wide and tall
BETWEEN = 12.0  # [mm] between two views, at the least
SLENDER = 5  # times as long as wide, from which on a part is broken, so as to be drawn larger
ROUND = 1.0  # [mm] left free round the whole drawing

_Views = Mapping[Eye, tuple[Line, ...]]


@dataclass(frozen=True, kw_only=True)
class _Figure:
    """A distance from its reference surface, as it is read."""

    axis: int
    value: float  # [mm]
    says: str
    is_whole: bool = False


def part_drawing(
    part: Part,
    *,
    setting_out: SettingOut,
    angle: Angle = Angle.THIRD,
    room: Spot = ROOM,
    rule: Rule | None = None,
) -> Drawing:
    """Three views of a finished part with all that is set out on it.

    Every figure counts from the reference end, the face edge or the face side. A figure in
    brackets is taken from the mate. A long part is broken where nothing happens on it.

    Args:
        part: Any part made in the shop.
        setting_out: What it belongs to.
        angle: First or third angle.
        room: The most it may take up, wide and tall; at the smallest scale it may be more. [mm]
        rule: How the maker reads lengths; left out, as the piece is written.

    Returns:
        Strokes and texts on paper, from the lower left corner. [mm]
    """
    rule = rule if rule is not None else rule_of(setting_out)
    figures = tuple(_figures(part, setting_out, rule))
    views = {eye: seen(part, eye, store=setting_out.store) for eye in Eye}
    planned = (_planned(part, run, figures, angle=angle) for run in _runs(part, views))
    plan, chains = _first_that_fits(planned, room)
    return _framed(*_drawn(plan, views, chains), plan, rule)


_Planned = tuple[Plan, Mapping[int, Chain]]


def _first_that_fits(planned: Iterable[_Planned], room: Spot) -> _Planned:
    """The largest that keeps to its room, or else the smallest."""
    left = iter(planned)
    found = next(left)
    while not _fits(*found, room):
        smaller = next(left, None)
        if smaller is None:
            break
        found = smaller
    return found


def _fits(plan: Plan, chains: Mapping[int, Chain], room: Spot) -> bool:
    low, high = _reach(plan, chains)
    return high[0] - low[0] <= room[0] and high[1] - low[1] <= room[1]


def _runs(part: Part, views: _Views) -> Iterator[Run]:
    """Ways to bring the length onto paper, the largest first."""
    places = {0.0, float(part.extent.length)}
    for eye in (Eye.FACE, Eye.EDGE):
        places |= {round(spot[1], 3) for line in views[eye] for spot in line.points}
    is_slender = part.extent.length > SLENDER * part.extent.width
    for scale in SCALES:
        yield Run(scale=scale)
        if is_slender:
            yield broken(places, scale=scale)


def _planned(part: Part, run: Run, figures: Sequence[_Figure], *, angle: Angle) -> _Planned:
    plan = Plan(part=part, run=run, angle=angle, gap=BETWEEN, below=BETWEEN)
    chains = {axis: _chain(plan, figures, axis) for axis in (ALONG, ACROSS, INTO)}
    return replace(plan, gap=_gap(plan, chains)), chains


def _chain(plan: Plan, figures: Sequence[_Figure], axis: int) -> Chain:
    """Marks along one axis."""
    marks = [
        Mark(at=plan.place(axis, value=each.value), says=each.says, bold=each.is_whole)
        for each in figures
        if each.axis == axis
    ]
    return chain(marks, start=plan.place(axis, value=0.0))


def _figures(part: Part, setting_out: SettingOut, rule: Rule) -> Iterator[_Figure]:
    """Every distance as it is read, the whole sizes last. Read once, whatever the scale."""
    for each in distances(part, setting_out=setting_out):
        text = rule.sets(each.value).removeprefix("about ")
        says = f"({text})" if each.is_from_mate else text
        yield _Figure(axis=each.axis, value=float(each.value), says=says)
    for axis in (ALONG, ACROSS, INTO):
        full = part.extent[axis]
        yield _Figure(axis=axis, value=float(full), says=_plain(full, rule), is_whole=True)


def _plain(value: Fraction, rule: Rule) -> str:
    return rule.reads(value).removeprefix("about ")


def _gap(plan: Plan, chains: Mapping[int, Chain]) -> float:
    """Between the first view and that of the edge, so that their figures do not touch. [mm]"""
    _, wide, thick = plan.size
    across, into = chains[ACROSS].span, chains[INTO].span
    beyond = (across[1] - wide, -into[0]) if plan.edge_is_right else (into[1] - thick, -across[0])
    return max(BETWEEN, sum(max(each, 0.0) for each in beyond) + APART)


def _rows(plan: Plan, chains: Mapping[int, Chain]) -> Iterator[tuple[Chain, Side]]:
    """Chains and where they stand: away from the views of the edge and of the end."""
    long, wide, _ = plan.size
    is_left, is_below = plan.edge_is_right, plan.end_is_above
    beside = Side(upright=True, out=-1 if is_left else 1, edge=0.0 if is_left else wide)
    over = Side(upright=False, out=-1 if is_below else 1, edge=0.0 if is_below else long)
    yield chains[ALONG], beside
    yield chains[ACROSS], over
    yield chains[INTO].moved(plan.edge_at), over


def _reach(plan: Plan, chains: Mapping[int, Chain]) -> tuple[Spot, Spot]:
    """Lowest and highest corner of the whole drawing. [mm]"""
    strokes: list[Stroke] = []
    texts: list[Text] = []
    for each, side in _rows(plan, chains):
        more, figures = drawn_chain(each, side)
        strokes += more
        texts += figures
    low, high = _ends(strokes, texts)
    long, wide, thick = plan.size
    views = [(0.0, plan.end_at), (plan.edge_at, 0.0)]
    tops = [(wide, plan.end_at + thick), (plan.edge_at + thick, long)]
    return (
        (min(low[0], *(v[0] for v in views)), min(low[1], *(v[1] for v in views))),
        (max(high[0], *(t[0] for t in tops)), max(high[1], *(t[1] for t in tops))),
    )


def _ends(strokes: Sequence[Stroke], texts: Sequence[Text]) -> tuple[Spot, Spot]:
    spots = [spot for stroke in strokes for spot in stroke.points]
    spots += [spot for text in texts for spot in (text.box[:2], text.box[2:])]
    xs, ys = zip(*spots, strict=True)
    return (min(xs) - ROUND, min(ys) - ROUND), (max(xs) + ROUND, max(ys) + ROUND)


def _drawn(
    plan: Plan, views: _Views, chains: Mapping[int, Chain]
) -> tuple[list[Stroke], list[Text]]:
    strokes = [s for eye in Eye for s in view_strokes(views[eye], eye, plan=plan)]
    strokes += centre_lines(plan)
    texts: list[Text] = []
    for each, side in _rows(plan, chains):
        more, figures = drawn_chain(each, side)
        strokes += more
        texts += figures
    strokes += bench_marks(plan, strokes)
    return strokes, texts


def _framed(strokes: Sequence[Stroke], texts: Sequence[Text], plan: Plan, rule: Rule) -> Drawing:
    """Everything moved so that it starts at the lower left corner."""
    (left, low), (right, high) = _ends(strokes, texts)

    def moved(spot: Spot) -> Spot:
        return round(spot[0] - left, 3), round(spot[1] - low, 3)

    return Drawing(
        strokes=tuple(replace(s, points=tuple(map(moved, s.points))) for s in strokes),
        texts=tuple(replace(t, at=moved(t.at)) for t in texts),
        size=(right - left, high - low),
        scale=plan.run.scale,
        alt=_alt(plan, rule),
    )


def _alt(plan: Plan, rule: Rule) -> str:
    extent = plan.part.extent
    long, wide, thick = (_plain(extent[axis], rule) for axis in (ALONG, ACROSS, INTO))
    return (
        f"{plan.part.name}: {long} long, {wide} wide, {thick} thick, "
        f"seen at its face side, face edge and reference end"
    )
