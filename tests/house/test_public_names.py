"""The public face: six names, and every signature behind them, read and approved."""

import inspect
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType, SimpleNamespace

from tests.house.tree import ROOT

import scantling

APPROVED = ROOT / "tests" / "house" / "approved_names.txt"


def face(names: dict[str, object]) -> str:
    """One line for each name, method and attribute a caller may use."""
    return "".join(
        f"{line}\n" for name, value in sorted(names.items()) for line in _of(name, value)
    )


def _of(name: str, value: object) -> Iterator[str]:
    if inspect.isclass(value):
        yield f"class {name}{_signature(value)}"
        for part in sorted(n for n in dir(value) if not n.startswith("_")):
            yield from _part(f"{name}.{part}", inspect.getattr_static(value, part))
    elif callable(value):
        yield f"{name}{_signature(value)}"
    else:
        yield f"{name}: {type(value).__name__}"


def _part(name: str, value: object) -> Iterator[str]:
    if isinstance(value, property):
        yield f"  {name}{_signature(value.fget).removeprefix('(self)') if value.fget else ''}"
    elif isinstance(value, classmethod | staticmethod):
        yield f"  {name}{_signature(value.__func__)}"
    elif callable(value) and not inspect.isclass(value):
        yield f"  {name}{_signature(value)}"
    else:
        yield f"  {name}"


def _signature(value: Callable[..., object]) -> str:
    return str(inspect.signature(value))


def exported(module: ModuleType | SimpleNamespace) -> dict[str, object]:
    return {name: getattr(module, name) for name in module.__all__}


def test_the_public_face_is_the_approved_one(approved: Callable[[Path, bytes], None]) -> None:
    approved(APPROVED, face(exported(scantling)).encode())


def test_the_public_face_is_six_names() -> None:
    six = ["Finding", "PAPERS", "Piece", "SettingOut", "read", "set_out"]
    assert sorted(scantling.__all__) == sorted(dir(scantling)) == six


def test_a_changed_signature_is_noticed() -> None:
    def narrow(text: str) -> int:
        return len(text)

    def wide(text: str, *, sheet: str = "A4") -> int:
        return len(text + sheet)

    assert face({"read": narrow}) == "read(text: str) -> int\n"
    assert face({"read": wide}) == "read(text: str, *, sheet: str = 'A4') -> int\n"
