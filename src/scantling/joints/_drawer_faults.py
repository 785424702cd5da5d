"""What is wrong with a drawer's bottom that only its joint can know."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._drawer_groove import Bottom
from scantling.joints._frame import fault
from scantling.joints._joint import Joined
from scantling.parts import Part
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes

LEAST_WALL = Fraction(5)  # [mm] of a side or front behind its groove
LEAST_AIR = Fraction(1)  # [mm] between the bottom and what the drawer runs on
WIDEST = Fraction(600)  # [mm] between sides without a muntin
THINNEST = Fraction(1, 60)  # [-] thickness over length
LEAST_EDGE = Fraction(1, 2)  # [-] of the groove's width


@dataclass(frozen=True, kw_only=True)
class _Held:
    """A figure against the least it may be. [mm]"""

    word: str
    weight: Weight
    says: str
    cure: str
    figure: Fraction
    least: Fraction
    source: str = "common practice"


def drawer_faults(
    j: Joined, found: Bottom, *, sizes: Sizes, shop: Shop, parts: Mapping[str, Part]
) -> tuple[Finding, ...]:
    """Findings about a bottom, its grooves and what the drawer runs on."""
    held = [*_fit(j, found, sizes=sizes), *_lips(j, found, sizes=sizes), *_span(found)]
    return (
        *(_told(j, each, shop) for each in held if each.figure < each.least),
        *_no_iron(j, found, shop),
        *_grain(j, found, shop, parts),
    )


def _told(j: Joined, each: _Held, shop: Shop) -> Finding:
    return fault(
        j,
        f"drawer-bottom.{each.word}",
        each.weight,
        says=f"{j.name}: {each.says}",
        cure=each.cure,
        figure=each.figure,
        limit=each.least,
        shop=shop,
        source=each.source,
    )


def _fit(j: Joined, found: Bottom, *, sizes: Sizes) -> Iterator[_Held]:
    yield _Held(
        word="loose",
        weight=Weight.MIND,
        says="the bottom is thinner than its grooves are wide and rattles",
        cure="a narrower groove, or a thicker bottom",
        figure=found.thickness,
        least=found.groove,
        source="geometry",
    )
    yield _Held(
        word="thin-edge",
        weight=Weight.MIND,
        says="the bevel leaves so little at the edge that it crumbles",
        cure="a longer bevel, or a shallower groove",
        figure=found.edge(found.depth),
        least=LEAST_EDGE * found.groove,
    )
    yield _Held(
        word="drags",
        weight=Weight.HALT,
        says="the bottom hangs down to what the drawer runs on",
        cure="set the grooves further up, or take a thinner bottom",
        figure=sizes[j.own("set up")] + found.groove - found.thickness,
        least=LEAST_AIR,
    )


def _lips(j: Joined, found: Bottom, *, sizes: Sizes) -> Iterator[_Held]:
    yield _Held(
        word="low-groove",
        weight=Weight.MIND,
        says="the lip under the groove is lower than the groove is deep and breaks out",
        cure="set the grooves further up",
        figure=sizes[j.own("set up")],
        least=found.depth,
    )
    wall = min(j.thickness(role).at(sizes) for role in ("front", "left", "right")) - found.depth
    yield _Held(
        word="thin-wall",
        weight=Weight.MIND,
        says="little wood is left behind the groove",
        cure="a shallower groove, or thicker sides; or slips glued inside that carry the groove",
        figure=wall,
        least=LEAST_WALL,
    )


def _span(found: Bottom) -> Iterator[_Held]:
    yield _Held(
        word="sags",
        weight=Weight.MIND,
        says="so long a bottom sags at this thickness",
        cure="a muntin in the middle and two bottoms, or a thicker bottom",
        figure=found.thickness,
        least=found.length * THINNEST,
    )
    yield _Held(
        word="wide",
        weight=Weight.MIND,
        says="so long a bottom wants a muntin",
        cure="a muntin in the middle and two bottoms",
        figure=WIDEST - found.length,
        least=Fraction(0),
    )


def _no_iron(j: Joined, found: Bottom, shop: Shop) -> Iterator[Finding]:
    if found.groove in shop.groove_sizes:
        return
    nearest = min(shop.groove_sizes, key=lambda s: abs(s - found.groove), default=Fraction(0))
    yield fault(
        j,
        "drawer-bottom.no-iron",
        Weight.MIND,
        says=f"{j.name}: no plough iron of that width stands here",
        cure="a groove of an iron's width",
        figure=found.groove,
        limit=nearest,
        shop=shop,
        source="shop.toml",
    )


def _grain(j: Joined, found: Bottom, shop: Shop, parts: Mapping[str, Part]) -> Iterator[Finding]:
    bottom, front = (parts[j.seat(role).part].placement for role in ("bottom", "front"))
    if bottom.along.axis == front.along.axis:
        return
    yield fault(
        j,
        "drawer-bottom.grain",
        Weight.HALT,
        says=f"{j.name}: the grain runs front to back, so the bottom pushes the sides apart",
        cure="turn the grain side to side",
        figure=found.width,
        limit=found.length,
        shop=shop,
        source="Handwork in Wood, 1910",
    )
