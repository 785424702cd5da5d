"""An approved file that no longer fits is noticed, whatever is in it."""

from pathlib import Path

import pytest
from tests.approval import compared, rewritten


def test_what_was_approved_passes(tmp_path: Path) -> None:
    rewritten(tmp_path / "papers" / "list.csv", b"stile,610\n")
    compared(tmp_path / "papers" / "list.csv", b"stile,610\n")


@pytest.mark.parametrize(
    ("kept", "made"),
    [
        pytest.param(b"stile,610\n", b"stile,611\n", id="a figure"),
        pytest.param(b"stile,610\n", b"stile,610\r\n", id="a line end"),
        pytest.param(b"\xff\xfe\x01", b"\xff\xfe\x02", id="a picture"),
    ],
)
def test_a_difference_is_noticed(tmp_path: Path, kept: bytes, made: bytes) -> None:
    rewritten(tmp_path / "kept", kept)
    with pytest.raises((AssertionError, pytest.fail.Exception), match="approved one"):
        compared(tmp_path / "kept", made)


def test_a_file_nobody_approved_is_noticed(tmp_path: Path) -> None:
    with pytest.raises(AssertionError, match="not approved yet"):
        compared(tmp_path / "new", b"stile,610\n")
