"""The command line: its words, its exit codes, and that it writes over nothing."""

from __future__ import annotations

import io
import re
import subprocess
import sys
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path

import pytest
from tests.papers import read_back
from tests.spent import by_children

from scantling import cli

ROOT = Path(__file__).parents[1]
DEMO = ROOT / "pieces" / "glaze_cupboard"
COMMAND = Path(sys.executable).with_name("scantling")
CLEAN, HALTED, UNREADABLE = 0, 1, 2

# that it reads the words of the process is what is tested
pytestmark = pytest.mark.filterwarnings("ignore:Cyclopts application invoked without tokens")


@dataclass(frozen=True, kw_only=True)
class Done:
    """What a command left behind."""

    returncode: int
    stdout: str
    stderr: str


def run(*words: str | Path) -> Done:
    """One command, in this process: a thing begun anew costs most of a second each time."""
    out, err = io.StringIO(), io.StringIO()
    with pytest.MonkeyPatch.context() as patched, redirect_stdout(out), redirect_stderr(err):
        patched.setattr(sys, "argv", ["scantling", *map(str, words)])
        with pytest.raises(SystemExit) as left:
            cli.main()
    assert isinstance(left.value.code, int)
    return Done(returncode=left.value.code, stdout=out.getvalue(), stderr=err.getvalue())


def run_anew(*words: str | Path, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    """One command, in a process of its own, as a shell begins it."""
    return subprocess.run(
        [COMMAND, *map(str, words)], capture_output=True, text=True, check=False, cwd=cwd
    )


def piece(folder: Path, *, old: str = "", new: str = "") -> Path:
    """The demo in a folder of its own, with one text replaced."""
    folder.mkdir(exist_ok=True)
    text = (DEMO / "piece.toml").read_text(encoding="utf-8")
    assert old in text
    path = folder / "piece.toml"
    path.write_text(
        text.replace(old, new).replace('"../shop.toml"', '"shop.toml"'), encoding="utf-8"
    )
    (folder / "shop.toml").write_bytes((ROOT / "pieces" / "shop.toml").read_bytes())
    return path


def size_of(packet: Path) -> tuple[int, int]:
    """Of its first sheet. [mm, rounded]"""
    first = read_back.pages(packet.read_bytes())[0]
    return round(first.wide / 72 * 25.4), round(first.tall / 72 * 25.4)


def test_the_demo_stops_nothing() -> None:
    done = run("prove", DEMO)  # by its folder; the others are named by their file
    assert (done.returncode, done.stderr) == (CLEAN, "")
    assert done.stdout.rstrip().endswith("Nothing stops the work.")


def test_sizes_that_clash_stop_the_work(tmp_path: Path) -> None:
    done = run("prove", piece(tmp_path, old="{ foot = 1 }", new="{ foot = 2 }"))
    assert done.returncode == HALTED
    assert "halt: " in done.stdout
    assert "piece.toml" in done.stdout


def test_a_faulty_word_is_shown_where_it_stands(tmp_path: Path) -> None:
    done = run("prove", piece(tmp_path, old="wide  = 42 ", new="wied  = 42 "))
    assert done.returncode == HALTED
    assert "piece.toml 21:1" in done.stdout
    assert "^^^^" in done.stdout


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"\x00\x01\xff\xfe", "no text"),
        (b"hello, this is a letter\n", "no piece file"),
        (b"format = 9\n", "newer"),
    ],
)
def test_what_is_no_piece_is_named_in_one_place(tmp_path: Path, content: bytes, says: str) -> None:
    path = tmp_path / "piece.toml"
    path.write_bytes(content)
    done = run("prove", path)
    assert done.returncode == UNREADABLE
    assert says in done.stdout
    assert "piece.toml" in done.stdout
    assert "Traceback" not in done.stdout + done.stderr


def test_a_file_that_is_not_there_is_one_line(tmp_path: Path) -> None:
    done = run("prove", tmp_path / "nowhere")
    assert done.returncode == UNREADABLE
    assert done.stdout.count("\n") == 1


def test_a_shop_that_is_not_there_is_named(tmp_path: Path) -> None:
    path = piece(tmp_path)
    (tmp_path / "shop.toml").unlink()
    done = run("prove", path)
    assert done.returncode == UNREADABLE
    assert "shop.toml" in done.stdout
    assert done.stdout.count("\n") == 1


