"""The page of the whole piece behind the pinned sheets: from behind, and pulled apart."""

from __future__ import annotations

from scantling.papers._drawing.piece import piece_drawing, pulled_apart, scaled
from scantling.papers._paper import Sheet
from scantling.papers._part_pages import MARGIN, drawn
from scantling.papers._typeset import Plain
from scantling.setting_out import SettingOut
from scantling.solids.views import Cabinet

BEHIND, APART = 0.26, 0.44  # [-] of the sheet's height that each drawing may take


def piece_page(setting_out: SettingOut, *, sheet: Sheet) -> dict[str, Plain] | None:
    """Both drawings; None where nothing could be worked."""
    if not setting_out.made:
        return None
    name = setting_out.piece.name
    wide, tall = (float(size) for size in sheet.size)
    behind = scaled(
        piece_drawing(setting_out, view=Cabinet(from_behind=True)),
        room=(wide - 2 * MARGIN, tall * BEHIND),
        alt=f"{name} from behind, its right as one stands there, and above",
    )
    apart = scaled(
        piece_drawing(setting_out, view=Cabinet(), moved=pulled_apart(setting_out)),
        room=(wide - 2 * MARGIN, tall * APART),
        alt=f"{name} pulled apart",
    )
    return {"behind": drawn(behind), "apart": drawn(apart)}
