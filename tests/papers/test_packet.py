"""The packet, read back: text, page size, fonts, no dates, nothing over the margin."""

import io
import re
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pdfplumber
import pikepdf
import pytest
from tests.papers import read_back
from tests.papers.cupboard import FINDINGS, cupboard

from scantling.findings import Finding
from scantling.papers import Sheet
from scantling.papers.packet import Packet
from scantling.setting_out import SettingOut
from scantling.sizes.model import Sizes
from scantling.units import Unit

MM = 72 / 25.4  # [pt]
MARGIN = 18 * MM


def file_of(setting_out: SettingOut, sheet: Sheet = Sheet.A4) -> bytes:
    return Packet.render(setting_out, sheet=sheet)["packet.pdf"]


@cache
def plain(sheet: Sheet = Sheet.A4) -> bytes:
    return file_of(cupboard(), sheet)


@cache
def plain_pages() -> list[str]:
    return read_back.texts(plain())


@cache
def metric() -> str:
    """Text of the packet of the same cupboard in millimetres."""
    return whole_text(cupboard(measure=Unit.MM))


def whole_text(setting_out: SettingOut) -> str:
    return "\n".join(read_back.texts(file_of(setting_out)))


# ISO 216: 210 by 297 mm; US letter: 8 1/2 by 11 in
@pytest.mark.parametrize(
    ("sheet", "wide", "tall"), [(Sheet.A4, 210, 297), (Sheet.LETTER, 215.9, 279.4)]
)
def test_pages_are_of_the_size_asked_for(sheet: Sheet, wide: float, tall: float) -> None:
    for page in read_back.pages(plain(sheet)):
        assert (page.wide, page.tall) == pytest.approx((wide * MM, tall * MM), abs=0.01)


def test_it_is_printed_without_scaling() -> None:
    with pikepdf.open(io.BytesIO(plain())) as made:
        assert made.Root.ViewerPreferences.PrintScaling == "/None"


def test_it_carries_no_date() -> None:
    with pikepdf.open(io.BytesIO(plain())) as made:
        assert not [key for key in made.docinfo if "Date" in str(key)]
        assert "Date>" not in str(made.open_metadata())
    assert b"D:20" not in plain()


def test_every_font_is_inside_and_ours() -> None:
    families = set()
    with pikepdf.open(io.BytesIO(plain())) as made:
        for item in made.objects:
            if isinstance(item, pikepdf.Dictionary) and item.get("/Type") == "/FontDescriptor":
                assert "/FontFile2" in item or "/FontFile3" in item
                families.add(str(item.FontName).partition("+")[2].partition("-")[0])
    assert families == {"Vollkorn", "AlegreyaSans"}


def test_it_is_tagged_and_says_what_the_drawing_shows() -> None:
    with pikepdf.open(io.BytesIO(plain())) as made:
        assert made.Root.MarkInfo.Marked
        assert str(made.Root.Lang) == "en"
        told = [
            str(item.Alt)
            for item in made.objects
            if isinstance(item, pikepdf.Dictionary) and "/Alt" in item
        ]
    (said,) = [text for text in told if text.startswith("Wall cupboard from the front")]
    assert said.startswith("Wall cupboard from the front, the right and above: ")
    assert said.endswith("22 1/2 in wide, 10 1/4 in deep, 26 7/8 in tall")
    assert "Wall cupboard pulled apart" in told
    assert any(text.startswith("left side: 26 long, 8 3/4 wide, 3/4 thick") for text in told)


def test_the_cover_says_what_it_is_and_how_large() -> None:
    cover = plain_pages()[0]
    for text in ("Wall cupboard", "22 1/2", "10 1/4", "26 7/8", "white ash and yellow-poplar"):
        assert text in cover
    assert "One finding halts the work until it is settled." in cover
    assert "Nothing was found" not in cover


def test_heights_on_the_story_stick_stand_where_they_are() -> None:
    with pdfplumber.open(io.BytesIO(plain())) as made:
        words = made.pages[0].extract_words(keep_blank_chars=True, use_text_flow=True)
    heights = {"2": Fraction(2), "24 1/2": Fraction(49, 2)}
    at = {
        heights[text]: (word["top"] + word["bottom"]) / 2
        for word in words
        if (text := word["text"].replace("\u00a0", " ")) in heights and word["x0"] < 70 * MM
    }
    assert len(at) == 2
    drawn = (at[Fraction(2)] - at[Fraction(49, 2)]) / MM
    assert drawn == pytest.approx(22.5 * 25.4 / 6, abs=0.05)  # the front stands at 1:6


