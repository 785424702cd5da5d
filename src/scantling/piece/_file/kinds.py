"""Kinds of value that a section may hold, each read from the signs the maker typed."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any, Self

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, PlainValidator, ValidationInfo
from pydantic import WithJsonSchema as Shown
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from scantling import units
from scantling.errors import LengthError
from scantling.exact import Fraction, from_figures
from scantling.findings import Finding, Place
from scantling.joints._joint import Said
from scantling.piece._file.text import Node, Sort, Written, halt, shown, sort_of
from scantling.piece._file.trade import in_house_words
from scantling.roster import nearest, plain_name
from scantling.units import Unit

LENGTH_CURE = 'write it like "3/4", "1 1/2 in", "2 ft 3 1/2 in" or "38 mm"'
AS_BOARDS_GIVE = "as the boards give"
EQUAL = "equal"
MOST = 60  # of one kind in a piece: boards of a back 8 ft wide at 1 5/8 in each
LONGEST_BOARD = 288 * units.INCH  # PS 20: lumber is sawn to 24 ft (from memory)
LEAST_OUTSIDE = 2 * units.INCH  # common practice: less is a slip of the unit
_RATIO = re.compile(r"\s*(\d{1,6})\s*(?::|in)\s*(\d{1,6})\s*")
_COUNT = re.compile(r"\+?\d{1,6}")
_AMOUNT = re.compile(r"\s*(\d+(?:\.\d+)?|\.\d+)\s*([^\d\s].*?)\s*")
_LOADS = {
    "lb": ("lb", "lbs", "pound", "pounds"),
    "lb/ft": ("lb/ft", "lb per ft", "plf"),
    "lb/ft2": ("lb/ft2", "lb/ft²", "lb/sq ft", "lb per sq ft", "psf"),
    "kg": ("kg",),
    "kg/m": ("kg/m", "kg per m"),
    "kg/m2": ("kg/m2", "kg/m²", "kg per m2"),
}
_LOAD_UNITS = {word: unit for unit, words in _LOADS.items() for word in words}


@dataclass(frozen=True, kw_only=True)
class Terms:
    """What a value needs from the rest of the file to be read."""

    measure: Unit = Unit.INCH
    joints: Mapping[str, type] | None = None  # by trade name; None for those of the house


def terms(info: ValidationInfo) -> Terms:
    """The terms a value is read in."""
    return info.context if isinstance(info.context, Terms) else Terms()


def faults(*findings: Finding) -> PydanticCustomError:
    """Findings on their way up through the models."""
    return PydanticCustomError("piece", "faults of a piece file", {"findings": findings})


def findings_in(fault: PydanticCustomError) -> tuple[Finding, ...]:
    """What `faults` sent up."""
    return tuple((fault.context or {}).get("findings", ()))


def wrong_kind(node: object, wanted: str, cure: str) -> PydanticCustomError:
    """The fault that a value is of another kind than wanted."""
    if isinstance(node, Written) and node.sort is Sort.FAULTY:
        return faults()
    says = f"{wanted} is wanted here, not {sort_of(node)}"
    return faults(halt("wrong-kind", says, cure, getattr(node, "place", None)))


class Word(str):
    """A word or name as the maker wrote it. Equal to any str of the same signs."""

    __slots__ = ("place",)
    place: Place | None

    def __new__(cls, text: str, place: Place | None = None) -> Self:
        """The word and where it stands."""
        made = super().__new__(cls, text)
        made.place = place
        return made

    @classmethod
    def __get_pydantic_core_schema__(
        cls, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        del source, handler
        return core_schema.no_info_plain_validator_function(_word)

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {"type": "string", "minLength": 1}


class Count(int):
    """How many, at least one."""

    place: Place | None

    def __new__(cls, number: int, place: Place | None = None) -> Self:
        """The number and where it stands."""
        made = super().__new__(cls, number)
        made.place = place
        return made

    @classmethod
    def __get_pydantic_core_schema__(
        cls, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        del source, handler
        return core_schema.no_info_plain_validator_function(_count)

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {"type": "integer", "minimum": 1, "maximum": MOST}


@dataclass(frozen=True, kw_only=True)
class AsBoardsGive:
    """A thickness left to the thinnest board of its set."""

    place: Place | None = None


@dataclass(frozen=True, kw_only=True)
class Load:
    """A load as the maker wrote it, in his own unit."""

    amount: Fraction  # in `unit`
    unit: str  # "lb", "lb/ft", "lb/ft2", "kg", "kg/m" or "kg/m2"
    text: str = ""
    place: Place | None = None

    @classmethod
    def __get_pydantic_core_schema__(
        cls, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        del source, handler
        return core_schema.no_info_plain_validator_function(_load)

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {"type": "string", "pattern": r"^\s*[0-9.]+\s*[^0-9.\s]"}


@dataclass(frozen=True, kw_only=True)
class TwoLengths:
    """A bought thing's two sizes: `2 1/2 x 1 3/8`."""

    first: Said
    second: Said

    @classmethod
    def __get_pydantic_core_schema__(
        cls, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        del source, handler
        return core_schema.with_info_plain_validator_function(_two_lengths)

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {"type": "string", "pattern": "[x×]"}


def _word(node: Node | str) -> Word:
    if isinstance(node, Word):
        return node
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        raise wrong_kind(node, "a word", 'put the word in quotes: "mid rail"')
    if not node.text.strip():
        raise faults(halt("empty-word", "nothing is written here", "write the word", node.place))
    return Word(node.text, node.place)


def _count(node: Node | int) -> Count:
    if isinstance(node, Count):
        return node
    cure = f"write a whole number from 1 to {MOST} without quotes: 2"
    if not isinstance(node, Written) or node.sort is not Sort.WHOLE:
        raise wrong_kind(node, "a whole number", cure)
    number = int(node.text) if _COUNT.fullmatch(node.text) else 0
    if not 1 <= number <= MOST:
        says = "more than go into one piece" if number > MOST else "no count"
        raise faults(halt("count", f"{shown(node.text)} is {says}", cure, node.place))
    return Count(number, node.place)


def _truth(node: Node | bool) -> bool:  # noqa: FBT001 - a plain value of a default passes through
    if isinstance(node, bool):
        return node
    if not isinstance(node, Written) or node.sort is not Sort.TRUTH:
        raise wrong_kind(node, "true or false", "write true or false, small and without quotes")
    return node.text == "true"


def said_length(node: Node, unit: Unit) -> Said:
    """The length that a value says, of any sign."""
    if not isinstance(node, Written) or node.sort in {Sort.TRUTH, Sort.DATE, Sort.FAULTY}:
        raise wrong_kind(node, "a length", LENGTH_CURE)
    try:
        value = units.length(node.text, unit=unit)
    except LengthError as error:
        place = node.part(range(error.start, max(error.stop, error.start + 1)))
        raise faults(halt("length", error.says, error.cure, place)) from None
    return Said(value=value, text=node.text, place=node.place)


def _above(least: Fraction | None, *, or_equal: bool) -> Callable[[Any, ValidationInfo], Said]:
    def read(node: Node | Said, info: ValidationInfo) -> Said:
        said = node if isinstance(node, Said) else said_length(node, terms(info).measure)
        if abs(said.value) > LONGEST_BOARD:
            raise faults(_slip(said, "is longer than any board is sawn", terms(info).measure))
        if least is None or said.value > least or (or_equal and said.value == least):
            return said
        if said.value == 0:
            says, cure = "a length of nothing cannot be cut", "write a length above 0"
        else:
            says, cure = "a length cannot be below nothing here", "leave the minus away"
        raise faults(halt("length-sign", says, cure, said.place))

    return read


def _outside(node: Node | Said, info: ValidationInfo) -> Said:
    said = _above(Fraction(0), or_equal=False)(node, info)
    if said.value < LEAST_OUTSIDE:
        raise faults(_slip(said, "is too little for the outside of a piece", terms(info).measure))
    return said


def _slip(said: Said, says: str, unit: Unit) -> Finding:
    """A figure of the right number in the wrong unit, most likely."""
    other = Unit.MM if unit is Unit.INCH else Unit.INCH
    large = abs(said.value) > LONGEST_BOARD
    limit = LONGEST_BOARD if large else LEAST_OUTSIDE
    return replace(
        halt(
            "length-slip",
            f"{units.written_with_unit(said.value, unit=unit)} {says}",
            f"look at the unit: for {other} write {said.text} {other.sign}"
            if said.text.strip()[-1:].isdigit()
            else "look at the unit",
            said.place,
        ),
        figure=units.written_with_unit(said.value, unit=unit),
        limit=units.written_with_unit(limit, unit=unit),
        source="PS 20: lumber to 24 ft (from memory)" if large else "common practice",
    )


def _ratio(node: Node | Said) -> Said:
    if isinstance(node, Said):
        return node
    cure = 'write it like "1:6"'
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        raise wrong_kind(node, "a slope", cure)
    found = _RATIO.fullmatch(node.text)
    if not found or "0" in {found[1].lstrip("0") or "0", found[2].lstrip("0") or "0"}:
        raise faults(halt("ratio", f"{shown(node.text)} is no slope", cure, node.place))
    value = Fraction(int(found[1]), int(found[2]))
    return Said(value=value, text=node.text, place=node.place)


def _load(node: Node | Load) -> Load:
    if isinstance(node, Load):
        return node
    cure = 'write it like "50 lb/ft2" or "25 lb"; ' + ", ".join(_LOADS) + " are understood"
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        raise wrong_kind(node, "a load with its unit", cure)
    found = _AMOUNT.fullmatch(node.text[:60])
    unit = _LOAD_UNITS.get(" ".join(found[2].casefold().split())) if found else None
    if found is None or unit is None:
        raise faults(halt("load", f"{shown(node.text)} is no load", cure, node.place))
    return Load(amount=from_figures(found[1]), unit=unit, text=node.text, place=node.place)


def _thick(node: Node | Said | AsBoardsGive, info: ValidationInfo) -> Said | AsBoardsGive:
    if isinstance(node, AsBoardsGive):
        return node
    if isinstance(node, Written) and plain_name(node.text) == AS_BOARDS_GIVE:
        return AsBoardsGive(place=node.place)
    return _above(Fraction(0), or_equal=False)(node, info)


def _tall(node: Node | Said, info: ValidationInfo) -> Said | None:
    """Silence and "equal" are one: what nobody states shares alike."""
    if isinstance(node, Written) and plain_name(node.text) == EQUAL:
        return None
    return _above(Fraction(0), or_equal=False)(node, info)


def _two_lengths(node: Node | TwoLengths, info: ValidationInfo) -> TwoLengths:
    if isinstance(node, TwoLengths):
        return node
    cure = 'write both with an x between: "2 1/2 x 1 3/8"'
    if not isinstance(node, Written) or node.sort is not Sort.TEXT:
        raise wrong_kind(node, "two lengths", cure)
    cut = re.fullmatch(r"\s*([^x×]*?)\s*[x×]\s*([^x×]*?)\s*", node.text)
    if not cut:
        raise faults(
            halt("two-lengths", f"{shown(node.text)} is not two lengths", cure, node.place)
        )
    read = _above(Fraction(0), or_equal=False)
    return TwoLengths(
        first=read(node.cut(range(*cut.span(1))), info),
        second=read(node.cut(range(*cut.span(2))), info),
    )


@dataclass(frozen=True)
class among:  # noqa: N801 - reads as a word in an annotation
    """Mark of a `Word` that must be one of these."""

    words: tuple[str, ...]

    def __init__(self, *words: str) -> None:
        object.__setattr__(self, "words", words)

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_after_validator_function(self._one, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {"type": "string", "enum": list(self.words)}

    def _one(self, word: Word) -> Word:
        known = {plain_name(each): each for each in self.words}
        if house := in_house_words(word, known):
            return Word(known[house], word.place)
        says = f"{shown(word)} is none of {', '.join(self.words)}"
        meant = nearest(word, self.words)
        cure = f'perhaps "{meant}"' if meant else f'write "{self.words[0]}", say'
        raise faults(halt("unknown-choice", says, cure, word.place))


@dataclass(frozen=True)
class spelt:  # noqa: N801 - reads as a word in an annotation
    """Mark of a field that answers to further words of the maker."""

    words: tuple[str, ...]

    def __init__(self, *words: str) -> None:
        object.__setattr__(self, "words", words)


_SHOWN = {"anyOf": [{"type": "string", "minLength": 1, "maxLength": 60}, {"type": "number"}]}

Length = Annotated[Said, PlainValidator(_above(Fraction(0), or_equal=False)), Shown(_SHOWN)]
Outside = Annotated[Said, PlainValidator(_outside), Shown(_SHOWN)]
Gap = Annotated[Said, PlainValidator(_above(Fraction(0), or_equal=True)), Shown(_SHOWN)]
Offset = Annotated[Said, PlainValidator(_above(None, or_equal=True)), Shown(_SHOWN)]
Thick = Annotated[Said | AsBoardsGive, PlainValidator(_thick), Shown(_SHOWN)]
Tall = Annotated[Said, PlainValidator(_tall), Shown(_SHOWN)]  # of an opening, or "equal"
Ratio = Annotated[
    Said,
    PlainValidator(_ratio),
    Shown({"type": "string", "pattern": r"^\s*\d+\s*(:|in)\s*\d+\s*$"}),
]
Truth = Annotated[bool, PlainValidator(_truth), Shown({"type": "boolean"})]
