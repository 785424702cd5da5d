"""Long parts broken: a length on which nothing happens is left out, so that the ends are large.

Interrupted views of ISO 128-3:2020 (from memory). Figures always give the true length.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

LEFT = 9.0  # [mm] on paper kept on either side of a break
GAP = 2.5  # [mm] on paper between the two break lines
LEAST = 12.0  # [mm] on paper, the least that is worth leaving out


@dataclass(frozen=True, kw_only=True)
class Run:
    """The length of a part on paper, with stretches left out."""

    scale: int
    left_out: tuple[tuple[float, float], ...] = ()  # of the part, in order [mm]

    def __call__(self, along: float) -> float:
        """Where a length of the part stands on paper. [mm]"""
        short = 0.0
        for low, high in self.left_out:
            if along <= low:
                break
            short += (min(along, high) - low) / self.scale - GAP * min(
                1.0, (along - low) / (high - low)
            )
        return along / self.scale - short

    @property
    def breaks(self) -> tuple[tuple[float, float], ...]:
        """Where both lines of each break stand. [mm]"""
        return tuple((self(low), self(high)) for low, high in self.left_out)

    def kept(self, *, low: float, high: float) -> list[tuple[float, float]]:
        """What of a stretch of the part is drawn. [mm]"""
        found = []
        start = low
        for first, last in self.left_out:
            if first >= high:
                break
            if first > start:
                found.append((start, first))
            start = max(start, last)
        if high > start:
            found.append((start, high))
        return found


def unbroken(*, scale: int) -> Run:
    """All of it."""
    return Run(scale=scale)


def broken(places: Iterable[float], *, scale: int) -> Run:
    """A run that keeps what is near those places and leaves out what is not.

    Args:
        places: Lengths of the part at which something begins or ends. [mm]
        scale: One to so many. [-]
    """
    stops: Sequence[float] = sorted(set(places))
    out = []
    for low, high in pairwise(stops):
        if (high - low) / scale - 2 * LEFT - GAP >= LEAST:
            out.append((low + LEFT * scale, high - LEFT * scale))
    return Run(scale=scale, left_out=tuple(out))
