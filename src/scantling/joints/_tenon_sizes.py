"""Dimensions of a tenon: what fixes them, and what a shop's tools make of the rules."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Choice, Joined
from scantling.joints._tenon import Edge, grooved_edges, grooves
from scantling.shop.tools import Shop, nearest_owned, whole_depth
from scantling.sizes.linear import Linear
from scantling.sizes.model import (
    Bound,
    Dimension,
    Equation,
    Kind,
    Level,
    Relations,
    Rule,
    Sizes,
)
from scantling.units import INCH, Unit, rounded

EDGE_SHOULDER = Fraction(3)  # [mm] 3 to 6, or 1/8 in
FLOOR_GAP = Fraction(2)  # [mm] or 1/16 in
LONGEST = Fraction(2, 3)  # of the mortised part's width

_THIRD = "common practice; Elementary Course in Woodwork: a third of the thickness"
_HAUNCH = "common practice: a third of the tenon's width"
_FILLS = "Woodwork Joints, 1920: the haunch is as long as the groove is deep"
_EDGES: tuple[Edge, Edge] = ("near", "far")


def chosen(j: Joined, *, sizes: Sizes | None, shop: Shop) -> Choice:
    """Which part is thinner, the chisel nearest a third of it, small gaps by the shop's measure."""
    inch = shop.unit is Unit.INCH
    found = {
        "edge shoulder": INCH / 8 if inch else EDGE_SHOULDER,
        "floor gap": INCH / 16 if inch else FLOOR_GAP,
        "thinner": Fraction(0),
    }
    if sizes is None:
        return Choice.of(found)
    thick = [j.thickness(role).at(sizes) for role in ("receives", "enters")]
    thin = min(thick)
    found["thinner"] = Fraction(thick.index(thin))
    owned = nearest_owned(thin / 3, shop.tenon_sizes, low=thin / 4, high=thin * Fraction(2, 5))
    if owned is not None:
        found["thickness"] = owned.size
    wanted = j.width("receives").at(sizes) * LONGEST
    found["tenon"] = whole_depth(wanted, unit=shop.unit) or wanted
    if j.own("haunch") in sizes:
        third = (sizes[j.own("width")] + sizes[j.own("haunch")]) / 3
        found["haunch"] = rounded(third, to=shop.finest) or third
    return Choice.of(found)


def tenon_relations(j: Joined, *, choice: Choice, haunch_at: Edge | None) -> Relations:
    """Everything said of one tenon's sizes."""
    found = _length(j, choice) + _thickness(j, choice) + _gaps(j, choice)
    # shoulders are named before the haunch, which takes a third of what they leave
    found += _width(j, choice, haunch_at)
    return found if haunch_at is None else found + _haunch(j, haunch_at, choice)


def _length(j: Joined, choice: Choice) -> Relations:
    wide = j.width("receives")
    length = _chosen(choice, "tenon", wide * LONGEST)
    depth = j.size("mortise depth")
    return Relations(
        dimensions=(
            _dimension(j, "entry", Kind.FOLLOWS, "reach into the mortise"),
            _dimension(j, "tenon", Kind.TAPE, "length of the tenon"),
            _dimension(j, "mortise depth", Kind.FOLLOWS, "depth of the mortise"),
        ),
        equations=(
            Equation(
                sum=j.entry - j.size("tenon") + j.size("shoulder gap"),
                because="a tenon enters by its length less the gap at its shoulder",
            ),
            Equation(
                sum=depth - j.size("tenon") - j.size("floor gap"),
                because="the mortise is deeper than the tenon by the gap at its floor",
            ),
        ),
        bounds=(
            Bound(
                sum=wide - depth,
                because="a tenon and its mortise end within the wood they are in",
                place=j.place,
            ),
        ),
        rules=(_rule(j.size("tenon") - length, "two thirds of the mortised part's width"),),
    )


