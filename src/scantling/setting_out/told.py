"""Findings as they are told: whole sentences, and what is said of several parts alike said once."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from scantling.findings import Finding, in_sentences

MOST_NAMED = 4  # parts in one sentence; all of them stand in the finding


def together(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings at one place that differ only in the part they name, told as one.

    Four hinges let into stiles that are all too thin are one thing to mend, not four. What
    stands at two lines of the file is mended at both, and told at both.
    """
    alike: dict[Finding, list[Finding]] = {}
    for finding in findings:
        alike.setdefault(_without_names(finding), []).append(finding)
    return tuple(in_sentences(_as_one(group)) for group in alike.values())


def _without_names(finding: Finding) -> Finding:
    """What is the same in findings that belong together."""
    before, name, behind = _parted(finding)
    says = f"{before}{behind}" if name else finding.says
    return replace(finding, says=says, parts=(), figure="", limit="")


def _parted(finding: Finding) -> tuple[str, str, str]:
    """What stands before the part that the words name, its name, and what stands behind."""
    named = [name for name in finding.parts if name in finding.says]
    longest = max(named, key=len, default="")
    if not longest or finding.says.count(longest) != 1:
        return "", "", ""
    before, name, behind = finding.says.partition(longest)
    if any(other in before or other in behind for other in named):
        return "", "", ""  # it speaks of two parts and what is between them
    return before, name, behind


def _as_one(group: Sequence[Finding]) -> Finding:
    first, *others = group
    if not others:
        return first
    before, _, behind = _parted(first)
    names = list(dict.fromkeys(name for finding in group if (name := _parted(finding)[1])))
    return replace(
        first,
        says=f"{before}{_listed(names)}{behind}" if len(names) > 1 else first.says,
        parts=tuple(dict.fromkeys(name for finding in group for name in finding.parts)),
        figure=_figures(group),
        limit=_listed(list(dict.fromkeys(f.limit for f in group if f.limit))),
    )


def _figures(group: Sequence[Finding]) -> str:
    """The figure of all, or each with the parts it belongs to."""
    of: dict[str, dict[str, None]] = {}
    for finding in group:
        if finding.figure:
            of.setdefault(finding.figure, {})[_parted(finding)[1]] = None
    if len(of) < 2:
        return "".join(of)
    return _listed(
        [
            f"{figure} ({_listed([*names])})" if all(names) else figure
            for figure, names in of.items()
        ]
    )


def _listed(names: Sequence[str]) -> str:
    if len(names) < 2:
        return "".join(names)
    if len(names) > MOST_NAMED:
        return f"{', '.join(names[: MOST_NAMED - 1])} and {len(names) - MOST_NAMED + 1} more"
    return f"{', '.join(names[:-1])} and {names[-1]}"
