"""Partition between two drawers: upright, behind a mullion, from the deck to a kicker."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar

from scantling.findings import Finding
from scantling.joints._joint import Beside, Joined, Seat
from scantling.joints.groove import Groove
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Form, Landing, Opening, Sketch, Whole
from scantling.piece._kicker import RAILS, KickerSaid, kicker
from scantling.piece._lying import lying_on
from scantling.piece._made import reaching
from scantling.piece._section import JointWanted, Length, Section, Thick, Word
from scantling.piece._words import (
    follows,
    free,
    habit,
    inch_or_mm,
    nothing_there,
    or_nearest,
)
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Kind, Level, Relations
from scantling.units import INCH


class PartitionSection(Section):
    """`[partition]`: the mullion it stands behind, its joint below and the kicker above it."""

    under: Word
    joint: JointWanted
    thick: Thick | None = None
    into_kicker: Length | None = None
    kicker: KickerSaid = KickerSaid()


class Partition(Form):
    """Partition: an upright board behind a mullion, housed in the deck and in a centre kicker."""

    title: ClassVar[str] = "partition"
    order: ClassVar[int] = 40
    section: ClassVar[type[Section]] = PartitionSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """The partition, its kicker, and the faces they offer to guides."""
        del name
        assert isinstance(said, PartitionSection)  # noqa: S101 - the reader gives its section
        opening = _left_of(so_far, str(said.under))
        if any(rail not in so_far.landings for rail in RAILS):
            return so_far.with_findings(_no_rails(said))
        if opening is None or f"behind {opening.below_part}" not in so_far.landings:
            return so_far.with_findings(_nowhere(said, so_far))
        deck = so_far.landings[f"behind {opening.below_part}"]
        middle = size_of("partition.middle")
        sketch = so_far.with_relations(_middle(so_far, str(said.under)))
        sketch = _partition(sketch, said, deck, opening, middle, whole)
        sketch = kicker(
            sketch,
            "centre kicker",
            said=said.kicker,
            left=middle - size_of("centre kicker.width") / 2,
            ways=(Way.BACK, Way.RIGHT),
            under=opening.below + opening.tall,
            whole=whole,
            usual=inch_or_mm(whole, inch=INCH * 3, mm=75),
        )
        return _joined(sketch, said, deck, middle)


def _no_rails(said: PartitionSection) -> Finding:
    return nothing_there(
        said.place,
        says="the partition has no rails under the top to hold its kicker",
        cure="write rails_under_top in [case], or take the partition out",
    )


def _nowhere(said: PartitionSection, sketch: Sketch) -> Finding:
    mullions = [o.right_part for o in sketch.openings.values() if "mullion" in o.right_part]
    if said.under in mullions:
        return nothing_there(
            said.at("under"),
            says=f"no shelf is flush with the rail below the {said.under}",
            cure="the partition stands on a fixed shelf: give one flush_with that rail",
        )
    return nothing_there(
        said.at("under"),
        says=f"no mullion is called {str(said.under)!r}",
        cure=or_nearest(said.under, mullions, what="mullion"),
    )


def _left_of(sketch: Sketch, mullion: str) -> Opening | None:
    return next((o for o in sketch.openings.values() if o.right_part == mullion), None)


def _middle(sketch: Sketch, mullion: str) -> Relations:
    post = sketch.part(mullion)
    return Relations(
        dimensions=(
            free(
                "partition.middle",
                says="middle of the partition, from the left",
                kind=Kind.FOLLOWS,
            ),
        ),
        equations=(
            follows(
                size_of("partition.middle"),
                post.at[0] + post.width / 2,
                "the partition stands behind the middle of the mullion",
            ),
        ),
    )


def _partition(  # noqa: PLR0917 - one partition, told whole
    sketch: Sketch,
    said: PartitionSection,
    deck: Landing,
    opening: Opening,
    middle: Linear,
    whole: Whole,
) -> Sketch:
    case = sketch.landings["case"]
    wood = whole.wood(part="partition", family="partition", role="inside")
    below = f"partition in {deck.parts[0]}"
    thickness = size_of("partition.thickness")
    board = PlannedPart(
        name="partition",
        family="partition",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.UP, Way.BACK, Way.RIGHT),
        at=(
            middle - thickness / 2,
            case.sum("front"),
            deck.sum("top") - size_of(f"{below}.entry"),
        ),
    )
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    relations = Relations(
        equations=(
            follows(
                size_of("partition.length"),
                opening.tall
                + size_of(f"{below}.entry")
                + size_of("partition in centre kicker.entry"),
                "the partition reaches into the deck and the kicker",
            ),
        ),
        rules=(habit(thickness, thick, "usual for partitions", level=Level.RULE),),
    ) + reaching(case.sum("deep"), "partition.width", "as deep as the inside", whole=whole)
    sketch = sketch.with_parts(board).with_relations(relations)
    sketch = sketch.with_stated(("partition.thickness", said.thick))
    return sketch.with_landing(
        Landing(
            name=f"behind {said.under}",
            parts=("partition",),
            sums={"left": middle - thickness / 2, "right": middle + thickness / 2},
        )
    )


def _past_the_stubs() -> tuple[Beside, ...]:
    """The groove runs out through the kicker's stubs; there is no wood for it to meet there."""
    found = []
    for rail, far in zip(RAILS, (False, True), strict=True):
        stub = f"centre kicker in {rail}"
        size = size_of(f"{stub}.tenon")
        start = size_of("centre kicker.length") - size if far else ZERO
        found.append(
            Beside(
                what="tenon",
                owner=stub,
                role="receives",
                axis=0,
                start=start,
                size=size,
                depth=ZERO,
            )
        )
    return tuple(found)


def _joined(sketch: Sketch, said: PartitionSection, deck: Landing, middle: Linear) -> Sketch:
    thickness = size_of("partition.thickness")
    floor = deck.parts[0]
    below = Joined(
        name=f"partition in {floor}",
        joint=said.joint.joint,
        place=said.joint.place,
        seats={
            "receives": (
                Seat(part=floor, along=middle - thickness / 2 - sketch.part(floor).at[0]),
            ),
            "enters": (Seat(part="partition"),),
        },
    )
    above = Joined(
        name="partition in centre kicker",
        joint=Groove(surface="face", entry=said.into_kicker),
        place=said.joint.place,
        seats={
            "receives": (
                Seat(
                    part="centre kicker",
                    corner=Corner(face=Surface.BACK_FACE),  # its lower face
                    across=size_of("centre kicker.width") / 2 - thickness / 2,
                ),
            ),
            "enters": (Seat(part="partition", corner=Corner(end=Surface.FAR_END)),),
        },
        beside=_past_the_stubs(),
    )
    return sketch.with_joined(below, above, lying_on(str(said.under), "partition"))
