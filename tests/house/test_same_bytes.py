"""Same input, same bytes: no clock, chance or environment below the command line and the page."""

import ast

from tests.house.tree import SOURCE, modules

TOLD = ("cli.py", "cli_bench.py", "web")  # date and seed enter here and are passed down
FICKLE = {"datetime", "locale", "platform", "random", "secrets", "socket", "time", "uuid"}
FICKLE_CALLS = {"environ", "getcwd", "getenv", "today", "now", "utcnow", "urandom", "id", "hash"}


def fickle(text: str) -> list[str]:
    found = []
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Import):
            found += [a.name for a in node.names if a.name.split(".")[0] in FICKLE]
        elif isinstance(node, ast.ImportFrom):
            if (node.module or "").split(".")[0] in FICKLE - {"datetime"}:
                found.append(str(node.module))
        elif isinstance(node, ast.Attribute) and node.attr in FICKLE_CALLS - {"id", "hash"}:
            found.append(node.attr)
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            found += [node.func.id] * (node.func.id in {"id", "hash"})
    return found


def test_nothing_below_the_page_asks_the_time_or_rolls_dice() -> None:
    below = [m for m in modules() if m.relative_to(SOURCE).parts[0] not in TOLD]
    found = {str(m): fickle(m.read_text()) for m in below}
    assert {m: names for m, names in found.items() if names} == {}


def test_clock_chance_and_environment_are_noticed() -> None:
    planted = """
import random
from time import monotonic
from datetime import date
day = date.today()
home = os.environ["HOME"]
order = sorted(things, key=id)
first = hash("oak")
"""
    assert sorted(fickle(planted)) == ["environ", "hash", "random", "time", "today"]
