"""Findings as they are told: what is said of several places alike is said once."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from scantling.findings import Finding


def together(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings that differ only in parts and place, told as one at the first place."""
    found: dict[Finding, Finding] = {}
    for finding in findings:
        key = replace(finding, parts=(), place=None)
        known = found.get(key)
        parts = (*(known.parts if known else ()), *finding.parts)
        found[key] = replace(known or finding, parts=tuple(dict.fromkeys(parts)))
    return tuple(found.values())
