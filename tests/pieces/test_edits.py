"""An answer after an edit is the answer to the edited piece, whatever stood before."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.piece import read
from scantling.setting_out import SettingOut, set_out
from scantling.shop.habits import Habits
from scantling.shop.read import default_shop

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"

# each pulls at another corner: everything wide, one joint, the drawers, the season, the wood
EDITS = {
    "wider": ("wide  = 42 ", "wide  = 43 "),
    "a thicker bottom board": ('bottom  = { thick = "3/8" }', 'bottom  = { thick = "7/16" }'),
    "shallower drawers": ("deep   = 16", 'deep   = "15 1/2"'),
    "a damper room": ('damp  = "75 % at 20 C"', 'damp  = "80 % at 20 C"'),
    "another wood": ('show   = "white ash"', 'show   = "white oak"'),
    "fewer boards": ("boards = 6", "boards = 5"),
    "off the tape": ("wide  = 42 ", 'wide  = "42 1/64"'),
}


def _set_out(text: str, before: SettingOut | None = None) -> SettingOut:
    piece = read(text)
    assert piece.complete
    store = before.store if before is not None else None
    return set_out(piece, shop=default_shop(), habits=Habits(), store=store, before=before)


QUICK = ("wider", "a damper room")


@pytest.mark.parametrize(
    "edit", [e if e in QUICK else pytest.param(e, marks=pytest.mark.slow) for e in EDITS]
)
def test_an_edit_gives_what_a_fresh_start_gives(edit: str, glaze_cupboard: SettingOut) -> None:
    text = DEMO.read_text(encoding="utf-8")
    old, new = EDITS[edit]
    assert old in text
    changed = text.replace(old, new).replace('wide  = "43 1/2"\n', "")
    warm = _set_out(changed, before=glaze_cupboard)
    cold = _set_out(changed)
    assert dict(warm.sizes.by_name) == dict(cold.sizes.by_name)
    assert warm.parts == cold.parts
    assert warm.joints == cold.joints
    assert warm.findings == cold.findings
    assert warm.parts != glaze_cupboard.parts


@pytest.mark.parametrize("joint", ["hinge", "half lap", "shiplap"])
def test_another_joint_in_the_same_places_is_chosen_afresh(
    glaze_cupboard: SettingOut, joint: str
) -> None:
    demo = DEMO.read_text(encoding="utf-8")
    text = demo.replace('joint  = "mortise and tenon"    #', f'joint  = "{joint}"    #')
    assert text != demo
    piece = read(text)
    edited = set_out(
        piece,
        shop=glaze_cupboard.shop,
        habits=glaze_cupboard.habits,
        store=glaze_cupboard.store,
        before=glaze_cupboard,
    )
    # sizes and choices begin anew; that solids do as well is held above
    fresh = set_out(
        piece, shop=glaze_cupboard.shop, habits=glaze_cupboard.habits, store=edited.store
    )
    assert edited.findings == fresh.findings
    assert edited.sizes == fresh.sizes
