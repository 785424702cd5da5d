"""A joint as the maker asks for it: its trade name and its options."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import MISSING, Field, dataclass, field, fields
from enum import StrEnum
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, ClassVar, Literal, Union, get_args, get_origin, get_type_hints

from pydantic import (
    GetCoreSchemaHandler,
    ValidationError,
    ValidationInfo,
    create_model,
)
from pydantic_core import CoreSchema, PydanticUseDefault, core_schema

import scantling.joints
from scantling.errors import InternalError, UnknownNameError
from scantling.findings import Finding, Place
from scantling.joints._joint import Joint, Said
from scantling.piece._file.kinds import (
    AsBoardsGive,
    Count,
    Gap,
    Length,
    Offset,
    Ratio,
    Terms,
    Truth,
    Word,
    among,
    faults,
    spelt,
    terms,
    wrong_kind,
)
from scantling.piece._file.section import JOINT, Section, findings_of, known_words, words_of
from scantling.piece._file.text import Beside, Key, Sort, Table, Written, halt, shown
from scantling.piece._file.trade import in_house_words
from scantling.roster import members, nearest, plain_name

_LENGTHS: Mapping[str, Any] = {"length": Length, "gap": Gap, "offset": Offset, "ratio": Ratio}


@dataclass(frozen=True, kw_only=True)
class JointWanted:
    """A joint with the options said, and what else the form let stand beside them."""

    joint: Joint
    place: Place | None = None
    beside: Mapping[str, Any] = field(default_factory=dict)  # None where not said

    def said(self, word: str) -> Said | None:
        """A length the form declared with `also`, or None when the maker is silent.

        Raises:
            UnknownNameError: The form declared no such length.
        """
        value = self._beside(word)
        return value if isinstance(value, Said) else None

    def thickness(self, word: str) -> Said | AsBoardsGive | None:
        """A thickness the form declared with `also`.

        Raises:
            UnknownNameError: The form declared no such thickness.
        """
        value = self._beside(word)
        return value if isinstance(value, Said | AsBoardsGive) else None

    def word(self, word: str) -> Word | None:
        """A word the form declared with `also`.

        Raises:
            UnknownNameError: The form declared no such word.
        """
        value = self._beside(word)
        return value if isinstance(value, Word) else None

    def count(self, word: str) -> Count | None:
        """A count the form declared with `also`.

        Raises:
            UnknownNameError: The form declared no such count.
        """
        value = self._beside(word)
        return value if isinstance(value, Count) else None

    def _beside(self, word: str) -> Any:  # noqa: ANN401 - of the kind the form declared
        if word not in self.beside:
            raise UnknownNameError(f"the form lets no {word!r} stand beside {self.joint.title}")
        return self.beside[word]

    @classmethod
    def __get_pydantic_core_schema__(
        cls, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        del source, handler
        return also().schema()


@dataclass(frozen=True)
class also:  # noqa: N801 - reads as a word in an annotation
    """Mark of a `JointWanted`: what may stand beside the joint's own options.

    `Annotated[JointWanted, also("top_face", count=Count, usual="housing")]`: names are
    lengths, keywords give another kind, `usual` is the joint where the maker names none.
    """

    kinds: tuple[tuple[str, Any], ...]  # names, and what may be said of each
    usual: str | None

    def __init__(self, *lengths: str, usual: str | None = None, **kinds: Any) -> None:  # noqa: ANN401 - types
        both = {**dict.fromkeys(lengths, Length), **kinds}
        object.__setattr__(self, "kinds", tuple(both.items()))
        object.__setattr__(self, "usual", usual)

    def schema(self) -> CoreSchema:
        """How pydantic reads it."""
        return core_schema.with_info_plain_validator_function(
            self._wanted, metadata={"piece": self}
        )

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        del source, handler
        return self.schema()

    def _wanted(self, node: Any, info: ValidationInfo) -> JointWanted:  # noqa: ANN401 - checked here
        if isinstance(node, JointWanted):
            return node
        name, options = _name_and_options(node)
        joint: type = _named(name, terms(info)) if name else self._usual(node, options, terms(info))
        place = name.place if name else options.place
        model = options_of(joint, self)
        try:
            said = model.model_validate(options, context=info.context)
        except ValidationError as error:
            raise faults(*findings_of(error, {}, options.place)) from None
        values = {each: getattr(said, each) for each in said.model_fields_set}
        beside = {name: values.pop(name, None) for name, _ in self.kinds}
        return JointWanted(
            joint=joint(place=place, **_as_declared(joint, values)), place=place, beside=beside
        )

    def _usual(self, node: Any, options: Table, context: Terms) -> type:  # noqa: ANN401 - as above
        """The joint where none is named."""
        if self.usual is not None:
            return _joints(context)[self.usual]
        if not isinstance(node, Beside):
            cure = 'add joint = "housing", say'
            raise faults(halt("missing-word", "no joint is named here", cure, options.place))
        if options:
            raise faults(*(Section.unknown(key, options.further) for key in options))
        raise PydanticUseDefault


class Options(Section):
    """What may be said of one joint. Made from the fields of its dataclass."""

    joint_title: ClassVar[str] = ""

    @classmethod
    def unknown(cls, key: Key, further: Iterable[str] = ()) -> Finding:
        """The fault that the joint has no such option."""
        says = f"{shown(key)} is no option of the joint {cls.joint_title}"
        if further:  # options stand among the words of a section
            says = f"{shown(key)} is no word of this section, and no option of its {JOINT},"
            says += f" {cls.joint_title}"
        cure = known_words(key, (*words_of(cls), *further))
        return halt("unknown-option", says, cure, key.place)


def _joints(context: Terms) -> Mapping[str, type[Joint]]:
    if context.joints is not None:
        return context.joints
    return members(scantling.joints, base=Joint)


def _name_and_options(node: Any) -> tuple[Written | None, Table]:  # noqa: ANN401 - checked here
    if isinstance(node, Beside):
        if node.node is None:
            return None, node.others
        name, options = _name_and_options(node.node)
        both = Table(options.place, [*options.items(), *node.others.items()])
        both.further = node.others.further
        return name, both
    if isinstance(node, Written) and node.sort is Sort.TEXT:
        return node, Table(node.place)
    if not isinstance(node, Table):
        cure = 'write joint = "housing", say'
        raise wrong_kind(node, "the name of a joint, or a table with one", cure)
    named = {key: value for key, value in node.items() if plain_name(key) == JOINT}
    rest = Table(node.place, [(k, v) for k, v in node.items() if k not in named])
    for value in named.values():
        if isinstance(value, Written) and value.sort is Sort.TEXT:
            return value, rest
        raise wrong_kind(value, "the name of a joint", 'write joint = "housing", say')
    return None, rest


def _named(name: Written, context: Terms) -> type:
    joints = _joints(context)
    title = in_house_words(name.text, joints)
    if title is None:
        says = f"no joint is called {shown(name.text)}"
        raise faults(halt("unknown-joint", says, _perhaps(name.text, joints), name.place))
    return joints[title]


def _perhaps(word: str, joints: Mapping[str, type[Joint]]) -> str:
    meant = nearest(word, joints)
    return f'perhaps "{meant}"' if meant else f"known joints: {', '.join(joints)}"


@cache
def _hints(joint: type) -> Mapping[str, Any]:
    return get_type_hints(joint)


@cache
def options_of(joint: type, mark: also) -> type[Options]:
    """The section that a joint's options make, with what the form lets stand beside them."""
    hints = _hints(joint)
    own: dict[str, Any] = {
        each.name: (
            Annotated[_kind(joint, each, hints[each.name]), spelt(*each.metadata.get("words", ()))],
            ... if _is_required(each) else None,
        )
        for each in fields(joint)
        if each.name != "place" and each.init
    }
    own |= {name: (kind, None) for name, kind in mark.kinds}
    made: type[Options] = create_model(f"{joint.__name__}Options", __base__=Options, **own)
    if not issubclass(joint, Joint):
        raise InternalError(f"{joint.__name__} is no joint")
    made.joint_title = joint.title
    return made


