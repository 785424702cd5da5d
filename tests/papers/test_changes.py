"""Papers after a measurement: the fact is marked, what follows is told, older sheets are not."""

from __future__ import annotations

import io
from functools import cache
from pathlib import Path
from typing import Any

import pdfplumber

from scantling.exact import from_figures
from scantling.papers._changes import changes_page
from scantling.papers._pages import cutting_list
from scantling.papers._paper import Sheet
from scantling.papers.packet import Packet
from scantling.piece import read
from scantling.record.entry import Done, Entry, Reading, Said
from scantling.record.line import line_of
from scantling.record.reading import read as read_record
from scantling.setting_out import SettingOut, set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop

BOOKCASE = Path(__file__).parents[2] / "pieces" / "bookcase" / "piece.toml"
MM = from_figures("25.4")


@cache
def worked(*, measured: bool) -> SettingOut:
    said: list[Said] = [
        Reading(
            name="left side.thickness", texts=("0.71 in",), values=(from_figures("0.71") * MM,)
        ),
        Done(what="top cut", part="top"),
    ]
    lines = [
        line_of(Entry(id=str(n), at="", said=each, number=n))
        for n, each in enumerate(said, start=1)
    ]
    piece = read(BOOKCASE.read_text(encoding="utf-8"), file="piece.toml")
    record = read_record(b"".join(lines) if measured else b"")
    return set_out(piece, shop=default_shop(), habits=Habits(), record=record)


def marked(piece: SettingOut) -> list[tuple[str, str]]:
    """Part and size of each figure of the list that is shown as measured."""
    groups: Any = cutting_list(piece)
    return [
        (line["part"], word)
        for group in groups
        for line in group["lines"]
        for word in ("long", "wide", "thick")
        if line[word]["measured"]
    ]


def test_nothing_is_told_before_anything_is_measured() -> None:
    assert changes_page(worked(measured=False)) is None


def test_a_fact_stands_apart_from_what_follows() -> None:
    found: Any = changes_page(worked(measured=True))
    (fact,) = found["facts"]
    assert (fact["what"], fact["was"], fact["is"]) == ("left side, thickness", "3/4", "0.71")
    assert found["cut"] == ["top"]
    follows = {row["what"]: (row["was"], row["is"]) for row in found["follow"]}
    assert "case, inside wide" in follows
    assert all(was != now for was, now in follows.values())


def test_only_what_was_measured_is_marked_in_the_list() -> None:
    assert marked(worked(measured=True)) == [("side", "thick")]
    assert marked(worked(measured=False)) == []


def test_the_sheet_is_pinned_up_behind_the_first() -> None:
    (content,) = Packet.render(worked(measured=True), sheet=Sheet.LETTER).values()
    with pdfplumber.open(io.BytesIO(content)) as packet:
        text = packet.pages[1].extract_text()
    assert text.startswith("As the wood came out")
    assert "as measured" in text
    assert "to pin up" in text