def test_the_list_gives_each_line_its_sizes() -> None:
    cutting = plain_pages()[1]
    assert "White ash, 3/4 thick" in cutting
    assert "1 side 2 26 8 3/4 3/4 27 × 9 × 7/8" in cutting.replace("\n", " ")
    assert "about 13" in cutting
    assert "2 shelf pin, brass" in cutting


def test_metric_pieces_are_metric_throughout() -> None:
    text = metric()
    assert "660.4" in text  # 26 in
    assert "millimetres" in text
    assert "square metres" in text
    assert not re.search(r"\b(inches|square feet|lb)\b", text)


def test_joints_tell_the_figures_and_what_to_set() -> None:
    text = metric()
    # E6 of the joints worked by hand for this project
    assert "10 lap depth, from the face side" in text
    assert re.search(r"\w+ gauge 10: floor of the lap from the face side. On \w+", text)
    assert "1:8 slope" in text


def test_joints_tell_at_what_load_they_give_and_how_far_to_trust_that() -> None:
    text = " ".join(metric().split())
    assert re.search(r"Plan for \d+ N m at most, an estimate: ", text)
    assert "a fifth of those at which a joint gives" in text
    assert "a fifth" not in whole_text(replace(cupboard(), joints=()))


def test_joints_cut_to_the_same_figures_stand_together() -> None:
    whole = cupboard(measure=Unit.MM)
    lap = whole.joints[0]
    twin = replace(lap, joined=replace(lap.joined, name="lower rail on stile"))
    depth = whole.sizes.size("rail on stile.depth")
    sizes = {**whole.sizes.by_name, "lower rail on stile.depth": depth}
    both = replace(whole, joints=(*whole.joints, twin), sizes=Sizes(sizes))
    text = whole_text(both)
    assert "lower rail on stile" in text
    assert text.count("lap depth, from the face side") == 1


def test_findings_say_the_wood_first_and_the_source_last() -> None:
    text = "\n".join(plain_pages())
    says, cure, source = (
        text.index(part)
        for part in ("The door binds in August by 1/32.", "Plane the closing", "Wood Handbook, FPL")
    )
    assert says < cure < source
    assert text.index("Halt") < text.index("Mind") < text.index("Note")
    assert FINDINGS[0].code not in text


def test_a_clean_piece_says_so() -> None:
    text = whole_text(cupboard(findings=()))
    assert text.count("Nothing was found that speaks against it.") == 2


def test_text_of_the_maker_is_shown_as_it_stands() -> None:
    name = '#panic("x") $y$ *b* @c'
    text = whole_text(cupboard(name=name, renamed={"side": "#lorem(99)"}, note="= 1/2 #h(9cm)"))
    assert name in text.partition("Front drawn at")[0]
    assert "#lorem(99)" in text
    assert "= 1/2 #h(9cm)" in text


@pytest.mark.parametrize("sheet", list(Sheet))
@pytest.mark.parametrize("long", ["", "w" * 300, "a side board that has a name " * 6])
def test_nothing_runs_over_the_margin(sheet: Sheet, long: str) -> None:
    renamed = {"side": long or "side", "door panel": long or "door panel"}
    said = replace(FINDINGS[0], says=f"It {long}.", source=long)
    whole = cupboard(name=f"Cupboard {long}", renamed=renamed, note=long, findings=(said,))
    for page in read_back.pages(file_of(whole, sheet)):
        right = page.wide - MARGIN + 0.5
        assert [each.sign for each in page.signs if each.right > right] == []
        assert all(each.left > MARGIN - 0.5 for each in page.signs)


def test_no_heading_stands_at_the_foot_of_a_page() -> None:
    whole = cupboard()
    many = replace(whole, findings=tuple(_said(i) for i in range(60)), lines=whole.lines * 3)
    found = read_back.pages(file_of(many))
    assert len(found) > 5
    for number, page in enumerate(found, 1):
        body = [each for each in page.signs if each.low < page.tall - 18 * MM]
        last = max(body, key=lambda each: (each.low, each.right))
        assert "Vollkorn" not in last.font or number == 1


def _said(i: int) -> Finding:
    return replace(FINDINGS[i % 3], says=f"Board {i} is out of wind by 1/{i + 2}.")
