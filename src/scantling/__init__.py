"""From a piece described in a text file to proven parts and the papers to cut them from.

The whole public face is six names. They load on first use, so that importing the package, or
asking the command line for help, loads neither the geometry kernel nor the solver.
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from scantling.findings import Finding
    from scantling.papers import PAPERS
    from scantling.piece import Piece, read
    from scantling.setting_out import SettingOut, set_out

__all__ = ["PAPERS", "Finding", "Piece", "SettingOut", "read", "set_out"]

_ROOMS = {
    "Finding": "findings",
    "PAPERS": "papers",
    "Piece": "piece",
    "SettingOut": "setting_out",
    "read": "piece",
    "set_out": "setting_out",
}


def __getattr__(name: str) -> object:
    if name not in _ROOMS:
        msg = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(msg)
    return getattr(import_module(f"{__name__}.{_ROOMS[name]}"), name)


def __dir__() -> list[str]:
    return sorted(__all__)
