"""Sizes from relations and from what the maker says."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from scantling.errors import OutOfRangeError
from scantling.sizes.answer import Solved, Trail
from scantling.sizes.certificate import Case
from scantling.sizes.model import (
    Measured,
    Origin,
    Relations,
    Size,
    Sizes,
    Stated,
)
from scantling.sizes.rows import Kept, Row, check_names, lines_of, rows_of
from scantling.sizes.search import searched_out
from scantling.sizes.shape import Shape, reading, shape_of


def solve(
    relations: Relations,
    *,
    stated: Iterable[Stated] = (),
    measured: Iterable[Measured] = (),
    grid: Fraction,
    kept: Kept | None = None,
    before: Solved | None = None,
) -> Solved:
    """Sizes of every dimension.

    Args:
        relations: What forms and joints say.
        stated: What the maker wrote.
        measured: Facts of the build record, at the bench's moisture.
        grid: Graduation that tape sizes fall on. [mm]
        kept: Plan of a piece whose cutting has begun.
        before: An earlier answer; work of its that still applies is not done again.

    Returns:
        Sizes that meet every equation exactly, and what had to be said about them.

    Raises:
        OutOfRangeError: The graduation is not above 0.
        InternalError: Nothing settles some dimension, or relations contradict themselves.
        UnknownNameError: A relation names no dimension.
    """
    if grid <= 0:
        raise OutOfRangeError(f"graduation {grid} mm is not above 0 mm")
    lines = lines_of(stated, measured, kept)
    dimensions = {d.name: d for d in relations.dimensions}
    rows = rows_of(relations, lines, kept, given_up=frozenset())
    shape = _shape(relations, rows, before)
    case = Case(dimensions, rows, shape, relations.bounds, grid)
    base = reading(shape, rows)
    same = before is not None and before.trail.shape is shape
    searched = searched_out(case, base, before.trail.searched if same else {})
    found = searched.found
    sizes = Sizes(
        {
            name: Size(
                name=name, value=found.at(v), kind=dimensions[name].kind, origin=Origin.FOLLOWS
            )
            for name, v in shape.at.items()
        }
    )
    return Solved(
        sizes=sizes,
        trail=Trail(rows=(), shape=shape, searched=searched.knots, solves=searched.solves),
    )


def _shape(relations: Relations, rows: Sequence[Row], before: Solved | None) -> Shape:
    names = tuple(d.name for d in relations.dimensions)
    if (
        before is not None
        and before.trail.shape is not None
        and before.trail.shape.fits(names, rows)
    ):
        return before.trail.shape
    check_names(relations)
    return shape_of(tuple(dict.fromkeys(names)), rows)
