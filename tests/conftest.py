"""What every test may ask for."""

from collections.abc import Callable, Iterable
from pathlib import Path

import pytest
from hypothesis import settings

# Two cores may be busy elsewhere, so no example has a deadline; the same examples every time.
settings.register_profile("house", deadline=None, derandomize=True, database=None)
settings.load_profile("house")


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


def _fixtures(item: pytest.Item) -> Iterable[str]:
    return item.fixturenames if isinstance(item, pytest.Function) else ()


@pytest.fixture
def approved(request: pytest.FixtureRequest) -> Callable[[Path, bytes], None]:
    """Compares what a test made with a file somebody has read and approved."""
    if request.config.getoption("--approve"):
        return _rewrite
    return _compare


def _rewrite(path: Path, made: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(made)


def _compare(path: Path, made: bytes) -> None:
    assert path.is_file(), f"{path} is not approved yet: `make approve`, then read it"
    kept = path.read_bytes()
    if kept == made:
        return
    try:
        lines = made.decode().splitlines(), kept.decode().splitlines()
    except UnicodeDecodeError:
        pytest.fail(f"{path.name} is no longer the approved one: {len(made)} and {len(kept)} bytes")
    assert lines[0] == lines[1], f"{path.name} is no longer the approved one"
    pytest.fail(f"{path.name} differs from the approved one in its line ends")
