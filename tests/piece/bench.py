"""Forms and joints of the tests' own, so that the reader is tested by itself."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, ClassVar

from scantling.joints._joint import Joint, Said, option
from scantling.piece import Piece, read
from scantling.piece._form import Form
from scantling.piece._section import (
    Count,
    Gap,
    JointWanted,
    Length,
    Load,
    Section,
    Thick,
    Truth,
    TwoLengths,
    Word,
    also,
    among,
    spelt,
)

HEAD = """format = 1
name = "Box"
measure = "inch"
[room]
dry = "40 % at 18 C"
damp = "75 % at 20 C"
bench = "38 % at 17 C"
[wood]
show = "white ash"
"""


@dataclass(frozen=True, kw_only=True)
class Housing(Joint):
    """Housing: a trench across one board takes the end of another."""

    title: ClassVar[str] = "housing"
    deep: Said | None = option(dimension="depth", says="depth of the trench", words=("depth",))
    stopped: bool = False


@dataclass(frozen=True, kw_only=True)
class HalfBlind(Joint):
    """Half-blind dovetail."""

    title: ClassVar[str] = "half-blind dovetail"
    lap: Said | None = option(dimension="lap", says="wood left before the tails")
    tails: int | None = None
    slope: Said | None = field(default=None, metadata={"reads": "ratio", "words": ("pitch",)})


@dataclass(frozen=True, kw_only=True)
class Tenon(Joint):
    """Mortise and tenon."""

    title: ClassVar[str] = "mortise and tenon"
    tenon: Said | None = option(dimension="tenon", says="length of the tenon")


class Sides(Section):
    thick: Length | None = None


class CaseSection(Section):
    wide: Length
    deep: Annotated[Length | None, spelt("depth")] = None
    tall: Length | None = None
    sides: Sides = Sides()
    bottom: Annotated[JointWanted, also("top_face")] | None = None
    rails_under_top: (
        Annotated[JointWanted, also("wide", count=Count, usual="half-blind dovetail")] | None
    ) = None


class RowSaid(Section):
    rail: Word | None = None
    opening: Word | None = None
    tall: Length | None = None
    foot: Length | None = None


class FrameSection(Section):
    joint: JointWanted
    stiles: Length | None = None
    rows: tuple[RowSaid, ...] = ()


class ShelfSection(Section):
    joint: JointWanted | None = None
    flush_with: Word | None = None
    count: Count | None = None
    thick: Thick | None = None
    load: Load | None = None


class Gaps(Section):
    hinge: Gap | None = None
    meeting: Gap | None = None


class DoorsSection(Section):
    fill: Word
    meeting: Annotated[JointWanted, also(usual="housing")]
    pair: Truth = False
    panel: Annotated[Word, among("fielded", "flat")] | None = None
    gaps: Gaps = Gaps()
    hinge: TwoLengths | None = None


class Case(Form):
    title: ClassVar[str] = "case"
    order: ClassVar[int] = 1
    section: ClassVar[type[Section]] = CaseSection


class Frame(Form):
    title: ClassVar[str] = "face frame"
    order: ClassVar[int] = 2
    section: ClassVar[type[Section]] = FrameSection


class Shelf(Form):
    title: ClassVar[str] = "shelf"
    order: ClassVar[int] = 3
    many: ClassVar[bool] = True
    section: ClassVar[type[Section]] = ShelfSection


class Doors(Form):
    title: ClassVar[str] = "doors"
    order: ClassVar[int] = 4
    section: ClassVar[type[Section]] = DoorsSection


FORMS: dict[str, type[Form]] = {form.title: form for form in (Case, Frame, Shelf, Doors)}
JOINTS: dict[str, type[Joint]] = {joint.title: joint for joint in (Housing, HalfBlind, Tenon)}


def read_here(text: str, *, file: str = "piece.toml") -> Piece:
    """A piece of the tests' own forms and joints."""
    return read(text, file=file, forms=FORMS, joints=JOINTS)
