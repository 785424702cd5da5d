"""Rosters: a folder is its own list of members."""

import importlib
import itertools
import sys
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from types import ModuleType
from typing import ClassVar, Protocol

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import InternalError, UnknownNameError
from scantling.roster import members, nearest, plain_name, public_modules

Folder = Callable[..., ModuleType]
_numbers = itertools.count()

SHARED = """
from typing import ClassVar

class Joint:
    title: ClassVar[str]
"""
LAP = """
from shop._joint import Joint

class _Cheek(Joint):
    title = "cheek"

class HalfLap(Joint):
    title = "half lap"
"""
DOVETAIL = """
from dataclasses import dataclass
from shop._joint import Joint
from shop.half_lap import HalfLap as Other

@dataclass(frozen=True)
class Dovetail(Joint):
    title = "half-blind dovetail"
    tails: int = 3
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Folder]:
    """Makes a package of the given modules; `shop` in their text is its name."""
    monkeypatch.syspath_prepend(str(tmp_path))
    made: list[str] = []

    def make(**modules: str) -> ModuleType:
        name = f"planted_{next(_numbers)}_joints"
        made.append(name)
        (tmp_path / name).mkdir()
        (tmp_path / name / "__init__.py").touch()
        for module, text in modules.items():
            (tmp_path / name / f"{module}.py").write_text(text.replace("shop", name))
        importlib.invalidate_caches()
        return importlib.import_module(name)

    yield make
    for module in [each for each in sys.modules if each.startswith(tuple(made))]:
        del sys.modules[module]


def shared(package: ModuleType) -> type:
    base = importlib.import_module(f"{package.__name__}._joint").Joint
    assert isinstance(base, type)
    return base


@pytest.fixture
def joints(folder: Folder) -> Mapping[str, type]:
    package = folder(_joint=SHARED, half_lap=LAP, dovetail=DOVETAIL)
    return members(package, base=shared(package))


class Titled(Protocol):
    """What a member offers that inherits from nothing."""

    title: ClassVar[str]


# ---------------------------------------------------------------------------------- the folder


def test_members_are_listed_by_title_whatever_their_files_are_called(
    folder: Folder,
) -> None:
    package = folder(_joint=SHARED, a=LAP.replace("half lap", "rabbet"), b=LAP)
    found = members(package, base=shared(package))
    assert list(found) == ["half lap", "rabbet"]
    assert [each.__module__.rpartition(".")[2] for each in found.values()] == ["b", "a"]


def test_imported_private_and_shared_classes_are_no_members(joints: Mapping[str, type]) -> None:
    assert {title: each.__name__ for title, each in joints.items()} == {
        "half lap": "HalfLap",
        "half-blind dovetail": "Dovetail",
    }


def test_new_file_is_all_a_new_member_needs(folder: Folder) -> None:
    without = folder(_joint=SHARED, half_lap=LAP)
    with_it = folder(_joint=SHARED, half_lap=LAP, dovetail=DOVETAIL)
    assert len(members(without, base=shared(without))) == 1
    assert len(members(with_it, base=shared(with_it))) == 2


def test_roster_is_read_once_and_cannot_be_altered(folder: Folder) -> None:
    package = folder(_joint=SHARED, half_lap=LAP)
    found = members(package, base=shared(package))
    assert members(package, base=shared(package)) is found
    assert not hasattr(found, "__setitem__")


def test_member_of_a_protocol_is_known_by_its_title(folder: Folder) -> None:
    package = folder(
        lap="""
from dataclasses import dataclass
from enum import StrEnum

class Side(StrEnum):  # a str has a method called title
    LEFT = "left"

@dataclass(frozen=True)
class Sheet:
    title: str = "a field is not a trade name"

class Lap:
    title = "lap"
