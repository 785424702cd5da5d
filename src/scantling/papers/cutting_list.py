"""The cutting list as rows for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping
from typing import ClassVar

from scantling.exact import Fraction
from scantling.papers._paper import Rule, Sheet, own_sizes, rule_of, set_out_words
from scantling.papers._shown import in_words
from scantling.setting_out import Line, SettingOut

COLUMNS = (
    *("mark", "part", "wood", "how_many", "long", "wide", "thick"),
    *("rough_long", "rough_wide", "rough_thick", "set_out", "note", "measure"),
)
_FORMULA = tuple("=+-@\t\r\uff1d\uff0b\uff0d\uff20")  # the last four are their wide twins


class CuttingList:
    """Cutting list: what to saw, one row for all parts alike."""

    title: ClassVar[str] = "cutting list"

    @classmethod
    def render(cls, setting_out: SettingOut, *, sheet: Sheet) -> Mapping[str, bytes]:
        """`cutting-list.csv`: lines end as RFC 4180 has them, in UTF-8, a heading first."""
        del sheet  # rows have no pages
        text = io.StringIO(newline="")
        rows = csv.writer(text, lineterminator="\r\n")
        rows.writerow(COLUMNS)
        rows.writerows(tuple(_row(line, setting_out)) for line in setting_out.lines)
        return {"cutting-list.csv": text.getvalue().encode()}


def _row(line: Line, setting_out: SettingOut) -> Iterator[str]:
    rule = rule_of(setting_out)
    yield str(line.mark)
    yield from (_harmless(text) for text in (line.family, line.part.wood))
    yield str(len(line.parts))
    yield from (
        _cell(rule, own.value, loose=own.loose) for own in own_sizes(setting_out, line.part)
    )
    yield from (_cell(rule, value) for value in line.rough)
    yield set_out_words(line, setting_out)
    yield _harmless(in_words(line.note, setting_out))
    yield str(rule.unit)


def _cell(rule: Rule, value: Fraction, *, loose: bool = False) -> str:
    text = rule.reads(value, loose=loose)
    # Alone in a cell, 3/4 is taken for the third of April; 0 3/4 is three quarters everywhere.
    return f"0 {text}" if text[0].isdigit() and "/" in text and " " not in text else text


def _harmless(text: str) -> str:
    """Text that no spreadsheet runs: an apostrophe before what would begin a formula."""
    return f"'{text}" if text.lstrip(" \n").startswith(_FORMULA) else text
