"""Files somebody has read and approved; `make approve` rewrites them."""

from pathlib import Path

import pytest


def rewritten(path: Path, made: bytes) -> None:
    """Make what was made the approved file."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(made)


def compared(path: Path, made: bytes) -> None:
    """Fail, with the differing lines where there are any, unless it is the approved file."""
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
