"""Names as a maker says them."""

import pytest

from scantling.papers._names import counted, listed


@pytest.mark.parametrize(
    ("names", "said"),
    [
        (["left side"], "left side"),
        (["left side", "right side"], "left side and right side"),
        (["left door.top rail", "mullion"], "left door top rail and mullion"),
        (["back board 1", "back board 2", "back board 3"], "back boards 1 to 3"),
        (["back board 4", "back board 5"], "back boards 4 and 5"),
        (["back board 1", "back board 3", "back board 4"], "back boards 1, 3 and 4"),
        (["loose shelf 1", "loose shelf 2"], "loose shelves 1 and 2"),
        (["back board 4", "back board 5", "back board 3"], "back boards 3 to 5"),
        (["back board 2", "bottom"], "back board 2 and bottom"),
        (["a", "b", "c", "d"], "a, b, c and d"),  # one name is as short as "1 more"
        (["a", "b", "c", "d", "e"], "a, b, c and 2 more"),
    ],
)
def test_names_stand_in_one_line(names: list[str], said: str) -> None:
    assert listed(names) == said


def test_one_of_a_kind_is_said_as_one() -> None:
    assert (counted(1, "tails"), counted(2, "tails")) == ("1 tail", "2 tails")
