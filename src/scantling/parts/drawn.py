"""Drawn dimensions: what a maker reads off the drawing of a part to lay out one cut.

Each shape gives just the measures that fix it, each from a named surface. A proof rebuilds the
part from these alone, so a wrong one cannot hide.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.parts.cut import Cut
from scantling.parts.frame import Surface
from scantling.parts.shape import Bore, Box, Profile, Shape, Span, Taper, others

AXIS_WORDS = ("along", "across", "into")


@dataclass(frozen=True, kw_only=True)
class Measure:
    """One figure of a drawing. [mm]"""

    word: str  # "across start", "into size", "point 2 along"
    axis: int
    value: Fraction
    from_surface: Surface | None = None  # None: a size, not a distance from a surface
    dimension: str | None = None  # name of the solved size, if it is one


@dataclass(frozen=True, kw_only=True)
class Drawn:
    """One cut as drawn."""

    cut: str
    owner: str
    form: str  # "box", "profile", "taper", "bore"
    sweep: int | None  # axis of a profile, taper or bore
    corner: tuple[Surface, Surface, Surface]  # surfaces the figures start from
    open_start: tuple[bool, bool, bool]
    open_stop: tuple[bool, bool, bool]
    open_sides: frozenset[int]
    measures: tuple[Measure, ...]


def drawn(cut: Cut) -> Drawn:
    """The drawn dimensions of a cut, and nothing else of it."""
    form, sweep, found, spans = _read(cut.shape)
    sizes = dict(cut.sized)
    corner = cut.corner
    return Drawn(
        cut=cut.name,
        owner=cut.owner,
        form=form,
        sweep=sweep,
        corner=(corner.end, corner.edge, corner.face),
        open_start=_flags(tuple(s.start is None for s in spans)),
        open_stop=_flags(tuple(s.stop is None for s in spans)),
        open_sides=getattr(cut.shape, "open_sides", frozenset()),
        measures=tuple(
            Measure(
                word=word,
                axis=axis,
                value=value,
                from_surface=corner.surface(axis) if placed else None,
                dimension=sizes.get(word),
            )
            for word, axis, value, placed in found
        ),
    )


_Found = list[tuple[str, int, Fraction, bool]]


def _read(shape: Shape) -> tuple[str, int | None, _Found, tuple[Span, Span, Span]]:
    match shape:
        case Box():
            return "box", None, _of_box(shape), shape.spans
        case Profile(axis=axis, span=span):
            rows = _of_points(axis, shape.points, "point") + _of_span(axis, span)
            return "profile", axis, rows, _only(axis, span)
        case Bore(axis=axis, span=span):
            return "bore", axis, _of_bore(shape), _only(axis, span)
        case Taper(axis=axis):
            ends = Span(
                None if shape.open_start else shape.start, None if shape.open_stop else shape.stop
            )
            return "taper", axis, _of_taper(shape), _only(axis, ends)


def _of_box(box: Box) -> _Found:
    return [row for axis, span in enumerate(box.spans) for row in _of_span(axis, span)]


def _of_span(axis: int, span: Span) -> _Found:
    word = AXIS_WORDS[axis]
    rows: _Found = []
    if span.start is not None and span.start != 0:
        rows.append((f"{word} start", axis, span.start, True))
    if span.stop is not None:
        rows.append((f"{word} size", axis, span.stop - (span.start or 0), False))
    return rows


def _of_points(axis: int, points: tuple[tuple[Fraction, Fraction], ...], word: str) -> _Found:
    u, v = others(axis)
    rows: _Found = []
    for i, (p, q) in enumerate(points):
        rows.append((f"{word} {i} {AXIS_WORDS[u]}", u, p, True))
        rows.append((f"{word} {i} {AXIS_WORDS[v]}", v, q, True))
    return rows


def _of_bore(bore: Bore) -> _Found:
    u, v = others(bore.axis)
    return [
        (f"centre {AXIS_WORDS[u]}", u, bore.centre[0], True),
        (f"centre {AXIS_WORDS[v]}", v, bore.centre[1], True),
        ("diameter", u, 2 * bore.radius, False),
        *_of_span(bore.axis, bore.span),
    ]


def _of_taper(taper: Taper) -> _Found:
    word = AXIS_WORDS[taper.axis]
    return [
        *_of_points(taper.axis, taper.first, "first point"),
        *_of_points(taper.axis, taper.last, "last point"),
        (f"{word} start", taper.axis, taper.start, True),
        (f"{word} size", taper.axis, taper.stop - taper.start, False),
    ]


def _only(axis: int, span: Span) -> tuple[Span, Span, Span]:
    spans = [Span(), Span(), Span()]
    spans[axis] = span
    return (spans[0], spans[1], spans[2])


def _flags(found: tuple[bool, ...]) -> tuple[bool, bool, bool]:
    return (found[0], found[1], found[2])
