"""Two numbers in a row can be swapped unseen, and data that changes can change behind you."""

import ast
from collections.abc import Iterator
from pathlib import Path

from tests.house.tree import (
    SOURCE,
    arguments,
    fields,
    is_dataclass,
    modules,
    public_functions,
    speaks_of,
)

NUMBER = ("int", "float", "Fraction")


def swappable(text: str) -> list[str]:
    """Public functions that take two or more plain numbers by position."""
    found = []
    for name, node in public_functions(ast.parse(text)):
        by_position = arguments(node)[: -len(node.args.kwonlyargs) or None]
        if sum(_is_number(a.annotation) for a in by_position) > 1:
            found.append(name)
    return found


def loose(text: str) -> list[str]:
    """Public dataclasses that take two or more plain numbers by position."""
    return [
        name
        for name, node, line in _dataclasses(text)
        if sum(_is_number(f.annotation) for f in fields(node)) > 1 and "kw_only=True" not in line
    ]


def changeable(text: str) -> list[str]:
    """Public dataclasses that are not frozen."""
    return [name for name, _, line in _dataclasses(text) if "frozen=True" not in line]


def lent(text: str, names: set[str]) -> set[str]:
    """Those of the names that the module imports."""
    froms = (n for n in ast.walk(ast.parse(text)) if isinstance(n, ast.ImportFrom))
    return {f"{n.module}.{alias.name}" for n in froms for alias in n.names} & names


def _dataclasses(text: str) -> Iterator[tuple[str, ast.ClassDef, str]]:
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            line = is_dataclass(node)
            if line is not None:
                yield node.name, node, ast.unparse(line)


def _room(module: Path) -> str:
    return module.relative_to(SOURCE).with_suffix("").parts[0]


def _dotted(module: Path) -> str:
    return ".".join(module.relative_to(SOURCE.parent).with_suffix("").parts)


def _is_number(annotation: ast.expr | None) -> bool:
    return isinstance(annotation, ast.Name) and speaks_of(annotation, *NUMBER)


def test_two_numbers_are_passed_by_name() -> None:
    found = {str(m): swappable(m.read_text()) for m in modules()}
    assert {m: names for m, names in found.items() if names} == {}


def test_the_numbers_of_a_dataclass_are_passed_by_name() -> None:
    found = {str(m): loose(m.read_text()) for m in modules()}
    assert {m: names for m, names in found.items() if names} == {}


def test_data_that_can_be_changed_stays_in_its_room() -> None:
    owned = {(_room(m), f"{_dotted(m)}.{n}") for m in modules() for n in changeable(m.read_text())}
    for module in modules():
        foreign = {name for room, name in owned if room != _room(module)}
        assert lent(module.read_text(), foreign) == set(), module


def test_numbers_by_position_are_noticed() -> None:
    planted = """
def one(length: Fraction, name: str): ...
def two(length: Fraction, width: Fraction): ...
def named(*, length: Fraction, width: float): ...
class Board:
    def cut(self, at: Fraction, count: int, *, kerf: float): ...
"""
    assert swappable(planted) == ["two", "Board.cut"]


DATA = """
@dataclass
class Plain:
    name: str
@dataclass
class _OwnNotes:
    name: str
@dataclass(frozen=True)
class Two:
    length: Fraction
    width: Fraction
@dataclass(frozen=True)
class One:
    length: Fraction
    name: str
@dataclass(frozen=True, kw_only=True)
class Named:
    length: Fraction
    width: Fraction
"""


def test_swappable_and_changeable_data_is_noticed() -> None:
    assert loose(DATA) == ["Two"]
    assert changeable(DATA) == ["Plain"]


def test_changeable_data_in_a_foreign_room_is_noticed() -> None:
    planted = "from scantling.sizes.shape import Plain, Named\n"
    assert lent(planted, {"scantling.sizes.shape.Plain"}) == {"scantling.sizes.shape.Plain"}
    assert lent(planted, {"scantling.sizes.other.Plain"}) == set()
