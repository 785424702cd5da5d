"""A sketch with its woods and tools: asks every joint its questions and builds the parts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil
from string import ascii_lowercase

from scantling.findings import Finding
from scantling.joints._joint import Choice, State
from scantling.parts import Cut, GluedUp, Part, Strip
from scantling.piece import Piece, unknown_names
from scantling.piece._form import Sketch
from scantling.setting_out.answer import SetJoint
from scantling.shop.tools import Shop
from scantling.sizes.hearing import AsTheBoardsGive, from_boards
from scantling.sizes.model import Relations, Sizes, Stated
from scantling.timber.movement import Cut as Rings
from scantling.timber.movement import Strain, strain
from scantling.timber.species import Species, species


@dataclass(frozen=True, kw_only=True)
class Bench:
    """A sketch with the woods and tools it is worked with."""

    sketch: Sketch
    piece: Piece
    shop: Shop
    woods: Mapping[str, Species]
    strains: Mapping[str, Strain]
    boards: tuple[Stated, ...]  # thicknesses that the boards give
    findings: tuple[Finding, ...]

    @classmethod
    def of(
        cls,
        sketch: Sketch,
        piece: Piece,
        shop: Shop,
        *,
        attainable: Mapping[str, Sequence[Fraction]],
    ) -> Bench:
        """The bench made ready: wood and movement of every planned part.

        Args:
            sketch: What the forms drafted.
            piece: The piece as read.
            shop: Tools owned.
            attainable: By species, thicknesses of the boards there are. [mm]
        """
        made = [p for p in sketch.parts if not p.hardware]
        woods = {p.name: species(p.wood) for p in made}
        strains = {
            p.name: strain(woods[p.name], Rings(p.cut_of_wood), piece.whole.room) for p in made
        }
        boards, findings = _from_boards(sketch, piece, attainable)
        names = {part for p in made for part in (p.name, p.family)}
        return cls(
            sketch=sketch,
            piece=piece,
            shop=shop,
            woods=woods,
            strains=strains,
            boards=boards,
            # sizes that the piece has not are the solver's to find: it knows the joints' own
            findings=(
                *findings,
                *unknown_names(piece, sizes=[s.name for s in piece.also], parts=names),
            ),
        )

    def relations(self, chosen: Mapping[str, Choice]) -> Relations:
        """What the forms and every joint say of sizes with these choices."""
        found = self.sketch.relations
        for joined in self.sketch.joined:
            found += joined.joint.relations(
                joined, choice=chosen[joined.name], strains=self.strains
            )
        return found

    def choose(self, sizes: Sizes | None, previous: Mapping[str, Choice]) -> dict[str, Choice]:
        """What every joint chooses at these sizes."""
        return {
            j.name: j.joint.choose(
                j, sizes=sizes, shop=self.shop, woods=self.woods, previous=previous.get(j.name)
            )
            for j in self.sketch.joined
        }

    def stated(self) -> tuple[Stated, ...]:
        """What the maker wrote: of forms, of joints, and by name."""
        joints = tuple(s for j in self.sketch.joined for s in j.joint.stated(j))
        return (*self.sketch.stated, *joints, *self.piece.also, *self.boards)

    def parts(
        self, sizes: Sizes, chosen: Mapping[str, Choice], *, widest: Fraction
    ) -> tuple[Part, ...]:
        """Every part with its cuts, then what is bought.

        Args:
            sizes: Solved sizes.
            chosen: What the joints chose.
            widest: Width above which a part is glued up from strips. [mm]
        """
        cuts: dict[str, list[Cut]] = {p.name: [] for p in self.sketch.parts}
        for joined in self.sketch.joined:
            found = joined.joint.cuts(joined, sizes=sizes, choice=chosen[joined.name])
            for part, some in found.items():
                cuts[part].extend(some)
        for shaping in self.sketch.shapings:
            cuts[shaping.part].extend(shaping.cuts(sizes))
        made = tuple(
            _from_strips(p.built(sizes, cuts=tuple(cuts[p.name])), widest=widest)
            for p in self.sketch.parts
        )
        by_name = {p.name: p for p in made}
        bought = tuple(
            part
            for j in self.sketch.joined
            for part in j.joint.loose(j, sizes=sizes, choice=chosen[j.name], parts=by_name)
        )
        return made + bought

    def joints(
        self, sizes: Sizes, chosen: Mapping[str, Choice], parts: Sequence[Part]
    ) -> tuple[SetJoint, ...]:
        """Every joint with its answers."""
        by_name = {p.name: p for p in parts}
        found = []
        for j in self.sketch.joined:
            choice, joint = chosen[j.name], j.joint
            found.append(
                SetJoint(
                    joined=j,
                    choice=choice,
                    drawn=joint.drawn(j, sizes=sizes, choice=choice),
                    contacts=joint.contacts(j, sizes=sizes, choice=choice, parts=by_name),
                    presses=joint.presses(j, sizes=sizes, choice=choice, parts=by_name),
                    moves=joint.moves(j, state=State.OPEN, sizes=sizes, parts=by_name),
                )
            )
        return tuple(found)

    def faults(
        self, sizes: Sizes, chosen: Mapping[str, Choice], parts: Sequence[Part]
    ) -> tuple[Finding, ...]:
        """What the joints have to say against these sizes."""
        by_name = {p.name: p for p in parts}
        return tuple(
            fault
            for j in self.sketch.joined
            for fault in j.joint.faults(
                j, sizes=sizes, choice=chosen[j.name], shop=self.shop, parts=by_name
            )
        )


def _from_strips(part: Part, *, widest: Fraction) -> Part:
    if part.hardware or part.extent.width <= widest:
        return part
    count = ceil(part.extent.width / widest)
    strips = tuple(
        Strip(name=f"strip {ascii_lowercase[i]}", wood=part.wood, ring_side_up=i % 2 == 0)
        for i in range(count)
    )
    return replace(part, blank=GluedUp(strips=strips))


def _from_boards(
    sketch: Sketch, piece: Piece, attainable: Mapping[str, Sequence[Fraction]]
) -> tuple[tuple[Stated, ...], tuple[Finding, ...]]:
    """Thicknesses left to the boards: by the species of the part they belong to."""
    wood_of = {p.name: p.wood for p in sketch.parts}
    wishes = [
        AsTheBoardsGive(
            name=name,
            boards=wood_of.get(name.rpartition(".")[0], ""),
            text="as the boards give",
            place=place,
        )
        for name, place in (*sketch.boards_give, *piece.as_boards_give)
    ]
    return from_boards(wishes, attainable=attainable)
