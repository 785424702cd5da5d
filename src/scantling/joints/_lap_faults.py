"""What can be wrong with lapped boards."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._joint import Joined
from scantling.shop.tools import Shop, Tool
from scantling.sizes.model import Sizes

THINNEST = Fraction(4)  # [mm] of a lap
NARROWEST, WIDEST = Fraction(6), Fraction(19)  # [mm] of a lap
LEAST_BOARD = Fraction(1, 2)  # [-] of the widest


def lap_faults(j: Joined, *, sizes: Sizes, shop: Shop) -> tuple[Finding, ...]:
    """Thin laps, odd laps, a narrow board, no plane for it."""
    row = [seat.part for seat in j.row("boards")]
    lap, depth = sizes[j.own("lap")], sizes[j.own("depth")]
    thin = min(depth, *(sizes[f"{part}.thickness"] - depth for part in row))
    widths = {part: sizes[f"{part}.width"] for part in row}
    narrow = min(row, key=lambda part: widths[part])
    half = max(widths.values()) * LEAST_BOARD
    rows = (
        (
            thin < THINNEST,
            "thin-lap",
            Weight.MIND,
            "The laps are thin and break when a board is pushed.",
            "Use thicker boards, or bring the laps to half their thickness.",
            (thin, THINNEST),
        ),
        (
            not NARROWEST <= lap <= WIDEST,
            "lap-width",
            Weight.NOTE,
            "The laps are narrower or wider than is usual.",
            "Make them 6 to 19 mm wide.",
            (lap, NARROWEST if lap < NARROWEST else WIDEST),
        ),
        (
            widths[narrow] < half,
            "narrow-board",
            Weight.MIND,
            f"The {narrow} is less than half as wide as the widest of the row.",
            "Take another number of boards, or make them alike.",
            (widths[narrow], half),
        ),
        (
            not _plane_for(lap, shop=shop),
            "no-plane",
            Weight.MIND,
            "No plane that is owned cuts a rabbet of this width.",
            "Narrow the laps, or saw and pare them.",
            (lap, _widest(shop)),
        ),
    )
    return tuple(
        fault(
            j,
            f"shiplap.{word}",
            weight,
            says=says,
            cure=cure,
            figure=figure,
            limit=limit,
            shop=shop,
        )
        for found, word, weight, says, cure, (figure, limit) in rows
        if found
    )


def _planes(shop: Shop) -> list[Fraction | None]:
    kinds = (Tool.FILLISTER, Tool.SHOULDER_PLANE)
    return [plane.width for plane in shop.planes if plane.tool in kinds]


def _plane_for(lap: Fraction, *, shop: Shop) -> bool:
    return any(width is None or width >= lap for width in _planes(shop))


def _widest(shop: Shop) -> Fraction:
    return max((width for width in _planes(shop) if width is not None), default=Fraction(0))
