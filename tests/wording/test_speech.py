"""Words of two countries. Which word belongs to which is common practice, told in `words.toml`."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.wording import Speech, pairs, spoken, word

US, UK = Speech.US, Speech.UK


@pytest.mark.parametrize(("us", "uk"), pairs())
def test_every_word_is_said_in_both(us: str, uk: str) -> None:
    for written in (us, uk):
        assert spoken(f"The {written} is cut.", US) == f"The {us} is cut."
        assert spoken(f"The {written} is cut.", UK) == f"The {uk} is cut."
        assert (word(written, US), word(written, UK)) == (us, uk)


def test_words_named_in_the_order_are_there() -> None:
    known = set(pairs())
    assert {
        ("rabbet", "rebate"),
        ("dado", "housing"),
        ("plow", "plough"),
        ("half-blind dovetail", "lapped dovetail"),
        ("vise", "vice"),
        ("stock bill", "cutting list"),
    } <= known


@pytest.mark.parametrize(
    ("text", "us", "uk"),
    [
        ("Rabbets are ploughed.", "Rabbets are plowed.", "Rebates are ploughed."),
        ("HOUSING", "DADO", "HOUSING"),
        ("two half-blind dovetails", "two half-blind dovetails", "two lapped dovetails"),
        ("ploughshare, carcassing", "ploughshare, carcassing", "ploughshare, carcassing"),
        ("a fielded panel's bevel", "a raised panel's bevel", "a fielded panel's bevel"),
    ],
)
def test_forms_and_capitals_are_kept(text: str, us: str, uk: str) -> None:
    assert (spoken(text, US), spoken(text, UK)) == (us, uk)


@pytest.mark.parametrize(
    "text",
    [
        'write joint = "housing"',
        "write joint = 'housing'",
        "write `housing`",
        "write it under [housing]",
        "write rebate = { wide = 3 }",
    ],
)
def test_what_has_to_be_written_in_the_file_stays(text: str) -> None:
    assert spoken(text, US) == spoken(text, UK) == text


def test_names_of_the_file_stay_wherever_they_stand() -> None:
    names = {"centre kicker", "left side"}
    text = "The centre kicker lies in the centre of the housing in the left side."
    assert spoken(text, US, names=names) == (
        "The centre kicker lies in the center of the dado in the left side."
    )


def test_a_longer_name_is_kept_whole() -> None:
    names = {"housing", "housing in left side"}
    assert spoken("housing in left side: a rabbet", UK, names=names) == (
        "housing in left side: a rebate"
    )


@given(
    st.text(alphabet=st.sampled_from("abehiorstu '\"-[]=\n"), max_size=60), st.sampled_from(Speech)
)
def test_saying_it_again_changes_nothing(text: str, speech: Speech) -> None:
    once = spoken(text, speech)
    assert spoken(once, speech) == once


def test_no_word_is_of_both_countries() -> None:
    us, uk = zip(*pairs(), strict=True)
    assert len({*us, *uk}) == 2 * len(us)
    assert all(re.fullmatch(r"[a-z][a-z -]+", each) for each in (*us, *uk))
