"""What rabbets and grooves share: they run along a part, and may stop before its ends."""

from __future__ import annotations

from typing import Literal

from scantling.exact import Fraction
from scantling.joints._frame import leaving
from scantling.joints._joint import Joined, Move, Said
from scantling.parts import ALONG, Part, Span, Way
from scantling.sizes.linear import Linear
from scantling.sizes.model import Dimension, Kind, Level, Relations, Rule, Sizes

Stops = Literal["no", "near", "far", "both"]
NEAR, FAR = "near stop", "far stop"  # dimensions: wood left at the end


def stops_of(stopped: Stops, *, near: Said | None, far: Said | None) -> tuple[str, ...]:
    """The dimensions of the ends it stops at: where that is asked for, or said how far."""
    asked = {
        NEAR: stopped in {"near", "both"} or near is not None,
        FAR: stopped in {"far", "both"} or far is not None,
    }
    return tuple(word for word, wanted in asked.items() if wanted)


def stop_relations(
    j: Joined, stops: tuple[str, ...], *, usual: Linear, because: str, level: Level
) -> Relations:
    """What is left at the ends it stops at."""
    return Relations(
        dimensions=tuple(
            Dimension(name=j.own(word), kind=Kind.TAPE, says=f"{word} of {j.name}")
            for word in stops
        ),
        rules=tuple(
            Rule(sum=j.size(word) - usual, because=because, level=level, source="common practice")
            for word in stops
        ),
    )


def span_along(j: Joined, stops: tuple[str, ...], *, sizes: Sizes) -> Span:
    """From where to where it runs, counted in the receiving seat."""
    far = j.length("receives").at(sizes) - j.seat("receives").along.at(sizes)
    return Span(
        sizes[j.own(NEAR)] if NEAR in stops else None,
        far - sizes[j.own(FAR)] if FAR in stops else None,
    )


def reach(
    j: Joined, stops: tuple[str, ...], *, sizes: Sizes, part: Part
) -> tuple[Fraction, Fraction]:
    """The same with open ends at the ends of the part. [mm]"""
    span, start = span_along(j, stops, sizes=sizes), j.seat("receives").along.at(sizes)
    return (
        -start if span.start is None else span.start,
        part.extent.length - start if span.stop is None else span.stop,
    )


def ways_out(
    j: Joined, stops: tuple[str, ...], *, part: Part, mouths: tuple[int, ...]
) -> tuple[Move, ...]:
    """Out of every open side, and along where it does not stop."""
    seat = j.seat("receives")
    ways: list[Way] = [seat.way(axis=axis, part=part).opposite for axis in mouths]
    along = seat.way(axis=ALONG, part=part)
    ways += [along.opposite] if NEAR not in stops else []
    ways += [along] if FAR not in stops else []
    return leaving("enters", *ways)
