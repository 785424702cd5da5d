"""A shop whose bare figures make sense in the other measure is told so once, at its measure."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.findings import Finding, Weight
from scantling.shop.read import default_text, read
from scantling.units import Unit

METRIC = (Path(__file__).parents[2] / "pieces" / "metric" / "shop.toml").read_text("utf-8")


def halts(text: str) -> list[Finding]:
    return [found for found in read(text).findings if found.weight is Weight.HALT]


def test_the_metric_shop_reads_without_a_finding_and_owns_round_sizes() -> None:
    found = read(METRIC)
    assert found.findings == ()
    assert found.shop.unit is Unit.MM
    # sets of bevel-edge chisels and of twist drills as sold in millimetres: common practice
    assert {6, 10, 12, 18, 25} <= set(found.shop.chisels)
    assert {5, 6, 8, 10} <= set(found.shop.bores)


@pytest.mark.parametrize(
    ("text", "said", "other", "words"),
    [
        (default_text(), 'measure = "inch"', "mm", "like inches"),
        (METRIC, 'measure = "mm"', "inch", "like millimetres"),
    ],
)
def test_the_measure_changed_and_nothing_else_is_one_halt_at_its_line(
    text: str, said: str, other: str, words: str
) -> None:
    assert text.count(said) == 1
    (halt,) = halts(text.replace(said, f'measure = "{other}"'))
    assert halt.code == "shop.other-measure"
    assert halt.place is not None
    assert text.split("\n")[halt.place.line - 1].startswith(said)
    assert words in halt.says
    assert said in halt.cure


def test_a_single_slip_is_told_at_its_own_line() -> None:
    (halt,) = halts(METRIC.replace("long  = 2100", "long  = 84"))
    assert halt.place is not None
    assert halt.place.line == METRIC[: METRIC.index("long  = 2100")].count("\n") + 1
    assert "84 mm, less than 250 mm" in halt.says


def test_figures_that_say_their_unit_do_not_count() -> None:
    text = METRIC.replace("long  = 2100", 'long = "2 mm"').replace("wide  = 600", 'wide = "2 mm"')
    text = text.replace("vise  = 230", 'vise = "2 mm"')
    assert len(halts(text)) == 3


def test_cramps_are_clamps() -> None:
    assert read(METRIC.replace("[[clamps]]", "[[cramps]]")) == read(METRIC)
