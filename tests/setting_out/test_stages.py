"""A piece told in stages: what each tells holds, and the last is what one go would have told."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from scantling.papers._paper import Sheet
from scantling.papers.setting_out_json import SettingOutJson
from scantling.piece import Piece, read
from scantling.setting_out import SettingOut, Stage, set_out, stages
from scantling.shop.read import default_text
from scantling.shop.read import read as read_shop
from scantling.solids.store import Store

ROOT = Path(__file__).parents[2]
CUPBOARD = (ROOT / "pieces" / "glaze_cupboard" / "piece.toml").read_text(encoding="utf-8")
SHOP = read_shop(default_text(), file="shop.toml")


class Enough(Exception):  # noqa: N818 - no error: somebody wants something else
    """Raised where work is left."""


class Patience:
    """Lets work go on for so many pauses."""

    def __init__(self, pauses: int) -> None:
        self.left = pauses

    def __call__(self) -> None:
        self.left -= 1
        if self.left < 0:
            raise Enough


def cupboard(wide: str = "42") -> Piece:
    return read(CUPBOARD.replace("wide  = 42", f"wide  = {wide}", 1), file="piece.toml")


def in_stages(
    piece: Piece, pauses: int, *, store: Store, before: SettingOut | None = None
) -> Iterator[SettingOut]:
    return stages(
        piece,
        shop=SHOP.shop,
        habits=SHOP.habits,
        store=store,
        before=before,
        pause=Patience(pauses),
    )


def as_file(found: SettingOut) -> bytes:
    return SettingOutJson.render(found, sheet=Sheet.A4)["setting-out.json"]


@pytest.fixture(scope="module")
def in_one_go() -> bytes:
    return as_file(set_out(cupboard(), shop=SHOP.shop, habits=SHOP.habits))


def test_sizes_come_first_then_joints_then_proofs(in_one_go: bytes) -> None:
    sized, joined, proven = in_stages(cupboard(), 10**9, store=Store())
    assert [each.stage for each in (sized, joined, proven)] == list(Stage)
    assert sized.parts == proven.parts
    assert sized.lines == proven.lines
    assert sized.sizes == proven.sizes
    assert (sized.joints, len(joined.joints)) == ((), len(proven.joints))
    # a joint answers all but what truly touches, which is for the proofs to say
    assert not any(joint.areas for joint in joined.joints)
    assert all(len(joint.areas) == len(joint.contacts) for joint in proven.joints)
    assert set(joined.findings) <= set(proven.findings)
    assert as_file(proven) == in_one_go


@pytest.mark.parametrize("pauses", [0, 30, 700])
def test_what_was_left_half_done_does_not_change_the_answer(pauses: int, in_one_go: bytes) -> None:
    store, told = Store(), list[SettingOut]()
    with pytest.raises(Enough):
        told.extend(in_stages(cupboard("43"), pauses, store=store))
    assert told[-1].stage is not Stage.PROVEN
    *_, last = in_stages(cupboard(), 10**9, store=store, before=told[-1])
    assert as_file(last) == in_one_go


def test_nothing_is_worked_twice_for_having_been_left() -> None:
    straight, left = Store(), Store()
    list(in_stages(cupboard(), 10**9, store=straight))
    told = list[SettingOut]()
    with pytest.raises(Enough):
        told.extend(in_stages(cupboard(), 700, store=left))
    made = left.made
    assert made > 0
    list(in_stages(cupboard(), 10**9, store=left, before=told[-1]))
    assert left.made <= straight.made  # what was made before it was left counts in both


def test_solids_are_kept_over_rounds_that_were_left() -> None:
    store = Store()
    *_, whole = in_stages(cupboard(), 10**9, store=store)
    made, before = store.made, whole
    for wide in ("43", "44", "45"):
        before = next(in_stages(cupboard(wide), 0, store=store, before=before))
    list(in_stages(cupboard(), 10**9, store=store, before=before))
    assert store.made == made


def test_what_cannot_be_worked_is_told_at_once() -> None:
    (found,) = in_stages(cupboard("1/8"), 0, store=Store())
    assert (found.stage, found.parts) == (Stage.PROVEN, ())
    assert found.halts
