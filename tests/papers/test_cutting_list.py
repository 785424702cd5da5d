"""The cutting list as rows for a spreadsheet."""

import csv
import io
from fractions import Fraction

import pytest
from tests.papers.cupboard import cupboard

from scantling.papers import Sheet
from scantling.papers.cutting_list import CuttingList
from scantling.setting_out import SettingOut
from scantling.units import Unit, length


def file_of(setting_out: SettingOut) -> bytes:
    (made,) = CuttingList.render(setting_out, sheet=Sheet.A4).values()
    return made


def rows(setting_out: SettingOut) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(file_of(setting_out).decode(), newline=""), strict=True))


def test_columns_are_the_makers() -> None:
    heading = file_of(cupboard()).decode().split("\r\n")[0]
    assert heading.startswith("mark,part,wood,how_many,long,wide,thick,")
    assert heading.endswith(",set_out,note,measure")


def test_a_line_counts_its_parts_and_gives_finished_and_rough_sizes() -> None:
    side, *_ = rows(cupboard())
    assert side == {
        "mark": "1", "part": "side", "wood": "white ash", "how_many": "2",
        "long": "26", "wide": "8 3/4", "thick": "0 3/4",
        "rough_long": "27", "rough_wide": "9", "rough_thick": "0 7/8",
        "set_out": "tape", "note": "", "measure": "inch",
    }  # fmt: skip


def test_every_made_part_is_counted_once() -> None:
    whole = cupboard()
    assert sum(int(row["how_many"]) for row in rows(whole)) == len(whole.made)


@pytest.mark.parametrize("measure", list(Unit))
def test_sizes_read_back_as_the_exact_lengths(measure: Unit) -> None:
    whole = cupboard(measure=measure)
    lengths = [n.part.extent.length for n in whole.lines]
    read = [
        (length(row["long"], unit=measure), exact)
        for row, exact in zip(rows(whole), lengths, strict=True)
        if not row["long"].startswith("about")
    ]
    assert len(read) > 8
    assert all(found == exact for found, exact in read)


def test_what_the_work_gives_is_only_about() -> None:
    (panel,) = (row for row in rows(cupboard()) if row["part"] == "door panel")
    assert panel["wide"] == "about 13"
    assert panel["set_out"] == "tape; wide mate"


def test_a_fraction_alone_is_not_taken_for_a_day_of_the_year() -> None:
    sizes = ("long", "wide", "thick", "rough_long", "rough_wide", "rough_thick")
    alone = [row[size] for row in rows(cupboard()) for size in sizes if row[size].count(" ") == 0]
    assert alone
    assert not any("/" in text for text in alone)
    assert length("0 3/4", unit=Unit.INCH) == Fraction(3, 4) * Fraction(127, 5)


@pytest.mark.parametrize(
    "text", ["=cmd|' /C calc'!A0", "+1+1", "-2+3", "@SUM(1)", "\t=1", " =1", "\uff1d1", "\n=1"]
)
def test_text_that_would_run_as_a_formula_is_kept_from_it(text: str) -> None:
    whole = cupboard(renamed={"side": text}, note=text)
    first = rows(whole)[0]
    assert first["part"] == first["note"] == f"'{text}"


@pytest.mark.parametrize("text", ['side "a", left', "two\r\nlines", "a;b", "Türblatt, außen"])
def test_any_text_comes_back_as_it_was(text: str) -> None:
    assert rows(cupboard(renamed={"side": text}))[0]["part"] == text


def test_lines_end_as_the_standard_has_them() -> None:
    # RFC 4180, section 2: CRLF ends each line, every line has as many fields as the heading
    whole = cupboard()
    text = file_of(whole).decode()
    assert text.endswith("\r\n")
    assert text.count("\r\n") == text.count("\n") == len(whole.lines) + 1
    assert {row.count(",") for row in text.split("\r\n")[:-1]} == {12}
