"""A habit yields to a season bound in the whole demo as it does alone (reported by the lead)."""

from __future__ import annotations

import re
from pathlib import Path

from scantling.piece import read
from scantling.piece._drafting import draft
from scantling.setting_out.bench import Bench
from scantling.setting_out.memory import Memory
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop
from scantling.sizes.solving import solve
from scantling.units import INCH

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"


def test_the_panels_side_gap_grows_until_the_damp_season_fits() -> None:
    text = DEMO.read_text(encoding="utf-8")
    wanted = ("case", "face_frame", "doors", "room", "wood", "also")
    blocks = re.split(r"(?m)^(?=\[)", text)
    some = "".join(b for b in blocks if not b.startswith("[") or b[1:].split("]")[0] in wanted)
    piece = read(some)
    bench = Bench.of(draft(piece), piece, default_shop(), Habits(), attainable={}, memory=Memory())
    chosen = bench.choose(None)
    found = solve(bench.relations(chosen), stated=bench.stated(), grid=piece.finest)
    for _ in range(2):
        chosen = bench.choose(found.sizes)
        found = solve(bench.relations(chosen), stated=bench.stated(), grid=piece.finest)
    assert found.breaches == ()
    assert found.sizes["left door.panel in frame.side gap"] == INCH * 3 / 16
