"""Reads a piece file: every section by its form, every fault with its place and cure."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import Any, TypeVar

from pydantic import ValidationError

import scantling.joints
import scantling.piece
from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight, in_order, in_sentences
from scantling.joints._joint import Joint
from scantling.piece._file.head import (
    USUAL_FINEST,
    Further,
    Head,
    NamedWood,
    RoomSection,
    further,
    measure_of,
    newer_format,
    other_rule,
    woods,
)
from scantling.piece._file.kinds import Terms
from scantling.piece._file.schema import schema
from scantling.piece._file.section import Section, findings_of, known_words, words_of
from scantling.piece._file.text import (
    Key,
    Node,
    Row,
    Sort,
    Source,
    Table,
    Written,
    halt,
    shown,
    sort_of,
)
from scantling.piece._file.toml import document
from scantling.piece._form import Form, Whole, Wood
from scantling.roster import Roster, members, nearest, plain_name
from scantling.sizes.model import Stated
from scantling.timber.moisture import Season
from scantling.timber.room import Room
from scantling.units import Unit

WOOD_ROLES = ("show", "inside")
LONGEST = 100_000  # [characters] a cupboard takes 4,000
PLAIN_SECTIONS = ("room", "wood", "also")
_PLAIN_CURES = {
    "room": 'write below it dry = "40 % at 18 C", damp = ... and bench = ...',
    "wood": 'write below it show = "white ash", say',
    "also": "take it out",
}
_STILL = Season(humidity=50.0, temperature=20.0)
_NO_ROOM = Room(dry=_STILL, damp=_STILL, bench=_STILL)  # nothing moves; of no complete piece

S = TypeVar("S", bound=Section)


@dataclass(frozen=True, kw_only=True)
class Asked:
    """One section of the file, read by the model of its form."""

    form: str  # title of the form
    name: str  # own name of one of many, else the title
    said: Section
    place: Place


@dataclass(frozen=True, kw_only=True)
class Piece:
    """What a piece file says, and what is wrong with it.

    Where a fault leaves something out, it is missing here: only a `complete` piece says all
    that its maker wrote.
    """

    text: str
    file: str
    whole: Whole
    sections: tuple[Asked, ...] = ()  # in the order of the file
    also: tuple[Stated, ...] = ()  # sizes said by name
    as_boards_give: tuple[tuple[str, Place], ...] = ()  # names of thicknesses
    wood_for: tuple[tuple[str, Place], ...] = ()  # what each wood was said for
    shop: str | None = None  # path from the folder of the piece
    notes: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()
    readable: bool = True  # whether it is a piece file at all

    @property
    def name(self) -> str:
        """What the maker calls it."""
        return self.whole.name

    @property
    def finest(self) -> Fraction:
        """Smallest mark of the rule. [mm]"""
        return self.whole.finest

    @property
    def complete(self) -> bool:
        """Whether all of it could be read."""
        return self.readable and not any(f.weight is Weight.HALT for f in self.findings)


def read(
    text: str,
    *,
    file: str = "piece.toml",
    forms: Mapping[str, type[Form]] | None = None,
    joints: Mapping[str, type] | None = None,
) -> Piece:
    """The piece a text describes. Never raises for what a maker wrote.

    Args:
        text: The whole file.
        file: What findings call it.
        forms: Forms by title; None for those of the house.
        joints: Joints by title; None for those of the house.
    """
    source = Source(text.replace("\r\n", "\n").removeprefix("\ufeff"), file)
    if fault := _no_text(source):
        return _unread(source, text, fault)
    root, found = document(source)
    reading = _Reading(
        root=root,
        forms=members(scantling.piece, base=Form) if forms is None else forms,
        terms=Terms(
            measure=measure_of(root), joints=None if joints is None else Roster("joint", joints)
        ),
    )
    if fault := reading.no_piece(source):
        return _unread(source, text, fault)
    return reading.piece(source, text, found)


def editor_schema() -> dict[str, object]:
    """JSON Schema of the piece files that `read` reads, for editors."""
    forms: Mapping[str, Any] = members(scantling.piece, base=Form)
    return schema(forms=forms, joints=members(scantling.joints, base=Joint))


def unknown_names(
    piece: Piece, *, sizes: Collection[str], parts: Collection[str]
) -> tuple[Finding, ...]:
    """Names that the piece file speaks of and the piece has not.

    Args:
        piece: As read.
        sizes: Names of all its dimensions.
        parts: Names of its parts and of their families.
    """
    known = {plain_name(f"{part}{end}") for part in parts for end in ("", "s")} | {*WOOD_ROLES}
    also = [*((s.name, s.place) for s in piece.also), *piece.as_boards_give]
    return in_order(
        [
            *(_no_such("size", name, at, sizes) for name, at in also if name not in sizes),
            *(
                _no_such("part", name, at, known)
                for name, at in piece.wood_for
                if name not in known
            ),
        ]
    )


def _no_such(kind: str, name: str, place: Place | None, known: Collection[str]) -> Finding:
    if kind == "size":
        meant = nearest(name, known)
        cure = f'Perhaps "{meant}".' if meant else "The list of parts shows every size."
        return halt("unknown-size", f"No size of this piece is called {shown(name)}.", cure, place)
    # a wood for parts that are gone does no harm; only what is nearly the same is a misspelling
    meant = next(iter(get_close_matches(plain_name(name), sorted(known), n=1, cutoff=0.85)), None)
    says = f"This piece has no part called {shown(name)}: the line changes nothing."
    cure = f'Perhaps "{meant}" is meant.' if meant else "It may stay for the day there is one."
    return replace(halt("unknown-part", says, cure, place), weight=Weight.MIND)


def _no_text(source: Source) -> Finding | None:
    if "\0" in source.text:
        says, cure = "this is no text file", "open a file named piece.toml"
    elif len(source.text) > LONGEST:
        says, cure = f"this is longer than {LONGEST} signs", "describe one piece a file"
    else:
        return None
    return halt("not-a-piece", says, cure, source.place(range(0)))


def _unread(source: Source, text: str, fault: Finding) -> Piece:
    whole = Whole(
        name="",
        measure=Unit.INCH,
        finest=USUAL_FINEST[Unit.INCH],
        room=_NO_ROOM,
        woods={},
    )
    return Piece(
        text=text, file=source.file, whole=whole, findings=(in_sentences(fault),), readable=False
    )


class _Reading:
    """The sections of one file on their way to being read."""

    def __init__(self, *, root: Table, forms: Mapping[str, type[Form]], terms: Terms) -> None:
        self.root = root
        self.forms = {plain_name(title): form for title, form in forms.items()}
        self.terms = terms
        self.findings: list[Finding] = []

    def no_piece(self, source: Source) -> Finding | None:
        """The fault that this is another kind of file, or one newer than this program."""
        known = (*PLAIN_SECTIONS, *self.forms)
        node = self.root.said("format")
        if node is None and not any(plain_name(key) in known for key in self.root):
            says = "this is no piece file: neither a format nor a known heading stands in it"
            cure = "write format = 1 as its first line, then what is to be built"
            return halt("not-a-piece", says, cure, source.place(range(0)))
        return newer_format(node)

    def piece(self, source: Source, text: str, found: tuple[Finding, ...]) -> Piece:
        """All that could be read."""
        head = self._head()
        said = [asked for key, node in self.root.items() for asked in self._section(key, node)]
        sections = tuple(sorted(said, key=lambda asked: asked.place))
        self._one_name_each(sections)
        also, found_woods = self._also(), self._woods()
        return Piece(
            text=text,
            file=source.file,
            whole=self._whole(head, found_woods),
            sections=sections,
            also=also.stated,
            as_boards_give=also.as_boards_give,
            wood_for=tuple((name, wood.place) for name, wood in found_woods.items()),
            shop=head.shop if head else None,
            notes=head.lines if head else (),
            findings=in_order(map(in_sentences, (*found, *self.findings))),
        )

    def _head(self) -> Head | None:
        known = (*PLAIN_SECTIONS, *self.forms)
        entries = [
            (key, node)
            for key, node in self.root.items()
            if plain_name(key) in words_of(Head)
            or (plain_name(key) not in known and not isinstance(node, Table | Row))
        ]
        table = Table(self.root.place, entries)
        table.further = known
        return self._read(Head, table)

    def _woods(self) -> Mapping[str, NamedWood]:
        table = self._plain("wood")
        found, wrong = woods(table) if table is not None else ({}, ())
        self.findings += wrong
        return found

    def _whole(self, head: Head | None, found: Mapping[str, NamedWood]) -> Whole:
        measure = self.terms.measure
        room = self._plain("room")
        air = self._read(RoomSection, room) if room is not None else None
        self.findings += air.faults() if air else ()
        self.findings += other_rule(head) if head else ()
        return Whole(
            name=head.name if head else "",
            measure=measure,
            finest=(head.finest if head else None) or USUAL_FINEST[measure],
            room=air.room() if air else _NO_ROOM,
            woods={k: Wood(species=w.species, cut=w.cut.value) for k, w in found.items()},
        )

    def _also(self) -> Further:
        node = self.root.said("also")
        table = self._plain("also") if node is not None else None
        also = further(table, self.terms) if table is not None else Further()
        self.findings += also.findings
        return also

    def _plain(self, title: str) -> Table | None:
        """The table under one of the headings that belong to no form."""
        node = self.root.said(title)
        if isinstance(node, Table):
            return node
        if node is None:
            says = f"the section [{title}] is missing"
            cure = _PLAIN_CURES[title]
            self.findings.append(halt("missing-section", says, cure, self.root.place))
        else:
            self.findings += _no_section(title, node)
        return None

    def _section(self, key: Key, node: Node) -> Iterator[Asked]:
        """What stands under one heading, or several of one form."""
        title = plain_name(key)
        form = self.forms.get(title)
        if form is None:
            if isinstance(node, Table | Row) and title not in {*PLAIN_SECTIONS, *words_of(Head)}:
                self.findings.append(self._unknown(key))
        elif not isinstance(node, Table):
            self.findings += _no_section(f"{title}.name" if form.many else title, node)
        elif not form.many:
            yield from self._asked(form, title, node)
        else:
            yield from self._several(form, title, node)

    def _several(self, form: type[Form], title: str, table: Table) -> Iterator[Asked]:
        for key, node in table.items():
            if isinstance(node, Table):
                yield from self._asked(form, plain_name(key), node)
            elif not (isinstance(node, Written) and node.sort is Sort.FAULTY):
                says = f"[{title}] needs a name of its own, for there may be several"
                cure = f"write [{title}.deck], say"
                self.findings.append(halt("no-own-name", says, cure, table.place))
                return

    def _asked(self, form: type[Form], name: str, table: Table) -> Iterator[Asked]:
        said = self._read(form.section, table)
        if said is not None:
            yield Asked(form=form.title, name=name, said=said, place=table.place)

    def _read(self, model: type[S], table: Table) -> S | None:
        try:
            return model.model_validate(table, context=self.terms)
        except ValidationError as error:
            self.findings += findings_of(error, {}, table.place)
            return None

    def _unknown(self, key: Key) -> Finding:
        says = f"{shown(key)} is no section of a piece file"
        elsewhere = MADE_ELSEWHERE.get(plain_name(key))
        if elsewhere is not None:
            return halt("unknown-section", says, elsewhere, key.place)
        known = (*PLAIN_SECTIONS, *self.forms)
        return halt("unknown-section", says, known_words(key, known), key.place)

    def _one_name_each(self, sections: Iterable[Asked]) -> None:
        first: dict[str, Asked] = {}
        for asked in sections:
            other = first.setdefault(asked.name, asked)
            if other is not asked:
                says = (
                    f"{shown(asked.name)} is the name of another thing, in line {other.place.line}"
                )
                cure = "space, hyphen and underscore are equal: give each a name of its own"
                self.findings.append(halt("same-name", says, cure, asked.place))


# things of the trade that have no section of their own, and what makes them
MADE_ELSEWHERE = {
    **dict.fromkeys(
        ("plinth", "base", "feet", "kickboard"),
        'the lowest rows of [face_frame] make it: { rail = "bottom rail", tall = 70 } and'
        " { foot = 10 }; without a face frame the sides reach the floor",
    ),
    **dict.fromkeys(
        ("shelves", "loose shelf", "loose shelves"),
        'write [shelf.loose], with on = "shelf pins" and in = the name of its opening',
    ),
    **dict.fromkeys(
        ("carcase", "carcass", "cabinet", "cupboard", "bookcase"),
        "write [case]: it is the sides, the bottom and what holds them at the top",
    ),
}


def _no_section(title: str, node: Node) -> Iterator[Finding]:
    if not (isinstance(node, Written) and node.sort is Sort.FAULTY):
        says = f"a section [{title}] is wanted, not {sort_of(node)}"
        cure = f"write [{title}] on a line of its own, and its words below"
        yield halt("wrong-kind", says, cure, node.place)
