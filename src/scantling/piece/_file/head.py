"""The head of a piece file: what holds for all its sections."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import PlainValidator, TypeAdapter, ValidationError, ValidationInfo
from pydantic import WithJsonSchema as Shown

from scantling.errors import OutOfRangeError, UnknownNameError
from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight
from scantling.joints._joint import Said
from scantling.piece._file.kinds import (
    Gap,
    Terms,
    Thick,
    Word,
    among,
    faults,
    findings_in,
    said_length,
    terms,
    wrong_kind,
)
from scantling.piece._file.section import Section, findings_of, known_words, words_of
from scantling.piece._file.text import Key, Node, Row, Sort, Table, Written, halt, shown
from scantling.roster import plain_name
from scantling.sizes.model import Stated
from scantling.timber.moisture import Season
from scantling.timber.movement import Cut
from scantling.timber.room import MONTHS, USUAL_DRY, Room
from scantling.timber.species import nearest as nearest_woods
from scantling.timber.species import species
from scantling.units import INCH, Unit, written_with_unit

FORMAT = 1
WOODS_LISTED = "docs/piece_words.md lists all woods"
MOST_SUGGESTIONS = 20  # of woods; looking for the nearest takes time
USUAL_FINEST = {Unit.INCH: INCH / 32, Unit.MM: Fraction(1, 2)}  # [mm]
_FINEST_MM = frozenset({Fraction(1, 2), Fraction(1), Fraction(2)})
_LEAST_FRACTION = 128  # of an inch; no rule is finer
_AIR = re.compile(
    r"\s*(?P<humidity>\d+(?:\.\d+)?)\s*%\s*(?:rh\s*)?(?:at|,|and)?\s*"
    r"(?P<warm>-?\d+(?:\.\d+)?)\s*(?:°\s*)?(?P<scale>[CF])\s*",
    re.IGNORECASE,
)
# Sold by plain names in Europe, and in none of the tables this house reads. One group of oaks
# holds both, so that their sizes move alike; a likeness from memory, and said as one.
_EUROPEAN = dict.fromkeys(
    ("oak", "european oak", "english oak", "french oak", "british oak"),
    'European oak stands in no table here; nearest is "white oak", of the same group, whose'
    ' figures are then used. Of American oaks there are "northern red oak", "southern red oak"'
    ' and "chestnut oak" besides',
)
_CUTS = {
    plain: cut
    for cut in Cut
    for plain in (cut.value, f"{cut.value} sawn", f"{cut.value}sawn", f"{cut.value}ersawn")
}


def _format(node: Node) -> int:
    cure = f"write format = {FORMAT}"
    if not isinstance(node, Written) or node.sort is not Sort.WHOLE:
        raise wrong_kind(node, "a whole number", cure)
    if node.text != str(FORMAT):
        raise faults(halt("format", f"there is no format {shown(node.text)}", cure, node.place))
    return FORMAT


def newer_format(node: Node | None) -> Finding | None:
    """The fault that a file is of a format that came after this program."""
    if not isinstance(node, Written) or not re.fullmatch(r"[1-9][0-9]{0,5}", node.text):
        return None
    if node.sort is not Sort.WHOLE or int(node.text) <= FORMAT:
        return None
    says = f"this file is of format {node.text}; this program reads up to {FORMAT}"
    return halt("newer-format", says, "take a newer program to it", node.place)


def _measure(node: Node | Unit) -> Unit:
    if isinstance(node, Unit):
        return node
    cure = 'write measure = "inch" or measure = "mm"'
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        raise wrong_kind(node, "a unit of length", cure)
    try:
        return Unit(node.text)
    except ValueError:
        says = f"{shown(node.text)} is no measure of this house"
        raise faults(halt("measure", says, cure, node.place)) from None


def _finest(node: Node | Fraction, info: ValidationInfo) -> Fraction:
    if isinstance(node, Fraction):
        return node
    value = said_length(node, terms(info).measure).value
    part = value / INCH
    if value in _FINEST_MM or (part.numerator == 1 and 1 < part.denominator <= _LEAST_FRACTION):
        return value
    cure = 'write it like "1/32 in", or "0.5 mm", "1 mm", "2 mm"'
    raise faults(halt("finest", "no rule has such marks", cure, node.place))


def _season(node: Node | Season) -> Season:
    if isinstance(node, Season):
        return node
    cure = 'write it like "40 % at 18 C"'
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        raise wrong_kind(node, "the air of a room", cure)
    found = _AIR.fullmatch(node.text[:60])
    if found is None:
        raise faults(
            halt("air", f"{shown(node.text)} tells no humidity and warmth", cure, node.place)
        )
    warm = float(found["warm"])
    celsius = warm if found["scale"] in "cC" else (warm - 32) / 1.8
    season = Season(humidity=float(found["humidity"]), temperature=celsius)
    try:
        season.moisture  # noqa: B018 - asked whether it can be answered
    except OutOfRangeError as error:
        cure = "write air that a room or a bench can have"
        raise faults(
            halt("air", f"no figures are known for this air: {error}", cure, node.place)
        ) from None
    return season


def _lines(node: Any) -> tuple[str, ...]:  # noqa: ANN401 - checked here
    notes = node if isinstance(node, Row | tuple) else [node]
    found = []
    for note in notes:
        if not isinstance(note, Written) or note.sort is not Sort.TEXT:
            raise wrong_kind(note, "a note", 'put it in quotes: "oil it twice"')
        found += note.text.splitlines()
    return tuple(found)


_TEXT = {"type": "string", "minLength": 1}
_LENGTH = {"anyOf": [_TEXT, {"type": "number"}]}
Lines = Annotated[
    tuple[str, ...],
    PlainValidator(_lines),
    Shown({"anyOf": [_TEXT, {"type": "array", "items": _TEXT}]}),
]
Air = Annotated[Season, PlainValidator(_season), Shown({"type": "string", "pattern": "%.*[CFcf]"})]

Month = Annotated[Word, among(*MONTHS)]


class Head(Section):
    """What stands above the first heading."""

    format: Annotated[int, PlainValidator(_format), Shown({"const": FORMAT})]
    name: Word
    measure: Annotated[Unit, PlainValidator(_measure), Shown({"enum": ["inch", "mm"]})]
    finest: Annotated[Fraction, PlainValidator(_finest), Shown(_LENGTH)] | None = None
    shop: Word | None = None
    notes: Lines = ()

    @classmethod
    def unknown(cls, key: Key, further: Iterable[str] = ()) -> Finding:
        """The fault that nothing of that name stands above the first heading."""
        says = f"{shown(key)} is no word of the head of a piece file"
        return halt("unknown-word", says, known_words(key, (*words_of(cls), *further)), key.place)

    @property
    def lines(self) -> tuple[str, ...]:
        """The notes, a line each."""
        return tuple(self.notes)


def other_rule(head: Head) -> Iterator[Finding]:
    """A rule on which whole figures of the piece's measure fall between the marks."""
    if head.finest is None or (head.finest in _FINEST_MM) is (head.measure is Unit.MM):
        return
    usual = written_with_unit(USUAL_FINEST[head.measure], unit=head.measure)
    yield Finding(
        code="piece.other-rule",
        weight=Weight.NOTE,
        says=f"this rule does not read {head.measure}, which the piece is written in: many of its"
        " sizes fall between the marks",
        cure=f'leave the line out, or write finest = "{usual}"',
        place=head.at("finest"),
    )


