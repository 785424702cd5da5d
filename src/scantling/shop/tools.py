"""What stands in the workshop, in sizes that are exact.

A tool has a kind (`Tool`), which is how an operation asks for it, and often a size. Sizes
that cut a joint (irons, chisels, bits) are what joints choose from: nobody ploughs a groove
of a width he has no iron for.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction
from scantling.units import INCH, Unit, written_with_unit


class Tool(StrEnum):
    """Kind of tool, by the name an operation asks for it."""

    RIP_SAW = "rip saw"
    CROSSCUT_SAW = "crosscut saw"
    TENON_SAW = "tenon saw"
    DOVETAIL_SAW = "dovetail saw"
    CARCASE_SAW = "carcase saw"
    COPING_SAW = "coping saw"
    FRAME_SAW = "frame saw"
    JACK_PLANE = "jack plane"
    JOINTER = "jointer plane"
    SMOOTHER = "smoothing plane"
    BLOCK_PLANE = "block plane"
    FILLISTER = "moving fillister"
    SHOULDER_PLANE = "shoulder plane"
    ROUTER_PLANE = "router plane"
    PLOUGH = "plough plane"
    MATCH_PLANES = "tongue and groove planes"
    DOVETAIL_PLANE = "dovetail plane"
    BEAD_PLANE = "bead plane"
    HOLLOW_AND_ROUND = "hollow and round"
    SCRAPER = "scraper"
    SHOOTING_BOARD = "shooting board"
    CHISEL = "chisel"
    MORTISE_CHISEL = "mortise chisel"
    MALLET = "mallet"
    BRACE = "brace"
    HAND_DRILL = "hand drill"
    COUNTERSINK = "countersink"
    DEPTH_STOP = "depth stop"
    AWL = "awl"
    PIN_GAUGE = "pin gauge"
    WHEEL_GAUGE = "wheel gauge"
    CUTTING_GAUGE = "cutting gauge"
    MORTISE_GAUGE = "mortise gauge"
    PANEL_GAUGE = "panel gauge"
    KNIFE = "knife"
    PENCIL = "pencil"
    SQUARE = "square"
    BEVEL = "bevel gauge"
    DIVIDERS = "dividers"
    STORY_STICK = "story stick"
    RULE = "rule"
    TAPE = "tape"
    CALLIPERS = "callipers"
    FEELERS = "feeler gauges"
    MOISTURE_METER = "moisture meter"
    WINDING_STICKS = "winding sticks"
    CLAMPS = "clamps"
    CAULS = "cauls"
    GLUE = "glue"
    HAMMER = "hammer"
    SCREWDRIVER = "screwdriver"
    BRUSH = "brush"
    RAG = "rag"
    STONES = "stones"
    SANDING_BLOCK = "sanding block"


SAWS = frozenset(
    {
        Tool.RIP_SAW,
        Tool.CROSSCUT_SAW,
        Tool.TENON_SAW,
        Tool.DOVETAIL_SAW,
        Tool.CARCASE_SAW,
        Tool.COPING_SAW,
        Tool.FRAME_SAW,
    }
)
PLANES = frozenset(
    {
        Tool.JACK_PLANE,
        Tool.JOINTER,
        Tool.SMOOTHER,
        Tool.BLOCK_PLANE,
        Tool.FILLISTER,
        Tool.SHOULDER_PLANE,
        Tool.MATCH_PLANES,
        Tool.DOVETAIL_PLANE,
        Tool.BEAD_PLANE,
        Tool.HOLLOW_AND_ROUND,
    }
)
# Owned by the sizes, counts or kinds listed for them, never by name alone.
SIZED = frozenset(
    {
        Tool.CHISEL,
        Tool.MORTISE_CHISEL,
        Tool.PLOUGH,
        Tool.ROUTER_PLANE,
        Tool.BRACE,
        Tool.HAND_DRILL,
        Tool.PIN_GAUGE,
        Tool.WHEEL_GAUGE,
        Tool.CUTTING_GAUGE,
        Tool.MORTISE_GAUGE,
        Tool.PANEL_GAUGE,
        Tool.CLAMPS,
        Tool.CAULS,
        Tool.GLUE,
    }
)
SMALL = frozenset(Tool) - SAWS - PLANES - SIZED


@dataclass(frozen=True, kw_only=True)
class Saw:
    """A saw and the wood it turns to dust."""

    tool: Tool
    length: Fraction | None = None  # of the blade [mm]
    teeth: int | None = None  # [per inch], as saws are sold
    kerf: Fraction  # [mm]
    deepest: Fraction | None = None  # widest board it resaws [mm]; None where that is not its use


@dataclass(frozen=True, kw_only=True)
class Plane:
    """A plane, with what of it matters to a joint."""

    tool: Tool
    length: Fraction | None = None  # of the sole [mm]
    width: Fraction | None = None  # widest cut at one setting [mm]
    fits: tuple[Fraction, ...] = ()  # stock thickness a pair or profile is made for [mm]


@dataclass(frozen=True, kw_only=True)
class Gauges:
    """How many settings can be held at once, by kind of gauge."""

    pin: int = 0
    wheel: int = 0
    cutting: int = 0
    mortise: int = 0
    panel: int = 0
    panel_reach: Fraction | None = None  # [mm]

    @property
    def marking(self) -> int:
        """Gauges that hold one line from a face: pin, wheel and cutting."""
        return self.pin + self.wheel + self.cutting


class ClampKind(StrEnum):
    """How a clamp takes hold."""

    BAR = "bar"
    QUICK = "quick"
    SPRING = "spring"
    BAND = "band"


@dataclass(frozen=True, kw_only=True)
class Clamp:
    """Clamps of one kind and reach."""

    kind: ClampKind
    count: int
    reach: Fraction | None = None  # [mm]; None where it has no fixed one


@dataclass(frozen=True, kw_only=True)
class Cauls:
    """Stiff battens that carry a clamp's push along a joint."""

    count: int = 0
    length: Fraction | None = None  # [mm]


