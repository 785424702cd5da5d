"""What the page asks of whoever works a piece through."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Generic, TypeVar

from scantling.findings import Finding
from scantling.setting_out import Pause, Stage

T = TypeVar("T")


@dataclass(frozen=True, kw_only=True)
class Worked(Generic[T]):
    """What a text has come to, as far as it is worked."""

    made: T | None  # None: it cannot be worked
    findings: Sequence[Finding] = ()
    stage: Stage = Stage.PROVEN  # nothing comes after it


Work = Callable[[Path, Pause], Iterator[Worked[T]]]
