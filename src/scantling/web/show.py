"""Serves a workbench on loopback until Ctrl-C."""

from __future__ import annotations

import os
import socket
import sys
import webbrowser
from collections.abc import Callable
from contextlib import closing
from typing import Any

import uvicorn
from starlette.types import ASGIApp

from scantling.errors import ScantlingError
from scantling.web.app import app
from scantling.web.watch import watching
from scantling.web.workbench import Workbench

HOST = "127.0.0.1"
PATIENCE = 2  # [s] for answers under way when the end has come


class PortTakenError(ScantlingError, OSError):
    """Another program listens at that port already."""


def show(workbench: Workbench[Any], *, port: int, opens: bool, say: Callable[[str], None]) -> None:
    """Serve what lies on a workbench until Ctrl-C.

    Args:
        workbench: The piece and how it is shown.
        port: Port to listen at; 0 takes a free one. [-]
        opens: Whether to open a browser, if there is one.
        say: Prints a line.

    Raises:
        PortTakenError: Something else listens at `port`.
    """
    with closing(listening(port)) as door:
        here = door.getsockname()[1]
        address = f"http://{HOST}:{here}/"
        say(f"The page of {workbench.path} is at {address}")
        say("It follows the file as you save it. Ctrl-C ends it.")
        server = _Server(app(workbench, host=HOST, port=here), workbench)
        with watching(workbench):
            if opens and _has_browser():
                webbrowser.open(address)
            try:
                server.run(sockets=[door])
            except KeyboardInterrupt:  # raised again by the server once it has ended
                say("Ended.")


def listening(port: int) -> socket.socket:
    """A door on loopback, open at that port; 0 takes a free one.

    Raises:
        PortTakenError: Something else listens there.
    """
    door = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        door.bind((HOST, port))
    except OSError as error:
        door.close()
        raise PortTakenError(f"port {port} of {HOST} is not free: {error.strerror}") from error
    door.listen()
    return door


def _has_browser() -> bool:
    """A browser with a window; one in the terminal would take it away from us."""
    if sys.platform in {"darwin", "win32"}:
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


class _Server(uvicorn.Server):
    """Ends the streams of news first, which would otherwise hold the door open."""

    def __init__(self, site: ASGIApp, workbench: Workbench[Any]) -> None:
        super().__init__(
            uvicorn.Config(
                site,
                log_level="error",
                server_header=False,
                date_header=False,
                ws="none",
                timeout_graceful_shutdown=PATIENCE,
            )
        )
        self._workbench = workbench

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        self._workbench.news.close()
        await super().shutdown(sockets)
