"""The vocabulary of the work and what an operation must not say."""

import pytest

from scantling.errors import OutOfRangeError, UnknownNameError
from scantling.shop.operations import (
    Operation,
    Per,
    Reference,
    Setting,
    SetTo,
    State,
    operation,
    vocabulary,
    word,
)
from scantling.shop.read import default_shop
from scantling.shop.tools import Tool

SETTING = Setting(
    held_by=Tool.FILLISTER,
    to=(SetTo("back rabbet.width", "width"), SetTo("back rabbet.depth", "depth")),
)


def test_an_operation_takes_from_the_vocabulary_what_it_does_not_say() -> None:
    found = operation("cut rabbet", "left side", "right side", setting=SETTING, amount=1.88)

    assert found.tool is Tool.FILLISTER
    assert found.reference is Reference.FACE_SIDE
    assert (found.state_before, found.state_after) == (State.TO_WIDTH, State.CUT)
    assert found.setting is SETTING
    assert found.minutes_assumed == pytest.approx(5 * 1.88)  # 5 min for every metre


def test_what_is_worked_from_the_mate_waits_for_it() -> None:
    assert operation("cut pins", "front").mate_first
    assert not operation("cut tails", "side").mate_first


def test_a_habit_may_turn_the_waiting_round() -> None:
    tails_second = operation("cut tails", "side", reference=Reference.MATE, tool=Tool.COPING_SAW)

    assert tails_second.mate_first
    assert tails_second.tool is Tool.COPING_SAW
    assert not operation("cut pins", "front", mate_first=False).mate_first


@pytest.mark.parametrize(
    ("name", "amount", "minutes"),
    [
        ("shoot edge", 2.5, 13.0),  # 3 min and 4 for every metre
        ("chop mortise", 4, 40.0),  # 10 min each
        ("true face", 0.4, 36.0),  # 90 min for every square metre
    ],
)
def test_assumed_minutes_grow_with_the_work(name: str, amount: float, minutes: float) -> None:
    assert word(name).minutes(amount=amount) == pytest.approx(minutes)


def test_no_row_takes_a_part_down_the_ladder() -> None:
    assert [
        row.name for row in vocabulary().values() if row.state_after.rung < row.state_before.rung
    ] == []


def test_the_three_sizes_stand_on_one_rung() -> None:
    assert State.TO_WIDTH.rung == State.THICKNESSED.rung == State.TO_LENGTH.rung
    assert State.EDGED.rung < State.TO_WIDTH.rung < State.MARKED.rung
    assert State.GLUED.rung < State.FLUSHED.rung < State.FINISHED.rung


def test_every_state_but_the_first_is_reached_by_some_row() -> None:
    reached = {row.state_after for row in vocabulary().values()}

    assert reached == set(State)


def test_every_row_says_what_slip_to_avoid_and_where_it_is_from() -> None:
    for row in vocabulary().values():
        assert row.act, row.name
        assert row.slip, row.name
        assert row.source, row.name
        assert (row.minutes_per == 0) == (row.per is Per.EACH), row.name


def test_nights_are_waited_where_glue_or_finish_dries() -> None:
    assert word("glue case").nights_after == 1
    assert word("rest panel").nights_after == 7
    assert word("cut tails").nights_after == 0


def test_the_workshop_owns_the_tools_of_its_vocabulary() -> None:
    wanted = {tool for row in vocabulary().values() for tool in row.tools}

    assert wanted - default_shop().tools == set()


def test_unknown_operations_are_refused() -> None:
    with pytest.raises(UnknownNameError, match="'cut rabet'"):
        operation("cut rabet", "left side")
    with pytest.raises(UnknownNameError, match="takes no tool of itself"):
        operation("rest panel", "top")


def test_an_operation_on_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="0 parts named"):
        operation("cut tails")


def test_an_operation_down_the_ladder_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="down from fitted to cut"):
        Operation(
            name="fit joint",
            parts=("shelf",),
            tool=Tool.CHISEL,
            reference=Reference.MATE,
            state_before=State.FITTED,
            state_after=State.CUT,
            minutes_assumed=8,
        )


def test_less_than_no_work_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="amount -1 lies below 0"):
        operation("plough groove", "left side", amount=-1)
    with pytest.raises(OutOfRangeError, match="-3 min lies below 0"):
        Operation(
            name="cut tails",
            parts=("side",),
            tool=Tool.DOVETAIL_SAW,
            reference=Reference.ENDS,
            state_before=State.MARKED,
            state_after=State.CUT,
            minutes_assumed=-3,
        )
