"""From the text to a sketch: the forms, one after the other, in the order of the work."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from typing import cast

import scantling.piece
from scantling.findings import Finding, Weight
from scantling.piece._form import Form, Sketch, Whole
from scantling.piece._read import Asked, Piece
from scantling.roster import members
from scantling.sizes.model import Measured, Relations


def draft(piece: Piece, measured: Sequence[Measured] = ()) -> Sketch:
    """Parts, joints and relations of everything the piece file asks for; no sizes yet.

    A section whose form finds nothing to stand on, or whose names are taken already, adds a
    finding and no part.

    Args:
        piece: As read.
        measured: Facts of the build record; made parts may fall short of their line.
    """
    whole = replace(piece.whole, measured={fact.name: fact.value for fact in measured})
    forms = {title: cast("type[Form]", form) for title, form in _forms().items()}
    sections = sorted(piece.sections, key=lambda asked: forms[asked.form].order)
    sketch = Sketch()
    for asked in sections:
        sketch = _with(sketch, forms[asked.form], asked, whole)
    return sketch.with_relations(Relations(rules=sketch.unsaid))


def _forms() -> dict[str, type]:
    return dict(members(scantling.piece, base=Form))


def _with(sketch: Sketch, form: type[Form], asked: Asked, whole: Whole) -> Sketch:
    missing = [need for need in form.needs if need not in sketch.landings]
    if missing:
        return sketch.with_findings(_nothing_to_stand_on(asked, missing))
    more = form.draft(asked.said, name=asked.name, so_far=sketch, whole=whole)
    counted = Counter(dimension.name for dimension in more.relations.dimensions)
    taken = sorted(name for name, count in counted.items() if count > 1)
    if taken:
        return sketch.with_findings(_name_taken(asked, taken[0]))
    return more


def _nothing_to_stand_on(asked: Asked, missing: list[str]) -> Finding:
    return Finding(
        code="piece.nothing-to-stand-on",
        weight=Weight.HALT,
        says=f"the {asked.name} has no {missing[0]} to stand on",
        cure=f"add a section [{missing[0].replace(' ', '_')}], or take this one out",
        place=asked.place,
    )


def _name_taken(asked: Asked, name: str) -> Finding:
    return Finding(
        code="piece.name-taken",
        weight=Weight.HALT,
        says=f"in [{asked.name}] a second thing would be called {name.rsplit('.', 1)[0]!r}",
        cure="give each part and opening a name of its own",
        place=asked.place,
    )
