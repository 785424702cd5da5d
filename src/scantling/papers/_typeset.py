"""The only door to the typesetter: a template and plain data in, a finished PDF out.

Whatever the maker wrote reaches the template as data and is never pasted into its markup, so
no name of a part can change the page. Only the fonts beside this module are used, nothing is
fetched, and no date is set: the same data give the same bytes.
"""

from __future__ import annotations

import io
import json
import unicodedata
from collections.abc import Mapping
from functools import cache
from importlib.resources import as_file, files

import pikepdf
import typst

from scantling.errors import InternalError
from scantling.papers._paper import Sheet

LONGEST_WORD = 24  # [characters] a longer one may break anywhere, so that it keeps its column
BREAK = "\u200b"

Plain = str | int | float | bool | None | list["Plain"] | dict[str, "Plain"]


def pdf(template: str, data: Mapping[str, Plain], *, sheet: Sheet) -> bytes:
    """A paper as PDF, to be printed without scaling.

    Args:
        template: Name of a `.typ` file beside this module.
        data: What the template shows; every text in it may hold anything.
        sheet: Paper size.
    """
    wide, tall = sheet.size
    told = {"wide": float(wide), "tall": float(tall), **data}
    inputs = {"data": json.dumps(_harmless(told), ensure_ascii=False)}
    with as_file(files("scantling.papers") / template) as path:
        set_in = _compiler(str(path.parent))
        try:
            raw = set_in.compile(input=str(path), format="pdf", sys_inputs=inputs, timestamp=0)
        except typst.TypstError as wrong:
            # Data of any kind must pass; a template that they can break is our own fault.
            raise InternalError(f"{template} could not be set: {wrong}") from wrong
    assert isinstance(raw, bytes)  # noqa: S101 - one file was asked for; several come as a list
    return _finished(raw)


@cache
def _compiler(folder: str) -> typst.Compiler:
    return typst.Compiler(root=folder, font_paths=[f"{folder}/fonts"], ignore_system_fonts=True)


def _finished(raw: bytes) -> bytes:
    with pikepdf.open(io.BytesIO(raw)) as made:
        made.Root.ViewerPreferences = pikepdf.Dictionary(PrintScaling=pikepdf.Name("/None"))
        out = io.BytesIO()
        made.save(out, deterministic_id=True, linearize=False)
    return out.getvalue()


def _harmless(node: object) -> Plain:
    """The same data with every text safe to show."""
    if isinstance(node, str):
        return shown(node)
    if isinstance(node, Mapping):
        return {str(word): _harmless(each) for word, each in node.items()}
    if isinstance(node, list | tuple):
        return [_harmless(each) for each in node]
    assert node is None or isinstance(node, int | float)  # noqa: S101 - JSON knows no more kinds
    return node


def shown(text: str) -> str:
    """Text as it may stand on paper: no signs that steer or turn it, no word without a break."""
    plain = "".join(" " if sign in "\n\r\t" else _sign(sign) for sign in text)
    return " ".join(_breakable(word) for word in plain.split(" "))


def _sign(sign: str) -> str:
    # Cc and Cs steer, Cf turns (right-to-left marks), Co and Cn have no look of their own
    return "\ufffd" if unicodedata.category(sign).startswith("C") else sign


def _breakable(word: str) -> str:
    if len(word) <= LONGEST_WORD:
        return word
    return BREAK.join(word[i : i + 8] for i in range(0, len(word), 8))