def _thickness(j: Joined, choice: Choice) -> Relations:
    thick, set_in = j.size("thickness"), j.size("set in")
    dimensions = (
        _dimension(j, "thickness", Kind.TOOL, "thickness of the tenon"),
        _dimension(j, "set in", Kind.TAPE, "tenon behind the face side", nothing=True),
    )
    met = grooves(j, "receives")
    if met:
        return Relations(
            dimensions=dimensions,
            equations=(
                Equation(sum=thick - met[0].size, because="the tenon is as thick as the groove"),
                Equation(sum=set_in - met[0].start, because="tenon and groove lie in one line"),
            ),
        )
    role = ("receives", "enters")[choice.count("thinner") if "thinner" in choice else 0]
    whole = j.thickness(role)
    wanted = _chosen(choice, "thickness", whole / 3)
    middle = 2 * set_in + thick - whole + 2 * j.seat(role).into
    return Relations(
        dimensions=dimensions,
        rules=(
            _rule(thick - wanted, "a third of the thinner part, by the chisel owned", _THIRD),
            _rule(middle, "in the middle of the thinner part"),
        ),
    )


def _gaps(j: Joined, choice: Choice) -> Relations:
    floor = _chosen(choice, "floor gap", FLOOR_GAP)
    return Relations(
        dimensions=(
            _dimension(j, "floor gap", Kind.TAPE, "room below the tenon", nothing=True),
            _dimension(j, "shoulder gap", Kind.TAPE, "shoulder off its mate", nothing=True),
        ),
        rules=(
            _rule(j.size("floor gap") - floor, "room for glue", level=Level.HABIT),
            _rule(j.size("shoulder gap"), "shoulders close", level=Level.HABIT),
        ),
    )


def _haunch(j: Joined, haunch_at: Edge, choice: Choice) -> Relations:
    size, length = j.size("haunch"), j.size("haunch length")
    other = "far" if haunch_at == "near" else "near"
    rules = [
        _rule(
            size - choice["haunch"]
            if "haunch" in choice
            else 3 * size - j.width("enters") + j.size(f"{other} edge shoulder"),
            "a third of the width that tenon and haunch share",
            _HAUNCH,
        )
    ]
    equations = []
    met = grooves(j, "receives")
    if met:
        because = "the haunch fills the groove"
        equations.append(Equation(sum=length - met[0].depth, because=f"{because}: {_FILLS}"))
    else:
        rules.append(_rule(length - j.size("thickness"), "a haunch as long as it is thick"))
    return Relations(
        dimensions=(
            _dimension(j, "haunch", Kind.TAPE, "width of the haunch"),
            _dimension(j, "haunch length", Kind.FOLLOWS, "length of the haunch"),
        ),
        equations=tuple(equations),
        bounds=(
            Bound(
                sum=j.size("tenon") - length,
                because="a haunch is shorter than its tenon",
                place=j.place,
            ),
        ),
        rules=tuple(rules),
    )


def _width(j: Joined, choice: Choice, haunch_at: Edge | None) -> Relations:
    usual = _chosen(choice, "edge shoulder", EDGE_SHOULDER)
    grooved = grooved_edges(j, haunch_at=haunch_at)
    equations, rules = [], []
    rest = j.width("enters") - j.size("width")
    for edge in _EDGES:
        shoulder = j.size(f"{edge} edge shoulder")
        rest -= shoulder
        if edge in grooved:
            because = "the groove takes that much of the tenon"
            equations.append(Equation(sum=shoulder - grooved[edge].depth, because=because))
        elif edge == haunch_at:
            rules.append(_rule(shoulder, "the haunch reaches the edge"))
        else:
            because = "a narrow shoulder hides the mortise's end"
            rules.append(_rule(shoulder - usual, because))
    if haunch_at is not None:
        rest -= j.size("haunch")
    because = "shoulders, haunch and tenon make the part's width"
    return Relations(
        dimensions=(
            _dimension(j, "width", Kind.FOLLOWS, "width of the tenon"),
            *(
                _dimension(j, f"{edge} edge shoulder", Kind.TAPE, f"{edge} edge", nothing=True)
                for edge in _EDGES
            ),
        ),
        equations=(Equation(sum=rest, because=because), *equations),
        rules=tuple(rules),
    )


def _chosen(choice: Choice, word: str, otherwise: Linear | Fraction) -> Linear | Fraction:
    return dict[str, Linear | Fraction](choice.values).get(word, otherwise)


def _dimension(j: Joined, word: str, kind: Kind, says: str, *, nothing: bool = False) -> Dimension:
    return Dimension(name=j.own(word), kind=kind, says=f"{says}, {j.name}", positive=not nothing)


def _rule(
    found: Linear, because: str, source: str = "common practice", *, level: Level = Level.RULE
) -> Rule:
    return Rule(sum=found, because=because, level=level, source=source)
