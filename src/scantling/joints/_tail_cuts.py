"""Sockets and tails as cut, and the patches where they touch."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.exact import Fraction
from scantling.joints._frame import Patch, Range
from scantling.joints._joint import Beside, Fit, Glue, Joined, rectangle
from scantling.joints._short import missing
from scantling.joints._tails import Layout
from scantling.parts import ALONG, INTO, Cut, Point, Profile, Span
from scantling.parts.outline import Flat
from scantling.sizes.linear import ZERO
from scantling.sizes.model import Sizes

NOTHING = Fraction(0)


def sockets(j: Joined, layout: Layout, *, through: bool, sizes: Sizes) -> tuple[Cut, ...]:
    """Cuts in the part with the pins: one socket for each tail, out through its end."""
    seat = j.seat("receives")
    span = Span(None, j.thickness("enters").at(sizes))
    words = {"along size": f"{j.seat('enters').part}.thickness"} if seat.along == ZERO else {}
    if seat.into == ZERO:
        words |= {"point 2 into": j.own("entry"), "point 3 into": j.own("entry")}
    return tuple(
        seat.cut(
            sizes,
            name=f"socket for tail {i + 1}",
            owner=j.name,
            shape=Profile(
                axis=ALONG,
                points=_socket(layout, tip),
                open_sides=frozenset({0, 2} if through else {0}),
                span=span,
            ),
            shares=_owners(j),
            sized=words,
        )
        for i, tip in enumerate(layout.tips)
    )


def _socket(layout: Layout, tip: Range) -> tuple[Flat, ...]:
    (low, high), lean, deep = tip, layout.lean, layout.depth
    return ((low + lean, NOTHING), (high - lean, NOTHING), (high, deep), (low, deep))


def wastes(j: Joined, layout: Layout, *, edges: Range, sizes: Sizes) -> tuple[Cut, ...]:
    """Cuts in the part with the tails: room for each pin, half pins included.

    Args:
        j: The joint.
        layout: Its tails.
        edges: From edge to edge of the part; half pins run out through an edge they reach. [mm]
        sizes: Solved sizes.
    """
    seat = j.seat("enters")
    words = {f"point {i} along": j.own("entry") for i in (2, 3)} if seat.along == ZERO else {}
    found = []
    for name, points, reached in _waste_outlines(layout, end=missing(j, sizes=sizes)):
        runs_out = {3} if reached == edges[0] else {1} if reached == edges[1] else set()
        shape = Profile(axis=INTO, points=points, open_sides=frozenset({0} | runs_out))
        found.append(
            seat.cut(
                sizes,
                name=f"room for {name}",
                owner=j.name,
                shape=shape,
                shares=_owners(j),
                sized=words,
            )
        )
    return tuple(found)


def _waste_outlines(
    layout: Layout,
    *,
    end: Fraction,
) -> Iterator[tuple[str, tuple[Flat, ...], Fraction | None]]:
    """Name, outline (along, across) and the edge that a half pin lies at.

    Args:
        layout: The tails.
        end: Where the wood ends, along. [mm]
    """
    deep, lean = layout.depth, layout.lean
    less = lean * end / deep
    first, last = layout.tips[0][0], layout.tips[-1][1]
    start, stop = layout.start, layout.stop
    ring: tuple[Flat, ...] = (
        (end, start),
        (end, first + less),
        (deep, first + lean),
        (deep, start),
    )
    yield "first half pin", ring, start
    between = zip(layout.tips, layout.tips[1:], strict=False)
    for i, ((_, low), (high, _)) in enumerate(between):
        ring = ((end, low - less), (end, high + less), (deep, high + lean), (deep, low - lean))
        yield f"pin {i + 1}", ring, None
    ring = ((end, last - less), (end, stop), (deep, stop), (deep, last - lean))
    yield "last half pin", ring, stop


def _owners(j: Joined) -> frozenset[str]:
    return frozenset(b.owner for b in j.beside if b.owner)


def touching_patches(j: Joined, layout: Layout, *, through: bool, sizes: Sizes) -> Iterator[Patch]:
    """Where tails and pins touch, in the coordinates of the receiving seat.

    A groove hidden in a tail takes its strip out of the floor of the socket and of the tip.
    """
    thick = j.thickness("enters").at(sizes)
    hidden = [b for b in j.beside if b.what == "hide"]
    for tip, neck in zip(layout.tips, layout.necks, strict=True):
        yield from _flanks(tip, neck, thick=thick, deep=layout.depth)
        for piece in _beside_strips(neck, hidden, sizes):
            points = _floor(piece, tip, neck, deep=layout.depth, at=thick)
            yield Patch(zone="floor", glue=Glue.END_GRAIN, points=points)
        if not through:
            yield from _tip(tip, hidden, thick=thick, deep=layout.depth, sizes=sizes)
    for root in layout.roots:
        points = rectangle(axis=INTO, at=NOTHING, first=(NOTHING, thick), second=root)
        yield Patch(zone="root", glue=Glue.END_GRAIN, points=points)


def _flanks(tip: Range, neck: Range, *, thick: Fraction, deep: Fraction) -> Iterator[Patch]:
    for outer, inner in zip(tip, neck, strict=True):
        points: tuple[Point, ...] = (
            (NOTHING, inner, NOTHING),
            (thick, inner, NOTHING),
            (thick, outer, deep),
            (NOTHING, outer, deep),
        )
        yield Patch(zone="flank", glue=Glue.CROSSING, points=points, fit=Fit.PRESS)


def _beside_strips(whole: Range, hidden: list[Beside], sizes: Sizes) -> list[Range]:
    """What grooves leave of a stretch of width. [mm]"""
    left = [whole]
    for each in hidden:
        low, high = each.start.at(sizes), (each.start + each.size).at(sizes)
        cut = [((a, min(b, low)), (max(a, high), b)) for a, b in left]
        left = [piece for pieces in cut for piece in pieces if piece[0] < piece[1]]
    return left


def _floor(
    piece: Range, tip: Range, neck: Range, *, deep: Fraction, at: Fraction
) -> tuple[Point, ...]:
    """A piece of the socket's floor, which widens where it reaches a flank."""
    low = tip[0] if piece[0] == neck[0] else piece[0]
    high = tip[1] if piece[1] == neck[1] else piece[1]
    return (
        (at, piece[0], NOTHING),
        (at, piece[1], NOTHING),
        (at, high, deep),
        (at, low, deep),
    )


def _tip(
    tip: Range, hidden: list[Beside], *, thick: Fraction, deep: Fraction, sizes: Sizes
) -> Iterator[Patch]:
    """End grain of the tail against the lap; a groove in the tail leaves wood outside it."""
    in_tail = [b for b in hidden if b.role == "enters"]
    pieces = [(piece, thick) for piece in _beside_strips(tip, in_tail, sizes)]
    for each in in_tail:
        low = max(tip[0], each.start.at(sizes))
        high = min(tip[1], (each.start + each.size).at(sizes))
        if low < high:
            pieces.append(((low, high), thick - each.depth.at(sizes)))
    for across, along in pieces:
        points = rectangle(axis=INTO, at=deep, first=(NOTHING, along), second=across)
        yield Patch(zone="tip", glue=Glue.END_GRAIN, points=points)