@pytest.mark.parametrize("words", [("porve", "x"), ("prove",), ("papers", "x", "--sheet", "A3")])
def test_a_wrong_word_is_no_traceback(words: tuple[str, ...]) -> None:
    done = run_anew(*words)
    assert done.returncode == UNREADABLE
    assert "--help" in done.stdout
    assert "Traceback" not in done.stdout + done.stderr


def test_a_piece_is_begun_proven_and_printed(tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    assert run_anew("begin", folder).returncode == CLEAN
    assert run_anew("prove", folder).returncode == CLEAN
    assert run_anew("papers", folder, "--sheet", "A4").returncode == CLEAN
    made = sorted(path.name for path in (folder / "papers").iterdir())
    assert made == [
        "cutting-list.csv",
        "packet.pdf",
        "piece.glb",
        "setting-out.json",
        "templates.pdf",
    ]
    assert size_of(folder / "papers" / "packet.pdf") == (210, 297)
    # a file that only its owner could read would be hidden from a partner and a web server
    files = [folder / "piece.toml", folder / "shop.toml", folder / "papers" / "packet.pdf"]
    assert {path.stat().st_mode & 0o777 for path in files} == {0o644}


def test_a_piece_in_millimetres_is_printed_on_a4_unless_asked(tmp_path: Path) -> None:
    metric = ROOT / "tests" / "pieces" / "metric_cupboard"
    assert run("papers", metric, "--into", tmp_path).returncode == CLEAN
    # ISO 216; where lengths are metric the shops sell A4: common practice
    assert size_of(tmp_path / "packet.pdf") == (210, 297)


def test_papers_of_what_halts_are_written_and_the_halt_is_told_by_the_exit_code(
    tmp_path: Path,
) -> None:
    path = piece(tmp_path, old="{ foot = 1 }", new="{ foot = 2 }")
    done = run("papers", path)
    assert done.returncode == HALTED
    last = done.stdout.rstrip().rpartition("\n")[2]
    assert re.fullmatch(r"NOT TO BE CUT FROM: \d+ findings? halts? the work\.", last)
    assert (tmp_path / "papers" / "packet.pdf").read_bytes().startswith(b"%PDF")


def test_what_is_wrong_in_the_shops_file_is_told_with_the_piece(tmp_path: Path) -> None:
    path = piece(tmp_path)
    shop = tmp_path / "shop.toml"
    shop.write_text(f"{shop.read_text(encoding='utf-8')}\n[chisles]\n", encoding="utf-8")
    done = run("prove", path)
    assert done.returncode == HALTED
    assert "is no word of the shop file" in done.stdout
    assert re.search(r"shop\.toml \d+:2\n", done.stdout)


def test_faults_of_both_files_are_told_at_once_each_with_its_line(tmp_path: Path) -> None:
    path = piece(tmp_path, old="wide  = 42 ", new="wide  = 4 2 ")
    shop = tmp_path / "shop.toml"
    shop.write_text(f"{shop.read_text(encoding='utf-8')}\n[chisles]\n", encoding="utf-8")
    done = run("prove", path)
    assert done.returncode == HALTED
    assert re.search(r"piece\.toml \d+:9\n    wide  = 4 2 ", done.stdout)
    assert re.search(r"shop\.toml \d+:2\n    \[chisles\]\n", done.stdout)


def test_a_piece_begun_in_millimetres_is_metric_throughout(tmp_path: Path) -> None:
    assert run("begin", tmp_path, "--like", "bookcase", "--measure", "mm").returncode == CLEAN
    done = run("prove", tmp_path)
    assert done.returncode == CLEAN
    told = [line for line in done.stdout.split("\n") if line.startswith("  It is ")]
    assert told
    assert not [line for line in told if re.search(r"\d in\b", line)]


def test_an_example_that_is_not_there_in_a_measure_is_told(tmp_path: Path) -> None:
    done = run("begin", tmp_path, "--like", "glaze cupboard", "--measure", "mm")
    assert done.returncode == UNREADABLE
    assert "there are bookcase" in done.stdout


def test_nothing_is_written_over(tmp_path: Path) -> None:
    path = piece(tmp_path)
    kept = path.read_bytes()
    done = run("begin", tmp_path)
    assert done.returncode == UNREADABLE
    assert "nothing was written over" in done.stdout
    assert path.read_bytes() == kept


@pytest.mark.parametrize("words", [("begin",), ("papers", DEMO, "--into")])
def test_a_file_in_the_way_is_one_line(tmp_path: Path, words: tuple[str | Path, ...]) -> None:
    path = tmp_path / "taken"
    path.write_text("mine", encoding="utf-8")
    done = run(*words, path)
    assert done.returncode == UNREADABLE
    assert done.stdout.count("\n") == 1
    assert "Traceback" not in done.stderr
    assert path.read_text(encoding="utf-8") == "mine"


def test_an_unknown_example_is_met_with_the_nearest(tmp_path: Path) -> None:
    done = run("begin", tmp_path / "new", "--like", "glaze cupbord")
    assert done.returncode == UNREADABLE
    assert "glaze cupboard" in done.stdout
    assert not (tmp_path / "new").exists()


def test_the_demo_runs_from_anywhere(tmp_path: Path) -> None:
    done = run_anew("demo", "--once", "--into", tmp_path / "out", cwd=tmp_path)
    assert done.returncode == CLEAN
    # US letter for a piece in inches: 8 1/2 by 11 in
    assert size_of(tmp_path / "out" / "packet.pdf") == (216, 279)


@pytest.mark.parametrize(("foot", "code"), [(1, CLEAN), (2, HALTED)])
def test_a_demo_that_halts_says_so_by_its_exit_code(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, foot: int, code: int
) -> None:
    piece(tmp_path / "glaze_cupboard", old="{ foot = 1 }", new=f"{{ foot = {foot} }}")
    monkeypatch.setattr(cli, "_examples", lambda: tmp_path)
    monkeypatch.setattr(cli, "_papers", lambda *_, **__: [])  # not what is asked here
    assert cli.demo(once=True, into=tmp_path) == code


def test_help_comes_at_once_and_loads_no_kernel() -> None:
    spent, done = [], run_anew("--help")
    for _ in range(3):
        before = by_children()
        done = run_anew("--help")
        spent.append(by_children() - before)
    assert done.returncode == CLEAN
    assert all(word in done.stdout for word in ("begin", "prove", "papers", "look"))
    assert min(spent) < 0.5
    loaded = "import sys, scantling.cli; print('manifold3d' in sys.modules, 'numpy' in sys.modules)"
    told = subprocess.run(
        [sys.executable, "-c", loaded], capture_output=True, text=True, check=True
    )
    assert told.stdout.split() == ["False", "False"]


def test_a_piece_is_not_begun_over_a_shop_of_the_makers_own(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text("# mine\n", encoding="utf-8")
    done = run("begin", tmp_path)
    assert done.returncode == UNREADABLE
    assert str(shop) in done.stdout
    assert shop.read_text(encoding="utf-8") == "# mine\n"
    assert not (tmp_path / "piece.toml").exists()


@pytest.mark.parametrize(
    ("words", "figures", "said", "not_said"),
    [
        ("US", "inch", "Dado", "about 19 thick"),
        ("UK", "mm", "Housing", "Dado"),
    ],
)
def test_words_and_figures_are_for_show_and_no_file_changes(
    tmp_path: Path, words: str, figures: str, said: str, not_said: str
) -> None:
    path = piece(tmp_path)
    before = {each: each.read_bytes() for each in tmp_path.iterdir()}
    into = tmp_path / "papers"
    done = run("papers", path, "--into", into, "--words", words, "--figures", figures)
    assert done.returncode == CLEAN
    text = " ".join(read_back.texts((into / "packet.pdf").read_bytes()))
    assert said in text
    assert not_said not in text
    rows = (into / "cutting-list.csv").read_text(encoding="utf-8")
    assert f",{figures}\n" in rows.replace("\r\n", "\n")
    assert {each: each.read_bytes() for each in before} == before


def test_the_habit_of_the_shop_is_followed_unless_the_command_says_not(tmp_path: Path) -> None:
    # a tongue that leaves no cheek: told with its amounts
    path = piece(tmp_path, old='tenon  = "1 1/4"', new='tenon  = "1/8"')
    shop = tmp_path / "shop.toml"
    shop.write_text(shop.read_text().replace("[habits]", '[habits]\nfigures = "mm"'))
    metric, inches = run("prove", path).stdout, run("prove", path, "--figures", "inch").stdout
    assert " mm" in metric
    assert not re.search(r"It is [\d/ ]+ in\b", metric)
    assert re.search(r"It is [\d/ ]+ in\b", inches)
