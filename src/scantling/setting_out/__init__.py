"""The chain: text -> draft -> sizes -> parts -> proofs. The only room that knows the order."""

from scantling.setting_out.answer import Line, SetGap, SetJoint, SettingOut
from scantling.setting_out.chain import set_out

__all__ = ["Line", "SetGap", "SetJoint", "SettingOut", "set_out"]
