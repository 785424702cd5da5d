"""Drawings at full size laid out on sheets: side by side where they fit, in tiles where they don't.

Nothing is ever made smaller. A tile shows a stretch of its drawing and a little of the next, with
a line where the sheets are to meet.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from scantling.papers._drawing.line_types import Spot

BETWEEN = 6.0  # [mm] from one drawing to the next
CAPTION = 15.0  # [mm] below each, for its words
LEAST = 52.0  # [mm] wide that these take up
LAP = 8.0  # [mm] of a drawing that is on both of two sheets


@dataclass(frozen=True, kw_only=True)
class Tile:
    """A stretch of a drawing on a sheet."""

    drawing: int  # its number
    turned: bool  # a quarter to the left
    at: Spot  # of its lower left corner on the sheet, from that of the room [mm]
    start: Spot  # of the stretch, in the drawing as it lies on the sheet [mm]
    size: Spot  # of the stretch [mm]
    place: tuple[int, int, int, int]  # column, row, of how many


def laid_out(sizes: Sequence[Spot], *, room: Spot) -> list[list[Tile]]:
    """Sheets with their tiles.

    Args:
        sizes: Of the drawings, wide and tall, without their captions. [mm]
        room: On a sheet, wide and tall. [mm]
    """
    sheets: list[list[Tile]] = []
    shelf: list[Tile] = []
    shelves: list[list[Tile]] = []
    for tile in _tiles(sizes, room):
        wide = sum(_broad(t) + BETWEEN for t in shelf)
        if shelf and wide + _broad(tile) > room[0]:
            shelves.append(shelf)
            shelf = []
        shelf.append(tile)
    shelves += [shelf] if shelf else []
    left = 0.0
    for each in shelves:
        tall = max(t.size[1] for t in each) + CAPTION
        if left < tall or not sheets:
            sheets.append([])
            left = room[1]
        sheets[-1] += _placed(each, top=left)
        left -= tall
    return sheets


def _broad(tile: Tile) -> float:
    """What it takes up across, its words too. [mm]"""
    return max(tile.size[0], LEAST)


def _placed(shelf: Iterable[Tile], *, top: float) -> Iterator[Tile]:
    x = 0.0
    for tile in shelf:
        yield Tile(
            drawing=tile.drawing,
            turned=tile.turned,
            at=(x, top - tile.size[1]),
            start=tile.start,
            size=tile.size,
            place=tile.place,
        )
        x += _broad(tile) + BETWEEN


def _tiles(sizes: Sequence[Spot], room: Spot) -> Iterator[Tile]:
    wide, tall = room[0], room[1] - CAPTION
    for number, (w, h) in enumerate(sizes):
        turned = (w > wide or h > tall) and _count(h, w, (wide, tall)) < _count(w, h, (wide, tall))
        across, up = (h, w) if turned else (w, h)
        columns, rows = list(_stretches(across, wide)), list(_stretches(up, tall))
        for (j, (y, high)), (i, (x, broad)) in product(enumerate(rows), enumerate(columns)):
            yield Tile(
                drawing=number,
                turned=turned,
                at=(0.0, 0.0),
                start=(x, y),
                size=(broad, high),
                place=(i + 1, j + 1, len(columns), len(rows)),
            )


def _count(w: float, h: float, room: Spot) -> int:
    return len(list(_stretches(w, room[0]))) * len(list(_stretches(h, room[1])))


def _stretches(length: float, room: float) -> Iterator[tuple[float, float]]:
    """Start and length of each stretch that fits; each but the last laps over the next."""
    start = 0.0
    while start + room < length:
        yield start, room
        start += room - LAP
    yield start, length - start
