"""What is wrong with the maker's shop is told with what is found on his piece."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.pieces.edited import DEMO, demo

from scantling.cli import worker
from scantling.findings import Finding, Weight, in_sentences, underlined
from scantling.piece import read
from scantling.setting_out import set_out
from scantling.shop.read import read as read_shop

SHOP = (Path(__file__).parents[2] / "pieces" / "shop.toml").read_text(encoding="utf-8")
CHISELS = next(line for line in SHOP.splitlines() if line.startswith("bevel_edge"))

# what stands where the line of the chisels stood, and the text that is then underlined
UNREADABLE = {
    "a fraction without quotes": (
        'bevel_edge = ["1/4", 1/2]',
        "/",
        "A fraction stands without quotes",
    ),
    "a list never closed": (
        'bevel_edge = ["1/4", "1/2"',
        "[",
        "A list is opened here and never closed",
    ),
    "a line of one word": ("chisels as my father had", "a", "This line cannot be read"),
}


@pytest.mark.parametrize("case", UNREADABLE)
def test_a_line_of_the_shop_that_cannot_be_read_is_told_where_it_stands(case: str) -> None:
    line, guilty, says = UNREADABLE[case]
    text = SHOP.replace(CHISELS, line)
    (told,) = (f for f in read_shop(text).findings if f.code == "shop.not-readable")
    assert told.weight is Weight.HALT
    assert says in in_sentences(told).says
    assert told.cure
    assert told.place is not None
    assert told.place.line == text[: text.index(line)].count("\n") + 1
    shown, carets = underlined(text, told.place).split("\n")
    assert shown == line
    assert line[carets.index("^") :].startswith(guilty)


def test_a_faulty_shop_is_told_with_the_piece_and_stops_the_work(tmp_path: Path) -> None:
    line, _, says = UNREADABLE["a fraction without quotes"]
    (tmp_path / "shop.toml").write_text(SHOP.replace(CHISELS, line), encoding="utf-8")
    (tmp_path / "mine").mkdir()
    path = tmp_path / "mine" / "piece.toml"
    path.write_text(DEMO, encoding="utf-8")
    worked, _ = worker()(path)
    assert worked is not None
    assert worked.parts  # the piece is worked all the same
    assert worked.halts
    (told,) = (f for f in worked.findings if f.code == "shop.not-readable")
    at = SHOP[: SHOP.index(CHISELS)].count("\n") + 1
    assert str(told.place) == f"../shop.toml {at}:{line.rindex('/') + 1}"
    assert says in told.says


def test_what_was_heard_is_told_even_where_nothing_can_be_worked() -> None:
    told = Finding(code="shop.not-owned", weight=Weight.NOTE, says="No saw is listed.", cure="")
    base = demo()
    for text in (DEMO, DEMO.replace('fill   = "doors"', 'fill   = "dors"')):
        piece = read(text)
        found = set_out(piece, shop=base.shop, habits=base.habits, before=base, heard=(told,))
        assert told in found.findings
