"""A section of the piece file: typed fields under the maker's own words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from typing import Any, Protocol, Self

from pydantic import (
    BaseModel,
    ConfigDict,
    ModelWrapValidatorHandler,
    PrivateAttr,
    ValidationError,
    model_validator,
)
from pydantic.fields import FieldInfo

from scantling.errors import InternalError
from scantling.findings import Finding, Place
from scantling.piece._file.kinds import faults, spelt, wrong_kind
from scantling.piece._file.text import Beside, Key, Node, Table, halt, shown
from scantling.piece._file.trade import in_house_words, synonym
from scantling.roster import nearest, plain_name

JOINT = "joint"  # the field that takes the words its section does not know


class Section(BaseModel):
    """What the maker may say of one thing. Fields are read by their names or `spelt` words."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)

    _place: Place | None = PrivateAttr(default=None)
    _places: Mapping[str, Place] = PrivateAttr(default_factory=dict)

    @property
    def place(self) -> Place | None:
        """Where it stands: its heading, or the opening brace."""
        return self._place

    def at(self, field: str) -> Place | None:
        """Where a field was said; where the section stands, if it was not."""
        return self._places.get(field, self._place)

    def standing_at(self, place: Place, places: Mapping[str, Place]) -> Self:
        """Set where it and its fields stand. Done once, by the reader."""
        self._place, self._places = place, places
        return self

    @classmethod
    def unknown(cls, key: Key, further: Iterable[str] = ()) -> Finding:
        """The fault that nothing of that name can be said here.

        Args:
            key: What the maker wrote.
            further: Words known beside those of the section.
        """
        says = f"{shown(key)} is no word of this section"
        return halt("unknown-word", says, known_words(key, (*words_of(cls), *further)), key.place)

    @model_validator(mode="wrap")
    @classmethod
    def _read(cls, node: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:  # noqa: ANN401 - pydantic passes what it was given
        if not isinstance(node, Table):
            if isinstance(node, cls | dict):
                return handler(node)
            raise wrong_kind(node, "a table", "write it like { wide = 42, deep = 18 }")
        values, found = sorted_words(cls, node)
        try:
            section = handler(values)
        except ValidationError as error:
            found = (*found, *findings_of(error, values, node.place))
        else:
            if not found:
                return section.standing_at(node.place, dict(_places(values)))
        raise faults(*found)


class SomeForm(Protocol):
    """What is asked of a form to read its section."""

    @property
    def many(self) -> bool:
        """Whether there may be several, each with a name of its own."""

    @property
    def section(self) -> type[Section]:
        """The model of its section."""


def _places(values: Mapping[str, Any]) -> Iterator[tuple[str, Place]]:
    for field, value in values.items():
        place = getattr(value.node if isinstance(value, Beside) else value, "place", None)
        if place is not None:
            yield field, place


@cache
def words_of(model: type[Section]) -> Mapping[str, str]:
    """The words a section answers to, in plain spelling, and the field each means.

    Raises:
        InternalError: One word means two fields.
    """
    words: dict[str, str] = {}
    for name, field in model.model_fields.items():
        further = [w for mark in field.metadata if isinstance(mark, spelt) for w in mark.words]
        for word in map(plain_name, (name, *further)):
            if words.setdefault(word, name) != name:
                raise InternalError(f"{model.__name__}: {word!r} means {words[word]} and {name}")
    return words


def sorted_words(model: type[Section], table: Table) -> tuple[dict[str, Any], tuple[Finding, ...]]:
    """Values by field, and a finding for each word that is unknown or said twice."""
    words = words_of(model)
    values: dict[str, Any] = {}
    others: list[tuple[Key, Node]] = []
    found: list[Finding] = []
    for key, node in table.items():
        name = words.get(in_house_words(key, words) or "")
        if name is None:
            others.append((key, node))
        elif name in values:
            says = f"{shown(key)} says again what another word of this section has said"
            found.append(halt("said-twice", says, "keep one of the two", key.place))
        else:
            values[name] = node
    if JOINT not in model.model_fields:
        found += [model.unknown(key, table.further) for key, _ in others]
    elif others or JOINT in values or not model.model_fields[JOINT].is_required():
        options = Table(table.place, others)
        options.further = tuple(words)
        values[JOINT] = Beside(node=values.get(JOINT), others=options)
    return {**_usual_joints(model, table), **values}, tuple(found)


def _usual_joints(model: type[Section], table: Table) -> dict[str, Beside]:
    """What stands for each joint that need not be named."""
    return {
        name: Beside(node=None, others=Table(table.place))
        for name, field in model.model_fields.items()
        if field.is_required() and not must_be_said(field)
    }


def must_be_said(field: FieldInfo) -> bool:
    """Whether a section without that field is at fault: no default, and no usual joint."""
    usual = (getattr(mark, "usual", None) for mark in field.metadata)
    return field.is_required() and not any(usual)


def known_words(word: str, words: Iterable[str]) -> str:
    """The cure for a word that is not known: the nearest, or all that are."""
    words = tuple(words)
    if meant := synonym(word, words) or nearest(word, words):
        return f"perhaps {meant.replace(' ', '_')}"
    known = ", ".join(sorted(each.replace(" ", "_") for each in words))
    return f"known here: {known}" if known else "take it out"


def findings_of(
    error: ValidationError, values: Mapping[str, Any], place: Place
) -> Iterator[Finding]:
    """The findings that a validation error carries.

    Args:
        error: As pydantic gathered it.
        values: What was validated.
        place: Where the section stands, for what is missing from it.

    Raises:
        InternalError: A field is of a kind that does not say in the maker's words what is wrong;
            those of `kinds` all do.
    """
    for each in error.errors(include_url=False, include_input=False):
        if each["type"] == "piece":
            yield from each["ctx"]["findings"]
            continue
        field = str(each["loc"][0]) if each["loc"] else ""
        word = field.replace("_", " ")
        at = getattr(values.get(field), "place", None) or place
        if each["type"] == "missing":
            yield halt("missing-word", f"{word} is not said", f"add a line: {field} = ...", at)
        elif each["type"] in {"tuple_type", "list_type"}:
            cure = "put square brackets round it: [ ... ]"
            yield halt("wrong-kind", f"{word} wants a row in brackets", cure, at)
        else:
            raise InternalError(f"{word} cannot say what is wrong with it: {each['msg']}")
