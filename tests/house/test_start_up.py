"""Asking for help costs no geometry kernel, no solver and no page."""

import subprocess
import sys

from tests.spent import by_children

HEAVY = (
    "fastapi", "highspy", "manifold3d", "networkx", "numpy", "pikepdf",
    "pydantic", "shapely", "trimesh", "typst", "uvicorn",
)  # fmt: skip
MOST_SECONDS = 0.5


def heavy(code: str) -> list[str]:
    """Heavy packages loaded once a fresh interpreter has run `code`."""
    told = f"print(*[name for name in {HEAVY!r} if name in sys.modules], file=sys.stderr)"
    before = f"import atexit, sys\natexit.register(lambda: {told})\n"
    words = [sys.executable, "-c", before + code]
    ran = subprocess.run(words, capture_output=True, text=True, check=True)
    return ran.stderr.split()


HELP = "import sys; sys.argv = ['scantling', '--help']; from scantling.cli import main; main()"


def test_importing_the_package_loads_nothing_heavy() -> None:
    assert heavy("import scantling") == []


def test_asking_for_help_loads_nothing_heavy() -> None:
    assert heavy(HELP) == []


def test_help_comes_in_under_half_a_second() -> None:
    taken = []
    for _ in range(5):
        before = by_children()
        subprocess.run([sys.executable, "-c", HELP], capture_output=True, check=True)
        taken.append(by_children() - before)
    assert min(taken) < MOST_SECONDS


def test_a_heavy_import_is_noticed() -> None:
    assert heavy("import numpy") == ["numpy"]
    assert "manifold3d" in heavy("import manifold3d")
