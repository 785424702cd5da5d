"""Sizes of a panel in a grooved frame: what fixes them, and what the seasons ask.

The panel lies with its length between `below` and `above`, its width between `left` and `right`.
Across the panel is the way it moves.
"""

from __future__ import annotations

from dataclasses import replace

from scantling.errors import UnknownNameError
from scantling.exact import Fraction
from scantling.joints._joint import Bench, Beside, Choice, Gap, Joined, Joint, Seat, Strains
from scantling.parts import ALONG, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.tools import Shop, nearest_owned
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import (
    Bound,
    Dimension,
    Equation,
    Kind,
    Level,
    Relations,
    Rule,
    Sizes,
    Stated,
    Yields,
)
from scantling.units import INCH, Unit

FRAME = ("left", "right", "below", "above")

# habits of a shop that reads inches, and of one that reads millimetres [mm]
_HABITS = {
    "side gap": (INCH / 8, Fraction(3)),
    "end ease": (INCH / 32, Fraction(1)),
    "ease": (INCH / 32, Fraction(1, 2)),
    "hold": (INCH / 8, Fraction(3)),
    "play": (INCH / 32, Fraction(1, 5)),
    "past": (INCH / 16, Fraction(1)),
    "bevel": (INCH * 5 / 4, Fraction(32)),
    "step": (INCH / 16, Fraction(2)),
}
_FORUM = "a forum of a woodworking magazine, on groove depth: 3 mm each side, unverified"
_GAUGED = "common practice"


def chosen_for_panel(
    j: Joined, *, sizes: Sizes | None, shop: Shop, set_back_is_said: bool
) -> Choice:
    """Habits by the shop's measure, the groove's iron, and whether the back is rabbeted.

    The groove is as wide as an iron owned; one that is a mortise chisel too goes first, for the
    frame's tenons are as thick as the groove is wide.
    """
    by_inch = shop.unit is Unit.INCH
    found = {word: both[0] if by_inch else both[1] for word, both in _HABITS.items()}
    found["rabbet"] = Fraction(0)
    if sizes is None:
        return Choice.of(found)
    thick = j.thickness("left").at(sizes)
    low, high = thick / 4, thick * Fraction(2, 5)
    for owned in (set(shop.groove_sizes) & set(shop.tenon_sizes), shop.groove_sizes):
        nearest = nearest_owned(thick / 3, owned, low=low, high=high)
        if nearest is not None:
            found["groove"] = nearest.size
            break
    back = sizes[j.own("set back")] + j.thickness("panel").at(sizes)
    wall = sizes[j.own("set in")] + sizes[j.own("groove")]
    stands_proud = not set_back_is_said and j.thickness("panel").at(sizes) > wall
    found["rabbet"] = Fraction(int(back > wall or stands_proud))
    return Choice.of(found)


def panel_relations(j: Joined, *, choice: Choice) -> Relations:
    """Everything said of a panel's sizes and of the grooves round it, the seasons apart."""
    return _groove(j, choice) + _between(j, choice) + _edge(j, choice)


def panel_seasons(
    j: Joined, *, strains: Strains, is_pinned: bool, ease: Fraction, hold: Fraction
) -> Relations:
    """What both ends of the year ask; nothing where the panel's movement is not told.

    Args:
        j: The joint where it is.
        strains: Movement by part.
        is_pinned: Whether half the movement goes to each side.
        ease: Room wanted on each side in the dampest spell. [mm]
        hold: Reach into each groove wanted in the driest. [mm]

    References:
        Wood Handbook, FPL-GTR-190, 2010, eq. 13-2, by way of the strains.
    """
    strain = strains.get(j.seat("panel").part)
    if strain is None:
        return Relations()
    wide, gap, depth = j.width("panel"), j.size("side gap"), j.size("depth")
    worn = wide * strain.narrowest
    left_dry = depth - gap - worn / 2 if is_pinned else depth - gap * 2 - worn
    source = "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2"
    return Relations(
        bounds=(
            Bound(
                sum=gap - wide * strain.widest / 2 - ease,
                because="the panel finds room in the dampest spell",
                yields=Yields.SEASON,
                code="fielded-panel.bursts-its-frame",
                source=source,
                cure="Make the panel narrower, the grooves deeper, or take quarter-sawn wood.",
                place=j.place,
            ),
            Bound(
                sum=left_dry - hold,
                because="the panel's edges stay in their grooves in the driest spell",
                yields=Yields.SEASON,
                code="fielded-panel.drops-out",
                source=source,
                cure="Plough the grooves deeper, or pin the panel in the middle of its ends.",
                place=j.place,
            ),
        )
    )


