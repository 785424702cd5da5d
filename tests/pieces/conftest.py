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
    return _worked("glaze_cupboard")


@pytest.fixture(scope="session")
def glaze_cupboard_lapped() -> SettingOut:
    """The demo piece with a half-lapped face frame."""
    return _worked("glaze_cupboard_lapped")


@pytest.fixture(scope="session")
def metric_cupboard() -> SettingOut:
    """A cupboard in millimetres."""
    return _worked("metric_cupboard", within=Path(__file__).parent)


def _worked(folder: str, *, within: Path = PIECES) -> SettingOut:
    found, _ = worker()(within / folder / "piece.toml")
    assert found is not None
    return found
