"""No two parts are in the same place, unless one is meant to press into the other."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.proofs._proof import Case
from scantling.solids.kernel import NOISE
from scantling.solids.pairs import Overlap, overlaps

CLOSE = 1e-9  # [-] share of a declared press that floating point may leave

Pair = tuple[str, str]


class Interference:
    """Proves that finished parts overlap only where a joint says so, and by what it says.

    A press that is not there is a finding too: a screw that was to bite and does not.
    """

    title: ClassVar[str] = "interference"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each pair that overlaps by other than its declared press."""
        meant = _meant(case)
        found = {_pair(lap.between): lap for lap in overlaps(case.standing, store=case.store)}
        order = [*found, *(pair for pair in meant if pair not in found)]
        told = (
            _told(case, pair, found.get(pair), meant.get(pair, Fraction(0)))
            for pair in order
            if not _follows(pair, found)
        )
        return tuple(finding for finding in told if finding is not None)


def _follows(pair: Pair, found: Mapping[Pair, Overlap]) -> bool:
    """Whether what holds two parts clashes as they do: told of the parts, not of their pins too."""
    return any(
        other != pair and all(any(part in one for one in pair) for part in other) for other in found
    )


def _meant(case: Case) -> Mapping[Pair, Fraction]:
    total: dict[Pair, Fraction] = {}
    for press in case.presses:
        pair = _pair(press.between)
        total[pair] = total.get(pair, Fraction(0)) + press.volume
    return total


def _pair(between: Pair) -> Pair:
    return (min(between), max(between))


def _told(case: Case, pair: Pair, lap: Overlap | None, meant: Fraction) -> Finding | None:
    volume = lap.volume if lap is not None else 0.0
    if abs(volume - float(meant)) <= max(NOISE, CLOSE * float(meant)):
        return None
    if lap is not None and meant == 0:
        return _collision(case, pair, lap)
    return _wrong_press(case, pair, volume=volume, meant=meant)


def _collision(case: Case, pair: Pair, lap: Overlap) -> Finding:
    depth = case.said(lap.depth)
    return Finding(
        code="proofs.parts-overlap",
        weight=Weight.HALT,
        says=f"{pair[0]} and {pair[1]} are in the same place, {depth} deep",
        cure="Move one of them, or let one of them be cut to make room for the other.",
        place=case.place(pair),
        figure=depth,
        limit="nothing",
        parts=pair,
    )


def _wrong_press(case: Case, pair: Pair, *, volume: float, meant: Fraction) -> Finding:
    more = "more" if volume > float(meant) else "less"
    return Finding(
        code="proofs.press-differs",
        weight=Weight.HALT,
        says=f"{pair[0]} and {pair[1]} press into each other {more} than they are meant to",
        cure="Set hole, gain or slot to the size of what goes in, and measure the hardware.",
        place=case.place(pair),
        figure=f"{volume:.6g} mm³",
        limit=f"{float(meant):.6g} mm³",
        parts=pair,
    )
