"""The before-glue list, to pin up, and the gauge card behind it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from scantling.method.before_glue import BeforeGlue
from scantling.method.gauges import Held
from scantling.method.job import Step
from scantling.papers._names import spoken
from scantling.papers._paper import Rule, rule_of
from scantling.papers._typeset import Plain
from scantling.setting_out import SettingOut
from scantling.shop.operations import Reference, word

FIT = "fit joint"
AT_THE_END = (
    "fitting",
    "before glue",
)  # stages that are told whole; others where nothing is fitted
MOST_NAMED = 5


def before_glue_page(setting_out: SettingOut) -> list[Plain]:
    """Each glue-up with what must be done before it shuts things in; empty without an order."""
    steps = setting_out.order.steps
    fitted = {step.of for step in steps if step.name == FIT}
    return [_glue_up(each, fitted) for each in setting_out.order.before_glue]


def _glue_up(each: BeforeGlue, fitted: set[str]) -> Plain:
    shown = [step for step, _ in each.lines if _is_told(step, fitted)]
    grouped: dict[str, list[str]] = {}
    for step in shown:
        grouped.setdefault(step.name, []).extend(step.parts)
    return {
        "name": _listed(each.glue.parts),
        "lies_dry": _listed(each.lies_dry),
        "step": each.glue.number,
        "rows": [
            {"does": word(name).act, "parts": _listed(tuple(dict.fromkeys(parts)))}
            for name, parts in grouped.items()
        ],
    }


def _is_told(step: Step, fitted: set[str]) -> bool:
    stage = word(step.name).stage
    return stage in AT_THE_END or (stage == "joints" and step.of not in fitted)


def _listed(names: Sequence[str]) -> str:
    said = [spoken(name, [name]) for name in names]
    if len(said) <= MOST_NAMED:
        return ", ".join(said)
    return f"{', '.join(said[:MOST_NAMED])} and {len(said) - MOST_NAMED} more"


def gauge_card(setting_out: SettingOut) -> Plain:
    """Which gauge holds what, from which step to which; None without an order."""
    order = setting_out.order
    if not order.steps:
        return None
    rule = rule_of(setting_out)
    last = len(order.steps)
    return {
        "steps": last,
        "settings": order.settings,
        "set": len(order.gauges),
        "rows": [_held(each, rule, last) for each in order.gauges],
        "nights": list(_nights(setting_out)),
        "hours": round(order.minutes_assumed / 60),
    }


def _held(each: Held, rule: Rule, last: int) -> Plain:
    reference = "" if each.reference is Reference.NONE else f"from the {each.reference}"
    return {
        "letter": each.letter,
        "tool": f"{each.tool} {each.which}" if each.which > 1 else str(each.tool),
        "figures": "; ".join(f"{rule.reads(value)} {to.marks}" for to, value in each.figures),
        "from": reference,
        "first": each.first,
        "last": each.last,
        "start": (each.first - 1) / last,
        "stop": each.last / last,
        "again": each.again,
    }


def _nights(setting_out: SettingOut) -> Iterator[float]:
    """Where along the order a night of waiting lies, as a share of its steps."""
    nights = setting_out.order.nights
    for i, (before, after) in enumerate(pairwise(nights), start=1):
        if after > before:
            yield i / len(nights)
