"""A bare number is only half a measurement: its unit stands in brackets beside it."""

import ast
import re

from tests.house.tree import (
    arguments,
    fields,
    is_dataclass,
    modules,
    public_functions,
    speaks_of,
)

UNIT = re.compile(r"\[[^\]\d][^\]]*\]")  # [mm], [%], [kg/m³], [-]; [1] is a reference


def without_unit(text: str) -> list[str]:
    tree = ast.parse(text)
    return [*_functions(tree), *_fields(tree, text.splitlines())]


def _functions(tree: ast.Module) -> list[str]:
    found = []
    for name, node in public_functions(tree):
        numbers = [node.returns, *(a.annotation for a in arguments(node))]
        if any(speaks_of(n, "float") for n in numbers) and not UNIT.search(
            ast.get_docstring(node) or ""
        ):
            found.append(name)
    return found


def _fields(tree: ast.Module, lines: list[str]) -> list[str]:
    found = []
    for node in ast.walk(tree):
        if not isinstance(node, ast.ClassDef) or not is_dataclass(node):
            continue
        said_above = UNIT.search(ast.get_docstring(node) or "")
        for line in fields(node):
            around = lines[line.lineno - 2 : line.end_lineno]
            beside = "".join(text.partition("#")[2] for text in around)
            if speaks_of(line.annotation, "float") and not (said_above or UNIT.search(beside)):
                found.append(f"{node.name}.{ast.unparse(line.target)}")
    return found


def test_every_public_float_has_its_unit() -> None:
    missing = {str(m): without_unit(m.read_text()) for m in modules()}
    assert {m: names for m, names in missing.items() if names} == {}


def test_a_float_without_unit_is_noticed() -> None:
    planted = '''
def sag(*, load: float) -> float:
    """How far it hangs; see [1]."""

def droop(*, load: float) -> float:
    """How far it hangs. [mm]"""

class Shelf:
    def bend(self) -> tuple[float, float]:
        """At the middle and the ends."""

    def _private(self) -> float: ...

@dataclass(frozen=True)
class Board:
    length: float
    width: float  # [mm]

@dataclass(frozen=True)
class Room:
    """Air at one end of the year, humidity in [%]."""
    humidity: float
'''
    assert without_unit(planted) == ["sag", "Shelf.bend", "Board.length"]
