"""The commands that are promised are there, and tell what they would run."""

import os
import re
import subprocess

import pytest
from tests.house.tree import ROOT

MAKEFILE = (ROOT / "Makefile").read_text()
PROMISED = re.findall(r"(?m)^# make (\w+) ", MAKEFILE)


def recipe(*words: str) -> str:
    """What make would run, were nothing set up yet."""
    asked = ["make", "--dry-run", "--no-print-directory", "--always-make", *words]
    told = {"PATH": os.environ["PATH"]}  # not the flags of a make that runs these tests
    ran = subprocess.run(asked, cwd=ROOT, env=told, capture_output=True, text=True, check=True)
    return ran.stdout


def test_the_six_commands_are_promised() -> None:
    assert PROMISED == ["demo", "test", "check", "slow", "bench", "approve"]


@pytest.mark.parametrize("target", PROMISED)
def test_each_command_sets_itself_up(target: str) -> None:
    assert "--require-hashes -r requirements/build.txt -r requirements/run.txt" in recipe(target)


def test_the_demo_ends_only_if_asked() -> None:
    assert recipe("demo").rstrip().endswith("scantling demo")
    assert recipe("demo", "DEMO_ONCE=0").rstrip().endswith("scantling demo")
    assert recipe("demo", "DEMO_ONCE=1").rstrip().endswith("scantling demo --once")


def test_slow_tests_run_only_if_asked() -> None:
    assert '-m "not slow"' in recipe("test")
    assert "-m slow" in recipe("slow")
    assert "-m slow" not in recipe("check")


def test_ci_runs_the_tests() -> None:
    script = ROOT / ".ci" / "run"
    assert script.stat().st_mode & 0o111
    assert script.read_text().splitlines()[-1] == "make test"
