"""Lengths of the piece file that the page shows as fields, and what each of them states."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from scantling.findings import Place
from scantling.piece._file.like import unit_written
from scantling.piece._file.spots import Spot, Steps, spots
from scantling.sizes.model import Stated


@dataclass(frozen=True, kw_only=True)
class Field:
    """One length as it stands in the file."""

    spot: Spot
    names: tuple[str, ...]  # of the sizes it states
    amount: str  # as written, without its unit
    unit: str  # as written, with what stands before it
    line: str  # of the file, whole


def names_by_path(
    content: bytes, stated: Sequence[Stated], *, file: str
) -> Mapping[Steps, tuple[str, ...]]:
    """Names of the sizes that each value of the file states."""
    by_place: dict[Place, list[str]] = {}
    for each in stated:
        if each.place is not None:
            by_place.setdefault(each.place, []).append(each.name)
    found = {}
    for spot in spots(content.decode(errors="replace"), file=file):
        names = by_place.get(spot.place) or (by_place.get(spot.key) if spot.key else None)
        if names:
            found[spot.path] = tuple(dict.fromkeys(names))
    return found


def fields(
    content: bytes, names: Mapping[Steps, tuple[str, ...]], *, file: str
) -> tuple[Field, ...]:
    """Fields for those values, in the order of the file.

    Args:
        content: The file, which may have faults by now.
        names: What its values stated when it was last worked.
        file: Its name.
    """
    text = content.decode(errors="replace")
    lines = text.removeprefix("\ufeff").split("\n")
    found = []
    for spot in spots(text, file=file):
        if spot.path in names:
            amount, unit = unit_written(spot.text)
            line = lines[spot.place.line - 1].removesuffix("\r")
            found.append(
                Field(spot=spot, names=names[spot.path], amount=amount, unit=unit, line=line)
            )
    return tuple(found)
