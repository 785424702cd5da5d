"""Every name a maker can write or read is explained in the glossary."""

import re
from importlib import import_module
from types import ModuleType

from tests.house.tree import ROOT

from scantling.roster import public_modules

ROSTERS = ("joints", "piece", "proofs", "papers")
GLOSSARY = ROOT / "docs" / "glossary.md"


def missing(names: list[str], glossary: str) -> list[str]:
    """Names that do not stand in bold, or as a heading, somewhere in the glossary."""
    plain = glossary.casefold()
    explained = set(re.findall(r"\*\*(.+?)\*\*", plain)) | set(re.findall(r"(?m)^#+ (.+?)$", plain))
    return [name for name in names if name.casefold() not in explained]


def roster_names() -> list[str]:
    folders = (import_module(f"scantling.{name}") for name in ROSTERS)
    return [_title(module) for folder in folders for module in public_modules(folder)]


def _title(module: ModuleType) -> str:
    """The trade name the module answers to: its member's title, else its file name."""
    for value in vars(module).values():
        title = getattr(value, "title", None)
        if (
            isinstance(value, type)
            and value.__module__ == module.__name__
            and isinstance(title, str)
        ):
            return title
    return module.__name__.rpartition(".")[2].replace("_", " ")


def test_every_roster_name_is_in_the_glossary() -> None:
    names = roster_names()
    assert len(names) > 20
    assert missing(names, GLOSSARY.read_text()) == []


def test_a_name_without_a_line_is_noticed() -> None:
    glossary = "**Half lap** (halving): half of each piece.\n\n## housing\n\nHolds a rabbet.\n"
    assert missing(["half lap", "housing", "rabbet"], glossary) == ["rabbet"]
