"""A joint's bench case solved and built, for the tests of every joint."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from scantling.joints._joint import Bench, Choice, Contact, Joint, Press, Strains, Woods
from scantling.parts import Cut, Part
from scantling.parts.solid import finished
from scantling.proofs._proof import Case
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.shop.tools import Shop
from scantling.sizes.answer import Solved
from scantling.sizes.model import Measured, Relations, Sizes, Stated
from scantling.sizes.solving import solve
from scantling.solids.store import Store
from scantling.timber.moisture import Season
from scantling.timber.movement import Cut as Sawn
from scantling.timber.movement import strain
from scantling.timber.room import Room
from scantling.timber.species import species

SHOP = default_shop()
FINE = Fraction(1, 10)  # [mm] so fine a rule that few sizes of a bench case leave it
ROOM = Room(
    dry=Season(humidity=40, temperature=18),
    damp=Season(humidity=75, temperature=20),
    bench=Season(humidity=38, temperature=17),
)
ROUNDS = 8  # of choosing and solving

Asked = tuple[Relations, tuple[Stated, ...], tuple[Measured, ...], Fraction]

# Many tests begin with the same bench, and so does its mirror image: each question is solved once.
SOLVED: dict[Asked, Solved] = {}


@dataclass(frozen=True, kw_only=True)
class Built:
    """A bench case with its sizes, its parts and what is loose."""

    bench: Bench
    sizes: Sizes
    choice: Choice
    parts: Mapping[str, Part]  # hardware included
    loose: tuple[Part, ...]
    contacts: tuple[Contact, ...]
    presses: tuple[Press, ...]
    breaches: tuple[str, ...]  # codes of season bounds that did not hold

    @property
    def joint(self) -> Joint:
        """The joint itself."""
        return self.bench.joined.joint

    def case(self) -> Case:
        """What the proofs are asked about."""
        return Case(
            parts=tuple(self.parts.values()),
            store=Store(),
            contacts=self.contacts,
            presses=self.presses,
            sizes=dict(self.sizes),
        )

    def volume(self, name: str) -> float:
        """Volume of a finished part. [mm3]"""
        return float(finished(self.parts[name], store=Store()).body.volume())

    def cut(self, part: str, name: str) -> Cut:
        """The cut of that name in that part."""
        (found,) = (cut for cut in self.parts[part].cuts if cut.name == name)
        return found

    def zones(self, zone: str) -> tuple[Contact, ...]:
        """Contacts of that zone."""
        return tuple(contact for contact in self.contacts if contact.zone == zone)


def woods(bench: Bench) -> Woods:
    """Species of the bench's parts."""
    return {part.name: species(part.wood) for part in bench.parts if not part.hardware}


def strains(bench: Bench, *, room: Room = ROOM) -> Strains:
    """Movement of each part's width in a room."""
    return {
        part.name: strain(species(part.wood), Sawn(part.cut_of_wood), room)
        for part in bench.parts
        if not part.hardware
    }


def relations(bench: Bench, choice: Choice, moving: Strains) -> Relations:
    """What the bench, its parts and its joint say; a dimension said twice counts once."""
    j = bench.joined
    found = bench.relations + j.joint.relations(j, choice=choice, strains=moving)
    for part in bench.parts:
        found += part.relations()
    named = {dimension.name: dimension for dimension in reversed(found.dimensions)}
    return Relations(
        dimensions=tuple(reversed(named.values())),
        equations=found.equations,
        bounds=found.bounds,
        rules=found.rules,
        alike=found.alike,
        derived=found.derived,
    )


def built(
    bench: Bench,
    *,
    shop: Shop = SHOP,
    grid: Fraction = FINE,
    moving: Strains | None = None,
    stated: Mapping[str, Fraction] | None = None,
    measured: Mapping[str, Fraction] | None = None,
) -> Built:
    """The bench case with its joint made.

    Args:
        bench: The case.
        shop: Whose tools are chosen from.
        grid: Graduation of the rule. [mm]
        moving: Movement of the parts; by default of their woods in a damp room.
        stated: Sizes to state beside, or instead of, those of the bench. [mm]
        measured: Sizes taken from the work. [mm]
    """
    j = bench.joined
    said = {each.name: each for each in (*bench.stated, *j.joint.stated(j))}
    said |= {name: Stated(name=name, value=value) for name, value in (stated or {}).items()}
    facts = [Measured(name=n, least=v, greatest=v) for n, v in (measured or {}).items()]
    moving = strains(bench) if moving is None else moving
    kinds = woods(bench)
    choice = j.joint.choose(j, sizes=None, shop=shop, habits=Habits(), woods=kinds, strains=moving)
    solved = None
    for _ in range(ROUNDS):
        asked = (relations(bench, choice, moving), tuple(said.values()), tuple(facts), grid)
        solved = _solved(asked, before=solved)
        assert not solved.conflicts, solved.conflicts
        before = choice
        choice = j.joint.choose(
            j, sizes=solved.sizes, shop=shop, habits=Habits(), woods=kinds, strains=moving
        )
        if choice == before:
            return _built(bench, solved.sizes, choice, tuple(b.bound.code for b in solved.breaches))
    message = f"{j.name} never settles: {choice}"
    raise AssertionError(message)


def _solved(asked: Asked, *, before: Solved | None) -> Solved:
    if asked not in SOLVED:
        relations, stated, measured, grid = asked
        SOLVED[asked] = solve(relations, stated=stated, measured=measured, grid=grid, before=before)
    return SOLVED[asked]


def _built(bench: Bench, sizes: Sizes, choice: Choice, breaches: tuple[str, ...]) -> Built:
    j = bench.joined
    cuts = j.joint.cuts(j, sizes=sizes, choice=choice)
    assert set(cuts) <= {part.name for part in bench.parts}
    wood = {p.name: p.built(sizes, cuts=cuts.get(p.name, ())) for p in bench.parts}
    loose = j.joint.loose(j, sizes=sizes, choice=choice, parts=wood)
    parts = {**wood, **{part.name: part for part in loose}}
    return Built(
        bench=bench,
        sizes=sizes,
        choice=choice,
        parts=parts,
        loose=loose,
        contacts=j.joint.contacts(j, sizes=sizes, choice=choice, parts=parts),
        presses=j.joint.presses(j, sizes=sizes, choice=choice, parts=parts),
        breaches=breaches,
    )
