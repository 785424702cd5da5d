"""Two numbers in a row can be swapped unseen, and data that changes can change behind you."""

import ast

from tests.house.tree import arguments, fields, is_dataclass, modules, public_functions, speaks_of

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
    """Public dataclasses that can be changed, or take two or more plain numbers by position."""
    found = []
    for node in ast.walk(ast.parse(text)):
        line = is_dataclass(node) if isinstance(node, ast.ClassDef) else None
        if line is None or not isinstance(node, ast.ClassDef) or node.name.startswith("_"):
            continue
        words = ast.unparse(line)
        numbers = sum(_is_number(f.annotation) for f in fields(node))
        if "frozen=True" not in words or (numbers > 1 and "kw_only=True" not in words):
            found.append(node.name)
    return found


def _is_number(annotation: ast.expr | None) -> bool:
    return isinstance(annotation, ast.Name) and speaks_of(annotation, *NUMBER)


def test_two_numbers_are_passed_by_name() -> None:
    found = {str(m): swappable(m.read_text()) for m in modules()}
    assert {m: names for m, names in found.items() if names} == {}


def test_data_between_rooms_is_frozen_and_its_numbers_are_named() -> None:
    found = {str(m): loose(m.read_text()) for m in modules()}
    assert {m: names for m, names in found.items() if names} == {}


def test_numbers_by_position_are_noticed() -> None:
    planted = """
def one(length: Fraction, name: str): ...
def two(length: Fraction, width: Fraction): ...
def named(*, length: Fraction, width: float): ...
class Board:
    def cut(self, at: Fraction, count: int, *, kerf: float): ...
"""
    assert swappable(planted) == ["two", "Board.cut"]


def test_changeable_data_is_noticed() -> None:
    planted = """
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
    assert loose(planted) == ["Plain", "Two"]
