"""Puts new content in the place of a file, whole or not at all."""

from __future__ import annotations

import os
import stat
import tempfile
from pathlib import Path


def replaced(path: Path, content: bytes) -> None:
    """Write a file anew: a temporary one beside it, synced, then renamed over it.

    A link stays a link, and the file's mode stays as it was. The folder is synced too, so that
    the new name outlives a loss of power.

    Args:
        path: The file; it must be there.
        content: What it is to hold.

    Raises:
        OSError: The file or its folder cannot be written; the old content stands.
    """
    real = path.resolve(strict=True)
    mode = stat.S_IMODE(real.stat().st_mode)
    handle, name = tempfile.mkstemp(dir=real.parent, prefix=f".{real.name}.")
    beside = Path(name)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(content)
            out.flush()
            os.fchmod(out.fileno(), mode)
            os.fsync(out.fileno())
        beside.replace(real)
    finally:
        beside.unlink(missing_ok=True)
    _synced(real.parent)


def _synced(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
