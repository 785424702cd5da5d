"""Papers in the words and figures of the maker's country."""

import re
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from tests.papers.cupboard import cupboard
from tests.papers.test_packet import whole_text

from scantling.findings import Finding, Place, Weight
from scantling.papers import Sheet
from scantling.papers._paper import names_in, rule_of
from scantling.papers._shown import finding_in_words, in_words
from scantling.papers.cutting_list import CuttingList
from scantling.papers.setting_out_json import SettingOutJson
from scantling.setting_out import SettingOut
from scantling.units import INCH, Unit
from scantling.wording import Speech, pairs

US, UK = Speech.US, Speech.UK


@cache
def shown(words: Speech | None, figures: Unit | None, measure: Unit = Unit.INCH) -> SettingOut:
    whole = cupboard(measure=measure)
    return replace(whole, habits=replace(whole.habits, words=words, figures=figures))


@cache
def packet(words: Speech) -> str:
    """The packet's text without the names of the maker's file."""
    whole = shown(words, None)
    text = whole_text(whole)
    for name in sorted(names_in(whole), key=len, reverse=True):
        text = text.replace(name, "").replace(name.replace(".", " "), "")
    return text


def said(word: str, text: str) -> bool:
    return re.search(rf"(?<!\w){word}(?!\w)", text, re.IGNORECASE) is not None


@pytest.mark.parametrize(("us", "uk"), pairs())
def test_no_word_of_the_other_country_is_in_the_packet(us: str, uk: str) -> None:
    assert not said(uk, packet(US))
    assert not said(us, packet(UK))


def test_the_packet_says_words_of_both_kinds() -> None:
    spoken_here = [(us, uk) for us, uk in pairs() if said(us, packet(US))]
    assert len(spoken_here) >= 5  # or the test above would look at nothing
    assert all(said(uk, packet(UK)) for _, uk in spoken_here)


@pytest.mark.parametrize(("us", "uk"), pairs())
def test_every_word_is_shown_in_both(us: str, uk: str) -> None:
    finding = Finding(
        code="housing.thin",
        weight=Weight.MIND,
        says=f"The {uk} leaves little wood.",
        cure=f"Make the {us} shallower.",
        source=f"A book on the {uk}",
        place=Place(file="piece.toml", line=3, column=1),
    )
    here, there = (finding_in_words(finding, shown(speech, None)) for speech in (US, UK))
    assert (here.says, here.cure) == (f"The {us} leaves little wood.", f"Make the {us} shallower.")
    assert (there.says, there.cure) == (
        f"The {uk} leaves little wood.",
        f"Make the {uk} shallower.",
    )
    assert here.source == there.source == finding.source
    assert here.code == there.code == finding.code


def test_who_reads_inches_is_shown_us_words_unless_he_says_not() -> None:
    assert in_words("rebate", shown(None, None)) == "rabbet"
    assert in_words("rabbet", shown(None, None, Unit.MM)) == "rebate"
    assert in_words("rebate", shown(UK, None)) == "rebate"


def test_data_for_other_programs_do_not_change() -> None:
    plain = SettingOutJson.render(shown(None, None), sheet=Sheet.A4)
    assert plain == SettingOutJson.render(shown(UK, Unit.MM), sheet=Sheet.A4)
    heads = {
        CuttingList.render(shown(words, figures), sheet=Sheet.A4)["cutting-list.csv"].split(b"\r")[
            0
        ]
        for words in Speech
        for figures in Unit
    }
    assert len(heads) == 1


# by hand: 1 in is 25.4 mm; a maker reads half millimetres, and callipers below 2 mm
@pytest.mark.parametrize(
    ("inches", "reads"),
    [
        ("42", "about 1067"),  # 1066.8
        ("3/4", "about 19"),  # 19.05
        ("1/2", "about 12.5"),  # 12.7
        ("5", "127"),
        ("1/16", "about 1.6"),  # 1.5875
        ("5/64", "about 2"),  # 1.984
    ],
)
def test_inches_are_shown_in_millimetres_as_a_metric_rule_reads(inches: str, reads: str) -> None:
    rule = rule_of(shown(None, Unit.MM))
    assert rule.reads(Fraction(inches) * INCH) == reads


@pytest.mark.parametrize(
    ("millimetres", "reads"),
    [
        ("381", "15"),
        ("18", "about 23/32"),  # 22.68 of 32
        ("1050", "about 41 11/32"),  # 41 and 10.83 of 32
        ("12.7", "1/2"),
        ("3", "about 0.118"),
        ("0.5", "about 0.02"),
    ],
)
def test_millimetres_are_shown_in_inches_to_the_thirty_second(millimetres: str, reads: str) -> None:
    rule = rule_of(shown(None, Unit.INCH, Unit.MM))
    assert rule.reads(Fraction(millimetres)) == reads


def test_figures_of_the_piece_s_own_measure_stay_exact() -> None:
    assert rule_of(shown(None, Unit.INCH)).reads(INCH / 64) == "1/64"
    assert rule_of(shown(None, Unit.MM, Unit.MM)).reads(Fraction("0.25")) == "0.25"


@pytest.mark.parametrize(
    ("measure", "figures", "there", "not_there"),
    [
        (
            Unit.INCH,
            Unit.MM,
            ("about 660.5", "millimeters", "square meters"),
            r"inches|square feet|lb",
        ),
        (Unit.MM, Unit.INCH, ("26", "inches", "square feet"), r"milli\w+|square met\w+|kg"),
    ],
)
def test_a_packet_is_of_one_measure_throughout(
    measure: Unit, figures: Unit, there: tuple[str, ...], not_there: str
) -> None:
    text = whole_text(shown(None, figures, measure))  # 26 in over all: 660.4 mm
    assert all(each in text for each in there)
    assert not re.search(rf"\b({not_there})\b", text)
