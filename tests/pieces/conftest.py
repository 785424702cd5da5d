"""The example pieces, worked through once for all tests that only look."""

from __future__ import annotations

import pytest
from tests.pieces.worked import worked

from scantling.setting_out import SettingOut


@pytest.fixture(scope="session")
def glaze_cupboard() -> SettingOut:
    """The demo piece."""
    return worked("pieces/glaze_cupboard")


@pytest.fixture(scope="session")
def glaze_cupboard_lapped() -> SettingOut:
    """The demo piece with a half-lapped face frame."""
    return worked("pieces/glaze_cupboard_lapped")


@pytest.fixture(scope="session")
def metric_cupboard() -> SettingOut:
    """A cupboard in millimetres."""
    return worked("tests/pieces/metric_cupboard")
