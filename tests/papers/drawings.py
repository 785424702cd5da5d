"""What several tests of drawings look for: figures and marks that run into each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import numpy as np

from scantling.papers._drawing.line_types import Drawing, Kind, Stroke, Text
from scantling.papers._drawing.marks import segments, touches

TOUCHING = 0.05  # [mm] boxes that share no more than this lie side by side


def collisions(found: Drawing) -> Iterator[str]:
    """Two figures in one place, or a figure that any line runs through."""
    for one, other in combinations(found.texts, 2):
        if _share(one.box, other.box):
            yield f"{one.says} at {one.at} on {other.says} at {other.at}"
    if not found.texts:
        return
    edges = np.array([TOUCHING, TOUCHING, -TOUCHING, -TOUCHING])
    boxes = np.array([text.box for text in found.texts]) + edges
    for stroke in found.strokes:
        for number in np.flatnonzero(touches(segments([stroke]), boxes)):
            yield f"{found.texts[number].says} on a {stroke.kind} line at {stroke.points}"


def _share(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return all(min(one[i + 2], other[i + 2]) - max(one[i], other[i]) > TOUCHING for i in (0, 1))


def of_kind(found: Drawing, kind: Kind) -> list[Stroke]:
    """Strokes of one kind."""
    return [stroke for stroke in found.strokes if stroke.kind is kind]


def said(found: Drawing) -> list[str]:
    """All figures."""
    return [text.says for text in found.texts]


def figure(found: Drawing, says: str) -> Text:
    """The only figure that says so."""
    (text,) = [text for text in found.texts if text.says == says]
    return text
