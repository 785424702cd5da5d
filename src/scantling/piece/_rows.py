"""Rows of a front: rails, openings and feet, from the top down, with their heights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from scantling.findings import Finding, Place, Weight
from scantling.joints._joint import Joined
from scantling.piece._form import Whole
from scantling.piece._made import ending_on, first_unmade, lack_of, lacking
from scantling.piece._section import Count, Length, Section, Tall, Word
from scantling.piece._words import equally
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Relations

STILES = ("left stile", "right stile")
MOST_ACROSS = 12  # openings side by side: at 3 in each with mullions of 1 in, a front 4 ft wide


class Row(Section):
    """One row of the front as it stands: a rail, an opening, or the feet.

    `across = 3` makes three openings with mullions between them. A front's only mullion is called
    `mullion`; several are numbered from the left, the highest row first: `mullion 1`, `mullion 2`.
    Openings without `tall`, or with `tall = "equal"`, share alike what the other rows leave.
    """

    rail: Word | None = None
    opening: Word | None = None
    foot: Length | None = None
    tall: Tall | None = None
    across: Count = Count(1)
    mullion: Length | None = None
    arch: Length | None = None


@dataclass(frozen=True, kw_only=True)
class Storey:
    """A row with its height above the floor."""

    row: Row
    tall: Linear
    below: Linear
    lack: Linear = ZERO  # of a made rail, at its lower edge
    mullions: tuple[str, ...] = ()  # names of the uprights between its openings

    @property
    def top(self) -> Linear:
        return self.below + self.tall


def faults_of(rows: Sequence[Row], *, place: Place | None) -> tuple[Finding, ...]:
    """Rows that make no front: each is one thing, and an opening stands between two rails."""
    found = []
    for i, row in enumerate(rows):
        kinds = [word for word in ("rail", "opening", "foot") if getattr(row, word) is not None]
        if len(kinds) != 1:
            cure = 'write { rail = "top rail" }, { opening = "doors" } or { foot = 1 }, one a row'
            found.append(_fault("a row is a rail, an opening or feet", cure, row.place or place))
        elif kinds == ["foot"] and i < len(rows) - 1:
            found.append(_fault("feet stand below all other rows", "put them last", row.place))
        elif kinds == ["opening"] and not _between_rails(rows, i):
            says = f"the opening {str(row.opening)!r} has no rail right above and right below it"
            found.append(_fault(says, "put a rail above it and one below", row.place or place))
        elif row.across > MOST_ACROSS:
            says = f"{row.across} openings side by side are more than a front is set out with"
            cure = f"write at most {MOST_ACROSS}: across = {MOST_ACROSS}"
            found.append(_fault(says, cure, row.across.place or row.place or place))
    return tuple(found)


def _between_rails(rows: Sequence[Row], i: int) -> bool:
    return 0 < i < len(rows) - 1 and bool(rows[i - 1].rail) and bool(rows[i + 1].rail)


def _fault(says: str, cure: str, place: Place | None) -> Finding:
    return Finding(
        code="piece.row-stands-wrong", weight=Weight.HALT, says=says, cure=cure, place=place
    )


def storeys(rows: Sequence[Row], whole: Whole) -> list[Storey]:
    """Rows with their heights. A lowest rail made too narrow lacks it at its lower edge."""
    found: list[Storey] = []
    below: Linear = ZERO
    lowest = next((row for row in reversed(rows) if row.rail), None)
    for row, mullions in reversed(list(zip(rows, _mullions(rows), strict=True))):
        lack = lack_of(f"{row.rail}.width", whole) if row is lowest else ZERO
        tall = _tall(row) + lack
        found.append(Storey(row=row, tall=tall, below=below, lack=lack, mullions=mullions))
        below = below + tall
    return found[::-1]


def _tall(row: Row) -> Linear:
    if row.rail:
        return size_of(f"{row.rail}.width")
    if row.opening:
        return size_of(f"{opening_name(row, 0)}.tall")
    return size_of("face frame.foot")


def members_of(levels: Sequence[Storey]) -> list[str]:
    """Stiles, rails and mullions, by name."""
    found = list(STILES)
    for level in levels:
        found += [str(level.row.rail)] if level.row.rail else level.mullions
    return found


def sharing(levels: Sequence[Storey]) -> Relations:
    """Openings whose height nobody states are of one height."""
    silent = [level.tall for level in levels if level.row.opening and level.row.tall is None]
    return Relations(rules=equally(silent, "openings that nobody states share alike"))


def _mullions(rows: Sequence[Row]) -> list[tuple[str, ...]]:
    """Names of the uprights of each row, numbered through the front."""
    counts = [row.across - 1 if row.opening else 0 for row in rows]
    several = sum(counts) > 1
    names = (f"mullion {i + 1}" if several else "mullion" for i in range(sum(counts)))
    return [tuple(islice(names, count)) for count in counts]


@dataclass(frozen=True, kw_only=True)
class Thickness:
    """One setting for the whole frame. A member made thinner lies on the case all the same."""

    members: Sequence[str]
    whole: Whole

    def back_of(self, member: str) -> Linear:
        """How far the face of a member stands behind that of the frame. [mm]"""
        return lacking(f"{member}.thickness", self._names, self.whole)

    def relations(self) -> Relations:
        """All are as thick as what stands in front of the case."""
        because = "the frame is of one thickness, flush in front"
        return ending_on(
            size_of("case.front"), self._names, because, whole=self.whole, stands_over=True
        )

    @property
    def first(self) -> str:
        """The thickness that a habit speaks of: of a member that is not made yet, if there is."""
        return first_unmade(self._names, self.whole)

    @property
    def _names(self) -> list[str]:
        return [f"{member}.thickness" for member in self.members]


def opening_name(row: Row, index: int) -> str:
    return f"{row.opening} opening" if row.across == 1 else f"{row.opening} opening {index + 1}"


def shoulder_gaps(joined: Sequence[Joined]) -> list[Linear]:
    """Gaps at the shoulders of joints that have tenons. [mm]"""
    return [j.size("shoulder gap") for j in joined if hasattr(j.joint, "shoulder_gap")]
