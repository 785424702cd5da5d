"""What is wrong with dovetails that only they can know."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import Range, fault
from scantling.joints._joint import Joined
from scantling.joints._tails import LEAST_END, LEAST_HALF_PIN, WIDEST_TAIL, Layout
from scantling.shop.tools import Shop, Tool
from scantling.sizes.model import Sizes

STEEPEST, FLATTEST = Fraction(1, 4), Fraction(1, 10)  # [-] slopes found taught: 1:4 to 1:8


def tail_faults(
    j: Joined,
    layout: Layout,
    *,
    reaches: Mapping[str, Range],
    grooves: tuple[Range, ...],
    sizes: Sizes,
    shop: Shop,
) -> tuple[Finding, ...]:
    """Findings about a layout of tails.

    Args:
        j: The joint.
        layout: Its tails.
        reaches: From edge to edge of either part, by role. [mm]
        grooves: Where grooves come out that a tail has to hide. [mm]
        sizes: Solved sizes.
        shop: Whose chisels chop them.
    """
    if not layout.has_room:
        return (_no_room(j, layout, shop),)
    return (
        *_outside(j, layout, reaches, shop),
        *_short_grain(j, layout, reaches, shop, thick=j.thickness("receives").at(sizes)),
        *_wide_tail(j, layout, shop),
        *_chisels(j, layout, shop),
        *_slope(j, layout, shop),
        *(found for groove in grooves for found in _shows(j, layout, groove, shop)),
    )


def code(j: Joined, word: str) -> str:
    """Stable code of a finding of this joint."""
    return f"{j.joint.title.replace(' ', '-')}.{word}"


def _no_room(j: Joined, layout: Layout, shop: Shop) -> Finding:
    return fault(
        j,
        code(j, "no-room"),
        Weight.HALT,
        says=f"{j.name}: {layout.count} tails and their pins do not fit the width",
        cure="fewer tails, narrower pins, or less slope",
        figure=max(layout.tail_base, Fraction(0)),
        limit=Fraction(0),
        shop=shop,
        source="geometry",
    )


def _outside(
    j: Joined, layout: Layout, reaches: Mapping[str, Range], shop: Shop
) -> Iterator[Finding]:
    for role, (low, high) in reaches.items():
        past = max(low - layout.start, layout.stop - high)
        if past > 0:
            yield fault(
                j,
                code(j, "outside"),
                Weight.HALT,
                says=f"{j.name}: the tails run past the edge of the {j.seat(role).part}",
                cure="let the tails fill the narrower part, or move it within the wider one",
                figure=past,
                limit=Fraction(0),
                shop=shop,
                source="geometry",
            )


def _short_grain(
    j: Joined, layout: Layout, reaches: Mapping[str, Range], shop: Shop, *, thick: Fraction
) -> Iterator[Finding]:
    """Wood between the outermost socket and the edge."""
    low, high = reaches["receives"]
    left = min(layout.start - low, high - layout.stop) + layout.half_pin
    narrow = high - low > layout.width
    limit = max(LEAST_END, thick / 2) if narrow else LEAST_HALF_PIN
    if left < limit:
        yield fault(
            j,
            code(j, "short-grain"),
            Weight.MIND,
            says=f"{j.name}: the wood beside the outermost tail is thin and splits off",
            cure="a wider half pin" + (", or set the part further in" if narrow else ""),
            figure=left,
            limit=limit,
            shop=shop,
        )


def _wide_tail(j: Joined, layout: Layout, shop: Shop) -> Iterator[Finding]:
    if layout.tail > WIDEST_TAIL:
        yield fault(
            j,
            code(j, "wide-tail"),
            Weight.MIND,
            says=f"{j.name}: so wide a tail holds its edges badly and may cup out of its socket",
            cure="one tail more",
            figure=layout.tail,
            limit=WIDEST_TAIL,
            shop=shop,
            source="Handwork in Wood, 1910",
        )


def _chisels(j: Joined, layout: Layout, shop: Shop) -> Iterator[Finding]:
    """Waste is chopped by a chisel no wider than the waste at its wide end, or else sawn out."""
    # room for half pins is sawn out from the edge
    narrowest = min([layout.tail_base] + [layout.pin_base] * (layout.count > 1))
    owned = min(shop.chisels, default=None)
    if owned is not None and narrowest >= owned:
        return
    kerfs = {saw.tool: saw.kerf for saw in shop.saws}
    saw = shop.first_owned(Tool.COPING_SAW)
    if saw is not None and narrowest >= kerfs[saw]:
        weight, cure = Weight.MIND, f"saw the waste out with the {saw} and pare to the line"
    else:
        weight, cure = Weight.HALT, "wider pins, or a narrower chisel"
    yield fault(
        j,
        code(j, "no-chisel"),
        weight,
        says=f"{j.name}: no chisel goes between the tails, or between the pins, to chop the waste",
        cure=cure,
        figure=narrowest,
        limit=owned if owned is not None else Fraction(0),
        shop=shop,
    )


def _slope(j: Joined, layout: Layout, shop: Shop) -> Iterator[Finding]:
    if FLATTEST <= layout.slope <= STEEPEST:
        return
    steep = layout.slope > STEEPEST
    finding = fault(
        j,
        code(j, "steep" if steep else "flat"),
        Weight.MIND,
        says=f"{j.name}: the corners of the tails are short grain and break off"
        if steep
        else f"{j.name}: so little slope hardly wedges",
        cure="a slope of 1:6 in softwood, 1:8 in hardwood",
        figure=layout.lean,
        limit=layout.depth * (STEEPEST if steep else FLATTEST),
        shop=shop,
        source="manuals of joinery, from 1:4 to 1:8",
    )
    yield finding


def _shows(j: Joined, layout: Layout, groove: Range, shop: Shop) -> Iterator[Finding]:
    """A groove that comes out through a pin: how far it would have to move."""
    if layout.hides(groove):
        return
    neck = min(layout.necks, key=lambda n: _off(n, groove))
    off = _off(neck, groove)
    if neck[1] - neck[0] < groove[1] - groove[0]:
        cure = "stop the groove, or take fewer and wider tails"
    else:
        way = "away from" if groove[0] < neck[0] else "towards"
        cure = (
            f"stop the groove before the joint, or set it {shop.reads(off)} {way} the edge it is "
            f"counted from, or make the half pin narrower by as much"
        )
    yield fault(
        j,
        code(j, "groove-shows"),
        Weight.MIND,
        says=f"{j.name}: the groove comes out through a pin and shows at the end",
        cure=cure,
        figure=off,
        limit=Fraction(0),
        shop=shop,
        source="Handwork in Wood, 1910",
    )


def _off(neck: Range, groove: Range) -> Fraction:
    return max(neck[0] - groove[0], groove[1] - neck[1], Fraction(0))
