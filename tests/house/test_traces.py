"""Nothing in the repository points at one machine or at a place to download from."""

import re
from pathlib import Path

from tests.house.tree import ROOT, texts

# Home, work and temporary folders of whoever wrote it.
FOLDERS = re.compile(r"(?<![\w.:/}])/(?:root|home|work|Users|tmp)/[\w.]|[A-Z]:\\\\?Users")
HOSTS = re.compile(r"(?:pypi|pythonhosted|npmjs|yarnpkg|deb\.debian|conda)\.(?:org|com|io)")
INDEX = re.compile(r"^\s*(?:-i|--(?:extra-)?index-url|--find-links|--trusted-host)\b", re.MULTILINE)
LOCKED = re.compile(r'"resolved":\s*"https?:|^registry\s*=', re.MULTILINE)
TRACES = (FOLDERS, HOSTS, INDEX, LOCKED)


def traces(text: str) -> list[str]:
    return [found.group().strip() for pattern in TRACES for found in pattern.finditer(text)]


def _spared(file: Path) -> bool:
    return file.name == "LICENSE"


def test_no_file_names_a_machine_or_a_download_host() -> None:
    files = {f: f.read_text(errors="replace") for f in texts() if not _spared(f)}
    found = {str(f.relative_to(ROOT)): traces(text) for f, text in files.items()}
    assert {f: said for f, said in found.items() if said} == {}


def test_a_machine_or_a_download_host_is_noticed() -> None:
    # Put together here, so that this file holds no trace itself.
    host, root = "https:" + "//mirror.example", "/"
    for planted in (
        f"see {root}home/somebody/pieces",
        f'ROOT = "{root}work/main"',
        f"open('{root}tmp/x.pdf')",
        "https:" + "//files.python" + "hosted.org/packages/x.whl",
        f"--index-url {host}/simple",
        f"-i {host}/simple",
        f'  "resolved": "{host}/x.tgz",',
        f"registry = {host}",
    ):
        assert traces(planted), planted


def test_plain_words_are_no_trace() -> None:
    for clean in (
        "at work/rest",
        "a/tmp/b",
        "rails and stiles",
        "./home/x",
        "https://example.org/home/x",
    ):
        assert traces(clean) == [], clean
