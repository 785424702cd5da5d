"""What every paper shares: the sheet, what a paper is, and lengths as the maker reads them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from typing import ClassVar, Protocol

from scantling.exact import Fraction
from scantling.joints._joint import DrawnSize, Estimate
from scantling.papers._drawing.line_types import Angle
from scantling.parts import Part
from scantling.setting_out import Line, SettingOut
from scantling.sizes.model import Kind, Origin, Size
from scantling.units import FINEST_INCH, INCH, Unit, on_grid, rounded, written
from scantling.wording import Speech

CALLIPERS = Fraction(1, 10)  # [mm] what they are read to
OWN_SIZES = ("length", "width", "thickness")  # of a part, along, across and into its wood


class Sheet(StrEnum):
    """Paper the maker's printer takes."""

    A4 = "A4"
    LETTER = "Letter"

    @property
    def size(self) -> tuple[Fraction, Fraction]:
        """Wide and tall, held upright. [mm]

        References:
            ISO 216:2007, table 2 (A4); ANSI/ASME Y14.1, size A (8 1/2 by 11 in).
        """
        if self is Sheet.A4:
            return Fraction(210), Fraction(297)
        return Fraction(17, 2) * INCH, 11 * INCH

    @property
    def angle(self) -> Angle:
        """How views stand to each other on it: where Letter is printed, third angle is read.

        Common practice; ISO 5456-2:1996 allows either and asks for its symbol on the sheet.
        """
        return Angle.THIRD if self is Sheet.LETTER else Angle.FIRST


class Paper(Protocol):
    """One paper: a setting-out in, files by name out. Same input, same bytes."""

    title: ClassVar[str]

    @classmethod
    def render(cls, setting_out: SettingOut, *, sheet: Sheet) -> Mapping[str, bytes]:
        """Files of this paper by name. A paper that is no sheet pays no heed to `sheet`."""
        ...


@dataclass(frozen=True, kw_only=True)
class Rule:
    """The maker's rule: how he reads a length."""

    unit: Unit
    nearest: Fraction | None = None  # mark that figures of the other measure are given to [mm]
    finest: Fraction | None = None  # mark of the shop's rule, that a gauge or line is set by [mm]

    def reads(self, value: Fraction, *, loose: bool = False) -> str:
        """A length without its unit, with "about " before it where no rule shows it exactly.

        In inches what falls on no 64th is given to the nearest one from an inch up, where a
        rule reads it, and in thousandths below, where callipers do. Figures of a piece made in
        the other measure are given to `nearest`, and below four such marks as callipers do.

        Args:
            value: The length. [mm]
            loose: It is taken from the work, so even a plain number is only about right.
        """
        text, exact = _read_off(self, value)
        return text if exact and not loose else f"about {text}"

    def sets(self, value: Fraction) -> str:
        """A length as it is set with the shop's rule: to its mark, "about" where it falls off.

        Below four marks nobody sets by eye: it is given as `reads` has it. [mm]
        """
        if self.finest is None or abs(value) < 4 * self.finest:
            return self.reads(value)
        near = rounded(value, to=self.finest)
        return self.reads(near, loose=near != value)

    def shows(self, value: Fraction) -> bool:
        """Whether a mark, or callipers, show a length exactly. [mm]"""
        return on_grid(value, to=self._mark(value))

    def _mark(self, value: Fraction) -> Fraction:
        if self.nearest is not None and abs(value) >= 4 * self.nearest:
            return self.nearest
        if self.unit is Unit.INCH:
            return FINEST_INCH
        return Fraction(1, 100) if self.nearest is None else CALLIPERS

    def plain(self, value: Fraction) -> str:
        """A length as near as it is read, without saying whether that is exact. [mm]"""
        small = abs(value) < (INCH if self.nearest is None else 4 * self.nearest)
        if not small or (self.nearest is not None and self.unit is Unit.MM):
            value = rounded(value, to=self._mark(value))
        return written(value, unit=self.unit)


@lru_cache(maxsize=20_000)  # a piece has few lengths and says each of them often
def _read_off(rule: Rule, value: Fraction) -> tuple[str, bool]:
    return rule.plain(value), rule.shows(value)


def rule_of(setting_out: SettingOut) -> Rule:
    """How the maker of this piece wants lengths shown."""
    own, shown = setting_out.piece.whole.measure, setting_out.habits.figures
    if shown in {None, own}:
        shop = setting_out.shop
        return Rule(unit=own, finest=shop.finest if shop.unit is own else None)
    return Rule(unit=shown or own, nearest=INCH / 32 if shown is Unit.INCH else Fraction(1, 2))


