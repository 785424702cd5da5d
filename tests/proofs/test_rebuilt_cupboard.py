"""Every figure drawn on every part of the cupboard, wrong by itself."""

from collections.abc import Iterator
from fractions import Fraction

import pytest
from tests.house.tree import ROOT
from tests.joints.on_the_bench import SHOP
from tests.proofs.work import Misdrawn, case

from scantling import read, set_out
from scantling.parts import Part, drawn
from scantling.proofs.rebuilt import Rebuilt
from scantling.shop.habits import Habits
from scantling.solids.store import Store

F = Fraction
BY = F(-1, 50)  # [mm] thinner than a knife line

pytestmark = [pytest.mark.slow, pytest.mark.timeout(1200)]


@pytest.fixture(scope="module")
def parts() -> tuple[Part, ...]:
    """One of each kind: like parts have like drawings."""
    text = (ROOT / "pieces" / "glaze_cupboard" / "piece.toml").read_text()
    cupboard = set_out(read(text), shop=SHOP, habits=Habits())
    kinds = {(p.extent, tuple((c.shape, c.corner) for c in p.cuts)): p for p in cupboard.parts}
    return tuple(kinds.values())


def figures(part: Part) -> Iterator[tuple[int, int]]:
    for which, cut in enumerate(part.cuts):
        for row in range(len(drawn(cut).measures)):
            yield which, row


def test_any_one_figure_wrong_is_noticed(parts: tuple[Part, ...]) -> None:
    store = Store()
    tried = 0
    missed = []
    for part in parts:
        for wrong in figures(part):
            tried += 1
            misdrawn = Misdrawn(parts=(part,), store=store, wrong=wrong, by=BY)
            if not Rebuilt().findings(misdrawn):
                missed.append((part.name, *wrong))
    assert missed == []
    assert tried > 500


def test_none_wrong_is_no_finding(parts: tuple[Part, ...]) -> None:
    assert Rebuilt().findings(case(*parts)) == ()
