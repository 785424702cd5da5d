"""Back: upright boards in rabbets of the sides, free to move, one nail each above and below."""

from __future__ import annotations

from typing import ClassVar

from scantling.joints._joint import Beside, Joined, Seat
from scantling.joints.one_nail_at_mid_width import OneNailAtMidWidth
from scantling.joints.rabbet import Rabbet
from scantling.parts import Corner, Surface, Way
from scantling.parts.planned import PlannedPart
from scantling.piece._form import Form, Sketch, Whole
from scantling.piece._level import WIDTHS
from scantling.piece._made import alike_unmade, first_unmade, lacking
from scantling.piece._section import Count, JointWanted, Section, Thick
from scantling.piece._words import alike, follows, free, habit, inch_or_mm
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Kind, Level, Relations
from scantling.units import INCH


class BackSection(Section):
    """`[back]`: how many boards, how they meet, and the rabbets they lie in."""

    boards: Count = Count(5)
    joint: JointWanted
    thick: Thick | None = None
    rabbet: JointWanted | None = None


class Back(Form):
    """Back: boards side by side in rabbets, upright like the sides."""

    title: ClassVar[str] = "back"
    order: ClassVar[int] = 80
    section: ClassVar[type[Section]] = BackSection

    @classmethod
    def draft(cls, said: object, *, name: str, so_far: Sketch, whole: Whole) -> Sketch:
        """The boards, the rabbets and the nails."""
        del name
        assert isinstance(said, BackSection)  # noqa: S101 - the reader gives its section
        boards = [f"back board {i + 1}" for i in range(said.boards)]
        sketch = so_far.with_relations(
            _relations(boards, whole, has_bottom="level bottom" in so_far.landings)
        )
        left: Linear = size_of("left side.thickness") - size_of("back in left side.depth")
        left = left + size_of("back boards.edge gap")
        for board in boards:
            sketch = _board(sketch, board, left, whole)
            left = (
                left
                + size_of(f"{board}.width")
                - size_of("back boards.lap")
                + size_of("back boards.gap")
            )
        sketch = sketch.with_stated(*((f"{b}.thickness", said.thick) for b in boards))
        return sketch.with_joined(
            *_rabbets(sketch, said, boards, whole), _row(said, boards), *_nails(sketch, boards)
        )


def _board(sketch: Sketch, name: str, left: Linear, whole: Whole) -> Sketch:
    case = sketch.landings["case"]
    wood = whole.wood(part=name, family="back board", role="inside")
    return sketch.with_parts(
        PlannedPart(
            name=name,
            family="back board",
            wood=wood.species,
            cut_of_wood=wood.cut,
            ways=(Way.UP, Way.RIGHT, Way.BACK),  # face side: into the case
            at=(left, case.sum("front") + case.sum("deep"), size_of("back.foot")),
            stage=80,
        )
    )


def _relations(boards: list[str], whole: Whole, *, has_bottom: bool) -> Relations:
    ease = inch_or_mm(whole, inch=INCH / 16, mm=2)
    thick = inch_or_mm(whole, inch=INCH / 2, mm=12)
    thickest = first_unmade([f"{board}.thickness" for board in boards], whole)
    rabbets = tuple(size_of(f"back in {side} side.width") for side in ("left", "right"))
    equations = [
        *(
            follows(size_of(f"{side} side.back set"), rabbet, "the back lies in the sides' rabbets")
            for side, rabbet in zip(("left", "right"), rabbets, strict=True)
        ),
        *(
            (
                follows(
                    size_of("back.foot"),
                    size_of("bottom.top face") - size_of("bottom.thickness"),
                    "the boards reach down over the bottom",
                ),
            )
            if has_bottom
            else ()
        ),
    ]
    equations += [
        follows(
            size_of(f"{board}.length"),
            size_of("case.tall") - size_of("back.foot") - size_of(f"{board}.air"),
            "the boards reach up to the top, a little short of it",
        )
        for board in boards
    ]
    return Relations(
        dimensions=(
            free("back.foot", says="height of the boards' lower ends", may_be_nothing=True),
            *(
                free(
                    f"{board}.air",
                    says=f"room over the {board}",
                    kind=Kind.FOLLOWS,
                    may_be_nothing=True,
                )
                for board in boards
            ),
        ),
        equations=tuple(equations),
        rules=(
            *(habit(size_of(f"{board}.air"), ease, "room to go in") for board in boards),
            *(
                ()
                if has_bottom
                else (habit(size_of("back.foot"), 0, "the boards reach down to the floor"),)
            ),
            habit(size_of(thickest), thick, "usual for backs", level=Level.RULE),
            habit(
                rabbets[0],
                size_of(thickest) + ease,
                "a rabbet a little wider than the back is thick",
                level=Level.RULE,
            ),
        ),
        alike=(
            alike(
                ("back in left side.width", "back in right side.width"), "the rabbets are a pair"
            ),
            alike(
                ("back in left side.depth", "back in right side.depth"), "the rabbets are a pair"
            ),
            *(
                group
                for word in ("width", "thickness")
                for group in alike_unmade(
                    [f"{b}.{word}" for b in boards], "the boards are alike", whole=whole
                )
            ),
        ),
    )


