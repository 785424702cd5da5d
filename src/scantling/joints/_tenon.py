"""Layout of a tenon in its mortise, shared by the joints that have one.

Coordinates are those of `_frame`: along the mortised part, across it from the mouth inwards,
into the wood from its face side. Across the tenoned part is the same as along the mortised one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from scantling.exact import Fraction
from scantling.joints._frame import Patch, Range, common, is_at_end, surfaces
from scantling.joints._joint import Beside, Fit, Glue, Joined, rectangle
from scantling.parts import ACROSS, ALONG, INTO, Box, Cut, Part, Span
from scantling.sizes.linear import ZERO
from scantling.sizes.model import Sizes

SOCKET_OVER = Fraction(1, 2)  # [mm] a haunch's socket is deeper than the haunch is long

Edge = Literal["near", "far"]


@dataclass(frozen=True, kw_only=True)
class Haunch:
    """What is left of the tenon's full width beside it, short as it is."""

    along: Range  # [mm]
    length: Fraction  # from the shoulder [mm]
    at: Edge
    in_groove: bool  # a groove takes it; otherwise it has a socket of its own


@dataclass(frozen=True, kw_only=True)
class Tenon:
    """One tenon as it lies in its mortise. [mm]"""

    along: Range
    into: Range
    whole: Range  # the part it stands on, edge to edge
    length: Fraction  # from the shoulder
    reach: Fraction  # past the mouth; less than `length` by the shoulder gap
    mortise: Fraction  # depth
    groove: Fraction  # depth of the groove in the mouth edge, 0 for none
    haunch: Haunch | None = None

    @property
    def width(self) -> Fraction:
        """Of the tenon, which is the length of the mortise. [mm]"""
        return self.along[1] - self.along[0]

    @property
    def thickness(self) -> Fraction:
        """Of the tenon, which is the width of the mortise. [mm]"""
        return self.into[1] - self.into[0]

    @property
    def middle(self) -> Fraction:
        """Of the tenon, across the part it stands on. [mm]"""
        return (self.along[0] + self.along[1]) / 2

    @property
    def opened(self) -> Fraction:
        """How far the shoulder stands off the mouth. [mm]"""
        return self.length - self.reach

    @property
    def cheek_area(self) -> Fraction:
        """Both cheeks within the mortise; a haunch is never glued. [mm2]"""
        return 2 * self.width * self.reach


def grooves(j: Joined, role: str) -> tuple[Beside, ...]:
    """Grooves that the form told of in that seat."""
    return j.neighbours("groove", role=role)


def grooved_edges(j: Joined, *, haunch_at: Edge | None) -> dict[Edge, Beside]:
    """Grooves in the tenoned part by edge: a lone one lies away from the haunch, or far."""
    told = grooves(j, "enters")
    if len(told) == 1:
        return {"near" if haunch_at == "far" else "far": told[0]}
    edges: tuple[Edge, Edge] = ("near", "far")
    return dict(zip(edges, told, strict=False))


def tenon(j: Joined, *, sizes: Sizes, haunch_at: Edge | None) -> Tenon:
    """The layout at solved sizes. [mm]"""
    near, far = (sizes[j.own(f"{edge} edge shoulder")] for edge in ("near", "far"))
    wide = j.width("enters").at(sizes)
    start, stop = near, wide - far
    haunch = None
    met = grooves(j, "receives")
    if haunch_at is not None:
        size, length = sizes[j.own("haunch")], sizes[j.own("haunch length")]
        along = (start, start + size) if haunch_at == "near" else (stop - size, stop)
        haunch = Haunch(along=along, length=length, at=haunch_at, in_groove=bool(met))
        start, stop = (along[1], stop) if haunch_at == "near" else (start, along[0])
    set_in = sizes[j.own("set in")]
    return Tenon(
        along=(start, stop),
        into=(set_in, set_in + sizes[j.own("thickness")]),
        whole=(Fraction(0), wide),
        length=sizes[j.own("tenon")],
        reach=sizes[j.own("entry")],
        mortise=sizes[j.own("mortise depth")],
        groove=max((g.depth.at(sizes) for g in met), default=Fraction(0)),
        haunch=haunch,
    )


def mortise_cuts(j: Joined, found: Tenon, *, sizes: Sizes) -> tuple[Cut, ...]:
    """The mortise, and a socket for a haunch that no groove takes."""
    seat = j.seat("receives")
    shares = frozenset(g.owner for g in grooves(j, "receives"))
    words = {"into size": "thickness", "across size": "mortise depth", "along size": "width"}
    if seat.into == ZERO:
        words["into start"] = "set in"
    into = Span(*found.into)
    mortise = seat.cut(
        sizes,
        name="mortise",
        owner=j.name,
        shape=Box(along=Span(*found.along), across=Span(None, found.mortise), into=into),
        shares=shares,
        sized={word: j.own(name) for word, name in words.items()},
    )
    haunch = found.haunch
    if haunch is None or haunch.in_groove:
        return (mortise,)
    open_end = is_at_end(j) and haunch.at == "near" and haunch.along[0] == 0
    socket = Box(
        along=Span(None if open_end else haunch.along[0], haunch.along[1]),
        across=Span(None, haunch.length - found.opened + SOCKET_OVER),
        into=into,
    )
    return (
        mortise,
        seat.cut(
            sizes,
            name="haunch socket",
            owner=j.name,
            shape=socket,
            sized={"into size": j.own("thickness")},
        ),
    )