def season_gaps(j: Joined, *, is_pinned: bool, ease: Fraction, hold: Fraction) -> tuple[Gap, Gap]:
    """Room beside a panel, and what of it stays in each groove: the year works on both.

    Args:
        j: The joint where it is.
        is_pinned: Whether half the movement goes to each side.
        ease: Room wanted on each side in the dampest spell. [mm]
        hold: Reach into each groove wanted in the driest. [mm]
    """
    panel, wide = j.seat("panel").part, j.width("panel")
    gap, depth = j.size("side gap"), j.size("depth")
    source = "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2; what is left over: common practice"
    return (
        Gap(
            name=j.own("side gap"),
            at_bench=gap,
            moving=((panel, wide / 2),),
            least=ease,
            greatest=None,
            because="the panel grows across its grain inside a frame that does not",
            source=source,
            what="room beside each panel",
            closed="the panels burst their frames",
            cure="Plane the panels narrower, or take quarter-sawn wood for them.",
        ),
        Gap(
            name=j.own("hold"),
            at_bench=depth - gap if is_pinned else depth - gap * 2,
            moving=((panel, -wide / 2 if is_pinned else -wide),),
            least=hold,
            greatest=None,
            because="the panel's edges stay in their grooves in the driest spell",
            source=source,
            what="what of each panel stays in its groove",
            closed="the panels drop out of their grooves",
            cure="Plough the grooves deeper, or pin each panel in the middle of its ends.",
        ),
    )


def _groove(j: Joined, choice: Choice) -> Relations:
    thick = j.thickness("left")
    groove, set_in = j.size("groove"), j.size("set in")
    wanted = choice["groove"] if "groove" in choice else thick / 3
    return Relations(
        dimensions=(
            _dimension(j, "groove", Kind.TOOL, "width of the groove"),
            _dimension(j, "set in", Kind.TAPE, "groove behind the frame's face"),
            _dimension(j, "depth", Kind.TAPE, "depth of the groove"),
        ),
        rules=(
            _rule(groove - wanted, "a third of the frame, by the iron owned"),
            _rule(2 * set_in + groove - thick, "the groove lies in the middle of the frame"),
            _rule(2 * j.size("depth") - 3 * groove, "half as deep again as it is wide"),
        ),
    )


def _between(j: Joined, choice: Choice) -> Relations:
    tall, wide = sight(j, 0), sight(j, 1)
    depth = j.size("depth")
    return Relations(
        dimensions=tuple(
            _dimension(j, word, kind, says, may_be_nothing=True)
            for word, kind, says in (
                ("side gap", Kind.TAPE, "room beside the panel in its groove"),
                ("end ease", Kind.FOLLOWS, "room beyond the panel's end in its groove"),
            )
        ),
        equations=(
            Equation(
                sum=j.width("panel") - wide - 2 * depth + 2 * j.size("side gap"),
                because="the panel reaches into both grooves, less its gaps",
            ),
            Equation(
                sum=j.length("panel") - tall - 2 * depth + 2 * j.size("end ease"),
                because="the panel reaches into both grooves, less its ease",
            ),
        ),
        rules=tuple(
            Rule(
                sum=j.size(word) - choice[word],
                because="usual",
                source=_FORUM if word == "side gap" else _GAUGED,
            )
            for word in ("side gap", "end ease")
        ),
    )


def _edge(j: Joined, choice: Choice) -> Relations:
    flat, edge, set_back = j.size("flat"), j.size("edge"), j.size("set back")
    wall = j.size("set in") + j.size("groove")
    if choice["rabbet"]:
        back = _rule(set_back, "the field is flush with the frame", level=Level.HABIT)
    else:
        because = "the tongue lies against the groove's back wall"
        back = _rule(set_back + j.thickness("panel") - wall, because, level=Level.HABIT)
    return Relations(
        dimensions=(
            _dimension(j, "edge", Kind.MATE, "thickness of the tongue"),
            _dimension(j, "flat", Kind.TAPE, "width of the flat tongue"),
            _dimension(j, "margin", Kind.TAPE, "from the panel's edge to its field"),
            _dimension(j, "step", Kind.TAPE, "step at the field", may_be_nothing=True),
            Dimension(
                name=j.own("set back"),
                kind=Kind.FOLLOWS,
                says=f"panel behind the frame's face, {j.name}",
                least=None,
            ),
        ),
        rules=(
            _rule(edge - j.size("groove") + choice["play"], "slides in its groove"),
            _rule(flat - j.size("depth") - choice["past"], "no wedge in the groove"),
            _rule(j.size("margin") - flat - choice["bevel"], "a usual bevel"),
            _rule(j.size("step") - choice["step"], "a usual step"),
            back,
        ),
    )


