"""What the maker says, held against the names there are."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches

from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight
from scantling.sizes.model import Measured, Relations, Stated


@dataclass(frozen=True, kw_only=True)
class Heard:
    """Lines that name a dimension, and what is wrong with the others."""

    stated: tuple[Stated, ...]
    measured: tuple[Measured, ...]
    findings: tuple[Finding, ...]


def heard(relations: Relations, stated: Iterable[Stated], measured: Iterable[Measured]) -> Heard:
    """Sort out lines that name nothing, or name what nobody states.

    A measured size replaces a stated one of the same name: the wood is as it is. A measured
    derived figure is a fact for its joint and none for the sums.
    """
    names = {d.name for d in relations.dimensions}
    derived = {d.name: d.option for d in relations.derived}
    facts, findings = [], []
    for fact in measured:
        if fact.name in names:
            facts.append(fact)
        elif fact.name not in derived:
            findings.append(_unknown(fact.name, names, fact.place))
    read = {fact.name for fact in facts}
    lines = []
    for line in stated:
        if line.name in derived:
            findings.append(_derived(line, derived))
        elif line.name not in names:
            findings.append(_unknown(line.name, names | derived.keys(), line.place))
        elif line.name not in read:
            lines.append(line)
    return Heard(stated=tuple(lines), measured=tuple(facts), findings=tuple(findings))


def _unknown(name: str, names: Iterable[str], place: Place | None) -> Finding:
    near = get_close_matches(name, sorted(names), n=1)
    cure = f"Did you mean {near[0]}?" if near else "The list of parts has the names there are."
    return Finding(
        code="sizes.unknown-name",
        weight=Weight.HALT,
        says=f"No size is called {name}.",
        cure=cure,
        place=place,
    )


def _derived(line: Stated, derived: Mapping[str, str]) -> Finding:
    return Finding(
        code="sizes.derived",
        weight=Weight.HALT,
        says=f"{line.name} follows from other sizes and cannot be stated.",
        cure=f"Set {derived[line.name]} instead.",
        place=line.place,
    )


@dataclass(frozen=True, kw_only=True)
class AsTheBoardsGive:
    """A thickness the maker leaves to his boards."""

    name: str  # of the dimension
    boards: str  # of the set of boards its part is to come from
    text: str = ""
    place: Place | None = None


def from_boards(
    wishes: Iterable[AsTheBoardsGive], *, attainable: Mapping[str, Iterable[Fraction]]
) -> tuple[tuple[Stated, ...], tuple[Finding, ...]]:
    """Thicknesses stated as the boards give: the thinnest board of a set decides.

    Args:
        wishes: Thicknesses left to the boards.
        attainable: By set of boards, the thickness each of its boards can be brought to. [mm]

    Returns:
        The thicknesses as stated sizes, and findings for sets without a board.
    """
    lines, findings = [], []
    for wish in wishes:
        least = min(attainable.get(wish.boards, ()), default=None)
        if least is None:
            findings.append(
                Finding(
                    code="sizes.no-boards",
                    weight=Weight.HALT,
                    says=f'"{wish.name}" is to be as the boards give, and no board of'
                    f" {wish.boards} is known.",
                    cure="Write the thickness in figures, or leave it out for the usual one.",
                    place=wish.place,
                )
            )
        else:
            lines.append(Stated(name=wish.name, value=least, text=wish.text, place=wish.place))
    return tuple(lines), tuple(findings)
