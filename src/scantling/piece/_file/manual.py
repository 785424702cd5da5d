"""The page of the manual that lists every word of the piece file, made from the models."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields
from inspect import cleandoc
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from scantling.piece._file.head import Head, RoomSection
from scantling.piece._file.joint import JointWanted, also, options_of
from scantling.piece._file.kinds import (
    Count,
    Gap,
    Length,
    Load,
    Offset,
    Outside,
    Ratio,
    Tall,
    Thick,
    Truth,
    TwoLengths,
    Word,
    among,
)
from scantling.piece._file.section import Section, SomeForm, must_be_said, words_of
from scantling.timber.species import all_species

_TOP = """# Words of the piece file

Made from the models that read it; `make approve` writes it anew. How to write a file, and what
holds for all of it, stands in [piece_file.md](piece_file.md).
"""
_KINDS = (
    (Length, "a length"),
    (Outside, "a length of 2 in or more"),
    (Gap, "a length, or 0"),
    (Offset, "a length, of any sign"),
    (Ratio, 'a slope such as "1:6"'),
    (Thick, 'a length, or "as the boards give"'),
    (Tall, 'a length, or "equal"'),
    (Truth, "true or false"),
    (Count, "a whole number"),
    (Load, 'a load such as "50 lb/ft2"'),
    (TwoLengths, 'two lengths such as "2 1/2 x 1 3/8"'),
    (Word, "a word"),
    (JointWanted, "a joint"),
)
_HEAD = {
    "format": "1",
    "name": "a word",
    "measure": '"inch" or "mm"',
    "finest": "smallest mark of the rule",
    "shop": "path to the shop file",
    "notes": "text, or a row of it",
}
_ROOM = {
    **dict.fromkeys(("dry", "damp", "bench"), 'air such as "40 % at 18 C"'),
    **dict.fromkeys(("driest", "dampest"), 'the name of a month, such as "August"'),
}


def words_page(*, forms: Mapping[str, SomeForm], joints: Mapping[str, type]) -> str:
    """The page, in Markdown.

    Args:
        forms: Forms by title.
        joints: Joints by title.
    """
    parts = [
        _TOP,
        _table("Above the first heading", Head, _HEAD),
        _table("[room]", RoomSection, _ROOM),
    ]
    for title, form in forms.items():
        heading = title.replace(" ", "_") + (".a name of its own" if form.many else "")
        parts.append(_section(f"[{heading}]", form.section))
    parts.append("## Joints\n")
    parts += [_joint(title, joint) for title, joint in joints.items()]
    parts.append(_woods())
    return "\n".join(parts)


def _woods() -> str:
    rows = [f"| {wood.name} | {', '.join(wood.trade_names)} |" for wood in all_species().values()]
    top = "## Woods\n\nA wood answers to any of its names.\n\n| wood | also called |\n|---|---|"
    return "\n".join([top, *rows, ""])


def _section(heading: str, model: type[Section]) -> str:
    said = {name: _kind(_annotation(field)) for name, field in model.model_fields.items()}
    inner = [
        _section(f"{heading}, {name}", found)
        for name, field in model.model_fields.items()
        for found in _sections_in(_annotation(field))
    ]
    return "\n".join([_table(heading, model, said), *inner])


def _joint(title: str, joint: type) -> str:
    model = options_of(joint, also())
    says = {each.name: each.metadata.get("says", "") for each in fields(joint)}
    rows = [
        f"| `{name}`{_further(model, name)} | {_kind(_annotation(field))} | {says[name]} |"
        for name, field in model.model_fields.items()
    ]
    top = [f"### {title}\n", f"{_first_line(joint)}\n"]
    return "\n".join(
        [*top, *(["| option | takes | |", "|---|---|---|"] if rows else []), *rows, ""]
    )


def _table(heading: str, model: type[Section], said: Mapping[str, str]) -> str:
    rows = [
        f"| `{name}`{_further(model, name)} | {said[name]} | {_must(field)} |"
        for name, field in model.model_fields.items()
    ]
    top = [
        f"## {heading}\n",
        f"{cleandoc(model.__doc__ or '')}\n",
        "| word | takes | |",
        "|---|---|---|",
    ]
    return "\n".join([*top, *rows, ""])


def _must(field: FieldInfo) -> str:
    return "must be said" if must_be_said(field) else ""


def _further(model: type[Section], name: str) -> str:
    plain = name.replace("_", " ")
    further = [w for w, field in words_of(model).items() if field == name and w != plain]
    return "".join(f", `{word.replace(' ', '_')}`" for word in further)


def _first_line(of: type) -> str:
    return (of.__doc__ or "").strip().split("\n")[0]


def _annotation(field: FieldInfo) -> Any:  # noqa: ANN401 - types
    kind: Any = field.annotation
    for mark in field.metadata:
        kind = Annotated[kind, mark]
    return kind


def _kind(hint: Any) -> str:  # noqa: ANN401 - types
    """What a value of that type is called in the manual."""
    for kind, name in _KINDS:
        if hint == kind:
            return name
    args = [each for each in get_args(hint) if each is not NoneType]
    if get_origin(hint) is tuple:
        return f"a row: {_kind(args[0])}"
    if get_origin(hint) is Annotated:
        return _marked(args[0], args[1:])
    if get_origin(hint) in {Union, UnionType}:
        return " or ".join(map(_kind, args))
    return "a table" if isinstance(hint, type) and issubclass(hint, Section) else "a value"


def _marked(kind: Any, marks: list[Any]) -> str:  # noqa: ANN401 - types
    for mark in marks:
        if isinstance(mark, among):
            return " or ".join(f'"{word}"' for word in mark.words)
        if isinstance(mark, also):
            beside = ", ".join(f"`{name}` ({_kind(each)})" for name, each in mark.kinds)
            usual = f", {mark.usual} where none is named" if mark.usual else ""
            return f"a joint{usual}" + (f"; beside its options: {beside}" if beside else "")
    return _kind(kind)


def _sections_in(hint: Any) -> Iterator[type[Section]]:  # noqa: ANN401 - types
    if isinstance(hint, type) and issubclass(hint, Section):
        yield hint
    for each in get_args(hint):
        yield from _sections_in(each)
