"""The parts once more, from their drawings alone, by exact arithmetic.

What the kernel cut from the cuts of a part is held against what the drawn dimensions say. The two
share no code: here a cut is read as planes from its figures, the blank is split along them into
convex cells, and the cells are added up in fractions. Volume alone would not notice a mortise in
the wrong place, so the moments of the wood along the three axes are compared too. Each cut is
compared by itself as well, as another cut may hide what is wrong with it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.parts.drawn import Drawn
from scantling.proofs import _cells
from scantling.proofs._cells import Amount, Cell, Plane, Point
from scantling.proofs._drawing import WORDS, bar, planes
from scantling.proofs._proof import Case

CLOSE = 1e-12  # [-] share of the volume; of the volume times the size, for moments
CLOSE_CUT = 1e-9  # [-] the same for a single cut, which may be small and far out
ZERO = Fraction(0)
NOTHING = Amount(volume=ZERO, moments=(ZERO, ZERO, ZERO))
ORIGIN: Point = (ZERO, ZERO, ZERO)

Found = tuple[float, tuple[float, float, float]]  # volume and moments [mm3, mm4]


@dataclass(frozen=True, kw_only=True)
class Reckoned:
    """What a drawing says there is of a part."""

    left: Amount
    taken: tuple[Amount, ...]  # of the whole blank by each cut


class Rebuilt:
    """Proves that drawing and solid tell of the same part."""

    title: ClassVar[str] = "rebuilt from the drawing"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each part whose drawing and solid differ, or whose drawing tells of no part."""
        found = []
        for part in case.parts:
            size = (part.extent.length, part.extent.width, part.extent.thickness)
            cuts = case.drawn(part)
            try:
                wanted = case.store.kept(
                    ("rebuilt", size, _figures_alone(cuts), part.is_round),
                    lambda s=size, c=cuts, r=part.is_round: (  # type: ignore[misc] # mypy can't infer defaults of a lambda
                        reckoned(size=s, cuts=c, is_round=r)
                    ),
                )
            except OutOfRangeError as fault:
                found.append(_finding(case, part.name, str(fault), figure="", limit=""))
                continue
            bulk = case.solid(part).bulk
            taken = [(each.volume, each.moments) for each in case.taken(part)]
            names = [f"{cut.cut} ({cut.owner})" for cut in cuts]
            solid = (bulk.volume, bulk.moments)
            if says := next(_differences(wanted, size, solid, taken, names=names), ""):
                figure = f"{bulk.volume:.9g} mm³"
                limit = f"{float(wanted.left.volume):.9g} mm³"
                found.append(_finding(case, part.name, says, figure=figure, limit=limit))
        return tuple(found)


def reckoned(*, size: Point, cuts: Sequence[Drawn], is_round: bool = False) -> Reckoned:
    """Wood left of a blank once everything drawn is cut away, and what each cut takes of it.

    Args:
        size: Length, width and thickness of the blank. [mm]
        cuts: Its cuts, as drawn.
        is_round: Whether the blank is a many-sided bar inside the circle of its width.

    Raises:
        OutOfRangeError: A figure is missing or the figures of a cut make no body.
    """
    blank: Cell | None = _cells.block(ORIGIN, size)
    if is_round and blank is not None:
        blank = _cells.within(blank, bar(size))
    if blank is None:
        msg = "the blank has no size"
        raise OutOfRangeError(msg)
    before: list[tuple[Cell, tuple[Plane, ...]]] = []
    removed: list[Cell] = []
    taken = []
    for cut in cuts:
        sides = planes(cut, size)
        cell = _cells.within(blank, sides)
        taken.append(NOTHING if cell is None else _cells.amount([cell]))
        if cell is not None:
            removed.extend(_less(cell, before))
            before.append((cell, sides))
    left = _cells.amount([blank]).less(_cells.amount(removed))
    return Reckoned(left=left, taken=tuple(taken))


def _figures_alone(cuts: Sequence[Drawn]) -> tuple[object, ...]:
    # names and owners left out: both of a pair are reckoned once
    return tuple(
        (
            cut.form,
            cut.sweep,
            cut.corner,
            cut.open_start,
            cut.open_stop,
            cut.open_sides,
            tuple((row.word, row.value, row.from_surface) for row in cut.measures),
        )
        for cut in cuts
    )


def _less(cell: Cell, taken: Sequence[tuple[Cell, tuple[Plane, ...]]]) -> list[Cell]:
    left = [cell]
    for other, sides in taken:
        if not _cells.apart(cell, other):
            left = [piece for each in left for piece in _cells.without(each, sides)]
    return left


def _differences(
    wanted: Reckoned, size: Point, solid: Found, taken: Sequence[Found], *, names: Sequence[str]
) -> Iterator[str]:
    for name, found, amount in zip(names, taken, wanted.taken, strict=True):
        if told := _difference(amount, size, found, close=CLOSE_CUT):
            yield f"{name} is not drawn as it is cut, by its {told}"
    if told := _difference(wanted.left, size, solid, close=CLOSE):
        yield f"solid and drawing differ, by the {told}"


def _difference(wanted: Amount, size: Point, found: Found, *, close: float) -> str:
    whole, (volume, moments) = float(wanted.volume), found
    if abs(volume - whole) > close * whole:
        return "volume"
    for axis, moment in enumerate(moments):
        if abs(moment - float(wanted.moments[axis])) > close * whole * float(size[axis]):
            return f"place {WORDS[axis]} the part"
    return ""


def _finding(case: Case, name: str, says: str, *, figure: str, limit: str) -> Finding:
    return Finding(
        code="proofs.drawing-differs",
        weight=Weight.HALT,
        says=f"{name}: {says}",
        cure="Do not cut from this drawing: one of the two is wrong, and the program is at fault.",
        place=case.place((name,)),
        figure=figure,
        limit=limit,
        source="volume rebuilt from the drawn dimensions",
        parts=(name,),
    )
