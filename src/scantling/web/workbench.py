"""The piece on the bench: its file, the last good setting-out, and what is wrong just now.

A file that breaks does not take the piece away. What was worked out last stays, marked stale,
with the findings of the text as it stands now; the next good text replaces it.

A text is worked in stages. A look works the first, sizes and parts, and tells everyone; `prove`
works those that are left and tells after each, until they are through or a newer text has come.
"""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Generic, TypeVar

from scantling.errors import ScantlingError
from scantling.findings import Finding, Place, Weight
from scantling.piece._file.spots import Steps
from scantling.record.reading import FILE as RECORD
from scantling.setting_out import Stage
from scantling.shop.habits import Display
from scantling.sizes.model import Stated
from scantling.web.changes import Document, Remembered
from scantling.web.edits import Edits
from scantling.web.fields import Field, fields, names_by_path
from scantling.web.news import News
from scantling.web.turns import OvertakenError, Turns
from scantling.web.worked import Work, Worked

T = TypeVar("T")


@dataclass(frozen=True, kw_only=True)
class Drawings(Generic[T]):
    """How a setting-out is shown: as a document and as a model in space."""

    document: Callable[[T], Document]
    model: Callable[[T], bytes]
    stated: Callable[[T], Sequence[Stated]] = lambda _: ()  # what the maker wrote, and where
    finding: Callable[[Finding, T], Finding] = lambda finding, _: finding  # as it is shown
    part: Callable[[str, T], Document | None] = lambda *_: None  # one part's drawing, by name
    paper: Callable[[str, T], bytes | None] = lambda *_: None  # a file to print, by its name


@dataclass
class Showing:
    """How the page shows things just now."""

    now: Display = field(default=Display())


@dataclass(frozen=True, kw_only=True)
class Standing:
    """What there is to show at one moment."""

    number: int = 0  # counts the looks at the file; 0 before the first
    document: Document | None = None  # of the last good text
    stage: Stage = Stage.PROVEN  # how far the text is worked, where it can be
    piece: int = 0  # tells one good text from another; the same for all stages of one
    stale: bool = False  # the text has changed since and cannot be worked
    findings: tuple[Finding, ...] = ()  # of the text as it stands now
    texts: Mapping[str, str] = field(default_factory=dict)  # by file, where a finding points
    content: bytes = b""  # of the piece's own file
    fields: tuple[Field, ...] = ()  # lengths in it that can be exchanged


@dataclass(frozen=True, kw_only=True)
class Good(Generic[T]):
    """A piece that can be shown."""

    made: T
    document: Document
    round: int  # which text it comes from


@dataclass(frozen=True, kw_only=True)
class Model:
    """The piece in space."""

    content: bytes
    mark: str  # differs whenever the content does


LATER = ("joints", "year")  # of the document, told with what was before until joints answer
Stamp = tuple[str, int, int, int]