def _rabbets(
    sketch: Sketch, said: BackSection, boards: list[str], whole: Whole
) -> tuple[Joined, ...]:
    joint = said.rabbet.joint if said.rabbet is not None else Rabbet()
    return tuple(
        Joined(
            name=f"back in {side} side",
            joint=joint,
            place=said.rabbet.place if said.rabbet is not None else None,
            seats={
                # counted from where the back edge was meant to be, on the inside face
                "receives": (
                    Seat(
                        part=f"{side} side",
                        corner=Corner(edge=Surface.BACK_EDGE),
                        across=-lacking(f"{side} side.width", WIDTHS, whole),
                    ),
                ),
                "enters": (Seat(part=boards[0] if side == "left" else boards[-1]),),
            },
            beside=_running_out(sketch, f"{side} side"),
        )
        for side in ("left", "right")
    )


def _running_out(sketch: Sketch, side: str) -> tuple[Beside, ...]:
    """Housings of level boards run out into the rabbet: both take the wood there."""
    level = {
        name
        for landing in sketch.landings.values()
        if landing.name.startswith("level ")
        for name in landing.parts
    }
    return tuple(
        Beside(
            what="housing", owner=j.name, role="receives", axis=0, start=ZERO, size=ZERO, depth=ZERO
        )
        for j in sketch.joined
        if j.name in level and j.seat("receives").part == side
    )


def _row(said: BackSection, boards: list[str]) -> Joined:
    opening = (
        size_of("case.inside wide")
        + size_of("back in left side.depth")
        + size_of("back in right side.depth")
    )
    return Joined(
        name="back boards",
        joint=said.joint.joint,
        place=said.joint.place,
        seats={"boards": tuple(Seat(part=b) for b in boards)},
        beside=(
            Beside(
                what="opening",
                owner="",
                role="boards",
                axis=1,
                start=ZERO,
                size=opening,
                depth=ZERO,
            ),
        ),
    )


def _nails(sketch: Sketch, boards: list[str]) -> tuple[Joined, ...]:
    """One at each end: into the bottom's back edge, and into the rear rail's or the top's."""
    known = {p.name for p in sketch.parts}
    found = []
    if "bottom" in known:
        found.append(_nailed(sketch, boards, "bottom", Surface.BACK_EDGE))
    if "rear sub-top rail" in known:
        found.append(_nailed(sketch, boards, "rear sub-top rail", Surface.BACK_EDGE))
    return tuple(found)


def _nailed(sketch: Sketch, boards: list[str], bearer: str, edge: Surface) -> Joined:
    part = sketch.part(bearer)
    return Joined(
        name=f"back boards on {bearer}",
        joint=OneNailAtMidWidth(),
        seats={
            "enters": tuple(
                Seat(
                    part=b,
                    # height of the bearer's middle above the board's lower end
                    along=part.at[2] - part.thickness / 2 - size_of("back.foot"),
                    across=size_of(f"{b}.width") / 2,
                )
                for b in boards
            ),
            "receives": (
                Seat(
                    part=bearer,
                    corner=Corner(edge=edge),
                    into=part.thickness / 2,
                ),
            ),
        },
    )
