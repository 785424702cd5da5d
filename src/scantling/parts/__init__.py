"""Parts: exact sizes, where they stand, and the wood cut from them. No geometry kernel here."""

from scantling.parts.cut import Cut, Made
from scantling.parts.drawn import Drawn, Measure, drawn
from scantling.parts.frame import (
    ACROSS,
    ALONG,
    INTO,
    REFERENCE,
    Corner,
    Extent,
    Placement,
    Point,
    Surface,
    Way,
)
from scantling.parts.part import Blank, Board, GluedUp, Part, Round, Strip
from scantling.parts.shape import Bore, Box, Profile, Shape, Span, Taper

__all__ = [
    "ACROSS",
    "ALONG",
    "INTO",
    "REFERENCE",
    "Blank",
    "Board",
    "Bore",
    "Box",
    "Corner",
    "Cut",
    "Drawn",
    "Extent",
    "GluedUp",
    "Made",
    "Measure",
    "Part",
    "Placement",
    "Point",
    "Profile",
    "Round",
    "Shape",
    "Span",
    "Strip",
    "Surface",
    "Taper",
    "Way",
    "drawn",
]
