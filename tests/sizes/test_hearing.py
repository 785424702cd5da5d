"""What is said of sizes against the names there are."""

from __future__ import annotations

from dataclasses import replace

from tests.sizes.cupboards import GRID, front, inch, reads, says

from scantling.findings import Place, Weight
from scantling.sizes.hearing import AsTheBoardsGive, from_boards
from scantling.sizes.model import Derived
from scantling.sizes.solving import solve

PLACE = Place(file="piece.toml", line=4, column=8)
DERIVED = replace(front(), derived=(Derived(name="left side.tail count", option="[case] tails"),))


def test_a_stated_derived_figure_names_the_option_to_set() -> None:
    line = replace(says("left side.tail count", "5"), place=PLACE)

    (finding,) = solve(DERIVED, stated=[line], grid=GRID).findings

    assert finding.code == "sizes.derived"
    assert finding.cure == "Set [case] tails instead."
    assert finding.place == PLACE


def test_a_measured_derived_figure_is_no_fault() -> None:
    solved = solve(DERIVED, measured=[reads("left side.tail count", "5")], grid=GRID)

    assert solved.findings == ()


def test_an_unknown_name_is_told_with_its_nearest() -> None:
    line = replace(says("case.widht", "42"), place=PLACE)

    (finding,) = solve(front(), stated=[line], grid=GRID).findings

    assert finding.code == "sizes.unknown-name"
    assert finding.weight is Weight.HALT
    assert finding.cure == "Did you mean case.wide?"


def test_an_unknown_measured_name_is_told_too() -> None:
    (finding,) = solve(front(), measured=[reads("lid.width", "4")], grid=GRID).findings

    assert finding.says == "No size is called lid.width."


def test_the_thinnest_board_of_a_set_decides() -> None:
    wish = AsTheBoardsGive(name="left side.thickness", boards="ash 4/4", place=PLACE)
    attainable = {"ash 4/4": [inch("13/16"), inch("25/32"), inch("27/32")]}

    lines, findings = from_boards([wish], attainable=attainable)

    assert [(line.name, line.value) for line in lines] == [("left side.thickness", inch("25/32"))]
    assert findings == ()
    solved = solve(front(), stated=lines, grid=GRID)
    assert solved.sizes["right side.thickness"] == inch("25/32")


def test_a_set_without_a_board_is_a_finding() -> None:
    wish = AsTheBoardsGive(name="left side.thickness", boards="elm", place=PLACE)

    lines, (finding,) = from_boards([wish], attainable={"ash 4/4": [inch(1)]})

    assert lines == ()
    assert finding.code == "sizes.no-boards"
    assert finding.place == PLACE
