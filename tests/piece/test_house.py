"""The reader with the forms and joints of the house: the example, the schema, the word list."""

import json
import random
import re
import time
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.house.tree import ROOT
from tests.piece.damage import damaged

import scantling.joints
import scantling.piece
from scantling.findings import told
from scantling.joints._joint import Joint
from scantling.piece import read
from scantling.piece._file.joint import also, options_of
from scantling.piece._file.manual import words_page
from scantling.piece._file.section import JOINT, words_of
from scantling.piece._form import Form
from scantling.piece._read import editor_schema
from scantling.roster import members

DEMO = (ROOT / "pieces" / "glaze_cupboard" / "piece.toml").read_text(encoding="utf-8")
MANUAL = (ROOT / "docs" / "piece_file.md").read_text(encoding="utf-8")
JOINTS = members(scantling.joints, base=Joint)
FORMS: dict[str, type[Form]] = dict(members(scantling.piece, base=Form))

# A word of the section that one of its joints has too: the section's is meant, and the joint's
# is said in a table of its own, joint = { joint = ..., thick = ... }.
SHADOWED = {
    *((form, "thick", "mortise and tenon") for form in ("back", "doors", "face frame")),
    *((form, "thick", "mortise and tenon") for form in ("partition", "shelf")),
    *(("shelf", "count", joint) for joint in ("hinge", "screws in slots")),
    *(("face frame", word, "mortise and tenon") for word in ("tenon", "stub")),
}


def test_the_example_has_no_fault() -> None:
    piece = read(DEMO)
    assert [told(finding, source_text=DEMO) for finding in piece.findings] == []
    assert piece.complete


def test_the_example_in_the_manual_has_no_fault() -> None:
    (text,) = re.findall(r"```toml\n(.*?)```", MANUAL, re.DOTALL)
    assert [told(finding, source_text=text) for finding in read(text).findings] == []
    assert len(text.splitlines()) < 20


def test_the_schema_accepts_the_example() -> None:
    made = editor_schema()
    Draft202012Validator.check_schema(made)
    assert [e.message for e in Draft202012Validator(made).iter_errors(tomllib.loads(DEMO))] == []


def test_the_schema_refuses_what_the_reader_refuses() -> None:
    validator = Draft202012Validator(editor_schema())
    for old, new in (("wide  = 42", "wdie  = 42"), ('"shiplap"', '"shipwreck"'), ("[case]", "[x]")):
        text = DEMO.replace(old, new, 1)
        assert text != DEMO
        assert not read(text).complete
        assert list(validator.iter_errors(tomllib.loads(text)))


def test_the_schema_is_the_approved_one(approved: Callable[[Path, bytes], None]) -> None:
    made = json.dumps(editor_schema(), indent=1, ensure_ascii=False) + "\n"
    approved(Path(__file__).parent / "approved_schema.json", made.encode())


def test_the_word_list_is_the_approved_one(approved: Callable[[Path, bytes], None]) -> None:
    approved(ROOT / "docs" / "piece_words.md", words_page(forms=FORMS, joints=JOINTS).encode())


def test_only_known_words_of_a_section_hide_one_of_a_joint() -> None:
    sections = {title: form.section for title, form in FORMS.items()}
    hidden = {
        (title, word, joint)
        for title, section in sections.items()
        for joint, made in JOINTS.items()
        for word in words_of(options_of(made, also()))
        if JOINT in section.model_fields and word in words_of(section)
    }
    assert hidden == SHADOWED


def slowest(count: int, *, seed: int) -> float:
    """Seconds of work that the slowest of so many damaged copies took to read and tell."""
    rng = random.Random(seed)  # noqa: S311 - damage, no secret
    worst = 0.0
    for _ in range(count):
        text = damaged(DEMO, rng)
        began = time.process_time()
        piece = read(text)
        for finding in piece.findings:
            told(finding, source_text=text)
        worst = max(worst, time.process_time() - began)
        assert piece.complete or piece.findings
    return worst


def test_three_hundred_damaged_copies_are_read() -> None:
    assert slowest(300, seed=3) < 2.0


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_twenty_thousand_damaged_copies_are_read() -> None:
    assert slowest(20_000, seed=4) < 2.0
