"""What bench cases of joints share."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.parts.planned import PlannedPart
from scantling.sizes.model import Stated


def stated(part: PlannedPart, *sizes: Fraction | int | None) -> tuple[Stated, ...]:
    """Length, width and thickness of a part as a maker states them; None leaves one out. [mm]"""
    words = ("length", "width", "thickness")
    return tuple(
        Stated(name=f"{part.name}.{word}", value=Fraction(size))
        for word, size in zip(words, sizes, strict=True)
        if size is not None
    )
