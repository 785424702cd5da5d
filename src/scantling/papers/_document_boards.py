"""What `setting-out.json` tells of boards: what is sawn from which, what is proven, what to buy."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field
from typing_extensions import TypedDict

from scantling.papers._document_length import Length, closed


@closed
class Blemish(TypedDict):
    """A defect with its rectangle: along from end a, across from edge a."""

    says: str
    harm: Literal["spoils", "knot", "look"]
    start: Length
    stop: Length
    near: Length
    far: Length


@closed
class SawnFrom(TypedDict):
    """A strip crosscut to one blank, or to one strip of a panel."""

    part: str
    start: Annotated[Length, Field(description="Along from end a of the board.")]
    length: Length
    near: Annotated[Length, Field(description="Across from edge a, jointed straight.")]
    width: Length


@closed
class SectionOf(TypedDict):
    """What stands between two crosscuts."""

    start: Length
    stop: Length
    sawn: list[SawnFrom]


@closed
class BoardOf(TypedDict):
    """A board of the rack."""

    name: str
    wood: str
    cut: Literal["flat", "rift", "quarter"]
    length: Length
    width_a: Length
    width_b: Length
    thickness: Length
    crook: Length
    paid: Annotated[float | None, Field(description="In the maker's money; null: not said.")]
    defects: list[Blemish]
    sections: Annotated[list[SectionOf], Field(description="None: it stays on the rack.")]


@closed
class WoodOf(TypedDict):
    """A wood laid out."""

    wood: str
    verdict: Annotated[str, Field(description="In a sentence; only what is proven is told so.")]
    boards: Annotated[list[str], Field(description="Those that are cut into.")]
    cost: float
    at_least_boards: Annotated[int, Field(description="Proven of every plan; 0: none is enough.")]
    at_least_cost: Annotated[float, Field(description="Proven of every plan.")]
    short: Annotated[list[str], Field(description="Parts without a place.")]


@closed
class ToBuy(TypedDict):
    """Boards to buy for parts that are short."""

    says: str
    cost: float
    parts: list[str]


@closed
class OnBoardsTold(TypedDict):
    """The parts of the piece laid out on the maker's boards."""

    boards: list[BoardOf]
    woods: list[WoodOf]
    short: Annotated[list[str], Field(description="Parts without a place, of all woods.")]
    to_buy: list[ToBuy]
