"""Templates are at full size: read back from the PDF, in millimetres, against the joints' figures.

Lines of a PDF are in points of 1/72 in (ISO 32000-1, 8.3.2.3); 25.4 mm are one inch.
"""

from __future__ import annotations

import io
from collections.abc import Iterable
from fractions import Fraction
from functools import cache
from pathlib import Path

import pdfplumber
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.papers._full_size import templates
from scantling.papers._paper import Sheet
from scantling.papers._stick import levels
from scantling.papers._tiles import CAPTION, laid_out
from scantling.papers.templates import Templates
from scantling.piece import read
from scantling.setting_out import SettingOut, set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop

PIECES = Path(__file__).parents[2] / "pieces"
MM = 25.4 / 72
CLOSE = 0.01  # [mm] what the issue of a full-size paper allows


@cache
def worked(piece: str = "glaze_cupboard") -> SettingOut:
    text = (PIECES / piece / "piece.toml").read_text(encoding="utf-8")
    return set_out(read(text, file="piece.toml"), shop=default_shop(), habits=Habits())


@cache
def pages(sheet: Sheet) -> list[tuple[list[tuple[float, float, float, float]], str]]:
    """Of each page its lines, x0, y0, x1, y1 from the lower left [mm], and its words."""
    (content,) = Templates.render(worked(), sheet=sheet).values()
    with pdfplumber.open(io.BytesIO(content)) as found:
        return [(list(_lines(page)), page.extract_text()) for page in found.pages]


def _lines(page: pdfplumber.page.Page) -> Iterable[tuple[float, float, float, float]]:
    for line in page.lines:
        yield tuple(line[k] * MM for k in ("x0", "y0", "x1", "y1"))
    for box in page.rects:
        yield tuple(box[k] * MM for k in ("x0", "y0", "x1", "y1"))


@pytest.mark.parametrize("sheet", list(Sheet))
def test_the_squares_are_50_mm_at_both_ends_of_every_sheet(sheet: Sheet) -> None:
    for lines, _ in pages(sheet):
        squares = [
            (x0, y0)
            for x0, y0, x1, y1 in lines
            if abs(x1 - x0 - 50) <= CLOSE and abs(y1 - y0 - 50) <= CLOSE
        ]
        assert len(squares) == 2
        assert max(x for x, _ in squares) - min(x for x, _ in squares) > 100


def spans(lines: Iterable[tuple[float, float, float, float]]) -> list[tuple[float, float]]:
    return [(abs(x1 - x0), abs(y1 - y0)) for x0, y0, x1, y1 in lines]


@pytest.mark.parametrize("sheet", list(Sheet))
def test_a_template_on_paper_is_as_large_as_the_joint(sheet: Sheet) -> None:
    found = templates(worked())
    on_paper = [span for lines, _ in pages(sheet) for span in spans(lines)]
    for template in found:
        for (a, b), (c, d) in template.strokes:
            wanted = (abs(c - a), abs(d - b))
            turned = (wanted[1], wanted[0])
            assert any(
                abs(w - x) <= CLOSE and abs(h - y) <= CLOSE
                for w, h in on_paper
                for x, y in (wanted, turned)
            ), (template.joint, wanted)


def test_tails_have_the_figures_of_their_joint() -> None:
    piece = worked()
    (joint,) = [j for j in piece.joints if j.name == "drawer 1.front at left side"]
    figures = {f.word: f.value for f in joint.drawn}
    (tails,) = [
        t for t in templates(piece) if t.joint == joint.title and "drawer 1.left side" in t.parts
    ][:1]
    assert tails.size[1] == pytest.approx(float(piece.sizes["drawer 1.left side.width"]), abs=CLOSE)
    slope = float(figures["slope"])
    sloped = [s for s in tails.strokes if s[0][0] != s[1][0] and s[0][1] != s[1][1]]
    assert len(sloped) == 2 * int(figures["tails"])
    for (a, b), (c, d) in sloped:
        assert abs(d - b) / abs(c - a) == pytest.approx(slope, rel=1e-4)


