"""Visible and hidden lines of parts against Open CASCADE's hidden line removal."""

from __future__ import annotations

from collections.abc import Sequence
from importlib import import_module
from types import ModuleType

import numpy as np
import pytest
import shapely
from shapely import LineString
from tests.house.tree import ROOT

from scantling.cli import worker
from scantling.parts import Bore, Cut, Part
from scantling.parts.solid import CURVED, finished
from scantling.solids.kernel import Placed
from scantling.solids.pattern import Turn
from scantling.solids.store import Store
from scantling.solids.views import Line, LineKind, View, lines

NEAR = 0.05  # [mm] two lines nearer than this are one
STEP = 1.0  # [mm] from one point looked at to the next

Stroke = tuple[tuple[float, float], tuple[float, float]]

pytestmark = pytest.mark.slow

# towards the eye, and to the right of the sheet: face side, face edge, reference end, a corner
EYES = [
    ((0.0, 0.0, -1.0), (0.0, 1.0, 0.0)),
    ((0.0, -1.0, 0.0), (0.0, 0.0, -1.0)),
    ((-1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    ((-0.6, -0.48, 0.64), (0.625, -0.78125, 0.0)),
]


@pytest.fixture(scope="module")
def theirs() -> ModuleType:
    # imported here, as the other kernel is installed for slow tests only
    return import_module("tests.solids.second_kernel")


def squared() -> list[Part]:
    """Each distinct part of the demo without holes and curves, which are polygons to us alone."""
    found, _ = worker()(ROOT / "pieces" / "glaze_cupboard" / "piece.toml")
    assert found is not None
    parts = {part.outline: part for part in found.made}
    return [p for p in parts.values() if not any(_is_round(cut) for cut in p.cuts)]


def _is_round(cut: Cut) -> bool:
    return isinstance(cut.shape, Bore) or len(getattr(cut.shape, "points", ())) > CURVED


def stretched(strokes: Sequence[Stroke]) -> shapely.Geometry:
    return shapely.union_all([LineString(stroke) for stroke in strokes])


def beyond(strokes: Sequence[Stroke], others: Sequence[Stroke]) -> float:
    """The furthest that points of the first lie off the second. [mm]"""
    far = 0.0
    cover = stretched(others)
    for stroke in strokes:
        line = LineString(stroke)
        if line.length < 2 * NEAR:
            continue
        places = np.arange(NEAR, line.length, min(STEP, line.length / 2))
        points = shapely.line_interpolate_point(line, places)
        far = max(far, float(shapely.distance(points, cover).max()))
    return far


def of(found: Sequence[Line], *kinds: LineKind) -> list[Stroke]:
    return [(line.points[0], line.points[1]) for line in found if line.kind in kinds]


@pytest.mark.parametrize(("eye", "right"), EYES)
def test_every_squared_part_of_the_cupboard_shows_the_same_lines(
    eye: tuple[float, float, float], right: tuple[float, float, float], theirs: ModuleType
) -> None:
    up = np.cross(eye, right)
    view = View(eye=eye, up=(float(up[0]), float(up[1]), float(up[2])))
    parts = squared()
    assert len(parts) > 12
    for part in parts:
        store = Store()
        stood = Placed(name=part.name, solid=finished(part, store=store), turn=Turn())
        found = lines([stood], view=view, store=store)
        visible, hidden = theirs.seen(part, eye=eye, right=right)
        ours = of(found, LineKind.OUTLINE, LineKind.EDGE)
        assert beyond(ours, visible) < NEAR, part.name
        assert beyond(visible, ours) < NEAR, part.name
        assert beyond(of(found, LineKind.HIDDEN), hidden) < NEAR, part.name
        # what is hidden right behind a visible line is drawn once, as visible
        assert beyond(hidden, [*ours, *of(found, LineKind.HIDDEN)]) < NEAR, part.name


def test_a_line_taken_for_visible_is_caught() -> None:
    square = [((0.0, 0.0), (9.0, 0.0)), ((9.0, 0.0), (9.0, 9.0))]
    assert beyond(square, square[:1]) == pytest.approx(8.05, abs=1.0)
    assert beyond(square, square) == 0
