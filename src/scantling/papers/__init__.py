"""One file per paper, each rendering a finished setting-out."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from typing import TYPE_CHECKING, cast

if TYPE_CHECKING:
    from scantling.papers._drawing.line_types import LINE_TYPES, Angle, Drawing
    from scantling.papers._drawing.part import part_drawing
    from scantling.papers._paper import Paper, Sheet

    PAPERS: Mapping[str, type[Paper]]

__all__ = [
    "LINE_TYPES",
    "PAPERS",
    "Angle",
    "Drawing",
    "Paper",
    "Sheet",
    "part_drawing",
]

_FROM = {
    "Paper": "_paper",
    "Sheet": "_paper",
    "LINE_TYPES": "_drawing.line_types",
    "Angle": "_drawing.line_types",
    "Drawing": "_drawing.line_types",
    "part_drawing": "_drawing.part",
}


def __getattr__(name: str) -> object:
    # On first use only: the typesetter and the kernel take longer to load than a whole --help.
    if name == "PAPERS":
        return _papers()
    if name in _FROM:
        return getattr(import_module(f"scantling.papers.{_FROM[name]}"), name)
    msg = f"module {__name__!r} has no attribute {name!r}"
    raise AttributeError(msg)


def _papers() -> Mapping[str, type[Paper]]:
    import scantling.papers as here  # noqa: PLC0415 - the roster of this very folder
    from scantling.papers._paper import Paper  # noqa: PLC0415 - loaded on first use
    from scantling.roster import members  # noqa: PLC0415 - loaded on first use

    found = members(here, base=cast("type", Paper))
    return cast("Mapping[str, type[Paper]]", found)
