"""The cupboard of `told.py` whose file states sizes, so that the page has fields for them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

from tests.web.in_one_go import in_one_go
from tests.web.told import BINDS, KNOTTY, drawings, work

from scantling.findings import Finding
from scantling.piece._file.spots import Steps, spots
from scantling.sizes.model import Stated
from scantling.web.workbench import Workbench

STATED: dict[Steps, tuple[str, ...]] = {
    ("case", "wide"): ("case.wide",),
    ("case", "tall"): ("left side.length", "right side.length"),
}


def stating(path: Path) -> Workbench[str]:
    """A workbench whose file states sizes of the case and of its sides."""

    def stated(_: str) -> Sequence[Stated]:
        return tuple(
            Stated(name=name, value=Fraction(0), text=spot.text, place=spot.place)
            for spot in spots(path.read_text(), file=path.name)
            for name in STATED.get(spot.path, ())
        )

    return Workbench(path, work=in_one_go(named), drawings=replace(drawings(), stated=stated))


def named(path: Path) -> tuple[str | None, Sequence[Finding]]:
    """The piece's name, wherever in the text it stands; broken as `work` has it."""
    text = path.read_text()
    if "?" in text:
        return work(path)
    (name,) = (spot.text for spot in spots(text) if spot.path == ("name",))
    return name, (BINDS, KNOTTY)
