"""Exact numbers: the native ones are held against the standard library's, and kept from texts."""

import ast
import operator
from collections.abc import Callable
from fractions import Fraction as Plain
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.house.tree import SOURCE

from scantling.exact import Fraction, from_figures

NUMBERS = st.fractions(min_value=-5000, max_value=5000, max_denominator=10**6)
ACTS = [
    operator.add,
    operator.sub,
    operator.mul,
    operator.truediv,
    operator.floordiv,
    operator.mod,
    operator.lt,
    operator.le,
    operator.eq,
]
TEXTS = ["0", "7", "12", "-3", "0.067", "1e-3", "2/3", "  5/8 ", "1_000"]


@pytest.mark.parametrize("act", ACTS, ids=lambda act: act.__name__)
@given(one=NUMBERS, other=NUMBERS.filter(bool))
def test_native_fractions_reckon_as_the_standard_librarys(
    act: Callable[[Any, Any], Any], one: Plain, other: Plain
) -> None:
    theirs = act(one, other)
    for a, b in ((Fraction(one), Fraction(other)), (Fraction(one), other), (one, Fraction(other))):
        assert act(a, b) == theirs


@given(number=NUMBERS)
def test_native_fractions_are_told_and_kept_as_the_standard_librarys(number: Plain) -> None:
    ours = Fraction(number)
    assert (str(ours), hash(ours), float(ours)) == (str(number), hash(number), float(number))
    assert (round(ours), ours.numerator) == (round(number), number.numerator)
    assert {number: 1}[ours] == 1


@pytest.mark.parametrize("text", TEXTS)
def test_figures_are_read_as_the_standard_library_reads_them(text: str) -> None:
    assert from_figures(text) == Plain(text)
    assert type(from_figures(text)) is Fraction


@pytest.mark.parametrize("text", ["", "x", "1/", "½"])
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="Invalid literal"):
        from_figures(text)


def texts_given(source: str) -> list[int]:
    """Lines that plainly hand the native kind a text; others show in `tests/conftest.py`."""
    calls = (n for n in ast.walk(ast.parse(source)) if isinstance(n, ast.Call))
    return [
        call.lineno
        for call in calls
        if ast.unparse(call.func) == "Fraction" and any(map(_is_text, call.args))
    ]


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, ast.JoinedStr) or (
        isinstance(node, ast.Constant) and isinstance(node.value, str)
    )


def test_no_text_is_given_to_the_native_kind() -> None:
    found = {
        str(path): lines
        for path in SOURCE.rglob("*.py")
        if (lines := texts_given(path.read_text(encoding="utf-8")))
    }
    assert found == {}


@pytest.mark.parametrize("line", ['Fraction("7")', 'Fraction(f"{a}")'])
def test_a_text_that_is_given_is_seen(line: str) -> None:
    assert texts_given(line) == [1]
