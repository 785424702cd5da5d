"""What a form is: it reads its section of the piece file and sketches parts, joints and relations.

Forms follow each other in the order of the work and know each other only by what a sketch says:
names of dimensions, openings and landings. Front is 0 deep at the foremost face, the left end is
0 wide, the floor is 0 tall.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import ClassVar

from scantling.errors import UnknownNameError
from scantling.exact import Fraction
from scantling.findings import Finding, Place
from scantling.joints._joint import Choice, Gap, Joined, Said
from scantling.parts import Cut
from scantling.parts.planned import PlannedPart
from scantling.parts.pulled import Pulled
from scantling.piece._file.kinds import AsBoardsGive
from scantling.piece._file.section import Section
from scantling.roster import plain_name
from scantling.sizes.linear import Linear, size_of
from scantling.sizes.model import Relations, Rule, Sizes, Stated
from scantling.timber.room import Room
from scantling.units import Unit


@dataclass(frozen=True, kw_only=True)
class Opening:
    """A clear opening in the front. Long-grain edges keep their size, the others move."""

    name: str
    wide: Linear
    tall: Linear
    deep: Linear  # from the frame's face to whatever stops a drawer at the back
    left: Linear  # from the left end of the piece
    below: Linear  # from the floor
    left_part: str
    right_part: str
    above_part: str
    below_part: str
    place: Place | None = None  # of its row


@dataclass(frozen=True, kw_only=True)
class Landing:
    """A place that one form offers another: a dimension or a part by a name of the trade."""

    name: str  # "back rabbet", "mid rail"
    parts: tuple[str, ...] = ()
    sums: Mapping[str, Linear] = field(default_factory=dict)
    place: Place | None = None  # where the file speaks of it

    def sum(self, word: str) -> Linear:
        """One of the sums it offers.

        Raises:
            UnknownNameError: It offers no such sum.
        """
        try:
            return self.sums[word]
        except KeyError:
            msg = f"{self.name} offers no {word!r}"
            raise UnknownNameError(msg) from None


@dataclass(frozen=True, kw_only=True)
class Wood:
    """Species and ring orientation wanted for a part."""

    species: str
    cut: str = "flat"


@dataclass(frozen=True, kw_only=True)
class Shaping:
    """Cuts that a form makes by itself: an arch, a bevel."""

    part: str
    cuts: Callable[[Sizes], tuple[Cut, ...]]


@dataclass(frozen=True, kw_only=True)
class Fitting:
    """A gap that one spell of the year closes, and how it is told if it closes too far."""

    gap: Gap
    code: str
    place: Place | None
    in_dry_spell: bool = False  # what shrinks closes it; otherwise what grows
    may_grow: tuple[str, ...] = ()  # sizes that are made larger for it, unless all are stated
    unneeded: str = ""  # what is advised where no spell of the year ever closes it


@dataclass(frozen=True, kw_only=True)
class Unsaid:
    """A size that a maker is expected to say and did not."""

    size: str
    word: str  # that says it in the section
    place: Place | None  # of the section


@dataclass(frozen=True, kw_only=True)
class Sketch:
    """What the forms have drafted so far. Never changed in place."""

    parts: tuple[PlannedPart, ...] = ()
    joined: tuple[Joined, ...] = ()
    shapings: tuple[Shaping, ...] = ()
    relations: Relations = field(default_factory=Relations)
    stated: tuple[Stated, ...] = ()
    unsaid: tuple[Rule, ...] = ()  # named after all other habits, so that they yield first
    not_said: tuple[Unsaid, ...] = ()  # told with what is taken instead
    boards_give: tuple[tuple[str, Place | None], ...] = ()  # thicknesses left to the boards
    openings: Mapping[str, Opening] = field(default_factory=dict)
    landings: Mapping[str, Landing] = field(default_factory=dict)
    pulled: tuple[Pulled, ...] = ()
    fittings: tuple[Fitting, ...] = ()
    findings: tuple[Finding, ...] = ()
    in_doubt: frozenset[str] = frozenset()  # kinds of thing that a faulty section would offer

    def with_parts(self, *parts: PlannedPart) -> Sketch:
        """With more parts and their own dimensions."""
        relations = self.relations
        for part in parts:
            relations += part.relations()
        return replace(self, parts=self.parts + parts, relations=relations)

    def with_joined(self, *joined: Joined) -> Sketch:
        """With more joints."""
        return replace(self, joined=self.joined + joined)

    def with_shaping(self, part: str, cuts: Callable[[Sizes], tuple[Cut, ...]]) -> Sketch:
        """With cuts of a form's own."""
        return replace(self, shapings=(*self.shapings, Shaping(part=part, cuts=cuts)))

    def with_relations(self, relations: Relations) -> Sketch:
        """With more relations."""
        return replace(self, relations=self.relations + relations)

    def with_unsaid(self, *rules: Rule) -> Sketch:
        """With sizes that are taken where nothing else settles them."""
        return replace(self, unsaid=self.unsaid + rules)

    def with_not_said(self, *sizes: Unsaid) -> Sketch:
        """With sizes that the maker was expected to say."""
        return replace(self, not_said=self.not_said + sizes)

    def with_stated(self, *pairs: tuple[str, Said | AsBoardsGive | None]) -> Sketch:
        """With what the maker wrote of some dimensions; None is silence."""
        found = tuple(
            Stated(name=name, value=said.value, text=said.text, place=said.place)
            for name, said in pairs
            if isinstance(said, Said)
        )
        left = tuple((name, said.place) for name, said in pairs if isinstance(said, AsBoardsGive))
        return replace(self, stated=self.stated + found, boards_give=self.boards_give + left)

    def with_opening(self, opening: Opening) -> Sketch:
        """With one more opening."""
        return replace(self, openings={**self.openings, opening.name: opening})

    def with_landing(self, landing: Landing) -> Sketch:
        """With one more landing."""
        return replace(self, landings={**self.landings, landing.name: landing})

    def with_pulled(self, *pulled: Pulled) -> Sketch:
        """With more drawers."""
        return replace(self, pulled=self.pulled + pulled)

    def with_fittings(self, *fittings: Fitting) -> Sketch:
        """With more gaps that the year works on."""
        return replace(self, fittings=self.fittings + fittings)

    def with_findings(self, *findings: Finding) -> Sketch:
        """With more findings."""
        return replace(self, findings=self.findings + findings)

    def lacking(self, what: str, finding: Finding) -> Sketch:
        """With a finding that a thing is not there, unless a faulty section would offer it.

        Args:
            what: Kind of thing that was looked for: one of the words in `Form.offers`.
            finding: What to tell where no other fault can be the reason.
        """
        return self if what in self.in_doubt else self.with_findings(finding)

    def part(self, name: str) -> PlannedPart:
        """The planned part of that name.

        Raises:
            UnknownNameError: No such part.
        """
        for part in self.parts:
            if part.name == name:
                return part
        msg = f"no part is called {name!r}"
        raise UnknownNameError(msg)

    def changed(self, name: str, change: Callable[[PlannedPart], PlannedPart]) -> Sketch:
        """With one planned part replaced by what `change` makes of it."""
        parts = tuple(change(p) if p.name == name else p for p in self.parts)
        return replace(self, parts=parts)


