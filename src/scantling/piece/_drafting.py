"""From the text to a sketch: the forms, one after the other, in the order of the work."""

from __future__ import annotations

import scantling.piece
from scantling.piece._form import Form, Sketch
from scantling.piece._read import Piece
from scantling.roster import members


def draft(piece: Piece) -> Sketch:
    """Parts, joints and relations of everything the piece file asks for; no sizes yet.

    A section whose form finds nothing to stand on adds a finding and no part.
    """
    forms = members(scantling.piece, base=Form)
    sections = sorted(piece.sections, key=lambda section: forms[section.form].order)
    sketch = Sketch()
    for section in sections:
        form = forms[section.form]
        sketch = form.draft(section.said, name=section.name, so_far=sketch, whole=piece.whole)
    return sketch