class Workbench(Generic[T]):
    """Looks at the piece's file and keeps what it made of it."""

    def __init__(
        self,
        path: Path,
        *,
        work: Work[T],
        drawings: Drawings[T],
        showing: Showing | None = None,
    ) -> None:
        self.path = path
        self.showing = showing or Showing()
        self.news = News()
        self._work = work
        self._drawings = drawings
        self._standing = Standing()
        self._good: Good[T] | None = None
        self._joined: Good[T] | None = None  # the last one whose joints have answered
        self._model: Model | None = None
        self.edits = Edits(path)
        self.turns = Turns()
        self.remembered = Remembered()
        self.unproven = threading.Event()  # whether a look has left stages to be worked
        self._round = 0  # counts the texts looked at
        self._rest: Iterator[Worked[T]] = iter(())
        self._names: Mapping[Steps, tuple[str, ...]] = {}
        self._drawn: dict[str, Document] = {}  # parts of the last good piece
        self._looking = threading.Lock()
        self._seen: tuple[Stamp, ...] | None = None

    @property
    def standing(self) -> Standing:
        """What there is to show now."""
        return self._standing

    @property
    def made(self) -> T | None:
        """The piece that is shown; None before there is one."""
        return None if self._good is None else self._good.made

    def look(self) -> bool:
        """Work the first stage anew if one of the piece's texts has changed; tell everyone.

        Returns:
            Whether it was worked.
        """
        with self._looking, self.turns.first():
            now = tuple(_stamps(self.path))
            if now == self._seen:
                return False
            self._seen = now
            self._look()
        self.news.tell()
        return True

    def _look(self) -> None:
        content = _content(self.path)
        self._round += 1
        self._rest = self._stages(self._round)
        worked = next(self._rest)
        if worked.made is not None:
            stated = self._drawings.stated(worked.made)
            self._names = names_by_path(content, stated, file=self.path.name)
        self._stand(worked, content)
        if worked.stage is Stage.PROVEN:
            self._rest = iter(())
        else:
            self.unproven.set()

    def prove(self) -> bool:
        """Work the stages that the last look left; tell everyone after each.

        Returns:
            Whether they came to their end, and no newer text overtook them.
        """
        self.unproven.clear()
        with self.turns.last():
            mine, rest = self._round, self._rest
            try:
                for worked in rest:
                    self._stand(worked, self._standing.content)
                    self.news.tell()
                    self._pause(mine)
            except OvertakenError:
                return False
        return True

    def _pause(self, mine: int) -> None:
        self.turns.give_way()
        if mine != self._round:
            raise OvertakenError

    def _stages(self, mine: int) -> Iterator[Worked[T]]:
        """At least one; the last is proven, or says why nothing more comes."""
        if not self.path.is_file():
            yield Worked(made=None, findings=(_missing(self.path),))
            return
        told = Worked[T](made=None)
        try:
            for worked in self._work(self.path, lambda: self._pause(mine)):
                told = worked
                yield worked
        except ScantlingError as error:
            findings = (*told.findings, _not_worked(error, self.path))
            yield replace(told, findings=findings, stage=Stage.PROVEN)

    def _stand(self, worked: Worked[T], content: bytes) -> None:
        """What there is to show from now on."""
        good = self._made_good(worked)
        if good is not None and worked.stage is not Stage.SIZED:
            self._joined = good
        # a piece whose joints never answered gives way to the one before it
        shown = good or self._joined
        if shown is None or self._good is None or shown.round != self._good.round:
            self._model, self._drawn = None, {}
        self._good = shown
        self._standing = Standing(
            number=self._standing.number + 1,
            document=None if shown is None else shown.document,
            stage=Stage.PROVEN if good is None else worked.stage,
            piece=0 if shown is None else shown.round,
            stale=good is None and shown is not None,
            findings=self._shown(worked.findings),
            texts=_texts(self.path, worked.findings),
            content=content,
            fields=fields(content, self._names, file=self.path.name),
        )
        if self._standing.document is not None:
            self.remembered.keep(self._standing.number, self._standing.document)

    def _made_good(self, worked: Worked[T]) -> Good[T] | None:
        """What can be shown of it; until its joints answer, with those of the piece before."""
        if worked.made is None:
            return None
        document = self._drawings.document(worked.made)
        if not document["parts"]:  # no better than what was before
            return None
        if worked.stage is Stage.SIZED and self._joined is not None:
            before = self._joined.document
            document = {**document, **{word: before[word] for word in LATER}}
        return Good(made=worked.made, document=document, round=self._round)

    def show(self, display: Display) -> None:
        """Show things otherwise from now on; work the piece anew in those figures."""
        with self._looking, self.turns.first():
            self.showing.now = display
            self._look()
        self.news.tell()

    def model(self) -> Model | None:
        """The last good piece in space, made when first asked for."""
        with self.turns.first():
            if self._model is None and self._good is not None:
                content = self._drawings.model(self._good.made)
                self._model = Model(content=content, mark=hashlib.sha256(content).hexdigest()[:32])
            return self._model

    def paper(self, name: str) -> bytes | None:
        """A file to print of the piece as it is proven; None before, or if there is none such."""
        with self.turns.first():
            standing, good = self._standing, self._good
            if good is None or standing.stale or standing.stage is not Stage.PROVEN:
                return None
            return self._drawings.paper(name, good.made)

    def part(self, name: str) -> Document | None:
        """The drawing of one part of the last good piece, made when first asked for.

        A drawing shows what joints do to a part, so there is none before they have answered.
        """
        with self.turns.first():
            if self._standing.stage is Stage.SIZED:
                return None
            good, kept = self._good, self._drawn
            if good is not None and name not in kept:
                made = self._drawings.part(name, good.made)
                if made is not None:
                    kept[name] = made
            return kept.get(name)

    def _shown(self, findings: Sequence[Finding]) -> tuple[Finding, ...]:
        good = self._good  # the last one: names and speech outlive a fault
        if good is None:
            return tuple(findings)
        return tuple(self._drawings.finding(finding, good.made) for finding in findings)


def _content(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError:  # said by a finding
        return b""


def _stamps(path: Path) -> Iterable[Stamp]:
    """What changes when the piece's text, or one that may lie beside or above it, is saved."""
    folder = path.parent
    above = folder.resolve().parent
    texts = {path, folder / RECORD, *folder.glob("*.toml"), *above.glob("*.toml")}
    for text in sorted(texts):
        try:
            found = text.stat()
        except OSError:  # being replaced just now, or gone
            continue
        yield str(text), found.st_mtime_ns, found.st_size, found.st_ino


def _texts(path: Path, findings: Sequence[Finding]) -> dict[str, str]:
    """The files that findings point into, as far as they can be read."""
    found = {}
    for name in {f.place.file for f in findings if f.place is not None}:
        file = path if name in {path.name, str(path)} else path.parent / name
        try:
            found[name] = file.read_text(encoding="utf-8", errors="replace")
        except OSError:  # the place is still shown, without its line
            continue
    return found


def _missing(path: Path) -> Finding:
    return Finding(
        code="page.no-file",
        weight=Weight.HALT,
        says=f"{path.name} is not where it was.",
        cure="Put it back, or begin again with the file where it is now.",
    )


def _not_worked(error: ScantlingError, path: Path) -> Finding:
    return Finding(
        code="page.not-worked",
        weight=Weight.HALT,
        says=f"The piece could not be worked through: {error}",
        cure="Take back the last change; this is a fault of the program, worth reporting.",
        place=Place(file=path.name, line=1, column=1),
    )
