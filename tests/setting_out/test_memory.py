"""Answers kept while what they were read from stays, and not a moment longer."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import scantling.joints
from scantling.parts import Part
from scantling.setting_out.memory import Memory
from scantling.sizes.model import Kind, Origin, Size, Sizes

Ask = Callable[[Sizes, Mapping[str, Part]], object]


def sizes(origin: Origin = Origin.STATED, /, **values: int) -> Sizes:
    """Sizes of those values. [mm]"""
    return Sizes(
        {
            name: Size(name=name, value=Fraction(v), kind=Kind.TAPE, origin=origin)
            for name, v in values.items()
        }
    )


def told(memory: Memory, at: Sizes, ask: Ask) -> object:
    """What memory answers at those sizes."""
    return memory.answer("question", asked=(), sizes=at, ask=ask)


LATER = sizes(Origin.HABIT, a=1, b=3)
TURNED = sizes(Origin.HABIT, b=3, a=1)

LOOKS: dict[str, Ask] = {
    "by its name": lambda s, _: s["a"],
    "whether it is there": lambda s, _: "c" in s,
    "or else": lambda s, _: s.get("c", Fraction(0)),
    "through all": lambda s, _: sum(s.values()),
    "how many": lambda s, _: len(s),
    "its story": lambda s, _: s.size("a").origin,
    "in their order": lambda s, _: list(s),
}


@pytest.mark.parametrize("look", LOOKS)
def test_what_was_looked_at_is_asked_again_when_it_changes(look: str) -> None:
    memory, ask = Memory(), LOOKS[look]
    for at in (
        sizes(a=1, b=2),
        sizes(a=5, b=2),
        sizes(a=5, b=2, c=7),
        sizes(b=3, a=1),
        LATER,
        TURNED,
    ):
        assert told(memory, at, ask) == ask(at, {})


def test_what_was_not_looked_at_troubles_nobody() -> None:
    memory, asked = Memory(), []

    def ask(found: Sizes, _: Mapping[str, Part]) -> Fraction:
        asked.append(1)
        return found["a"]

    told(memory, sizes(a=1, b=2), ask)
    assert told(memory, sizes(a=1, b=9), ask) == 1
    assert len(asked) == 1


def test_an_answer_that_failed_is_not_kept() -> None:
    memory = Memory()
    with pytest.raises(KeyError):
        told(memory, sizes(a=1), lambda s, _: s["b"])
    assert told(memory, sizes(a=1, b=4), lambda s, _: s["b"]) == 4


def test_another_thing_asked_with_is_another_question() -> None:
    memory = Memory()
    one, other = object(), object()
    at = sizes(a=1)
    assert memory.answer("q", asked=(one,), sizes=at, ask=lambda *_: "one") == "one"
    assert memory.answer("q", asked=(other,), sizes=at, ask=lambda *_: "other") == "other"


def test_joints_look_at_sizes_through_what_they_are_given() -> None:
    # `by_name` would pass the memory by
    folder = Path(scantling.joints.__path__[0])
    assert [p.name for p in folder.glob("*.py") if ".by_name" in p.read_text()] == []


VALUES = st.dictionaries(st.sampled_from("abcd"), st.integers(1, 3), min_size=1)


@given(edits=st.lists(VALUES, min_size=2, max_size=8), looks=st.lists(st.sampled_from("abcd")))
def test_memory_answers_as_a_fresh_start_does(
    edits: list[dict[str, int]], looks: list[str]
) -> None:
    def ask(found: Sizes, _: Mapping[str, Part]) -> tuple[Fraction | None, ...]:
        return tuple(found.get(name) for name in looks)

    memory = Memory()
    for values in edits:
        at = sizes(**values)
        assert told(memory, at, ask) == ask(at, {})
