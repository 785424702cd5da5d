"""The questions every joint answers. Forms, proofs, method and papers ask only these.

A joint joins named seats. It writes its cuts in coordinates of a seat: measured from the end,
edge and face that the form names, moved in by the form's sums. Roles and what their coordinates
mean stand in each joint's docstring.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from types import MappingProxyType
from typing import ClassVar

from scantling.errors import UnknownNameError
from scantling.findings import Finding, Place
from scantling.joints._answers import (
    Choice,
    Contact,
    DrawnSize,
    Estimate,
    Fit,
    Fixing,
    Gap,
    Glue,
    Motion,
    Move,
    Press,
    State,
)
from scantling.joints._seat import Beside, Said, Seat, SeatRole, lifted, option, rectangle
from scantling.parts import Cut, Part
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation
from scantling.shop.tools import Shop
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Relations, Sizes, Stated
from scantling.timber.movement import Strain
from scantling.timber.species import Species

__all__ = [
    "QUESTIONS",
    "Bench",
    "Beside",
    "Choice",
    "Contact",
    "DrawnSize",
    "Estimate",
    "Fit",
    "Fixing",
    "Gap",
    "Glue",
    "Joined",
    "Joint",
    "Motion",
    "Move",
    "Press",
    "Said",
    "Seat",
    "SeatRole",
    "State",
    "Strains",
    "Woods",
    "lifted",
    "option",
    "owed",
    "rectangle",
]


@dataclass(frozen=True, kw_only=True)
class Joined:
    """One joint in one place: what a form hands over."""

    name: str  # "bottom in left side"
    joint: Joint
    seats: Mapping[str, tuple[Seat, ...]]
    beside: tuple[Beside, ...] = ()
    place: Place | None = None

    def own(self, word: str) -> str:
        """Name of one of the joint's own dimensions: `bottom in left side.entry`."""
        return f"{self.name}.{word}"

    def size(self, word: str) -> Linear:
        """One of the joint's own dimensions."""
        return size_of(self.own(word))

    @property
    def entry(self) -> Linear:
        """How far the entering part reaches beyond the surface it meets. [mm]"""
        return self.size("entry")

    def seat(self, role: str) -> Seat:
        """The only seat of a role.

        Raises:
            UnknownNameError: No such role, or a row of several.
        """
        found = self.seats.get(role, ())
        if len(found) != 1:
            msg = f"{self.name}: {len(found)} seats are called {role!r}, one is wanted"
            raise UnknownNameError(msg)
        return found[0]

    def row(self, role: str) -> tuple[Seat, ...]:
        """All seats of a role, in order."""
        return self.seats.get(role, ())

    def length(self, role: str) -> Linear:
        """Length of the part in that seat."""
        return size_of(f"{self.seat(role).part}.length")

    def width(self, role: str) -> Linear:
        """Width of the part in that seat."""
        return size_of(f"{self.seat(role).part}.width")

    def thickness(self, role: str) -> Linear:
        """Thickness of the part in that seat."""
        return size_of(f"{self.seat(role).part}.thickness")

    def neighbours(self, what: str, *, role: str) -> tuple[Beside, ...]:
        """What the form told of neighbours of that kind in that seat."""
        return tuple(b for b in self.beside if b.what == what and b.role == role)

    @property
    def parts(self) -> tuple[str, ...]:
        """Names of all parts joined."""
        return tuple(seat.part for row in self.seats.values() for seat in row)


@dataclass(frozen=True, kw_only=True)
class Bench:
    """A joint by itself on the bench: the smallest real case, for tests and for the gallery."""

    parts: tuple[PlannedPart, ...]
    joined: Joined
    relations: Relations
    stated: tuple[Stated, ...]


Woods = Mapping[str, Species]  # by part
Strains = Mapping[str, Strain]  # by part

QUESTIONS = (
    "seats",
    "relations",
    "choose",
    "cuts",
    "loose",
    "moves",
    "contacts",
    "fixings",
    "gaps",
    "holds",
    "work",
    "drawn",
    "faults",
)


@dataclass(frozen=True, kw_only=True)
class Joint:
    """A joint with the options the maker set. Questions not answered yet give nothing.

    Every joint in which one part enters another owns the dimension `entry`.
    """

    title: ClassVar[str]
    # roles whose wood near the joint is drawn at full size, and from how many faces: templates
    full_size: ClassVar[Mapping[str, int]] = MappingProxyType({})

    place: Place | None = None

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. Roles, how many, of what kind."""
        return ()

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Dimensions with their kind, equations, bounds, rules."""
        del j, choice, strains
        return Relations()

    def choose(
        self,
        j: Joined,
        *,
        sizes: Sizes | None,
        shop: Shop,
        habits: Habits,
        woods: Woods,
        strains: Strains,
    ) -> Choice:
        """3. Tool sizes, counts, layout. `sizes` is None in the first round."""
        del j, sizes, shop, habits, woods, strains
        return Choice()

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. Cuts by part."""
        del j, sizes, choice
        return {}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Pins, pegs, wedges, keys, screws, hinges, each a part of its own."""
        del j, sizes, choice, parts
        return ()

    def presses(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Press, ...]:
        """5, too. Overlaps that are meant."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. How the roles leave each other in that state."""
        del j, state, sizes, parts
        return ()

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. Patches that touch, with what glue finds there."""
        del j, sizes, choice, parts
        return ()

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. Points held, directions left free."""
        del j, sizes, choice, parts
        return ()

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room left, what moves on it, least and greatest."""
        del j, choice
        return ()

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Estimates of what it holds, with basis and weakest link."""
        del j, sizes, choice, woods
        return ()

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Operations in the order of the work."""
        del j, choice, shop, habits
        return ()

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. Figures for the joint's own drawing."""
        del j, sizes, choice
        return ()

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. What only it can know."""
        del j, sizes, choice, shop, parts
        return ()

    @classmethod
    def bench(cls) -> Bench:
        """The joint by itself on the bench."""
        msg = f"{cls.title} has no bench case"
        raise UnknownNameError(msg)

    def stated(self, j: Joined) -> tuple[Stated, ...]:
        """The dimensions that the maker's options state."""
        found = []
        for known in fields(self):
            said = getattr(self, known.name)
            if "dimension" in known.metadata and isinstance(said, Said):
                name = j.own(known.metadata["dimension"])
                found.append(Stated(name=name, value=said.value, text=said.text, place=said.place))
        return tuple(found)


def owed(joint: type[Joint]) -> tuple[str, ...]:
    """Questions that a joint does not answer itself yet."""
    return tuple(
        question
        for question in QUESTIONS
        if next(c for c in joint.__mro__ if question in vars(c)) is Joint
    )
