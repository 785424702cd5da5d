"""From the text to a sketch: the forms, one after the other, in the order of the work."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from typing import cast

import scantling.joints
import scantling.piece
from scantling.findings import Finding, Weight
from scantling.joints._joint import Joined, Joint
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
    sketch = Sketch()
    for title, form in sorted(forms.items(), key=lambda known: known[1].order):
        sections = [asked for asked in piece.sections if asked.form == title]
        for asked in sorted(sections, key=lambda each: form.turn(each.said)):
            sketch = _told_of(sketch, form, asked, whole)
        said = {asked.name: asked.said for asked in sections}
        sketch = form.together(said, so_far=sketch, whole=whole)
    return sketch.with_relations(Relations(rules=sketch.unsaid))


def _told_of(sketch: Sketch, form: type[Form], asked: Asked, whole: Whole) -> Sketch:
    """With one more section; what it would offer is in doubt if it is faulty."""
    more = _with(sketch, form, asked, whole)
    if any(f.weight is Weight.HALT for f in more.findings[len(sketch.findings) :]):
        return replace(more, in_doubt=more.in_doubt.union(form.offers))
    return more


def _forms() -> dict[str, type]:
    return dict(members(scantling.piece, base=Form))


def _with(sketch: Sketch, form: type[Form], asked: Asked, whole: Whole) -> Sketch:
    missing = [need for need in form.needs if need not in sketch.landings]
    if missing:
        told = sketch.lacking(missing[0], _nothing_to_stand_on(asked, missing))
        return replace(told, in_doubt=told.in_doubt.union(missing))
    more = _placed(form.draft(asked.said, name=asked.name, so_far=sketch, whole=whole), asked)
    counted = Counter(dimension.name for dimension in more.relations.dimensions)
    taken = sorted(name for name, count in counted.items() if count > 1)
    taken += [n for n, there in sketch.landings.items() if more.landings.get(n) is not there]
    if taken:
        return sketch.with_findings(_name_taken(asked, taken[0]))
    misfits = {j.place: _does_not_fit(j) for j in more.joined[len(sketch.joined) :] if not _fits(j)}
    return sketch.with_findings(*misfits.values()) if misfits else more


def _placed(sketch: Sketch, asked: Asked) -> Sketch:
    """Parts and joints that no line of their own asks for stand at the heading they come from."""
    return replace(
        sketch,
        parts=tuple(p if p.place else replace(p, place=asked.place) for p in sketch.parts),
        joined=tuple(j if j.place else replace(j, place=asked.place) for j in sketch.joined),
    )


def _fits(j: Joined, joint: type[Joint] | None = None) -> bool:
    """Whether a joint has a seat for each part that the form hands it, and a part for each."""
    roles = {role.role: role for role in (joint or type(j.joint)).seats()}
    return j.seats.keys() <= roles.keys() and all(
        role.least <= len(j.row(name)) and (role.most is None or len(j.row(name)) <= role.most)
        for name, role in roles.items()
    )


def _does_not_fit(j: Joined) -> Finding:
    joints = members(scantling.joints, base=Joint)
    fitting = [title for title, joint in joints.items() if _fits(j, joint)]
    return Finding(
        code="piece.joint-does-not-fit",
        weight=Weight.HALT,
        says=f"No {j.joint.title} can be made here ({j.name}): it joins parts of another kind.",
        cure=f"Joints for such parts: {', '.join(fitting)}.",
        place=j.place,
        parts=tuple(dict.fromkeys(j.parts)),
    )


def _nothing_to_stand_on(asked: Asked, missing: list[str]) -> Finding:
    return Finding(
        code="piece.nothing-to-stand-on",
        weight=Weight.HALT,
        says=f"The {asked.name} has no {missing[0]} to stand on.",
        cure=f"Add a section [{missing[0].replace(' ', '_')}], or take this one out.",
        place=asked.place,
    )


def _name_taken(asked: Asked, name: str) -> Finding:
    return Finding(
        code="piece.name-taken",
        weight=Weight.HALT,
        says=f"In [{asked.name}] a second thing would be called {name.rsplit('.', 1)[0]!r}.",
        cure="Give each part and opening a name of its own.",
        place=asked.place,
    )
