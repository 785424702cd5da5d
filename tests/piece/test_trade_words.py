"""The words of both countries are read, and words of one meaning are told from each other."""

from __future__ import annotations

import re

import pytest
from tests.piece.bench import HEAD, read_here
from tests.pieces.test_bookcase import TEXT

import scantling.joints
import scantling.piece
from scantling.joints._joint import Joint
from scantling.piece import read
from scantling.piece._file.section import words_of
from scantling.piece._file.trade import SYNONYMS, in_house_words, synonym
from scantling.piece._form import Form
from scantling.roster import members, plain_name
from scantling.timber.species import all_species
from scantling.wording.speech import pairs

TITLES = tuple(members(scantling.joints, base=Joint))
SECTIONS = [form.section for form in members(scantling.piece, base=Form).values()]  # type: ignore[attr-defined]  # a roster of forms
OPTIONS = sorted({word for section in SECTIONS for word in words_of(section)})
HOUSE = {*TITLES, *OPTIONS}


def other_forms() -> list[tuple[str, str]]:
    """Words of the house that have another form, and that form."""
    return [
        (word, re.sub(rf"\b{one}\b", other, word))
        for us, uk in pairs()
        for one, other in ((us, uk), (uk, us))
        for word in sorted(HOUSE)
        if re.search(rf"\b{one}\b", word)
    ]


def test_words_of_every_kind_have_another_form() -> None:
    found = {house for house, _ in other_forms()}
    assert {"housing", "rabbet", "half-blind dovetail", "half lap"} <= found


@pytest.mark.parametrize(("house", "other"), other_forms())
def test_a_word_of_either_country_is_the_word_of_the_house(house: str, other: str) -> None:
    known = {plain_name(word) for word in HOUSE}
    for spelling in (other, other.title(), other.replace(" ", "_")):
        assert in_house_words(spelling, known) == plain_name(house)


@pytest.mark.parametrize("word", ["dado", "Dado", "housing"])
def test_a_joint_is_read_by_either_name(word: str) -> None:
    text = f'{HEAD}[case]\nwide = 42\nbottom = {{ joint = "{word}", deep = "1/4" }}\n'
    piece = read_here(text)
    assert piece.complete, piece.findings
    assert piece.text == text
    assert piece.sections[0].said.bottom.joint.title == "housing"  # type: ignore[attr-defined]  # the case of the bench


def test_a_whole_bookcase_is_read_in_the_other_countrys_words() -> None:
    own = TEXT
    other = own.replace('"housing"', '"dado"').replace("rabbet = ", "rebate = ")
    other = other.replace('"rabbet"', '"rebate"').replace("half-blind", "lapped")
    assert other != own
    found, wanted = read(other), read(own)
    assert found.findings == wanted.findings
    assert [type(a.said) for a in found.sections] == [type(a.said) for a in wanted.sections]


@pytest.mark.parametrize("group", SYNONYMS, ids=lambda group: group[0])
def test_a_word_of_the_same_meaning_is_proposed(group: tuple[str, ...]) -> None:
    for word in group:
        for known in group:
            assert synonym(word.title(), ["gap", known]) == known
        assert synonym(word, ["gap", "pair"]) is None


def test_no_word_stands_in_two_groups() -> None:
    words = [word for group in SYNONYMS for word in group]
    assert len(words) == len(set(words))


@pytest.mark.parametrize(
    ("old", "new", "cure"),
    [
        ("top_face = 17", 'top_face = 17\nthickness = "7/8"', "Perhaps thick."),
        ("boards = 5", 'boards = 5\nthickness = "7/8"', "Perhaps thick."),
        ("tall  = 48", "height  = 48", "Perhaps tall."),
        ("deep  = 11", "depth  = 11", "Perhaps deep."),
    ],
)
def test_a_word_that_is_nearly_the_house_s_is_cured_by_it(old: str, new: str, cure: str) -> None:
    text = TEXT.replace(old, new)
    assert text != TEXT
    assert [f.cure for f in read(text).findings] == [cure]


def test_a_loose_shelf_is_told_the_word_for_its_thickness() -> None:
    text = TEXT.replace("[back]", '[shelf.x]\non = "shelf pins"\nthickness = 1\n\n[back]')
    assert [f.cure for f in read(text).findings] == ["Perhaps thick."]


def test_a_wood_said_by_half_is_told_with_all_of_that_name() -> None:
    (found,) = read(TEXT.replace('"white ash"', '"pine"')).findings
    pines = [name for name in all_species() if "pine" in name]
    assert len(pines) == 10
    assert re.findall(r'"(.*?)"', found.cure) == pines
    assert "docs/piece_words.md" in found.cure
