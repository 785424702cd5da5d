"""What can be wrong with a nail through a board into a bearer."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._joint import Joined, Seat
from scantling.joints._touch import block
from scantling.parts import INTO, Part
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes

THICKNESSES = Fraction(5, 2)  # [-] of the board, least length of a nail
OFF_MIDDLE = Fraction(1, 8)  # [-] of the width
HANDBOOK = "Wood Handbook, FPL-GTR-190, 2010, ch. 8"


def least_nail(j: Joined, *, sizes: Sizes) -> Fraction:
    """The shortest nail for the thickest board. [mm]"""
    return THICKNESSES * max(sizes[f"{seat.part}.thickness"] for seat in j.row("enters"))


def behind(seat: Seat, board: Part, bearer: Part) -> Fraction:
    """Wood of the bearer in the way of a nail. [mm]"""
    axis = seat.way(axis=INTO, part=board).axis
    return bearer.extent[[way.axis for way in bearer.placement.ways].index(axis)]


def off(seat: Seat, board: Part, bearer: Part) -> Fraction:
    """Air between a board and its bearer, where one was sawn short. [mm]"""
    out = seat.way(axis=INTO, part=board)
    near, far = block(bearer), block(board)
    if out.sign > 0:
        return max(far.low[out.axis] - near.high[out.axis], Fraction(0))
    return max(near.low[out.axis] - far.high[out.axis], Fraction(0))


def nail_faults(
    j: Joined, *, sizes: Sizes, shop: Shop, parts: Mapping[str, Part]
) -> tuple[Finding, ...]:
    """Off the middle, near an end, too short, or through the bearer."""
    rows = [_off_middle(seat, sizes=sizes) for seat in j.row("enters")]
    rows.append(_near_end(j, sizes=sizes))
    rows += _lengths(j, sizes=sizes, parts=parts)
    return tuple(
        fault(
            j,
            f"one-nail-at-mid-width.{word}",
            weight,
            says=says,
            cure=cure,
            figure=figure,
            limit=limit,
            shop=shop,
            source=source,
        )
        for found, word, weight, says, cure, source, (figure, limit) in rows
        if found
    )


_Row = tuple[bool, str, Weight, str, str, str, tuple[Fraction, Fraction]]


def _off_middle(seat: Seat, *, sizes: Sizes) -> _Row:
    wide = sizes[f"{seat.part}.width"]
    off, most = abs(seat.across.at(sizes) - wide / 2), wide * OFF_MIDDLE
    return (
        off > most,
        "off-middle",
        Weight.MIND,
        f"The nail stands off the middle of the {seat.part}, which then moves one way.",
        "Set it at mid width.",
        "common practice",
        (off, most),
    )


def _near_end(j: Joined, *, sizes: Sizes) -> _Row:
    """The board whose nail is nearest its end for its thickness; the others are no worse."""
    short = []
    for seat in j.row("enters"):
        long, thick = sizes[f"{seat.part}.length"], sizes[f"{seat.part}.thickness"]
        along = seat.along.at(sizes)
        end = min(along, long - along)
        short.append((end - thick, end, thick))
    left, end, thick = min(short)
    bearer = j.seat("receives").part
    return (
        left < 0,
        "near-end",
        Weight.NOTE,  # a pilot is bored, and a narrow bearer leaves no choice
        f"The nails into the {bearer} stand near the ends of the boards and may split them.",
        "Bore the pilots with care, or let the boards run on past the bearer.",
        HANDBOOK,
        (end, thick),
    )


def _lengths(j: Joined, *, sizes: Sizes, parts: Mapping[str, Part]) -> list[_Row]:
    nail, least = sizes[j.own("nail")], least_nail(j, sizes=sizes)
    bearer = parts[j.seat("receives").part]
    most = min(
        parts[seat.part].extent.thickness + behind(seat, parts[seat.part], bearer)
        for seat in j.row("enters")
    )
    return [
        (
            nail < least,
            "short",
            Weight.MIND,
            "The nails are short for the thickness of the boards.",
            "Take nails two and a half to three times as long as the boards are thick.",
            "common practice",
            (nail, least),
        ),
        (
            nail >= most,
            "through",
            Weight.HALT,
            f"The nails come out of the {bearer.name}.",
            "Take shorter nails.",
            "common practice",
            (nail, most),
        ),
    ]
