"""The outer form of the file, held against Python's own reader of the same language.

That reader stops at the first fault and knows no places; what it accepts we must read alike,
what it refuses we must find at fault.
"""

import math
import random
import re
import tomllib
from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.piece.damage import damaged

from scantling.findings import Finding, Place
from scantling.piece._file.text import Key, Node, Row, Sort, Source, Table, Written
from scantling.piece._file.toml import document
from scantling.roster import plain_name

SAMPLE = '''# every way of the language
a.b.c = 1
a.b.d = 2
"x y".zz = [1, [2, 3], {q = "\\u00bd \\U0001d11e", 'r s' = -1.5e3},] # tail
empty = ""
rows1 = [
  "a", # first
  'b',

  { c.d = true, c.e = false }
]
t = """
one \\
  two "quoted" ""\\"
"""
l = \'\'\'lit 'x' \'\'\'
odd = """""two quotes"""""
[[rows]]
n = 0x1F
o = 0o17
b = 0b11
d = 1979-05-27T07:32:00.5Z
e = 1979-05-27 07:32:00+01:00
f = 07:32:00
[rows.sub]
k = true
[[rows]]
n = -inf
m = 1_000
[rows.sub.deep]
k = +0.5e-3
[ spaced . "out" ]
k = []
q = {}
[spaced]
k = 1979-05-27
'''


def read(text: str) -> tuple[Table, tuple[Finding, ...]]:
    return document(Source(text.replace("\r\n", "\n")))


def alike(node: Node, value: object) -> bool:
    if isinstance(node, Table):
        return (
            isinstance(value, dict)
            and [str(key) for key in node] == list(value)
            and all(alike(node[key], value[key]) for key in node)
        )
    if isinstance(node, Row):
        return isinstance(value, list) and len(node) == len(value) and all(map(alike, node, value))
    return meant(node) == value or (isinstance(value, float) and math.isnan(value))


def meant(node: Written) -> object:
    text = node.text.replace("_", "")
    match node.sort:
        case Sort.TEXT:
            return node.text
        case Sort.TRUTH:
            return node.text == "true"
        case Sort.WHOLE:
            return int(text, 0)
        case Sort.DECIMAL:
            return float(text)
        case _:
            return tomllib.loads(f"x = {node.text}")["x"]


def written(node: Node) -> Iterator[Written]:
    if isinstance(node, Written):
        yield node
        return
    for inner in node.values() if isinstance(node, Table) else node:
        yield from written(inner)


def keys(node: Node) -> Iterator[Key]:
    if isinstance(node, Table):
        yield from node
    if not isinstance(node, Written):
        for inner in node.values() if isinstance(node, Table) else node:
            yield from keys(inner)


def one_spelling(text: str) -> bool:
    """Whether names that are equal to us are equal to the other reader too."""
    words = set(re.findall(r"[-_]*[A-Za-z][\w-]*", text))
    return len({*map(plain_name, words)}) == len(words)


def test_every_way_of_the_language_is_read() -> None:
    root, found = read(SAMPLE)
    assert found == ()
    assert alike(root, tomllib.loads(SAMPLE))


def refused(text: str) -> bool:
    try:
        tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return True
    return False


def agrees(text: str) -> bool:
    root, found = read(text)
    if refused(text):
        return bool(found)
    return not found and alike(root, tomllib.loads(text))


