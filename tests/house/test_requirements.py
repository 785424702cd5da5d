"""What is installed is what was locked: every package pinned and every pin hashed."""

import re
import tomllib
from pathlib import Path

import pytest
from tests.house.tree import ROOT

LOCKED = sorted((ROOT / "requirements").glob("*.txt"))
PIN = re.compile(r"^(?P<name>[\w.\[\],-]+)==(?P<rest>\S+( ;[^\\]*)? \\)$")


def unlocked(text: str) -> list[str]:
    """Requirements that are not `name==version` with at least one hash."""
    entries = re.split(r"\n(?=[^\s#])", "\n" + re.sub(r"(?m)^\s*#.*\n", "", text))
    found = []
    for entry in (e.strip() for e in entries if e.strip()):
        first, _, rest = entry.partition("\n")
        if not PIN.match(first) or "--hash=sha256:" not in rest:
            found.append(first)
    return found


def names(text: str) -> set[str]:
    return {line.partition("==")[0] for line in text.splitlines() if re.match(r"[\w.-]+==", line)}


@pytest.mark.parametrize("file", LOCKED, ids=lambda file: file.name)
def test_every_requirement_is_pinned_and_hashed(file: Path) -> None:
    assert unlocked(file.read_text()) == []


def test_what_the_package_asks_for_is_locked() -> None:
    asked = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["dependencies"]
    wanted = {re.split(r"[><=~ ]", line)[0] for line in asked}
    listed = {
        line.split()[0].partition(">")[0]
        for line in (ROOT / "requirements/run.in").read_text().splitlines()
        if not line.startswith("#")
    }
    assert wanted == listed
    assert wanted <= names((ROOT / "requirements/run.txt").read_text())


def test_tests_run_against_the_versions_that_are_shipped() -> None:
    pins = {}
    for name in ("run", "dev", "slow"):
        text = (ROOT / f"requirements/{name}.txt").read_text()
        pins[name] = set(re.findall(r"^\S+==\S+(?: ;[^\\]*)?", text, re.MULTILINE))
    assert pins["run"] <= pins["dev"] <= pins["slow"]


def test_a_loose_requirement_is_noticed() -> None:
    planted = (
        "oak==1.0 \\\n    --hash=sha256:aa\n    # via elm\n"
        "ash>=2 \\\n    --hash=sha256:bb\n"
        "yew==3.0\n"
        'fir==4.0 ; python_version < "3.12" \\\n    --hash=sha256:cc\n'
    )
    assert unlocked(planted) == ["ash>=2 \\", "yew==3.0"]
