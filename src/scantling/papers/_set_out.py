"""How each size of a part is set out: how far, from which surface, with which gauge.

Each figure of a cut comes from its drawn dimensions, which a proof has rebuilt the part from; the
gauge from the work of the joint that made it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.papers._drawing.figures import from_mates, joints_of, points
from scantling.papers._mates import laid_on, pilots
from scantling.papers._paper import Rule, own_sizes
from scantling.papers._typeset import Plain
from scantling.parts import Bore, Corner, Cut, Drawn, Measure, Part, Surface, drawn
from scantling.parts.shape import others
from scantling.setting_out import SetJoint, SettingOut
from scantling.shop.operations import Operation, Reference, State
from scantling.shop.tools import Tool
from scantling.sizes.model import Kind

SIZE_WORDS = ("along the grain", "across", "into the wood")
# as the vocabulary has "cut to length", "plane to width" and "plane to thickness"
_TRUED_BY = (Tool.STORY_STICK, Tool.PIN_GAUGE, Tool.PIN_GAUGE)
_TRUED_FROM = (Surface.REFERENCE_END, Surface.FACE_EDGE, Surface.FACE_SIDE)
_NUMBERED = re.compile(r"[ ,]*\b\d+\b.*$")  # `tail 3`, `slot 2, far end`
_SLOT_END = ", near end"  # of a slot, which is cut as two holes and what lies between
_OWN_WORDS = ("long", "wide", "thick")
_FEW = 12  # distances in a row; more are told by the drawing alone


@dataclass(frozen=True, kw_only=True)
class Row:
    """One size: how far and from where, and what holds it."""

    says: str
    by: str = ""


@dataclass(frozen=True, kw_only=True)
class SetOut:
    """What one joint, or the part by itself, has set out on a part."""

    title: str
    rows: tuple[Row, ...]
    acts: tuple[str, ...] = ()  # marked without a setting: knifed, transferred

    @property
    def told(self) -> dict[str, Plain]:
        """As the template takes it."""
        return {
            "title": self.title,
            "rows": [{"says": row.says, "by": row.by} for row in self.rows],
            "acts": list(self.acts),
        }


def set_out_on(part: Part, *, setting_out: SettingOut, rule: Rule) -> tuple[SetOut, ...]:
    """Everything set out on a part: its own sizes, then what each joint or form cuts into it."""
    known = {joint.name: joint for joint in joints_of(part, setting_out=setting_out)}
    knifed = from_mates(part, setting_out=setting_out)
    owners: dict[str, list[Cut]] = {name: [] for name in known}
    for cut in part.cuts:
        owners.setdefault(cut.owner, []).append(cut)
    found = [_own(part, setting_out, rule)]
    for owner, cuts in owners.items():
        joint = known.get(owner)
        tools = _tools(joint.work if joint else (), part)
        rows = list(_rows(cuts, part, tools, rule, is_knifed=owner in knifed))
        acts = list(_acts(joint.work if joint else (), part))
        if joint is not None:
            bitten = pilots(part, joint, setting_out=setting_out, rule=rule)
            rows += [Row(says=says, by=by) for says, by in bitten]
            laid = laid_on(part, joint, setting_out=setting_out, rule=rule)
            acts += [laid] if laid and owner in knifed else []
        if rows or acts:
            found.append(SetOut(title=_title(owner, joint), rows=tuple(rows), acts=tuple(acts)))
    return tuple(found)


def _title(owner: str, joint: SetJoint | None) -> str:
    name = owner.replace(".", " ")
    return name if joint is None or joint.title in name else f"{name}, {joint.title}"


def _own(part: Part, setting_out: SettingOut, rule: Rule) -> SetOut:
    rows = []
    sizes = own_sizes(setting_out, part)
    for name, own, tool, surface in zip(_OWN_WORDS, sizes, _TRUED_BY, _TRUED_FROM, strict=True):
        by = "from the work" if own.set_out is Kind.MATE else str(tool)
        reads = rule.reads(own.value, loose=own.loose)
        rows.append(Row(says=f"{reads} {name}, from the {surface}", by=by))
    return SetOut(title="By itself", rows=tuple(rows))


def _tools(work: Iterable[Operation], part: Part) -> Mapping[str, str]:
    """What holds a dimension, by its name, where it is set for this part."""
    return {
        name: str(operation.setting.held_by)
        for operation in work
        if operation.setting is not None and part.name in operation.parts
        for name in operation.setting.dimensions
    }


def _acts(work: Iterable[Operation], part: Part) -> Iterator[str]:
    """What is marked without a setting: by which tool, from what."""
    for operation in work:
        marks = operation.state_after is State.MARKED and operation.setting is None
        if marks and part.name in operation.parts:
            origin = (
                "" if operation.reference is Reference.NONE else f", from the {operation.reference}"
            )
            note = f": {operation.note}" if operation.note else ""
            yield f"{operation.name} with the {operation.tool}{origin}{note}"


def _rows(
    cuts: Sequence[Cut], part: Part, tools: Mapping[str, str], rule: Rule, *, is_knifed: bool
) -> Iterator[Row]:
    """Rows of the cuts of one owner, like ones together."""
    groups: dict[str, list[tuple[Drawn, Cut]]] = {}
    for cut in cuts:
        groups.setdefault(_NUMBERED.sub("", cut.name), []).append((drawn(cut), cut))
    for name, alike in groups.items():
        things = len(dict.fromkeys(cut.name.partition(",")[0] for _, cut in alike))
        is_slotted = any(cut.name.endswith(_SLOT_END) for _, cut in alike)
        things = things if is_slotted else len(alike)
        count = f"{things} " if things > 1 else ""
        if is_slotted:
            found = dict.fromkeys(_slot_rows(alike, rule))
        else:
            found = dict.fromkeys(
                row for read, cut in alike for row in _box_rows(read, cut.corner, tools, rule)
            )
            found |= dict.fromkeys(_placed(alike, part, rule, is_knifed=is_knifed))
        lead = f"{count}{name}{'s' if count and not name.endswith('s') else ''}"
        for i, row in enumerate(found):
            yield Row(says=f"{lead}: {row.says}" if i == 0 else row.says, by=row.by)


def _slot_rows(alike: Sequence[tuple[Drawn, Cut]], rule: Rule) -> Iterator[Row]:
    """Slots with round ends, each cut in three: their middles, how long and how wide."""
    ends: dict[str, list[Cut]] = {}
    for _, cut in alike:
        if isinstance(cut.shape, Bore):
            ends.setdefault(cut.name.partition(",")[0], []).append(cut)
    slots = [_slot(pair) for pair in ends.values()]
    for axis in dict.fromkeys(axis for slot in slots for axis in slot.middle):
        values = sorted({slot.middle[axis] for slot in slots})
        figures = ", ".join(_plain(value, rule) for value in values)
        yield Row(says=f"middle {figures} from the {slots[0].corner.surface(axis)}")
    for slot in slots:
        long, wide = _plain(slot.long, rule), rule.reads(slot.wide).removeprefix("about ")
        yield Row(says=f"{long} long, {SIZE_WORDS[slot.axis]}; {wide} wide")


@dataclass(frozen=True, kw_only=True)
class _Slot:
    corner: Corner
    axis: int  # it runs along
    middle: Mapping[int, Fraction]  # by axis [mm]
    long: Fraction  # over its round ends [mm]
    wide: Fraction  # [mm]


def _slot(ends: Sequence[Cut]) -> _Slot:
    """A slot from the holes at its two ends."""
    first, last = (cut.shape for cut in ends)
    assert isinstance(first, Bore)  # noqa: S101 - none but holes are given
    assert isinstance(last, Bore)  # noqa: S101 - none but holes are given
    axes = others(first.axis)
    apart = {axis: abs(a - b) for axis, a, b in zip(axes, first.centre, last.centre, strict=True)}
    runs = max(apart, key=lambda axis: apart[axis])
    wide = 2 * first.radius
    middles = ((a + b) / 2 for a, b in zip(first.centre, last.centre, strict=True))
    return _Slot(
        corner=ends[0].corner,
        axis=runs,
        middle=dict(zip(axes, middles, strict=True)),
        long=apart[runs] + wide,
        wide=wide,
    )


def _box_rows(read: Drawn, corner: Corner, tools: Mapping[str, str], rule: Rule) -> Iterator[Row]:
    """Where a cut starts along each axis, and how far it goes on."""
    for axis, name in enumerate(SIZE_WORDS):
        start, size = (_measure(read, axis, end) for end in ("start", "size"))
        names = [m.dimension for m in (start, size) if m is not None]
        held = dict.fromkeys(tools[name] for name in names if name is not None and name in tools)
        begins = _plain(start.value, rule) if start is not None else ""
        goes_on = _plain(size.value, rule) if size is not None else ""
        surface = corner.surface(axis)
        if begins and goes_on:
            says = f"{begins} from the {surface}, {goes_on} {name}"
        elif begins:
            says = f"all beyond {begins} from the {surface}"
        elif goes_on:
            says = f"{goes_on} in from the {surface}"
        else:
            continue
        yield Row(says=says, by=" and ".join(held))


def _measure(read: Drawn, axis: int, end: str) -> Measure | None:
    """How far a cut starts from its surface, or goes on, along an axis; tapers run right on."""
    for found in read.measures:
        if found.axis == axis and found.word.endswith(f" {end}") and read.form != "taper":
            return found
    return None


def _placed(
    alike: Sequence[tuple[Drawn, Cut]], part: Part, rule: Rule, *, is_knifed: bool
) -> Iterator[Row]:
    """Centres of holes, and where profiles leave the wood; the diameters of holes."""
    far: dict[Surface, dict[Fraction, None]] = {}
    round_: dict[Fraction, None] = {}
    for read, cut in alike:
        round_ |= {m.value: None for m in read.measures if m.word == "diameter"}
        if is_knifed and read.form not in {"box", "bore"}:
            continue
        for axis, value, _ in points(read):
            if 0 < value < part.extent[axis]:
                far.setdefault(cut.corner.surface(axis), {})[value] = None
    for surface, values in far.items():
        if len(values) <= _FEW:
            figures = ", ".join(_plain(value, rule) for value in sorted(values))
            yield Row(says=f"{figures} from the {surface}")
    if round_:
        across = " and ".join(rule.reads(value).removeprefix("about ") for value in round_)
        yield Row(says=f"{across} across the hole")


def _plain(value: Fraction, rule: Rule) -> str:
    return rule.sets(value).removeprefix("about ")
