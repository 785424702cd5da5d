"""Reads `boards.csv`, the survey of the rack: one row for each board.

Whatever is wrong with the list is a finding and the rest is read on. A row that lacks what a
plan cannot do without is left out, and its finding says so.
"""

from __future__ import annotations

import difflib
from dataclasses import dataclass

from scantling.errors import UnknownNameError
from scantling.exact import Fraction
from scantling.findings import Finding, Place
from scantling.stock._defects import UNSAID, Outline, defects
from scantling.stock._rows import Desk, Row, rows
from scantling.stock.boards import Board
from scantling.timber.movement import Cut
from scantling.timber.species import nearest, species
from scantling.units import Unit, written_with_unit

COLUMNS = (
    *("id", "species", "cut", "grade", "rough_t", "width_a", "width_b", "length"),
    *("cup", "bow", "crook", "twist", "mc", "defects", "paid"),
)
NEEDED = ("id", "species", "rough_t", "width_a", "length")
MOST_BOARDS = 300  # of one rack

# Limits that catch a slip of unit or column, not of taste. [mm]
_LIMITS = {
    "rough_t": (Fraction(3), Fraction(150)),
    "width_a": (Fraction(20), Fraction(1000)),
    "width_b": (Fraction(20), Fraction(1000)),
    "length": (Fraction(150), Fraction(8000)),
    **dict.fromkeys(("cup", "bow", "crook", "twist"), (Fraction(0), Fraction(100))),
}


@dataclass(frozen=True, kw_only=True)
class Survey:
    """The boards of the rack, as far as they could be read."""

    boards: tuple[Board, ...]
    findings: tuple[Finding, ...]


def read(text: str, *, unit: Unit, file: str = "boards.csv") -> Survey:
    """The boards a list describes.

    Args:
        text: The whole file.
        unit: Of a length whose cell and column name none.
        file: Its name, for the places of findings.
    """
    desk = Desk(file=file, unit=unit)
    found: dict[str, Board] = {}
    for row, place in rows(text, desk=desk, columns=COLUMNS, needed=NEEDED):
        board = _board(row, place, desk)
        if board is None:
            continue
        if board.name in found:
            says = f"two boards are called {board.name}"
            desk.fault("said-twice", row["id"].place, says, "Chalk another name on one of them.")
            continue
        if len(found) == MOST_BOARDS:
            says = f"there are more than {MOST_BOARDS} boards: the rest is not read"
            desk.fault("too-many-boards", place, says, "List those meant for this piece.")
            break
        found[board.name] = board
    return Survey(boards=tuple(found.values()), findings=tuple(desk.findings))


def _board(row: Row, place: Place, desk: Desk) -> Board | None:
    for name in NEEDED:
        if name not in row:
            desk.fault("not-said", place, f"this board has no {name}", "Measure it and write it.")
            return None
    wood = _wood(row, desk)
    sizes = {
        name: desk.length(row[name], least=least, most=most)
        for name, (least, most) in _LIMITS.items()
        if name in row
    }
    thick, wide, long = sizes["rough_t"], sizes["width_a"], sizes["length"]
    if wood is None or thick is None or wide is None or long is None:
        return None
    far = sizes.get("width_b") or wide
    outline = Outline(length=long, width_a=wide, width_b=far)
    noted = row.get("defects")
    found = () if noted is None else tuple(defects(noted, board=outline, desk=desk))
    _unsaid(row, desk)
    return Board(
        name=row["id"].text,
        wood=wood,
        cut=_cut(row, desk),
        grade=row["grade"].text if "grade" in row else "",
        thickness=thick,
        width_a=wide,
        width_b=far,
        length=long,
        cup=sizes.get("cup") or Fraction(0),
        bow=sizes.get("bow") or Fraction(0),
        crook=sizes.get("crook") or Fraction(0),
        twist=sizes.get("twist") or Fraction(0),
        moisture=desk.number(row["mc"], most=100) if "mc" in row else None,
        defects=found,
        dressed=noted is not None and "dressed" in noted.text,
        paid=desk.number(row["paid"], most=100_000) if "paid" in row else None,
        place=place,
    )


def _wood(row: Row, desk: Desk) -> str | None:
    said = row["species"]
    try:
        return species(said.text).name
    except UnknownNameError:
        near = nearest(said.text)[:3]
        cure = f"Perhaps {' or '.join(near)}." if near else "Write its trade name, like white ash."
        desk.fault("unknown-wood", said.place, f"no wood is called {said.text!r} here", cure)
        return None


def _cut(row: Row, desk: Desk) -> Cut:
    """How the rings stand; flat, which serves least, where nothing or nothing known is said."""
    said = row.get("cut")
    if said is None:
        return Cut.FLAT
    word = said.text.casefold().removesuffix("-sawn").removesuffix(" sawn")
    if word in tuple(Cut):
        return Cut(word)
    near = difflib.get_close_matches(word, tuple(Cut), n=1, cutoff=0.5)
    cure = f"Perhaps {near[0]}." if near else "Write flat, rift or quarter."
    desk.fault("unknown-cut", said.place, f"{said.text!r} is no way to saw a board", cure)
    return Cut.FLAT


def _unsaid(row: Row, desk: Desk) -> None:
    """Say what was taken for the depth of a pith or wane that has none."""
    noted = row.get("defects")
    for text in noted.text.split(";") if noted else ():
        if any(word in text for word in ("pith", "wane")) and " x" not in text:
            taken = written_with_unit(UNSAID, unit=desk.unit)
            says = (
                f"how deep the {text.strip()} of {row['id'].text} reaches is not said:"
                f" {taken} from its edge is kept clear"
            )
            assert noted is not None  # noqa: S101 - or there was no text to part
            desk.note("depth-not-said", noted.place, says)
