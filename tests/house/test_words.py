"""Names say what a thing is; a silenced check says why."""

import ast
import re

from tests.house.tree import modules, tracked

EMPTY_VERBS = ("get_", "calculate_", "compute_", "process_", "handle_")
EMPTY_NOUNS = ("Manager", "Helper", "Handler", "Engine", "Base", "Utils", "Info", "Data")
SILENCED = re.compile(r"#\s*(noqa|type: ?ignore)(?P<rest>.*)")
UNFINISHED = re.compile("T[O]DO|F[I]XME|X[X]X|NotImplemented[E]rror")  # or it finds itself


def empty_names(text: str) -> list[str]:
    found = []
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            theirs = node.name.startswith("__")  # a protocol of the language or a library
            if not theirs and node.name.lstrip("_").startswith(EMPTY_VERBS):
                found.append(node.name)
        elif isinstance(node, ast.ClassDef) and node.name.endswith(EMPTY_NOUNS):
            found.append(node.name)
    return found


def silenced_without_reason(text: str) -> list[str]:
    """Lines that silence a check but have no word after the codes."""
    found = []
    for line in text.splitlines():
        silenced = SILENCED.search(line)
        if silenced and not re.search(r"[\]\d]\s*[-#]+\s*\S", silenced["rest"]):
            found.append(line.strip())
    return found


def test_no_name_is_empty() -> None:
    found = {str(m): empty_names(m.read_text()) for m in modules()}
    assert {m: names for m, names in found.items() if names} == {}


def test_every_silenced_check_says_why() -> None:
    code = [f for f in tracked() if f.suffix == ".py" and f.name != "test_words.py"]
    found = {str(f): silenced_without_reason(f.read_text()) for f in code}
    assert {f: lines for f, lines in found.items() if lines} == {}


def test_nothing_is_left_unfinished() -> None:
    code = [f for f in tracked() if f.suffix in {".py", ".ts", ".svelte"}]
    assert [str(f) for f in code if UNFINISHED.search(f.read_text())] == []


def test_empty_names_are_noticed() -> None:
    planted = "def get_width(): ...\ndef width(): ...\nclass BoardManager: ...\nclass Board: ...\n"
    assert empty_names(planted) == ["get_width", "BoardManager"]


def test_a_silenced_check_without_reason_is_noticed() -> None:
    bare = ["x = 1  # noqa", "x = 1  # noqa: E501", "x = y  # type: ignore[attr-defined]"]
    told = ["x = 1  # noqa: E501 - a table", "x = y  # type: ignore[misc]  # stubs lack it"]
    assert silenced_without_reason("\n".join(bare + told)) == bare


def test_unfinished_work_is_noticed() -> None:
    assert UNFINISHED.search("# {}: later".format("TO" + "DO"))
    assert not UNFINISHED.search("to do so, plane the edge")