def tenon_cuts(j: Joined, found: Tenon, *, sizes: Sizes) -> tuple[Cut, ...]:
    """Cheeks, edge shoulders and haunch; where the part has no wood there, no cut."""
    seat = j.seat("enters")
    shares = frozenset(g.owner for g in grooves(j, "enters"))
    return tuple(
        seat.cut(
            sizes,
            name=name,
            owner=j.name,
            shape=shape,
            shares=shares,
            sized={word: j.own(dimension) for word, dimension in words.items()},
        )
        for name, shape, words in _waste(j, found, sizes=sizes)
    )


def _waste(
    j: Joined, found: Tenon, *, sizes: Sizes
) -> Iterator[tuple[str, Box, Mapping[str, str]]]:
    off = j.seat("enters").into.at(sizes)
    front, back = -off, j.thickness("enters").at(sizes) - off
    tip = Span(None, found.length)
    whole = {"along size": "tenon"} if j.seat("enters").along == ZERO else {}
    near, far = sizes[j.own("near edge shoulder")], sizes[j.own("far edge shoulder")]
    if found.into[0] > front:
        words = whole | ({"into size": "set in"} if off == 0 else {})
        yield "front cheek", Box(along=tip, into=Span(None, found.into[0])), words
    if found.into[1] < back:
        yield "back cheek", Box(along=tip, into=Span(found.into[1], None)), whole
    if near > 0:
        words = whole | {"across size": "near edge shoulder"}
        yield "near edge", Box(along=tip, across=Span(None, near)), words
    if far > 0:
        yield "far edge", Box(along=tip, across=Span(found.whole[1] - far, None)), whole
    if found.haunch is not None:
        start, stop = found.haunch.along
        across = Span(None, stop) if found.haunch.at == "near" else Span(start, None)
        yield "haunch", Box(along=Span(None, found.length - found.haunch.length), across=across), {}


def tenon_patches(
    j: Joined, found: Tenon, *, sizes: Sizes, parts: Mapping[str, Part]
) -> tuple[Patch, ...]:
    """Cheeks glued across the grain, ends of the mortise, dry haunch and shoulders."""
    is_fast = found.opened == 0
    glue = Glue.CROSSING if is_fast else Glue.DRY
    fit = Fit.PRESS if is_fast else Fit.SLIDE
    deep = (Fraction(0), found.reach)
    patches = [
        Patch(
            zone="cheek",
            glue=glue,
            fit=fit,
            points=rectangle(axis=INTO, at=at, first=found.along, second=deep),
        )
        for at in found.into
    ]
    patches += _ends(found, fit=fit)
    patches += _haunch_patches(found)
    if is_fast:
        patches += _shoulders(j, found, sizes=sizes, parts=parts)
    return tuple(patches)


def _ends(found: Tenon, *, fit: Fit) -> list[Patch]:
    patches = []
    for edge, at in zip(("near", "far"), found.along, strict=True):
        beside = found.haunch if found.haunch is not None and found.haunch.at == edge else None
        start = beside.length - found.opened if beside is not None else Fraction(0)
        if beside is not None and not beside.in_groove:
            start += SOCKET_OVER
        deep = (max(start, found.groove), found.reach)
        if deep[0] < deep[1]:
            points = rectangle(axis=ALONG, at=at, first=deep, second=found.into)
            patches.append(Patch(zone="end", glue=Glue.END_GRAIN, fit=fit, points=points))
    return patches


def _haunch_patches(found: Tenon) -> list[Patch]:
    haunch = found.haunch
    if haunch is None:
        return []
    deep = (Fraction(0), haunch.length - found.opened)
    if deep[0] >= deep[1]:
        return []
    flats = [rectangle(axis=INTO, at=z, first=haunch.along, second=deep) for z in found.into]
    if haunch.in_groove and deep[1] == found.groove:
        flats.append(rectangle(axis=ACROSS, at=deep[1], first=haunch.along, second=found.into))
    return [Patch(zone="haunch", glue=Glue.DRY, fit=Fit.TOUCH, points=flat) for flat in flats]


def _shoulders(
    j: Joined, found: Tenon, *, sizes: Sizes, parts: Mapping[str, Part]
) -> Iterator[Patch]:
    both = common(*surfaces(j, sizes=sizes, parts=parts))
    if both is None:
        return
    rows: list[tuple[Range, Range | None]] = [
        (found.whole, common(both, (both[0], found.into[0]))),
        (found.whole, common(both, (found.into[1], both[1]))),
    ]
    if found.groove == 0:
        low = found.haunch.along[0] if found.haunch and found.haunch.at == "near" else None
        high = found.haunch.along[1] if found.haunch and found.haunch.at == "far" else None
        start = found.along[0] if low is None else low
        stop = found.along[1] if high is None else high
        rows += [((Fraction(0), start), found.into), ((stop, found.whole[1]), found.into)]
    for along, into in rows:
        if into is not None and along[0] < along[1]:
            points = rectangle(axis=ACROSS, at=Fraction(0), first=along, second=into)
            yield Patch(zone="shoulder", glue=Glue.DRY, points=points)
