"""Command line: reads words, calls the chain, hands out papers. No arithmetic here.

Exit 0: clean, or findings that leave the work free to go on. 1: a finding of weight halt.
2: what was named is no readable piece, or the words of the command are wrong.
"""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING, Annotated, Any, Literal, get_args

from cyclopts import App, CycloptsError, Parameter, Token

from scantling import cli_bench
from scantling.web.sweeping import unswept

if TYPE_CHECKING:
    from scantling.findings import Finding
    from scantling.piece import Piece
    from scantling.setting_out import Pause, SettingOut
    from scantling.shop.habits import Display
    from scantling.shop.read import ShopReading
    from scantling.web.worked import Work, Worked

CLEAN, HALTED, UNREADABLE = 0, 1, 2
PATIENCE = 20.0  # [s] a maker waits for better sizes of a piece whose figures are not usual
PIECE_FILE = "piece.toml"
BEGINS_LIKE = {"inch": "glaze cupboard", "mm": "bookcase"}

app = App(
    name="scantling",
    help="From a short description of a piece to its sizes, parts, joints and papers.",
    help_flags=["--help"],
    version_flags=["--version"],
)


def _in_any_case(kind: Any, tokens: Sequence[Token]) -> str:  # noqa: ANN401 - a Literal
    """One of the words of a `Literal`, whichever way its letters are written."""
    known = {str(word).casefold(): str(word) for word in get_args(kind)}
    said = tokens[0].value
    if said.casefold() in known:
        return known[said.casefold()]
    raise ValueError(f"{said!r} is none of {', '.join(known.values())}")


# shown for this once; the shop's file holds the maker's habit
_ANY_CASE = Parameter(converter=_in_any_case)
Measure = Annotated[Literal["inch", "mm"], Parameter(help="Measure of piece and shop."), _ANY_CASE]
Words = Annotated[Literal["US", "UK"] | None, Parameter(help="Whose trade words."), _ANY_CASE]
Figures = Annotated[Literal["inch", "mm"] | None, Parameter(help="Measure shown."), _ANY_CASE]

NO_PIECE = ("piece.not-a-piece", "piece.newer-format")


class _UnreadableError(Exception):
    """What was named is no piece; exit 2."""


class _FaultyError(Exception):
    """A piece with faults that stop it from being worked; exit 1."""


def main() -> None:
    """Run a command and leave with its exit code."""
    try:
        with unswept():  # somebody waits from the first word to the last
            code = app(exit_on_error=False, print_error=False, result_action="return_value")
    except CycloptsError as error:
        _say(f"{error}\nscantling --help lists what can be said.")
        sys.exit(UNREADABLE)
    except _UnreadableError as error:
        _say(str(error))
        sys.exit(UNREADABLE)
    except _FaultyError as error:
        _say(str(error))
        sys.exit(HALTED)
    except BrokenPipeError:
        sys.stderr.close()
        sys.exit(CLEAN)
    except KeyboardInterrupt:
        sys.exit(CLEAN)
    sys.exit(code if isinstance(code, int) else CLEAN)


@app.command
def begin(
    folder: Path,
    *,
    like: Annotated[str | None, Parameter(help="Example to start from.")] = None,
    measure: Measure = "inch",
) -> int:
    """Begin a piece in a new folder, from an example, with a shop of the same measure."""
    examples = _examples() / "metric" if measure == "mm" else _examples()
    found = _example(like or BEGINS_LIKE[measure], examples, measure)
    target = folder / PIECE_FILE
    shop = folder / "shop.toml"
    for path in (target, shop):
        if path.exists():
            raise _UnreadableError(f"{path} is there already; nothing was written over")
    _made(folder)
    text = (found / PIECE_FILE).read_text(encoding="utf-8")
    _written(target, text.replace('"../shop.toml"', '"shop.toml"').encode())
    _written(shop, (examples / "shop.toml").read_bytes())
    _say(f"{target} is yours to change; {shop} holds your tools and habits.")
    _say(f"Then: scantling prove {folder}")
    return CLEAN


def _example(like: str, folder: Path, measure: str) -> Path:
    """The folder of an example."""
    from scantling.roster import nearest, plain_name

    examples = {plain_name(p.parent.name): p.parent for p in folder.glob(f"*/{PIECE_FILE}")}
    found = examples.get(plain_name(like))
    if found is None:
        near = nearest(plain_name(like), examples)
        hint = f"; did you mean {near!r}?" if near else f"; there are {', '.join(sorted(examples))}"
        raise _UnreadableError(f"there is no example {like!r} in {measure}{hint}")
    return found