@dataclass(frozen=True, kw_only=True)
class Whole:
    """What the head of the piece file says, for all forms."""

    name: str
    measure: Unit
    finest: Fraction  # smallest mark of the rule [mm]
    room: Room
    woods: Mapping[str, Wood]  # "show", "inside", a family or a part, all in plain spelling
    chosen: Mapping[str, Choice] = field(default_factory=dict)  # by form section
    measured: Mapping[str, Fraction] = field(default_factory=dict)  # sizes of made parts [mm]

    def wood(self, *, part: str, family: str, role: str) -> Wood:
        """Wood of a part: by its own name, its family, or what it is for ("show", "inside")."""
        for key in map(plain_name, (part, family, f"{family}s", role)):
            if key in self.woods:
                return self.woods[key]
        return self.woods.get("show") or next(iter(self.woods.values()))


@dataclass(frozen=True)
class Form:
    """One form. `section` is the model of its part of the piece file, read by the reader."""

    title: ClassVar[str]  # heading in the piece file: "case", "face frame"
    order: ClassVar[int]  # forms are drafted from the lowest on
    many: ClassVar[bool] = False  # [shelf.deck], [shelf.loose]
    section: ClassVar[type[Section]]
    needs: ClassVar[tuple[str, ...]] = ("case",)  # landings it stands on
    offers: ClassVar[tuple[str, ...]] = ()  # kinds of thing that later forms may stand on

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """What was sketched so far, with this form added."""
        del said, name, so_far, whole
        raise UnknownNameError(cls.title)

    @classmethod
    def turn(cls, said: object) -> int:
        """Of the sections of one form those of the lowest are drafted first."""
        del said
        return 0

    @classmethod
    def together(cls, said: Mapping[str, object], *, so_far: Sketch, whole: Whole) -> Sketch:
        """What the sections of one form settle among themselves once all of them are drafted.

        Args:
            said: Sections by name, as the file has them.
            so_far: With all of them drafted.
            whole: The piece.
        """
        del said, whole
        return so_far

    @classmethod
    def choose(cls, said: object, *, name: str, sizes: Sizes, whole: Whole) -> Choice:
        """Counts that the form chooses from solved sizes."""
        del said, name, sizes, whole
        return Choice()


def part_size(part: str, word: str) -> Linear:
    """`length`, `width` or `thickness` of a part by name."""
    return size_of(f"{part}.{word}")
