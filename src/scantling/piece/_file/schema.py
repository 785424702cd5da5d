"""JSON Schema of the piece file, for editors, made from the models that read it.

It is a little stricter than the reader: names of joints and choices stand as the house spells
them, so that an editor can offer them. Lengths are looked at by the reader alone.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin
from urllib.parse import quote

from pydantic import PlainValidator, TypeAdapter
from pydantic.fields import FieldInfo

from scantling.piece._file.head import Head, RoomSection
from scantling.piece._file.joint import JointWanted, also, options_of
from scantling.piece._file.kinds import Thick, among
from scantling.piece._file.section import JOINT, Section, SomeForm, must_be_said, words_of

Schema = dict[str, Any]


def schema(*, forms: Mapping[str, SomeForm], joints: Mapping[str, type]) -> Schema:
    """The schema of a whole file.

    Args:
        forms: Forms by title.
        joints: Joints by title.
    """
    head = _object(Head)
    sections = {
        "room": _object(RoomSection),
        "wood": _table_of({"type": "string", "minLength": 1}),
        # A name with a point and without quotes opens a table of its own.
        "also": _table_of({"anyOf": [*_leaf(Thick)["anyOf"], {"type": "object"}]}),
    }
    for title, form in forms.items():
        said = _object(form.section)
        sections[title.replace(" ", "_")] = _table_of(said) if form.many else said
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A piece to be built, format 1",
        "type": "object",
        **_named({**head["properties"], **sections}),
        "required": [*head["required"], "room", "wood"],
        "additionalProperties": False,
        "$defs": _joints(joints),
    }


def _joints(joints: Mapping[str, type]) -> Schema:
    found = {title: _options(joint) for title, joint in joints.items()}
    named = [{"$ref": f"#/$defs/{quote(title)}", "required": [JOINT]} for title in joints]
    return {**found, "any joint": {"anyOf": named}, "joint name": {"enum": list(joints)}}


def _options(joint: type) -> Schema:
    """What can be said of a joint; whoever refers to it says what else may stand there."""
    model = options_of(joint, also())
    found = _object(model)
    del found["additionalProperties"]
    found["description"] = _first_line(joint)
    found["properties"] = {JOINT: {"const": model.joint_title}, **found["properties"]}
    return found


def _wanted(mark: also) -> Schema:
    """The name of a joint, or a table of it with what the form lets stand beside."""
    return {"anyOf": [{"$ref": "#/$defs/joint%20name"}, _wanted_table(mark)]}


def _wanted_table(mark: also) -> Schema:
    beside = {name: _kind(kind) for name, kind in mark.kinds}
    found = {"type": "object", **_named(beside), "unevaluatedProperties": False}
    return {**found, "anyOf": _joint_beside(mark)}


def _joint_beside(mark: also) -> list[Schema]:
    """A joint that is named in the table, or the usual one that is not."""
    usual = [] if mark.usual is None else [{"$ref": f"#/$defs/{quote(mark.usual)}"}]
    return [{"$ref": "#/$defs/any%20joint"}, *usual]


def _object(model: type[Section]) -> Schema:
    """What a section may hold."""
    kinds = {name: _field(field) for name, field in model.model_fields.items()}
    words = {word.replace(" ", "_"): kinds[name] for word, name in words_of(model).items()}
    found: Schema = {"type": "object", "description": _first_line(model)}
    if JOINT not in kinds:
        found |= {**_named(words), "additionalProperties": False}
    else:
        inner = words.pop(JOINT)
        found |= {**_named(words), "unevaluatedProperties": False}
        found["anyOf"] = [*_joint_beside(_mark(model)), {"properties": {JOINT: inner}}]
    if required := [name for name, field in model.model_fields.items() if must_be_said(field)]:
        found["required"] = required
    return found


def _mark(model: type[Section]) -> also:
    metadata = model.model_fields[JOINT].metadata
    return next((mark for mark in metadata if isinstance(mark, also)), also())


def _first_line(of: type) -> str:
    return (of.__doc__ or "").strip().split("\n")[0]


def _named(properties: Mapping[str, Schema]) -> Schema:
    """Properties, and a pattern for each name that can be spelt in several ways."""
    spelt = {
        f"^{re.sub('[_ -]', '[_ -]', name)}$": kind
        for name, kind in properties.items()
        if re.search("[_ -]", name)
    }
    found: Schema = {"properties": dict(properties)}
    return {**found, "patternProperties": spelt} if spelt else found


def _table_of(value: Schema) -> Schema:
    return {"type": "object", "additionalProperties": value}


def _leaf(kind: Any) -> Schema:  # noqa: ANN401 - types
    return TypeAdapter(kind).json_schema()


def _field(field: FieldInfo) -> Schema:
    kind: Any = field.annotation
    for mark in field.metadata:
        kind = Annotated[kind, mark]
    return _kind(kind)


def _kind(hint: Any) -> Schema:  # noqa: ANN401 - types
    """What may stand for a value of that type."""
    args = [each for each in get_args(hint) if each is not NoneType]
    if hint is JointWanted:
        return _wanted(also())
    if get_origin(hint) is Annotated:
        return _marked(hint, args[0], args[1:])
    if get_origin(hint) in {Union, UnionType}:
        return _kind(args[0]) if len(args) == 1 else {"anyOf": [_kind(each) for each in args]}
    if get_origin(hint) is tuple:
        return {"type": "array", "items": _kind(args[0])}
    return _object(hint) if isinstance(hint, type) and issubclass(hint, Section) else _leaf(hint)


def _marked(hint: Any, kind: Any, marks: Sequence[Any]) -> Schema:  # noqa: ANN401 - types
    for mark in marks:
        if isinstance(mark, also):
            return _wanted(mark)
    read_whole = any(isinstance(mark, PlainValidator | among) for mark in marks)
    return _leaf(hint) if read_whole else _kind(kind)
