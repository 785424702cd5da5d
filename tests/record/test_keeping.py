"""What was acknowledged is there after any loss of power, once, and nothing else is lost.

The pretended disk is told in `disks.py`. A keeper on a disk that lies about syncing must lose
something, or the test would prove nothing.
"""

from __future__ import annotations

import multiprocessing
import random
from pathlib import Path

import pytest
from tests.record.disks import LossyDisk, WithoutFileSync, WithoutFolderSync

from scantling.record.entry import Entry, Note
from scantling.record.keeping import Folder, NotKeptError, keep
from scantling.record.reading import ASIDE, FILE, read

AT = "2026-11-25T10:00:00Z"
ROUNDS = 40


def note(name: str) -> Entry:
    return Entry(id=name, at=AT, said=Note(text=f"board {name} is cupped"))


def lost(disk: LossyDisk, acknowledged: dict[str, int]) -> set[str]:
    """What was acknowledged and is not there, or not under its number."""
    found = read(disk.content(FILE))
    there = {entry.id: entry.number for entry in found.entries}
    return {name for name, number in acknowledged.items() if there.get(name) != number}


def worked(disk: LossyDisk, chance: random.Random) -> set[str]:
    """Entries sent, failing and sent again, power lost between; whatever was lost of them."""
    acknowledged: dict[str, int] = {}
    gone: set[str] = set()
    for turn in range(ROUNDS):
        if chance.random() < 0.4:
            disk.fails_after = chance.randrange(6)
        name = f"e{turn if chance.random() < 0.7 else chance.randrange(turn + 1)}"
        try:
            kept = keep(note(name), disk=disk)
        except NotKeptError:
            pass  # nobody knows; it is sent again in some later turn, or never
        else:
            assert acknowledged.setdefault(name, kept.number) == kept.number
        if chance.random() < 0.4:
            disk.lose_power()
            gone |= lost(disk, acknowledged)
        found = read(disk.content(FILE))
        assert not found.is_damaged, found.findings
        assert len({entry.id for entry in found.entries}) == len(found.entries)
    return gone | lost(disk, acknowledged)


@pytest.mark.parametrize("seed", range(60))
def test_nothing_acknowledged_is_ever_lost(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311 - the same each time
    assert worked(LossyDisk(chance), chance) == set()


@pytest.mark.parametrize("kind", [WithoutFileSync, WithoutFolderSync])
def test_a_disk_that_lies_loses_something(kind: type[LossyDisk]) -> None:
    chances = [random.Random(seed) for seed in range(60)]  # noqa: S311 - the same each time
    assert any(_loses(kind(chance), chance) for chance in chances)


def _loses(disk: LossyDisk, chance: random.Random) -> bool:
    try:
        return bool(worked(disk, chance))
    except (AssertionError, NotKeptError):
        return True


def test_a_torn_line_is_moved_aside_before_the_next(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    keep(note("a"), disk=folder)
    with (tmp_path / FILE).open("ab") as file:
        file.write(b'{"format":1,"num')
    assert keep(note("b"), disk=folder).number == 2
    assert [e.id for e in read((tmp_path / FILE).read_bytes()).entries] == ["a", "b"]
    assert (tmp_path / ASIDE).read_bytes() == b'{"format":1,"num\n'


def test_to_a_damaged_record_nothing_is_added(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    for name in "abc":
        keep(note(name), disk=folder)
    spoilt = (tmp_path / FILE).read_bytes().replace(b"board b", b"board x")
    (tmp_path / FILE).write_bytes(spoilt)
    with pytest.raises(NotKeptError, match="Line 2"):
        keep(note("d"), disk=folder)
    assert (tmp_path / FILE).read_bytes() == spoilt


def test_where_an_editor_took_the_last_end_away_the_next_begins_a_line(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    keep(note("a"), disk=folder)
    (tmp_path / FILE).write_bytes((tmp_path / FILE).read_bytes().rstrip(b"\n"))
    keep(note("b"), disk=folder)
    assert [e.number for e in read((tmp_path / FILE).read_bytes()).entries] == [1, 2]


def test_a_folder_that_cannot_be_written_is_said(tmp_path: Path) -> None:
    with pytest.raises(NotKeptError, match="could not be written"):
        keep(note("a"), disk=Folder(tmp_path / "gone"))


def _many(folder: Path, who: int) -> None:
    for n in range(20):
        keep(note(f"{who}-{n}"), disk=Folder(folder))


def test_several_at_once_keep_all_and_number_them_in_a_row(tmp_path: Path) -> None:
    several = [multiprocessing.Process(target=_many, args=(tmp_path, who)) for who in range(3)]
    for process in several:
        process.start()
    for process in several:
        process.join(60)
    found = read((tmp_path / FILE).read_bytes())
    assert found.findings == ()
    assert [e.number for e in found.entries] == list(range(1, 61))
