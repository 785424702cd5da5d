"""Findings as the page reads them: with the guilty text cut out of its line."""

from __future__ import annotations

from typing import Any

from scantling.findings import Finding, Place
from scantling.web.workbench import Standing

LONGEST_LINE = 400  # [characters] shown of a line


def told(standing: Standing) -> dict[str, Any]:
    """What the page is given: the document and the findings of the moment."""
    return {
        "number": standing.number,
        "stale": standing.stale,
        "setting_out": standing.document,
        "findings": [_finding(each, standing) for each in standing.findings],
    }


def _finding(finding: Finding, standing: Standing) -> dict[str, Any]:
    return {
        "code": finding.code,
        "weight": finding.weight,
        "says": finding.says,
        "cure": finding.cure,
        "figure": finding.figure,
        "limit": finding.limit,
        "source": finding.source,
        "parts": list(finding.parts),
        "place": None if finding.place is None else _place(finding.place, standing),
    }


def _place(place: Place, standing: Standing) -> dict[str, Any]:
    before, guilty, after = _cut_out(standing.texts.get(place.file, ""), place)
    return {
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "width": place.width,
        "before": before,
        "guilty": guilty,
        "after": after,
    }


def _cut_out(text: str, place: Place) -> tuple[str, str, str]:
    lines = text.split("\n")
    if place.line > len(lines):
        return "", "", ""
    line = lines[place.line - 1].removesuffix("\r")
    begin = min(place.column - 1, len(line))
    end = min(begin + place.width, len(line))
    left = max(0, begin - LONGEST_LINE // 2)
    right = min(len(line), end + LONGEST_LINE // 2)
    end = min(end, begin + LONGEST_LINE)
    before = ("…" if left else "") + line[left:begin]
    return before, line[begin:end], line[end:right] + ("…" if right < len(line) else "")
