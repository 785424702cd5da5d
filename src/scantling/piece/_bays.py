"""Room between the level boards of a case: fixed shelves share it, loose ones lie in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise

from scantling.exact import Fraction
from scantling.piece._form import Sketch
from scantling.piece._words import equally
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Relations, Rule

RAIL_UNDER_TOP = "front sub-top rail"


def floor_of_case(sketch: Sketch) -> Linear:
    """Top face of the bottom, or the floor where there is none. [mm]"""
    return size_of("bottom.top face") if "level bottom" in sketch.landings else ZERO


def ceiling_of_case(sketch: Sketch) -> Linear:
    """Underside of the rails under the top, or the upper end of the sides. [mm]"""
    tall = size_of("case.tall")
    known = any(part.name == RAIL_UNDER_TOP for part in sketch.parts)
    return tall - size_of(f"{RAIL_UNDER_TOP}.thickness") if known else tall


@dataclass(frozen=True, kw_only=True)
class Bay:
    """An opening as loose shelves know it: the word for it, and where it begins."""

    word: str  # "upper" for a row of the front, "above lower shelf" for the room over a board
    start: Linear  # [mm] above the floor


def bays(sketch: Sketch) -> list[Bay]:
    """Openings of the front from the top down, then the room above each board behind it."""
    rows = {name.rpartition(" opening")[0]: o for name, o in sketch.openings.items()}
    found = [Bay(word=word, start=o.below) for word, o in rows.items()]
    boards = {"bottom": floor_of_case(sketch)} if "level bottom" in sketch.landings else {}
    boards |= {name: size_of(f"{name}.top face") for name in _shelves(sketch)}
    behind = {"bottom"} if rows else set()
    for landing in sketch.landings.values():
        behind |= set(landing.parts) if landing.name.startswith("behind ") else set()
    return found + [
        Bay(word=f"above {name}", start=up) for name, up in boards.items() if name not in behind
    ]


def ceilings(sketch: Sketch) -> list[Linear]:
    """Whatever ends an opening above. [mm]"""
    rows = [o.below + o.tall for o in sketch.openings.values()]
    return [*rows, *(_faces(name)[0] for name in _shelves(sketch)), ceiling_of_case(sketch)]


def _shelves(sketch: Sketch) -> list[str]:
    return [part.name for part in sketch.parts if part.family == "fixed shelf"]


def sharing(sketch: Sketch, heights: Sequence[tuple[str, Fraction | None]]) -> Relations:
    """Fixed shelves whose height nobody states make equal openings between their neighbours.

    Args:
        sketch: With all shelves drafted.
        heights: Names of fixed shelves as the file has them, with what orders those that stand
            somewhere already; None for those that nobody placed. [any unit]

    Returns:
        Habits; none where the file has no order, up or down, in which they could stand.
    """
    known = [height for _, height in heights if height is not None]
    if known == sorted(known):
        upwards = list(heights)
    elif known == sorted(known, reverse=True):
        upwards = list(reversed(heights))
    else:
        return Relations()
    edges = [(ZERO, floor_of_case(sketch), True)]  # underside, top face, whether it stands
    edges += [(*_faces(name), height is not None) for name, height in upwards]
    edges.append((ceiling_of_case(sketch), ZERO, True))
    openings = [(low, high) for low, high in pairwise(edges)]
    rules: list[Rule] = []
    for _, run in groupby(enumerate(openings), key=lambda o: _first_of_run(openings, o[0])):
        clear = [high[0] - low[1] for _, (low, high) in run]
        rules += equally(clear, "openings between shelves that nobody places are equal")
    return Relations(rules=tuple(rules))


def _first_of_run(openings: Sequence[tuple[tuple[Linear, Linear, bool], object]], at: int) -> int:
    """Where the row of openings begins that ends at boards which stand somewhere already."""
    while not openings[at][0][2]:
        at -= 1
    return at


def _faces(shelf: str) -> tuple[Linear, Linear]:
    """Underside and top face. [mm]"""
    up = size_of(f"{shelf}.top face")
    return up - size_of(f"{shelf}.thickness"), up
