"""How this maker likes to work, where the wood would allow either way."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from scantling.exact import Fraction
from scantling.units import INCH, Unit
from scantling.wording import Speech


@dataclass(frozen=True, kw_only=True)
class Display:
    """How things are shown for now, whatever the shop's file says. It changes no file."""

    words: Speech | None = None  # None: as the habits have it
    figures: Unit | None = None

    def over(self, habits: Habits) -> Habits:
        """The habits with this in the place of theirs."""
        words, figures = self.words or habits.words, self.figures or habits.figures
        return replace(habits, words=words, figures=figures)


class Sizing(StrEnum):
    """The three steps of bringing a part to size, whose order is a habit."""

    THICKNESS = "thickness"
    WIDTH = "width"
    LENGTH = "length"


@dataclass(frozen=True, kw_only=True)
class Habits:
    """Settings of the order of work. The house objects only where wood or reach forbids.

    The defaults are common practice, each taught the other way round too.
    """

    tails_first: bool = True  # dovetails: pins are marked from the tails
    socket_first: bool = True  # sliding dovetail: the tail is shaved to the socket
    mortise_first: bool = True  # the tenon is sawn to the chopped mortise
    groove_after_mortise: bool = False  # ploughed first, the groove guides the chisel
    drawer_groove_after_dovetails: bool = False
    horn: Fraction = 3 * INCH / 4  # waste left beyond a mortise [mm]; 0 for none
    pair_marked_together: bool = True  # otherwise the second from the finished first
    hinges_before_finish: bool = True
    pin_holes_before_glue: bool = True
    sizing: tuple[Sizing, ...] = (Sizing.WIDTH, Sizing.THICKNESS, Sizing.LENGTH)
    rough_length: Fraction = INCH  # left on a part until it is sawn to length [mm]
    rough_width: Fraction = INCH / 4  # [mm]
    rough_thickness: Fraction = INCH / 8  # [mm]
    widest_strip: Fraction = 10 * INCH  # wider parts are glued up from strips [mm]
    narrowest_strip: Fraction = 5 * INCH / 2  # of a panel, a narrower one looks like a patch [mm]
    strip_joint: Fraction = INCH / 8  # left on each strip until its edges are jointed [mm]
    end_trim: Fraction = INCH / 2  # sawn off each end of a board first [mm]
    knot_from_end: Fraction = 3 * INCH  # sound knots stay so far from the ends of a part [mm]
    knot_from_edge: Fraction = INCH / 2  # and so far from its edges [mm]
    # Rough boards of 4/4 come out at 13/16 in, of 5/4 at 1 1/16: NHLA surfaced thicknesses, as
    # reproduced in a lumber reference page.
    planing: Fraction = 3 * INCH / 16  # taken off a rough board by planing both faces [mm]
    slope_softwood: Fraction = Fraction(1, 6)  # of dovetails, rise per unit
    slope_hardwood: Fraction = Fraction(1, 8)
    words: Speech | None = None  # shown; None: as makers who read the piece's measure speak
    figures: Unit | None = None  # shown; None: the piece's own measure
