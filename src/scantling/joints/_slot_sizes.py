"""Sizes of a row of screws, and how far the wood moves at the worst of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.joints._joint import Choice, Joined, Strains
from scantling.joints._slots import Held
from scantling.sizes.linear import Linear, total
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

SAYS = {
    "screw": "length of the screws",
    "shank": "diameter of the screws",
    "clearance": "width of holes and slots",
    "end distance": "first and last screw from the ends",
    "line": "line of the screws",
    "travel": "room for a screw each way",
    "slot": "length of the slots",
}
KINDS = {**dict.fromkeys(("screw", "shank", "clearance"), Kind.TOOL), "slot": Kind.FOLLOWS}
USUAL = {
    "screw": "the longest that goes no deeper than two thirds",
    "shank": "a number 8 screw, or its metric fellow",
    "clearance": "a hole that lets the screw through",
    "end distance": "usual",
    "travel": "usual room in a slot",
}


@dataclass(frozen=True, kw_only=True)
class Moving:
    """What is held where, which way the slots run, and how each part moves."""

    held: Held
    along: bool
    strains: Strains


def row_relations(j: Joined, *, choice: Choice, moving: Moving) -> Relations:
    """Screw, hole, slot, and where the row stands."""
    return Relations(
        dimensions=(
            *(
                Dimension(
                    name=j.own(word),
                    kind=KINDS.get(word, Kind.TAPE),
                    says=f"{says}, {j.name}",
                    positive=word != "travel",
                )
                for word, says in SAYS.items()
            ),
        ),
        equations=(
            Equation(
                sum=j.size("slot") - j.size("clearance") - j.size("travel") * 2,
                because="a slot is as long as its hole and the room each way",
            ),
        ),
        bounds=(
            Bound(
                sum=j.length("enters") - j.size("end distance") * 2,
                because="the row lies within its part",
                place=j.place,
            ),
            *_seasons(j, moving),
        ),
        rules=_rules(j, choice),
    )


def _rules(j: Joined, choice: Choice) -> tuple[Rule, ...]:
    middle = Rule(
        sum=j.size("line") - j.width("enters") / 2,
        because="in the middle of the width",
        level=Level.RULE,
        source="common practice",
    )
    usual = (
        Rule(sum=j.size(word) - choice[word], because=because, source="common practice")
        for word, because in USUAL.items()
    )
    return (middle, *usual)


def _seasons(j: Joined, moving: Moving) -> Iterator[Bound]:
    """A slot is long enough both ways, at both ends of the year."""
    for season in ("grow", "shrink"):
        moved = _moved(j, moving, season)
        for way in (moved, -moved) if moved is not None else ():
            yield Bound(
                sum=j.size("travel") - way,
                because="wood moves no further than its slots let it",
                yields=Yields.SEASON,
                code="screws-in-slots.short-slot",
                source="Wood Handbook, FPL-GTR-190, 2010, eq. 13-2",
                cure="Make the slots longer, or hold the part nearer its middle.",
                place=j.place,
            )


def travel_needed(j: Joined, moving: Moving, *, sizes: Sizes) -> Fraction:
    """How far a screw must be able to travel, either way. [mm]"""
    moved = (_moved(j, moving, season) for season in ("grow", "shrink"))
    return max((abs(found.at(sizes)) for found in moved if found is not None), default=Fraction(0))


def moving_widths(j: Joined, *, held: Held, along: bool) -> tuple[tuple[str, Linear], ...]:
    """By part the width whose growth shifts the furthest screw; below zero what carries it. [mm]

    Along a row it is the receiving part that moves under the entering one. Across it the form
    tells what moves: widths of the receiving side, less those that carry the other.
    """
    if held == "all":
        return ()
    if along:
        share = Fraction(1, 2) if held == "middle" else Fraction(1)
        row = (j.length("enters") - j.size("end distance") * 2) * share
        return ((j.seat("receives").part, row),)
    return (
        *((b.owner, b.size) for b in j.neighbours("moves", role="receives")),
        *((b.owner, -b.size) for b in j.neighbours("moves", role="enters")),
    )


def _moved(j: Joined, moving: Moving, season: str) -> Linear | None:
    """How far the wood shifts at the screw that is furthest from where it is held. [mm]"""
    strains = moving.strains
    terms = moving_widths(j, held=moving.held, along=moving.along)
    known = [(strains[part], size) for part, size in terms if part in strains]
    if not known:
        return None
    return total(
        size * (strain.grow if season == "grow" else strain.shrink) for strain, size in known
    )
