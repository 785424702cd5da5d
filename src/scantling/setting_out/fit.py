"""Whether every joint has the sizes that the form around it reckons with."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from scantling.findings import Finding, Weight
from scantling.joints._joint import Choice, Joined
from scantling.piece._form import Sketch
from scantling.setting_out.bench import Bench
from scantling.sizes.linear import Linear
from scantling.sizes.model import Relations


def unmatched(bench: Bench, chosen: Mapping[str, Choice]) -> tuple[Finding, ...]:
    """One finding for each line whose joint lacks a size that its place asks of it.

    Seats alone do not tell: a hinge takes two parts like a tenon, but no rail is set out by it.

    Args:
        bench: The sketch with its joints.
        chosen: What the joints choose to begin with.
    """
    found: dict[object, Finding] = {}
    for name in _unknown(bench, bench.relations(chosen)):
        j = _owner(bench, name)
        if j is not None:
            found.setdefault(j.place, _finding(j, name.removeprefix(f"{j.name}.")))
    return tuple(found.values())


def _unknown(bench: Bench, relations: Relations) -> Iterator[str]:
    """Names of sizes that the forms speak of and nobody has."""
    known = {dimension.name for dimension in relations.dimensions}
    for linear in _sums(bench.sketch):
        for name, _ in linear.terms:
            if name not in known:
                yield name


def _sums(sketch: Sketch) -> Iterator[Linear]:
    spoken = sketch.relations
    yield from (one.sum for one in spoken.equations)
    yield from (one.sum for one in spoken.bounds)
    yield from (one.sum for one in spoken.rules)
    for planned in sketch.parts:
        yield from (*planned.at, *planned.horns)


def _owner(bench: Bench, name: str) -> Joined | None:
    owners = (j for j in bench.joined if name.startswith(f"{j.name}."))
    return max(owners, key=lambda j: len(j.name), default=None)


def _finding(j: Joined, word: str) -> Finding:
    return Finding(
        code="piece.joint-does-not-fit",
        weight=Weight.HALT,
        says=f"No {j.joint.title} can be made here ({j.name}): it has no {word}.",
        cure="Name another joint, or take the line out and leave it to what is usual.",
        place=j.place,
        parts=tuple(dict.fromkeys(j.parts)),
    )
