"""An outside size that is not said is told with what was taken for it, and follows are not."""

from __future__ import annotations

import re

import pytest
from tests.pieces.test_bookcase import TEXT, worked

from scantling.findings import Finding, Weight

# with nothing said the house takes 15 deep and 36 tall; the top of 31 1/2, less about 3/4 at both
# ends, makes the case about 30 wide
TAKEN = {"wide": r"30( \d+/32)?", "deep": "15", "tall": "36"}


def without(word: str) -> str:
    text, count = re.subn(rf"(?m)^{word}  = .*  # without.*$|^{word}  = 11$", "", TEXT)
    assert count == 1
    return text


def taken(text: str) -> list[Finding]:
    return [found for found in worked(text).findings if found.code == "sizes.taken"]


@pytest.mark.parametrize("word", TAKEN)
def test_an_outside_size_left_out_is_told_at_its_section(word: str) -> None:
    text = without(word)
    (found,) = taken(text)
    assert found.weight is Weight.MIND
    assert found.place is not None
    assert text.splitlines()[found.place.line - 1] == "[case]"
    assert re.search(rf"'{word}' is not said; .* is (about )?{TAKEN[word]} in: \w+", found.says)
    assert f"{word} = " in found.cure


def test_nothing_is_told_of_sizes_that_are_said() -> None:
    assert taken(TEXT) == []


def test_a_size_said_by_its_name_is_said() -> None:
    assert taken(f'{without("tall")}\n[also]\n"case.tall" = 47\n') == []


def test_holes_off_a_side_are_told_once_by_their_cause() -> None:
    loose = '[shelf.high]\non = { joint = "shelf pins", lowest = 36, holes = 12 }\n\n[back]'
    found = worked(without("tall").replace("[back]", loose))
    halts = [f.code for f in found.findings if f.weight is Weight.HALT]
    assert halts == ["shelf-pins.off-the-side"]
