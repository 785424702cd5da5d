"""A cure that holds a figure works: taken at its word, that line stops the work no more."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from tests.pieces.test_bookcase import TEXT, worked

from scantling.findings import Finding

FAULTS = {
    "a shelf at the upper end of the sides": ("top_face = 32", "top_face = 48"),
    "a shelf over the case": ("top_face = 32", "top_face = 52"),
    "a shelf in the front rail": ("top_face = 32", 'top_face = "47 1/2"'),
    "a shelf in the bottom": ("top_face = 17", "top_face = 3"),
    "a shelf under the bottom": ("top_face = 17", "top_face = 1"),
    "a bottom in the floor": ("top_face = 3 ", 'top_face = "1/2" '),
    "a bottom over the shelves": ("top_face = 3 ", "top_face = 40 "),
    "a back rabbet as deep as the side": ('deep = "3/8" }', 'deep = "3/4" }'),
    "a back rabbet deeper than the side": ('deep = "3/8" }', "deep = 1 }"),
    "a back rabbet wider than the side": ('wide = "9/16"', "wide = 12"),
    "a housing through the side": ('"housing", deep = "1/4"', '"housing", deep = "3/4"'),
    "a housing deeper than the side": ('"housing", deep = "1/4"', '"housing", deep = 1'),
    "a sliding dovetail through the side": (
        'dovetail"\ndeep  = "1/4"\n\n[back]',
        'dovetail"\ndeep  = "3/4"\n\n[back]',
    ),
    "no tail behind the lap": ('lap = "1/4"', 'lap = "3/4"'),
    "a lap no wider than its gap": ('lap = "3/8"', 'lap = "1/8"'),
    "a gap wider than its lap": ('gap = "1/8"', 'gap = "1/2"'),
    "rails wider than the case is deep": ('wide = "2 1/2"', "wide = 12"),
}
FIGURE = re.compile(r"([\d /]+ in) \(piece\.toml (\d+):(\d+)\)")


@dataclass(frozen=True, kw_only=True)
class Cured:
    """The file with the figure of one cure in the place that the cure names."""

    line: int
    text: str


def at_fault(fault: str) -> str:
    old, new = FAULTS[fault]
    assert TEXT.count(old) == 1
    return TEXT.replace(old, new)


def halts(text: str) -> list[Finding]:
    return [found for found in worked(text).findings if found.weight == "halt"]


def cured(text: str) -> Iterator[Cured]:
    for halt in halts(text):
        for figure, line, column in FIGURE.findall(halt.cure):
            lines = text.split("\n")
            lines[int(line) - 1] = _set(lines[int(line) - 1], int(column) - 1, figure.strip())
            yield Cured(line=int(line), text="\n".join(lines))


def _set(line: str, at: int, figure: str) -> str:
    before = line[:at].rstrip('"')
    value = re.match(r'[\d /]*\d"?', line[at:])
    assert value is not None
    return f'{before}"{figure}"{line[at + value.end() :]}'


@pytest.mark.parametrize("fault", FAULTS)
def test_the_line_at_fault_is_told_once_and_can_be_cured(fault: str) -> None:
    text = at_fault(fault)
    (halt,) = halts(text)
    assert halt.code == "sizes.conflict"
    assert list(cured(text))


@pytest.mark.parametrize("fault", FAULTS)
def test_the_figure_of_a_cure_works(fault: str) -> None:
    for one in cured(at_fault(fault)):
        # where two lines were at fault the other may still be
        again = [f for f in halts(one.text) if f.place and f.place.line == one.line]
        assert again == [], one.text.split("\n")[one.line - 1]
        assert {f.code for f in halts(one.text)} <= {"sizes.conflict"}


def test_a_rabbet_is_told_how_deep_it_may_be() -> None:
    (halt,) = halts(at_fault("a back rabbet as deep as the side"))
    assert halt.figure == "3/4 in"
    # 3/4 in less a lip of 3 mm is 16.05 mm, or 0.632 in; the next mark of 1/32 in below is 5/8 in
    assert halt.limit == "5/8 in"
    assert "5/8 in (piece.toml" in halt.cure
