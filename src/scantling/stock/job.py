"""What is to be sawn out of which boards, and how this shop saws. No plan is made here."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.stock.boards import Board


@dataclass(frozen=True, kw_only=True)
class Cutting:
    """How boards are cut up in this shop. [mm]"""

    kerf_across: Fraction  # of the crosscut saw
    kerf_along: Fraction  # of the rip saw
    end_trim: Fraction  # sawn off each end of a board before anything is taken from it
    strip_joint: Fraction  # left on each strip of a panel, for its glued edges
    narrowest_strip: Fraction  # net, of a panel
    widest_strip: Fraction  # net, of a panel
    knot_from_end: Fraction  # sound knots stay so far from the ends of a part
    knot_from_edge: Fraction  # and so far from its edges
    planing: Fraction  # taken off a rough board by planing both faces


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """One blank to be got out of the boards: the rough size of a part. [mm]"""

    part: str
    family: str
    wood: str  # name of the species in the table
    cut: str  # "flat", "rift", "quarter"
    length: Fraction  # rough
    width: Fraction  # rough; of a panel what its strips must add up to after jointing
    thickness: Fraction  # finished: what the board must still give when it is flat
    clear: bool = False  # no knot anywhere; otherwise none near ends and edges
    glued_up: bool = False  # from strips of free widths


@dataclass(frozen=True, kw_only=True)
class Job:
    """Boards, blanks and the way of sawing."""

    boards: tuple[Board, ...]
    wanted: tuple[Wanted, ...]
    cutting: Cutting

    def gives(self, board: Board, *, length: Fraction, width: Fraction) -> Fraction:
        """Thickness that a piece of a board still has when it is flat on both faces. [mm]"""
        lost = board.out_of_flat(length=length, width=width)
        return board.thickness - (lost if board.dressed else max(lost, self.cutting.planing))
