"""Sizes of a row of lapped boards, and what the year does to its gaps."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from scantling.exact import Fraction
from scantling.joints._frame import LEAST_LIP
from scantling.joints._joint import Choice, Joined, Strains
from scantling.sizes.linear import ZERO, Linear, size_of, total
from scantling.sizes.model import (
    Bound,
    Dimension,
    Equation,
    Kind,
    Level,
    Relations,
    Rule,
    Sizes,
    Yields,
)

EASE = Fraction(3, 10)  # [mm] left of a gap in the dampest spell
HOLD = Fraction(3)  # [mm] left of the cover in the driest
LEAST_FACE = Fraction(20)  # [mm] of a board between its laps: common practice
SAYS = {
    "gap": "gap from board to board",
    "lap": "width of the laps",
    "edge gap": "gap beside the row",
    "depth": "depth of the front laps",
}
MAY_CLOSE = {"gap", "edge gap"}


def lap_relations(j: Joined, *, choice: Choice, strains: Strains) -> Relations:
    """The row fills its opening; laps hold and gaps stay open at both ends of the year."""
    return Relations(
        dimensions=tuple(
            Dimension(
                name=j.own(word),
                # nobody sets out what is left beside the row
                kind=Kind.FOLLOWS if word == "edge gap" else Kind.TAPE,
                says=f"{says}, {j.name}",
                positive=word not in MAY_CLOSE,
            )
            for word, says in SAYS.items()
        ),
        equations=tuple(
            Equation(sum=_row(j) - opening.size, because="the row fills its opening")
            for opening in j.neighbours("opening", role="boards")
        ),
        bounds=(*_possible(j), *_seasons(j, strains)),
        rules=_rules(j, choice),
    )


def _row(j: Joined) -> Linear:
    boards = j.row("boards")
    widths = total(size_of(f"{seat.part}.width") for seat in boards)
    return widths - (j.size("lap") - j.size("gap")) * (len(boards) - 1) + j.size("edge gap") * 2


def _possible(j: Joined) -> Iterator[Bound]:
    yield Bound(
        sum=j.size("lap") - j.size("gap") - LEAST_LIP,
        because="boards lap by more than their gap",
        place=j.place,
    )
    for seat in j.row("boards"):
        yield Bound(
            sum=size_of(f"{seat.part}.thickness") - j.size("depth") - LEAST_LIP,
            because="a lap leaves a lip of wood that does not break off",
            place=j.place,
        )
        yield Bound(
            sum=size_of(f"{seat.part}.width") - j.size("lap") * 2 - LEAST_FACE,
            because="between its laps a board has wood for a nail",
            place=j.place,
        )


def gap_needed(j: Joined, strains: Strains, *, sizes: Sizes) -> Fraction:
    """The gap that keeps the widest two neighbours apart in the dampest spell. [mm]"""
    row = [seat.part for seat in j.row("boards")]
    grown = [
        sizes[f"{p}.width"] * strains[p].grow / 2 if p in strains else Fraction(0) for p in row
    ]
    return max(one + other for one, other in pairwise(grown)) + EASE


def _seasons(j: Joined, strains: Strains) -> Iterator[Bound]:
    row = [seat.part for seat in j.row("boards")]
    grown = {p: size_of(f"{p}.width") * strains[p].grow / 2 for p in row if p in strains}
    shrunk = {p: size_of(f"{p}.width") * strains[p].shrink / 2 for p in row if p in strains}
    cover = j.size("lap") - j.size("gap")
    for one, other in pairwise(row):
        grows = grown.get(one, ZERO) + grown.get(other, ZERO)
        shrinks = shrunk.get(one, ZERO) + shrunk.get(other, ZERO)
        if one in strains or other in strains:
            yield _season(j, j.size("gap") - grows - EASE, "jams", "Leave wider gaps.")
            yield _season(j, cover - shrinks - HOLD, "opens", "Make the laps wider.")
    for part in (row[0], row[-1]):
        if part in strains:
            left = j.size("edge gap") - grown[part] - EASE / 2
            yield _season(j, left, "pushes", "Leave more beside the row.")


def _season(j: Joined, left: Linear, word: str, cure: str) -> Bound:
    because = {
        "jams": "boards never touch in the dampest spell",
        "opens": "laps still cover in the driest spell",
        "pushes": "the row never fills its opening",
    }
    return Bound(
        sum=left,
        because=because[word],
        yields=Yields.SEASON,
        code=f"shiplap.{word}",
        source="Wood Handbook, FPL-GTR-190, 2010, eq. 13-2; what is left over: common practice",
        cure=cure,
        place=j.place,
    )


def _rules(j: Joined, choice: Choice) -> tuple[Rule, ...]:
    thin = j.row("boards")[choice.count("thinnest")].part
    half = Rule(
        sum=j.size("depth") * 2 - size_of(f"{thin}.thickness"),
        because=f"half the thickness of the {thin}",
        level=Level.RULE,
        source="common practice",
    )
    edges = Rule(
        sum=j.size("edge gap") * 2 - j.size("gap"),
        because="half a board works on it, where two halves work on a gap",
        source="common practice",
    )
    usual = (
        Rule(sum=j.size(word) - choice[word], because="usual", source="common practice")
        for word in ("lap", "gap")
    )
    return (half, *usual, edges)
