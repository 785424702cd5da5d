"""The example pieces, worked through once for all tests that only look."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.cli import worker
from scantling.setting_out import SettingOut

PIECES = Path(__file__).parents[2] / "pieces"


@pytest.fixture(scope="session")
def glaze_cupboard() -> SettingOut:
    """The demo piece."""
    found, _ = worker()(PIECES / "glaze_cupboard" / "piece.toml")
    assert found is not None
    return found
