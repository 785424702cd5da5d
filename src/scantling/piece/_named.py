"""Sizes that the maker names in [also], under the names the sketch has for them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from typing import TypeVar

from scantling.piece._form import Sketch
from scantling.roster import plain_name

T = TypeVar("T")


def under_own_names(said: Sequence[tuple[str, T]], sketch: Sketch) -> list[tuple[str, T]]:
    """What is said of sizes, under the names of the sketch.

    Space, hyphen, underscore and capitals are equal. A family ("sub-top rail", or "sub-top rails")
    stands for each of its parts, but for those that are spoken of by their own names.

    Args:
        said: Part and word as the maker wrote them ("rear sub-top rail.thickness"), and what is
            said of that size.
        sketch: The parts and joints there are.

    Returns:
        The same by dimension; what nothing is called so stays as it is.
    """
    own = _own_names(sketch)
    by_name = [(_renamed(name, own), what) for name, what in said]
    spoken_of = {name for name, _ in by_name}
    families = _families(sketch)
    found = []
    for name, what in by_name:
        family, _, word = name.rpartition(".")
        parts = () if family in own.values() else families.get(plain_name(family), ())
        sizes = [f"{part}.{word}" for part in parts]
        found += [(size, what) for size in sizes if size not in spoken_of]
        found += [] if sizes else [(name, what)]
    return found


def _renamed(name: str, own: Mapping[str, str]) -> str:
    owner, _, word = name.rpartition(".")
    return f"{own.get(plain_name(owner), owner)}.{word}"


def _own_names(sketch: Sketch) -> Mapping[str, str]:
    dimensions = (d.name.rpartition(".")[0] for d in sketch.relations.dimensions)
    named = (*dimensions, *(part.name for part in sketch.parts), *(j.name for j in sketch.joined))
    return {plain_name(name): name for name in named}


def _families(sketch: Sketch) -> Mapping[str, list[str]]:
    found: defaultdict[str, list[str]] = defaultdict(list)
    for part in sketch.parts:
        for family in (part.family, f"{part.family}s"):
            found[plain_name(family)].append(part.name)
    return found
