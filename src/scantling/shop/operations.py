"""The words of the work: what is done to a part, from which surface, at which setting.

Joints and forms answer with `Operation`s; the method puts them in order. Every name stands
in `operations.csv` beside this module, with the state it finds and leaves a part in. Its
minutes are assumed, without exception: no published rates exist for hand joinery, and the
maker's own log takes their place.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cache
from importlib.resources import files
from types import MappingProxyType

from scantling.errors import OutOfRangeError, UnknownNameError
from scantling.shop.tools import Tool


class State(StrEnum):
    """How far a part has come, lowest rung first."""

    ROUGH = "rough"
    FACED = "faced"
    EDGED = "edged"
    THICKNESSED = "thicknessed"
    TO_WIDTH = "to width"
    TO_LENGTH = "to length"
    MARKED = "marked"
    CUT = "cut"
    FITTED = "fitted"
    PREFINISHED = "prefinished"
    GLUED = "glued"
    FLUSHED = "flushed"
    FINISHED = "finished"

    @property
    def rung(self) -> int:
        """Place on the ladder. The three of coming to size share one: their order is a habit."""
        return _RUNGS[self]


_SIZING = (State.THICKNESSED, State.TO_WIDTH, State.TO_LENGTH)
_RUNGS = {
    state: list(State).index(State.THICKNESSED if state in _SIZING else state) for state in State
}


class Reference(StrEnum):
    """What an operation is worked from, and what a fence or square lies against."""

    NONE = "none"
    FACE_SIDE = "face side"
    FACE_EDGE = "face edge"
    TRUE_END = "true end"
    ENDS = "ends"
    FRONT = "front"
    SHOULDER = "shoulder"
    CENTRE_LINE = "centre line"
    MATE = "mate"
    OPENING = "opening"
    STORY_STICK = "story stick"


class Per(StrEnum):
    """What the minutes of an operation grow with."""

    EACH = "each"
    METRE = "metre"
    SQUARE_METRE = "square metre"


@dataclass(frozen=True)
class SetTo:
    """One figure of a setting: which size, and what it marks on the wood."""

    dimension: str  # name of the size
    marks: str  # "bottom of the mortise"
    reference: Reference = Reference.NONE  # counted from there; none: it is a size by itself


@dataclass(frozen=True, kw_only=True)
class Setting:
    """What a gauge or fence is set to and holds until the last part is done."""

    to: tuple[SetTo, ...]  # a mortise gauge holds two
    held_by: Tool
    letter: str = ""  # given by the method, one per setting

    @property
    def dimensions(self) -> tuple[str, ...]:
        """Names of the sizes that are held."""
        return tuple(each.dimension for each in self.to)


@dataclass(frozen=True, kw_only=True)
class Word:
    """One operation of the vocabulary."""

    name: str
    stage: str
    act: str  # what the hand does
    state_before: State
    state_after: State
    reference: Reference
    setting: tuple[str, ...]  # what is set for it
    tools: tuple[Tool, ...]  # in the order they are taken up
    nights_after: int  # to wait before the next operation on the part
    minutes_each: float  # assumed [min]
    minutes_per: float  # assumed, for every unit of `per` [min]
    per: Per
    slip: str  # mistake to avoid
    source: str  # of the operation; never of its minutes

    def minutes(self, *, amount: float = 1.0) -> float:
        """Assumed time. [min]

        Args:
            amount: How much of `per`: pieces, or metres, or square metres. [per]

        Raises:
            OutOfRangeError: An amount below 0.
        """
        if amount < 0:
            raise OutOfRangeError(f"{self.name}: amount {amount:g} lies below 0")
        each = amount if self.per is Per.EACH else 1.0
        return self.minutes_each * each + self.minutes_per * amount


@dataclass(frozen=True, kw_only=True)
class Operation:
    """One thing done to one part, or to several at one setting.

    Raises:
        UnknownNameError: The name stands in no row of the vocabulary.
        OutOfRangeError: It names no part, takes a part down the ladder, or takes less than
            no time.
    """

    name: str
    parts: tuple[str, ...]
    tool: Tool
    setting: Setting | None = None
    reference: Reference
    state_before: State
    state_after: State
    mate_first: bool = False  # waits until the real mate is cut: transferred or fitted to it
    minutes_assumed: float  # [min]
    note: str = ""
    alternatives: tuple[Tool, ...] = field(default=())  # would do the same, owned or not

    def __post_init__(self) -> None:
        word(self.name)
        if not self.parts:
            raise OutOfRangeError(f"{self.name}: 0 parts named, at least 1 wanted")
        if self.state_after.rung < self.state_before.rung:
            raise OutOfRangeError(
                f"{self.name}: goes down from {self.state_before} to {self.state_after}"
            )
        if self.minutes_assumed < 0:
            raise OutOfRangeError(f"{self.name}: {self.minutes_assumed:g} min lies below 0")


def operation(
    name: str,
    *parts: str,
    tool: Tool | None = None,
    setting: Setting | None = None,
    reference: Reference | None = None,
    mate_first: bool | None = None,
    amount: float = 1.0,
    note: str = "",
    alternatives: tuple[Tool, ...] = (),
) -> Operation:
    """An operation as the vocabulary has it, on some parts.

    What is left out is taken from the vocabulary: its first tool, its reference, its states.
    An operation whose reference is the mate waits for the mate.

    Args:
        name: Name in the vocabulary.
        parts: Names of the parts it is done to.
        tool: Tool in hand; the vocabulary's first if left out.
        setting: What the gauge or fence holds.
        reference: Reference it is worked from.
        mate_first: Whether it waits for the real mate.
        amount: How much of the word's `per`, all parts together. [each, m or m²]
        note: What to look out for here.
        alternatives: Tools that would do the same.

    Raises:
        UnknownNameError: The name stands in no row of the vocabulary.
        OutOfRangeError: No part is named, or the amount is below 0.
    """
    row = word(name)
    surface = row.reference if reference is None else reference
    return Operation(
        name=name,
        parts=parts,
        tool=_tool(row, tool),
        setting=setting,
        reference=surface,
        state_before=row.state_before,
        state_after=row.state_after,
        mate_first=surface is Reference.MATE if mate_first is None else mate_first,
        minutes_assumed=row.minutes(amount=amount),
        note=note,
        alternatives=alternatives,
    )


def _tool(row: Word, tool: Tool | None) -> Tool:
    if tool is not None:
        return tool
    if not row.tools:
        raise UnknownNameError(f"{row.name} takes no tool of itself; name one")
    return row.tools[0]


def word(name: str) -> Word:
    """A row of the vocabulary.

    Raises:
        UnknownNameError: No such row.
    """
    found = vocabulary().get(name)
    if found is None:
        raise UnknownNameError(f"no operation called {name!r} in the vocabulary")
    return found


@cache
def vocabulary() -> Mapping[str, Word]:
    """Every operation the house knows, by name, in the order of the work."""
    text = files("scantling.shop").joinpath("operations.csv").read_text(encoding="utf-8")
    return MappingProxyType({row["name"]: _word(row) for row in csv.DictReader(text.splitlines())})


def _word(row: Mapping[str, str]) -> Word:
    return Word(
        name=row["name"],
        stage=row["stage"],
        act=row["act"],
        state_before=State(row["state_before"]),
        state_after=State(row["state_after"]),
        reference=Reference(row["reference"]),
        setting=_several(row["setting"]),
        tools=tuple(map(Tool, _several(row["tools"]))),
        nights_after=int(row["nights_after"]),
        minutes_each=float(row["minutes_each"]),
        minutes_per=float(row["minutes_per"]),
        per=Per(row["per"]),
        slip=row["slip"],
        source=row["source"],
    )


def _several(text: str) -> tuple[str, ...]:
    return tuple(filter(None, text.split(";")))
