"""Parts whose trade names hold a hyphen are named as they are shown, and by their families."""

from __future__ import annotations

import pytest
from tests.pieces.test_bookcase import TEXT, worked

from scantling.setting_out import SettingOut
from scantling.units import INCH

RAILS = ("front sub-top rail", "rear sub-top rail")
THIN, THICK = "23/32", "13/16"


def thicknesses(found: SettingOut) -> list[str]:
    assert not found.halts
    return [str(found.part(rail).extent.thickness / INCH) for rail in RAILS]


def also(**said: str) -> str:
    return f"{TEXT}\n[also]\n" + "\n".join(f'"{name}" = "{text}"' for name, text in said.items())


@pytest.mark.parametrize(
    "name", ["rear sub-top rail", "Rear sub-top rail", "rear sub top rail", "rear_sub-top_rail"]
)
def test_a_part_is_named_as_it_is_shown_or_in_plain_spelling(name: str) -> None:
    assert thicknesses(worked(also(**{f"{name}.thickness": THIN}))) == ["3/4", THIN]


@pytest.mark.parametrize("family", ["sub-top rail", "sub-top rails", "Sub Top Rail"])
def test_a_family_stands_for_each_of_its_parts(family: str) -> None:
    assert thicknesses(worked(also(**{f"{family}.thickness": THIN}))) == [THIN, THIN]


def test_a_part_spoken_of_by_its_own_name_is_not_meant_by_its_family() -> None:
    both = {"sub-top rail.thickness": THIN, "front sub-top rail.thickness": THICK}
    assert thicknesses(worked(also(**both))) == [THICK, THIN]


def test_a_joint_whose_name_holds_a_hyphen_is_named_too() -> None:
    found = worked(also(**{"top on rear sub-top rail.end distance": "2 3/4"}))
    assert found.sizes["top on rear sub-top rail.end distance"] == INCH * 11 / 4
    assert not found.halts


def test_a_wood_is_said_for_a_family_with_a_hyphen() -> None:
    found = worked(TEXT.replace("[case]", '"sub-top rail" = "black cherry"\n\n[case]'))
    assert [found.part(rail).wood for rail in RAILS] == ["black cherry"] * 2
    assert "piece.unknown-part" not in {f.code for f in found.findings}


def test_rails_under_the_top_are_as_thick_as_their_table_says() -> None:
    text = TEXT.replace('wide = "2 1/2"', f'thick = "{THIN}", wide = "2 1/2"')
    assert thicknesses(worked(text)) == [THIN, THIN]


def test_a_bottom_is_as_thick_as_its_table_says() -> None:
    found = worked(TEXT.replace("top_face = 3 }", f'top_face = 3, thick = "{THICK}" }}'))
    assert found.part("bottom").extent.thickness == INCH * 13 / 16
    assert not found.halts


def test_a_bottom_may_be_as_the_boards_give() -> None:
    found = worked(TEXT.replace("top_face = 3 }", 'top_face = 3, thick = "as the boards give" }'))
    (halt,) = (each for each in found.findings if each.weight == "halt")
    assert halt.code == "sizes.no-boards"
    assert "bottom.thickness" in halt.says
