"""What the page may do to the piece file: exchange a length, take that back, put it again.

The answer is the standing of after the act, so that nothing has to be asked for again: what has
changed of it since the number that the page was told last.
The guard has seen to it by then that the page itself is asking.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any

from fastapi import FastAPI
from fastapi.responses import JSONResponse
from pydantic import BaseModel, ConfigDict, Field

from scantling.shop.habits import Display
from scantling.units import LONGEST_TEXT, Unit
from scantling.web.edits import NotWrittenError, OutsideEditError
from scantling.web.told import not_written, told
from scantling.web.workbench import Workbench
from scantling.wording import Speech

LONGEST_WORD = 100  # [characters] of a name in the file
MOST_WORDS = 20  # brackets within brackets

Word = Annotated[str, Field(max_length=LONGEST_WORD)] | Annotated[int, Field(ge=0, le=999)]


class Wish(BaseModel):
    """A length to be exchanged."""

    model_config = ConfigDict(extra="forbid", strict=True)

    path: Annotated[list[Word], Field(min_length=1, max_length=MOST_WORDS)]
    value: Annotated[str, Field(max_length=2 * LONGEST_TEXT)]
    over: Annotated[str, Field(max_length=64)]  # mark of the text the maker had before him


class Shown(BaseModel):
    """Words and figures to be shown."""

    model_config = ConfigDict(extra="forbid")

    words: Speech
    figures: Unit


def writes(site: FastAPI, workbench: Workbench[Any]) -> None:
    """The acts, added to a site."""
    edits = workbench.edits

    @site.post("/api/write")
    def write(wish: Wish, since: str = "") -> JSONResponse:
        return _done(workbench, lambda: edits.write(wish.path, wish.value, over=wish.over), since)

    @site.post("/api/take-back")
    def take_back(since: str = "") -> JSONResponse:
        return _done(workbench, edits.take_back, since)

    @site.post("/api/put-again")
    def put_again(since: str = "") -> JSONResponse:
        return _done(workbench, edits.put_again, since)


def shows(site: FastAPI, workbench: Workbench[Any]) -> None:
    """How things are shown; no file hears of it."""

    @site.post("/api/show")
    def show(wish: Shown, since: str = "") -> JSONResponse:
        workbench.show(Display(words=wish.words, figures=wish.figures))
        return JSONResponse(told(workbench, since))


def _done(workbench: Workbench[Any], act: Callable[[], None], since: str) -> JSONResponse:
    """The standing after an act, or over an outside edit (409); what is wrong (422)."""
    status = 200
    try:
        act()
    except OutsideEditError:
        status = 409
    except NotWrittenError as error:
        return JSONResponse({"wrong": not_written(error)}, status_code=422)
    workbench.look()
    return JSONResponse(told(workbench, since), status_code=status)
