"""What the pages behind the cover show: cutting list, joints, findings, cautions."""

from __future__ import annotations

import inspect
from collections.abc import Iterable, Iterator
from fractions import Fraction

from scantling.findings import Finding, Weight
from scantling.joints._joint import DrawnSize, Joint
from scantling.papers._cautions import Caution
from scantling.papers._paper import (
    OwnSize,
    Rule,
    figure_reads,
    own_sizes,
    rule_of,
)
from scantling.papers._typeset import Plain
from scantling.setting_out import Line, SetJoint, SettingOut
from scantling.shop.operations import Operation
from scantling.sizes.model import Kind
from scantling.units import INCH, Unit

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
            "rough": rule.reads(max(line.rough[2] for line in lines)),
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
    return {
        "mark": line.mark,
        "part": line.family,
        "how_many": len(line.parts),
        "long": _own(long, rule),
        "wide": _own(wide, rule),
        "thick": _own(thick, rule),
        "rough": [rule.reads(value).removeprefix("about ") for value in line.rough],
        "note": "; ".join(notes),
    }


def _own(own: OwnSize, rule: Rule) -> dict[str, Plain]:
    """A size taken apart, so that whole numbers and what follows them stand in columns."""
    text = rule.reads(own.value, loose=own.loose)
    plain = text.removeprefix("about ")
    return {"about": plain != text, **_apart(plain)}


def _apart(text: str) -> dict[str, Plain]:
    if "." in text:
        whole, places = text.split(".")
        return {"whole": whole, "rest": f".{places}"}
    whole, _, rest = text.rpartition(" ")
    if rest.isdigit():
        return {"whole": rest, "rest": ""}
    return {"whole": whole, "rest": rest}


def hardware(setting_out: SettingOut) -> list[Plain]:
    """What is bought: kind, what of, how many."""
    counts: dict[tuple[str, str], int] = {}
    for part in setting_out.parts:
        if part.hardware:
            counts[part.family, part.wood] = counts.get((part.family, part.wood), 0) + 1
    return [{"what": what, "of": of, "how_many": n} for (what, of), n in counts.items()]


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
    groups: dict[tuple[_Figures, _Settings], list[str]] = {}
    for joint in alike:
        figures = tuple(_figure(figure, rule) for figure in joint.drawn)
        settings = tuple(_settings(joint, setting_out, rule))
        groups.setdefault((figures, settings), []).append(joint.name)
    return [
        {
            "where": list(where),
            "figures": [
                {"word": word, "reads": reads, "from": _from(reference)}
                for word, reads, reference in figures
            ],
            "settings": [
                {"tool": tool, "reads": list(reads), "for": what} for tool, reads, what in settings
            ],
        }
        for (figures, settings), where in groups.items()
    ]


def _figure(figure: DrawnSize, rule: Rule) -> tuple[str, str, str]:
    return figure.word, figure_reads(figure, rule), figure.reference


def _from(reference: str) -> str:
    """`face side` is `from the face side`; what already says how stays as it is."""
    told = reference.startswith(("from ", "at ", "on ", "in ", "along ")) or not reference
    return reference if told else f"from the {reference}"


def _settings(
    joint: SetJoint, setting_out: SettingOut, rule: Rule
) -> Iterator[tuple[str, tuple[str, ...], str]]:
    """What a gauge, fence or stop is set to for the joint, each setting once."""
    work = joint.joined.joint.work(
        joint.joined, choice=joint.choice, shop=setting_out.shop, habits=setting_out.habits
    )
    seen = set()
    for operation in work:
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
    words = " and ".join(name.rpartition(".")[2] for name in names)
    return f"{words}, from the {operation.reference}" if operation.reference else words


def findings(found: Iterable[Finding]) -> list[Plain]:
    """Findings by weight, each as its sentence, its cure, its place and its source."""
    by_weight: dict[Weight, list[Plain]] = {weight: [] for weight in Weight}
    for finding in found:
        by_weight[finding.weight].append(
            {
                "says": finding.says,
                "cure": finding.cure,
                "place": "" if finding.place is None else str(finding.place),
                "figure": finding.figure,
                "limit": finding.limit,
                "source": finding.source,
            }
        )
    return [
        {"weight": _HEADS[weight][0], "lead": _HEADS[weight][1], "found": rows}
        for weight, rows in by_weight.items()
        if rows
    ]


def told(cautions: Iterable[Caution]) -> list[Plain]:
    """Cautions as the page shows them."""
    return [{"title": c.title, "says": c.says, "source": c.source} for c in cautions]