@dataclass(frozen=True, kw_only=True)
class Glue:
    """A glue and the time it leaves."""

    name: str
    open_minutes: int  # from spreading to laying together
    close_minutes: int  # from the first spreading to the last clamp
    plan_minutes: int  # what the maker plans a glue-up on, never above closing
    coldest: float  # air below which it does not set soundly [°C]


@dataclass(frozen=True, kw_only=True)
class Bench:
    """Where the work is held, and the room round it."""

    length: Fraction | None = None  # [mm]
    width: Fraction | None = None  # [mm]
    vise: Fraction | None = None  # widest the face vise opens or holds [mm]
    turns: Fraction | None = None  # longest case that can be turned round lying down [mm]


@dataclass(frozen=True, kw_only=True)
class Shop:
    """One workshop. A tool that is not listed is not owned."""

    name: str
    unit: Unit
    finest: Fraction  # smallest mark on the rule [mm]
    bench: Bench
    chisels: tuple[Fraction, ...]  # bevel edge [mm]
    mortise_chisels: tuple[Fraction, ...]  # [mm]
    plough_irons: tuple[Fraction, ...]  # [mm]
    router_irons: tuple[Fraction, ...]  # [mm]
    bits: tuple[Fraction, ...]  # for the brace, diameter [mm]
    drills: tuple[Fraction, ...]  # for the hand drill, diameter [mm]
    saws: tuple[Saw, ...]
    planes: tuple[Plane, ...]
    gauges: Gauges
    clamps: tuple[Clamp, ...]
    cauls: Cauls
    glues: tuple[Glue, ...]
    small_tools: tuple[Tool, ...]  # owned, and of no size that matters
    lifts: float | None = None  # what the maker lifts alone [kg]
    figures: Unit | None = None  # that findings are told in; None: the shop's own
    bought: Unit | None = None  # sizes that screws, nails and pins are bought in; None: the same

    @property
    def sold_in(self) -> Unit:
        """The measure of what is bought for the piece, whatever the tools are marked in."""
        return self.bought or self.unit

    def reads(self, value: Fraction) -> str:
        """A length as findings tell it, with its unit. [mm]"""
        own = self.figures in {None, self.unit}
        finest = self.finest if own else None
        return written_with_unit(value, unit=self.figures or self.unit, finest=finest)

    @property
    def tenon_sizes(self) -> tuple[Fraction, ...]:
        """Thicknesses a tenon can have, narrowest first. [mm]

        A mortise is chopped with a mortise chisel of its own width; common practice.
        """
        return tuple(sorted(self.mortise_chisels))

    @property
    def groove_sizes(self) -> tuple[Fraction, ...]:
        """Widths a groove can have, narrowest first. [mm]"""
        return tuple(sorted(self.plough_irons))

    @property
    def bores(self) -> tuple[Fraction, ...]:
        """Diameters of round holes, smallest first. [mm]"""
        return tuple(sorted({*self.bits, *self.drills}))

    @cached_property
    def tools(self) -> frozenset[Tool]:
        """Every kind of tool that stands here."""
        by_size = {
            Tool.CHISEL: self.chisels,
            Tool.MORTISE_CHISEL: self.mortise_chisels,
            Tool.PLOUGH: self.plough_irons,
            Tool.ROUTER_PLANE: self.router_irons,
            Tool.BRACE: self.bits,
            Tool.HAND_DRILL: self.drills,
            Tool.PIN_GAUGE: self.gauges.pin,
            Tool.WHEEL_GAUGE: self.gauges.wheel,
            Tool.CUTTING_GAUGE: self.gauges.cutting,
            Tool.MORTISE_GAUGE: self.gauges.mortise,
            Tool.PANEL_GAUGE: self.gauges.panel,
            Tool.CLAMPS: self.clamps,
            Tool.CAULS: self.cauls.count,
            Tool.GLUE: self.glues,
        }
        sized = (tool for tool, any_of in by_size.items() if any_of)
        saws, planes = (saw.tool for saw in self.saws), (plane.tool for plane in self.planes)
        return frozenset([*sized, *saws, *planes, *self.small_tools])

    def owns(self, tool: Tool) -> bool:
        """Whether a tool of the kind stands here."""
        return tool in self.tools

    def first_owned(self, *tools: Tool) -> Tool | None:
        """First of some alternatives that stands here; None if none does."""
        return next((tool for tool in tools if tool in self.tools), None)

    def saw(self, tool: Tool) -> Saw | None:
        """The saw of a kind, with its kerf; None if none stands here."""
        return next((each for each in self.saws if each.tool is tool), None)

    def plane(self, tool: Tool) -> Plane | None:
        """The first plane of a kind; None if none stands here."""
        return next((each for each in self.planes if each.tool is tool), None)

    def clamps_reaching(self, span: Fraction) -> int:
        """How many clamps close over a span, all kinds but spring clamps. [mm]"""
        return sum(
            each.count
            for each in self.clamps
            if each.kind is not ClampKind.SPRING and each.reach is not None and each.reach >= span
        )

    def holding(self, tool: Tool) -> int:
        """How many settings a kind of gauge or fenced plane holds at the same time."""
        held = {
            Tool.PIN_GAUGE: self.gauges.pin,
            Tool.WHEEL_GAUGE: self.gauges.wheel,
            Tool.CUTTING_GAUGE: self.gauges.cutting,
            Tool.MORTISE_GAUGE: self.gauges.mortise,
            Tool.PANEL_GAUGE: self.gauges.panel,
        }
        return held.get(tool, 1 if tool in self.tools else 0)


