"""Looks at the file again whenever it may have changed.

The system tells of changes where it can; where it cannot (a network folder, a limit reached), a
look every half second finds them too. A look costs a few file stamps. Memory is swept once it has
been quiet for that long after a change, when nobody waits.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import watchfiles

from scantling.setting_out import Stage
from scantling.web.sweeping import sweep, unswept
from scantling.web.workbench import Workbench

PAUSE = 0.5  # [s] between two looks nobody asked for
GATHER = 20  # [ms] for which further changes are gathered into one
STEP = 5  # [ms] of quiet that end it


@contextmanager
def watching(workbench: Workbench[Any]) -> Iterator[None]:
    """A thread that looks and one that proves, from now on; the first look comes at once."""
    stop = threading.Event()
    threads = [
        threading.Thread(target=act, args=(workbench, stop), name=act.__name__, daemon=True)
        for act in (_looks, _proves)
    ]
    for thread in threads:
        thread.start()
    try:
        with unswept():
            yield
    finally:
        stop.set()
        for thread in threads:
            thread.join(timeout=5)


def _proves(workbench: Workbench[Any], stop: threading.Event) -> None:
    while not stop.is_set():
        if workbench.unproven.wait(timeout=PAUSE):
            workbench.prove()


def _looks(workbench: Workbench[Any], stop: threading.Event) -> None:
    workbench.look()
    swept = 0  # up to which look
    for is_quiet in _chances(workbench, stop):
        workbench.look()
        standing = workbench.standing
        if is_quiet and standing.stage is Stage.PROVEN and standing.number > swept:
            swept = standing.number
            sweep()


def _chances(workbench: Workbench[Any], stop: threading.Event) -> Iterator[bool]:
    """Moments at which a change is likely, or half a second has gone by; whether it has."""
    try:
        for changes in watchfiles.watch(
            workbench.path.parent,
            stop_event=stop,
            recursive=False,
            debounce=GATHER,
            step=STEP,
            rust_timeout=int(PAUSE * 1000),
            yield_on_timeout=True,
            raise_interrupt=False,
        ):
            yield not changes
    except OSError:  # the folder is gone, or the system watches no more files
        pass
    while not stop.wait(PAUSE):
        yield True
