"""Pages of the manual that are written from the code: glossary and findings.

`make approve` rewrites them; a test holds them against what this module makes.
"""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator, Mapping
from importlib import import_module
from pathlib import Path

from scantling.roster import public_modules
from scantling.wording import pairs

ROOT = Path(__file__).parents[1]
SOURCES = ROOT / "src" / "scantling"
WORDS = ROOT / "tools" / "glossary.toml"
ROSTERS = {"joints": "joint", "piece": "form", "proofs": "proof", "papers": "paper"}
# where a code is told by its last word alone, the room stands before it
SHORT = {"piece": ("halt", "fault", "note"), "shop": ("fault", "note"), "stock": ("fault", "note")}
WORD = re.compile(r"[a-z]+(-[a-z]+)*")
CODE = re.compile(r"[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*")


def glossary() -> str:
    """Every word, one line each, in alphabetical order."""
    words = tomllib.loads(WORDS.read_text(encoding="utf-8"))["words"]
    lines = {word: f"**{word}**: {says}" for word, says in words.items()}
    for folder, kind in ROSTERS.items():
        for title, says in _members(folder):
            own = f" {words[title]}" if title in words else ""
            lines[title] = f"**{title}** ({kind}): {says}{own}"
    found = "\n".join(f"- {lines[word]}" for word in sorted(lines, key=str.casefold))
    head = (
        "# Glossary\n\nOne word per thing. Joints, forms, proofs and papers are told in the words\n"
        "of their own files; the rest stands in `tools/glossary.toml`. Written by `make approve`.\n"
    )
    return f"{head}\n{found}\n{_two_countries()}"


def _two_countries() -> str:
    """Words that are shown as the US or as the UK says them."""
    rows = "\n".join(f"| {us} | {uk} |" for us, uk in sorted(pairs()))
    return (
        "\n## Two countries, two words\n\nShown as the maker has it in `[habits]` of his shop: "
        '`words = "US"` or `"UK"`. Where\nhe is silent, who reads inches is shown those of the US. '
        "Names in his file never change.\n\n| US | UK |\n|---|---|\n" + rows + "\n"
    )


def _members(folder: str) -> Iterator[tuple[str, str]]:
    for module in public_modules(import_module(f"scantling.{folder}")):
        for value in vars(module).values():
            title = getattr(value, "title", None)
            own = isinstance(value, type) and value.__module__ == module.__name__
            if own and isinstance(title, str):
                yield title, (value.__doc__ or "").partition("\n")[0]


def codes() -> Mapping[str, str]:
    """Every code of a finding, and the file that tells it."""
    rooms = {"page", "piece", "sizes", "proofs", "shop", "record", "stock", "method"}
    rooms |= {"doors", "drawers", "kickers", "year"}  # what the year does to fits
    rooms |= {title.replace(" ", "-") for title, _ in _members("joints")}
    found: dict[str, str] = {}
    for path in sorted(SOURCES.rglob("*.py")):
        name = str(path.relative_to(SOURCES))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            for code in _told(node, name.partition("/")[0], rooms):
                found.setdefault(code, name)
    return found


def _told(node: ast.AST, room: str, rooms: set[str]) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        text = node.value
        if CODE.fullmatch(text) and text.partition(".")[0] in rooms and not _is_file(text):
            yield text
    elif isinstance(node, ast.Call) and node.args:
        name = getattr(node.func, "id", getattr(node.func, "attr", ""))
        first = node.args[0]
        word = first.value if isinstance(first, ast.Constant) else None
        if name in SHORT.get(room, ()) and isinstance(word, str) and WORD.fullmatch(word):
            yield f"{room}.{word}"


def _is_file(text: str) -> bool:
    return text.endswith((".toml", ".csv", ".glb", ".jsonl", ".json"))


def untested() -> tuple[str, ...]:
    """Codes that no test names, whole or by their last word in quotes."""
    tests = "\n".join(
        path.read_text(encoding="utf-8")
        for pattern in ("*.py", "*.toml")
        for path in sorted((ROOT / "tests").rglob(pattern))
    )
    return tuple(
        code for code in codes() if code not in tests and f'"{code.partition(".")[2]}"' not in tests
    )


def findings() -> str:
    """Every code, by the room that tells it."""
    rows = [f"| `{code}` | `{name}` |" for code, name in sorted(codes().items())]
    head = (
        "# Findings\n\nWhat scantling may find wrong with a piece. The code is stable; the words,\n"
        "the place, the figure and the cure come with each finding. Codes that a joint makes up\n"
        "from a word of its own (`shiplap.jams`) are not listed. Written by `make approve`.\n\n"
        "| code | told in |\n|---|---|\n"
    )
    return head + "\n".join(rows) + "\n"
