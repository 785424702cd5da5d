"""Serves the page of one piece on loopback until Ctrl-C."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from scantling.papers import PAPERS, part_drawing
from scantling.papers._paper import Sheet, rule_of, speech_of
from scantling.papers._part_pages import drawn, line_types
from scantling.papers._shown import finding_in_words, in_words, rows_in_words
from scantling.papers.model import Model
from scantling.papers.setting_out_json import document
from scantling.setting_out import SettingOut
from scantling.shop.habits import Display
from scantling.units import Unit
from scantling.web.changes import BY_NAME
from scantling.web.show import show
from scantling.web.workbench import Drawings, Showing, Workbench
from scantling.web.worked import Work
from scantling.wording import pairs, word

TO_PRINT = {
    "packet.pdf": "packet",
    "templates.pdf": "templates",
    "cutting-list.csv": "cutting list",
}
ROOM = (240.0, 160.0)  # [mm] for a drawing; the page shows it as large as there is room


def at_once(line: str) -> None:
    """Print a line that is seen even where the output is a pipe."""
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def serve(
    path: Path,
    *,
    stager: Callable[[Callable[[], Display]], Work[SettingOut]],
    port: int = 0,
    open_browser: bool = True,
    say: Callable[[str], None] = at_once,
) -> None:
    """Serve the page of a piece until it is ended by Ctrl-C.

    Args:
        path: The piece file; it is read again whenever it changes.
        stager: What works a piece through in stages, to be shown as it is told.
        port: Port to listen at; 0 takes a free one. [-]
        open_browser: Whether to open the page as well as printing its address.
        say: Prints a line, at once.

    Raises:
        PortTakenError: Something else listens at `port`.
    """
    showing = Showing()
    work = stager(lambda: showing.now)
    bench = Workbench(path, work=work, drawings=drawings(), showing=showing)
    show(bench, port=port, opens=open_browser, say=say)


def drawings() -> Drawings[SettingOut]:
    """How a setting-out is shown on the page."""
    return Drawings(
        document=_document,
        model=_model,
        stated=lambda found: found.stated,
        finding=finding_in_words,
        part=_part,
        paper=_paper,
    )


def _document(setting_out: SettingOut) -> Mapping[str, Any]:
    """`setting-out.json` in the words and figures that are shown, and which these are."""
    speech = speech_of(setting_out)
    shown = {
        "words": speech,
        "figures": rule_of(setting_out).unit,
        "measure": setting_out.piece.whole.measure,
        "said": {house: word(house, speech) for pair in pairs() for house in pair},
    }
    found: Mapping[str, Any] = document(setting_out)
    # what touches is told by the proofs alone, so joints have one row before them and one after
    kept_as = {"joints": f"joints {setting_out.stage}"}
    by_name = {
        section: rows_in_words(found[section], setting_out, section=kept_as.get(section, section))
        for section in BY_NAME
    }
    others = {section: rows for section, rows in found.items() if section not in BY_NAME}
    return {**in_words(others, setting_out), **by_name, "shown": shown}


def _part(name: str, setting_out: SettingOut) -> Mapping[str, Any] | None:
    """A part in three views, with the widths and dashes of its lines."""
    made = next((part for part in setting_out.made if part.name == name), None)
    if made is None:
        return None
    inches = setting_out.piece.whole.measure is Unit.INCH
    angle = (Sheet.LETTER if inches else Sheet.A4).angle
    drawing = part_drawing(made, setting_out=setting_out, angle=angle, room=ROOM)
    return in_words({**drawn(drawing), "line_types": line_types()}, setting_out)


def _paper(name: str, setting_out: SettingOut) -> bytes | None:
    """One file of a paper, on the sheet that is usual where the piece's measure is."""
    if name not in TO_PRINT:
        return None
    inches = setting_out.piece.whole.measure is Unit.INCH
    sheet = Sheet.LETTER if inches else Sheet.A4
    return PAPERS[TO_PRINT[name]].render(setting_out, sheet=sheet).get(name)


def _model(setting_out: SettingOut) -> bytes:
    (content,) = Model.render(setting_out, sheet=Sheet.A4).values()
    return content
