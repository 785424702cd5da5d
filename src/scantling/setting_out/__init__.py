"""The chain: text -> draft -> sizes -> parts -> proofs. The only room that knows the order."""

from scantling.setting_out.answer import Line, SetGap, SetJoint, SettingOut
from scantling.setting_out.chain import set_out
from scantling.setting_out.through import YearFit, YearMove, year_fits, year_moves

__all__ = [
    "Line",
    "SetGap",
    "SetJoint",
    "SettingOut",
    "YearFit",
    "YearMove",
    "set_out",
    "year_fits",
    "year_moves",
]
