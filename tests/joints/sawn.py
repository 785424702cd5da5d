"""A joint's bench case, solved, built and cut: what the tests of single joints look at."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.joints._joint import Bench, Choice, Joined, Motion, Said, State, Strains
from scantling.parts import Box, Cut, Part, Point, Way
from scantling.parts.solid import finished, placed
from scantling.shop.habits import Habits
from scantling.shop.tools import Bench as Workbench
from scantling.shop.tools import Cauls, Gauges, Shop
from scantling.sizes.model import Relations, Sizes, Stated
from scantling.sizes.solving import solve
from scantling.solids.contact import contact_area, patch_area
from scantling.solids.pairs import overlaps
from scantling.solids.store import Store
from scantling.timber.species import species
from scantling.units import Unit

NO_STRAINS: Strains = {}


def mm(*values: int | str) -> tuple[Fraction, ...]:
    return tuple(Fraction(v) for v in values)


SHOP = Shop(
    name="millimetre shop",
    unit=Unit.MM,
    finest=Fraction(1, 2),
    bench=Workbench(),
    chisels=mm(6, 12, 18),
    mortise_chisels=mm(5, 6, 8, 10, 12),
    plough_irons=mm(5, 6, 8, 10),
    router_irons=mm(6),
    bits=mm(6),
    drills=mm(3),
    saws=(),
    planes=(),
    gauges=Gauges(pin=2, wheel=1, mortise=1),
    clamps=(),
    cauls=Cauls(),
    glues=(),
    small_tools=(),
)


def said(value: int | str | Fraction) -> Said:
    return Said(value=Fraction(value), text=str(value))


@dataclass(frozen=True, kw_only=True)
class Sawn:
    """The parts of one bench case with their cuts made."""

    j: Joined
    sizes: Sizes
    choice: Choice
    parts: Mapping[str, Part]
    loose: tuple[Part, ...]
    relations: Relations

    def own(self, word: str) -> Fraction:
        return self.sizes[self.j.own(word)]

    def volume(self, part: str) -> float:
        return float(finished(self.everything[part], store=Store()).volume)

    @property
    def everything(self) -> Mapping[str, Part]:
        return {**self.parts, **{p.name: p for p in self.loose}}

    @property
    def overlapping(self) -> list[tuple[str, str]]:
        return claimed_twice(self.everything.values())

    def box(self, part: str, cut: str) -> Box:
        """The only cut of that name in a part, which is a box."""
        (shape,) = (c.shape for c in self.parts[part].cuts if c.name == cut)
        assert isinstance(shape, Box)
        return shape

    def leaves(self, role: str, state: State = State.OPEN) -> set[Way]:
        """Directions in which the joint says that a role leaves."""
        moves = self.j.joint.moves(self.j, state=state, sizes=self.sizes, parts=self.parts)
        straight = [m for m in moves if m.role == role and m.motion is Motion.STRAIGHT]
        return {way for m in straight for way in Way if m.way[way.axis] * way.sign > 0}

    def free(self, part: str) -> set[Way]:
        """Directions in which its solid gets away from the others, by steps short and long."""
        rest = [p for name, p in self.everything.items() if name != part]
        steps = (Fraction(1, 10), Fraction(2), Fraction(9))
        return {
            way
            for way in Way
            if not any(
                claimed_twice([*rest, moved(self.everything[part], {way.axis: way.sign * step})])
                for step in steps
            )
        }

    def contacts(self, zone: str) -> list[tuple[Point, ...]]:
        found = self.j.joint.contacts(
            self.j, sizes=self.sizes, choice=self.choice, parts=self.parts
        )
        return [c.patch for c in found if c.zone == zone]

    def codes(self, shop: Shop = SHOP) -> list[str]:
        found = self.j.joint.faults(
            self.j, sizes=self.sizes, choice=self.choice, shop=shop, parts=self.parts
        )
        return [f.code for f in found]

    @property
    def apart(self) -> list[str]:
        """Zones in which a declared patch is not wholly touched by both parts."""
        found = self.j.joint.contacts(
            self.j, sizes=self.sizes, choice=self.choice, parts=self.everything
        )
        store = Store()
        stood = {n: placed(p, finished(p, store=store)) for n, p in self.everything.items()}
        return [
            c.zone
            for c in found
            if contact_area(*(stood[name] for name in c.between), patch=c.patch, store=store)
            < patch_area(c.patch) * (1 - 1e-6)
        ]

    @property
    def breaches(self) -> list[str]:
        """Codes of season bounds that the solved sizes do not meet."""
        return [b.code for b in self.relations.bounds if self.sizes.at(b.sum) < 0]


def sawn(
    bench: Bench,
    *,
    shop: Shop = SHOP,
    grid: Fraction = Fraction(1, 2),
    strains: Strains = NO_STRAINS,
    stated: Mapping[str, int | str] | None = None,
    neighbours: Mapping[str, tuple[Cut, ...]] | None = None,
) -> Sawn:
    """The bench case with more stated sizes and with cuts that neighbours would make."""
    j = bench.joined
    more = {name: Stated(name=name, value=Fraction(v)) for name, v in (stated or {}).items()}
    told = {s.name: s for s in (*bench.stated, *j.joint.stated(j))} | more
    woods = {p.name: species(p.wood) for p in bench.parts}
    choice = j.joint.choose(j, sizes=None, shop=shop, habits=Habits(), woods=woods, strains=strains)
    while True:
        relations = bench.relations + j.joint.relations(j, choice=choice, strains=strains)
        solved = solve(relations, stated=told.values(), grid=grid)
        again = j.joint.choose(
            j, sizes=solved.sizes, shop=shop, habits=Habits(), woods=woods, strains=strains
        )
        if again == choice:
            break
        choice = again
    assert not solved.conflicts
    cuts = j.joint.cuts(j, sizes=solved.sizes, choice=choice)
    parts = {
        p.name: p.built(
            solved.sizes, cuts=cuts.get(p.name, ()) + (neighbours or {}).get(p.name, ())
        )
        for p in bench.parts
    }
    loose = j.joint.loose(j, sizes=solved.sizes, choice=choice, parts=parts)
    return Sawn(
        j=j, sizes=solved.sizes, choice=choice, parts=parts, loose=loose, relations=relations
    )


def claimed_twice(parts: Iterable[Part]) -> list[tuple[str, str]]:
    store = Store()
    solids = [placed(p, finished(p, store=store)) for p in parts]
    return [found.between for found in overlaps(solids, store=store)]


def area(patch: tuple[Point, ...]) -> Fraction:
    """Area of a rectangle square to an axis of the piece. [mm2]"""
    spans = [max(p[a] for p in patch) - min(p[a] for p in patch) for a in range(3)]
    one, two = (s for s in spans if s)
    return one * two


def moved(part: Part, by: Mapping[int, Fraction]) -> Part:
    """The part shifted in the piece, by axis. [mm]"""
    at = [value + by.get(axis, Fraction(0)) for axis, value in enumerate(part.placement.at)]
    return replace(part, placement=replace(part.placement, at=(at[0], at[1], at[2])))
