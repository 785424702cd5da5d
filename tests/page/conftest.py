"""A page served for each test, and one browser for all of them."""

import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

import pytest
import uvicorn
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, sync_playwright
from tests.web.stating import stating
from tests.web.told import workbench

from scantling.web.app import app
from scantling.web.show import listening
from scantling.web.watch import watching
from scantling.web.workbench import Workbench

# WebGL reckoned by the processor, and nothing else by way of it: that takes a fifth less work.
# As root there is no sandbox to be had.
DRAWS = [
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
    "--disable-gpu-compositing",
    "--no-sandbox",
]
GOOD = 'name = "Wall cupboard"\nwide = 16 1/4\n'

# The browser's own word on slow graphics, and three's on having none, which a test asks for.
EXPECTED = ("GPU stall", "Error creating WebGL context")

Opened = Callable[..., Page]


def expected(text: str) -> bool:
    return any(each in text for each in EXPECTED)


class Served:
    """A cupboard on the bench, its file and its page."""

    def __init__(self, file: Path, bench: Workbench[str]) -> None:
        self.file = file
        self.door = listening(0)
        port = self.door.getsockname()[1]
        self.address = f"http://127.0.0.1:{port}/"
        self.bench = bench
        site = app(self.bench, host="127.0.0.1", port=port)
        config = uvicorn.Config(site, log_level="error", ws="none", timeout_graceful_shutdown=1)
        self._server = uvicorn.Server(config)
        words = {"sockets": [self.door]}
        self._thread = threading.Thread(target=self._server.run, kwargs=words, daemon=True)

    def begin(self) -> None:
        self._thread.start()
        while not self._server.started:
            time.sleep(0.01)

    def end(self) -> None:
        self.bench.news.close()
        self._server.should_exit = True
        self._thread.join(timeout=10)
        self.door.close()

    def save(self, text: str) -> None:
        beside = self.file.with_suffix(".new")
        beside.write_text(text)
        beside.replace(self.file)


@pytest.fixture
def text() -> str:
    """What stands in the file; a test of its own fields says something else."""
    return GOOD


@pytest.fixture
def served(tmp_path: Path, text: str) -> Iterator[Served]:
    (tmp_path / "bench").mkdir()
    file = tmp_path / "bench" / "piece.toml"
    file.write_text(text)
    found = Served(file, stating(file) if "[case]" in text else workbench(file))
    with watching(found.bench):
        found.begin()
        yield found
        found.end()


@pytest.fixture(scope="session")
def browser(chromium: str) -> Iterator[Browser]:
    with sync_playwright() as playwright:
        found = playwright.chromium.launch(executable_path=chromium, args=DRAWS)
        yield found
        found.close()


@pytest.fixture
def opened(browser: Browser, served: Served) -> Iterator[Opened]:
    """Opens the page; at the end of the test nothing may have been said on the console."""
    contexts: list[BrowserContext] = []
    said: list[str] = []

    def heard(message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"} and not expected(message.text):
            said.append(message.text)

    def open_page(
        section: str = "",
        *,
        wide: int = 1280,
        tall: int = 900,
        scheme: Literal["light", "dark"] = "light",
        script: str = "",
        minds_console: bool = True,
    ) -> Page:
        context = browser.new_context(
            viewport={"width": wide, "height": tall},
            color_scheme=scheme,
            reduced_motion="reduce",
        )
        contexts.append(context)
        if script:
            context.add_init_script(script)
        page = context.new_page()
        page.set_default_timeout(10_000)
        if minds_console:
            page.on("console", heard)
        page.on("pageerror", lambda error: said.append(str(error)))
        page.goto(served.address + section)
        page.wait_for_selector("header h1, .broken")
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert said == []
