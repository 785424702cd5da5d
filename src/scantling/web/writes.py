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

from scantling.errors import LengthError
from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.shop.habits import Display
from scantling.units import LONGEST_TEXT, Unit, length
from scantling.web.edits import NotWrittenError, OutsideEditError
from scantling.web.told import not_written, told
from scantling.web.workbench import Workbench
from scantling.wording import Speech

LONGEST_WORD = 100  # [characters] of a name in the file
MOST_WORDS = 20  # brackets within brackets
FAR = Fraction(10**6)  # [-] further apart than any two lengths of a piece

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
        def act() -> None:
            _refuse_unclear(wish, workbench)
            edits.write(wish.path, wish.value, over=wish.over)

        return _done(workbench, act, since)

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


def _refuse_unclear(wish: Wish, workbench: Workbench[Any]) -> None:
    """A bare figure where others are shown than the file's own, and which fits them better.

    Raises:
        NotWrittenError: It is likelier that the shown measure is meant.
    """
    shown = (workbench.standing.document or {}).get("shown")
    stands = next((f for f in workbench.standing.fields if f.spot.path == tuple(wish.path)), None)
    if shown is None or stands is None:
        return
    measure = Unit(shown["measure"])
    try:
        old = length(stands.spot.text, unit=measure)
        as_file = length(f"{wish.value.strip()}{stands.unit}", unit=measure)
        as_shown = length(wish.value, unit=Unit(shown["figures"]))
    except LengthError:
        return  # whatever it is, the reader of the file says so
    if as_file != as_shown and _apart(as_shown, old) < _apart(as_file, old):
        text = wish.value.strip()
        one = f"{text}{stands.unit}" if stands.unit else f"{text} {measure.sign}"
        other = f"{text} {Unit(shown['figures']).sign}"
        raise NotWrittenError(
            Finding(
                code="page.unit-unsaid",
                weight=Weight.HALT,
                says=f"{text} would be {one} here, and {other} is nearer to what stands there.",
                cure=f"Write {one} or {other}.",
            )
        )


def _apart(one: Fraction, other: Fraction) -> Fraction:
    """How many times the larger of two lengths is the smaller. [-]"""
    low, high = sorted((one, other))
    return high / low if low > 0 else FAR


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
