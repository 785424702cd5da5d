"""The demo, edited by a line: worked from the demo as it was."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from pathlib import Path

from scantling.findings import Finding
from scantling.piece import read
from scantling.setting_out import SettingOut, set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.solids.store import Store

DEMO = (Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml").read_text(
    encoding="utf-8"
)


class Unforgetting(Store):
    """Keeps what was worked out for one test for all that come after it."""

    def next_round(self) -> None:
        """Nothing is forgotten."""


STORE = Unforgetting()


@cache
def demo() -> SettingOut:
    """The demo, worked once: most of what differs from it by a line stays as it was."""
    return set_out(read(DEMO), shop=default_shop(), habits=Habits(), store=STORE)


def edited(text: str) -> SettingOut:
    """That text as an edit of the demo; `test_edits` holds that it is as good as a fresh start."""
    piece = read(text)
    assert piece.complete, piece.findings
    base = demo()
    return set_out(piece, shop=base.shop, habits=base.habits, store=base.store, before=base)


def findings_of(text: str) -> Sequence[Finding]:
    """What is found on that text, which can be read."""
    return edited(text).findings


def fresh(text: str) -> SettingOut:
    """That text, with nothing worked before it."""
    return set_out(read(text), shop=default_shop(), habits=Habits())


def halts(text: str) -> list[Finding]:
    """What stops the work on that text."""
    return [f for f in findings_of(text) if f.weight == "halt"]


def with_line(old: str, new: str) -> tuple[str, int]:
    """The demo with one text replaced, and the line it stands in."""
    assert DEMO.count(old) == 1, old
    return DEMO.replace(old, new), DEMO[: DEMO.index(old)].count("\n") + 1


def without(*sections: str) -> str:
    """The demo without those sections."""
    blocks = re.split(r"(?m)^(?=\[)", DEMO)
    return "".join(b for b in blocks if b.split("]")[0].strip("[") not in sections)
