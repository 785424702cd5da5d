"""A part before its sizes are known: names, how it lies, and where its origin will be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.findings import Place
from scantling.parts.cut import Cut
from scantling.parts.frame import Extent, Placement, Surface, Way
from scantling.parts.part import BOARD, Blank, Part
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Dimension, Kind, Relations

NOWHERE = (ZERO, ZERO, ZERO)


@dataclass(frozen=True, kw_only=True)
class PlannedPart:
    """A part whose three sizes are the dimensions `<name>.length`, `.width` and `.thickness`."""

    name: str
    family: str
    wood: str
    ways: tuple[Way, Way, Way]  # of length, width, thickness
    at: tuple[Linear, Linear, Linear] = NOWHERE  # origin: wide, deep, tall [mm]
    cut_of_wood: str = "flat"
    horns: tuple[Linear, Linear] = (ZERO, ZERO)
    blank: Blank = BOARD
    show: frozenset[Surface] = frozenset()
    hardware: bool = False
    moves_with: str = ""
    kinds: tuple[Kind, Kind, Kind] = (Kind.TAPE, Kind.TAPE, Kind.TAPE)
    stage: int = 0  # place in the making; the latest leaves the tape first
    place: Place | None = None

    @property
    def length(self) -> Linear:
        """Along the grain, as a sum of one dimension."""
        return size_of(f"{self.name}.length")

    @property
    def width(self) -> Linear:
        """Across the grain."""
        return size_of(f"{self.name}.width")

    @property
    def thickness(self) -> Linear:
        """The third."""
        return size_of(f"{self.name}.thickness")

    def relations(self) -> Relations:
        """The three dimensions themselves."""
        words = ("length", "width", "thickness")
        return Relations(
            dimensions=tuple(
                Dimension(
                    name=f"{self.name}.{word}",
                    kind=kind,
                    says=f"{word} of the {self.name}",
                    stage=self.stage,
                )
                for word, kind in zip(words, self.kinds, strict=True)
            )
        )

    def extent(self, sizes: Mapping[str, Fraction]) -> Extent:
        """Finished size. [mm]"""
        return Extent(
            length=sizes[f"{self.name}.length"],
            width=sizes[f"{self.name}.width"],
            thickness=sizes[f"{self.name}.thickness"],
        )

    def built(self, sizes: Mapping[str, Fraction], *, cuts: tuple[Cut, ...]) -> Part:
        """The part with its sizes, its place and its cuts."""
        wide, deep, tall = (linear.at(sizes) for linear in self.at)
        along, across, into = self.ways
        return Part(
            name=self.name,
            family=self.family,
            extent=self.extent(sizes),
            wood=self.wood,
            cut_of_wood=self.cut_of_wood,
            placement=Placement(along=along, across=across, into=into, at=(wide, deep, tall)),
            blank=self.blank,
            cuts=cuts,
            horns=(self.horns[0].at(sizes), self.horns[1].at(sizes)),
            show=self.show,
            hardware=self.hardware,
            moves_with=self.moves_with,
        )
