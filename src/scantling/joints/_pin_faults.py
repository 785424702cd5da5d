"""What is wrong with shelf pins that only their joint can know."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import acos, atan2, cos, hypot, pi, sin

from scantling.exact import Fraction, from_figures
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._joint import Beside, Choice, Joined
from scantling.joints._pin_bays import BAY, floor, floors, heights, opening_unsaid
from scantling.joints._pin_rows import centre, edges, end_gap, hole_word, rows_of
from scantling.parts import Part
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes

LEAST_BEHIND = Fraction(3)  # [mm] of the side behind a hole
LEAST_BORE = Fraction(3, 2)  # [-] depth of a hole in diameters
LEAST_EDGE = Fraction(2)  # [-] from a row to an edge of the shelf, in diameters
LEAST_BEARING = Fraction(5)  # [mm] of a pin under the shelf
LEAST_ABOVE = Fraction(10)  # [mm] of the side above its topmost hole


@dataclass(frozen=True, kw_only=True)
class _Held:
    word: str
    weight: Weight
    says: str
    cure: str
    figure: Fraction  # [mm]
    least: Fraction  # [mm]
    source: str = "common practice"


def pin_faults(
    j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
) -> tuple[Finding, ...]:
    """Findings about holes, pins and shelves."""
    held = [
        *_holes(j, choice, sizes=sizes),
        *_shelves(j, choice, sizes=sizes),
        *_bearing(j, sizes=sizes, parts=parts),
        *_ways_in(j, sizes=sizes),
        *_joints_met(j, choice, sizes=sizes),
        *_in_the_opening(j, choice, sizes=sizes),
    ]
    return (
        *_few_holes(j, choice),
        *opening_unsaid(j, choice),
        *_no_bit(j, shop, sizes=sizes),
        *(_told(j, each, shop) for each in held if each.figure < each.least),
    )


def _told(j: Joined, each: _Held, shop: Shop) -> Finding:
    return fault(
        j,
        f"shelf-pins.{each.word}",
        each.weight,
        says=f"{j.name}: {each.says}",
        cure=each.cure,
        figure=each.figure,
        limit=each.least,
        shop=shop,
        source=each.source,
    )


def _few_holes(j: Joined, choice: Choice) -> Iterator[Finding]:
    holes, shelves = choice.count("holes"), len(j.row("enters"))
    hole = getattr(j.joint, "hole", None) or 1
    if hole > holes:
        yield Finding(
            code="shelf-pins.no-such-hole",
            weight=Weight.HALT,
            says=f"{j.name}: the row has no such hole",
            cure="name a lower hole, or bore more",
            place=j.place,
            figure=f"hole {hole}",
            limit=f"{holes} holes",
            source="geometry",
            parts=j.parts,
        )
    if holes < shelves:
        yield Finding(
            code="shelf-pins.few-holes",
            weight=Weight.HALT,
            says=f"{j.name}: each shelf wants a hole of its own in every row",
            cure="more holes, or fewer shelves",
            place=j.place,
            figure=f"{holes} holes",
            limit=f"{shelves} shelves",
            source="geometry",
            parts=j.parts,
        )


def _holes(j: Joined, choice: Choice, *, sizes: Sizes) -> Iterator[_Held]:
    bore, size = sizes[j.own("bore")], sizes[j.own("size")]
    yield _Held(
        word="shallow",
        weight=Weight.MIND,
        says="so shallow a hole lets its pin droop",
        cure="deeper holes, or thinner pins",
        figure=bore,
        least=LEAST_BORE * size,
    )
    top = centre(j, choice.count("holes") - 1).at(sizes)
    for seat in j.row("receives"):
        yield _Held(
            word="comes-through",
            weight=Weight.HALT,
            says=f"the holes come through, or nearly, on the outside of the {seat.part}",
            cure="shallower holes, or a thicker side",
            figure=sizes[f"{seat.part}.thickness"] - bore,
            least=LEAST_BEHIND,
        )
        yield _Held(
            word="off-the-side",
            weight=Weight.HALT,
            says=f"the topmost hole lies off the end of the {seat.part}, or breaks out there",
            cure="fewer holes, or a closer pitch",
            figure=sizes[f"{seat.part}.length"] - seat.along.at(sizes) - top,
            least=LEAST_ABOVE,
        )


def _shelves(j: Joined, choice: Choice, *, sizes: Sizes) -> Iterator[_Held]:
    rows, size = rows_of(j, sizes=sizes), sizes[j.own("size")]
    shelves = j.row("enters")
    for shelf in shelves:
        low, high = edges(shelf, sizes=sizes)
        yield _Held(
            word="near-edge",
            weight=Weight.MIND,
            says=f"the pins stand close to an edge of the {shelf.part}, which tips over them",
            cure="a greater inset, or a wider shelf",
            figure=min(rows.front - low, high - rows.back, rows.back - rows.front),
            least=LEAST_EDGE * size,
        )
    for lower, upper in pairwise(shelves):
        holes = [choice[hole_word(shelf.part)] for shelf in (lower, upper)]
        yield _Held(
            word="shelves-meet",
            weight=Weight.HALT,
            says=f"the {lower.part} is thicker than the room below the {upper.part}",
            cure="a wider pitch, more holes, or thinner shelves",
            figure=(holes[1] - holes[0]) * sizes[j.own("pitch")],
            least=sizes[f"{lower.part}.thickness"],
            source="geometry",
        )


def _in_the_opening(j: Joined, choice: Choice, *, sizes: Sizes) -> Iterator[_Held]:
    """Shelves that lie higher than their opening is tall."""
    known = heights(j, sizes=sizes)
    tall = known[choice.count(BAY) if BAY in choice else 0] if floors(j) else None
    if tall is None:
        return
    for seat in j.row("enters"):
        above = sizes[j.own(f"{seat.part} rests")] + sizes[f"{seat.part}.thickness"]
        yield _Held(
            word="out-of-its-opening",
            weight=Weight.HALT,
            says=f"the {seat.part} does not lie in its opening, which is not so tall",
            cure="a lower hole, or a lower row",
            figure=tall + floor(j).at(sizes) - above,
            least=Fraction(0),
            source="geometry",
        )


def _bearing(j: Joined, *, sizes: Sizes, parts: Mapping[str, Part]) -> Iterator[_Held]:
    for shelf in j.row("enters"):
        for seat in j.row("receives"):
            gap = end_gap(parts[shelf.part], parts[seat.part], seat, sizes=sizes)
            yield _Held(
                word="drops",
                weight=Weight.HALT,
                says=f"the {shelf.part} hardly reaches over its pins in the {seat.part}",
                cure="a longer shelf, or pins that stand out further",
                figure=sizes[j.own("stand")] - gap,
                least=LEAST_BEARING,
            )


def _ways_in(j: Joined, *, sizes: Sizes) -> Iterator[_Held]:
    for passage in j.neighbours("passage", role="enters"):
        wide, tall = passage.size.at(sizes), passage.depth.at(sizes)
        for shelf in j.row("enters"):
            needed = tilted_height(
                length=sizes[f"{shelf.part}.length"],
                thickness=sizes[f"{shelf.part}.thickness"],
                opening=wide,
            )
            yield _Held(
                word="no-way-in",
                weight=Weight.HALT,
                says=f"the {shelf.part} cannot be tilted in past {passage.owner}",
                cure="a shorter shelf, a notch at its corners, or a frame flush inside",
                figure=tall,
                least=needed,
                source="geometry",
            )


def tilted_height(*, length: Fraction, thickness: Fraction, opening: Fraction) -> Fraction:
    """Clear height that a board needs when it is tipped just enough to pass an opening. [mm]

    The board turns in the plane of the opening. Its span `length cos a + thickness sin a` has to
    come down to the opening; its rise at that angle is what must be free. A bound: the path
    from there to the pins is for a proof of its own.

    Args:
        length: Of the board, across the opening. [mm]
        thickness: Of the board. [mm]
        opening: Clear width of the opening. [mm]
    """
    if length <= opening:
        return thickness
    diagonal, lean = hypot(length, thickness), atan2(thickness, length)
    if opening <= 0:
        return length
    angle = min(lean + acos(min(float(opening) / diagonal, 1.0)), pi / 2)
    rise = float(length) * sin(angle) + float(thickness) * cos(angle)
    return from_figures(f"{rise:.6f}")  # shown to hundredths at most


def _joints_met(j: Joined, choice: Choice, *, sizes: Sizes) -> Iterator[_Held]:
    """Holes that fall in, or too near, a housing the form told of."""
    radius = sizes[j.own("size")] / 2
    middles = [centre(j, hole).at(sizes) for hole in range(choice.count("holes"))]
    for socket in j.neighbours("housing", role="receives"):
        clear = min(_clear(middle, socket, sizes) for middle in middles)
        yield _Held(
            word="in-a-joint",
            weight=Weight.HALT,
            says=f"a hole falls into {socket.owner}",
            cure="start the row higher or lower, or leave that hole out",
            figure=clear - radius,
            least=Fraction(0),
            source="geometry",
        )


def _clear(middle: Fraction, socket: Beside, sizes: Sizes) -> Fraction:
    low, high = socket.start.at(sizes), (socket.start + socket.size).at(sizes)
    return max(low - middle, middle - high)


def _no_bit(j: Joined, shop: Shop, *, sizes: Sizes) -> Iterator[Finding]:
    size = sizes[j.own("size")]
    if size not in shop.bores:
        yield fault(
            j,
            "shelf-pins.no-bit",
            Weight.HALT,
            says=f"{j.name}: no bit of this shop bores holes of the pins' diameter",
            cure="Take pins of the nearest bit's size, which is the limit here, or add that bit to"
            " the shop's file.",
            figure=size,
            limit=min(shop.bores, key=lambda bit: abs(bit - size), default=Fraction(0)),
            shop=shop,
            source="shop.toml",
        )
