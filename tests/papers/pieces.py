"""A bookcase to read papers of, with pieces of its text changed."""

from functools import cache
from pathlib import Path

from tests.house.tree import ROOT

from scantling import SettingOut, read, set_out
from scantling.shop.read import read as read_shop

EXAMPLES = (
    "pieces/bookcase",
    "pieces/glaze_cupboard",
    "pieces/glaze_cupboard_lapped",
    "tests/pieces/metric_cupboard",
)


@cache
def pine_bookcase(*changes: tuple[str, str]) -> SettingOut:
    """The bookcase beside the tests of papers, with pieces of its text exchanged."""
    text = (Path(__file__).parent / "pine_bookcase.toml").read_text(encoding="utf-8")
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    shop = read_shop((ROOT / "pieces" / "shop.toml").read_text(encoding="utf-8"))
    return set_out(read(text, file="piece.toml"), shop=shop.shop, habits=shop.habits)
