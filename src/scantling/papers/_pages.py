"""What the pages behind the cover show: cutting list, findings, cautions."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from math import ceil

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.papers._cautions import Caution
from scantling.papers._names import by_family, listed, spoken
from scantling.papers._paper import (
    OwnSize,
    Rule,
    own_sizes,
    rule_of,
)
from scantling.papers._typeset import Plain
from scantling.parts import Part
from scantling.setting_out import Line, SettingOut
from scantling.sizes.model import Kind
from scantling.units import FINEST_INCH, INCH, Unit

_SET_OUT = {Kind.MATE: "from the work", Kind.TOOL: "as the tool or stock gives"}
_HEADS = {
    Weight.HALT: ("Halt", "Settle these before you cut."),
    Weight.MIND: ("Mind", "It can be built. Look at these first."),
    Weight.NOTE: ("Note", "Worth knowing."),
}


def cutting_list(setting_out: SettingOut) -> list[Plain]:
    """Lines by wood and thickness, as boards are taken from the rack."""
    groups: dict[tuple[str, Fraction], list[Line]] = {}
    for line in setting_out.lines:
        groups.setdefault((line.part.wood, line.part.extent.thickness), []).append(line)
    rule = rule_of(setting_out)
    return [
        {
            "wood": wood,
            "thick": rule.reads(thick),
            "rough": _rough(max(line.rough[2] for line in lines), rule),
            "area": _area(lines, rule),
            "lines": [_line(line, setting_out, rule) for line in lines],
        }
        for (wood, thick), lines in groups.items()
    ]


def _area(lines: Iterable[Line], rule: Rule) -> str:
    total = sum((line.rough[0] * line.rough[1] * len(line.parts) for line in lines), Fraction(0))
    if rule.unit is Unit.INCH:
        return f"{float(total / (12 * INCH) ** 2):.1f} square feet"
    return f"{float(total) / 1e6:.2f} square metres"


def _line(line: Line, setting_out: SettingOut, rule: Rule) -> dict[str, Plain]:
    long, wide, thick = own_sizes(setting_out, line.part)
    notes = [line.note] if line.note else []
    for word, own in zip(("length", "width", "thickness"), (long, wide, thick), strict=True):
        notes += [f"{word} {_SET_OUT[own.set_out]}"] if own.set_out in _SET_OUT else []
    read_off = {fact.name for fact in setting_out.facts.measured}
    sizes = {
        word: _own(own, rule, measured=own.size is not None and own.size.name in read_off)
        for word, own in zip(("long", "wide", "thick"), (long, wide, thick), strict=True)
    }
    return {
        "mark": line.mark,
        "part": line.family,
        "how_many": len(line.parts),
        **sizes,
        "rough": [_rough(value, rule) for value in line.rough],
        "note": "; ".join(notes),
    }


def _rough(value: Fraction, rule: Rule) -> str:
    """A size to saw out; nobody saws closer than a 64th or a millimetre, and never short."""
    grid = Fraction(1) if rule.unit is Unit.MM else FINEST_INCH
    return rule.reads(ceil(value / grid) * grid)


def _own(own: OwnSize, rule: Rule, *, measured: bool) -> dict[str, Plain]:
    """A size taken apart, so that whole numbers and what follows them stand in columns."""
    text = rule.reads(own.value, loose=own.loose)
    plain = text.removeprefix("about ")
    about = plain != text and not measured  # what was read off the wood is as it was read
    return {"about": about, "measured": measured, **_apart(plain)}


def _apart(text: str) -> dict[str, Plain]:
    if "." in text:
        whole, places = text.split(".")
        return {"whole": whole, "rest": f".{places}"}
    whole, _, rest = text.rpartition(" ")
    if rest.isdigit():
        return {"whole": rest, "rest": ""}
    return {"whole": whole, "rest": rest}


def hardware(setting_out: SettingOut) -> list[Plain]:
    """What is bought: kind, what of, how large, how many."""
    rule = rule_of(setting_out)
    counts = Counter(
        (part.family, part.wood, _large(part, rule)) for part in setting_out.parts if part.hardware
    )
    return [
        {"what": what, "of": of, "large": large, "how_many": count}
        for (what, of, large), count in sorted(counts.items())
    ]


def _large(part: Part, rule: Rule) -> str:
    sizes = [part.extent.length, part.extent.width, part.extent.thickness]
    shown = sizes[:2] if sizes[1] == sizes[2] else sizes
    return " × ".join(rule.reads(size).removeprefix("about ") for size in shown)


def findings(setting_out: SettingOut) -> list[Plain]:
    """Findings by weight. What is found of several like parts is said once."""
    families = {part.name: part.family for part in setting_out.parts}
    by_weight: dict[Weight, dict[tuple[str, ...], list[Finding]]] = {w: {} for w in Weight}
    for finding in setting_out.findings:
        about = {name: families[name] for name in finding.parts if name in families}
        key = (finding.code, by_family(finding.says, about), finding.cure)
        behind = (finding.figure, finding.limit, finding.source)
        by_weight[finding.weight].setdefault((*key, *behind), []).append(finding)
    return [
        {
            "weight": _HEADS[weight][0],
            "lead": _HEADS[weight][1],
            "found": [_found(alike) for alike in groups.values()],
        }
        for weight, groups in by_weight.items()
        if groups
    ]


def _found(alike: Sequence[Finding]) -> dict[str, Plain]:
    first = alike[0]
    parts = dict.fromkeys(name for finding in alike for name in finding.parts)
    places = dict.fromkeys(str(f.place) for f in alike if f.place is not None)
    return {
        "says": sentence(spoken(first.says, first.parts)),
        "cure": sentence(first.cure),
        "times": len(alike),
        "parts": [listed(parts, most=len(parts))] if len(alike) > 1 else [],
        "place": "; ".join(places),
        "figure": first.figure,
        "limit": first.limit,
        "source": first.source,
    }


def sentence(text: str) -> str:
    """Text with a capital in front and a point behind, if there is any."""
    text = text.strip()
    if not text:
        return ""
    return text[0].upper() + text[1:] + ("" if text.endswith((".", "!", "?", ":")) else ".")


def told(cautions: Iterable[Caution]) -> list[Plain]:
    """Cautions as the page shows them."""
    return [{"title": c.title, "says": c.says, "source": c.source} for c in cautions]
