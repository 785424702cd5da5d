"""What stands in `setting-out.json`, format 1: one typed table for each thing it tells of.

The JSON Schema is made from these tables, so what is written and what is promised cannot part.
A word that is added keeps the format; one that changes its meaning or goes makes the next.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, TypeAdapter
from typing_extensions import TypedDict

from scantling.findings import Weight
from scantling.joints._joint import Fit, Glue, Motion
from scantling.papers._document_boards import OnBoardsTold
from scantling.papers._document_length import Exact, Length, closed
from scantling.papers._document_order import OrderTold
from scantling.papers._document_record import RecordTold
from scantling.papers._document_year import Year
from scantling.parts import Surface, Way
from scantling.shop.operations import Reference, State
from scantling.shop.tools import Tool
from scantling.sizes.model import Kind, Origin
from scantling.units import Unit

FORMAT = 1

Axis = Literal["along", "across", "into"]
AXES: tuple[Axis, Axis, Axis] = ("along", "across", "into")


@closed
class OwnLength(Length):
    """One of a part's three sizes, with how it is set out and why it is so."""

    dimension: Annotated[str | None, Field(description="Name of the solved size; null: bought.")]
    set_out: Kind
    origin: Origin
    off_tape: bool
    because: str


@closed
class Size(TypedDict):
    """A solved size."""

    name: str
    value: Length
    set_out: Kind
    origin: Origin
    off_tape: bool
    because: str


@closed
class Rough(TypedDict):
    """Size to saw out, with its allowances."""

    length: Length
    width: Length
    thickness: Length


@closed
class Overall(TypedDict):
    """Over everything made, doors and drawers shut."""

    wide: Length
    deep: Length
    tall: Length


@closed
class Piece(TypedDict):
    """The piece as a whole."""

    name: str
    file: Annotated[str, Field(description="The text file it was read from.")]
    measure: Annotated[Unit, Field(description="Unit of a bare length.")]
    finest_mm: Annotated[float, Field(description="[mm] smallest mark on the maker's rule")]
    overall: Overall


@closed
class Placement(TypedDict):
    """How a part stands: seen from the front, from the left end, the foremost face, the floor."""

    along: Annotated[Way, Field(description="Where its length runs, from the reference end.")]
    across: Annotated[Way, Field(description="Where its width runs, from the face edge.")]
    into: Annotated[Way, Field(description="Where its thickness runs, from the face side.")]
    at: Annotated[
        list[Length],
        Field(min_length=3, max_length=3, description="Its origin: wide, deep, tall."),
    ]


# `from` is no name in the language, so these tables are written as calls.
Measure = TypedDict(
    "Measure",
    {
        "word": Annotated[str, Field(description="Such as `across start` or `into size`.")],
        "axis": Axis,
        "value": Length,
        "from": Annotated[Surface | None, Field(description="null: a size, not a distance.")],
        "dimension": Annotated[str | None, Field(description="Name of the solved size, if any.")],
    },
)
closed(Measure)


@closed
class Cut(TypedDict):
    """One cut by the figures that fix it, as on a drawing. Ends that are open run out."""

    cut: str
    owner: Annotated[str, Field(description="Joint or form it comes from.")]
    form: Annotated[str, Field(pattern="^(box|profile|taper|bore)$")]
    sweep: Annotated[Axis | None, Field(description="Axis it is swept along; null: a box.")]
    corner: Annotated[
        list[Surface],
        Field(min_length=3, max_length=3, description="Surfaces the figures start from."),
    ]
    open_start: Annotated[list[bool], Field(description="Along, across, into.")]
    open_stop: Annotated[list[bool], Field(description="Along, across, into.")]
    open_sides: Annotated[list[int], Field(description="Sides of the profile in a surface.")]
    measures: list[Measure]


@closed
class GluedUp(TypedDict):
    """A blank glued from strips, from the face edge on."""

    glued_up: list[str]


@closed
class Part(TypedDict):
    """One piece of the work, finished sizes at the bench's moisture."""

    name: str
    family: Annotated[str, Field(description="Like parts share a line of the cutting list.")]
    mark: Annotated[int | None, Field(description="Number on the cutting list; null: none.")]
    wood: str
    cut: Annotated[str, Field(description="How the rings should lie: flat, rift or quarter.")]
    hardware: Annotated[bool, Field(description="Bought, not made.")]
    moves_with: Annotated[str, Field(description="What it opens or slides with; empty: fast.")]
    length: OwnLength
    width: OwnLength
    thickness: OwnLength
    rough: Annotated[Rough | None, Field(description="null: not on the cutting list.")]
    blank: Literal["board", "round"] | GluedUp
    horns: Annotated[
        list[Length],
        Field(min_length=2, max_length=2, description="Waste left beyond reference and far end."),
    ]
    shown: Annotated[list[Surface], Field(description="Surfaces seen in use.")]
    placement: Placement
    cuts: list[Cut]


@closed
class Figure(TypedDict):
    """A figure of a joint's own drawing."""

    word: str
    value: Annotated[Exact, Field(description="In `unit`; a ratio where that is no length.")]
    unit: str
    as_written: str
    dimension: str | None
    reference: str


@closed
class Contact(TypedDict):
    """A plane patch where two parts touch."""

    between: Annotated[list[str], Field(min_length=2, max_length=2)]
    zone: Annotated[str, Field(description="Such as cheek, shoulder or floor.")]
    glue: Glue
    fit: Fit
    area_mm2: Annotated[
        float, Field(description="What truly touches, other joints' cuts left out. [mm2]")
    ]
    declared_mm2: Annotated[float, Field(description="The whole patch. [mm2]")]


@closed
class Press(TypedDict):
    """Two solids that are meant to overlap."""

    between: Annotated[list[str], Field(min_length=2, max_length=2)]
    volume_mm3: Exact
    because: str


