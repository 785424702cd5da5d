"""The schema for editors, held against files by a validator of its own."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from tests.piece.bench import FORMS, HEAD, JOINTS

from scantling.piece._file.schema import schema

TEXT = (Path(__file__).parent / "example.toml").read_text(encoding="utf-8")
SOUND = TEXT.replace("Mortise-and-Tenon", "mortise and tenon")  # as the house spells it


@pytest.fixture(scope="module")
def validator() -> Draft202012Validator:
    made = schema(forms=FORMS, joints=JOINTS)
    Draft202012Validator.check_schema(made)
    return Draft202012Validator(made)


def faults(validator: Draft202012Validator, text: str) -> list[Any]:
    return list(validator.iter_errors(tomllib.loads(text)))


def test_a_sound_file_is_accepted(validator: Draft202012Validator) -> None:
    assert faults(validator, SOUND) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("format  = 1", "format  = 2"),
        ('measure = "inch"', 'measure = "cubit"'),
        ("dry   =", "dri   ="),
        ("[case]", "[caes]"),
        ("wide  = 42", "wide  = true"),
        ("wide  = 42", "wdie  = 42"),
        ('thick = "¾"', 'thik = "¾"'),
        ('joint = "housing", stopped', 'joint = "welding", stopped'),
        ("stopped = true", 'stopped = "yes"'),
        ("top_face = 4", "top_face = 4, tails = 2"),
        ("tails = 1", "tails = 0"),
        ("tenon  =", "tenno  ="),
        ('load  = "50 lb/ft2"', "load  = 50"),
        ('panel = "fielded"', 'panel = "feilded"'),
        ("{ foot = 1 },", "{ feet = 1 },"),
        ("count = 2\nthick", "count = 2.5\nthick"),
        ('fill  = "doors"\n', ""),
        ('show   = "white ash"', "show   = 3"),
    ],
)
def test_a_wrong_file_is_refused(validator: Draft202012Validator, old: str, new: str) -> None:
    assert old in SOUND
    assert faults(validator, SOUND.replace(old, new, 1))


def test_every_word_that_is_read_is_in_the_schema(validator: Draft202012Validator) -> None:
    for word in ("depth = 18", "rails_under_top = 'housing'", "'rails under top' = 'housing'"):
        assert faults(validator, HEAD + f"[case]\nwide = 42\n{word}\n") == []


def test_a_joint_that_is_not_named_has_the_usual_options(validator: Draft202012Validator) -> None:
    case = HEAD + "[case]\nwide = 42\n"
    assert faults(validator, case + "rails_under_top = { lap = 1 }") == []
    assert faults(validator, case + "rails_under_top = { stopped = true }")
    assert faults(validator, case + "bottom = { deep = 1 }")
