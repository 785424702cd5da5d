"""Rips a section to strips from edge a on, one after the other, keeping knots where they may be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from scantling.stock._lumber import Blank, Lumber, Saws, Spot


@dataclass(frozen=True, kw_only=True)
class Strip:
    """A strip as it is placed in a section. [1/1000 mm]"""

    blank: Blank
    start: int
    near: int
    width: int
    net: int  # what it brings to its panel; 0 for a blank of one piece


@dataclass(frozen=True, kw_only=True)
class _Bed:
    """The section that is ripped. [1/1000 mm]"""

    lumber: Lumber
    saws: Saws
    start: int
    stop: int
    room: int  # width, jointed straight
    widest: Mapping[str, int]  # strip that each part can be got out of
    lost: int  # how far jointing may have moved the edge that knots are measured from


def ripped(
    lumber: Lumber,
    ends: tuple[int, int],
    waiting: Sequence[Blank],
    lacks: Mapping[str, int],
    *,
    saws: Saws,
    widest: Mapping[str, int],
) -> tuple[Strip, ...]:
    """Strips that a section gives; none if the first that waits finds no room.

    Args:
        lumber: The board.
        ends: Where the section starts and stops. [1/1000 mm]
        waiting: Blanks, the most wanted first.
        lacks: What each panel among them still lacks of its width. [1/1000 mm]
        saws: Kerfs and allowances.
        widest: Strip of this board that each part can be got out of. [1/1000 mm]
    """
    bed = _Bed(
        lumber=lumber,
        saws=saws,
        start=ends[0],
        stop=ends[1],
        room=lumber.room(start=ends[0], stop=ends[1]),
        widest=widest,
        lost=lumber.lost(ends[1] - ends[0]),
    )
    lacking, left = dict(lacks), list(waiting)
    strips: list[Strip] = []
    at = 0
    while left and at < bed.room:
        found = next(_next_strips(bed, left, lacking, at=at), None)
        if found is None or (not strips and found.blank is not waiting[0]):
            break
        strips.append(found)
        at = found.near + found.width + saws.along
        if found.net:
            lacking[found.blank.name] -= found.net
        if not found.net or lacking[found.blank.name] <= 0:
            left.remove(found.blank)
    return tuple(strips)


def _next_strips(
    bed: _Bed, waiting: Sequence[Blank], lacks: Mapping[str, int], *, at: int
) -> Iterator[Strip]:
    """Strips that fit from here on, in the order in which they are waited for."""
    seen: set[tuple[object, ...]] = set()
    for blank in waiting:
        lack = lacks.get(blank.name)
        kind = (blank.length, blank.width, blank.wanted.clear, lack)
        if kind in seen:
            continue
        seen.add(kind)
        if blank.length > bed.stop - bed.start:
            continue
        for start in dict.fromkeys((bed.start, bed.stop - blank.length)):
            found = _strip(bed, blank, lack, start=start, at=at)
            if found is not None:
                yield found


def _strip(bed: _Bed, blank: Blank, lack: int | None, *, start: int, at: int) -> Strip | None:
    """The first strip from there on that gives the blank, or as much of a panel as goes."""
    spots = bed.lumber.over(start=start, stop=start + blank.length)
    for near in (at, *sorted({spot.far for spot in spots if spot.far > at})):
        for net, width in _widths(bed, blank, lack, spots, near=near):
            fits = near + width <= bed.room
            if fits and not _harmed(bed, blank, spots, start=start, near=near, width=width):
                return Strip(blank=blank, start=start, near=near, width=width, net=net)
    return None


def _widths(
    bed: _Bed, blank: Blank, lack: int | None, spots: Sequence[Spot], *, near: int
) -> Iterator[tuple[int, int]]:
    """Net and sawn widths worth trying: to the far edge of the section, or to the next knot."""
    if lack is None:
        yield 0, blank.width
        return
    walls = [spot.near - bed.lost for spot in spots if spot.far > near]
    reach = min(bed.room, near + bed.widest[blank.name])
    for wall in (reach, min([reach, *walls])):
        net = _net(bed.saws, lack, wall - near - bed.saws.joint)
        if net:
            yield net, net + bed.saws.joint


def _net(saws: Saws, lack: int, room: int) -> int:
    """As much as goes, so that what is left over is no sliver. 0: nothing goes."""
    narrowest = min(saws.narrowest, lack)
    net = min(room, lack, saws.widest)
    if 0 < lack - net < saws.narrowest:
        net = min(net, lack - saws.narrowest)
    return net if net >= narrowest else 0


def _harmed(
    bed: _Bed, blank: Blank, spots: Sequence[Spot], *, start: int, near: int, width: int
) -> bool:
    """Whether a knot comes where the blank wants none."""
    ends = start + bed.saws.from_end, start + blank.length - bed.saws.from_end
    edges = near + bed.saws.from_edge, near + width - bed.saws.from_edge
    for spot in spots:
        low = spot.near - bed.lost
        if spot.far <= near or near + width <= low:
            continue
        inside = (
            ends[0] <= spot.start
            and spot.stop <= ends[1]
            and edges[0] <= low
            and spot.far <= edges[1]
        )
        if not spot.knot or blank.wanted.clear or not inside:
            return True
    return False
