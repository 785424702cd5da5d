"""Reads `merchant.csv`, what timber can be bought: one row for each kind of board.

Rows without lengths are hardware, glue and services, and are passed over here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from scantling.errors import UnknownNameError
from scantling.exact import Fraction, from_figures
from scantling.findings import Finding, Place
from scantling.stock._rows import Cell, Desk, Row, rows
from scantling.stock.boards import Board
from scantling.timber.movement import Cut
from scantling.timber.species import nearest, species
from scantling.units import FOOT, INCH, Unit, length

COLUMNS = ("source", "species", "grade", "size", "unit", "price", "lengths", "note")
NEEDED = ("source", "species", "size", "unit", "price", "lengths")
NARROWEST = 6 * INCH  # [mm] where the list names no width: the least of NHLA's grade FAS

_ROUGH = re.compile(r"(\d{1,2})/4\b")
_WIDTHS = re.compile(r"(\d{1,2}(?:\.\d+)?)\s*-\s*\d{1,2}(?:\.\d+)?\s*in\b")
_DRESSED = re.compile(r"\((\d[\d/ -]*) x (\d[\d/ -]*)\)")
_LENGTHS = re.compile(r"(\d{1,2})(?:\s*-\s*(\d{1,2}))?")
_PER = ("bd ft", "ft")


@dataclass(frozen=True, kw_only=True)
class Offer:
    """A kind of board that is sold."""

    source: str
    wood: str
    cut: Cut
    grade: str
    size: str  # as the merchant writes it
    thickness: Fraction  # [mm]
    width: Fraction  # the narrowest that may come [mm]
    dressed: bool
    per: str  # "bd ft" or "ft"
    price: Fraction  # for one of them, in the maker's money
    lengths: tuple[int, ...]  # [ft]
    place: Place

    def board(self, name: str, *, feet: int) -> Board:
        """The least that may come when one of that length is bought: flat, and as narrow as sold.

        Args:
            name: To call it by.
            feet: Its length. [ft]
        """
        long = feet * FOOT
        bare = Board(
            name=name,
            wood=self.wood,
            cut=self.cut,
            grade=self.grade,
            thickness=self.thickness,
            width_a=self.width,
            width_b=self.width,
            length=long,
            dressed=self.dressed,
            place=self.place,
        )
        many = bare.board_feet if self.per == "bd ft" else Fraction(feet)
        return Board(**{**vars(bare), "paid": many * self.price})


@dataclass(frozen=True, kw_only=True)
class PriceList:
    """What can be bought, as far as it could be read."""

    offers: tuple[Offer, ...]
    findings: tuple[Finding, ...]


def read(text: str, *, file: str = "merchant.csv") -> PriceList:
    """The timber a price list offers.

    Args:
        text: The whole file.
        file: Its name, for the places of findings.
    """
    desk = Desk(file=file, unit=Unit.INCH)
    offers = [
        offer
        for row, place in rows(text, desk=desk, columns=COLUMNS, needed=NEEDED)
        if "lengths" in row and (offer := _offer(row, place, desk)) is not None
    ]
    return PriceList(offers=tuple(offers), findings=tuple(desk.findings))


def _offer(row: Row, place: Place, desk: Desk) -> Offer | None:
    for name in NEEDED:
        if name not in row:
            desk.fault("not-said", place, f"this row has no {name}", "Write it, or strike the row.")
            return None
    try:
        wood = species(row["species"].text).name
    except UnknownNameError:
        near = nearest(row["species"].text)[:3]
        cure = f"Perhaps {' or '.join(near)}." if near else "Write its trade name, like white ash."
        says = f"no wood is called {row['species'].text!r} here"
        desk.fault("unknown-wood", row["species"].place, says, cure)
        return None
    price = desk.number(row["price"], most=10_000)
    size, feet = _size(row["size"], desk), _feet(row["lengths"], desk)
    per = row["unit"].text
    if per not in _PER:
        desk.fault("unknown-unit", row["unit"].place, f"{per!r} sells no board", "bd ft or ft.")
        return None
    if price is None or size is None or not feet:
        return None
    note = row["note"].text if "note" in row else ""
    return Offer(
        source=row["source"].text,
        wood=wood,
        cut=Cut.QUARTER if "vertical grain" in note else Cut.FLAT,
        grade=row["grade"].text if "grade" in row else "",
        size=row["size"].text,
        thickness=size[0],
        width=size[1],
        dressed=size[2],
        per=per,
        price=price,
        lengths=feet,
        place=place,
    )


def _size(cell: Cell, desk: Desk) -> tuple[Fraction, Fraction, bool] | None:
    """Thickness, narrowest width, and whether it is dressed. [mm]"""
    if dressed := _DRESSED.search(cell.text):
        thick, wide = (length(text.strip(), unit=Unit.INCH) for text in dressed.groups())
        return thick, wide, True
    if rough := _ROUGH.search(cell.text):
        widths = _WIDTHS.search(cell.text)
        wide = from_figures(widths[1]) * INCH if widths else NARROWEST
        return Fraction(int(rough[1]), 4) * INCH, wide, False
    says = f"{cell.text!r} tells no thickness"
    cure = "Write rough stock as 4/4 rough 6-10 in, dressed stock as 1x12 (3/4 x 11-1/4)."
    desk.fault("not-a-size", cell.place, says, cure)
    return None


def _feet(cell: Cell, desk: Desk) -> tuple[int, ...]:
    found = _LENGTHS.fullmatch(cell.text)
    if found is None:
        says = f"{cell.text!r} are no lengths in feet"
        desk.fault("not-a-length", cell.place, says, "Write 8 or 8-12.")
        return ()
    first = int(found[1])
    return tuple(range(first, int(found[2] or first) + 1))
