"""Findings about sizes, in the words of the shop."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.sizes.answer import Breach, Clash, Conflict
from scantling.sizes.model import Bound, Dimension, Size, Stated
from scantling.sizes.rows import floor_of
from scantling.units import INCH, Unit, written_with_unit

LONGEST = 6  # lines of a conflict that are named one by one
# [mm] Less is not told to be missing: common practice, a thin shaving. No maker sees it, and no
# figure of how far wood moves is as sure.
SHAVING = Fraction(1, 10)


def _parts(conflict: Conflict) -> tuple[str, ...]:
    return tuple(dict.fromkeys(line.name.rpartition(".")[0] for line in conflict.lines))


def _off(conflict: Conflict) -> Fraction:
    """How far the line that is given up is from what the others leave it. [mm]"""
    lost = conflict.lines[-1]
    return abs(lost.value - (lost.value if lost.would_be is None else lost.would_be))


@dataclass(frozen=True, kw_only=True)
class Words:
    """How sizes are called and written for one piece."""

    dimensions: Mapping[str, Dimension]
    grid: Fraction  # [mm]
    shown: Unit | None = None  # None: as the graduation has it

    @property
    def unit(self) -> Unit:
        """Inches where the graduation halves the inch, unless another is to be shown."""
        if self.shown is not None:
            return self.shown
        marks = INCH / self.grid
        return Unit.INCH if marks.denominator == 1 and marks.numerator % 10 else Unit.MM

    def length(self, value: Fraction) -> str:
        """A length as the maker writes it."""
        return written_with_unit(value, unit=self.unit, finest=min(self.grid, INCH / 64))

    def name(self, name: str) -> str:
        """What a dimension is called."""
        return self.dimensions[name].says or name

    def conflicts(self, found: Iterable[Conflict]) -> list[Finding]:
        """One finding for each line of the file that cannot hold.

        A line may say as much of several sizes; it is told by the one that it is furthest off.
        """
        of_one_line: dict[object, list[Conflict]] = {}
        for i, conflict in enumerate(found):
            said = conflict.lines[-1].said
            of_one_line.setdefault(i if said is None else said.place or i, []).append(conflict)
        return [
            replace(
                self.conflict(max(some, key=_off)),
                parts=tuple(dict.fromkeys(part for one in some for part in _parts(one))),
            )
            for some in of_one_line.values()
        ]

    def conflict(self, conflict: Conflict) -> Finding:
        """Lines that do not go together, or a stated size that came out otherwise."""
        wanted = [line for line in conflict.lines if isinstance(line.said, Stated)]
        made = [line for line in conflict.lines if not isinstance(line.said, Stated)]
        lost = conflict.lines[-1]
        if made and wanted == [lost] and lost.would_be is not None:
            return self._came_out(lost, made)
        return Finding(
            code="sizes.conflict",
            weight=Weight.HALT,
            says=self._do_not_agree(conflict),
            cure=self._either(conflict),
            place=next((line.said.place for line in (lost, *wanted) if line.said), None),
            figure=self.length(lost.value),
            limit=""
            if lost.would_be is None
            else self.length(self._on_a_mark(conflict, lost, lost.would_be)),
            parts=_parts(conflict),
        )

    def _do_not_agree(self, conflict: Conflict) -> str:
        lost = conflict.lines[-1]
        others = conflict.lines[:-1]
        why = f" ({'; '.join(conflict.because[:3])})" if conflict.because else ""
        if lost.would_be is None:
            return f"{self.name(lost.name)} cannot be {self.length(lost.value)}{why}."
        left, wanted = self._left(conflict, lost.would_be), self.length(lost.value)
        if not others:
            return f"{self.name(lost.name)} follows as {left}, not {wanted}{why}."
        given = self.listed([f"{self.name(o.name)} {self.length(o.value)}" for o in others])
        verb = "leaves" if len(others) == 1 else "leave"
        smallest = " No fewer lines clash." if conflict.smallest and len(others) > 1 else ""
        return (
            f"{self.name(lost.name)} cannot be {wanted}: {given} {verb} it {left}{why}.{smallest}"
        )

    def _left(self, conflict: Conflict, would_be: Fraction) -> str:
        """What the others leave the last line; where a bound is in the way, and no more or less."""
        lost = conflict.lines[-1]
        left = self.length(self._on_a_mark(conflict, lost, would_be))
        if not conflict.bounded:
            return left
        return f"{'at most' if would_be < lost.value else 'at least'} {left}"

    def _either(self, conflict: Conflict) -> str:
        *others, lost = conflict.lines
        ways = [
            f"{self.name(line.name)} {self.length(value)}{self._where(line)}"
            for line in (lost, *others)
            if isinstance(line.said, Stated)
            and (value := self._that_works(conflict, line)) is not None
        ]
        if not ways:
            return "Leave one of these lines out."
        return f"Leave one of these lines out, or make it {self.listed(ways, last='or')}."

    def _that_works(self, conflict: Conflict, line: Clash) -> Fraction | None:
        """What a line can be set to while the others stand; up to a bound the next mark. [mm]"""
        least = floor_of(self.dimensions[line.name], above=True)
        if line.would_be is None:
            return None
        value = self._on_a_mark(conflict, line, line.would_be)
        return value if least is None or value >= -least.sum.constant else None

    def _on_a_mark(self, conflict: Conflict, line: Clash, would_be: Fraction) -> Fraction:
        """Short of a bound there is room up to a mark; what follows is what it is. [mm]"""
        if not conflict.bounded:
            return would_be
        marks = would_be / self.grid
        return self.grid * (floor(marks) if would_be < line.value else ceil(marks))

    def _where(self, line: Clash) -> str:
        return f" ({line.said.place})" if line.said is not None and line.said.place else ""

    def listed(self, texts: Sequence[str], *, last: str = "and") -> str:
        """Texts in a row, the last behind `last`; of many only the first few."""
        if len(texts) > LONGEST:
            texts = [*texts[:LONGEST], f"{len(texts) - LONGEST} more"]
        if len(texts) == 1:
            return texts[0]
        return f"{', '.join(texts[:-1])} {last} {texts[-1]}"

    def _came_out(self, lost: Clash, made: Sequence[Clash]) -> Finding:
        came_out = self.length(lost.value if lost.would_be is None else lost.would_be)
        facts = self.listed([f"{self.name(m.name)} {self.length(m.value)}" for m in made])
        return Finding(
            code="sizes.came-out",
            weight=Weight.MIND,
            says=f"{self.name(lost.name)} came out {came_out}, not"
            f" {self.length(lost.value)}: {facts} as made.",
            cure=f"Write {came_out}, or make a part anew.",
            place=lost.said.place if lost.said else None,
            figure=came_out,
            limit=self.length(lost.value),
        )

    def impossible(self, bound: Bound, value: Fraction) -> Finding:
        """A physical bound that no answer keeps."""
        return Finding(
            code=bound.code or "sizes.impossible",
            weight=Weight.HALT,
            says=f"It cannot be made: {bound.because}; {self.length(-value)} is missing.",
            cure=bound.cure or "Change an option of the form or joint.",
            place=bound.place,
            figure=self.length(value),
            limit=self.length(Fraction(0)),
            source=bound.source,
        )

    def never_closes(self, sentences: Sequence[str], gap: Fraction) -> Finding:
        """Equations that contradict each other whatever is stated."""
        return Finding(
            code="sizes.never-closes",
            weight=Weight.HALT,
            says=f"These do not go together by {self.length(abs(gap))}: {'; '.join(sentences)}.",
            cure="Change an option that one of them comes from.",
            figure=self.length(abs(gap)),
        )

    def breaches(self, found: Iterable[Breach]) -> list[Finding]:
        """Season and proportion bounds that are broken by as much as a maker can see."""
        return [self.breach(breach) for breach in found if breach.short >= SHAVING]

    def breach(self, breach: Breach) -> Finding:
        """A season or proportion bound that could not be kept."""
        bound = breach.bound
        return Finding(
            code=bound.code or "sizes.bound",
            weight=Weight.MIND,
            says=f"{bound.because}: {self.length(breach.short)} is missing.",
            cure=bound.cure or "Give it more room, or state less of the sizes around it.",
            place=bound.place,
            figure=self.length(breach.short),
            source=bound.source,
            parts=tuple(dict.fromkeys(n.rpartition(".")[0] for n in bound.sum.names)),
        )

    def stopped(self) -> Finding:
        """The search for better sizes was told to end."""
        return Finding(
            code="sizes.not-looked-through",
            weight=Weight.MIND,
            says="These sizes hold, but I left off looking for better ones: more of them may miss"
            " the tape or their habit than need be.",
            cure="State more of the sizes, or a finer graduation; figures far from usual ones"
            " may be a slip of the unit.",
        )

    def off_tape(self, sizes: Sequence[Size], *, finer_would_do: bool) -> list[Finding]:
        """Sizes that no mark of the rule meets."""
        mark = self.length(self.grid)
        finer = f" On {self.length(self.grid / 2)} all sizes would fall on a mark."
        return [
            Finding(
                code="sizes.off-tape",
                weight=Weight.NOTE,
                says=f"{self.name(size.name)} is taken from the work, about"
                f" {written_with_unit(size.value, unit=self.unit)}: it falls on no {mark} mark."
                + (finer if finer_would_do else ""),
                figure=written_with_unit(size.value, unit=self.unit),
                limit=mark,
                parts=(size.name.rpartition(".")[0],),
                cure="Fit it to what is there.",
            )
            for size in sizes
        ]
