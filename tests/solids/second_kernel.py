"""Parts cut by another geometry kernel, from plane faces built by hand.

Only slow tests import this: it needs `cadquery-ocp-novtk`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakePolygon,
    BRepBuilderAPI_MakeSolid,
    BRepBuilderAPI_Sewing,
)
from OCP.BRepGProp import BRepGProp
from OCP.BRepLib import BRepLib
from OCP.gp import gp_Pnt
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_SHELL
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS

from scantling.parts import Box, Cut, Part, Point
from scantling.parts.solid import block


def volume(part: Part) -> float:
    """Volume of the finished part by Open CASCADE. [mm3]"""

    corners = block(part).corners
    half = len(corners) // 2
    left = _solid(corners[:half], corners[half:]) if part.is_round else _solid(*_boxed(corners))
    for cut in part.cuts:
        left = BRepAlgoAPI_Cut(left, _solid(*_rings(cut, part))).Shape()
    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(left, found)
    return float(found.Mass())


def _rings(cut: Cut, part: Part) -> tuple[Sequence[Point], Sequence[Point]]:
    corners = cut.corners(extent=part.extent)
    if isinstance(cut.shape, Box):
        return _boxed(corners)
    half = len(corners) // 2
    return corners[:half], corners[half:]


def _boxed(corners: Sequence[Point]) -> tuple[Sequence[Point], Sequence[Point]]:
    a, b, c, d, e, f, g, h = corners
    return (a, b, d, c), (e, f, h, g)


def _solid(first: Sequence[Point], last: Sequence[Point]) -> Any:  # noqa: ANN401 - foreign type
    sewing = BRepBuilderAPI_Sewing(1e-7)
    ring = zip(first, [*first[1:], first[0]], last, [*last[1:], last[0]], strict=True)
    for points in (first, last, *((a, b, d, c) for a, b, c, d in ring)):
        sewing.Add(_face(points))
    sewing.Perform()
    shell = TopExp_Explorer(sewing.SewedShape(), TopAbs_SHELL).Current()
    solid = BRepBuilderAPI_MakeSolid(TopoDS.Shell(shell)).Solid()
    BRepLib.OrientClosedSolid_s(solid)
    return solid


def _face(points: Sequence[Point]) -> Any:  # noqa: ANN401 - foreign type
    outline = BRepBuilderAPI_MakePolygon()
    for point in points:
        outline.Add(gp_Pnt(*(float(value) for value in point)))
    outline.Close()
    return BRepBuilderAPI_MakeFace(outline.Wire(), True).Face()  # noqa: FBT003 - only plane