@app.command
def prove(piece: Path, *, words: Words = None, figures: Figures = None) -> int:
    """Work a piece through and say what was found."""
    worked = _worked(piece, _display(words, figures))
    for paragraph in _told(worked, _path(piece)):
        _say(paragraph)
    return HALTED if worked.halts else CLEAN


@app.command
def papers(
    piece: Path,
    *,
    into: Annotated[Path | None, Parameter(help="Folder to write to.")] = None,
    sheet: Annotated[Literal["A4", "Letter"] | None, Parameter(help="Paper."), _ANY_CASE] = None,
    words: Words = None,
    figures: Figures = None,
) -> int:
    """Write the papers of a piece: packet, cutting list, model, figures."""
    worked = _worked(piece, _display(words, figures))
    folder = into if into is not None else _folder(piece) / "papers"
    for path in _papers(worked, folder, sheet=sheet):
        _say(str(path))
    _summary(worked)
    return HALTED if worked.halts else CLEAN


@app.command
def look(
    piece: Path,
    *,
    port: Annotated[int, Parameter(help="Port on this machine; 0 takes a free one.")] = 0,
    quiet: Annotated[bool, Parameter(help="Do not open a browser.", negative=())] = False,
) -> int:
    """Open the page of a piece in a browser; it follows the file as you change it."""
    from scantling.web.serve import serve

    serve(_path(piece), stager=stager, port=port, open_browser=not quiet)
    return CLEAN


@app.command
def demo(
    *,
    once: Annotated[bool, Parameter(help="End instead of showing the page.", negative=())] = False,
    into: Annotated[Path, Parameter(help="Folder to write to.")] = Path("out/glaze_cupboard"),
) -> int:
    """Work the example through, write its papers, show its page."""
    piece = _examples() / "glaze_cupboard" / PIECE_FILE
    _say(f"Working {piece} through ...")
    worked = _worked(piece)
    _say(f"{worked.counted}, {len(worked.joints)} joints, {len(worked.sizes)} sizes: all solved.")
    _summary(worked)
    _say(f"Papers in {into}:")
    for path in _papers(worked, into, sheet=None):
        _say(f"  {path.name}")
    if once:
        return HALTED if worked.halts else CLEAN
    return look(piece)


def _display(words: Words, figures: Figures) -> Display:
    from scantling.shop.habits import Display
    from scantling.units import Unit
    from scantling.wording import Speech

    return Display(
        words=None if words is None else Speech(words),
        figures=None if figures is None else Unit(figures),
    )


def worker(
    display: Callable[[], Display] | None = None,
) -> Callable[[Path], tuple[SettingOut | None, Sequence[Finding]]]:
    """What works a piece through in one go; keeps the solids it made.

    Args:
        display: How things are to be shown just now. None: as the shop's habits have it.
    """
    from scantling.setting_out import at_no_time

    stages = stager(display)

    def work(path: Path) -> tuple[SettingOut | None, Sequence[Finding]]:
        *_, last = stages(path, at_no_time)
        return last.made, last.findings

    return work


def stager(display: Callable[[], Display] | None = None) -> Work[SettingOut]:
    """What the page calls when the file has changed: the same, told stage by stage.

    Args:
        display: How things are to be shown just now. None: as the shop's habits have it.
    """
    from scantling.piece import read
    from scantling.setting_out import stages
    from scantling.setting_out.chain import ENOUGH
    from scantling.sizes.stopping import TimedWork
    from scantling.solids.store import Store
    from scantling.web.worked import Worked

    store = Store()
    kept: list[SettingOut] = []

    def work(path: Path, pause: Pause) -> Iterator[Worked[SettingOut]]:
        piece = read(_text(path), file=path.name)
        if not piece.complete:
            yield Worked(made=None, findings=(*piece.findings, *_of_the_shop(piece, path)))
            return
        workshop = _shop(piece, path)
        habits = workshop.habits
        for found in stages(
            piece,
            shop=workshop.shop,
            habits=habits if display is None else display().over(habits),
            record=cli_bench.record_of(path.parent),
            store=store,
            before=kept[-1] if kept else None,
            heard=workshop.findings,
            stop=TimedWork(most=ENOUGH, until=monotonic() + PATIENCE, clock=monotonic),
            pause=pause,
        ):
            kept[:] = [found]
            yield Worked(
                made=found if found.parts else None, findings=found.findings, stage=found.stage
            )

    return work


