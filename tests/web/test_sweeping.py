"""Memory is swept when nobody waits, and the sweeper stands as it was found."""

import gc
import weakref
from collections.abc import Callable, Iterator
from pathlib import Path
from threading import Event

import pytest
from tests.web.in_one_go import in_one_go

from scantling.web import watch
from scantling.web.sweeping import unswept
from scantling.web.workbench import Drawings, Workbench


class Ring:
    """Hangs together with itself: only a sweep takes it away."""

    def __init__(self) -> None:
        self.ring = self


@pytest.fixture(autouse=True)
def sweeper_on() -> Iterator[None]:
    yield
    gc.enable()


@pytest.mark.parametrize("turn", [gc.enable, gc.disable])
def test_the_sweeper_stands_afterwards_as_before(turn: Callable[[], None]) -> None:
    turn()
    before = gc.isenabled()
    with unswept():
        assert not gc.isenabled()
    assert gc.isenabled() == before


def test_the_sweeper_is_on_again_after_a_fault() -> None:
    with pytest.raises(OSError, match="gone"), unswept():
        raise OSError("gone")
    assert gc.isenabled()


def test_what_a_look_leaves_is_swept_once_it_is_quiet(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(watch, "PAUSE", 0.05)
    file = tmp_path / "piece.toml"
    file.write_text("format = 1")
    left: list[weakref.ref[Ring]] = []
    swept = Event()

    def work(_: Path) -> tuple[None, tuple[()]]:
        ring = Ring()
        left.append(weakref.ref(ring, lambda _: swept.set()))
        return None, ()

    drawings: Drawings[None] = Drawings(document=lambda _: {}, model=lambda _: b"")
    with watch.watching(Workbench(file, work=in_one_go(work), drawings=drawings)):
        assert swept.wait(timeout=20)
        assert not gc.isenabled()
    assert left[0]() is None
