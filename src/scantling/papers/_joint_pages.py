"""What the sheets of joints show: settings to pin up, and behind them every figure and load."""

from __future__ import annotations

import inspect
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from scantling.joints._joint import DrawnSize, Estimate, Joint
from scantling.papers._drawing.joint import joint_drawing
from scantling.papers._names import by_family, counted, listed
from scantling.papers._paper import Rule, by_tool, figure_reads, load_reads, rule_of
from scantling.papers._part_pages import drawn
from scantling.papers._typeset import Plain
from scantling.setting_out import SetJoint, SettingOut
from scantling.shop.operations import Operation, Reference, Setting

_MARKED = ("from ", "at ", "on ", "in ", "along ", "above ")  # a reference that says how already
SOUND = 0.2  # [-] of what a joint gives at, the most to plan for; common practice


@dataclass(frozen=True, kw_only=True)
class _Figure:
    """A figure as it is read, what it is, and from where it is measured."""

    word: str
    reads: str
    reference: str


@dataclass(frozen=True, kw_only=True)
class _Set:
    """A tool and what it is set to."""

    tool: str
    to: tuple[tuple[str, str], ...]  # figure as it is read, what it marks


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
    groups: dict[tuple[tuple[_Figure, ...], tuple[_Set, ...]], list[SetJoint]] = {}
    for joint in alike:
        figures = _figures(joint, setting_out, rule)
        settings = tuple(_settings(joint, setting_out, rule))
        groups.setdefault((figures, settings), []).append(joint)
    return [
        _group(same, figures, settings, setting_out) for (figures, settings), same in groups.items()
    ]


def _group(
    same: list[SetJoint],
    figures: tuple[_Figure, ...],
    settings: tuple[_Set, ...],
    setting_out: SettingOut,
) -> dict[str, Plain]:
    rule = rule_of(setting_out)
    names = [joint.name for joint in same]
    return {
        "where": listed(names, most=len(names)),
        "few": listed(names),
        "drawing": _enlarged(same[0], setting_out),
        "figures": [
            {"word": each.word, "reads": each.reads, "from": _from(each.reference)}
            for each in figures
        ],
        "settings": [
            {
                "tool": each.tool,
                "to": [{"reads": reads, "marks": marks} for reads, marks in each.to],
                "on": listed(_set_on(same, each, setting_out, rule)),
            }
            for each in settings
        ],
        "holds": [
            {"what": what, "reads": reads, "weakest": weakest}
            for what, reads, weakest in _holds(same, setting_out, rule)
        ],
    }


def _enlarged(joint: SetJoint, setting_out: SettingOut) -> Plain:
    found = joint_drawing(joint, setting_out=setting_out)
    return None if found is None else drawn(found)


def _figures(joint: SetJoint, setting_out: SettingOut, rule: Rule) -> tuple[_Figure, ...]:
    """Figures of a joint; what is the same of several like parts once, with all of them."""
    families = {p.name: p.family for p in setting_out.parts if p.name in joint.joined.parts}
    full = [_figure(each, rule, has_steps=by_tool(each, setting_out)) for each in joint.drawn]
    once = dict.fromkeys(
        _Figure(
            word=by_family(each.word, families),
            reads=each.reads,
            reference=by_family(each.reference, families),
        )
        for each in full
    )
    if len({each.word for each in once}) == len(once):
        return tuple(once)
    return tuple(_together(full, joint.joined.parts))


def _figure(drawn_size: DrawnSize, rule: Rule, *, has_steps: bool) -> _Figure:
    word, reads = drawn_size.word, figure_reads(drawn_size, rule, has_steps=has_steps)
    if drawn_size.unit == "count" and reads == "1":
        word = counted(1, word).removeprefix("1 ")
    return _Figure(word=word, reads=reads, reference=drawn_size.reference)


def _together(full: Iterable[_Figure], parts: Iterable[str]) -> Iterator[_Figure]:
    """Figures alike but for the part they speak of, once: `pitch from back boards 1 to 3`."""
    found: dict[tuple[str, str, str], list[str]] = {}
    names = sorted(set(parts), key=len, reverse=True)
    for each in full:
        own = next((name for name in names if name in each.word), "")
        frame = each.word.replace(own, "{}") if own else each.word
        found.setdefault((frame, each.reads, each.reference), []).append(own)
    for (frame, reads, reference), own_names in found.items():
        word = frame.replace("{}", listed(own_names, most=len(own_names)))
        yield _Figure(word=word, reads=reads, reference=reference)


def _from(reference: str) -> str:
    """`face side` is `from the face side`; what already says how stays as it is."""
    if not reference or reference.startswith(_MARKED):
        return reference
    return f"from the {reference.removeprefix('the ')}"


def _holds(
    alike: Iterable[SetJoint], setting_out: SettingOut, rule: Rule
) -> Iterator[tuple[str, str, str]]:
    """What to plan for of joints of a group, the least of them, each kind of load once."""
    families = {p.name: p.family for p in setting_out.parts}
    least: dict[str, Estimate] = {}
    for joint in alike:
        own = {name: families[name] for name in joint.joined.parts if name in families}
        for estimate in joint.holds:
            what = by_family(estimate.what, own)
            weakest = by_family(estimate.weakest, own)
            found = replace(estimate, what=what, weakest=weakest, value=estimate.value * SOUND)
            least[what] = min(least.get(what, found), found, key=lambda each: each.value)
    for what, estimate in least.items():
        yield what, load_reads(estimate, unit=rule.unit), estimate.weakest


def _settings(joint: SetJoint, setting_out: SettingOut, rule: Rule) -> Iterator[_Set]:
    """What a gauge, fence or stop is set to for the joint, each setting once."""
    families = {p.name: p.family for p in setting_out.parts if p.name in joint.joined.parts}
    found = (_set(done, setting_out, rule, families) for done in joint.work)
    yield from dict.fromkeys(each for each in found if each is not None)


def _set(
    done: Operation, setting_out: SettingOut, rule: Rule, families: Mapping[str, str]
) -> _Set | None:
    setting = done.setting
    if setting is None or not all(name in setting_out.sizes for name in setting.dimensions):
        return None
    return _Set(tool=str(setting.held_by), to=tuple(_marks(setting, setting_out, rule, families)))


def _marks(
    setting: Setting, setting_out: SettingOut, rule: Rule, families: Mapping[str, str]
) -> Iterator[tuple[str, str]]:
    for each in setting.to:
        counted_from = "" if each.reference is Reference.NONE else f" from the {each.reference}"
        marks = by_family(each.marks, families)
        yield rule.reads(setting_out.sizes[each.dimension]), f"{marks}{counted_from}"


def _set_on(
    alike: Iterable[SetJoint], wanted: _Set, setting_out: SettingOut, rule: Rule
) -> Iterator[str]:
    """Parts that the setting is used on."""
    for joint in alike:
        families = {p.name: p.family for p in setting_out.parts if p.name in joint.joined.parts}
        for done in joint.work:
            if _set(done, setting_out, rule, families) == wanted:
                yield from done.parts
