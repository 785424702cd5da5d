"""Ten of a piece side by side, tied so that one change of width touches all of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from scantling.exact import Fraction
from scantling.joints._joint import Beside, Joined, Seat
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Shaping, Sketch
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Equation, Relations, Size, Sizes


class _Without(Mapping[str, Fraction]):
    """Sizes seen without the prefix of one copy."""

    def __init__(self, sizes: Sizes, prefix: str) -> None:
        self._sizes, self._prefix = sizes, prefix

    def __getitem__(self, name: str) -> Fraction:
        return self._sizes[self._prefix + name]

    def __iter__(self) -> Iterator[str]:
        return (n.removeprefix(self._prefix) for n in self._sizes if n.startswith(self._prefix))

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def size(self, name: str) -> Size:
        """The size of that name."""
        return self._sizes.size(self._prefix + name)


def tenfold(sketch: Sketch, *, copies: int = 10, apart: Fraction = Fraction(1500)) -> Sketch:
    """The sketch so many times, each as wide as the first. [mm] apart"""
    whole = Sketch()
    for i in range(copies):
        one = _copy(sketch, f"{i + 1} ", apart * i, keeps_stated_width=i == 0)
        whole = Sketch(
            parts=whole.parts + one.parts,
            joined=whole.joined + one.joined,
            shapings=whole.shapings + one.shapings,
            relations=whole.relations + one.relations,
            stated=whole.stated + one.stated,
        )
        if i:
            tie = size_of("1 case.wide") - size_of(f"{i + 1} case.wide")
            whole = whole.with_relations(
                Relations(equations=(Equation(sum=tie, because="all are as wide"),))
            )
    return whole


def _copy(sketch: Sketch, prefix: str, along: Fraction, *, keeps_stated_width: bool) -> Sketch:
    freed = () if keeps_stated_width else ("case.wide", "top.length")
    return Sketch(
        parts=tuple(_part(p, prefix, along) for p in sketch.parts),
        joined=tuple(_joined(j, prefix) for j in sketch.joined),
        shapings=tuple(_shaping(s, prefix) for s in sketch.shapings),
        relations=_relations(sketch.relations, prefix),
        stated=tuple(
            replace(s, name=prefix + s.name) for s in sketch.stated if s.name not in freed
        ),
    )


def _named(name: str, prefix: str) -> str:
    """Name in a copy; a joint's own dimension may hold the name of a part of a row."""
    owner, dot, word = name.partition(".")
    if word.endswith(" rests"):
        word = prefix + word
    return prefix + owner + dot + word


def _sum(linear: Linear, prefix: str) -> Linear:
    terms = tuple(sorted((_named(name, prefix), c) for name, c in linear.terms))
    return Linear(terms, linear.constant)


def _part(part: PlannedPart, prefix: str, along: Fraction) -> PlannedPart:
    wide, deep, tall = (_sum(linear, prefix) for linear in part.at)
    return replace(
        part,
        name=prefix + part.name,
        at=(wide + along, deep, tall),
        horns=(_sum(part.horns[0], prefix), _sum(part.horns[1], prefix)),
    )


def _joined(joined: Joined, prefix: str) -> Joined:
    return replace(
        joined,
        name=prefix + joined.name,
        seats={
            role: tuple(_seat(seat, prefix) for seat in row) for role, row in joined.seats.items()
        },
        beside=tuple(_beside(b, prefix) for b in joined.beside),
    )


def _seat(seat: Seat, prefix: str) -> Seat:
    return replace(
        seat,
        part=prefix + seat.part,
        along=_sum(seat.along, prefix),
        across=_sum(seat.across, prefix),
        into=_sum(seat.into, prefix),
    )


def _beside(beside: Beside, prefix: str) -> Beside:
    return replace(
        beside,
        owner=prefix + beside.owner if beside.owner else "",
        start=_sum(beside.start, prefix),
        size=_sum(beside.size, prefix),
        depth=_sum(beside.depth, prefix),
    )


def _shaping(shaping: Shaping, prefix: str) -> Shaping:
    return Shaping(
        part=prefix + shaping.part,
        cuts=lambda sizes: shaping.cuts(_Without(sizes, prefix)),  # type: ignore[arg-type]  # a view that reads alike
    )


def _relations(found: Relations, prefix: str) -> Relations:
    return Relations(
        dimensions=tuple(replace(d, name=prefix + d.name) for d in found.dimensions),
        equations=tuple(replace(e, sum=_sum(e.sum, prefix)) for e in found.equations),
        bounds=tuple(replace(b, sum=_sum(b.sum, prefix)) for b in found.bounds),
        rules=tuple(replace(r, sum=_sum(r.sum, prefix)) for r in found.rules),
        alike=tuple(
            replace(
                a,
                names=tuple(prefix + n for n in a.names),
                sink=None if a.sink is None else prefix + a.sink,
            )
            for a in found.alike
        ),
    )
