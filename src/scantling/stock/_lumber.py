"""The boards of a job as the maker's rule handles them: whole thousandths of a millimetre.

Blanks and kerfs are rounded up, boards down, so that what fits here fits truly.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil, floor

from scantling.exact import Fraction
from scantling.stock.boards import Board, Harm
from scantling.stock.job import Cutting, Job, Wanted

FINE = 1000  # to the millimetre


def up(value: Fraction) -> int:
    """A length that must not come out short. [1/1000 mm]"""
    return ceil(value * FINE)


def down(value: Fraction) -> int:
    """Room that must not come out long. [1/1000 mm]"""
    return floor(value * FINE)


def exact(value: int) -> Fraction:
    """The length itself. [mm]"""
    return Fraction(value, FINE)


@dataclass(frozen=True, kw_only=True)
class Saws:
    """Allowances of the cutting. [1/1000 mm]"""

    across: int
    along: int
    joint: int
    narrowest: int
    widest: int
    from_end: int
    from_edge: int

    @classmethod
    def of(cls, cutting: Cutting) -> Saws:
        """The same in whole numbers."""
        return cls(
            across=up(cutting.kerf_across),
            along=up(cutting.kerf_along),
            joint=up(cutting.strip_joint),
            narrowest=up(cutting.narrowest_strip),
            widest=down(cutting.widest_strip),
            from_end=up(cutting.knot_from_end),
            from_edge=up(cutting.knot_from_edge),
        )


@dataclass(frozen=True, kw_only=True)
class Blank:
    """One blank. [1/1000 mm]"""

    wanted: Wanted
    length: int
    width: int

    @property
    def name(self) -> str:
        """Its part."""
        return self.wanted.part


@dataclass(frozen=True, kw_only=True)
class Spot:
    """A rectangle that parts keep off, or a sound knot. [1/1000 mm]"""

    knot: bool
    start: int
    stop: int
    near: int
    far: int


@dataclass(kw_only=True)
class Lumber:
    """A board with the stretches of it that are still free. [1/1000 mm]"""

    board: Board
    spots: tuple[Spot, ...]
    free: list[tuple[int, int]] = field(default_factory=list)

    @classmethod
    def of(cls, board: Board, *, trim: Fraction) -> Lumber:
        """The board as it lies on the rack, its ends trimmed and bad stretches taken out."""
        spots = tuple(
            Spot(
                knot=each.harm is Harm.KNOT,
                start=down(each.start),
                stop=up(each.stop),
                near=down(each.near),
                far=up(each.far),
            )
            for each in board.defects
            if each.harm is not Harm.LOOK
        )
        whole = [(up(trim), down(board.length - trim))]
        for spot in spots:
            if not spot.knot and spot.near <= 0 and spot.far >= down(board.widest):
                whole = [part for each in whole for part in _without(each, spot)]
        return cls(board=board, spots=spots, free=[(a, b) for a, b in whole if a < b])

    def lost(self, length: int) -> int:
        """What jointing an edge of a section straight takes. [1/1000 mm]"""
        share = exact(length) / self.board.length
        return up(self.board.crook * share * share)

    def room(self, *, start: int, stop: int) -> int:
        """Width of a section, jointed straight along edge a. [1/1000 mm]"""
        board = self.board
        narrow = min(board.width_at(exact(start)), board.width_at(exact(stop)))
        return down(narrow) - self.lost(stop - start)

    def over(self, *, start: int, stop: int) -> tuple[Spot, ...]:
        """Spots somewhere in a stretch of the board. [1/1000 mm]"""
        return tuple(spot for spot in self.spots if spot.start < stop and start < spot.stop)

    def starts(self, length: int) -> Iterator[int]:
        """Where a section may sensibly begin: at either end of what is free, or behind a knot."""
        for low, high in self.free:
            last = high - length
            if last >= low:
                found = {low, last, *(s.stop for s in self.spots if low < s.stop < last)}
                yield from sorted(found)

    def take(self, *, start: int, stop: int, kerf: int) -> None:
        """Crosscut a section out."""
        left = [(a, min(b, start - kerf)) for a, b in self.free if a < start - kerf]
        right = [(max(a, stop + kerf), b) for a, b in self.free if b > stop + kerf]
        self.free = left + right


def _without(stretch: tuple[int, int], spot: Spot) -> list[tuple[int, int]]:
    low, high = stretch
    return [(a, b) for a, b in ((low, min(high, spot.start)), (max(low, spot.stop), high)) if a < b]


def widest_from(wanted: Wanted, board: Board, *, job: Job) -> int:
    """Widest strip of a board that gives a blank, knots apart; 0 if none does. [1/1000 mm]

    Wood, rings, length, width and thickness count. The wider a strip of a cupped board, the
    more is lost in flattening it: what is too thin whole may do when it is ripped first.
    """
    cutting = job.cutting
    if board.wood != wanted.wood or not board.serves(wanted.cut):
        return 0
    if wanted.length > board.length - 2 * cutting.end_trim:
        return 0
    least = most = wanted.width
    if wanted.glued_up:
        least = cutting.strip_joint + min(cutting.narrowest_strip, wanted.width)
        most = cutting.strip_joint + cutting.widest_strip
    low, high = up(least), down(min(most, board.widest)) if wanted.glued_up else up(most)
    if least > board.widest or not _flat(wanted, board, low, job=job):
        return 0
    while high - low > FINE and not _flat(wanted, board, high, job=job):
        middle = (low + high) // 2
        if _flat(wanted, board, middle, job=job):
            low = middle
        else:
            high = middle
    return high if _flat(wanted, board, high, job=job) else low


def _flat(wanted: Wanted, board: Board, width: int, *, job: Job) -> bool:
    found = job.gives(board, length=exact(up(wanted.length)), width=exact(width))
    return found >= wanted.thickness
