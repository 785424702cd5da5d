"""The lines of a drawer's bottom: bevels on three edges, the slot behind, patches in the grooves.

Coordinates of the bottom: along from its left end, across from its front edge, into the wood from
its upper face, which lies against the upper walls of the grooves and under the back.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from scantling.exact import Fraction
from scantling.joints._frame import Patch
from scantling.joints._joint import Fit, Glue, Joined, Seat, rectangle
from scantling.parts import ACROSS, ALONG, INTO, Box, Corner, Cut, Point, Profile, Span
from scantling.sizes.model import Sizes

CLEAR = Fraction(3, 10)  # [mm] a slot is so much wider than its screw
LEAST_BEHIND = Fraction(3)  # [mm] of wood between a closed slot and the rear edge
NOTHING = Fraction(0)


@dataclass(frozen=True, kw_only=True)
class Bottom:
    """A drawer's bottom in figures. [mm]"""

    length: Fraction
    width: Fraction
    thickness: Fraction
    groove: Fraction  # width of the groove
    depth: Fraction  # of the groove
    ease: Fraction  # at either end
    run: Fraction  # of the bevel, in from the edge
    back: Fraction  # thickness of the back, under whose outer face the bottom ends

    @property
    def reach(self) -> Fraction:
        """How far either end goes into its side. [mm]"""
        return self.depth - self.ease

    @property
    def is_bevelled(self) -> bool:
        """Whether the edges have to be made thinner to go in."""
        return self.thickness > self.groove

    def edge(self, reach: Fraction) -> Fraction:
        """Thickness left at an edge whose bevel fills the groove at its mouth. [mm]

        Args:
            reach: How far that edge goes in. [mm]
        """
        if not self.is_bevelled:
            return self.thickness
        rise = (self.thickness - self.groove) / (self.run - reach)
        return self.groove - rise * reach

    @property
    def screw_at(self) -> tuple[Fraction, Fraction]:
        """Where it is held: middle of its length, middle of the back. [mm]"""
        return (self.length / 2, self.width - self.back / 2)


def bottom_of(j: Joined, *, sizes: Sizes) -> Bottom:
    """The figures of a bottom at solved sizes."""
    return Bottom(
        length=j.length("bottom").at(sizes),
        width=j.width("bottom").at(sizes),
        thickness=j.thickness("bottom").at(sizes),
        groove=sizes[j.own("groove")],
        depth=sizes[j.own("depth")],
        ease=sizes[j.own("end ease")],
        run=sizes[j.own("bevel")],
        back=j.thickness("back").at(sizes),
    )


def bevels(j: Joined, found: Bottom, *, sizes: Sizes) -> tuple[Cut, ...]:
    """Under sides of the front edge and of both ends, planed down to go into the grooves."""
    if not found.is_bevelled:
        return ()
    seat = j.seat("bottom")
    corner = seat.corner
    far = Corner(end=corner.opposite(ALONG), edge=corner.edge, face=corner.face)
    ends = {"left": seat, "right": replace(seat, corner=far)}
    cuts = [
        _bevel(j, ends[end], f"bevel at the {end} end", found, reach=found.reach, sizes=sizes)
        for end in ends
    ]
    front = _bevel(j, seat, "bevel in front", found, reach=found.depth, axis=ALONG, sizes=sizes)
    return (front, *cuts)


def _bevel(
    j: Joined,
    seat: Seat,
    name: str,
    found: Bottom,
    *,
    reach: Fraction,
    sizes: Sizes,
    axis: int = ACROSS,
) -> Cut:
    full = found.thickness
    points = ((NOTHING, found.edge(reach)), (found.run, full), (NOTHING, full))
    run = "point 1 across" if axis == ALONG else "point 1 along"
    return seat.cut(
        sizes,
        name=name,
        owner=j.name,
        shape=Profile(axis=axis, points=points, open_sides=frozenset({1, 2})),
        sized={run: j.own("bevel")},
    )


def slot(j: Joined, found: Bottom, *, sizes: Sizes) -> Cut:
    """The slot that lets the bottom move under its screw; out through the rear edge if near it."""
    low, high = slot_ends(j, found, sizes=sizes)
    middle, _ = found.screw_at
    half = (sizes[j.own("screw")] + CLEAR) / 2
    is_open = high > found.width - LEAST_BEHIND
    return j.seat("bottom").cut(
        sizes,
        name="slot for the screw",
        owner=j.name,
        shape=Box(
            along=Span(middle - half, middle + half), across=Span(low, None if is_open else high)
        ),
        sized={} if is_open else {"across size": j.own("slot")},
    )


def slot_ends(j: Joined, found: Bottom, *, sizes: Sizes) -> tuple[Fraction, Fraction]:
    """From where to where the slot runs across the bottom. [mm]"""
    _, at = found.screw_at
    high = at + sizes[j.own("screw")] / 2 + sizes[j.own("slot behind")]
    return (high - sizes[j.own("slot")], high)


def patches(
    found: Bottom, *, slot_width: Fraction, slot_from: Fraction | None
) -> Iterator[tuple[str, Patch]]:
    """Role of the mate and the patch that touches it, in coordinates of the bottom.

    The bottom's edges touch the lower lips only in a line, so the upper walls are what counts.

    Args:
        found: The bottom.
        slot_width: Width of the slot in the middle. [mm]
        slot_from: Where the slot starts behind the front edge; None for no slot. [mm]
    """
    inside = (found.reach, found.length - found.reach)
    under_back = (found.width - found.back, found.width)
    ends = {"left": (NOTHING, inside[0]), "right": (inside[1], found.length)}
    for role, along in ends.items():
        yield role, _upper("groove", along, (found.depth, under_back[0]))
    yield "front", _upper("groove", inside, (NOTHING, found.depth))
    floor = (NOTHING, found.edge(found.depth))
    yield "front", _patch("floor", rectangle(axis=ACROSS, at=NOTHING, first=inside, second=floor))
    middle, _ = found.screw_at
    half = slot_width / 2 if slot_from is not None and slot_from < found.width else NOTHING
    for along in ((inside[0], middle - half), (middle + half, inside[1])):
        yield "back", _upper("under the back", along, under_back)


def _upper(zone: str, along: tuple[Fraction, Fraction], across: tuple[Fraction, Fraction]) -> Patch:
    return _patch(zone, rectangle(axis=INTO, at=NOTHING, first=along, second=across))


def _patch(zone: str, points: tuple[Point, ...]) -> Patch:
    return Patch(zone=zone, glue=Glue.DRY, points=points, fit=Fit.SLIDE)
