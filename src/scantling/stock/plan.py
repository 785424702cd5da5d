"""A plan of cuts: boards crosscut to sections, sections ripped to strips, one blank to a strip."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.exact import Fraction


@dataclass(frozen=True, kw_only=True)
class Sawn:
    """A strip ripped from a section, crosscut to one blank or to one strip of a panel. [mm]"""

    part: str
    start: Fraction  # along from end a of the board
    length: Fraction
    near: Fraction  # across from the edge a of the section, jointed straight
    width: Fraction


@dataclass(frozen=True, kw_only=True)
class Section:
    """What stands between two crosscuts. [mm]"""

    board: str
    start: Fraction  # along from end a of the board
    stop: Fraction
    sawn: tuple[Sawn, ...]  # by distance from edge a


@dataclass(frozen=True, kw_only=True)
class Plan:
    """Where every blank comes from, and which have no place."""

    sections: tuple[Section, ...]  # by board, then along it
    short: tuple[str, ...] = ()  # parts

    @property
    def boards(self) -> tuple[str, ...]:
        """Boards that are cut into, in the order they come."""
        return tuple(dict.fromkeys(section.board for section in self.sections))
