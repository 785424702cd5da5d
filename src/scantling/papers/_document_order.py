"""What `setting-out.json` tells of the order of work: steps, gauge card, before-glue lists."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field
from typing_extensions import TypedDict

from scantling.method.before_glue import BeforeGlue
from scantling.method.gauges import Held
from scantling.method.job import Step
from scantling.papers._document_length import Length, closed
from scantling.papers._paper import Rule, rule_of
from scantling.papers._year import length_of
from scantling.setting_out import SettingOut
from scantling.shop.operations import Reference
from scantling.shop.tools import Tool


@closed
class StepTold(TypedDict):
    """One step of the order."""

    number: Annotated[int, Field(ge=1)]
    does: Annotated[str, Field(description="Word of the vocabulary of operations.")]
    parts: Annotated[list[str], Field(min_length=1)]
    owner: Annotated[str, Field(description="Part, joint, glue-up or assembly it belongs to.")]
    tool: Tool
    setting: Annotated[str | None, Field(description="Letter on the gauge card; null: none.")]
    reference: Reference
    nights: Annotated[int, Field(ge=0, description="Nights of waiting that lie behind it.")]
    minutes_assumed: Annotated[float, Field(ge=0, description="[min] assumed, not measured")]
    lies_dry: Annotated[list[str], Field(description="Parts laid in dry before it closes.")]
    note: str


@closed
class HeldFigure(TypedDict):
    """One figure that a gauge holds."""

    dimension: str
    marks: str
    value: Length


@closed
class HeldTold(TypedDict):
    """One gauge that holds a setting from one step to another."""

    setting: Annotated[str, Field(pattern="^[A-Z]+$")]
    tool: Tool
    which: Annotated[int, Field(ge=1, description="Of the gauges of that kind.")]
    figures: list[HeldFigure]
    reference: Reference
    first: Annotated[int, Field(ge=1, description="Number of the step it is set for.")]
    last: Annotated[int, Field(ge=1, description="Number of the step it may be let go after.")]
    again: Annotated[bool, Field(description="The setting had been let go before.")]


@closed
class BeforeLine(TypedDict):
    """What comes before a glue-up, and why."""

    step: Annotated[int, Field(ge=1)]
    because: str


@closed
class BeforeGlueTold(TypedDict):
    """A glue-up with everything that it shuts in."""

    label: Annotated[str, Field(description="The assembly, or its first part and how many more.")]
    step: Annotated[int, Field(ge=1, description="Number of the step that closes it.")]
    lies_dry: list[str]
    lines: list[BeforeLine]


@closed
class OrderTold(TypedDict):
    """A legal order of work. It is not proven shortest, and every minute of it is assumed."""

    steps: list[StepTold]
    gauge_card: list[HeldTold]
    before_glue: list[BeforeGlueTold]
    minutes_assumed: Annotated[float, Field(ge=0, description="[min] at the bench, no waiting")]


def order_told(setting_out: SettingOut) -> OrderTold:
    """The order of work of a piece; empty where its sizes do not hold."""
    order, rule = setting_out.order, rule_of(setting_out)
    steps = zip(order.steps, order.nights, strict=True)
    return {
        "steps": [_step(step, nights=nights) for step, nights in steps],
        "gauge_card": [_held(each, rule) for each in order.gauges],
        "before_glue": [_before(each) for each in order.before_glue],
        "minutes_assumed": _minutes(order.minutes_assumed),
    }


def _minutes(value: float) -> float:
    return float(f"{value:.3g}")


def _step(step: Step, *, nights: int) -> StepTold:
    made = step.operation
    return {
        "number": step.number,
        "does": made.name,
        "parts": list(made.parts),
        "owner": step.of,
        "tool": made.tool,
        "setting": made.setting.letter if made.setting else None,
        "reference": made.reference,
        "nights": nights,
        "minutes_assumed": _minutes(made.minutes_assumed),
        "lies_dry": list(step.holds),
        "note": made.note,
    }


def _held(each: Held, rule: Rule) -> HeldTold:
    return {
        "setting": each.letter,
        "tool": each.tool,
        "which": each.which,
        "figures": [
            {"dimension": to.dimension, "marks": to.marks, "value": length_of(value, rule)}
            for to, value in each.figures
        ],
        "reference": each.reference,
        "first": each.first,
        "last": each.last,
        "again": each.again,
    }


def _before(each: BeforeGlue) -> BeforeGlueTold:
    return {
        "label": each.name,
        "step": each.glue.number,
        "lies_dry": list(each.lies_dry),
        "lines": [{"step": step.number, "because": why} for step, why in each.lines],
    }