def test_a_tenon_shows_its_shoulder_and_its_haunch() -> None:
    piece = worked()
    rail = [
        t for t in templates(piece) if "left door.top rail" in t.parts and t.face == "face side"
    ]
    entry = float(piece.sizes["left door.top rail in left stile.entry"])
    xs = {round(x, 2) for t in rail for stroke in t.strokes for x, _ in stroke}
    assert any(abs(x - entry) <= CLOSE for x in xs)
    assert len({y for t in rail[:1] for stroke in t.strokes for _, y in stroke}) > 2


def test_each_template_says_where_it_lies_and_for_what() -> None:
    words = " ".join(text for _, text in pages(Sheet.LETTER))
    assert "reference end at the left" in words
    assert "half-blind dovetail" in words
    assert "Measure both squares" in words
    for template in templates(worked()):
        assert template.parts


# ----------------------------------------------------------------------------- story stick


def test_the_stick_has_every_level_of_the_case_and_what_it_is() -> None:
    piece = worked()
    found = {what: level.height for level in levels(piece) for what in level.what}
    assert found["bottom, top"] - found["bottom, under"] == piece.sizes["bottom.thickness"]
    assert found["left side, top"] == piece.sizes["left side.length"]
    assert not any(what.startswith(("left door", "drawer 1.")) for what in found)


@pytest.mark.parametrize("sheet", list(Sheet))
def test_the_strips_joined_end_to_end_are_as_tall_as_the_piece(sheet: Sheet) -> None:
    strips = [
        y1 - y0
        for lines, text in pages(sheet)
        if "Story stick" in text or "Storey rod" in text
        for x0, y0, x1, y1 in lines
        if abs(x1 - x0 - 30) <= CLOSE and y1 - y0 > CLOSE
    ]
    top = float(max(level.height for level in levels(worked())))
    assert sum(strips) == pytest.approx(top, abs=CLOSE * len(strips))


# ------------------------------------------------------------------------------------ tiles

SIZES = st.lists(st.tuples(st.floats(5, 900), st.floats(5, 900)), min_size=1, max_size=8)
ROOM = (186.0, 211.0)


@given(sizes=SIZES)
def test_every_spot_of_every_drawing_is_on_some_sheet_and_nothing_is_cut_off(
    sizes: list[tuple[float, float]],
) -> None:
    sheets = laid_out(sizes, room=ROOM)
    for number, size in enumerate(sizes):
        tiles = [t for sheet in sheets for t in sheet if t.drawing == number]
        across, up = size[::-1] if tiles[0].turned else size
        for share in (0.0, 0.25, 0.5, 0.75, 1.0):
            x, y = across * share, up * share
            assert any(
                t.start[0] - 1e-6 <= x <= t.start[0] + t.size[0] + 1e-6
                and t.start[1] - 1e-6 <= y <= t.start[1] + t.size[1] + 1e-6
                for t in tiles
            )
    for sheet in sheets:
        for t in sheet:
            assert t.at[0] >= -1e-6
            assert t.at[1] >= CAPTION - 1e-6
            assert t.at[0] + t.size[0] <= ROOM[0] + 1e-6
            assert t.at[1] + t.size[1] <= ROOM[1] + 1e-6


@given(sizes=SIZES)
def test_no_two_lie_on_each_other(sizes: list[tuple[float, float]]) -> None:
    for sheet in laid_out(sizes, room=ROOM):
        for i, one in enumerate(sheet):
            for other in sheet[:i]:
                apart = [
                    one.at[k] + one.size[k] <= other.at[k] + 1e-6
                    or other.at[k] + other.size[k] <= one.at[k] + 1e-6
                    for k in (0, 1)
                ]
                assert any(apart)


def test_a_bookcase_without_such_joints_has_its_stick_alone() -> None:
    found = Templates.render(worked("bookcase"), sheet=Sheet.A4)
    assert list(found) == ["templates.pdf"]
    assert Fraction(0) < levels(worked("bookcase"))[0].height
