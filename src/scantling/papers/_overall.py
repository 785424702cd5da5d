"""How large a piece is: over everything, the case by itself, inside, and from shelf to shelf."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from scantling.exact import Fraction
from scantling.papers._names import joined
from scantling.papers._paper import Rule
from scantling.parts import Part, Way
from scantling.setting_out import SettingOut

OVER = {"front": "in front", "left": "at the left", "right": "at the right", "back": "behind"}
WIDE = Fraction(1, 2)  # [-] of the case: a level board narrower than that parts no opening
LEAST = Fraction(10)  # [mm] of height, the least that is an opening


@dataclass(frozen=True, kw_only=True)
class Opening:
    """What is clear between two level boards. [mm]"""

    low: Fraction  # from the floor
    high: Fraction
    middle: Fraction  # across the piece
    front: Fraction  # where the upper board begins

    @property
    def tall(self) -> Fraction:
        """Clear height."""
        return self.high - self.low


def box_of(part: Part) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
    """Lowest and highest corner of a part: wide, deep, tall. [mm]"""
    extent, zero = part.extent, Fraction(0)
    far = (extent.length, extent.width, extent.thickness)
    ends = [part.placement.to_piece(point) for point in ((zero, zero, zero), far)]
    return (
        tuple(min(axis) for axis in zip(*ends, strict=True)),
        tuple(max(axis) for axis in zip(*ends, strict=True)),
    )


def sizes_in_words(setting_out: SettingOut, rule: Rule) -> Iterator[str]:
    """Sizes a maker looks for first, a sentence each."""
    words, known = ("wide", "deep", "tall"), setting_out.sizes
    if setting_out.made:
        sizes = zip(setting_out.overall, words, strict=True)
        yield f"Over everything {', '.join(f'{rule.reads(s)} {w}' for s, w in sizes)}."
    case = _sized(setting_out, rule, {f"case.{word}": word for word in words})
    inside = _sized(setting_out, rule, {f"case.inside {word}": word for word in words[:2]})
    if case:
        within = f"; inside {', '.join(inside)}" if inside else ""
        yield f"The case by itself {', '.join(case)}{within}."
    over = [_over(setting_out, rule, side) for side in OVER if f"top.over {side}" in known]
    if over:
        yield f"The top stands {joined(over)}."


def _over(setting_out: SettingOut, rule: Rule, side: str) -> str:
    over = setting_out.sizes[f"top.over {side}"]
    return f"{rule.reads(over)} over {OVER[side]}" if over else f"level {OVER[side]}"


def _sized(setting_out: SettingOut, rule: Rule, names: dict[str, str]) -> list[str]:
    known = setting_out.sizes
    return [f"{rule.reads(known[name])} {word}" for name, word in names.items() if name in known]


def openings(setting_out: SettingOut) -> Iterator[Opening]:
    """What is clear from one level board to the next above; none where doors or drawers close it.

    Boards count that lie flat and reach over more than half of the case.
    """
    if any(part.moves_with for part in setting_out.made) or not setting_out.made:
        return
    floor = min(box_of(part)[0][2] for part in setting_out.made)
    wide = setting_out.overall[0]
    boxes = sorted(
        (box_of(part) for part in setting_out.made if part.placement.into.axis == Way.UP.axis),
        key=lambda box: box[0][2],
    )
    level = [(low, high) for low, high in boxes if high[0] - low[0] > WIDE * wide]
    for (first, below), (above, last) in pairwise(level):
        if above[2] - below[2] > LEAST:
            yield Opening(
                low=below[2] - floor,
                high=above[2] - floor,
                middle=(max(first[0], above[0]) + min(below[0], last[0])) / 2,
                front=above[1],
            )
