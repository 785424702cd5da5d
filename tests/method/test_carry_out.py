"""An order is carried out step by step; whatever is missing, doubled or out of place is caught."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest
from tests.method.orders import DEMO, asked, ordered, place

from scantling.method.carry_out import carry_out, makers_of
from scantling.method.job import Step
from scantling.shop.operations import operation

EVERY = {"quick": 83, "all": 1}
PIECES = (DEMO, "pieces/bookcase", "pieces/glaze_cupboard_lapped")


@pytest.mark.parametrize("folder", PIECES)
def test_the_order_of_a_piece_can_be_carried_out(folder: str) -> None:
    assert carry_out(asked(folder), ordered(folder).steps) == ()


def _spoiled(steps: Sequence[Step], every: int) -> Iterator[tuple[str, list[Step]]]:
    """Each step left out, done twice, and moved just past what waits for it, either way."""
    first: dict[int, int] = {}
    last: dict[int, int] = {}
    for pair in ordered().pairs:
        first[pair.first] = min(first.get(pair.first, pair.then), pair.then)
        last[pair.then] = max(last.get(pair.then, pair.first), pair.first)
    for i in range(0, len(steps), every):
        step, told = steps[i], steps[i].told
        rest = [*steps[:i], *steps[i + 1 :]]
        yield f"{told} left out", rest
        yield f"{told} twice", [*rest[:i], step, step, *rest[i:]]
        if i in first:
            yield f"{told} too late", [*rest[: first[i]], step, *rest[first[i] :]]
        if i in last:
            yield f"{told} too early", [*rest[: last[i]], step, *rest[last[i] :]]


def _missed(every: int) -> tuple[int, list[str]]:
    found = list(_spoiled(ordered().steps, every))
    return len(found), [told for told, steps in found if not carry_out(asked(), steps)]


def test_a_step_missing_doubled_or_misplaced_is_caught() -> None:
    tried, missed = _missed(EVERY["quick"])
    assert missed == []
    assert tried > 30


@pytest.mark.slow
@pytest.mark.timeout(900)
def test_every_step_missing_doubled_or_misplaced_is_caught() -> None:
    tried, missed = _missed(EVERY["all"])
    assert missed == []
    assert tried > 2500


def test_what_is_left_out_is_named_with_what_it_was_for() -> None:
    steps = [step for step in ordered().steps if step.name != "shape"]
    told = {each.code: each.says for each in reversed(carry_out(asked(), steps))}
    assert told["method.left-out"] == (
        "shape of the bottom rail is left out (bottom rail), and what follows needs it"
    )
    assert told["method.cut-not-made"] == (
        "nobody makes the arch in the bottom rail (arch of bottom rail)"
    )


def test_a_groove_ploughed_twice_is_told() -> None:
    i = place(ordered().steps, "plough groove")
    steps = [*ordered().steps[: i + 1], *ordered().steps[i:]]
    told = [each for each in carry_out(asked(), steps) if each.code == "method.done-twice"]
    assert [each.figure for each in told] == ["2 times"]


def test_a_coat_nobody_wants_is_told() -> None:
    coat = Step(operation=operation("coat", "drawer 1.bottom"), of="drawer 1")
    told = carry_out(asked(), [*ordered().steps, coat])
    assert "method.nobody-asks-for-it" in {each.code for each in told}


@pytest.mark.parametrize("folder", PIECES)
def test_each_designed_cut_has_an_operation_that_makes_it(folder: str) -> None:
    job = asked(folder)
    cuts = [(part, cut) for part in job.parts for cut in part.cuts]
    for part, cut in cuts:
        joint = job.joints_by_name.get(cut.owner)
        if joint is None:
            assert cut.owner in job.shapings(part.name)
        else:
            assert makers_of(cut, part.name, joint.work), (part.name, cut.name, cut.owner)
    assert cuts


def test_slot_and_hole_of_one_joint_are_made_by_different_operations() -> None:
    joint = asked().joints_by_name["top on rear sub-top rail"]
    part = asked().by_name["rear sub-top rail"]
    slots = {makers_of(c, part.name, joint.work) for c in part.cuts if c.name.startswith("slot")}
    assert [[joint.work[i].name for i in row] for row in slots] == [["cut slot"]]
