"""The piece as solids for any viewer: `piece.glb`, a named node for each part."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from scantling.papers._paper import Sheet
from scantling.parts.solid import finished, turn
from scantling.setting_out import SettingOut
from scantling.solids.gltf import Material, Shown, glb
from scantling.solids.mesh import surface

Colour = tuple[float, float, float]  # red, green, blue, 0 to 1, linear [-]

# One even tone a wood, fresh from the plane, by the last word of its trade name. Chosen by eye
# so that neighbours in a cupboard stand apart; no measurement stands behind them.
_TONES: Mapping[str, Colour] = {
    "ash": (0.66, 0.52, 0.35),
    "beech": (0.60, 0.40, 0.25),
    "birch": (0.68, 0.54, 0.36),
    "cedar": (0.42, 0.20, 0.11),
    "cherry": (0.45, 0.22, 0.11),
    "fir": (0.60, 0.37, 0.19),
    "mahogany": (0.30, 0.12, 0.06),
    "maple": (0.72, 0.58, 0.41),
    "oak": (0.50, 0.34, 0.18),
    "pine": (0.73, 0.56, 0.34),
    "poplar": (0.52, 0.50, 0.28),
    "redwood": (0.36, 0.14, 0.08),
    "walnut": (0.14, 0.08, 0.05),
}
_PLAIN: Colour = (0.58, 0.44, 0.28)
_METAL: Colour = (0.46, 0.40, 0.28)


class Model:
    """Model: the finished solids, where they stand."""

    title: ClassVar[str] = "model"

    @classmethod
    def render(cls, setting_out: SettingOut, *, sheet: Sheet) -> Mapping[str, bytes]:
        """`piece.glb`, binary glTF 2.0: metres, y up, its nodes named as the parts are."""
        del sheet  # a solid has no page
        shown = [
            Shown(
                name=part.name,
                mesh=surface(finished(part, store=setting_out.store), store=setting_out.store),
                turn=turn(part.placement),
                material=part.wood,
            )
            for part in setting_out.parts
        ]
        return {"piece.glb": glb(shown, materials=_materials(setting_out))}


def _materials(setting_out: SettingOut) -> tuple[Material, ...]:
    kinds = sorted({(part.wood, part.hardware) for part in setting_out.parts})
    by_name = {name: _material(name, bought=bought) for name, bought in kinds}
    return tuple(by_name.values())


def _material(name: str, *, bought: bool) -> Material:
    if bought and _tone(name) is None:
        return Material(name=name, colour=_METAL, metal=1.0, rough=0.4)
    return Material(name=name, colour=_tone(name) or _PLAIN)


def _tone(wood: str) -> Colour | None:
    *_, last = wood.casefold().replace("-", " ").split() or [""]
    return _TONES.get(last)
