"""Every drawer is carried, guided on both sides and kept from tipping."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.parts.frame import DEEP, TALL, WIDE
from scantling.parts.part import Part
from scantling.parts.pulled import Pulled, Slide
from scantling.proofs._proof import Case
from scantling.units import INCH

OTHER = INCH * 2  # [mm] wood farther off is another drawer's
CLOSE = INCH / 8  # [mm] what stands farther off neither guides nor carries; common practice
HALF = Fraction(1, 2)  # of a side's length: pulled half out, it is still held; common practice

Span = tuple[Fraction, Fraction]
Block = tuple[Span, Span, Span]  # from and to, wide, deep and tall [mm]


class DrawerRuns:
    """Proves that drawers run: each side lies on wood, along wood and under wood.

    Looks at the blocks of the parts that stay when a drawer is pulled, so a groove or a mortise
    in one of them takes nothing off it.
    """

    title: ClassVar[str] = "every drawer is carried, guided and kept from tipping"

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """One for each drawer side and each thing that it lacks."""
        blocks = {part.name: _block(part) for part in case.parts}
        fast = [blocks[p.name] for p in case.parts if not p.moves_with and not p.hardware]
        return tuple(
            finding
            for drawer in case.pulled
            for slide in drawer.slides
            for finding in _of(case, _Held(drawer, slide, blocks, fast))
        )


def _block(part: Part) -> Block:
    size = part.extent
    ends = zip(
        part.placement.at,
        part.placement.to_piece((size.length, size.width, size.thickness)),
        strict=True,
    )
    wide, deep, tall = ((min(pair), max(pair)) for pair in ends)
    return wide, deep, tall


@dataclass(frozen=True)
class _Held:
    """One side of a drawer among what stays."""

    drawer: Pulled
    slide: Slide
    blocks: Mapping[str, Block]
    fast: Sequence[Block]

    @property
    def side(self) -> Block:
        return self.blocks[self.slide.part]

    def carried(self) -> bool:
        """Whether wood lies close under it."""
        low = self.side[TALL][0]
        return self._along(b for b in self._level(WIDE) if 0 <= low - b[TALL][1] <= CLOSE)

    def guided(self) -> bool:
        """Whether wood stands close beside it."""
        return self._along(b for b in self._level(TALL) if 0 <= self._off(b) <= CLOSE)

    def kicked(self) -> bool:
        """Whether wood lies over it, no higher than the rail above the drawer."""
        top, head = self.side[TALL][1], self.blocks[self.drawer.under][TALL][0] + CLOSE
        return self._along(b for b in self._level(WIDE) if top <= b[TALL][0] <= head)

    def nearest(self) -> Fraction | None:
        """How far off the nearest wood is that runs beside it; None where there is none. [mm]"""
        beside = [b for b in self._level(TALL) if self._along([b])]
        return min((off for b in beside if (off := self._off(b)) >= 0), default=None)

    def _off(self, block: Block) -> Fraction:
        if self.slide.on_left:
            return self.side[WIDE][0] - block[WIDE][1]
        return block[WIDE][0] - self.side[WIDE][1]

    def _level(self, axis: int) -> Iterator[Block]:
        return (b for b in self.fast if _overlap(b[axis], self.side[axis]) > 0)

    def _along(self, blocks: Iterator[Block] | list[Block]) -> bool:
        """Whether these together reach along half of it; none is counted twice."""
        start, stop = self.side[DEEP]
        reached, done = Fraction(0), start
        for near, far in sorted(block[DEEP] for block in blocks):
            reached += max(Fraction(0), min(far, stop) - max(near, done))
            done = max(done, far)
        return reached >= (stop - start) * HALF


def _overlap(one: Span, other: Span) -> Fraction:
    return min(one[1], other[1]) - max(one[0], other[0])


def _how_far(case: Case, held: _Held) -> tuple[str, str]:
    """What stands beside a side but too far off, and how near it would do."""
    off = held.nearest()
    if off is None or off > OTHER:
        return "", ""
    return f"{case.said(float(off))} off", f"{case.said(float(CLOSE))} off at most"


def _of(case: Case, held: _Held) -> Iterator[Finding]:
    slide, over = held.slide, held.drawer.over
    if not held.carried():
        yield Finding(
            code="proofs.drawer-not-carried",
            weight=Weight.HALT,
            says=f"behind the {over} nothing carries the sides of the drawers",
            cure=held.drawer.not_carried.cure,
            place=held.drawer.not_carried.place,
            source="common practice",
            parts=(slide.part,),
        )
    if not held.guided():
        figure, limit = _how_far(case, held)
        yield Finding(
            code="proofs.drawer-unguided",
            weight=Weight.HALT,
            says=f"behind the {slide.behind} nothing guides the sides of the drawers",
            cure=slide.unguided.cure,
            place=slide.unguided.place,
            figure=figure,
            limit=limit,
            source="common practice",
            parts=(slide.part,),
        )
    if not held.kicked():
        yield Finding(
            code="proofs.drawer-tips",
            weight=Weight.HALT,
            says=f"behind the {slide.behind} no kicker lies over the sides of the drawers: "
            "pulled out, they tip",
            cure=slide.tips.cure,
            place=slide.tips.place,
            source="common practice",
            parts=(slide.part,),
        )
