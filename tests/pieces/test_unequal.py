"""Parts measured unequal left and right: nothing overlaps, and nothing else is driven wrong."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from scantling.piece import read
from scantling.setting_out import SettingOut, set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.sizes.model import Measured
from scantling.units import INCH

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"

# what was measured [in], and the codes of findings a maker would expect to be stopped by
MEASURED: dict[str, tuple[dict[str, str], set[str]]] = {
    "sides of unlike thickness": (
        {"left side.thickness": "0.734", "right side.thickness": "0.741"},
        set(),
    ),
    "a stile planed narrower": ({"left stile.width": "1.73"}, set()),
    "a thin door stile": ({"left door.left stile.thickness": "0.74"}, set()),
    "drawer sides of unlike thickness": (
        {"drawer 1.left side.thickness": "0.49", "drawer 1.right side.thickness": "0.51"},
        set(),
    ),
    "a bottom sawn narrow": ({"bottom.width": "16.6"}, set()),
    "a deck planed thin": ({"deck.thickness": "0.73"}, set()),
    "a narrow side": ({"right side.width": "17.2"}, set()),
    "unlike sub-top rails": (
        {"front sub-top rail.thickness": "0.76", "rear sub-top rail.thickness": "0.74"},
        set(),
    ),
    "a partition sawn narrow": ({"partition.width": "16.65"}, set()),
}


@pytest.fixture(scope="module")
def base() -> SettingOut:
    """The demo as planned."""
    piece = read(DEMO.read_text(encoding="utf-8"))
    return set_out(piece, shop=default_shop(), habits=Habits())


@pytest.mark.parametrize("case", MEASURED)
def test_unequal_parts_fit_together(case: str, base: SettingOut) -> None:
    facts, expected = MEASURED[case]
    measured = [
        Measured(name=name, least=Fraction(inch) * INCH, greatest=Fraction(inch) * INCH)
        for name, inch in facts.items()
    ]
    found = set_out(
        base.piece,
        shop=base.shop,
        habits=base.habits,
        measured=measured,
        store=base.store,
        before=base,
    )
    for fact in measured:
        assert found.sizes[fact.name] == fact.least
    assert {f.code: f.says for f in found.findings if f.weight == "halt"}.keys() == expected
