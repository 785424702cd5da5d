"""What `setting-out.json` tells of the year: the room, every fit, and every wide part."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field
from typing_extensions import TypedDict

from scantling.papers._document_length import Length, closed

Months = Annotated[
    list[Length], Field(min_length=12, max_length=12, description="From January to December.")
]


@closed
class Moisture(TypedDict):
    """Moisture of the wood, where it is made and where it will stand. [%]"""

    bench: float
    driest: float
    dampest: float
    months: Annotated[list[float], Field(min_length=12, max_length=12)]
    assumed: Annotated[str, Field(description="What is assumed of the months.")]


@closed
class Air(TypedDict):
    """Humidity of the air, where it is made and where it will stand. [%]"""

    bench: float
    driest: float
    dampest: float
    months: Annotated[
        list[float],
        Field(min_length=12, max_length=12, description="That keeps the wood at its moisture."),
    ]


@closed
class Fit(TypedDict):
    """A fit through the year. Like fits of like size are one."""

    what: Annotated[str, Field(description="In the maker's words.")]
    names: Annotated[list[str], Field(min_length=1, description="Of the gaps that are alike.")]
    parts: Annotated[list[str], Field(description="Parts that move on it.")]
    place: Annotated[str | None, Field(description="File, line and column.")]
    made: Annotated[Length, Field(description="As it is made, at the bench's moisture.")]
    months: Months
    in_damp: Annotated[Length, Field(description="In the dampest month.")]
    in_dry: Annotated[Length, Field(description="In the driest month.")]
    moves: Annotated[Length, Field(description="Driest to dampest; below 0: it closes.")]
    least: Annotated[Length, Field(description="Least allowed in any month.")]
    greatest: Annotated[Length | None, Field(description="Most allowed; null: any.")]
    make_least: Annotated[Length, Field(description="Least to make it today.")]
    make_most: Annotated[Length | None, Field(description="Most to make it today; null: any.")]
    holds: Annotated[bool, Field(description="Neither binds nor gapes in any month.")]
    verdict: str
    advice: Annotated[str, Field(description="What to make it today.")]
    because: str
    source: str


@closed
class WidePart(TypedDict):
    """Movement of the width of like parts."""

    mark: Annotated[int, Field(description="Number on the cutting list.")]
    part: str
    parts: Annotated[list[str], Field(min_length=1)]
    wood: str
    cut: Annotated[str, Field(description="How the rings lie: flat, rift or quarter.")]
    width: Length
    coefficient: Annotated[float, Field(description="Of its width, per 1 % of moisture.")]
    grow: Annotated[Length, Field(description="From the bench to the dampest month.")]
    shrink: Annotated[Length, Field(description="From the bench to the driest month.")]
    swing: Annotated[Length, Field(description="From the driest to the dampest month.")]
    source: str


@closed
class Year(TypedDict):
    """The piece through the year of its room."""

    moisture: Moisture
    air: Air
    driest_in: Annotated[str, Field(description="The month; February where nobody said.")]
    dampest_in: Annotated[str, Field(description="The month; August where nobody said.")]
    fits: Annotated[list[Fit], Field(description="Those that fail first, then the closest.")]
    wide_parts: Annotated[list[WidePart], Field(description="3 in (75 mm) wide and more.")]
