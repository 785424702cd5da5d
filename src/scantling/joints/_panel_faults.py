"""What can be wrong with a panel in its frame that no single size shows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._joint import Joined
from scantling.joints._panel import FRAME
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes
from scantling.units import INCH

LEAST_WALL = Fraction(4)  # [mm] of the frame beside its groove
LEAST_RISE = Fraction(1)  # [mm] of a bevel
WIDEST = 24 * INCH  # [mm] of one panel


@dataclass(frozen=True, kw_only=True)
class _Fault:
    word: str
    is_so: bool
    figure: Fraction  # [mm]
    limit: Fraction  # [mm]
    says: str
    cure: str
    weight: Weight = Weight.MIND


def panel_faults(j: Joined, *, sizes: Sizes, shop: Shop, front: Fraction) -> tuple[Finding, ...]:
    """Faults of one panel and its grooves.

    Args:
        j: The joint where it is.
        sizes: Solved sizes.
        shop: Whose irons cut the groove.
        front: Wood taken before the tongue. [mm]
    """
    rows = (*_of_groove(j, sizes, shop), *_of_panel(j, sizes, front))
    return tuple(
        fault(
            j,
            f"fielded-panel.{row.word}",
            row.weight,
            says=row.says,
            cure=row.cure,
            figure=row.figure,
            limit=row.limit,
            shop=shop,
        )
        for row in rows
        if row.is_so
    )


def _of_groove(j: Joined, sizes: Sizes, shop: Shop) -> Iterator[_Fault]:
    groove, start = sizes[j.own("groove")], sizes[j.own("set in")]
    frame = min(j.thickness(role).at(sizes) for role in FRAME)
    wall = min(start, frame - start - groove)
    yield _Fault(
        word="thin-wall",
        is_so=wall < LEAST_WALL,
        figure=wall,
        limit=LEAST_WALL,
        says="The frame is thin beside its groove and may split there.",
        cure="Take a narrower iron, or set the groove in the middle.",
    )
    if shop.groove_sizes:
        near = min(shop.groove_sizes, key=lambda size: (abs(size - groove), size))
        yield _Fault(
            word="no-iron",
            is_so=near != groove,
            figure=groove,
            limit=near,
            says="No plough iron of the groove's width stands in this shop.",
            cure="Make the groove as wide as an iron owned.",
        )
    back = sizes[j.own("set back")] + j.thickness("panel").at(sizes)
    yield _Fault(
        word="rattles",
        is_so=back < start + groove,
        figure=back,
        limit=start + groove,
        says="The panel's back does not reach the groove's back wall, so its tongue has no seat.",
        cure="Set the panel further back, or make it thicker.",
    )
    yield _Fault(
        word="proud-back",
        is_so=back > frame,
        figure=back,
        limit=frame,
        says="The panel's back stands out behind the frame.",
        cure="Make the panel thinner, or let its field stand forward.",
    )


def _of_panel(j: Joined, sizes: Sizes, front: Fraction) -> Iterator[_Fault]:
    wide, length = j.width("panel").at(sizes), j.length("panel").at(sizes)
    margins, step = 2 * sizes[j.own("margin")], sizes[j.own("step")]
    yield _Fault(
        word="no-field",
        is_so=margins >= min(wide, length),
        figure=margins,
        limit=min(wide, length),
        says="The bevels meet and leave the panel no field.",
        cure="Make the margin narrower.",
        weight=Weight.HALT,
    )
    yield _Fault(
        word="no-bevel",
        is_so=front < step + LEAST_RISE,
        figure=front,
        limit=step + LEAST_RISE,
        says="Too little wood stands before the tongue for a bevel above its step.",
        cure="Make the panel thicker, or the step smaller.",
    )
    yield _Fault(
        word="wide",
        is_so=wide > WIDEST,
        figure=wide,
        limit=WIDEST,
        says="The panel is very wide and moves far.",
        cure="Divide it by a muntin.",
        weight=Weight.NOTE,
    )
