"""What every proof may ask, and what it must answer."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import ClassVar, Protocol

from scantling.exact import Fraction
from scantling.findings import Finding, Place
from scantling.joints._joint import Contact, Press
from scantling.parts.drawn import Drawn, drawn
from scantling.parts.part import Part
from scantling.parts.pulled import Pulled
from scantling.parts.solid import finished, placed, taken
from scantling.solids.contact import contact_area
from scantling.solids.kernel import Bulk, Placed, Solid
from scantling.solids.store import Store
from scantling.units import FINEST_INCH, Unit, rounded, written_with_unit

FINEST_MM = Fraction(1, 100)  # [mm] smallest amount named in a finding


@dataclass(frozen=True, kw_only=True)
class Case:
    """The piece as it stands before a proof: parts, what is said of them, and their solids."""

    parts: tuple[Part, ...]
    store: Store
    contacts: tuple[Contact, ...] = ()
    presses: tuple[Press, ...] = ()
    sizes: Mapping[str, Fraction] = field(default_factory=dict)  # [mm] by name
    places: Mapping[str, Place] = field(default_factory=dict)  # by part or joint
    pulled: tuple[Pulled, ...] = ()
    unit: Unit = Unit.MM  # findings speak in it

    @cached_property
    def standing(self) -> tuple[Placed, ...]:
        """Finished parts where they stand, in the order of `parts`."""
        return tuple(placed(part, self.solid(part)) for part in self.parts)

    @cached_property
    def standing_by_name(self) -> Mapping[str, Placed]:
        """The same, by name of the part."""
        return {stood.name: stood for stood in self.standing}

    @cached_property
    def touched(self) -> tuple[float, ...]:
        """What truly touches of each contact, in the order of `contacts`. [mm2]"""
        stood = self.standing_by_name
        return tuple(
            contact_area(stood[c.between[0]], stood[c.between[1]], patch=c.patch, store=self.store)
            for c in self.contacts
        )

    def solid(self, part: Part) -> Solid:
        """The finished part in its own frame."""
        return finished(part, store=self.store)

    def taken(self, part: Part) -> tuple[Bulk, ...]:
        """What each of its cuts would take of the whole block."""
        return taken(part, store=self.store)

    def drawn(self, part: Part) -> tuple[Drawn, ...]:
        """Its cuts as a drawing shows them."""
        return tuple(drawn(cut) for cut in part.cuts)

    def place(self, names: Iterable[str]) -> Place | None:
        """Where the first of these that has one stands in the maker's file."""
        return next((self.places[name] for name in names if name in self.places), None)

    def said(self, amount: float) -> str:
        """An amount measured on solids, as a finding names it: `0.4 mm`, `under 1/64 in`.

        Args:
            amount: A length. [mm]
        """
        finest = FINEST_MM if self.unit is Unit.MM else FINEST_INCH
        value = rounded(Fraction(amount), to=finest)
        if value < finest:
            return f"under {written_with_unit(finest, unit=self.unit)}"
        return written_with_unit(value, unit=self.unit)


class Proof(Protocol):
    """One thing that must hold for every piece."""

    title: ClassVar[str]

    def findings(self, case: Case) -> tuple[Finding, ...]:
        """What does not hold; nothing if all is well."""
        ...