@dataclass(frozen=True, kw_only=True)
class Choice:
    """A size taken from those owned, with what it was held against."""

    size: Fraction  # [mm]
    wanted: Fraction  # what the rule gives [mm]
    low: Fraction  # least that is sound [mm]
    high: Fraction  # most that is sound [mm]
    others: tuple[Fraction, ...]  # owned, sound too, and further off or larger [mm]

    @property
    def off(self) -> Fraction:
        """How far the size lies above what the rule gives; below 0 if under it. [mm]"""
        return self.size - self.wanted


def nearest_owned(
    wanted: Fraction, owned: Iterable[Fraction], *, low: Fraction, high: Fraction
) -> Choice | None:
    """Owned size nearest to what a rule gives, among those that are sound.

    On a tie the smaller is taken: for a tenon one third of the thickness is the upper bound
    of two sources. A size taken from a mate is never sent through here.

    Args:
        wanted: What the rule gives. [mm]
        owned: Sizes of the chisels, irons or bits. [mm]
        low: Least size that is sound, itself included. [mm]
        high: Greatest size that is sound, itself included. [mm]

    Returns:
        The choice; None if nothing owned is sound.

    Raises:
        OutOfRangeError: `low` above `high`.

    References:
        Common practice; one third of the thickness as the rule for tenons.
    """
    if low > high:
        raise OutOfRangeError(f"low {float(low):g} mm lies above high {float(high):g} mm")
    sound = sorted(
        {size for size in owned if low <= size <= high}, key=lambda size: (abs(size - wanted), size)
    )
    if not sound:
        return None
    return Choice(size=sound[0], wanted=wanted, low=low, high=high, others=tuple(sound[1:]))


def whole_depth(wanted: Fraction, *, unit: Unit) -> Fraction:
    """Depth a maker sets, never deeper than the rule gives: down to 1 mm or 1/16 in. [mm]

    References:
        Common practice.
    """
    step = INCH / 16 if unit is Unit.INCH else Fraction(1)
    return wanted // step * step
