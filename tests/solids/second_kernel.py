"""Parts cut by another geometry kernel, from plane faces built by hand.

Only slow tests import this: it needs `cadquery-ocp-novtk`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from OCP.BRepAdaptor import BRepAdaptor_Curve
from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakePolygon,
    BRepBuilderAPI_MakeSolid,
    BRepBuilderAPI_Sewing,
)
from OCP.BRepGProp import BRepGProp
from OCP.BRepLib import BRepLib
from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
from OCP.GProp import GProp_GProps
from OCP.HLRAlgo import HLRAlgo_Projector
from OCP.HLRBRep import HLRBRep_Algo, HLRBRep_HLRToShape
from OCP.ShapeUpgrade import ShapeUpgrade_UnifySameDomain
from OCP.TopAbs import TopAbs_EDGE, TopAbs_SHELL
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS

from scantling.parts import Box, Cut, Part, Point
from scantling.parts.solid import block

Way = tuple[float, float, float]
Stroke = tuple[tuple[float, float], tuple[float, float]]


def volume(part: Part) -> float:
    """Volume of the finished part by Open CASCADE. [mm3]"""
    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(_shape(part), found)
    return float(found.Mass())


def seen(part: Part, *, eye: Way, right: Way) -> tuple[list[Stroke], list[Stroke]]:
    """Sharp edges that are visible and that are hidden, by Open CASCADE's hidden line removal.

    Args:
        part: The part, in its own coordinates.
        eye: Direction towards the eye.
        right: Direction to the right of the sheet.

    Returns:
        From and to of straight edges on the sheet. [mm]
    """
    away = HLRBRep_Algo()
    away.Add(_merged(_shape(part)))
    away.Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(*eye), gp_Dir(*right))))
    away.Update()
    away.Hide()
    found = HLRBRep_HLRToShape(away)
    return _strokes(found.VCompound()), _strokes(found.HCompound())


def _merged(shape: Any) -> Any:  # noqa: ANN401 - foreign type
    """The same with neighbours in one plane made one face, as the wood has it."""
    whole = ShapeUpgrade_UnifySameDomain(shape, True, True, False)  # noqa: FBT003 - edges, faces
    whole.Build()
    return whole.Shape()


def _strokes(compound: Any) -> list[Stroke]:  # noqa: ANN401 - foreign type
    found: list[Stroke] = []
    if compound is None or compound.IsNull():
        return found
    BRepLib.BuildCurves3d_s(compound)
    walk = TopExp_Explorer(compound, TopAbs_EDGE)
    while walk.More():
        curve = BRepAdaptor_Curve(TopoDS.Edge(walk.Current()))
        ends = (curve.Value(curve.FirstParameter()), curve.Value(curve.LastParameter()))
        found.append(((ends[0].X(), ends[0].Y()), (ends[1].X(), ends[1].Y())))
        walk.Next()
    return found


def _shape(part: Part) -> Any:  # noqa: ANN401 - foreign type
    corners = block(part).corners
    half = len(corners) // 2
    left = _solid(corners[:half], corners[half:]) if part.is_round else _solid(*_boxed(corners))
    for cut in part.cuts:
        left = BRepAlgoAPI_Cut(left, _solid(*_rings(cut, part))).Shape()
    return left


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
