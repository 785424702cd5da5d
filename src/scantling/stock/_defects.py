"""Reads what a survey notes of a board: `knot 0.8@71.5:5.2; check end_a 0-4.0; wane edge_b 80-98`.

`diameter@along:across` is a knot, `from-to` a stretch of the board, `x0.5` how far in from an
edge something reaches. Amounts are read by the same unit as the list.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from scantling.errors import LengthError
from scantling.exact import Fraction
from scantling.roster import nearest
from scantling.stock._rows import Cell, Desk
from scantling.stock.boards import Defect, Harm
from scantling.units import INCH, length

UNSAID = INCH  # [mm] pith or wane reaches so far in from its edge where nothing is said; assumed

_AMOUNT = r"\d[\d./ ]*(?:mm|in)?|\.\d+"
_SPOT = re.compile(rf"({_AMOUNT})(?:x({_AMOUNT}))?@({_AMOUNT}):({_AMOUNT})(?=\s|$)")
_STRETCH = re.compile(rf"(?<!x)\b({_AMOUNT})(?: ?- ?| to )({_AMOUNT})(?=\s|$)")
_REACH = re.compile(rf"\bx ?({_AMOUNT})(?=\s|$)")
_EDGE = re.compile(r"\bedge[_ ]([ab])\b")
_SIDE = re.compile(r"\b(?:end|edge|face)[_ ][ab]\b")

HARM: Mapping[str, Harm] = {
    **dict.fromkeys(("bad", "check", "hole", "pitch pocket", "pith", "rot"), Harm.SPOILS),
    **dict.fromkeys(("shake", "split", "wane"), Harm.SPOILS),
    **dict.fromkeys(("knot", "pin knot", "red knot", "black knot"), Harm.KNOT),
    **dict.fromkeys(("clear", "dressed", "green heart", "mineral streak"), Harm.LOOK),
    **dict.fromkeys(("ray fleck", "sap", "stain", "vertical grain"), Harm.LOOK),
}


@dataclass(frozen=True, kw_only=True)
class Outline:
    """What defects are measured against. [mm]"""

    length: Fraction
    width_a: Fraction
    width_b: Fraction

    @property
    def narrowest(self) -> Fraction:
        """Width of its narrower end. [mm]"""
        return min(self.width_a, self.width_b)

    @property
    def widest(self) -> Fraction:
        """Width of its wider end. [mm]"""
        return max(self.width_a, self.width_b)


def defects(cell: Cell, *, board: Outline, desk: Desk) -> Iterator[Defect]:
    """What a cell notes, one thing after the other. Faults go to the desk."""
    for found in re.finditer(r"[^;]+", cell.text):
        text = found[0].strip()
        if text:
            at = found.start() + found[0].index(text)
            place = replace(cell.place, column=cell.place.column + at, width=len(text))
            yield from _defect(replace(cell, text=text, place=place), board, desk)


def _defect(cell: Cell, board: Outline, desk: Desk) -> Iterator[Defect]:
    says = _kind(cell.text)
    if says.startswith("home centre"):
        says = "dressed"
    harm = HARM.get(says)
    if harm is None:
        meant = nearest(says, HARM)
        cure = f"Perhaps {meant}." if meant else f"Known here: {', '.join(sorted(HARM))}."
        desk.fault("unknown-defect", cell.place, f"{cell.text!r} is no defect known here", cure)
        return
    if harm is Harm.KNOT and "loose" in cell.text:
        harm = Harm.SPOILS  # it falls out
    rectangle = _rectangle(cell, board, desk, spot=harm is Harm.KNOT or "@" in cell.text)
    if rectangle is None:
        if harm is not Harm.LOOK:
            cure = "Write a knot as 0.8@71.5:5.2, and what spoils a stretch as check end_a 0-4."
            says = f"where the {says} is cannot be read"
            desk.fault("not-a-defect", cell.place, says, cure)
        return
    start, stop, near, far = rectangle
    if not start < stop <= board.length or near > board.widest:
        cure = "Measure along from end a and across from edge a."
        desk.fault("off-the-board", cell.place, f"the {says} is not on the board", cure)
        return
    yield Defect(says=says, harm=harm, start=start, stop=stop, near=near, far=far)


def _kind(text: str) -> str:
    """The words before the first figure, without the side they name."""
    words = _SIDE.sub(" ", re.split(r"\s*\bx?[\d.]", text, maxsplit=1)[0])
    words = re.sub(r"\b(?:both faces|loose|tight|only)\b", " ", words)
    return " ".join(words.split()).casefold()


def _rectangle(
    cell: Cell, board: Outline, desk: Desk, *, spot: bool
) -> tuple[Fraction, Fraction, Fraction, Fraction] | None:
    """Start, stop, near and far. [mm]"""
    if spot:
        found = _SPOT.search(cell.text)
        sizes = found and [_amount(text or found[1], cell, desk) for text in found.groups()]
        if not sizes:
            return None
        along, across, at, off = sizes
        start, stop = at - along / 2, at + along / 2
        return max(start, Fraction(0)), min(stop, board.length), off - across / 2, off + across / 2
    stretch = _STRETCH.search(cell.text)
    edge = _EDGE.search(cell.text)
    if stretch is None:
        if edge is None:
            return None
        start, stop = Fraction(0), board.length
    else:
        start, stop = (_amount(text, cell, desk) for text in stretch.groups())
    if edge is None:
        return start, stop, Fraction(0), board.widest
    reach = _REACH.search(cell.text)
    depth = UNSAID if reach is None else _amount(reach[1], cell, desk)
    if edge[1] == "a":
        return start, stop, Fraction(0), depth
    return start, stop, board.narrowest - depth, board.widest


def _amount(text: str, cell: Cell, desk: Desk) -> Fraction:
    try:
        return length(text, unit=cell.unit)
    except LengthError as wrong:
        desk.fault("not-a-length", cell.place, wrong.says, wrong.cure)
        return Fraction(0)
