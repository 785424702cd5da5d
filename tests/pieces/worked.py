"""The example pieces as the command works them, once for all tests of a process that only look."""

from __future__ import annotations

from functools import cache

from tests.house.tree import ROOT

from scantling.cli import worker
from scantling.setting_out import SettingOut


@cache
def worked(folder: str = "pieces/glaze_cupboard") -> SettingOut:
    """The piece of that folder of the checkout; the demo, if none is named."""
    found, _ = worker()(ROOT / folder / "piece.toml")
    assert found is not None
    return found
