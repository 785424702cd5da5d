"""What comes out of the chain: a piece with its sizes, parts, joints and findings."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from scantling.errors import InternalError
from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight
from scantling.joints._joint import (
    Choice,
    Contact,
    DrawnSize,
    Estimate,
    Fixing,
    Gap,
    Joined,
    Move,
    Press,
    Strains,
)
from scantling.method.order import NO_ORDER, Order
from scantling.parts import Part
from scantling.piece import Piece
from scantling.record.entry import NOTHING_RECORDED, Record
from scantling.record.facts import NO_FACTS, Facts
from scantling.setting_out.memory import Memory
from scantling.setting_out.recorded import Changed, Plan
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation
from scantling.shop.tools import Shop
from scantling.sizes.model import Sizes, Stated
from scantling.sizes.settle import Settled
from scantling.solids.store import Store
from scantling.stock.buying import Shopping
from scantling.stock.lay_out import Laid
from scantling.stock.merchant import Offer


@dataclass(frozen=True, kw_only=True)
class SetGap:
    """Room left on purpose, through the year. [mm]"""

    gap: Gap
    at_bench: Fraction
    dampest: Fraction  # what moves on it at its widest, the day at the bench counted
    driest: Fraction  # and at its narrowest
    by_damp: Fraction  # how far it has closed in the dampest month, below 0 where it has opened
    by_dry: Fraction  # and in the driest, whether or not that is drier than the bench
    place: Place | None = None

    @classmethod
    def of(cls, gap: Gap, *, sizes: Sizes, strains: Strains, place: Place | None = None) -> SetGap:
        """The gap at solved sizes, by what its parts move. [mm]"""
        now, zero = gap.at_bench.at(sizes), Fraction(0)
        moving = [(strains[part], width.at(sizes)) for part, width in gap.moving if part in strains]
        damp = sum((s.grow * width for s, width in moving), zero)
        dry = -sum((s.shrink * width for s, width in moving), zero)
        if gap.either_way:
            widest, narrowest = -abs(damp), -abs(dry)
        else:
            widest = -sum((s.widest * width for s, width in moving), zero)
            narrowest = sum((s.narrowest * width for s, width in moving), zero)
        return cls(
            gap=gap,
            at_bench=now,
            dampest=now + widest,
            driest=now + narrowest,
            by_damp=damp,
            by_dry=dry,
            place=place,
        )

    def at(self, share: Fraction) -> Fraction:
        """What there is of it on the way from the driest month (0) to the dampest (1). [mm]"""
        closed = self.by_dry + share * (self.by_damp - self.by_dry)
        return self.at_bench - (abs(closed) if self.gap.either_way else closed)

    @property
    def in_damp(self) -> Fraction:
        """In the dampest month. [mm]"""
        return self.at(Fraction(1))

    @property
    def in_dry(self) -> Fraction:
        """In the driest month. [mm]"""
        return self.at(Fraction(0))

    @property
    def tightest(self) -> Fraction:
        """Least there is of it in the year or at the bench. [mm]"""
        return min(self.at_bench, self.in_damp, self.in_dry)

    @property
    def most_open(self) -> Fraction:
        """Most there is of it in the year or at the bench. [mm]"""
        return max(self.at_bench, self.in_damp, self.in_dry)


@dataclass(frozen=True, kw_only=True)
class SetJoint:
    """A joint with what it chose and answered at these sizes."""

    joined: Joined
    choice: Choice
    drawn: tuple[DrawnSize, ...]
    contacts: tuple[Contact, ...]
    presses: tuple[Press, ...]
    moves: tuple[Move, ...]  # out of the open state
    fixings: tuple[Fixing, ...] = ()
    gaps: tuple[SetGap, ...] = ()
    holds: tuple[Estimate, ...] = ()
    work: tuple[Operation, ...] = ()  # in its order
    areas: tuple[float, ...] = ()  # what truly touches of each contact, in their order [mm2]

    @property
    def name(self) -> str:
        """Name of the joint in this piece."""
        return self.joined.name

    @property
    def title(self) -> str:
        """Its trade name."""
        return self.joined.joint.title


@dataclass(frozen=True, kw_only=True)
class Line:
    """One line of the cutting list: parts of one family, wood and size."""

    mark: int  # carpenter's numeral
    family: str
    parts: tuple[Part, ...]
    rough: tuple[Fraction, Fraction, Fraction]  # length, width, thickness with allowances [mm]
    note: str = ""

    @property
    def part(self) -> Part:
        """The first of them."""
        return self.parts[0]


class Stage(StrEnum):
    """How far a piece has been worked through."""

    SIZED = "sized"  # sizes, parts, cutting list, and what speaks against them
    JOINED = "joined"  # and what the joints answered
    PROVEN = "proven"  # and what the proofs found: there is nothing more to come


@dataclass(frozen=True, kw_only=True)
class OnBoards:
    """The blanks of a piece laid out on the maker's boards, and what is to be bought."""

    laid: Laid
    shopping: Shopping
    offers: tuple[Offer, ...]  # the merchant's list that was asked