@pytest.mark.parametrize("seed", range(4))
def test_damaged_files_are_judged_as_by_the_other_reader(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311 - damage, no secret
    texts = [text for text in (damaged(SAMPLE, rng) for _ in range(600)) if one_spelling(text)]
    assert [text for text in texts if not agrees(text)] == []
    accepted = sum(not refused(text) for text in texts)
    assert 50 < accepted < len(texts) - 50  # else the damage is too light or too heavy to tell


SCRAPS = st.sampled_from(
    [
        *"ab1._-=[]{},#\"'\n\t \\",
        "[[",
        "]]",
        '"""',
        "'''",
        "1.5",
        "true",
        "a = ",
        "[a]\n",
        "\\u00e9",
    ]
)


@given(st.lists(SCRAPS, max_size=30).map("".join))
def test_scraps_are_judged_as_by_the_other_reader(text: str) -> None:
    assert agrees(text) or not one_spelling(text)


CLASHES = """
a = 1|a = 2
a.b = 1|a.b.c = 2
a = {b = 1}|a.c = 2
a = {b = 1}|[a.c]
a = [1]|[[a]]
a = [{b = 1}]|[a.c]
[a]|[a]
[a.b]|[a]|b.c = 1
[a]|b.c = 1|[a.b]
[a]|b.c = 1|[a.b.d]
[[a]]|[a]
[a]|[[a]]
[[a]]|[[a.b]]|[a.b]
[a.b]|[a]
[a.b]|[[a]]
[[a.b]]|[a]|b.c = 1
[a]|b.c = 1|b.d = 2
a = {b = 1, b.c = 2}
a = {b.c = 1, b.d = 2}
a = {b = {c = 1}, b.d = 2}
a.b = 1|[a]
a.b.c = 1|[a.b]
a.b.c = 1|[a.d]
[[a]]|b = 1|[[a]]|b = 1
[a]|[a.b]|[a.b.c]|[a.d]
"""


@pytest.mark.parametrize("clash", CLASHES.strip().splitlines())
def test_names_clash_as_for_the_other_reader(clash: str) -> None:
    assert agrees(clash.replace("|", "\n"))


def test_values_keep_their_places() -> None:
    text = SAMPLE.replace("a.b.c = 1", "\t½ = 'ä½\t'\na.b.c = [ '½', 38 ]", 1)
    root, _ = read(text)
    lines = text.split("\n")
    several = [w for w in written(root) if "\n" not in w.text and w.sort is Sort.TEXT and w.text]
    assert len(several) > 5
    for each in several:
        place = each.place
        there = lines[place.line - 1][place.column - 1 :][: place.width]
        assert there == each.text or "\\" in there


def test_names_keep_their_places() -> None:
    root, _ = read(SAMPLE)
    lines = SAMPLE.split("\n")
    for key in keys(root):
        place = key.place
        assert lines[place.line - 1][place.column - 1 :].startswith(str(key))


def test_a_sign_behind_escapes_is_found() -> None:
    root, _ = read('a = "\\u00bd \\" x"')
    (said,) = written(root)
    assert said.text == '½ " x'
    assert said.part(range(4, 5)) == Place(file="piece.toml", line=1, column=16)
    assert said.part(range(1)).column == 6


def test_a_place_just_behind_the_text_is_found() -> None:
    root, _ = read('a = "1-"')
    (said,) = written(root)
    assert said.part(range(2, 3)) == Place(file="piece.toml", line=1, column=8)


def test_numbers_keep_the_signs_that_were_typed() -> None:
    root, _ = read("a = 0.1\nb = 1_000\nc = 0.10000000000000000000001")
    assert [each.text for each in written(root)] == ["0.1", "1_000", "0.10000000000000000000001"]


def test_carriage_returns_move_no_column() -> None:
    plain, _ = read("a = 1\nb = 3/4\n")
    _, one = read("a = 1\nb = 3/4\n")
    _, other = read("a = 1\r\nb = 3/4\r\n")
    assert one == other
    assert list(plain) == ["a", "b"]


def test_after_fifty_faults_reading_stops() -> None:
    _, found = read("".join(f"w{n} = {n} x\n" for n in range(70)))
    assert len(found) == 51
    assert found[-1].code == "piece.too-many"
    assert found[-1].place == Place(file="piece.toml", line=51, column=7, width=4)


def test_an_open_bracket_costs_no_line_below_it() -> None:
    root, found = read("rows = [\n  1,\n  2\n[case]\nwide = 3\n")
    assert [f.code for f in found] == ["piece.bracket-open"]
    case = root.said("case")
    assert isinstance(case, Table)
    assert list(case) == ["wide"]
    rows = root.said("rows")
    assert isinstance(rows, Row)
    assert len(rows) == 2


def test_words_below_a_broken_heading_do_not_fall_to_the_section_above() -> None:
    root, found = read("[case]\nwide = 1\n[do ors\ntall = 2\n[]\ndeep = 3\n")
    assert [f.code for f in found] == ["piece.heading", "piece.no-name"]
    case = root.said("case")
    assert isinstance(case, Table)
    assert list(case) == ["wide"]


@pytest.mark.timeout(20)
@pytest.mark.parametrize("text", ["[", "{", "a=[", "a={b=", '"', "'''", "a.", "[[a]]\n", "#", "\\"])
def test_a_hundred_thousand_of_one_sign_are_read_in_time(text: str) -> None:
    read(text * (100_000 // len(text)))
