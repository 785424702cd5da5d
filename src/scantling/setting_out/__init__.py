"""The chain: text -> draft -> sizes -> parts -> proofs. The only room that knows the order."""

from scantling.setting_out.answer import Line, OnBoards, SetGap, SetJoint, SettingOut, Stage
from scantling.setting_out.chain import set_out, stages
from scantling.setting_out.pausing import Pause, at_no_time
from scantling.setting_out.through import YearFit, YearMove, year_fits, year_moves

__all__ = [
    "Line",
    "OnBoards",
    "Pause",
    "SetGap",
    "SetJoint",
    "SettingOut",
    "Stage",
    "YearFit",
    "YearMove",
    "at_no_time",
    "set_out",
    "stages",
    "year_fits",
    "year_moves",
]
