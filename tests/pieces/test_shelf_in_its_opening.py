"""Loose shelves are told which opening they lie in, share its height, and lie on a hole."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from tests.pieces.edited import edited

from scantling.setting_out import SettingOut

PIECES = Path(__file__).parents[2] / "pieces"
FRAMED = (PIECES / "metric" / "bookcase" / "piece.toml").read_text("utf-8")
FRAMED = FRAMED.replace('measure = "mm" ', 'measure = "mm"\nfinest = 0.5 ')
HEAD, LOOSE = FRAMED.split('[shelf."middle loose"]')
BACK = "[back]" + LOOSE.split("[back]")[1]


def framed(*sections: str) -> SettingOut:
    """The bookcase with other loose shelves."""
    return edited("\n\n".join((HEAD, *sections, BACK)))


def levels(found: SettingOut) -> list[tuple[Fraction, Fraction]]:
    """Underside and top face of the loose shelves, from the lowest up. [mm]"""
    own = [part for part in found.parts if part.family == "loose shelf"]
    tops = sorted((part.placement.at[2], part.extent.thickness) for part in own)
    return [(top - thick, top) for top, thick in tops]


# Openings of the front: folders from 80 to 410, middle from 450 to 1115, upper from 1155 to 1820.
@pytest.mark.parametrize(
    ("word", "low", "high"),
    [("middle", 450, 1115), ("Upper", 1155, 1820), ("folders", 80, 410)],
)
def test_a_shelf_parts_its_opening_to_the_nearest_hole(word: str, low: int, high: int) -> None:
    found = framed(f'[shelf.loose]\nin = "{word}"\non = "shelf pins"')
    assert not found.halts
    ((under, top),) = levels(found)
    pitch = found.sizes["loose shelves.pitch"]
    assert abs((under - low) - (high - top)) <= pitch  # half of it either way


def test_several_shelves_share_their_opening() -> None:
    found = framed('[shelf.loose]\nin = "upper"\ncount = 3\non = "shelf pins"')
    assert not found.halts
    edges = [Fraction(1155), *(edge for level in levels(found) for edge in level), Fraction(1820)]
    clear = [high - low for low, high in list(pairwise(edges))[::2]]
    # 665 less three shelves of 20 is four times 151.25
    assert len(clear) == 4
    assert all(abs(each - Fraction(605, 4)) <= found.sizes["loose shelves.pitch"] for each in clear)


def test_the_hole_may_be_said_and_is_counted_from_the_opening() -> None:
    pins = '{ joint = "shelf pins", lowest = 100, pitch = 32, holes = 9, hole = 3, rest = 1 }'
    found = framed(f'[shelf.loose]\nin = "middle"\non = {pins}')
    ((under, _),) = levels(found)
    assert under == 450 + 100 + 2 * 32 + 1


def test_a_hole_that_the_row_has_not_is_told() -> None:
    pins = '{ joint = "shelf pins", lowest = 100, pitch = 32, holes = 4, hole = 5 }'
    found = framed(f'[shelf.loose]\nin = "middle"\non = {pins}')
    (halt,) = [f for f in found.findings if f.code == "shelf-pins.no-such-hole"]
    assert (halt.figure, halt.limit) == ("hole 5", "4 holes")


@pytest.mark.parametrize(("lowest", "is_told"), [(300, False), (310, True)])
def test_a_shelf_that_leaves_its_opening_is_told(lowest: int, *, is_told: bool) -> None:
    # 330 tall; the pins' flats 1 above their middles, a shelf of 20: at 300 it ends at 321
    pins = f'{{ joint = "shelf pins", lowest = {lowest}, holes = 1, rest = 1 }}'
    found = framed(f'[shelf.loose]\nin = "folders"\non = {pins}')
    told = [f for f in found.findings if f.code == "shelf-pins.out-of-its-opening"]
    assert bool(told) is is_told


def test_without_a_word_they_lie_in_the_tallest_and_it_is_said() -> None:
    found = framed('[shelf.loose]\non = "shelf pins"')
    ((under, _),) = levels(found)
    assert 1155 < under < 1820  # as tall as the middle one, and written first
    (note,) = [f for f in found.findings if f.code == "shelf-pins.opening-unsaid"]
    assert "tallest, upper" in note.says
    assert "middle" in note.cure


def test_a_row_whose_lowest_hole_is_said_stands_there_over_the_bottom() -> None:
    pins = '{ joint = "shelf pins", lowest = 640, pitch = 32, holes = 9, rest = 1 }'
    found = framed(f"[shelf.loose]\non = {pins}")
    assert levels(found)[0][0] == 80 + 640 + 4 * 32 + 1
    assert not [f for f in found.findings if f.code == "shelf-pins.opening-unsaid"]


def test_an_opening_that_is_not_there_is_told_with_the_nearest() -> None:
    found = framed('[shelf.loose]\nin = "midle"\non = "shelf pins"')
    (halt,) = [f for f in found.findings if f.weight == "halt"]
    assert halt.code == "piece.nothing-to-stand-on"
    assert "'middle'" in halt.cure


def test_room_between_fixed_shelves_is_called_by_the_one_below() -> None:
    case = (PIECES / "bookcase" / "piece.toml").read_text("utf-8")
    loose = '[shelf.loose]\nin = "above lower shelf"\non = "shelf pins"\n\n[back]'
    found = edited(case.replace("[back]", loose))
    assert not found.halts
    ((under, top),) = levels(found)
    inch = Fraction(127, 5)
    # from 17 to 32 less the shelf of 3/4
    assert abs((under - 17 * inch) - (Fraction(125, 4) * inch - top)) <= inch


def test_two_sets_in_one_place_are_told_once_and_by_their_depth() -> None:
    pins = 'on = { joint = "shelf pins", lowest = 640 }'
    found = framed(f"[shelf.low]\n{pins}", f"[shelf.high]\n{pins}")
    (clash,) = [f for f in found.findings if f.code == "proofs.parts-overlap"]
    assert set(clash.parts) == {"low shelf 1", "high shelf 1"}
    assert clash.figure == "20 mm"  # as thick as they are
