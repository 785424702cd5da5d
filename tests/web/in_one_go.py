"""Work that knows no stages, as most tests of the page have it."""

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TypeVar

from scantling.findings import Finding
from scantling.setting_out import Pause
from scantling.web.worked import Work, Worked

T = TypeVar("T")


def in_one_go(work: Callable[[Path], tuple[T | None, Sequence[Finding]]]) -> Work[T]:
    """Work whose first stage is its last."""

    def stages(path: Path, _: Pause) -> Iterator[Worked[T]]:
        made, findings = work(path)
        yield Worked(made=made, findings=findings)

    return stages