"""
    )
    assert list(members(package, base=Titled)) == ["lap"]


def test_what_members_derive_from_is_no_member_itself(folder: Folder) -> None:
    package = folder(lap=SHARED + "class Lap(Joint):\n    title = 'lap'")
    base = importlib.import_module(f"{package.__name__}.lap").Joint
    assert list(members(package, base=base)) == ["lap"]


def test_folder_without_members_is_an_empty_roster(folder: Folder) -> None:
    assert dict(members(folder(_joint=SHARED), base=Titled)) == {}


def test_public_modules_come_by_file_name(folder: Folder) -> None:
    package = folder(_joint=SHARED, rule="", awl="", gauge="")
    names = [module.__name__.rpartition(".")[2] for module in public_modules(package)]
    assert names == ["awl", "gauge", "rule"]


# ---------------------------------------------------------------------------- broken by a bug


@pytest.mark.parametrize(
    ("modules", "message"),
    [
        ({"empty": "x = 1"}, "empty should hold one Joint, has none"),
        ({"two": LAP + "\nclass Rabbet(Joint):\n    title = 'rabbet'"}, "has HalfLap, Rabbet"),
        ({"bare": LAP.replace('title = "half', 'name = "half')}, "HalfLap needs a title"),
        ({"loud": LAP.replace('"half lap"', '"Half lap"')}, "HalfLap needs a title"),
        ({"blank": LAP.replace('"half lap"', '" "')}, "HalfLap needs a title"),
        ({"half_lap": LAP, "twin": LAP}, "twin and .*half_lap both answer to 'half lap'"),
        ({"a": LAP, "b": LAP.replace("half lap", "half-lap")}, "both answer to 'half-lap'"),
    ],
)
def test_folder_that_breaks_the_rule_is_a_bug(
    folder: Folder, modules: dict[str, str], message: str
) -> None:
    package = folder(_joint=SHARED, **modules)
    with pytest.raises(InternalError, match=message):
        members(package, base=shared(package))


def test_module_that_cannot_be_imported_is_not_passed_over(folder: Folder) -> None:
    package = folder(_joint=SHARED, half_lap="import no_such_module_anywhere")
    with pytest.raises(ModuleNotFoundError, match="no_such_module_anywhere"):
        members(package, base=shared(package))


# ----------------------------------------------------------------------------------- the names


@pytest.mark.parametrize(
    "spelling",
    ["half-blind dovetail", "half blind dovetail", "Half_Blind  Dovetail", " half‑blind-dovetail "],
)
def test_name_is_found_in_any_spelling(joints: Mapping[str, type], spelling: str) -> None:
    assert joints[spelling].__name__ == "Dovetail"
    assert spelling in joints


def test_unknown_name_is_refused_with_the_nearest(joints: Mapping[str, type]) -> None:
    with pytest.raises(UnknownNameError) as caught:
        joints["halflap"]
    assert str(caught.value) == "no joint is called 'halflap'; perhaps half lap"
    assert isinstance(caught.value, KeyError)
    assert joints.get("biscuit") is None
    assert "biscuit" not in joints


NAMES = ("half lap", "half-blind dovetail", "sliding dovetail", "rabbet", "shelf pins")


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("halflap", "half lap"),
        ("Half-Lap", "half lap"),
        ("half blnd dovetail", "half-blind dovetail"),
        ("slidng dovetial", "sliding dovetail"),
        ("rebbat", "rabbet"),
        ("pins", "shelf pins"),
        ("dovetail", None),  # two of them: a guess would be wrong half the time
        ("glue", None),
        ("", None),
        ("-", None),
        ("rabbet " * 5000, None),
    ],
)
def test_nearest_name_is_offered_only_when_it_is_near(word: str, meant: str | None) -> None:
    assert nearest(word, NAMES) == meant
    assert nearest(word, reversed(NAMES)) == meant


def test_nothing_is_near_where_nothing_is_known() -> None:
    assert nearest("rabbet", []) is None


@given(name=st.text("ab-_ \t", max_size=12))
def test_plain_name_of_a_plain_name_is_itself(name: str) -> None:
    plain = plain_name(name)
    assert plain_name(plain) == plain
    assert plain_name(name.replace("-", "_").upper()) == plain
    assert "  " not in plain
