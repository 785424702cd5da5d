"""Pages of a packet read back: what stands on them and where, from the upper left corner.

PDFium reads a page some fifteen times quicker than the pure-Python reader, which is kept for the
few pages whose lines are measured.
"""

from __future__ import annotations

import ctypes
import re
from collections.abc import Sequence
from dataclasses import dataclass

import pypdfium2 as pdfium
from pypdfium2 import raw


@dataclass(frozen=True, kw_only=True)
class Sign:
    """One printed sign, as wide as it advances. [pt]"""

    sign: str
    left: float
    right: float
    low: float  # how far down its foot stands
    font: str


@dataclass(frozen=True, kw_only=True)
class Page:
    """A page as it is printed. [pt]"""

    wide: float
    tall: float
    text: str
    signs: Sequence[Sign]  # without spaces


def pages(packet: bytes) -> list[Page]:
    """Every page of a packet."""
    with pdfium.PdfDocument(packet) as document:
        return [_page(page) for page in document]


def texts(packet: bytes) -> list[str]:
    """Text of each page: every kind of space is one space, breaks inside words are gone."""
    return [plain(page.text) for page in pages(packet)]


def plain(text: str) -> str:
    """A text with one kind of space, and none of the marks where a word may be broken."""
    return re.sub(r"[ \u00a0]+", " ", text.replace("\u200b", ""))


def _page(page: pdfium.PdfPage) -> Page:
    wide, tall = page.get_size()
    text = page.get_textpage()
    signs = [
        _sign(text, i, tall=tall)
        for i in range(text.count_chars())
        if not raw.FPDFText_IsGenerated(text, i)
    ]
    return Page(
        wide=wide,
        tall=tall,
        text=text.get_text_range().replace("\r\n", "\n"),
        signs=[each for each in signs if each.sign.strip("\u200b \u00a0\r\n")],
    )


def _sign(text: pdfium.PdfTextPage, i: int, *, tall: float) -> Sign:
    box = raw.FS_RECTF()
    raw.FPDFText_GetLooseCharBox(text, i, box)
    name = ctypes.create_string_buffer(100)
    raw.FPDFText_GetFontInfo(text, i, name, len(name), None)
    return Sign(
        sign=chr(raw.FPDFText_GetUnicode(text, i)),
        left=box.left,
        right=box.right,
        low=tall - box.bottom,
        font=name.value.decode(),
    )