class RoomSection(Section):
    """`[room]`: the driest and the dampest spell where it will stand, and the air at the bench."""

    dry: Air
    damp: Air
    bench: Air
    driest: Month | None = None
    dampest: Month | None = None

    def room(self) -> Room:
        """As the wood feels it."""
        driest, dampest = self.months
        return Room(
            dry=self.dry, damp=self.damp, bench=self.bench, dry_month=driest, damp_month=dampest
        )

    @property
    def months(self) -> tuple[int, int]:
        """The driest and the dampest, January being 0; half a year from each other if one is said.

        UNSOURCED: that half a year lies between them.
        """
        dry = MONTHS.index(self.driest) if self.driest else None
        damp = MONTHS.index(self.dampest) if self.dampest else None
        if dry is None:
            dry = USUAL_DRY if damp is None else (damp + 6) % 12
        return dry, (dry + 6) % 12 if damp is None else damp

    def faults(self) -> Iterator[Finding]:
        """What is wrong with the spells together."""
        if self.dry.moisture > self.damp.moisture:
            says = "wood would be damper in the dry spell than in the damp one"
            yield halt("air", says, "change dry and damp about", self.at("dry"))
        driest, dampest = self.months
        if driest == dampest:
            says = f"{MONTHS[driest]} is said to be both the driest month and the dampest"
            yield halt("months", says, "leave one of the two away", self.at("dampest"))


