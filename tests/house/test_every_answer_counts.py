"""No question is asked in vain: an answer left out shows in what the maker gets.

Each joint's case on the bench goes through the whole chain, once as it is and once for each of
the thirteen questions with that answer emptied. What is told of it must differ: in
`setting-out.json`, on the packet's page of joints, or in what the proofs and the joint find.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from fractions import Fraction
from functools import cache

import pytest
from tests.joints.on_the_bench import FINE, ROOM, SHOP

import scantling.joints
from scantling.errors import ScantlingError
from scantling.joints._hinge import hinge_bench
from scantling.joints._joint import QUESTIONS, Bench, Choice, Joint, Said
from scantling.joints.hinge import Hinge
from scantling.papers._joint_pages import joints
from scantling.papers.setting_out_json import document
from scantling.piece import Piece
from scantling.piece._form import Sketch, Whole
from scantling.roster import members
from scantling.setting_out import SettingOut, chain
from scantling.shop.habits import Habits
from scantling.sizes.model import Relations
from scantling.units import Unit

ROSTER: dict[str, type[Joint]] = dict(members(scantling.joints, base=Joint))
EMPTY: dict[str, object] = {"relations": Relations(), "choose": Choice(), "cuts": {}}
SILENT = {"faults": "hinge"}  # a bench case is sound: only a faulty one has something to say
SOME = ("half lap", "hinge", "screws in slots")

# a second or more each: their benches are many parts
LONG = {
    "drawer bottom",
    "fielded panel",
    "half-blind dovetail",
    "one nail at mid width",
    "screws in slots",
    "shelf pins",
    "through dovetail",
}

every_joint = pytest.mark.parametrize(
    "title", [pytest.param(t, marks=pytest.mark.slow) if t in LONG else t for t in ROSTER]
)


def bench(title: str, question: str) -> Bench:
    """The case on the bench; where only fault can show the question, a faulty one."""
    if SILENT.get(question) == title:
        return hinge_bench(Hinge(screw_length=Said(value=Fraction(44))), tall=Fraction(612))
    return ROSTER[title].bench()


def worked(case: Bench, *, settled: object = None) -> SettingOut:
    """The case through the whole chain; sizes settled already are not settled again."""
    sketch = Sketch(joined=(case.joined,), stated=case.stated, relations=case.relations)
    sketch = sketch.with_parts(*case.parts)
    whole = Whole(name="bench", measure=Unit.MM, finest=FINE, room=ROOM, woods={})
    piece = Piece(text="", file="piece.toml", whole=whole)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(chain, "draft", lambda _, __: sketch)
        if settled is not None:
            patch.setattr(chain, "settled_sizes", lambda *_, **__: settled)
        return chain.set_out(piece, shop=SHOP, habits=Habits())


def told(case: Bench, *, settled: object = None) -> str:
    """Everything the maker is told of it; the error, where there is no answer at all."""
    try:
        found = worked(case, settled=settled)
    except (ScantlingError, LookupError, ValueError) as error:
        return f"{type(error).__name__}: {error}"
    return json.dumps([document(found), joints(found)], default=str)


@contextmanager
def silent(joint: type[Joint], question: str) -> Iterator[list[object]]:
    """The joint with one answer emptied; what it would have answered is kept in the list."""
    true: Callable[..., object] = getattr(joint, question)
    kept: list[object] = []

    def empty(*args: object, **told: object) -> object:
        kept.append(true(*args, **told))
        return EMPTY.get(question, ())

    with pytest.MonkeyPatch.context() as patch:
        is_class = question == "seats"
        patch.setattr(joint, question, staticmethod(empty) if is_class else empty)
        yield kept


@cache
def usual(title: str, question: str) -> tuple[object, str]:
    """Sizes and choices of the case as it is, and what is told of it."""
    case = bench(title, question)
    settled = worked(case).settled
    return settled, told(case, settled=settled)


def is_heard(title: str, question: str) -> bool | None:
    """Whether the answer shows; None where the joint has nothing to say to it."""
    settled, whole = usual(title, question if question in SILENT else "")
    case, again = bench(title, question), question in {"relations", "choose"}
    with silent(ROSTER[title], question) as kept:
        without = told(case, settled=None if again else settled)
    assert kept, f"nobody asks {title} for its {question}"
    said = any(answer != EMPTY.get(question, ()) for answer in kept)
    return without != whole if said else None


def test_what_is_left_to_the_slow_run_is_on_the_roster() -> None:
    assert ROSTER.keys() >= LONG


@every_joint
def test_each_answer_of_a_joint_shows_in_what_the_maker_gets(title: str) -> None:
    heard = {question: is_heard(title, question) for question in QUESTIONS}
    assert [question for question, shows in heard.items() if shows is False] == []


@pytest.mark.parametrize("question", sorted({*QUESTIONS, "presses"}))
def test_each_question_is_answered_by_some_joint_and_shows(question: str) -> None:
    tried = [SILENT[question]] if question in SILENT else SOME
    assert any(is_heard(title, question) for title in tried)


def test_an_answer_that_nobody_uses_is_noticed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tests.house.test_every_answer_counts.document", lambda _: {})
    monkeypatch.setattr("tests.house.test_every_answer_counts.joints", lambda _: [])
    usual.cache_clear()
    assert is_heard("hinge", "fixings") is False
    usual.cache_clear()