def _worked(path: Path, display: Display | None = None) -> SettingOut:
    """The piece worked through; ends with what is wrong where it cannot be.

    Raises:
        _FaultyError: It is a piece, but something stops it from being worked.
        _UnreadableError: It is no piece file.
    """
    from scantling.setting_out.rack import beside_the_piece

    found, findings = worker(None if display is None else lambda: display)(_path(path))
    if found is None:
        said = "\n\n".join(_paragraphs(findings, _path(path)))
        no_piece = any(f.code in NO_PIECE for f in findings)
        raise (_UnreadableError if no_piece else _FaultyError)(said)
    beside = _path(path).parent
    return beside_the_piece(found, lambda n: _text(beside / n) if (beside / n).exists() else "")


def _shop(piece: Piece, path: Path) -> ShopReading:
    from scantling.shop.read import default_text, read

    if piece.shop is None:
        return read(default_text(), file="shop.toml")
    return read(_text(path.parent / piece.shop), file=piece.shop)


def _of_the_shop(piece: Piece, path: Path) -> Sequence[Finding]:
    """What stops the work in the shop's file, to be told with the faults of the piece's own."""
    from scantling.findings import in_sentences

    if piece.shop is None or not (path.parent / piece.shop).is_file():
        return ()  # a file that is not there is told once the piece can be read
    return tuple(in_sentences(f) for f in _shop(piece, path).findings if f.weight == "halt")


def _paragraphs(findings: Sequence[Finding], path: Path) -> list[str]:
    """Findings as they are told, each with the line of the file it stands in."""
    from scantling.findings import told

    texts: dict[str, str | None] = {}
    for file in {f.place.file for f in findings if f.place is not None}:
        beside = path if file == path.name else path.parent / file
        texts[file] = _text(beside) if beside.is_file() else None
    return [
        f"{f.weight}: {told(f, source_text=texts[f.place.file] if f.place else None)}"
        for f in findings
    ]


def _papers(worked: SettingOut, folder: Path, *, sheet: str | None) -> list[Path]:
    from scantling.papers import PAPERS, Sheet
    from scantling.units import Unit

    usual = "Letter" if worked.piece.whole.measure is Unit.INCH else "A4"
    size = Sheet(sheet or usual)
    _made(folder)
    written = []
    for paper in PAPERS.values():
        made: Mapping[str, bytes] = paper.render(worked, sheet=size)
        for name, content in made.items():
            _written(folder / name, content)
            written.append(folder / name)
    return written


def _made(folder: Path) -> None:
    """The folder, made if it is not there.

    Raises:
        _UnreadableError: Something stands in its way.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        tempfile.TemporaryFile(dir=folder).close()
    except OSError as error:
        raise _UnreadableError(f"{folder} cannot be written to: {error.strerror}") from None


def _written(path: Path, content: bytes) -> None:
    """Whole or not at all: a temporary file beside it, synced, then renamed."""
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(content)
            out.flush()
            os.fsync(out.fileno())
        Path(temporary).chmod(0o644)
        Path(temporary).replace(path)
    finally:
        Path(temporary).unlink(missing_ok=True)


def _told(worked: SettingOut, path: Path) -> list[str]:
    from scantling.papers._shown import finding_in_words

    told = _paragraphs([finding_in_words(f, worked) for f in worked.findings], path)
    return told if worked.halts else [*told, "Nothing stops the work."]


def _summary(worked: SettingOut) -> None:
    from scantling.papers._cover import halted_in_words

    counts = {w: sum(f.weight == w for f in worked.findings) for w in ("halt", "mind", "note")}
    said = ", ".join(f"{n} to {w}" if w == "mind" else f"{n} {w}" for w, n in counts.items() if n)
    _say(f"Findings: {said or 'none'}.")
    if halted := halted_in_words(worked.findings):
        _say(f"{halted}.")


def _path(piece: Path) -> Path:
    path = piece / PIECE_FILE if piece.is_dir() else piece
    if not path.exists():
        raise _UnreadableError(f"there is no {path}")
    return path


def _folder(piece: Path) -> Path:
    return piece if piece.is_dir() else piece.parent


def _text(path: Path) -> str:
    try:
        return path.read_bytes().decode("utf-8")
    except UnicodeDecodeError as error:
        raise _UnreadableError(f"{path} is no text: byte {error.start + 1} is not UTF-8") from None
    except OSError as error:
        raise _UnreadableError(f"{path} cannot be read: {error.strerror}") from None


def _examples() -> Path:
    """The example pieces: inside the installed package, or beside a checkout's sources."""
    inside = Path(__file__).parent / "pieces"
    return inside if inside.exists() else Path(__file__).parents[2] / "pieces"


def _say(text: str) -> None:
    print(text, file=sys.stdout, flush=True)


cli_bench.add_to(app, cli_bench.Desk(worked=_worked, file_of=_path, say=_say))