@closed
class Move(TypedDict):
    """How the parts of one role leave the others, out of the open state."""

    role: str
    motion: Motion
    way: Annotated[
        list[Exact],
        Field(
            min_length=3,
            max_length=3,
            description="Wide, deep, tall; of a turn, the direction of its axis.",
        ),
    ]
    about: Annotated[list[Length] | None, Field(description="A point on the axis of a turn.")]
    unlocked_by: str


@closed
class Fixing(TypedDict):
    """A point where two parts are held."""

    between: Annotated[list[str], Field(min_length=2, max_length=2)]
    at: Annotated[list[Length], Field(min_length=3, max_length=3, description="In the piece.")]
    holds: Annotated[list[Way], Field(description="Directions held.")]
    free: Annotated[list[Way], Field(description="Directions left free.")]
    by: Annotated[str, Field(description="Such as glue, screw, nail or pin.")]


@closed
class Gap(TypedDict):
    """Room left on purpose, and how far the year closes and opens it."""

    name: str
    at_bench: Annotated[Length, Field(description="As it is made.")]
    dampest: Annotated[Length, Field(description="What moves on it at its widest.")]
    driest: Annotated[Length, Field(description="What moves on it at its narrowest.")]
    moving: Annotated[list[str], Field(description="Parts that move on it.")]
    least: Length
    greatest: Annotated[Length | None, Field(description="null: any.")]
    because: str
    source: str


@closed
class Estimate(TypedDict):
    """What a joint holds before it gives: an estimate for clear, dry wood, never a promise."""

    what: str
    value: Annotated[float, Field(ge=0, description="In `unit`, to three figures.")]
    unit: Annotated[str, Field(description="N, N m, or N/mm for each mm of length.")]
    basis: str
    weakest: Annotated[str, Field(description="What gives first.")]


@closed
class Setting(TypedDict):
    """What a gauge, fence or stop is set to."""

    dimensions: Annotated[list[str], Field(description="Names of sizes.")]
    marks: Annotated[list[str], Field(description="What each of them marks on the wood.")]
    references: Annotated[
        list[Reference], Field(description="What each is counted from; none: a size by itself.")
    ]
    held_by: Tool


@closed
class Operation(TypedDict):
    """One thing done to parts, of the vocabulary of operations."""

    name: str
    parts: Annotated[list[str], Field(min_length=1)]
    tool: Tool
    alternatives: list[Tool]
    setting: Setting | None
    reference: Reference
    state_before: State
    state_after: State
    mate_first: Annotated[bool, Field(description="Waits until the real mate is cut.")]
    minutes_assumed: Annotated[float, Field(ge=0, description="[min] assumed, not measured")]
    note: str


@closed
class Seat(TypedDict):
    """What a joint asks for in one of its roles, and what stands there."""

    role: str
    means: Annotated[str, Field(description="From which surfaces the joint counts there.")]
    parts: list[str]


@closed
class Joint(TypedDict):
    """A joint with what it chose and answered."""

    name: str
    title: Annotated[str, Field(description="Its trade name.")]
    parts: Annotated[list[str], Field(description="By role, in the order of the roles.")]
    roles: Annotated[dict[str, list[str]], Field(description="Parts by their role in the joint.")]
    seats: list[Seat]
    choice: Annotated[dict[str, Exact], Field(description="Tool sizes [mm], counts, ratios.")]
    drawn: list[Figure]
    contacts: list[Contact]
    presses: list[Press]
    moves: list[Move]
    fixings: list[Fixing]
    gaps: list[Gap]
    holds: list[Estimate]
    work: Annotated[list[Operation], Field(description="In the order of the work.")]


@closed
class Line(TypedDict):
    """A line of the cutting list: parts of one family, wood and size."""

    mark: int
    part: str
    parts: Annotated[list[str], Field(min_length=1)]
    wood: str
    how_many: Annotated[int, Field(ge=1)]
    long: Length
    wide: Length
    thick: Length
    rough: Rough
    set_out: str
    note: str


@closed
class Place(TypedDict):
    """A stretch of text in one of the maker's files, counted from 1."""

    file: str
    line: Annotated[int, Field(ge=1)]
    column: Annotated[int, Field(ge=1)]
    width: Annotated[int, Field(ge=1)]


@closed
class Finding(TypedDict):
    """One thing the maker should know, heaviest first."""

    code: Annotated[str, Field(description="Stable.")]
    weight: Weight
    says: str
    cure: str
    figure: str
    limit: str
    source: str
    parts: list[str]
    place: Place | None


@closed
class Document(TypedDict):
    """A piece of furniture worked through: sizes, parts, joints, cutting list and findings."""

    format: Literal[1]
    kind: Literal["setting-out"]
    piece: Piece
    parts: Annotated[list[Part], Field(description="Made parts, then hardware.")]
    sizes: list[Size]
    joints: list[Joint]
    cutting_list: list[Line]
    year: Year
    boards: Annotated[OnBoardsTold | None, Field(description="Null: none were surveyed.")]
    record: RecordTold
    order: OrderTold
    findings: list[Finding]


def schema() -> dict[str, Any]:
    """The JSON Schema of the document, draft 2020-12."""
    made = _untitled(TypeAdapter(Document).json_schema())
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **made}


def _untitled(node: Any) -> Any:  # noqa: ANN401 - JSON of any shape
    """The schema without the titles that only say each name again."""
    if isinstance(node, list):
        return [_untitled(each) for each in node]
    if not isinstance(node, dict):
        return node
    # a property may itself be called title: then a table stands behind the word, not a text
    kept = {k: v for k, v in node.items() if k != "title" or not isinstance(v, str)}
    return {word: _untitled(each) for word, each in kept.items()}