def speech_of(setting_out: SettingOut) -> Speech:
    """Whose words the maker wants: who reads inches speaks as in the US, unless he says not."""
    by_measure = Speech.US if setting_out.piece.whole.measure is Unit.INCH else Speech.UK
    return setting_out.habits.words or by_measure


def names_in(setting_out: SettingOut) -> frozenset[str]:
    """Names that the maker's file can hold; no display setting changes them."""
    parts = {name for p in setting_out.parts for name in (p.name, p.family, p.wood)}
    # a joint by itself goes by its trade name, which is no name of the maker's
    joined = (*setting_out.joined, *(joint.joined for joint in setting_out.joints))
    joints = {each.name for each in joined if each.name != each.joint.title}
    return frozenset({*parts, *joints, *setting_out.sizes.by_name, setting_out.piece.whole.name})


@dataclass(frozen=True, kw_only=True)
class OwnSize:
    """One of the three sizes of a part, with how it is set out."""

    value: Fraction  # [mm]
    size: Size | None  # None: the part is bought, and nothing solves it

    @property
    def loose(self) -> bool:
        """Taken from the work and never measured off."""
        return self.size is not None and is_loose(self.size)

    @property
    def set_out(self) -> Kind:
        """How it is set out; a bought thing sets itself, as a tool does."""
        return Kind.TOOL if self.size is None else self.size.kind

    @property
    def origin(self) -> Origin:
        """Where it came from."""
        return Origin.FOLLOWS if self.size is None else self.size.origin


def is_loose(size: Size) -> bool:
    """Whether a figure for it is only about right: its mate or the work gives it."""
    return size.off_tape or size.kind is Kind.MATE


def own_sizes(setting_out: SettingOut, part: Part) -> tuple[OwnSize, OwnSize, OwnSize]:
    """Length, width and thickness of a part."""
    extent, known = part.extent, setting_out.sizes
    found = [
        OwnSize(
            value=extent[axis],
            size=known.size(f"{part.name}.{word}") if f"{part.name}.{word}" in known else None,
        )
        for axis, word in enumerate(OWN_SIZES)
    ]
    return (found[0], found[1], found[2])


def set_out_words(line: Line, setting_out: SettingOut) -> str:
    """How the sizes of a line are set out: `tape`, or `tape; thick tool; wide mate`."""
    words = ("long", "wide", "thick")
    first, *others = (own.set_out for own in own_sizes(setting_out, line.part))
    rest = [f"{w} {k}" for w, k in zip(words[1:], others, strict=True) if k is not first]
    return "; ".join([str(first), *rest])


def by_tool(figure: DrawnSize, setting_out: SettingOut) -> bool:
    """Whether a tool or a bought thing gives a figure, and no rule sets it."""
    name, known = figure.dimension, setting_out.sizes
    return name is not None and name in known and known.size(name).kind is Kind.TOOL


def figure_reads(figure: DrawnSize, rule: Rule, *, has_steps: bool) -> str:
    """A figure of a joint's drawing as the maker reads it: a length, `1:6`, or a number.

    Args:
        figure: The figure.
        rule: The maker's rule.
        has_steps: A drill, an iron or a bought thing gives it, in steps of its own.
    """
    value = figure.value
    if figure.unit == "mm":
        return rule.reads(value) if has_steps else rule.sets(value)
    if figure.unit == "ratio":
        return f"1:{_plain_number(1 / value)}" if value else "0"
    unit = "" if figure.unit == "count" else figure.unit
    return f"{_plain_number(value)} {unit}".strip()


# what one of each is in the units of a maker who reads inches: pounds, pounds by feet, by inches
_POUNDS = {"N": (4.448222, "lb"), "N m": (1.355818, "lb ft"), "N/mm": (0.1751268, "lb per inch")}


def load_reads(estimate: Estimate, *, unit: Unit) -> str:
    """What a joint holds as the maker reads it, to two figures: `810 lb`, `3600 N`, `nothing`.

    Args:
        estimate: The load. [N, N m or N/mm]
        unit: How the maker of the piece reads lengths.

    References:
        NIST SP 811 (2008), appendix B.8, for the pound, the pound-foot and the pound per inch.
    """
    each, word = _POUNDS[estimate.unit] if unit is Unit.INCH else (1.0, estimate.unit)
    value = float(f"{estimate.value / each:.2g}")
    return f"{value:g} {word}" if value else "nothing"


def _plain_number(value: Fraction) -> str:
    return written(value, unit=Unit.MM)  # two places, as the metric rule writes them
