"""What is pulled out of a case: drawers, by the parts that slide."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.findings import Place


@dataclass(frozen=True, kw_only=True)
class Remedy:
    """What to write, and where, if a drawer turns out not to run."""

    cure: str
    place: Place | None


@dataclass(frozen=True, kw_only=True)
class Slide:
    """One side of a drawer, and what to do should nothing guide it or lie over it."""

    part: str  # "drawer 1.left side"
    on_left: bool
    behind: str  # what wood stands before it at that end: "mullion 2", "stiles"
    unguided: Remedy
    tips: Remedy


@dataclass(frozen=True, kw_only=True)
class Pulled:
    """A drawer, as far as its way out is concerned."""

    name: str
    over: str  # member of the front it runs on: "mid rail"
    under: str  # member of the front above it: "top rail"
    slides: tuple[Slide, Slide]
    not_carried: Remedy
