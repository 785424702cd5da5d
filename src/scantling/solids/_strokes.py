"""Strokes on a sheet: those in one line are joined, those drawn already are left out."""

from __future__ import annotations

from collections import defaultdict

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

DIGITS = 4  # decimals of a coordinate on the sheet [mm]
GAP = 1e-3  # [mm] strokes nearer than this to each other are one
ANGLE_DIGITS = 6  # decimals of a direction that tell it from another
SPREAD = 1e-3  # [mm] lines nearer than this are one

Span = tuple[float, float]


def united(strokes: Floats, *, without: Floats) -> Floats:
    """Strokes joined where they lie in one line and touch, less what others cover.

    Args:
        strokes: n by 2 by 2, both ends of each. [mm]
        without: m by 2 by 2, strokes drawn already. [mm]

    Returns:
        k by 2 by 2, each from left to right or upwards, sorted and rounded. [mm]
    """
    lines: dict[int, list[tuple[int, Span]]] = defaultdict(list)
    both = np.concatenate([strokes, without])
    carrier, direction, spans = _carriers(both)
    for place, (line, span) in enumerate(zip(carrier.tolist(), spans.tolist(), strict=True)):
        lines[line].append((int(place >= len(strokes)), (span[0], span[1])))
    found: list[list[Floats]] = []
    for line, members in lines.items():
        mine = _merged([span for drawn, span in members if not drawn])
        gone = _merged([span for drawn, span in members if drawn])
        along, foot = direction[line]
        found.extend([foot + along * low, foot + along * high] for low, high in _less(mine, gone))
    rounded = np.round(np.array(found).reshape(-1, 2, 2), DIGITS) + 0.0
    ordered: Floats = rounded[np.lexsort(rounded.reshape(-1, 4).T[::-1])]
    return ordered


def _carriers(strokes: Floats) -> tuple[NDArray[np.int64], list[tuple[Floats, Floats]], Floats]:
    """Which line each stroke lies in, those lines, and from where to where on it. [mm]"""
    run = strokes[:, 1] - strokes[:, 0]
    along = run / np.linalg.norm(run, axis=1, keepdims=True)
    flat = np.round(along, ANGLE_DIGITS)
    back = (flat[:, 0] < 0) | ((flat[:, 0] == 0) & (flat[:, 1] < 0))
    along = np.where(back[:, None], -along, along)
    aside = along[:, 0] * strokes[:, 0, 1] - along[:, 1] * strokes[:, 0, 0]
    order = np.lexsort((aside, *np.round(along, ANGLE_DIGITS).T))
    number = np.zeros(len(strokes), dtype=np.int64)
    lines: list[tuple[Floats, Floats]] = []
    previous = -1
    for place in order.tolist():
        apart = previous < 0 or (
            np.abs(along[place] - along[previous]).max() > 10.0**-ANGLE_DIGITS
            or abs(aside[place] - aside[previous]) > SPREAD
        )
        if apart:
            normal = np.array([-along[place, 1], along[place, 0]])
            lines.append((along[place], normal * aside[place]))
        number[place] = len(lines) - 1
        previous = place
    if not len(strokes):
        return number, lines, np.zeros((0, 2))
    kept = np.array([lines[n][0] for n in number])
    return number, lines, np.sort(np.einsum("nij,nj->ni", strokes, kept), axis=1)


def _merged(spans: list[Span]) -> list[Span]:
    found: list[Span] = []
    for low, high in sorted(spans):
        if found and low <= found[-1][1] + GAP:
            found[-1] = (found[-1][0], max(found[-1][1], high))
        else:
            found.append((low, high))
    return found


def _less(spans: list[Span], gone: list[Span]) -> list[Span]:
    found = []
    for low, high in spans:
        start = low
        for first, last in gone:
            if first - start > GAP and first < high:
                found.append((start, first))
            if first < high:
                start = max(start, last)
        if high - start > GAP:
            found.append((start, high))
    return found
