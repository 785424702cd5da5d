"""Tails and pins across a width: how many, how wide, and where a groove comes out.

Widths are told at two lines. At the tip line the tails are widest and the pins narrowest, at the
base line it is the other way round; between them every flank leans by the slope.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import count

from scantling.exact import Fraction
from scantling.units import INCH, Unit

Range = tuple[Fraction, Fraction]

TAIL_TO_PIN = Fraction(5, 2)  # [-] at the base line, where the two come nearest to each other
WIDEST_TAIL = Fraction(45)  # [mm]
HALF_PIN = Fraction(6)  # [mm] at the tip line
LEAST_HALF_PIN = Fraction(4)  # [mm] at the tip line
LEAST_END = Fraction(10)  # [mm] wood beside a socket in the end of a wide part
PIN_SHARE = Fraction(1, 4)  # [-] whole pin at the tip line over the thickness of the pin board


@dataclass(frozen=True, kw_only=True)
class Layout:
    """Tails across a width, in the coordinates of the joint. [mm]"""

    start: Fraction  # edge the first half pin starts from
    width: Fraction
    count: int  # tails
    pin: Fraction  # whole pin at the tip line
    half_pin: Fraction  # at the tip line
    depth: Fraction  # from tip line to base line
    slope: Fraction  # [-] rise over depth

    @property
    def stop(self) -> Fraction:
        """Edge where the last half pin ends. [mm]"""
        return self.start + self.width

    @property
    def lean(self) -> Fraction:
        """How far a flank comes in between tip and base. [mm]"""
        return self.depth * self.slope

    @property
    def tail(self) -> Fraction:
        """A tail at the tip line: what half pins and pins leave, in equal parts. [mm]"""
        pins = (self.count - 1) * self.pin
        return (self.width - 2 * self.half_pin - pins) / self.count

    @property
    def tail_base(self) -> Fraction:
        """A tail at the base line, its neck. [mm]"""
        return self.tail - 2 * self.lean

    @property
    def pin_base(self) -> Fraction:
        """A whole pin at the base line, its root. [mm]"""
        return self.pin + 2 * self.lean

    @property
    def half_pin_base(self) -> Fraction:
        """A half pin at the base line. [mm]"""
        return self.half_pin + self.lean

    @property
    def tips(self) -> tuple[Range, ...]:
        """From where to where each tail runs at the tip line. [mm]"""
        first, step = self.start + self.half_pin, self.tail + self.pin
        return tuple((first + i * step, first + i * step + self.tail) for i in range(self.count))

    @property
    def necks(self) -> tuple[Range, ...]:
        """From where to where each tail runs at the base line. [mm]"""
        return tuple((low + self.lean, high - self.lean) for low, high in self.tips)

    @property
    def roots(self) -> tuple[Range, ...]:
        """From where to where each pin runs at the base line, half pins included. [mm]"""
        necks = self.necks
        lows = (self.start, *(high for _, high in necks))
        highs = (*(low for low, _ in necks), self.stop)
        return tuple(zip(lows, highs, strict=True))

    @property
    def has_room(self) -> bool:
        """Whether every tail has a neck."""
        return self.tail_base > 0

    def hides(self, groove: Range) -> bool:
        """Whether a groove comes out within one tail; the neck counts, being narrower."""
        return any(low <= groove[0] and groove[1] <= high for low, high in self.necks)


@dataclass(frozen=True, kw_only=True)
class Asked:
    """What a layout has to meet. [mm]"""

    start: Fraction
    width: Fraction
    depth: Fraction
    slope: Fraction  # [-]
    thickness: Fraction  # of the part that carries the pins
    count: int | None  # as the maker said
    pin: Fraction | None  # as the maker said
    half_pin: Fraction | None  # as the maker said
    narrow: bool  # the tails go into the end of a wider part
    grooves: tuple[Range, ...]  # to be hidden
    chisel: Fraction | None  # the narrowest owned, which has to chop between the tails
    unit: Unit

    @property
    def step(self) -> Fraction:
        """What a width nobody gauges is rounded to. [mm]"""
        return INCH / 32 if self.unit is Unit.INCH else Fraction(1, 2)


def laid_out(asked: Asked) -> Layout:
    """The layout that meets what is asked best.

    Tails about 2 1/2 times as wide as the pins between them, both at the base line. Into the end
    of a wider part as few as stay under 45 mm, with wood left beside them. Where a groove would
    come out through a pin, another count is taken, then a narrower half pin; if nothing hides
    it, the layout is the one that would be taken without it.

    References:
        A survey of drawer making for the ratio, Handwork in Wood, 1910, for the widest tail;
        half pins, rounding and the pin of a quarter of the thickness are common practice.
    """
    first: Layout | None = None
    wide: Layout | None = None
    for half_pin in _half_pins(asked):
        for layout in _by_merit(asked, half_pin):
            first = first or layout
            if not all(layout.hides(groove) for groove in asked.grooves):
                continue
            if layout.tail <= WIDEST_TAIL:
                return layout
            wide = wide or layout
    return wide or first or _layout(asked, asked.count or 1, _quarter(asked))


def _quarter(asked: Asked) -> Fraction:
    """Half pins where there is no room for usual ones."""
    return asked.width / 8 if asked.half_pin is None else asked.half_pin


def _layout(asked: Asked, count: int, half_pin: Fraction) -> Layout:
    return Layout(
        start=asked.start,
        width=asked.width,
        count=count,
        pin=_pin(asked) if asked.pin is None else asked.pin,
        half_pin=half_pin,
        depth=asked.depth,
        slope=asked.slope,
    )


def _pin(asked: Asked) -> Fraction:
    """A quarter of the thickness, or as much more as lets the narrowest chisel in at the root."""
    usual = max(rounded(asked.thickness * PIN_SHARE, step=asked.step), asked.step)
    if asked.chisel is None:
        return usual
    needed = asked.chisel - 2 * asked.depth * asked.slope
    return max(usual, min(up(needed, step=asked.step), 2 * usual))


def _half_pins(asked: Asked) -> Iterable[Fraction]:
    """Widths of the half pin to try, the best first."""
    if asked.half_pin is not None:
        return [asked.half_pin]
    usual = rounded(HALF_PIN, step=asked.step)
    if asked.narrow:
        # wood further out is not counted on: a rabbet may have taken it
        needed = max(LEAST_END, asked.thickness / 2)
        usual = max(usual, up(needed, step=asked.step))
    steps = int((usual - LEAST_HALF_PIN) / asked.step)
    return [usual - i * asked.step for i in range(steps + 1)]


def _by_merit(asked: Asked, half_pin: Fraction) -> Sequence[Layout]:
    """Layouts with that half pin that have room, the best first."""
    if asked.count is not None:
        only = _layout(asked, asked.count, half_pin)
        return [only] if only.has_room else []
    found = []
    for layout in (_layout(asked, n, half_pin) for n in count(1)):
        if not layout.has_room:
            break
        found.append(layout)
        if layout.tail <= WIDEST_TAIL and layout.tail_base < layout.pin_base:
            break  # more tails would only be narrower
    if asked.narrow:
        return sorted(found, key=lambda one: (one.tail > WIDEST_TAIL, one.count))
    return sorted(found, key=_off_ratio)


def _off_ratio(layout: Layout) -> tuple[bool, bool, Fraction]:
    ratio = layout.tail_base / layout.pin_base
    # one tail has no pin to be held against: taken where two find no room
    return layout.tail > WIDEST_TAIL, layout.count == 1, abs(ratio - TAIL_TO_PIN)


def rounded(wanted: Fraction, *, step: Fraction) -> Fraction:
    """The nearest whole step; the larger of two as near. [mm]"""
    return (wanted + step / 2) // step * step


def up(wanted: Fraction, *, step: Fraction) -> Fraction:
    """The next whole step, none below what is wanted. [mm]"""
    return -(-wanted // step) * step
