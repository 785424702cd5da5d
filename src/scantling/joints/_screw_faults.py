"""What can be wrong with a row of screws."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._joint import Joined
from scantling.joints._slots import Row
from scantling.parts import ACROSS, ALONG, INTO, Part
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes

THREAD = 6  # [-] diameters of a thread in side grain
SHORT_OF_FACE = Fraction(3)  # [mm]


def screw_faults(
    j: Joined, row: Row, *, sizes: Sizes, shop: Shop, parts: Mapping[str, Part]
) -> tuple[Finding, ...]:
    """Too short or too long, in end grain, or slots along the grain that moves."""
    seat = j.seat("enters")
    one, other = parts[seat.part], parts[j.seat("receives").part]
    pointing = seat.way(axis=INTO, part=one).axis
    sliding = seat.way(axis=ALONG if row.along else ACROSS, part=one).axis
    grain = other.placement.ways[ALONG].axis
    found = list(_lengths(j, other, pointing=pointing, sizes=sizes, shop=shop))
    if grain == pointing:
        found.append(
            _told(
                j,
                "end-grain",
                f"The screws go into end grain of the {other.name}, which holds them badly.",
                "Turn the joint so that they meet side grain, or plug it with a dowel across.",
            )
        )
    if row.has_slots and grain == sliding:
        found.append(
            _told(
                j,
                "slot-with-grain",
                f"The slots run along the grain of the {other.name}, which does not move that way.",
                "Cut the slots the other way.",
            )
        )
    return tuple(found)


def _told(j: Joined, word: str, says: str, cure: str) -> Finding:
    return Finding(
        code=f"screws-in-slots.{word}",
        weight=Weight.MIND,
        says=says,
        cure=cure,
        place=j.place,
        source="common practice",
        parts=j.parts,
    )


def _more_hold(j: Joined) -> str:
    """What makes up for a short thread; of the screw that suits both parts no more can be had.

    It names no part, so that what is alike at several is told once.
    """
    more = "More screws, or thicker wood where they bite, hold better"
    if f"{j.name}.screw" in {each.name for each in j.joint.stated(j)}:
        return f"{more}; so do longer screws, or heads that are sunk."
    return f"{more}."


def _lengths(
    j: Joined, other: Part, *, pointing: int, sizes: Sizes, shop: Shop
) -> tuple[Finding, ...]:
    reach = sizes[j.own("screw")] - j.thickness("enters").at(sizes)
    thread = THREAD * sizes[j.own("shank")]
    behind = other.extent[[way.axis for way in other.placement.ways].index(pointing)] - reach
    rows = (
        (
            behind < SHORT_OF_FACE,
            "through",
            Weight.HALT if behind < 0 else Weight.MIND,
            f"The points come close to the far face of the {other.name}, or through it.",
            "Take shorter screws, or sink their heads less.",
            (behind, SHORT_OF_FACE),
        ),
        (
            0 < reach < thread,
            "short-thread",
            Weight.NOTE,
            f"Less than {THREAD} diameters of thread bite in the {other.name}.",
            _more_hold(j),
            (reach, thread),
        ),
        (
            reach <= 0,
            "short-screw",
            Weight.HALT,
            f"The screws do not reach the {other.name}.",
            "Take longer screws, or sink their heads.",
            (reach, thread),
        ),
    )
    return tuple(
        fault(
            j,
            f"screws-in-slots.{word}",
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
