"""Papers of the example that ships, as a maker would ask for them."""

import json
from functools import cache

import pytest
from jsonschema import Draft202012Validator
from tests.house.tree import ROOT
from tests.papers import read_back

from scantling import PAPERS, SettingOut, read, set_out
from scantling.cli import worker
from scantling.papers import Sheet
from scantling.papers._document import schema
from scantling.shop.read import read as read_shop

FOLDER = ROOT / "pieces" / "glaze_cupboard"


@cache
def worked() -> SettingOut:
    piece = read((FOLDER / "piece.toml").read_text(), file="piece.toml")
    shop = read_shop((FOLDER.parent / "shop.toml").read_text())
    return set_out(piece, shop=shop.shop, habits=shop.habits)


@cache
def packet(sheet: Sheet) -> bytes:
    return PAPERS["packet"].render(worked(), sheet=sheet)["packet.pdf"]


def test_its_setting_out_keeps_the_promise_of_the_schema() -> None:
    made = PAPERS["setting-out"].render(worked(), sheet=Sheet.A4)["setting-out.json"]
    found = json.loads(made)
    assert [e.message for e in Draft202012Validator(schema()).iter_errors(found)] == []
    assert len(found["parts"]) > 49
    assert len(found["joints"]) > 50


@pytest.mark.parametrize("sheet", list(Sheet))
def test_no_page_of_its_packet_is_overfull(sheet: Sheet) -> None:
    edge = 18 * 72 / 25.4 - 0.5
    made = read_back.pages(packet(sheet))
    assert 20 <= len(made) <= 60
    pinned = ["to pin up" in page.text for page in made]
    # at most five sheets on the wall, and they come first
    # five kinds of sheet: the whole, what to saw, joints, boards, before the glue; some take two
    assert 3 <= sum(pinned) <= 7
    assert all(pinned[: sum(pinned)])
    for page in made:
        assert min(each.left for each in page.signs) > edge
        assert max(each.right for each in page.signs) < page.wide - edge


def test_its_cover_says_how_large_it_is() -> None:
    # the sizes its maker wrote: 43 1/2 and 19 of the top, 37 and a top of 7/8
    cover = read_back.texts(packet(Sheet.LETTER))[0]
    assert all(size in cover for size in ("Glaze cupboard", "43 1/2", "19", "37 7/8"))


@pytest.mark.slow
@pytest.mark.parametrize("folder", ["pieces/glaze_cupboard_lapped", "tests/pieces/metric_cupboard"])
@pytest.mark.parametrize("sheet", list(Sheet))
def test_other_cupboards_too_have_few_sheets_to_pin_up(folder: str, sheet: Sheet) -> None:
    whole, _ = worker()(ROOT / folder / "piece.toml")
    assert whole is not None
    found = PAPERS["packet"].render(whole, sheet=sheet)["packet.pdf"]
    pinned = ["to pin up" in text for text in read_back.texts(found)]
    # five kinds of sheet: the whole, what to saw, joints, boards, before the glue; some take two
    assert 3 <= sum(pinned) <= 7
    assert all(pinned[: sum(pinned)])
