"""Findings as the page reads them: with the guilty text cut out of its line."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scantling.findings import Finding, Place
from scantling.web.changes import changes
from scantling.web.edits import NotWrittenError, mark
from scantling.web.fields import Field
from scantling.web.workbench import Workbench

LONGEST_LINE = 400  # [characters] shown of a line


def told(workbench: Workbench[Any], since: str = "") -> dict[str, Any]:
    """What the page is given: the document, the findings of the moment, the file's fields.

    Args:
        workbench: What there is to show.
        since: Mark of what the page was told last, and is told the changes of; empty: nothing.
    """
    standing, edits = workbench.standing, workbench.edits
    before, now = workbench.remembered.under(since), standing.document
    known = None if before is None or now is None else changes(before, now)
    back, again = edits.last(standing.content), edits.next(standing.content)
    return {
        "number": standing.number,
        "mark": workbench.remembered.mark(standing.number),
        "stage": standing.stage,
        "piece": standing.piece,
        "stale": standing.stale,
        "setting_out": now if known is None else None,
        "changes": known and {"since": since, **known},
        "findings": [_finding(each, standing.texts) for each in standing.findings],
        "file": {
            "name": edits.path.name,
            "path": str(edits.path),
            "mark": mark(standing.content),
            "fields": [_field(each) for each in standing.fields],
            "take_back": back and back.says,
            "put_again": again and again.says,
        },
    }


def not_written(error: NotWrittenError) -> dict[str, Any]:
    """Why a field was not written, as a finding that points into what was typed."""
    place = error.finding.place
    return _finding(error.finding, {} if place is None else {place.file: error.text})


def refused(finding: Finding) -> dict[str, Any]:
    """Why something was not kept."""
    return _finding(finding, {})


def _field(field: Field) -> dict[str, Any]:
    return {
        "path": list(field.spot.path),
        "label": list(field.spot.label),
        "amount": field.amount,
        "unit": field.unit,
        "line": field.spot.place.line,
        "says": field.line[:LONGEST_LINE],
        "names": list(field.names),
    }


def _finding(finding: Finding, texts: Mapping[str, str]) -> dict[str, Any]:
    return {
        "code": finding.code,
        "weight": finding.weight,
        "says": finding.says,
        "cure": finding.cure,
        "figure": finding.figure,
        "limit": finding.limit,
        "source": finding.source,
        "parts": list(finding.parts),
        "place": None if finding.place is None else _place(finding.place, texts),
    }


def _place(place: Place, texts: Mapping[str, str]) -> dict[str, Any]:
    before, guilty, after = _cut_out(texts.get(place.file, ""), place)
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
    end = min(begin + min(place.width, LONGEST_LINE), len(line))
    left = max(0, begin - LONGEST_LINE // 2)
    right = min(len(line), end + LONGEST_LINE // 2)
    before = ("…" if left else "") + line[left:begin]
    return before, line[begin:end], line[end:right] + ("…" if right < len(line) else "")