def measure_of(root: Table) -> Unit:
    """The unit of lengths without one; inches where the file does not say it well."""
    node = root.said("measure")
    try:
        return Unit(node.text) if isinstance(node, Written) else Unit.INCH
    except ValueError:
        return Unit.INCH


@dataclass(frozen=True, kw_only=True)
class NamedWood:
    """A wood of the table, and how its rings stand to the width."""

    species: str
    place: Place  # of the part or family it is for
    cut: Cut = Cut.FLAT


def woods(table: Table) -> tuple[dict[str, NamedWood], tuple[Finding, ...]]:
    """`[wood]`: a wood for what shows, for the inside, for any part or family of parts."""
    found: dict[str, NamedWood] = {}
    wrong: list[Finding] = []
    for key, node in table.items():
        wood = _wood(key, node, suggest=len(wrong) < MOST_SUGGESTIONS)
        if isinstance(wood, NamedWood):
            found[plain_name(key)] = wood
        else:
            wrong += wood
    if not table:
        cure = 'write show = "white ash", say'
        wrong.append(halt("missing-word", "no wood is named", cure, table.place))
    return found, tuple(wrong)


def _wood(key: Key, node: Node, *, suggest: bool) -> NamedWood | tuple[Finding, ...]:
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        cure = 'write it like "white ash" or "white ash, rift"'
        return findings_in(wrong_kind(node, "the name of a wood", cure))
    name, _, last = node.text.rpartition(",")
    cut = _CUTS.get(plain_name(last)) if name else None
    said = name if cut else node.text
    try:
        return NamedWood(species=species(said).name, place=key.place, cut=cut or Cut.FLAT)
    except UnknownNameError:
        meant = " or ".join(f'"{each}"' for each in _meant(said) if suggest)
        cure = f"perhaps {meant}; {WOODS_LISTED}" if meant else f"name another: {WOODS_LISTED}"
        cure = _EUROPEAN.get(plain_name(said), cure)
        place = node.part(range(len(said)))
        return (halt("unknown-wood", f"no wood is called {shown(said.strip())}", cure, place),)


def _meant(said: str) -> tuple[str, ...]:
    """Woods of that name, as many as there are; of those only spelt alike the nearest few."""
    found = nearest_woods(said)
    words = {*plain_name(said).split()}
    return found if any(words <= {*plain_name(each).split()} for each in found) else found[:3]


@dataclass(frozen=True, kw_only=True)
class Further:
    """`[also]`: sizes said by their names."""

    stated: tuple[Stated, ...] = ()
    as_boards_give: tuple[tuple[str, Place], ...] = ()  # names of thicknesses
    findings: tuple[Finding, ...] = ()


def further(table: Table, context: Terms) -> Further:
    """Any size from the list of parts, by part and word, and thicknesses left to the boards."""
    stated: list[Stated] = []
    boards: list[tuple[str, Place]] = []
    wrong: list[Finding] = []
    for name, key, node in _named_values(table, ()):
        try:
            said = _SIZES[name.rpartition(".")[2] in OWN_SIZES].validate_python(
                node, context=context
            )
        except ValidationError as error:
            wrong += findings_of(error, {}, key.place)
            continue
        if isinstance(said, Said):
            stated.append(Stated(name=name, value=said.value, text=said.text, place=key.place))
        elif name.endswith(".thickness"):
            boards.append((name, key.place))
        else:
            cure = "only a thickness may be left to the boards"
            wrong.append(halt("as-boards-give", "boards do not give this size", cure, said.place))
    return Further(stated=tuple(stated), as_boards_give=tuple(boards), findings=tuple(wrong))


def _named_values(table: Table, above: tuple[str, ...]) -> Iterator[tuple[str, Key, Node]]:
    for key, node in table.items():
        words = (*above, *(plain_name(word) for word in key.split(".")))
        if isinstance(node, Table):
            yield from _named_values(node, words)
        else:
            yield ".".join(words), key, node


OWN_SIZES = frozenset({"length", "width", "thickness"})
_SIZES: Mapping[bool, TypeAdapter[Any]] = {True: TypeAdapter(Thick), False: TypeAdapter(Gap)}
