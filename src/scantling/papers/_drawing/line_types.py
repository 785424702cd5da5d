"""Lines and figures of drawings: what each kind means, how broad it is, how it is broken.

References:
    ISO 128-2:2020 (from memory): line types 01.1 continuous narrow, 01.2 continuous wide,
    02.1 dashed narrow, 04.1 long-dashed dotted narrow; narrow to wide as 1 to 2; a dash is 12
    widths long, a long dash 24, a gap 3, a dot at most half of one.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

Spot = tuple[float, float]

SCALES = (1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100)  # one to so many

GAUGE, KNIFE, PENCIL, SAW = 0.18, 0.25, 0.35, 0.5  # [mm] widths, named as lines on wood are


class Kind(StrEnum):
    """What a line of a drawing is."""

    OUTLINE = "outline"  # round a piece shown standing
    EDGE = "edge"  # of a piece shown standing
    VISIBLE = "visible"
    HIDDEN = "hidden"
    CENTRE = "centre"
    DIMENSION = "dimension"
    BREAK = "break"  # where a length without anything on it is left out
    MARK = "mark"  # face mark, edge mark and grain arrow, as pencilled on the wood
    GRAIN = "grain"  # the wood's own figure on a piece shown standing


@dataclass(frozen=True, kw_only=True)
class LineType:
    """How a kind of line is drawn. [mm]"""

    iso: str  # number and name in ISO 128-2; empty: of our own
    width: float
    dashes: tuple[float, ...] = ()  # dash, gap, ...; none: continuous


def _dashed(width: float, *widths: float) -> tuple[float, ...]:
    return tuple(round(n * width, 3) for n in widths)


LINE_TYPES: Mapping[Kind, LineType] = MappingProxyType(
    {
        Kind.OUTLINE: LineType(iso="01.2 continuous wide", width=SAW),
        Kind.EDGE: LineType(iso="01.1 continuous narrow", width=KNIFE),
        Kind.VISIBLE: LineType(iso="01.2 continuous wide", width=PENCIL),
        Kind.HIDDEN: LineType(iso="02.1 dashed narrow", width=GAUGE, dashes=_dashed(GAUGE, 12, 3)),
        Kind.CENTRE: LineType(
            iso="04.1 long-dashed dotted narrow",
            width=GAUGE,
            dashes=_dashed(GAUGE, 24, 3, 0.5, 3),
        ),
        Kind.DIMENSION: LineType(iso="01.1 continuous narrow", width=GAUGE),
        Kind.BREAK: LineType(iso="01.1 continuous narrow", width=GAUGE),
        Kind.MARK: LineType(iso="", width=PENCIL),
        Kind.GRAIN: LineType(iso="", width=GAUGE),
    }
)


@dataclass(frozen=True, kw_only=True)
class Stroke:
    """An open line through points. [mm]"""

    kind: Kind
    points: tuple[Spot, ...]


FIGURE_SIZE = 3.88  # [mm] of the type, 11 points: figures stand about 2.5 tall
LINE_TALL = 3.4  # [mm] from one line of figures to the next, at the least
_WIDE = 0.56  # [-] of the type's size, the most that a sign of a figure takes up


class Angle(StrEnum):
    """Where the views beside the first stand.

    References:
        ISO 5456-2:1996, 5.1 (first angle) and 5.2 (third angle), from memory.
    """

    FIRST = "first angle"  # what is seen from the left stands at the right
    THIRD = "third angle"  # what is seen from the left stands at the left


class Anchor(StrEnum):
    """Which end of a figure stands at its spot."""

    START = "start"
    END = "end"


@dataclass(frozen=True, kw_only=True)
class Text:
    """A figure at a spot. [mm]"""

    says: str
    at: Spot
    anchor: Anchor = Anchor.START
    turned: bool = False  # reads upwards, from the right of the sheet
    bold: bool = False

    @property
    def box(self) -> tuple[float, float, float, float]:
        """What it takes up at the most: left, low, right, high. [mm]"""
        x, y = self.at
        wide = text_wide(self.says)
        low = -wide if self.anchor is Anchor.END else 0.0
        if self.turned:
            return x - LINE_TALL / 2, y + low, x + LINE_TALL / 2, y + low + wide
        return x + low, y - LINE_TALL / 2, x + low + wide, y + LINE_TALL / 2


def text_wide(says: str) -> float:
    """The most that a figure takes up along its line. [mm]"""
    return _WIDE * FIGURE_SIZE * len(says)


@dataclass(frozen=True, kw_only=True)
class Drawing:
    """Strokes and texts, from the lower left corner. [mm]"""

    strokes: tuple[Stroke, ...]
    texts: tuple[Text, ...]
    size: Spot
    scale: int  # one to so many [-]
    alt: str  # in words
