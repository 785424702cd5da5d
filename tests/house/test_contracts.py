"""Who may import whom, and that each contract of pyproject.toml notices a planted import.

Every plant is made in a copy of the package, tried, and taken out again.
"""

import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from tests.house.tree import ROOT

LINT = Path(sys.executable).with_name("lint-imports")
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"]
CONTRACTS: dict[str, dict[str, Any]] = {c["id"]: c for c in SETTINGS["contracts"]}

LINES = [[room.strip() for room in line.split("|")] for line in CONTRACTS["layers"]["layers"]]
ROOMS = [room for line in LINES for room in line]
UPWARD = [(low, high) for above, below in pairwise(LINES) for low in below for high in above]
SIDEWAYS = [(one, other) for line in LINES for one, other in pairwise([*line, line[0]])]
WRONG = UPWARD + [pair for pair in SIDEWAYS if pair[0] != pair[1]]

MEMBERS = {  # contract: the folder, the modules its members share
    name: (
        contract["modules"][0].split(".")[1],
        sorted({line.rpartition("> ")[2].split(".")[2] for line in contract["ignore_imports"]}),
    )
    for name, contract in CONTRACTS.items()
    if contract["type"] == "independence"
}
DOORS = {  # contract: the outside packages, the rooms that may know them
    "kernel": (["manifold3d", "OCP"], {"solids"}),
    "solver": (["highspy", "ortools"], {"sizes", "stock", "method"}),
    "framework": (["fastapi", "starlette", "uvicorn"], {"web"}),
    "typesetter": (["typst", "pikepdf"], {"papers"}),
}


class House:
    """A copy of the package to plant in."""

    def __init__(self, root: Path) -> None:
        shutil.copytree(ROOT / "src", root / "src", ignore=shutil.ignore_patterns("__pycache__"))
        shutil.copy(ROOT / "pyproject.toml", root)
        self.root = root
        self.package = root / "src" / "scantling"

    def broken(self, *contracts: str) -> str:
        """What the check says of those contracts, or of all; empty if they are kept."""
        asked = [word for contract in contracts for word in ("--contract", contract)]
        words = [str(LINT), "--no-cache", "--no-logo", *asked]
        told = {"PATH": "/usr/bin", "PYTHONPATH": str(self.package.parent)}
        ran = subprocess.run(
            words, cwd=self.root, env=told, capture_output=True, text=True, check=False
        )
        return "" if ran.returncode == 0 else ran.stdout

    def module(self, room: str) -> Path:
        """The file that is the room, or the one that makes its folder a package."""
        file = self.package / f"{room}.py"
        return file if file.exists() else self.package / room / "__init__.py"

    @contextmanager
    def planted(self, *plants: tuple[Path, str]) -> Iterator[None]:
        """Lines added to modules, new or old, for the time being."""
        before = {file: file.read_text() if file.exists() else None for file, _ in plants}
        try:
            for file, line in plants:
                file.write_text((before[file] or '"""Planted."""\n') + f"\n{line}\n")
            yield
        finally:
            for file, text in before.items():
                if text is None:
                    file.unlink()
                else:
                    file.write_text(text)


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> House:
    return House(tmp_path_factory.mktemp("house"))


def test_the_house_keeps_its_contracts(house: House) -> None:
    assert house.broken() == ""


@pytest.fixture(scope="module")
def turned_over(house: House) -> str:
    """What the check says when every wrong import between neighbouring lines is planted."""
    lines: dict[Path, str] = {}
    for low, high in WRONG:
        file = house.module(low)
        lines[file] = lines.get(file, "") + f"import scantling.{high}\n"
    with house.planted(*lines.items()):
        return house.broken("layers")


@pytest.mark.parametrize(("low", "high"), WRONG)
def test_an_import_upward_or_sideways_is_noticed(turned_over: str, low: str, high: str) -> None:
    assert f"scantling.{low} -> scantling.{high} " in turned_over


def test_an_import_inside_a_function_is_noticed(house: House) -> None:
    line = "def later() -> None:\n    from scantling.web import page\n"
    with house.planted((house.module("joints"), line)):
        assert "scantling.joints -> scantling.web" in house.broken("layers")


