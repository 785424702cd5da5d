"""Whatever stands behind a word of the piece file, it is told where and in the maker's words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import get_args

import pytest
from tests.piece.bench import FORMS as OWN_FORMS
from tests.piece.bench import HEAD, JOINTS

import scantling.joints
import scantling.piece
from scantling.errors import InternalError
from scantling.joints._joint import Joint
from scantling.piece import read
from scantling.piece._file.joint import also, options_of
from scantling.piece._form import Form
from scantling.piece._section import Section
from scantling.roster import members

FORMS: Mapping[str, type[Form]] = members(scantling.piece, base=Form)
HOUSE_JOINTS: Mapping[str, type] = members(scantling.joints, base=Joint)
VALUES = {
    "a number": "7",
    "a decimal": "2.5",
    "less than nothing": "-3",
    "truth": "true",
    "a word": '"three eighths"',
    "an empty word": '""',
    "a length": '"3/8"',
    "a date": "2020-02-20",
    "a list": '["a", 3]',
    "an empty list": "[]",
    "a table": "{ thick = 3 }",
    "an empty table": "{}",
    "a list of tables": "[{ rail = 3 }, { foot = true }]",
}


def filled(model: type[Section], value: str) -> Iterator[str]:
    """Every word of a section with that value, and of the sections within it."""
    for name, field in model.model_fields.items():
        within = [found for found in _sections(field.annotation) if found is not model]
        for inner in within:
            said = f"{{ {', '.join(filled(inner, value))} }}"
            yield f"{name} = {f'[{said}]' if 'tuple' in str(field.annotation) else said}"
        if not within:
            yield f"{name} = {value}"


def _sections(hint: object) -> Iterator[type[Section]]:
    if isinstance(hint, type) and issubclass(hint, Section):
        yield hint
    for each in get_args(hint):
        yield from _sections(each)


@pytest.mark.parametrize("value", VALUES)
@pytest.mark.parametrize("title", FORMS)
def test_any_value_of_any_word_of_a_form_is_told_in_findings(title: str, value: str) -> None:
    form = FORMS[title]
    heading = title.replace(" ", "_") + (".one" if form.many else "")
    for lines in (
        list(filled(form.section, VALUES[value])),
        [f"{w} = {VALUES[value]}" for w in form.section.model_fields],
    ):
        text = f"{HEAD}[{heading}]\n" + "\n".join(lines) + "\n"
        found = read(text).findings
        assert all(f.code.startswith("piece.") and f.says and f.cure for f in found)
        assert all(f.place is not None for f in found)
        told = {f.place.line for f in found if f.place} - {HEAD.count("\n") + 1}
        assert told, "no form takes the same value for all its words"


@pytest.mark.parametrize("value", VALUES)
@pytest.mark.parametrize("title", HOUSE_JOINTS)
def test_any_value_of_any_option_of_a_joint_is_told_in_findings(title: str, value: str) -> None:
    words = options_of(HOUSE_JOINTS[title], also()).model_fields
    said = ", ".join([f'joint = "{title}"', *(f"{word} = {VALUES[value]}" for word in words)])
    found = read(f"{HEAD}[doors]\nhinge = {{ {said} }}\n").findings
    assert all(f.code.startswith("piece.") and f.says and f.cure for f in found)
    assert all(f.place is not None for f in found)


def test_a_field_that_cannot_tell_its_fault_is_the_fault_of_the_house() -> None:
    class Odd(Section):
        deep: int = 3

    class OddForm(Form):
        title = "odd"
        order = 9
        section = Odd

    text = f'{HEAD}[odd]\ndeep = "3/8"\n'
    with pytest.raises(InternalError, match="deep"):
        read(text, forms={**OWN_FORMS, "odd": OddForm}, joints=JOINTS)
