"""The tree the house rules look at."""

import ast
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "scantling"


class Callee(NamedTuple):
    """A function that others may call, under the name they call it by."""

    name: str
    node: ast.FunctionDef | ast.AsyncFunctionDef


def tracked() -> list[Path]:
    """Every file that is, or is about to be, part of the repository."""
    words = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(words, cwd=ROOT, capture_output=True, check=True).stdout
    files = {ROOT / name for name in listed.decode().split("\0") if name}
    return sorted(file for file in files if file.is_file())


def texts() -> list[Path]:
    """Those of them that can be read."""
    return [file for file in tracked() if b"\0" not in file.read_bytes()[:8000]]


def modules() -> list[Path]:
    """The modules of the package."""
    return sorted(SOURCE.rglob("*.py"))


def public_functions(tree: ast.Module) -> Iterator[Callee]:
    """Functions and methods without a leading underscore, in classes without one."""
    yield from _functions(tree.body, "")


def _functions(body: list[ast.stmt], within: str) -> Iterator[Callee]:
    for node in body:
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            if not node.name.startswith("_"):
                yield Callee(within + node.name, node)
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from _functions(node.body, f"{within}{node.name}.")


def arguments(node: ast.FunctionDef | ast.AsyncFunctionDef) -> list[ast.arg]:
    """All named arguments, positional ones first."""
    given = node.args
    return [*given.posonlyargs, *given.args, *given.kwonlyargs]


def speaks_of(annotation: ast.expr | None, *names: str) -> bool:
    """Whether one of the types `names` occurs in the annotation."""
    if annotation is None:
        return False
    return any(isinstance(n, ast.Name) and n.id in names for n in ast.walk(annotation))


def is_dataclass(node: ast.ClassDef) -> ast.expr | None:
    """The `@dataclass` line of the class, if it has one."""
    for line in node.decorator_list:
        name = line.func if isinstance(line, ast.Call) else line
        if isinstance(name, ast.Name) and name.id == "dataclass":
            return line
    return None


def fields(node: ast.ClassDef) -> list[ast.AnnAssign]:
    """The annotated lines of a class body."""
    return [line for line in node.body if isinstance(line, ast.AnnAssign)]
