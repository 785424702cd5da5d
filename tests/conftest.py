"""What every test may ask for."""

import gc
import os
import shutil
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from tests.approval import compared, rewritten

# Two cores may be busy elsewhere, so no example has a deadline; the same examples every time.
settings.register_profile("house", deadline=None, derandomize=True, database=None)
settings.load_profile("house")

# Working a piece through makes many small things and few rings of them: the usual 700 find nothing
# and take a tenth of the time.
SWEPT_EVERY = 50_000


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--approve",
        action="store_true",
        help="rewrite the approved files instead of comparing with them; runs only such tests",
    )


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    if not config.getoption("--approve"):
        return
    asks = [item for item in items if "approved" in _fixtures(item)]
    config.hook.pytest_deselected(items=[item for item in items if item not in asks])
    items[:] = asks


@pytest.hookimpl(trylast=True)
def pytest_collection_finish() -> None:
    """What is loaded by now stays to the end: no sweep of memory need look at it again."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(SWEPT_EVERY)


def pytest_unconfigure() -> None:
    """All of it may be swept once more, or the kernel tells of solids left over at the end."""
    gc.unfreeze()


def _fixtures(item: pytest.Item) -> Iterable[str]:
    return item.fixturenames if isinstance(item, pytest.Function) else ()


@pytest.fixture(autouse=True)
def shared_strings_still_stand() -> Iterator[None]:
    """No text went to the native fractions: one of a single character would overwrite this one."""
    yield
    assert b"\0".decode() == "\0"


@pytest.fixture
def approved(request: pytest.FixtureRequest) -> Callable[[Path, bytes], None]:
    """Compares what a test made with a file somebody has read and approved."""
    if request.config.getoption("--approve"):
        return rewritten
    return compared


@pytest.fixture(scope="session")
def chromium() -> str:
    """Path of the browser that `tools/ensure_chromium` has found or installed."""
    for name in (os.environ.get("CHROMIUM"), "chromium", "chromium-browser"):
        found = shutil.which(name) if name else None
        if found:
            return found
    pytest.fail("no Chromium: run the tests by `make test`, which says what to install")
