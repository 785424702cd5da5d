"""One value is written and every other sign stays."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.piece.bench import HEAD, read_here

from scantling.errors import UnknownNameError
from scantling.piece._file.rewrite import Value, rewritten
from scantling.piece._file.text import Node, Row, Source, Table, Written
from scantling.piece._file.toml import document

TEXT = """# what I want
format  = 1      # the first
name    = 'Box'

[case]           # outside
  wide  = 42     # without the top
  sides = { thick = "3/4" }   # both
  bottom = {}

# doors come last
[face-frame]
joint = "half lap"
rows = [
  { rail = "top rail", tall = "1 1/2" },   # above
  { foot = 1 },
]
[shelf.deck]
"""


def changed(path: tuple[str | int, ...], value: Value) -> dict[str, str]:
    """Lines that differ, old and new."""
    old, new = TEXT.split("\n"), rewritten(TEXT, path, value).split("\n")
    if len(old) == len(new):
        return {a: b for a, b in zip(old, new, strict=True) if a != b}
    at = next(n for n, (a, b) in enumerate(zip(old, new, strict=False)) if a != b)
    assert old[at:] == new[at + len(new) - len(old) :]
    return {old[at - 1]: "\n".join(new[at : at + len(new) - len(old)])}


def test_a_bare_number_stays_bare() -> None:
    line = "  wide  = 42     # without the top"
    assert changed(("case", "wide"), "43") == {line: "  wide  = 43     # without the top"}
    assert changed(("case", "wide"), "43 1/2") == {line: '  wide  = "43 1/2"     # without the top'}


def test_quotes_stay_as_they_were() -> None:
    assert changed(("name",), "Crate") == {"name    = 'Box'": "name    = 'Crate'"}
    assert changed(("case", "sides", "thick"), "7/8") == {
        '  sides = { thick = "3/4" }   # both': '  sides = { thick = "7/8" }   # both'
    }


def test_an_inch_mark_gets_single_quotes() -> None:
    assert changed(("case", "sides", "thick"), '7/8"') == {
        '  sides = { thick = "3/4" }   # both': "  sides = { thick = '7/8\"' }   # both"
    }


def test_a_value_in_a_row_is_found_by_its_number() -> None:
    line = '  { rail = "top rail", tall = "1 1/2" },   # above'
    assert changed(("face frame", "rows", 0, "tall"), "2") == {
        line: '  { rail = "top rail", tall = "2" },   # above'
    }


def test_a_new_word_stands_below_the_last_one_of_its_section() -> None:
    assert changed(("case", "rails under top"), value=True) == {
        "  bottom = {}": "  rails_under_top = true"
    }
    assert changed(("face_frame", "stiles"), "1 3/4") == {"]": 'stiles = "1 3/4"'}
    assert changed(("shelf", "deck", "count"), 2) == {"[shelf.deck]": "count = 2"}
    assert changed(("measure",), "inch") == {"name    = 'Box'": 'measure = "inch"'}


def test_a_new_word_in_braces_follows_a_comma() -> None:
    assert changed(("case", "sides", "wide"), "9") == {
        '  sides = { thick = "3/4" }   # both': '  sides = { thick = "3/4", wide = "9" }   # both'
    }
    assert changed(("case", "bottom", "joint"), "housing") == {
        "  bottom = {}": '  bottom = { joint = "housing" }'
    }


def test_a_new_section_stands_at_the_end() -> None:
    new = rewritten(TEXT, ("also", "left side.thickness"), "7/8")
    assert new == TEXT + '\n[also]\n"left side.thickness" = "7/8"\n'


@pytest.mark.parametrize(
    "path",
    [("case",), ("case", "wide", "x"), ("face frame", "rows", 5, "tall"), ("face frame", "rows")],
)
def test_what_is_no_single_value_is_refused(path: tuple[str | int, ...]) -> None:
    with pytest.raises(UnknownNameError):
        rewritten(TEXT, path, "1")


def test_a_faulty_value_is_mended() -> None:
    text = HEAD + "[case]\nwide = 3/4 # bare\ndeep = nine\n"
    mended = rewritten(rewritten(text, ("case", "wide"), "3/4"), ("case", "deep"), "9")
    assert mended == HEAD + '[case]\nwide = "3/4" # bare\ndeep = 9\n'
    assert read_here(mended).complete


def test_line_ends_and_byte_order_mark_stay() -> None:
    text = "\ufeff" + TEXT.replace("\n", "\r\n")
    new = rewritten(text, ("case", "wide"), "43")
    assert new == text.replace("42", "43")


def test_each_line_keeps_its_own_end() -> None:
    text = "format = 1\r\n[case]\nwide = 42\r\ndeep = 9\n# both\r\n"
    assert rewritten(text, ("case", "wide"), "42 1/2") == text.replace("42", '"42 1/2"')
    assert rewritten(text, ("case", "deep"), "90") == text.replace("9", "90")
    grown = rewritten(text, ("case", "tall"), "7")
    assert grown == text.replace("# both", 'tall = "7"\r\n# both')


PATHS = st.sampled_from(
    [
        ("case", "wide"),
        ("name",),
        ("case", "sides", "thick"),
        ("case", "new"),
        ("new",),
        ("face_frame", "rows", 1, "foot"),
        ("a new one", "word"),
        ("case", "bottom", "x y"),
    ]
)
VALUES = st.one_of(st.text(max_size=20), st.integers(0, 10**6), st.booleans())


@given(PATHS, VALUES)
def test_what_was_written_is_read_again(path: tuple[str | int, ...], value: Value) -> None:
    root, faults = document(Source(rewritten(TEXT, path, value)))
    assert faults == ()
    node: Node | None = root
    for word in path:
        if isinstance(node, Table):
            node = node.said(str(word))
        else:
            assert isinstance(node, Row)
            node = node[int(word)]
    assert isinstance(node, Written)
    assert node.text == (str(value).lower() if isinstance(value, bool) else str(value))
