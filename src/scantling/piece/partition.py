"""Partitions between drawers: upright, each behind a mullion, from the deck to a kicker."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._joint import Beside, Joined, Seat
from scantling.joints.groove import Groove
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Form, Landing, Opening, Sketch, Whole
from scantling.piece._kicker import RAILS, KickerSaid, kicker, under_the_top
from scantling.piece._lying import lying_on
from scantling.piece._made import alike_unmade, entering, far_end, reaching
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
    """`[partition]`: the mullion it stands behind, its joint below and the kicker above it.

    `under = "mullion"` stands one behind each mullion of the highest row: `mullion 1`,
    `mullion 2`; `under = "mullion 2"` behind that one alone.
    """

    under: Word
    joint: JointWanted
    thick: Thick | None = None
    into_kicker: Length | None = None
    kicker: KickerSaid = KickerSaid()


@dataclass(frozen=True, kw_only=True)
class _Post:
    """One partition: what it and its kicker are called, and where it stands."""

    name: str
    kicker: str
    mullion: str
    opening: Opening  # to the left of its mullion
    deck: Landing

    @property
    def middle(self) -> Linear:
        """Its middle, from the left. [mm]"""
        return size_of(f"{self.name}.middle")

    @property
    def thickness(self) -> Linear:
        return size_of(f"{self.name}.thickness")

    @property
    def below(self) -> str:
        """Name of its joint in the deck."""
        return f"{self.name} in {self.deck.parts[0]}"

    @property
    def above(self) -> str:
        """Name of its joint in the kicker."""
        return f"{self.name} in {self.kicker}"


class Partition(Form):
    """Partition: an upright board behind a mullion, housed in the deck and in a centre kicker."""

    title: ClassVar[str] = "partition"
    order: ClassVar[int] = 40
    section: ClassVar[type[Section]] = PartitionSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """The partitions, their kickers, and the faces they offer to guides."""
        del name
        assert isinstance(said, PartitionSection)  # noqa: S101 - the reader gives its section
        if any(rail not in so_far.landings for rail in RAILS):
            return so_far.lacking("rails under the top", _no_rails(said))
        posts = _posts(so_far, said)
        if not posts:
            below = next(
                (o.below_part for o in so_far.openings.values() if _is_meant(o.right_part, said)),
                None,
            )
            if below is None:
                return so_far.lacking("mullion", _no_mullion(said, so_far))
            return so_far.lacking("shelf", _no_shelf(said, below))
        buried = [post for post in posts if not under_the_top(so_far, post.opening)]
        if buried:
            return so_far.with_findings(_buried(said, buried[0]))
        sketch = so_far
        for post in posts:
            sketch = _standing(sketch, said, post, whole)
        if len(posts) > 1:
            sketch = sketch.with_relations(_alike(posts, whole))
        return sketch


def _posts(sketch: Sketch, said: PartitionSection) -> tuple[_Post, ...]:
    """One behind the mullion of that name, or behind each of a row of that name.

    Of rows below the highest no kicker can hang, so they are meant only where no other is.
    """
    meant = [
        (opening.right_part, opening, sketch.landings[deck])
        for opening in sketch.openings.values()
        if _is_meant(opening.right_part, said)
        and (deck := f"behind {opening.below_part}") in sketch.landings
    ]
    meant = [one for one in meant if under_the_top(sketch, one[1])] or meant
    numbers = [f" {i + 1}" for i in range(len(meant))] if len(meant) > 1 else [""]
    return tuple(
        _Post(
            name=f"partition{number}",
            kicker=f"centre kicker{number}",
            mullion=mullion,
            opening=opening,
            deck=deck,
        )
        for number, (mullion, opening, deck) in zip(numbers, meant, strict=False)
    )


def _is_meant(mullion: str, said: PartitionSection) -> bool:
    return "mullion" in mullion and (mullion == said.under or mullion.startswith(f"{said.under} "))


def _standing(sketch: Sketch, said: PartitionSection, post: _Post, whole: Whole) -> Sketch:
    sketch = sketch.with_relations(_middle(sketch, post))
    sketch = _partition(sketch, said, post, whole)
    sketch = kicker(
        sketch,
        post.kicker,
        said=said.kicker,
        left=post.middle - size_of(f"{post.kicker}.width") / 2,
        ways=(Way.BACK, Way.RIGHT),
        under=post.opening.below + post.opening.tall,
        whole=whole,
        usual=inch_or_mm(whole, inch=INCH * 3, mm=75),
    )
    return _joined(sketch, said, post, whole)


def _alike(posts: tuple[_Post, ...], whole: Whole) -> Relations:
    """One setting of the gauge for all of them."""
    sizes = [[f"{p.name}.thickness" for p in posts], [f"{p.kicker}.width" for p in posts]]
    because = "the partitions of one row are alike"
    return Relations(
        alike=tuple(group for names in sizes for group in alike_unmade(names, because, whole=whole))
    )


def _no_rails(said: PartitionSection) -> Finding:
    return nothing_there(
        said.place,
        says="the partition has no rails under the top to hold its kicker",
        cure="write rails_under_top in [case], or take the partition out",
    )


def _buried(said: PartitionSection, post: _Post) -> Finding:
    return nothing_there(
        said.at("under"),
        says=f"the kicker over the {post.name} hangs from the rails under the top, and the "
        f"{post.opening.name} is not right below them",
        cure="make the row of drawers the highest opening of the front, or take the partition out",
    )


def _no_mullion(said: PartitionSection, sketch: Sketch) -> Finding:
    mullions = [o.right_part for o in sketch.openings.values() if "mullion" in o.right_part]
    return nothing_there(
        said.at("under"),
        says=f"No mullion is called {str(said.under)!r}.",
        cure=or_nearest(said.under, mullions, what="mullion"),
    )


def _no_shelf(said: PartitionSection, rail: str) -> Finding:
    return nothing_there(
        said.at("under"),
        says=f"No shelf is flush with the {rail}, below the {said.under}.",
        cure=f'The partition stands on a fixed shelf: write flush_with = "{rail}" in its section.',
    )


def _middle(sketch: Sketch, post: _Post) -> Relations:
    mullion = sketch.part(post.mullion)
    return Relations(
        dimensions=(
            free(
                f"{post.name}.middle",
                says=f"middle of the {post.name}, from the left",
                kind=Kind.FOLLOWS,
            ),
        ),
        equations=(
            follows(
                post.middle,
                mullion.at[0] + mullion.width / 2,
                "the partition stands behind the middle of the mullion",
            ),
        ),
    )


def _partition(sketch: Sketch, said: PartitionSection, post: _Post, whole: Whole) -> Sketch:
    case = sketch.landings["case"]
    wood = whole.wood(part=post.name, family="partition", role="inside")
    left = post.middle - post.thickness / 2
    entry = size_of(f"{post.below}.entry")
    board = PlannedPart(
        name=post.name,
        family="partition",
        wood=wood.species,
        cut_of_wood=wood.cut,
        ways=(Way.UP, Way.BACK, Way.RIGHT),
        at=(left, case.sum("front"), post.deck.sum("top") - entry),
    )
    thick = inch_or_mm(whole, inch=INCH * Fraction(3, 4), mm=20)
    above = size_of(f"{post.above}.entry")
    relations = entering(
        post.opening.tall + entry + above,
        post.name,
        above,
        "the partition reaches into the deck and the kicker",
        whole=whole,
    )
    relations += Relations(
        rules=(habit(post.thickness, thick, "usual for partitions", level=Level.RULE),),
    ) + reaching(case.sum("deep"), f"{post.name}.width", "as deep as the inside", whole=whole)
    sketch = sketch.with_parts(board).with_relations(relations)
    sketch = sketch.with_stated((f"{post.name}.thickness", said.thick))
    return sketch.with_landing(
        Landing(
            name=f"behind {post.mullion}",
            parts=(post.name,),
            place=said.at("under"),
            sums={"left": left, "right": post.middle + post.thickness / 2},
        )
    )


def _past_the_stubs(post: _Post, whole: Whole) -> tuple[Beside, ...]:
    """The groove runs out through the kicker's stubs; there is no wood for it to meet there."""
    found = []
    for rail, far in zip(RAILS, (False, True), strict=True):
        stub = f"{post.kicker} in {rail}"
        size = size_of(f"{stub}.tenon")
        end = size_of(f"{post.kicker}.length") - far_end(f"{post.kicker}.length", whole)
        start = end - size if far else ZERO
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


def _joined(sketch: Sketch, said: PartitionSection, post: _Post, whole: Whole) -> Sketch:
    floor = post.deck.parts[0]
    along = post.middle - post.thickness / 2 - sketch.part(floor).at[0]
    below = Joined(
        name=post.below,
        joint=said.joint.joint,
        place=said.joint.place,
        seats={
            "receives": (Seat(part=floor, along=along),),
            "enters": (Seat(part=post.name),),
        },
    )
    above = Joined(
        name=post.above,
        joint=Groove(surface="face", entry=said.into_kicker),
        place=said.joint.place,
        seats={
            "receives": (
                Seat(
                    part=post.kicker,
                    corner=Corner(face=Surface.BACK_FACE),  # its lower face
                    across=size_of(f"{post.kicker}.width") / 2 - post.thickness / 2,
                ),
            ),
            "enters": (
                Seat(
                    part=post.name,
                    corner=Corner(end=Surface.FAR_END),
                    along=far_end(f"{post.name}.length", whole),
                ),
            ),
        },
        beside=_past_the_stubs(post, whole),
    )
    return sketch.with_joined(below, above, lying_on(post.mullion, post.name))
