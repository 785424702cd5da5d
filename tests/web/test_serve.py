"""The server as the maker starts it: on a port of its own, live, ended by Ctrl-C."""

import json
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx
import pytest
from tests.house.tree import ROOT
from tests.web.told import workbench

from scantling.web.show import PATIENCE, PortTakenError, show

START = """
import sys
from pathlib import Path
from tests.web.told import workbench
from scantling.web.show import show
say = lambda line: print(line, flush=True)
show(workbench(Path(sys.argv[1])), port=0, opens=False, say=say)
"""


@contextmanager
def served(file: Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    words = [sys.executable, "-c", START, str(file)]
    with subprocess.Popen(words, cwd=ROOT, stdout=subprocess.PIPE, text=True) as ran:
        assert ran.stdout is not None
        try:
            yield ran, ran.stdout.readline().split()[-1]
        finally:
            ran.kill()


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "piece.toml"
    found.write_text('name = "Cupboard"\nwide = 16 1/4\n')
    return found


def numbers(lines: Iterator[str]) -> Iterator[int]:
    for line in lines:
        if line.startswith("data: "):
            yield json.loads(line.removeprefix("data: "))["number"]


def saved(file: Path, text: str) -> None:
    """As most editors save: a new file put in the place of the old."""
    beside = file.with_suffix(".new")
    beside.write_text(text)
    beside.replace(file)


def test_a_saved_change_is_told_at_once(file: Path) -> None:
    with (
        served(file) as (_, address),
        httpx.stream("GET", f"{address}api/events", timeout=10) as stream,
    ):
        assert stream.headers["content-type"].startswith("text/event-stream")
        heard = numbers(stream.iter_lines())
        first = next(heard)
        while first < 1:
            first = next(heard)
        begun = time.perf_counter()
        saved(file, 'name = "Chest"\nwide = 17\n')
        assert next(heard) > first
        assert time.perf_counter() - begun < 2
        told = httpx.get(f"{address}api/setting-out").json()
        assert told["setting_out"]["piece"]["name"] == "Chest"


def test_it_ends_cleanly_while_a_page_listens(file: Path) -> None:
    with (
        served(file) as (ran, address),
        httpx.stream("GET", f"{address}api/events", timeout=10) as stream,
    ):
        lines = stream.iter_lines()  # held, or the stream would be closed from here
        next(lines)
        begun = time.perf_counter()
        ran.send_signal(signal.SIGINT)
        assert ran.wait(timeout=10) == 0
        assert time.perf_counter() - begun < PATIENCE
        assert list(lines)  # ended in good order, with the last line whole


def test_it_listens_on_loopback_alone(file: Path) -> None:
    with served(file) as (_, address):
        assert address.startswith("http://127.0.0.1:")
        port = int(address.rstrip("/").rpartition(":")[2])
        # 127.0.0.2 is this machine too, but not where it listens
        with socket.socket() as other:
            assert other.connect_ex(("127.0.0.2", port)) != 0


def test_a_port_in_use_is_said(file: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(PortTakenError, match=f"port {port} .* is not free"):
            show(workbench(file), port=port, opens=False, say=print)
