"""Lengths as `setting-out.json` tells them, and the rule that no other word may stand there."""

from __future__ import annotations

from typing import Annotated

from pydantic import ConfigDict, Field, with_config
from typing_extensions import TypedDict

closed = with_config(ConfigDict(extra="forbid"))  # a word that is not promised is a fault

Exact = Annotated[
    str, Field(pattern=r"^-?\d+(/[1-9]\d*)?$", description="Exact: whole, or one over another.")
]


@closed
class Length(TypedDict):
    """A length, three times: exact, as a number to draw by, and as the maker reads it."""

    mm: Annotated[Exact, Field(description="[mm] exact")]
    value_mm: Annotated[float, Field(description="[mm] nearest number, for drawing")]
    as_written: Annotated[
        str,
        Field(
            description="In the piece's measure and without a unit; begins with `about ` where "
            "the work gives it or no rule shows it exactly."
        ),
    ]
