"""A sketch with its woods and tools: asks every joint its questions and builds the parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil
from string import ascii_lowercase
from typing import Any, TypeVar

from scantling.exact import Fraction
from scantling.findings import Finding, Place
from scantling.joints._joint import Choice, Joined, Press, State
from scantling.parts import Cut, GluedUp, Part, Strip
from scantling.parts.planned import PlannedPart
from scantling.piece import Piece, unknown_names
from scantling.piece._form import Sketch
from scantling.piece._named import under_own_names
from scantling.setting_out.answer import SetGap, SetJoint
from scantling.setting_out.memory import Memory
from scantling.setting_out.year import kept_open
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation
from scantling.shop.tools import Shop
from scantling.sizes.hearing import AsTheBoardsGive, from_boards
from scantling.sizes.model import Relations, Sizes, Stated
from scantling.timber.movement import Cut as Rings
from scantling.timber.movement import Strain, strain
from scantling.timber.species import Species, species

T = TypeVar("T")

NO_SIZES = Sizes()


@dataclass(frozen=True, kw_only=True)
class Bench:
    """A sketch with the woods and tools it is worked with."""

    sketch: Sketch
    piece: Piece
    shop: Shop
    habits: Habits
    woods: Mapping[str, Species]
    strains: Mapping[str, Strain]
    kept_open: Relations  # what the year leaves of the forms' own gaps
    also: tuple[Stated, ...]  # sizes said by name, under the names of the sketch
    boards: tuple[Stated, ...]  # thicknesses that the boards give
    findings: tuple[Finding, ...]
    joined: tuple[Joined, ...]  # as kept in memory, where nothing has changed
    memory: Memory

    @classmethod
    def of(
        cls,
        sketch: Sketch,
        piece: Piece,
        shop: Shop,
        habits: Habits,
        *,
        attainable: Mapping[str, Sequence[Fraction]],
        memory: Memory,
    ) -> Bench:
        """The bench made ready: wood and movement of every planned part.

        Args:
            sketch: What the forms drafted.
            piece: The piece as read.
            shop: Tools owned.
            habits: How the maker works.
            attainable: By species, thicknesses of the boards there are. [mm]
            memory: Answers of earlier rounds.
        """
        made = [p for p in sketch.parts if not p.hardware]
        woods = {p.name: species(p.wood) for p in made}
        strains = {
            p.name: strain(woods[p.name], Rings(p.cut_of_wood), piece.whole.room) for p in made
        }
        by_name = under_own_names([(s.name, s) for s in piece.also], sketch)
        also = tuple(replace(said, name=name) for name, said in by_name)
        left = under_own_names(piece.as_boards_give, sketch)
        boards, findings = _from_boards(sketch, left, attainable)
        names = {part for p in made for part in (p.name, p.family)}
        return cls(
            sketch=sketch,
            piece=piece,
            shop=memory.same("shop", shop),
            habits=memory.same("habits", habits),
            woods=memory.same("woods", woods),
            strains=memory.same("strains", strains),
            kept_open=kept_open(sketch.fittings, strains, stated=[*sketch.stated, *also]),
            joined=tuple(memory.same(("joined", j.name), j) for j in sketch.joined),
            memory=memory,
            also=also,
            boards=boards,
            # sizes that the piece has not are the solver's to find: it knows the joints' own
            findings=(
                *findings,
                *unknown_names(piece, sizes=[s.name for s in piece.also], parts=names),
            ),
        )

    def relations(self, chosen: Mapping[str, Choice]) -> Relations:
        """What the forms and every joint say of sizes with these choices."""
        found = [self.sketch.relations, self.kept_open]
        for j in self.joined:
            choice = chosen[j.name]
            found.append(
                self.memory.answer(
                    ("relations", j.name),
                    asked=(j, self._same(choice, j), self.strains),
                    sizes=NO_SIZES,
                    ask=_telling(j.joint.relations, j, choice=choice, strains=self.strains),
                )
            )
        return Relations.joined(found)

    def _same(self, choice: Choice, j: Joined) -> Choice:
        return self.memory.same(("choice", j.name), choice)

    def choose(self, sizes: Sizes | None) -> dict[str, Choice]:
        """What every joint chooses at these sizes."""
        return {j.name: self._choice(j, sizes) for j in self.joined}

    def _choice(self, j: Joined, sizes: Sizes | None) -> Choice:
        def ask(known: Sizes | None) -> Choice:
            return j.joint.choose(
                j,
                sizes=known,
                shop=self.shop,
                habits=self.habits,
                woods=self.woods,
                strains=self.strains,
            )

        if sizes is None:
            return ask(None)
        return self.memory.answer(
            ("choice", j.name),
            asked=(j, self.shop, self.habits, self.woods, self.strains),
            sizes=sizes,
            ask=lambda known, _: ask(known),
        )

    def stated(self) -> tuple[Stated, ...]:
        """What the maker wrote: of forms, of joints, and by name."""
        joints = tuple(s for j in self.joined for s in j.joint.stated(j))
        return (*self.sketch.stated, *joints, *self.also, *self.boards)

    def parts(
        self, sizes: Sizes, chosen: Mapping[str, Choice], *, widest: Fraction
    ) -> tuple[Part, ...]:
        """Every part with its cuts, then what is bought.

        Args:
            sizes: Solved sizes.
            chosen: What the joints chose.
            widest: Width above which a part is glued up from strips. [mm]
        """
        cuts = self._cuts(sizes, chosen)
        made = tuple(self._part(p, sizes, tuple(cuts[p.name]), widest) for p in self.sketch.parts)
        by_name = {p.name: p for p in made}
        bought = self._asked("loose", sizes, chosen, by_name)
        return made + tuple(part for parts in bought for part in parts)

    def _cuts(self, sizes: Sizes, chosen: Mapping[str, Choice]) -> Mapping[str, list[Cut]]:
        found: dict[str, list[Cut]] = {p.name: [] for p in self.sketch.parts}
        for j in self.joined:
            choice = self._same(chosen[j.name], j)
            cuts = self.memory.answer(
                ("cuts", j.name),
                asked=(j, choice),
                sizes=sizes,
                ask=_measuring(j.joint.cuts, j, choice=choice),
            )
            for part, some in cuts.items():
                found[part].extend(some)
        for i, shaping in enumerate(self.sketch.shapings):
            made = self.memory.same(("shaping", i), shaping.cuts(sizes))
            found[shaping.part].extend(made)
        return found

    def _part(
        self, planned: PlannedPart, sizes: Sizes, cuts: tuple[Cut, ...], widest: Fraction
    ) -> Part:
        name = planned.name
        return self.memory.answer(
            ("part", name),
            asked=(
                self.memory.same(("planned", name), planned),
                self.memory.same(("cuts of", name), cuts),
                self.memory.same("widest", widest),
            ),
            sizes=sizes,
            ask=lambda known, _: _from_strips(planned.built(known, cuts=cuts), widest=widest),
        )

    def _asked(
        self,
        question: str,
        sizes: Sizes,
        chosen: Mapping[str, Choice],
        parts: Mapping[str, Part],
        **more: object,
    ) -> list[Any]:
        """One of the questions that look at sizes and parts, put to every joint."""
        found = []
        for j in self.joined:
            choice = self._same(chosen[j.name], j)
            answers = getattr(j.joint, question)
            told = more if question == "moves" else {"choice": choice, **more}
            found.append(
                self.memory.answer(
                    (question, j.name),
                    asked=(j, choice, *more.values()),
                    sizes=sizes,
                    parts=parts,
                    ask=_looking(answers, j, **told),
                )
            )
        return found

    def presses(
        self, sizes: Sizes, chosen: Mapping[str, Choice], parts: Sequence[Part]
    ) -> tuple[Press, ...]:
        """Overlaps that are meant, of every joint."""
        found = self._asked("presses", sizes, chosen, {p.name: p for p in parts})
        return tuple(press for presses in found for press in presses)

    def joints(
        self, sizes: Sizes, chosen: Mapping[str, Choice], parts: Sequence[Part]
    ) -> tuple[SetJoint, ...]:
        """Every joint with its answers."""
        by_name = {p.name: p for p in parts}
        contacts = self._asked("contacts", sizes, chosen, by_name)
        presses = self._asked("presses", sizes, chosen, by_name)
        moves = self._asked("moves", sizes, chosen, by_name, state=State.OPEN)
        fixings = self._asked("fixings", sizes, chosen, by_name)
        return tuple(
            SetJoint(
                joined=j,
                choice=(choice := self._same(chosen[j.name], j)),
                drawn=self._measured("drawn", j, choice, sizes),
                contacts=contacts[i],
                presses=presses[i],
                moves=moves[i],
                fixings=fixings[i],
                gaps=self._gaps(j, choice, sizes),
                holds=self._measured("holds", j, choice, sizes, woods=self.woods),
                work=self._work(j, choice),
            )
            for i, j in enumerate(self.joined)
        )

    def _measured(
        self, question: str, j: Joined, choice: Choice, sizes: Sizes, **more: object
    ) -> Any:  # noqa: ANN401 - whatever that question is answered with
        """One of the questions that look at sizes alone."""
        return self.memory.answer(
            (question, j.name),
            asked=(j, choice, *more.values()),
            sizes=sizes,
            ask=_measuring(getattr(j.joint, question), j, choice=choice, **more),
        )

    def _gaps(self, j: Joined, choice: Choice, sizes: Sizes) -> tuple[SetGap, ...]:
        """Room left on purpose, today and at both ends of the year."""
        return self.memory.answer(
            ("gaps", j.name),
            asked=(j, choice, self.strains),
            sizes=sizes,
            ask=lambda known, _: tuple(
                SetGap.of(gap, sizes=known, strains=self.strains, place=j.place)
                for gap in j.joint.gaps(j, choice=choice)
            ),
        )

    def _work(self, j: Joined, choice: Choice) -> tuple[Operation, ...]:
        """What is done for the joint, in its order."""
        return self.memory.answer(
            ("work", j.name),
            asked=(j, choice, self.shop, self.habits),
            sizes=NO_SIZES,
            ask=_telling(j.joint.work, j, choice=choice, shop=self.shop, habits=self.habits),
        )

    def faults(
        self, sizes: Sizes, chosen: Mapping[str, Choice], parts: Sequence[Part]
    ) -> tuple[Finding, ...]:
        """What the joints have to say against these sizes."""
        by_name = {p.name: p for p in parts}
        found = self._asked("faults", sizes, chosen, by_name, shop=self.shop)
        return tuple(fault for faults in found for fault in faults)


Ask = Callable[[Sizes, Mapping[str, Part]], T]


def _telling(question: Callable[..., T], j: Joined, **told: object) -> Ask[T]:
    """A question that looks at no size and no part."""
    return lambda _, __: question(j, **told)


def _measuring(question: Callable[..., T], j: Joined, **told: object) -> Ask[T]:
    """A question that looks at sizes."""
    return lambda sizes, _: question(j, sizes=sizes, **told)


def _looking(question: Callable[..., T], j: Joined, **told: object) -> Ask[T]:
    """A question that looks at sizes and parts."""
    return lambda sizes, parts: question(j, sizes=sizes, parts=parts, **told)


def _from_strips(part: Part, *, widest: Fraction) -> Part:
    if part.hardware or part.extent.width <= widest:
        return part
    count = ceil(part.extent.width / widest)
    strips = tuple(
        Strip(name=f"strip {_letters(i)}", wood=part.wood, ring_side_up=i % 2 == 0)
        for i in range(count)
    )
    return replace(part, blank=GluedUp(strips=strips))


def _letters(number: int) -> str:
    """Of the alphabet, then aa, ab and so on; the first is number 0."""
    more, last = divmod(number, len(ascii_lowercase))
    return (_letters(more - 1) if more else "") + ascii_lowercase[last]


def _from_boards(
    sketch: Sketch,
    by_name: Sequence[tuple[str, Place]],
    attainable: Mapping[str, Sequence[Fraction]],
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
        for name, place in (*sketch.boards_give, *by_name)
    ]
    return from_boards(wishes, attainable=attainable)
