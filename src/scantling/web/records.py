"""What the page may say for the record: a reading, a part cut, a note, that an entry was wrong.

The id comes from the page, so that a message it sends again after a lost answer is kept once.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any

from fastapi import FastAPI
from fastapi.responses import JSONResponse
from pydantic import BaseModel, ConfigDict, Field, model_validator

from scantling.findings import Finding, Weight
from scantling.record.entry import Entry, Note, Reading, Said
from scantling.record.keeping import Folder, NotKeptError, keep
from scantling.record.reading import FILE, read
from scantling.setting_out import SettingOut
from scantling.setting_out.saying import correction, done, measured
from scantling.units import LONGEST_TEXT
from scantling.web.told import refused, told
from scantling.web.workbench import Workbench

LONGEST_NAME = 200  # [characters] of a size or a part
LONGEST_NOTE = 2000  # [characters]
MOST_READINGS = 20


class _Said(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True)


class MeasuredWish(_Said):
    """A made part was measured."""

    size: Annotated[str, Field(max_length=LONGEST_NAME)]
    readings: Annotated[
        list[Annotated[str, Field(max_length=LONGEST_TEXT)]],
        Field(min_length=1, max_length=MOST_READINGS),
    ]
    sure: bool = False


class Wish(_Said):
    """One thing for the record."""

    id: Annotated[str, Field(min_length=8, max_length=64)]
    at: Annotated[str, Field(max_length=40)]
    measured: MeasuredWish | None = None
    done: Annotated[str, Field(max_length=LONGEST_NAME)] | None = None
    note: Annotated[str, Field(min_length=1, max_length=LONGEST_NOTE)] | None = None
    correct: Annotated[int, Field(ge=1)] | None = None  # number of an entry, to be taken back

    @model_validator(mode="after")
    def _is_one_thing(self) -> Wish:
        said = [self.measured, self.done, self.note, self.correct]
        if sum(each is not None for each in said) != 1:
            raise ValueError("one thing at a time")
        return self


def records(site: FastAPI, workbench: Workbench[Any]) -> None:
    """The act, added to a site."""

    @site.post("/api/record")
    def record(wish: Wish, since: str = "") -> JSONResponse:
        piece = workbench.made
        if piece is None:
            return JSONResponse({"wrong": refused(NO_PIECE)}, status_code=422)
        said = _said(wish, piece, lambda: Folder(workbench.path.parent).content(FILE))
        if isinstance(said, Finding):
            return JSONResponse({"wrong": refused(said)}, status_code=422)
        try:
            keep(Entry(id=wish.id, at=wish.at, said=said), disk=Folder(workbench.path.parent))
        except NotKeptError as fault:
            return JSONResponse({"wrong": refused(_not_kept(fault))}, status_code=422)
        workbench.look()
        return JSONResponse(told(workbench, since))


NO_PIECE = Finding(
    code="record.no-piece",
    weight=Weight.HALT,
    says="There is no piece yet that this could be said of.",
    cure="Mend the piece file first.",
)


def _not_kept(fault: NotKeptError) -> Finding:
    return Finding(
        code="record.not-kept",
        weight=Weight.HALT,
        says=f"It was not kept: {fault}",
        cure="Say it again when that is mended.",
    )


def _said(wish: Wish, piece: SettingOut, content: Callable[[], bytes]) -> Said | Finding:
    if wish.measured is not None:
        return _measured(wish.measured, piece)
    if wish.done is not None:
        return done(piece, part=wish.done)
    if wish.note is not None:
        return Note(text=wish.note)
    return correction(read(content()), number=wish.correct or 0)


def _measured(wish: MeasuredWish, piece: SettingOut) -> Reading | Finding:
    return measured(piece, size=wish.size, readings=wish.readings, sure=wish.sure)
