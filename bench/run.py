"""Times what a maker waits for, each beside a yardstick of the same run, and keeps the ratios.

The yardstick is a fixed sum of fractions in plain Python: seconds differ between machines and
between minutes, ratios hardly do. Each run adds its lines to `bench/history.jsonl`.
"""

from __future__ import annotations

import importlib.util
import json
import platform
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction as Plain  # noqa: TID251 - a yardstick stays what it was
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT))

from bench import page as on_the_page  # noqa: E402 - found beside this file
from bench.tenfold import tenfold  # noqa: E402 - as above

from scantling.exact import Fraction  # noqa: E402 - as above
from scantling.joints._joint import Choice  # noqa: E402 - as above
from scantling.papers import PAPERS, Sheet  # noqa: E402 - as above
from scantling.parts.solid import finished  # noqa: E402 - as above
from scantling.piece import Piece, read  # noqa: E402 - as above
from scantling.piece._drafting import draft  # noqa: E402 - as above
from scantling.piece._form import Sketch  # noqa: E402 - as above
from scantling.proofs._proof import Case  # noqa: E402 - as above
from scantling.proofs.interference import Interference  # noqa: E402 - as above
from scantling.setting_out import SettingOut, set_out  # noqa: E402 - as above
from scantling.setting_out.bench import Bench  # noqa: E402 - as above
from scantling.setting_out.chain import NO_BOARDS, settled_sizes  # noqa: E402 - as above
from scantling.setting_out.memory import Memory  # noqa: E402 - as above
from scantling.shop.read import ShopReading, default_text  # noqa: E402 - as above
from scantling.shop.read import read as read_shop  # noqa: E402 - as above
from scantling.sizes.settle import Settled  # noqa: E402 - as above
from scantling.solids.store import Store  # noqa: E402 - as above
from scantling.units import INCH  # noqa: E402 - as above
from scantling.web.sweeping import sweep, unswept  # noqa: E402 - as above

DEMO = ROOT / "pieces" / "glaze_cupboard" / "piece.toml"
AIMS_MS = {"edit one": 100, "edit ten": 350, **on_the_page.AIMS_MS}


def main() -> None:
    """Run every bench and print the table; memory is swept between, as on the page."""
    piece = read(DEMO.read_text(encoding="utf-8"))
    shop = read_shop(default_text(), file="shop.toml")
    rows = [
        ("start-up of --help", timed(_help, 5)),
        ("bare interpreter", timed(_interpreter, 5)),
        ("chain cold", timed(lambda: _worked(piece, shop), 3)),
        ("edit one", _edits(piece, shop, draft(piece), width="case.wide", count=12)),
        ("edit ten", _edits(piece, shop, tenfold(draft(piece)), width="1 case.wide", count=4)),
        ("papers", timed(_papers(_worked(piece, shop)), 3)),
        *_kernels(_worked(piece, shop)),
        *on_the_page.rows(),
    ]
    _kept(rows)


def timed(act: Callable[[], object], count: int) -> float:
    """Median of so many runs. [s]"""
    found = []
    for _ in range(count):
        start = time.perf_counter()
        act()
        found.append(time.perf_counter() - start)
    return median(found)


def yardstick() -> None:
    """A fixed piece of work in plain Python."""
    total = Plain(0)
    for i in range(1, 1500):
        total += Plain(1, i)


def _help() -> None:
    command = Path(sys.executable).with_name("scantling")
    subprocess.run([command, "--help"], check=True, capture_output=True)


def _interpreter() -> None:
    subprocess.run([sys.executable, "-c", "pass"], check=True, capture_output=True)


def _worked(piece: Piece, shop: ShopReading) -> SettingOut:
    return set_out(piece, shop=shop.shop, habits=shop.habits)


def _papers(worked: SettingOut) -> Callable[[], object]:
    return lambda: [paper.render(worked, sheet=Sheet.LETTER) for paper in PAPERS.values()]


def _edits(piece: Piece, shop: ShopReading, sketch: Sketch, *, width: str, count: int) -> float:
    """Median of edits of one width: sizes, solids and interference. [s]"""
    kept, before = (Store(), Memory()), None
    spent = []
    for i in range(count + 2):
        stated = tuple(
            replace(s, value=s.value + _step(i)) if s.name == width else s
            for s in sketch.stated
            if not s.name.endswith("top.length")
        )
        sweep()
        start = time.perf_counter()
        before = _rebuilt(replace(sketch, stated=stated), piece, shop, kept, before)
        spent.append(time.perf_counter() - start)
    return median(spent[2:])


def _step(i: int) -> Fraction:
    """By how much wider the edit makes it: never twice the same, whole inches or sixteenths."""
    return Fraction(5 * i % 32, 16) * INCH


def _rebuilt(
    sketch: Sketch,
    piece: Piece,
    shop: ShopReading,
    kept: tuple[Store, Memory],
    before: Settled[dict[str, Choice]] | None,
) -> Settled[dict[str, Choice]]:
    store, memory = kept
    bench = Bench.of(sketch, piece, shop.shop, shop.habits, attainable=NO_BOARDS, memory=memory)
    settled = settled_sizes(bench, (), before)
    parts = bench.parts(settled.solved.sizes, settled.choice, widest=shop.habits.widest_strip)
    presses = bench.presses(settled.solved.sizes, settled.choice, parts)
    store.next_round()
    Interference().findings(Case(parts=parts, store=store, presses=presses))
    return settled


def _kernels(worked: SettingOut) -> list[tuple[str, float]]:
    if importlib.util.find_spec("OCP") is None:
        print("second kernel not installed: `make slow` installs it; that ratio is left out")
        return []
    from tests.solids.second_kernel import volume  # noqa: PLC0415 - the second is optional

    def first() -> None:
        store = Store()
        for part in worked.parts:
            finished(part, store=store).volume  # noqa: B018 - the kernel is lazy

    return [
        ("solids, first kernel", timed(first, 3)),
        ("solids, second kernel", timed(lambda: [volume(p) for p in worked.parts], 1)),
    ]


def _kept(rows: list[tuple[str, float]]) -> None:
    unit = timed(yardstick, 9)
    commit = subprocess.run(
        ["git", "rev-parse", "--short", "HEAD"],  # noqa: S607 - git as the shell finds it
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    ).stdout.strip()
    python = f"{platform.python_implementation()} {sys.version_info.major}.{sys.version_info.minor}"
    machine = f"{platform.machine()} {python}"
    print(f"{'what':26} {'ms':>9} {'yardsticks':>11}   aim")
    with (ROOT / "bench" / "history.jsonl").open("a", encoding="utf-8") as out:
        for name, seconds in rows:
            aim = f"{AIMS_MS[name]} ms" if name in AIMS_MS else ""
            print(f"{name:26} {seconds * 1000:9.1f} {seconds / unit:11.2f}   {aim}")
            line = {"what": name, "ratio": round(seconds / unit, 3), "commit": commit}
            out.write(json.dumps(line | {"machine": machine}, sort_keys=True) + "\n")


if __name__ == "__main__":
    with unswept():
        main()
