"""Times what a maker waits for on the page, in a browser: an edit until it is seen.

A change of width in a field until the figures of every strip are painted anew; a change of the
file until the piece in space is drawn anew; and what the first load weighs.
"""

from __future__ import annotations

import os
import shutil
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median

import uvicorn
from playwright.sync_api import Browser, Page, sync_playwright

from scantling.cli import stager
from scantling.web.app import app
from scantling.web.serve import drawings
from scantling.web.show import listening
from scantling.web.watch import watching
from scantling.web.workbench import Showing, Workbench

ROOT = Path(__file__).parents[1]
EDITS = 20
WARM = 4  # edits before those that count: both widths worked twice
AIMS_MS = {"edit to table": 60, "edit to 3D": 150}
DRAWS = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--no-sandbox"]

SIZES = """() => document.querySelector('[data-part="bottom"] .sizes').textContent"""
# When the bottom, which lies between the sides, is shown at another length. [ms since 1970]
PAINTED = """(before) => new Promise((done) => {
  const seen = () => document.querySelector('[data-part="bottom"] .sizes').textContent !== before;
  const look = () => (seen() ? requestAnimationFrame(() => setTimeout(() =>
    done(performance.timeOrigin + performance.now()))) : requestAnimationFrame(look));
  look();
})"""
DRAWN = """(loads) => new Promise((done) => {
  const view = document.querySelector("piece-view");
  const look = () => (Number(view.dataset.loads) > loads && view.dataset.state === "drawn"
    ? done(performance.timeOrigin + performance.now()) : requestAnimationFrame(look));
  look();
})"""
WEIGHED = """() => performance.getEntriesByType("navigation")
  .concat(performance.getEntriesByType("resource"))
  .filter((each) => !each.name.includes("/api/"))
  .reduce((sum, each) => sum + each.encodedBodySize, 0)"""


def rows() -> list[tuple[str, float]]:
    """What was timed, in seconds; nothing, and why, where there is no browser."""
    named = (os.environ.get("CHROMIUM", "chromium"), "chromium-browser")
    chromium = next((found for name in named if (found := shutil.which(name))), None)
    if chromium is None:
        print("NO CHROMIUM: edits on the page are not timed. CHROMIUM=/path/to/it, or install it.")
        return []
    with _served() as (file, address), sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=DRAWS)
        try:
            return _timed(browser, file, address)
        finally:
            browser.close()


def _timed(browser: Browser, file: Path, address: str) -> list[tuple[str, float]]:
    page = browser.new_context(viewport={"width": 1280, "height": 900}).new_page()
    page.goto(address)
    page.wait_for_selector(".fields input", timeout=60_000)
    page.evaluate("document.fonts.ready")
    print(f"first load: {page.evaluate(WEIGHED) / 1000:.0f} kB compressed   aim 250 kB")
    table = _median(lambda wide: _by_field(page, wide))
    by_file = _median(lambda wide: _by_file(page, file, wide))
    page.get_by_role("button", name="Call up the piece").click()
    page.wait_for_selector("piece-view[data-state=drawn]", timeout=60_000)
    space = _median(lambda wide: _to_space(page, file, wide))
    return [("edit to table", table), ("file to table", by_file), ("edit to 3D", space)]


def _median(edit: Callable[[int], float]) -> float:
    """Median of edits to and fro between two widths. [s]"""
    found = [edit(43 - at % 2) for at in range(EDITS + WARM)]
    return median(found[WARM:]) / 1000


def _by_field(page: Page, wide: int) -> float:
    """From the key to the painted figures. [ms]"""
    before = page.evaluate(SIZES)
    field = page.locator(".fields").get_by_label("wide", exact=True).first
    field.fill(str(wide))
    page.evaluate(
        """() => document.activeElement.addEventListener("keydown", () => {
          window.begun = performance.timeOrigin + performance.now();
        }, { once: true, capture: true })"""
    )
    page.keyboard.press("Enter")
    end: float = page.evaluate(PAINTED, before)
    return end - float(page.evaluate("() => window.begun"))


def _by_file(page: Page, file: Path, wide: int) -> float:
    """From saving the file to the painted figures. [ms]"""
    before = page.evaluate(SIZES)
    begun = _saved(file, wide)
    return float(page.evaluate(PAINTED, before)) - begun


def _to_space(page: Page, file: Path, wide: int) -> float:
    """From saving the file to the piece drawn anew. [ms]"""
    loads = int(page.locator("piece-view").get_attribute("data-loads") or 0)
    begun = _saved(file, wide)
    return float(page.evaluate(DRAWN, loads)) - begun


def _saved(file: Path, wide: int) -> float:
    text = file.read_text(encoding="utf-8")
    old = 85 - wide
    beside = file.with_suffix(".new")
    beside.write_text(text.replace(f"wide  = {old}", f"wide  = {wide}", 1), encoding="utf-8")
    begun = time.time() * 1000
    beside.replace(file)
    return begun


@contextmanager
def _served() -> Iterator[tuple[Path, str]]:
    """The demo in a folder of its own, and its address."""
    with tempfile.TemporaryDirectory() as folder:
        bench = Path(folder) / "cupboard"
        bench.mkdir()
        shutil.copy(ROOT / "pieces" / "shop.toml", folder)
        file = bench / "piece.toml"
        text = (ROOT / "pieces" / "glaze_cupboard" / "piece.toml").read_text(encoding="utf-8")
        file.write_text(text, encoding="utf-8")
        showing = Showing()
        work = stager(lambda: showing.now)
        workbench = Workbench(file, work=work, drawings=drawings(), showing=showing)
        door = listening(0)
        port = door.getsockname()[1]
        site = app(workbench, host="127.0.0.1", port=port)
        server = uvicorn.Server(uvicorn.Config(site, log_level="error", ws="none"))
        sockets = {"sockets": [door]}
        thread = threading.Thread(target=server.run, kwargs=sockets, daemon=True)
        with watching(workbench):
            thread.start()
            yield file, f"http://127.0.0.1:{port}/"
            workbench.news.close()
            server.should_exit = True
            thread.join(timeout=10)


if __name__ == "__main__":
    for name, seconds in rows():
        print(f"{name:26} {seconds * 1000:9.1f} ms   aim {AIMS_MS.get(name, '')}")