@dataclass(frozen=True, kw_only=True)
class SettingOut:
    """A piece worked through: sizes, parts, joints and what was found.

    Parts are empty where the text could not be worked; the findings say why.
    """

    piece: Piece
    shop: Shop
    habits: Habits
    sizes: Sizes
    parts: tuple[Part, ...]  # made parts, then hardware
    joints: tuple[SetJoint, ...]
    lines: tuple[Line, ...]
    findings: tuple[Finding, ...]
    stated: tuple[Stated, ...] = ()  # what the maker wrote of sizes, and where
    gaps: tuple[SetGap, ...] = ()  # of forms: round drawers and doors
    plan: Plan | None = None  # where something was measured or cut: as it was to be
    changed: tuple[Changed, ...] = ()  # sizes that are no more what they were to be
    record: Record = field(default=NOTHING_RECORDED)
    facts: Facts = field(default=NO_FACTS)  # what the record says
    stage: Stage = Stage.PROVEN
    order: Order = field(default=NO_ORDER)  # of work; empty where sizes do not hold
    joined: tuple[Joined, ...] = field(default=(), compare=False)  # whether or not they answered
    boards: OnBoards | None = None  # None: no survey of boards was handed in
    settled: Settled[dict[str, Choice]] | None = field(default=None, compare=False)
    store: Store = field(default_factory=Store, compare=False)
    memory: Memory = field(default_factory=Memory, compare=False)

    @property
    def made(self) -> tuple[Part, ...]:
        """Parts made in the shop."""
        return tuple(p for p in self.parts if not p.hardware)

    @property
    def hardware(self) -> tuple[Part, ...]:
        """What is bought."""
        return tuple(p for p in self.parts if p.hardware)

    @property
    def counted(self) -> str:
        """`49 parts, 48 pieces of hardware`: what is made and what is bought, never in one sum."""
        made, bought = len(self.made), len(self.hardware)
        found = f"{made} part{'' if made == 1 else 's'}"
        if not bought:
            return found
        return f"{found}, {bought} piece{'' if bought == 1 else 's'} of hardware"

    @property
    def halts(self) -> bool:
        """Whether any finding is of weight halt."""
        return any(f.weight is Weight.HALT for f in self.findings)

    @property
    def year(self) -> tuple[SetGap, ...]:
        """Every gap that works through the year: of drawers and doors, then of the joints."""
        joints = (gap for joint in self.joints for gap in joint.gaps)
        return tuple(found for found in (*self.gaps, *joints) if found.gap.moving)

    def part(self, name: str) -> Part:
        """The part of that name.

        Raises:
            InternalError: No such part.
        """
        for part in self.parts:
            if part.name == name:
                return part
        msg = f"no part is called {name!r}"
        raise InternalError(msg)

    @property
    def overall(self) -> tuple[Fraction, Fraction, Fraction]:
        """Wide, deep and tall over everything made, doors and drawers shut. [mm]"""
        corners = [
            part.placement.to_piece(point)
            for part in self.made
            for point in (
                (Fraction(0), Fraction(0), Fraction(0)),
                (part.extent.length, part.extent.width, part.extent.thickness),
            )
        ]
        spans = [max(axis) - min(axis) for axis in zip(*corners, strict=True)]
        return (spans[0], spans[1], spans[2])
