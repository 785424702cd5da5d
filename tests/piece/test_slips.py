"""A figure in the wrong unit is told before anything is worked out with it."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.piece import read

DEMO = (Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml").read_text(
    encoding="utf-8"
)


def slips(old: str, new: str) -> list[tuple[int, str, str, str]]:
    assert DEMO.count(old) == 1
    found = read(DEMO.replace(old, new)).findings
    return [
        (f.place.line if f.place else 0, f.says, f.cure, f.figure)
        for f in found
        if f.code == "piece.length-slip"
    ]


def line_of(text: str) -> int:
    return DEMO[: DEMO.index(text)].count("\n") + 1


def test_inches_read_as_millimetres_are_told_at_each_outside() -> None:
    told = slips('measure = "inch"', 'measure = "mm"  ')
    assert [line for line, *_ in told] == [
        line_of("wide  = 42"),
        line_of("deep  = 18"),
        line_of("tall  = 37"),
    ]
    assert told[0][1:] == (
        "42 mm is too little for the outside of a piece.",
        "Look at the unit: for inch write 42 in.",
        "42 mm",
    )


@pytest.mark.parametrize(
    ("old", "new", "figure"),
    [
        ("wide  = 42 ", "wide  = 4200 ", "4200 in"),
        ("deep   = 16", "deep   = 406.4", "406.4 in"),
    ],
)
def test_millimetres_read_as_inches_are_longer_than_a_board(
    old: str, new: str, figure: str
) -> None:
    ((line, says, cure, told),) = slips(old, new)
    assert line == line_of(old)
    assert "longer than any board" in says
    assert cure.endswith(f"write {new.rpartition('= ')[2].strip()} mm.")
    assert told == figure


def test_furniture_of_every_usual_size_is_let_through() -> None:
    # a wall shelf 2 in deep; a church pew of 24 ft
    assert slips("deep  = 18", "deep  = 2 ") == []
    assert slips("wide  = 42 ", "wide  = 288 ") == []
    assert slips("wide  = 42 ", 'wide  = "288 1/32" ') != []
