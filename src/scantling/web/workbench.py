"""The piece on the bench: its file, the last good setting-out, and what is wrong just now.

A file that breaks does not take the piece away. What was worked out last stays, marked stale,
with the findings of the text as it stands now; the next good text replaces it.
"""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Generic, TypeVar

from scantling.errors import ScantlingError
from scantling.findings import Finding, Place, Weight
from scantling.piece._file.spots import Steps
from scantling.shop.habits import Display
from scantling.sizes.model import Stated
from scantling.web.edits import Edits
from scantling.web.fields import Field, fields, names_by_path
from scantling.web.news import News

T = TypeVar("T")

Work = Callable[[Path], tuple[T | None, Sequence[Finding]]]
Document = Mapping[str, Any]  # `setting-out.json`, where a file is written


@dataclass(frozen=True, kw_only=True)
class Drawings(Generic[T]):
    """How a setting-out is shown: as a document and as a model in space."""

    document: Callable[[T], Document]
    model: Callable[[T], bytes]
    stated: Callable[[T], Sequence[Stated]] = lambda _: ()  # what the maker wrote, and where
    finding: Callable[[Finding, T], Finding] = lambda finding, _: finding  # as it is shown
    part: Callable[[str, T], Document | None] = lambda *_: None  # one part's drawing, by name


@dataclass
class Showing:
    """How the page shows things just now."""

    now: Display = field(default=Display())


@dataclass(frozen=True, kw_only=True)
class Standing:
    """What there is to show at one moment."""

    number: int = 0  # counts the looks at the file; 0 before the first
    document: Document | None = None  # of the last good text
    stale: bool = False  # the text has changed since and cannot be worked
    findings: tuple[Finding, ...] = ()  # of the text as it stands now
    texts: Mapping[str, str] = field(default_factory=dict)  # by file, where a finding points
    content: bytes = b""  # of the piece's own file
    fields: tuple[Field, ...] = ()  # lengths in it that can be exchanged


@dataclass(frozen=True, kw_only=True)
class Model:
    """The piece in space."""

    content: bytes
    mark: str  # differs whenever the content does


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
        self._good: T | None = None
        self._model: Model | None = None
        self.edits = Edits(path)
        self._names: Mapping[Steps, tuple[str, ...]] = {}
        self._lock = threading.Lock()
        self._drawing = threading.Lock()
        self._drawn: dict[str, Document] = {}  # parts of the last good piece
        self._looking = threading.Lock()
        self._seen: tuple[Stamp, ...] | None = None

    @property
    def standing(self) -> Standing:
        """What there is to show now."""
        return self._standing

    def look(self) -> bool:
        """Work the piece anew if one of its texts has changed; tell everyone.

        Returns:
            Whether it was worked.
        """
        with self._looking:
            now = tuple(_stamps(self.path))
            if now == self._seen:
                return False
            self._seen = now
            self._look()
        self.news.tell()
        return True

    def _look(self) -> None:
        content = _content(self.path)
        good, document, findings = self._worked()
        if good is not None:
            self._names = names_by_path(content, self._drawings.stated(good), file=self.path.name)
        with self._lock:
            if good is not None:
                self._good, self._model, self._drawn = good, None, {}
            before = self._standing
            self._standing = replace(
                before,
                number=before.number + 1,
                document=document if good is not None else before.document,
                stale=good is None and before.document is not None,
                findings=self._shown(findings),
                texts=_texts(self.path, findings),
                content=content,
                fields=fields(content, self._names, file=self.path.name),
            )

    def show(self, display: Display) -> None:
        """Show things otherwise from now on; work the piece anew in those figures."""
        with self._looking:
            self.showing.now = display
            self._look()
        self.news.tell()

    def model(self) -> Model | None:
        """The last good piece in space, made when first asked for."""
        with self._lock:
            if self._model is None and self._good is not None:
                content = self._drawings.model(self._good)
                self._model = Model(content=content, mark=hashlib.sha256(content).hexdigest()[:32])
            return self._model

    def part(self, name: str) -> Document | None:
        """The drawing of one part of the last good piece, made when first asked for."""
        with self._drawing:  # one at a time, and none holds up what is shown anew
            good, kept = self._good, self._drawn
            if good is not None and name not in kept:
                made = self._drawings.part(name, good)
                if made is not None:
                    kept[name] = made
            return kept.get(name)

    def _shown(self, findings: Sequence[Finding]) -> tuple[Finding, ...]:
        good = self._good  # the last one: names and speech outlive a fault
        if good is None:
            return tuple(findings)
        return tuple(self._drawings.finding(finding, good) for finding in findings)

    def _worked(self) -> tuple[T | None, Document | None, Sequence[Finding]]:
        if not self.path.is_file():
            return None, None, (_missing(self.path),)
        try:
            made, findings = self._work(self.path)
        except ScantlingError as error:
            return None, None, (_not_worked(error, self.path),)
        document = None if made is None else self._drawings.document(made)
        if document is None or not document["parts"]:  # nothing to show is no better than before
            return None, None, findings
        return made, document, findings


def _content(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError:  # said by a finding
        return b""


def _stamps(path: Path) -> Iterable[Stamp]:
    """What changes when the piece's text, or one that may lie beside or above it, is saved."""
    folder = path.parent
    texts = {path, *folder.glob("*.toml"), *folder.resolve().parent.glob("*.toml")}
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
