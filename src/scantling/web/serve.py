"""Serves the page of one piece on loopback until Ctrl-C."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

from scantling.papers._paper import Sheet
from scantling.papers.model import Model
from scantling.papers.setting_out_json import document
from scantling.setting_out import SettingOut
from scantling.web.show import show
from scantling.web.workbench import Drawings, Work, Workbench


def at_once(line: str) -> None:
    """Print a line that is seen even where the output is a pipe."""
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def serve(
    path: Path,
    *,
    work: Work[SettingOut],
    port: int = 0,
    open_browser: bool = True,
    say: Callable[[str], None] = at_once,
) -> None:
    """Serve the page of a piece until it is ended by Ctrl-C.

    Args:
        path: The piece file; it is read again whenever it changes.
        work: Works a piece through: the setting-out, or None, and every finding.
        port: Port to listen at; 0 takes a free one. [-]
        open_browser: Whether to open the page as well as printing its address.
        say: Prints a line, at once.

    Raises:
        PortTakenError: Something else listens at `port`.
    """
    show(Workbench(path, work=work, drawings=drawings()), port=port, opens=open_browser, say=say)


def drawings() -> Drawings[SettingOut]:
    """How a setting-out is shown on the page."""
    return Drawings(document=document, model=_model, stated=lambda found: found.stated)


def _model(setting_out: SettingOut) -> bytes:
    (content,) = Model.render(setting_out, sheet=Sheet.A4).values()
    return content
