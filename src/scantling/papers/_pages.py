"""What the pages behind the cover show: cutting list, joints, findings, cautions."""

from __future__ import annotations

import inspect
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from math import ceil

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._joint import Estimate, Joint
from scantling.papers._cautions import Caution
from scantling.papers._drawing.joint import joint_drawing
from scantling.papers._paper import (
    OwnSize,
    Rule,
    figure_reads,
    load_reads,
    own_sizes,
    rule_of,
)
from scantling.papers._part_pages import drawn
from scantling.papers._typeset import Plain
from scantling.parts import Part
from scantling.setting_out import Line, SetJoint, SettingOut
from scantling.shop.operations import Operation
from scantling.sizes.model import Kind
from scantling.units import FINEST_INCH, INCH, Unit

_Figures = tuple[tuple[str, str, str], ...]  # word, amount, measured from
_Settings = tuple[tuple[str, tuple[str, ...], str], ...]  # tool, amounts, what for

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


def joints(setting_out: SettingOut) -> list[Plain]:
    """Joints by kind; those cut to the same figures stand together."""
    kinds: dict[str, list[SetJoint]] = {}
    for joint in setting_out.joints:
        kinds.setdefault(joint.title, []).append(joint)
    return [
        {
            "title": title,
            "is": _first_line(type(alike[0].joined.joint)),
            "groups": _groups(alike, setting_out),
        }
        for title, alike in kinds.items()
    ]


def _first_line(joint: type[Joint]) -> str:
    return (inspect.getdoc(joint) or "").partition("\n")[0]


def _groups(alike: Iterable[SetJoint], setting_out: SettingOut) -> list[Plain]:
    rule = rule_of(setting_out)
    groups: dict[tuple[_Figures, _Settings], list[SetJoint]] = {}
    for joint in alike:
        figures = _figures(joint, setting_out, rule)
        settings = tuple(_settings(joint, setting_out, rule))
        groups.setdefault((figures, settings), []).append(joint)
    return [
        {
            "where": [spoken(joint.name, [joint.name]) for joint in same],
            "drawing": _enlarged(same[0], setting_out),
            "figures": [
                {"word": word, "reads": reads, "from": _from(reference)}
                for word, reads, reference in figures
            ],
            "settings": [
                {"tool": tool, "reads": list(reads), "for": what} for tool, reads, what in settings
            ],
            "holds": [
                {"what": what, "reads": reads, "weakest": weakest}
                for what, reads, weakest in _holds(same, setting_out, rule)
            ],
        }
        for (figures, settings), same in groups.items()
    ]


def _enlarged(joint: SetJoint, setting_out: SettingOut) -> Plain:
    found = joint_drawing(joint, setting_out=setting_out)
    return None if found is None else drawn(found)


def _figures(joint: SetJoint, setting_out: SettingOut, rule: Rule) -> _Figures:
    """Figures of a joint; of like parts once, where they are the same for all of them."""
    full = tuple((f.word, figure_reads(f, rule), f.reference) for f in joint.drawn)
    families = {p.name: p.family for p in setting_out.parts if p.name in joint.joined.parts}
    plain = [(_by_family(w, families), r, _by_family(f, families)) for w, r, f in full]
    once = tuple(dict.fromkeys(plain))
    return once if len({word for word, _, _ in once}) == len(once) else full


def _by_family(text: str, families: Mapping[str, str]) -> str:
    """`left in left side` as `left in side`: what is true of either side is said once."""
    for name in sorted(families, key=len, reverse=True):
        text = text.replace(name, families[name])
    return text


def _from(reference: str) -> str:
    """`face side` is `from the face side`; what already says how stays as it is."""
    if not reference or reference.startswith(("from ", "at ", "on ", "in ", "along ")):
        return reference
    return f"from the {reference.removeprefix('the ')}"


def _holds(
    alike: Iterable[SetJoint], setting_out: SettingOut, rule: Rule
) -> Iterator[tuple[str, str, str]]:
    """What joints of a group hold, the least of them, each kind of load once."""
    families = {p.name: p.family for p in setting_out.parts}
    least: dict[str, Estimate] = {}
    for joint in alike:
        own = {name: families[name] for name in joint.joined.parts if name in families}
        for estimate in joint.holds:
            what = _by_family(estimate.what, own)
            weakest = _by_family(estimate.weakest, own)
            found = replace(estimate, what=what, weakest=weakest)
            least[what] = min(least.get(what, found), found, key=lambda each: each.value)
    for what, estimate in least.items():
        yield what, load_reads(estimate, unit=rule.unit), estimate.weakest


def _settings(
    joint: SetJoint, setting_out: SettingOut, rule: Rule
) -> Iterator[tuple[str, tuple[str, ...], str]]:
    """What a gauge, fence or stop is set to for the joint, each setting once."""
    seen = set()
    for operation in joint.work:
        setting = operation.setting
        if setting is None or not all(name in setting_out.sizes for name in setting.dimensions):
            continue
        reads = tuple(rule.reads(setting_out.sizes[name]) for name in setting.dimensions)
        found = (str(setting.held_by), reads, _what(operation))
        if found not in seen:
            seen.add(found)
            yield found


def _what(operation: Operation) -> str:
    names = operation.setting.dimensions if operation.setting else ()
    *most, last = [name.rpartition(".")[2] for name in names] or [""]
    words = f"{', '.join(most)} and {last}" if most else last
    return f"{words}, from the {operation.reference}" if operation.reference else words


def findings(setting_out: SettingOut) -> list[Plain]:
    """Findings by weight. What is found of several like parts is said once."""
    families = {part.name: part.family for part in setting_out.parts}
    by_weight: dict[Weight, dict[tuple[str, ...], list[Finding]]] = {w: {} for w in Weight}
    for finding in setting_out.findings:
        about = {name: families[name] for name in finding.parts if name in families}
        key = (finding.code, _by_family(finding.says, about), finding.cure)
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
        "parts": [spoken(name, [name]) for name in parts] if len(alike) > 1 else [],
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


def spoken(text: str, names: Iterable[str]) -> str:
    """Text with names as they are said: `left door.top rail` is the left door top rail."""
    for name in sorted(names, key=len, reverse=True):
        text = text.replace(name, name.replace(".", " "))
    return text


def told(cautions: Iterable[Caution]) -> list[Plain]:
    """Cautions as the page shows them."""
    return [{"title": c.title, "says": c.says, "source": c.source} for c in cautions]