def sight(j: Joined, axis: int) -> Linear:
    """What the frame leaves open along or across the panel. [mm]

    Raises:
        UnknownNameError: The form tells of no sight size on that axis.
    """
    for beside in j.neighbours("sight", role="panel"):
        if beside.axis == axis:
            return beside.size
    raise UnknownNameError(f"{j.name}: no sight size across axis {axis} is told")


def _dimension(
    j: Joined, word: str, kind: Kind, says: str, *, may_be_nothing: bool = False
) -> Dimension:
    return Dimension(
        name=j.own(word), kind=kind, says=f"{says}, {j.name}", positive=not may_be_nothing
    )


def _rule(found: Linear, because: str, *, level: Level = Level.RULE) -> Rule:
    return Rule(sum=found, because=because, level=level, source="common practice")


def panel_bench(
    joint: Joint, *, thick: Fraction, tall: Fraction = Fraction(300), wide: Fraction = Fraction(240)
) -> Bench:
    """A panel in a frame whose rails stand bluntly between the stiles. [mm]

    Args:
        joint: With the maker's options.
        thick: Of the panel. [mm]
        tall: What the frame leaves open along the panel. [mm]
        wide: The same across it. [mm]
    """
    widths = {"left": 55, "right": 60, "below": 78, "above": 62}
    j = Joined(
        name="panel in frame",
        joint=joint,
        seats={role: (Seat(part=role),) for role in ("panel", *FRAME)},
        beside=tuple(
            Beside(
                what="sight",
                owner="",
                role="panel",
                axis=axis,
                start=ZERO,
                size=size_of(name),
                depth=ZERO,
            )
            for axis, name in ((0, "sight tall"), (1, "sight wide"))
        ),
    )
    stated = {f"{role}.width": Fraction(w) for role, w in widths.items()}
    stated |= {f"{role}.thickness": Fraction(22) for role in FRAME}
    stated |= {"panel.thickness": thick, "sight tall": tall, "sight wide": wide}
    return Bench(
        parts=_bench_parts(j),
        joined=j,
        relations=_bench_relations(),
        stated=tuple(Stated(name=name, value=value) for name, value in stated.items()),
    )


def _bench_parts(j: Joined) -> tuple[PlannedPart, ...]:
    inner, low = size_of("left.width"), size_of("below.width")
    far, high = inner + size_of("sight wide"), low + size_of("sight tall")
    panel = (
        inner - j.size("depth") + j.size("side gap"),
        j.size("set back"),
        low - j.size("depth") + j.size("end ease"),
    )
    rows = {
        "left": ((Way.UP, Way.LEFT), (inner, ZERO, ZERO)),
        "right": ((Way.UP, Way.RIGHT), (far, ZERO, ZERO)),
        "below": ((Way.RIGHT, Way.DOWN), (inner, ZERO, low)),
        "above": ((Way.RIGHT, Way.UP), (inner, ZERO, high)),
        "panel": ((Way.UP, Way.RIGHT), panel),
    }
    return tuple(
        PlannedPart(name=name, family=name, wood="white ash", ways=(*ways, Way.BACK), at=at)
        for name, (ways, at) in rows.items()
    )


def _bench_relations() -> Relations:
    tall, wide = size_of("sight tall"), size_of("sight wide")
    standing = tall + size_of("below.width") + size_of("above.width")
    lengths = {"left": standing, "right": standing, "below": wide, "above": wide}
    found = Relations(
        dimensions=tuple(Dimension(name=f"sight {w}", kind=Kind.TAPE) for w in ("tall", "wide")),
        equations=tuple(
            Equation(sum=size_of(f"{role}.length") - length, because="the frame closes")
            for role, length in lengths.items()
        ),
    )
    for name in ("panel", *FRAME):
        ways = (Way.UP, Way.RIGHT, Way.BACK)
        found += PlannedPart(name=name, family=name, wood="white ash", ways=ways).relations()
    return found


def at_edge(seat: Seat, *, axis: int, is_far: bool) -> Seat:
    """The same seat counted from that edge or end."""
    if not is_far:
        return seat
    far = seat.corner.opposite(axis)
    return replace(
        seat,
        corner=replace(seat.corner, end=far) if axis == ALONG else replace(seat.corner, edge=far),
    )
