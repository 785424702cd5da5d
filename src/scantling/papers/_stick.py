"""The story stick for height: every level of the case and what it is, from the floor."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.parts import Part
from scantling.setting_out import SettingOut

STANDS = Fraction(1, 2)  # [-] of the height; what is taller stands, and its top alone is a level


@dataclass(frozen=True, kw_only=True)
class Level:
    """A height and what lies there."""

    height: Fraction  # above the floor [mm]
    what: tuple[str, ...]


def levels(setting_out: SettingOut) -> tuple[Level, ...]:
    """Upper and lower sides of all that lies, tops of what stands; doors and drawers left out."""
    found: dict[Fraction, list[str]] = {}
    still = [part for part in setting_out.made if not part.moves_with]
    if not still:
        return ()
    floor = min(_span(part)[0] for part in still)
    tall = max(_span(part)[1] for part in still) - floor
    for part in still:
        for height, what in _edges(part, floor=floor, tall=tall):
            found.setdefault(height, []).append(what)
    return tuple(
        Level(height=height, what=tuple(dict.fromkeys(what)))
        for height, what in sorted(found.items())
        if height > 0
    )


def _edges(part: Part, *, floor: Fraction, tall: Fraction) -> Iterator[tuple[Fraction, str]]:
    low, high = _span(part)
    if high - low <= tall * STANDS:
        yield low - floor, f"{part.name}, under"
    yield high - floor, f"{part.name}, top"


def _span(part: Part) -> tuple[Fraction, Fraction]:
    """Lowest and highest of a part in the piece. [mm]"""
    extent, zero = part.extent, Fraction(0)
    far = (extent.length, extent.width, extent.thickness)
    heights = [part.placement.to_piece(point)[2] for point in ((zero, zero, zero), far)]
    return min(heights), max(heights)
