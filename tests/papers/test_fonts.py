"""The fonts we ship set fractions as fractions and figures in columns. Asked of the typesetter."""

import json
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
import typst
from tests.house.tree import ROOT

FOLDER = ROOT / "src" / "scantling" / "papers" / "fonts"
STYLES = [
    ("Alegreya Sans", 400, "normal"),
    ("Alegreya Sans", 400, "italic"),
    ("Alegreya Sans", 700, "normal"),
    ("Vollkorn", 400, "normal"),
    ("Vollkorn", 600, "normal"),
]
FRACTIONS = ["1/2", "3/4", "15/16", "31/32", "63/64"]


def widths(family: str, weight: int, style: str, texts: list[str], *, features: str) -> list[float]:
    """How wide each text is set. [pt]"""
    shown = ", ".join(
        f"measure(text(features: {features}, {json.dumps(t)})).width.pt()" for t in texts
    )
    source = (
        f'#set text(font: "{family}", weight: {weight}, style: "{style}", size: 10pt)\n'
        f"#context [#metadata(({shown},)) <found>]\n"
    )
    with TemporaryDirectory() as folder:
        path = Path(folder) / "asked.typ"
        path.write_text(source)
        set_in = typst.Compiler(str(path), font_paths=[str(FOLDER)], ignore_system_fonts=True)
        found = set_in.query("<found>", field="value", one=True)
    return [float(each) for each in json.loads(found)]


@pytest.mark.parametrize(("family", "weight", "style"), STYLES)
def test_a_fraction_is_set_as_one(family: str, weight: int, style: str) -> None:
    plain = widths(family, weight, style, FRACTIONS, features="()")
    set_small = widths(family, weight, style, FRACTIONS, features='("frac",)')
    assert all(small < 0.95 * full for small, full in zip(set_small, plain, strict=True))


@pytest.mark.parametrize(("family", "weight", "style"), STYLES)
def test_figures_are_all_as_wide_as_one_another(family: str, weight: int, style: str) -> None:
    digits = [str(i) * 4 for i in range(10)]
    found = widths(family, weight, style, digits, features='("tnum", "lnum")')
    # The italic has a 0 and a 3 that are 1.4 % wider than the others, which no eye sees.
    assert max(found) - min(found) < 0.02 * max(found)


def test_each_style_has_its_file() -> None:
    assert len(list(FOLDER.glob("*.ttf"))) == len(STYLES)


def test_a_missing_feature_would_be_noticed() -> None:
    plain = widths("Libertinus Serif", 400, "normal", ["1/2"], features="()")
    same = widths("Libertinus Serif", 400, "normal", ["1/2"], features='("nope",)')
    assert plain == same