def test_a_module_in_no_layer_is_noticed(house: House) -> None:
    with house.planted((house.package / "attic.py", "")):
        assert "attic" in house.broken("layers")


@pytest.mark.parametrize("contract", MEMBERS)
def test_a_member_that_knows_another_is_noticed(house: House, contract: str) -> None:
    folder, _ = MEMBERS[contract]
    there, name = house.package / folder, f"scantling.{folder}"
    with house.planted(
        (there / "planted_one.py", f"import {name}.planted_two"), (there / "planted_two.py", "")
    ):
        assert f"{name}.planted_one -> {name}.planted_two" in house.broken(contract)


@pytest.mark.parametrize("contract", MEMBERS)
def test_what_members_share_knows_no_member(house: House, contract: str) -> None:
    folder, shared = MEMBERS[contract]
    there, name = house.package / folder, f"scantling.{folder}"
    plants = [(there / "planted.py", "")]
    for common in shared:
        own = there / common / "__init__.py"
        module = own if own.parent.is_dir() else there / f"{common}.py"
        plants.append((module, f"import {name}.planted"))
    with house.planted(*plants):
        said = house.broken(contract)
    assert [c for c in shared if f"{name}.{c} -> {name}.planted " not in said] == []


@pytest.mark.parametrize("contract", MEMBERS)
def test_what_members_share_is_there_and_every_other_is_a_member(contract: str) -> None:
    folder, shared = MEMBERS[contract]
    found = (ROOT / "src/scantling" / folder).glob("_*")
    there = {f.stem for f in found} - {"__init__", "__pycache__"}
    assert set(shared) == there


@pytest.mark.parametrize("contract", DOORS)
def test_only_the_rooms_at_the_door_may_look_out(house: House, contract: str) -> None:
    outside, may = DOORS[contract]
    assert CONTRACTS[contract]["forbidden_modules"] == outside
    lines = "\n".join(f"import {package}" for package in outside)
    with house.planted(*((house.module(room), lines) for room in ROOMS)):
        said = house.broken(contract)
    for package in outside:
        noticed = {room for room in ROOMS if f"scantling.{room} -> {package} " in said}
        assert noticed == set(ROOMS) - may


def test_a_replay_that_knows_its_planner_is_noticed(house: House) -> None:
    planner = CONTRACTS["replay"]["forbidden_modules"]
    lines = "\n".join(f"import {module}" for module in planner)
    with house.planted((house.package / "stock" / "replay.py", lines)):
        said = house.broken("replay")
    assert [
        module for module in planner if f"scantling.stock.replay -> {module} " not in said
    ] == []


def test_a_planner_has_no_file_that_its_replay_may_read() -> None:
    """All of the room but what a board, a job and a plan are, and how lists of them are read."""
    forbidden = {name.rpartition(".")[2] for name in CONTRACTS["replay"]["forbidden_modules"]}
    there = {file.stem for file in (ROOT / "src" / "scantling" / "stock").glob("*.py")}
    known = {"__init__", "boards", "job", "plan", "replay"}
    lists = {"_defects", "_rows", "merchant", "survey"}
    assert there - known - lists == forbidden


def test_carrying_out_an_order_that_knows_its_planner_is_noticed(house: House) -> None:
    planner = CONTRACTS["carry-out"]["forbidden_modules"]
    lines = "\n".join(f"import {module}" for module in planner)
    with house.planted((house.package / "method" / "carry_out.py", lines)):
        said = house.broken("carry-out")
    assert [m for m in planner if f"scantling.method.carry_out -> {m} " not in said] == []


def test_no_planner_of_the_order_may_be_read_by_what_carries_it_out() -> None:
    """All of the room but the job and what steps through an order."""
    forbidden = {name.rpartition(".")[2] for name in CONTRACTS["carry-out"]["forbidden_modules"]}
    there = {file.stem for file in (ROOT / "src" / "scantling" / "method").glob("*.py")}
    apart = {name.rpartition(".")[2] for name in CONTRACTS["carry-out"]["source_modules"]}
    assert there - {"__init__", "job", "captured"} - apart == forbidden