def _is_required(known: Field[Any]) -> bool:
    return known.default is MISSING and known.default_factory is MISSING


def _kind(joint: type[Any], known: Field[Any], hint: Any) -> Any:  # noqa: ANN401 - types
    """The kind of value that the annotation of a joint's field stands for."""
    if get_origin(hint) in {Union, UnionType}:
        (hint, *more) = [each for each in get_args(hint) if each is not NoneType]
        if more:
            raise InternalError(f"{joint.__name__}.{known.name} may be of several kinds")
    if get_origin(hint) is Literal:
        return Annotated[Word, among(*get_args(hint))]
    if get_origin(hint) is tuple:
        return tuple[_kind(joint, known, get_args(hint)[0]), ...]  # type: ignore[misc]  # made here
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return Annotated[Word, among(*hint)]
    kinds = {Said: _LENGTHS[known.metadata.get("reads", "length")], bool: Truth, int: Count}
    kinds |= {str: Word}
    if hint not in kinds:
        raise InternalError(f"{joint.__name__}.{known.name}: no kind of value for {hint}")
    return kinds[hint]


def _as_declared(joint: type, values: Mapping[str, Any]) -> dict[str, Any]:
    """Words back in the enumerations the joint declares."""
    hints = _hints(joint)
    return {name: _in_enum(hints[name], value) for name, value in values.items()}


def _in_enum(hint: Any, value: Any) -> Any:  # noqa: ANN401 - types
    for each in (hint, *get_args(hint)):
        if isinstance(each, type) and issubclass(each, StrEnum) and isinstance(value, str):
            return each(str(value))
    return value
